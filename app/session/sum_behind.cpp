#include "app/session/sum_behind.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "app/session/activity.h"
#include "app/session/desk.h"
#include "core/plan/why.h"
#include "core/say/placing_words.h"
#include "core/say/reading_words.h"
#include "core/say/stack_words.h"
#include "core/say/why_words.h"

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

HeldTriangle triangleOf(const Part& part, const WhyHeld& held, const Step& step) {
  HeldTriangle triangle{own(held.place), {}, {}, own(heldText(part, held, step))};
  for (const WhyHeld::End& end : held.ends) {
    const double turn = end.degrees * std::numbers::pi / 180;
    triangle.ends.push_back(
        {own(end.place), -end.apart.toInches() * QPointF(std::cos(turn), std::sin(turn)),
         own(showAtStep(end.apart.rational(), step).text), own(degreesText(end.degrees))});
  }
  if (held.others.empty() || triangle.ends.size() != 2) return triangle;
  // Held from two places it has its mirror image beyond the line between them.
  const QPointF from = triangle.ends[0].at, along = triangle.ends[1].at - from;
  const double length = QPointF::dotProduct(along, along);
  if (length > 0) {
    const QPointF foot = from - along * (QPointF::dotProduct(from, along) / length);
    triangle.others.push_back(2 * foot);
  }
  return triangle;
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
  for (const WhyHeld& one : why->held) {
    sum.held.push_back(triangleOf(desk.part(), one, table->step));
  }
  if (why->disputed) {
    sum.remark = tr("The print contradicts itself here: by another way it makes something else.");
  }
  return sum;
}

}  // namespace inchwright::app
