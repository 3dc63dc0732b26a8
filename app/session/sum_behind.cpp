#include "app/session/sum_behind.h"

#include <algorithm>

#include "app/session/activity.h"
#include "app/session/desk.h"
#include "core/plan/why.h"
#include "core/say/reading_words.h"
#include "core/say/stack_words.h"

namespace inchwright::app {
namespace {

QString own(const std::string& text) {
  return QString::fromStdString(text);
}

/// As the print would letter it, else at the readout's step.
QString figureOf(const Rational& sum, const Step& step) {
  const bool minus = sum.sign() < 0;
  const Rational size = sum.magnitude();
  std::string text;
  const auto ticks = size.isWhole() ? size.rounded() : std::nullopt;
  if (ticks && step.unit == Unit::inch) text = writeFraction(Length::ticks(*ticks));
  if (text.empty()) text = showAtStep(size, step).text;
  return (minus ? QStringLiteral("-") : QString()) + own(text);
}

SumLine lineFor(const Part& part, const WhyStep& one, const Step& step) {
  SumLine line{{}, {}, {}};
  for (const Id& place : {one.member.from, one.member.to}) {
    if (!place.empty()) line.places.push_back(place);
  }
  const QString ends = tr("%1 to %2").arg(own(one.member.from), own(one.member.to));
  if (const Id* reading = one.member.reading()) line.reading = *reading;
  const QString name = own(memberName(one.member)), text = own(one.member.text);
  QString what;
  switch (one.source) {
    case WhyStep::Source::reading:
      what = text + QStringLiteral("   ") + ends;
      break;
    case WhyStep::Source::zero:
      what = tr("from zero to %1").arg(own(one.member.to));
      break;
    case WhyStep::Source::placed:
      what = tr("%1, placed by centre distances, angles or the like").arg(ends);
      break;
    case WhyStep::Source::understood:
      what = tr("%1, in part")
                 .arg(line.reading.empty() ? name : own(readingWords(part, line.reading)));
      break;
    case WhyStep::Source::shape:
      what = (text.isEmpty() ? name : text) + QStringLiteral("   ") + ends;
      break;
  }
  const bool bare = one.source != WhyStep::Source::reading && one.source != WhyStep::Source::shape;
  const QString adds = bare ? figureOf(one.adds, step) + QStringLiteral("   ") : QString();
  const QString sign = one.adds.sign() < 0 && !bare ? QStringLiteral("- ")
                       : bare                       ? QString()
                                                    : QStringLiteral("+ ");
  line.text = tr("%1%2%3   makes %4").arg(sign, adds, what, figureOf(one.running, step));
  return line;
}

}  // namespace

Result<SumBehind> sumBehind(const Desk& desk, const Id& place, MachineAxis shownAxis) {
  const bool ofX = shownAxis == MachineAxis::x;
  const SetupTable* table = desk.table();
  if (table == nullptr) return Error{ErrorCode::notFound, "there is no sheet yet", place};
  const auto row = std::find_if(table->rows.begin(), table->rows.end(),
                                [&](const TableRow& one) { return one.id == place; });
  if (row == table->rows.end())
    return Error{ErrorCode::notFound, "my sheet has no such row", place};
  const TableAxis& machine = ofX ? table->x : table->y;
  const auto work = workAt(desk.job(), desk.part(), desk.solution(), desk.setup());
  if (!work.ok()) return work.error();
  const auto why = whyOf(*work, place, machine.part.axis);
  if (!why.ok()) return why.error();
  const ZeroAlong zero = machine.zero ? machine.zero->asked : ZeroAlong{};
  const QString shown = own(signedText(why->value)).trimmed();
  SumBehind sum;
  sum.title = tr("%1, %2: %3").arg(own(place), QString(QLatin1Char(letterOf(shownAxis))), shown);
  sum.zero =
      zero.middle.size() == 2
          ? tr("zero is half way between %1 and %2").arg(own(zero.middle[0]), own(zero.middle[1]))
          : tr("zero is at %1").arg(own(zero.at));
  for (const WhyStep& one : why->steps) {
    sum.lines.push_back(lineFor(desk.part(), one, table->step));
  }
  sum.lines.push_back({tr("on the readout %1").arg(shown), {}, {place}});
  if (why->disputed) {
    sum.remark = tr("The print contradicts itself here: by another way it makes something else.");
  }
  return sum;
}

}  // namespace inchwright::app
