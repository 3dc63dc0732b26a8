#pragma once

#include <QWidget>

#include "app/session/desk.h"

class QHBoxLayout;
class QMenu;
class QToolButton;

namespace inchwright::app {

/// The line of words along the top of the desk: whose job this is, which part, how it lies, and
/// whether anything stands in doubt.
class LedgerLine : public QWidget {
  Q_OBJECT

 public:
  explicit LedgerLine(Desk& desk, QWidget* parent = nullptr);

  void takeFocus();  ///< from where Tab leads along the line

 signals:
  void detailsWanted();  ///< the title was chosen
  void setupWanted();    ///< the setup's own slip
  void doubtsWanted();

 private:
  QToolButton* word(const QString& name, QMenu* menu);
  void follow();
  void fillParts();
  void fillSetups();
  void renameSetup();
  void fillFaces();
  void showDoubt();

  Desk& desk_;
  QHBoxLayout* row_;
  QToolButton* title_;
  QToolButton* part_;
  QToolButton* setup_;
  QToolButton* face_;
  QToolButton* doubt_;
};

}  // namespace inchwright::app
