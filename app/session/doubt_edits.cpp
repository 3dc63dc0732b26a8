#include "app/session/doubt_edits.h"

#include <utility>

#include "app/session/activity.h"
#include "core/measure/writing.h"
#include "core/part/edit.h"
#include "core/say/doubt_words.h"
#include "core/say/placing_words.h"
#include "core/say/reading_words.h"
#include "core/solution/chosen_answer.h"

namespace inchwright::app {
namespace {

QString inOwnWords(const std::string& text) {
  return QString::fromStdString(text);
}

Result<Settled> replaced(const Part& part, const Reading& reading, const std::string& said) {
  auto next = replaceReading(part, reading.id, reading);
  if (!next.ok()) return next.error();
  const std::string words = readingWords(part, *part.reading(reading.id));
  return Settled{*std::move(next), tr("Read %1 as %2").arg(inOwnWords(words), inOwnWords(said))};
}

}  // namespace

Result<Reading> withFigure(const Reading& reading, const std::string& text, Unit unit) {
  Reading next = reading;
  if (reading.kind == ReadingKind::angle) {
    auto angle = readAngle(text);
    if (!angle.ok()) return angle.error();
    next.angle = *angle;
    next.figure.text = text;
  } else {
    auto figure = readLength(text, {unit});
    if (!figure.ok()) return figure.error();
    next.figure = *std::move(figure);
  }
  next.again.clear();
  if (next.figure.text != reading.figure.text) {
    next.meant.clear();
    next.offered.clear();
  }
  return next;
}

Result<Settled> readSo(const Part& part, const Suspect& suspect, Unit unit) {
  const Reading* before = part.reading(suspect.reading);
  if (before == nullptr) return Error{ErrorCode::notFound, "no such reading", suspect.reading};
  const std::string said = wouldBeText(part, suspect);
  if (suspect.reason.look == Likeness::endsSwapped) {
    Reading swapped = *before;
    std::swap(swapped.from, swapped.to);
    return replaced(part, swapped, said);
  }
  auto reading = withFigure(*before, suspect.wouldBeText, unit);
  if (!reading.ok()) return reading.error();
  reading->figure.reference = before->figure.reference;
  return replaced(part, *reading, said);
}

Result<Settled> readSo(const Part& part, const CentreSuspect& suspect, Unit unit) {
  const Reading& before = part.readings[suspect.reading];
  const std::string text = suspect.wouldBeText + (suspect.degrees ? "°" : "");
  auto reading = withFigure(before, text, unit);
  if (!reading.ok()) return reading.error();
  reading->figure.reference = before.figure.reference;
  return replaced(part, *reading, text);
}

Settled readAsFractions(const Part& part, const Rounding& rounding) {
  Part next = part;
  for (const MeantFraction& one : rounding.fractions) {
    for (Reading& reading : next.readings) {
      if (reading.id != one.reading) continue;
      reading.meant = writeFraction(one.meant);
      reading.figure.value = one.meant;
      reading.figure.exact = true;
    }
  }
  return {std::move(next), tr("Read rounded decimals as fractions")};
}

Result<Settled> takeAnswer(const Part& part, const SeveralAnswers& several, std::size_t index) {
  const auto what = understandingFor(part, several, index);
  if (!what.ok()) return what.error();
  auto next = addUnderstanding(part, *what);
  if (!next.ok()) return next.error();
  return Settled{*std::move(next), tr("Choose where %1 lies").arg(inOwnWords(several.place))};
}

}  // namespace inchwright::app
