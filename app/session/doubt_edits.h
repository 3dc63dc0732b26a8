#pragma once

#include <QString>
#include <cstddef>

#include "core/base/result.h"
#include "core/part/job.h"
#include "core/solution/solution.h"

namespace inchwright::app {

/// What settles a doubt, as a new part and what the step is called for undo.
struct Settled {
  Part part;
  QString title;
};

/// A reading as it stands with another figure, or another angle where it is one: its second reading
/// and what the print offered were of the old. Errors: those of readLength and readAngle.
Result<Reading> withFigure(const Reading& reading, const std::string& text, Unit unit);

/// Reads a suspected reading so, or runs it the other way where that is suspected. Errors:
/// `notFound`, those of readLength.
Result<Settled> readSo(const Part& part, const Suspect& suspect, Unit unit);
/// Likewise one of centre distances and angles that do not meet.
Result<Settled> readSo(const Part& part, const CentreSuspect& suspect, Unit unit);
/// All decimals of a loop as the fractions they were rounded from; their text stays.
Settled readAsFractions(const Part& part, const Rounding& rounding);
/// Says which of several answers it is. Errors: as understandingFor.
Result<Settled> takeAnswer(const Part& part, const SeveralAnswers& several, std::size_t index);

}  // namespace inchwright::app
