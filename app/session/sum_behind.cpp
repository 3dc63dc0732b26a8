#include "app/session/sum_behind.h"

#include <algorithm>

#include "app/session/activity.h"
#include "app/session/desk.h"
#include "core/say/stack_words.h"
#include "core/tolerance/stack.h"
#include "core/tolerance/tolerance_network.h"

namespace inchwright::app {
namespace {

QString own(const std::string& text) {
  return QString::fromStdString(text);
}

/// As the print would letter it, else at the readout's step.
QString figureOf(const Rational& sum, const Step& step) {
  const bool minus = sum.sign() < 0;
  const Rational size = minus ? sum.times(Rational(-1)).value_or(sum) : sum;
  std::string text;
  const auto ticks = size.isWhole() ? size.rounded() : std::nullopt;
  if (ticks && step.unit == Unit::inch) text = writeFraction(Length::ticks(*ticks));
  if (text.empty()) text = showAtStep(size, step).text;
  return (minus ? QStringLiteral("-") : QString()) + own(text);
}

/// Adds the readings between two places, one line each; the sum so far in ticks.
Result<Rational> addChain(const Part& part, Axis axis, const Id& from, const Id& to,
                          const Step& step, std::vector<SumLine>& lines) {
  Rational sum;
  if (from == to) return sum;
  const auto network = toleranceNetworkOf(part, axis);
  if (!network.ok()) return network.error();
  const auto members = chainBetween(part, *network, from, to);
  if (!members.ok()) return members.error();
  for (const StackMember& member : *members) {
    const auto length = Rational(member.nominal).times(member.factor);
    const auto next = length ? sum.plus(*length) : std::nullopt;
    if (!next) return Error{ErrorCode::outOfRange, "the sum is too large", {}};
    sum = *next;
    const QString sign = member.sign() < 0 ? QStringLiteral("- ") : QStringLiteral("+ ");
    const QString figure = member.text.empty() ? own(memberName(member)) : own(member.text);
    SumLine line{tr("%1%2   %3 to %4   makes %5")
                     .arg(sign, figure, own(member.from), own(member.to), figureOf(sum, step)),
                 {},
                 {member.from, member.to}};
    if (const Id* reading = member.reading()) line.reading = *reading;
    lines.push_back(std::move(line));
  }
  return sum;
}

}  // namespace

Result<SumBehind> sumBehind(const Desk& desk, const Id& place, bool ofX) {
  const SetupTable* table = desk.table();
  if (table == nullptr) return Error{ErrorCode::notFound, "there is no sheet yet", place};
  const auto row = std::find_if(table->rows.begin(), table->rows.end(),
                                [&](const TableRow& one) { return one.id == place; });
  if (row == table->rows.end())
    return Error{ErrorCode::notFound, "my sheet has no such row", place};
  const TableAxis& machine = ofX ? table->x : table->y;
  const Axis axis = machine.part.axis;
  const ZeroAlong* zero = desk.setup().zeroAlong(axis);
  if (zero == nullptr)
    return Error{ErrorCode::unsolvable, "zero is not set along this axis", place};
  const bool middle = zero->middle.size() == 2;
  const Id from = middle ? zero->middle[0] : zero->at;

  SumBehind sum;
  const QString shown = own(signedText(ofX ? row->x : row->y)).trimmed();
  sum.title =
      tr("%1, %2: %3").arg(own(place), ofX ? QStringLiteral("X") : QStringLiteral("Y"), shown);
  sum.zero =
      middle
          ? tr("zero is half way between %1 and %2").arg(own(zero->middle[0]), own(zero->middle[1]))
          : tr("zero is at %1").arg(own(from));
  const auto total = addChain(desk.part(), axis, from, place, table->step, sum.lines);
  if (!total.ok()) return total.error();
  const auto placed = desk.solution().between(from, place, axis);
  if (placed && *placed != *total) {
    sum.remark = tr("The print contradicts itself here: by another way it makes %1.")
                     .arg(figureOf(*placed, table->step));
  }
  if (middle) {
    const auto whole = desk.solution().between(zero->middle[0], zero->middle[1], axis);
    const auto half = whole ? whole->times(*Rational::of(-1, 2)) : std::nullopt;
    const auto rest = half ? total->plus(*half) : std::nullopt;
    if (rest) {
      sum.lines.push_back({tr("less half of %1, from %2 to %3   makes %4")
                               .arg(figureOf(*whole, table->step), own(zero->middle[0]),
                                    own(zero->middle[1]), figureOf(*rest, table->step)),
                           {},
                           zero->middle});
    }
  }
  if (zero->offset) {
    sum.lines.push_back(
        {tr("and zero itself lies %1 further").arg(own(zero->offset->text)), {}, {}});
  }
  sum.lines.push_back({tr("on the readout %1").arg(shown), {}, {place}});
  return sum;
}

}  // namespace inchwright::app
