#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/measure/writing.h"
#include "core/tolerance/simulation.h"

namespace inchwright::app {

class Desk;

/// One way in which a distance comes about, and what its members add up to.
struct StackedWay {
  QString title;  ///< `as drawn`
  Stack stack;
  Simulation simulation;
};

/// What a stack comes to, as it is shown on the desk.
struct Stacked {
  QString title;  ///< `L to B along X`, or the name of a gap
  Step step;      ///< figures are shown at
  std::vector<StackedWay> ways;
  std::optional<Length> least;  ///< what it has to come out at
  std::optional<Length> greatest;
  std::vector<Id> places;  ///< of the current part, that it runs through
  std::vector<Id> readings;
  QStringList remarks;  ///< what it means at the machine, a sentence each

  bool keeps(const Span& span) const;
};

/// The stack between two places of the current part as the print dimensions it, and as the part
/// comes out when it is made from the current setup's zero. Where that zero says nothing of the
/// axis there is only the first, and a remark why. Errors: as `chainBetween`.
Result<Stacked> stackBetween(const Desk& desk, Axis axis, const Id& from, const Id& to);

/// The stack across a gap of the job. Errors: as `gapStack`; `notFound` when there is none so
/// named.
Result<Stacked> stackAcross(const Desk& desk, const std::string& gap);

}  // namespace inchwright::app
