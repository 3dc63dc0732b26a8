#include "app/window/at_machine.h"

#include <algorithm>

#include "app/machine/lathe_view.h"
#include "app/machine/machine_view.h"
#include "app/machine/made_slip.h"

namespace inchwright::app {
namespace {

/// The place of a row of my sheet that is what was chosen, or belongs to it; empty: none.
Id madeHere(const Desk& desk, const Id& chosen) {
  if (const SetupTable* table = desk.table()) {
    for (const TableRow& row : table->rows) {
      if (row.id == chosen || row.feature == chosen) return row.id;
    }
  }
  if (const LatheWork* work = desk.lathe()) {
    for (const LatheRow& row : work->rows) {
      if (row.id == chosen) return row.id;
    }
  }
  return {};
}

template <class View>
void openView(Desk& desk, QWidget* parent) {
  auto* view = new View(desk, parent);
  view->setAttribute(Qt::WA_DeleteOnClose);
  view->showFullScreen();
}

}  // namespace

bool showMachine(Desk& desk, QWidget* parent) {
  if (desk.lathe() != nullptr && !desk.lathe()->cuts.empty()) {
    openView<LatheView>(desk, parent);
    return true;
  }
  if (desk.table() == nullptr || desk.table()->rows.empty()) return false;
  openView<MachineView>(desk, parent);
  return true;
}

bool showMade(Desk& desk, QWidget* parent) {
  const std::vector<Id>& chosen = desk.selection().places;
  const Id place = chosen.size() == 1 ? madeHere(desk, chosen[0]) : Id();
  if (place.empty()) return false;
  MadeSlip(desk, place, parent).exec();
  return true;
}

}  // namespace inchwright::app
