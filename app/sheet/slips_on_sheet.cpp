#include "app/sheet/slips_on_sheet.h"

#include "app/sheet/stack_slip.h"
#include "app/sheet/sum_slip.h"

namespace inchwright::app {

void laySlipsOn(SheetView& sheet, Work& work) {
  QObject::connect(&sheet, &SheetView::figureAsked, &sheet,
                   [&sheet, &work, sum = static_cast<SumSlip*>(nullptr)](const Id& place,
                                                                         MachineAxis axis) mutable {
                     if (sum == nullptr) sum = new SumSlip(work, &sheet);
                     sum->open(place, axis);
                   });
  QObject::connect(&work, &Work::changed, &sheet,
                   [&sheet, &work, stack = static_cast<StackSlip*>(nullptr)]() mutable {
                     if (stack == nullptr && work.doing() == Doing::stacking) {
                       stack = new StackSlip(work, &sheet);
                     }
                   });
}

}  // namespace inchwright::app
