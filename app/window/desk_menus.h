#pragma once

#include <QKeySequence>
#include <QObject>
#include <functional>

class QAction;
class QMenu;

namespace inchwright::app {

class DeskWindow;

/// The menu bar: every action of the desk with its key.
class DeskMenus : public QObject {
  Q_OBJECT

 public:
  explicit DeskMenus(DeskWindow& window);

 private:
  QAction* add(QMenu* menu, const QString& text, const QKeySequence& key,
               const std::function<void()>& action);
  void addJob();
  void addChange();
  void addPrint();
  void addReading();
  void addSheet();
  void addMachine();
  void addHelp();
  void fillRecent(QMenu* menu);

  DeskWindow& window_;
};

}  // namespace inchwright::app
