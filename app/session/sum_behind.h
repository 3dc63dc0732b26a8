#pragma once

#include <QPointF>
#include <QString>
#include <vector>

#include "core/base/result.h"
#include "core/part/feature.h"
#include "core/plan/machine_axes.h"

namespace inchwright::app {

class Desk;

/// One line of a sum: what is added, and what it makes so far.
struct SumLine {
  QString text;            ///< `L to A  7/16  makes 7/16`
  Id reading;              ///< empty where it is no reading
  std::vector<Id> places;  ///< that it joins
};

/// How a place that no chain leads to is held, to be drawn: in inches as its face is seen, y up,
/// about the place itself.
struct HeldTriangle {
  struct End {
    QString name;
    QPointF at;
    QString apart;  ///< straight, at the readout's step
    QString angle;  ///< from it to the place, anticlockwise from the face's own X: `41.41°`
  };
  QString name;
  std::vector<End> ends;
  std::vector<QPointF> others;  ///< where the same readings would put it as well
  QString words;                ///< all of it, as heldText
};

/// The sum behind a coordinate on my sheet, reading by reading from zero.
struct SumBehind {
  QString title;  ///< `C, X: 1.3125`
  QString zero;   ///< where it begins: `zero is half way between L and R`
  std::vector<SumLine> lines;
  std::vector<HeldTriangle> held;  ///< places on the way that no chain leads to
  QString remark;  ///< where the print says something else as well; empty when it does not
};

/// The sum behind the X or Y of a place in the current setup. Errors: `notFound` when my sheet has
/// no row of it; `unsolvable` when no readings join it to the zero.
Result<SumBehind> sumBehind(const Desk& desk, const Id& place, MachineAxis axis);

}  // namespace inchwright::app
