#pragma once

#include <QDialog>
#include <QPixmap>
#include <map>
#include <span>
#include <string>
#include <vector>

#include "app/session/desk.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QListWidget;

namespace inchwright::app {

/// How far a part of the job has got.
enum class PartState {
  notBegun,  ///< nothing is traced of it
  inDoubt,   ///< its sheet says DRAFT
  ready,     ///< its sheets can be printed
  printed,   ///< the sheets of all its setups are, as they are now
  outdated,  ///< a sheet that was printed would be another now
  begun,     ///< something is ticked or measured
  made,      ///< all places of all its setups are
  wrong      ///< something came out over, under or off its place, and nothing was chosen for it
};

/// The states of all parts, in their order; `solutions` are theirs.
std::vector<PartState> partStates(const Job& job, std::span<const Solution> solutions);

/// The cover of the job: every part as a small drawing with its state, in the order in which the
/// parts stand in the document. Dragged to another place, copied to begin a similar one or its
/// other hand, renamed with all that mentions it, taken away where nothing does; a step of undo
/// each.
class CoverSlip : public QDialog {
  Q_OBJECT

 public:
  explicit CoverSlip(Desk& desk, QWidget* parent = nullptr);

 private:
  void showNow();
  /// Drawn again only when the part changed.
  const QPixmap& drawingOf(const Job& job, std::size_t part);
  void moved();
  void shift(int by);
  void copy();
  /// What stands in the line of the name, with a number where a part is called so already.
  std::string freeName() const;
  void mirror();
  void standAlone();
  QLayout* handRow();
  void rename();
  void remove();
  void putOnDesk();
  /// Applies an edit of the list; the part on the desk stays there.
  bool apply(const Result<Job>& next, const QString& title, const std::string& onDesk);
  /// The part chosen in the list; null where there is none.
  const Part* chosen() const;

  Desk& desk_;
  /// Drawings by name, with the part each is of.
  struct Drawn {
    Part part;
    QPixmap drawing;
  };
  std::map<std::string, Drawn> drawn_;
  bool filling_ = false;
  QListWidget* list_;
  QLineEdit* name_;
  QComboBox* across_;
  QLabel* said_;
};

}  // namespace inchwright::app
