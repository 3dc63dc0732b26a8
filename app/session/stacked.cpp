#include "app/session/stacked.h"

#include <QCoreApplication>
#include <algorithm>
#include <thread>
#include <utility>

#include "app/session/activity.h"
#include "app/session/desk.h"
#include "core/measure/limits.h"
#include "core/plan/budget_from_zero.h"
#include "core/plan/gap.h"
#include "core/say/stack_words.h"
#include "core/tolerance/placed_stack.h"

namespace inchwright::app {
namespace {

/// Shares that differ by less are alike.
constexpr double kAlike = 1e-6;

/// Rounded up: how far something may be off at most.
QString most(std::int64_t ticks, const Step& step) {
  return QString::fromStdString(showOutwards(Length(), Length::ticks(ticks), step).high.text);
}

Step stepOf(const Desk& desk) {
  const Machine& machine = desk.job().machine;
  const auto step = readStep(machine.step, machine.unit);
  return step.ok() ? *step : Step{};
}

Result<StackedWay> wayOf(const QString& title, Stack stack, const Stacked& all) {
  SimulationOptions options;
  options.threads = std::max(1U, std::thread::hardware_concurrency());
  if (all.least || all.greatest) {
    options.required = stack.worst;
    if (all.least) options.required->low = all.least->ticks();
    if (all.greatest) options.required->high = all.greatest->ticks();
  }
  const Result<Simulation> simulation = simulate(stack, options);
  if (!simulation) return simulation.error();
  return StackedWay{title, std::move(stack), *simulation};
}

/// Half the width of a span, which is how far its middle may stray.
QString strays(const Span& span, const Step& step) {
  return QStringLiteral("±") + most((span.width() + 1) / 2, step);
}

QString nameOfMember(const StackMember& member) {
  QString name = QString::fromStdString(memberName(member));
  if (!member.text.empty())
    name += QStringLiteral(" (%1)").arg(QString::fromStdString(member.text));
  if (!member.part.empty()) name += tr(" of %1").arg(QString::fromStdString(member.part));
  return name;
}

void compareWays(Stacked& all) {
  if (all.ways.size() < 2) return;
  const Span& drawn = all.ways[0].stack.worst;
  const Span& made = all.ways[1].stack.worst;
  const QString each = tr("As drawn it strays %1 at worst; made from this zero, %2.")
                           .arg(strays(drawn, all.step), strays(made, all.step));
  all.remarks << each;
}

/// How far the worst case leaves the limits, and which member to hold closer so that it keeps.
void judgeLimits(Stacked& all) {
  if (!all.least && !all.greatest) return;
  const Stack& stack = all.ways.front().stack;
  const std::int64_t under =
      all.least ? std::max<std::int64_t>(0, all.least->ticks() - stack.worst.low) : 0;
  const std::int64_t over =
      all.greatest ? std::max<std::int64_t>(0, stack.worst.high - all.greatest->ticks()) : 0;
  if (under == 0 && over == 0) {
    all.remarks << tr("It goes together, even at worst.");
    return;
  }
  if (under > 0) all.remarks << tr("At worst it is %1 too little.").arg(most(under, all.step));
  if (over > 0) all.remarks << tr("At worst it is %1 too much.").arg(most(over, all.step));
  const Simulation& drawn = all.ways.front().simulation;
  const double outside = 100.0 * static_cast<double>(drawn.below + drawn.above) /
                         static_cast<double>(std::max<std::uint64_t>(drawn.runs, 1));
  all.remarks << tr("Put together at random, %1 of 100 are outside.")
                     .arg(outside, 0, 'f', outside < 10 ? 2 : 0);
}

void nameWidest(Stacked& all) {
  const std::vector<StackMember>& members = all.ways.front().stack.members;
  double most = 0;
  for (const StackMember& member : members) most = std::max(most, member.worstShare);
  QStringList widest;
  for (const StackMember& member : members) {
    if (member.worstShare > most - kAlike) widest << nameOfMember(member);
  }
  // Where all are alike, none is to be named.
  if (static_cast<std::size_t>(widest.size()) == members.size()) return;
  const QString share = QString::number(100 * most, 'f', 0);
  all.remarks << (widest.size() == 1
                      ? tr("Most of it comes from %1: %2 of 100.").arg(widest.front(), share)
                      : tr("Most of it comes from %1: %2 of 100 each.")
                            .arg(widest.join(QStringLiteral(", ")), share));
}

}  // namespace

bool Stacked::keeps(const Span& span) const {
  return (!least || span.low >= least->ticks()) && (!greatest || span.high <= greatest->ticks());
}

Result<Stacked> stackBetween(const Desk& desk, Axis axis, const Id& from, const Id& to) {
  const Part& part = desk.part();
  Stacked all;
  all.step = stepOf(desk);
  all.title = tr("%1 to %2 along %3")
                  .arg(QString::fromStdString(from), QString::fromStdString(to), wordFor(axis));
  Result<Stack> drawn = drawnStack(part, axis, from, to);
  if (!drawn) return drawn.error();
  all.places = {from, to};
  for (const StackMember& member : drawn->members) {
    if (const Id* reading = member.reading()) all.readings.push_back(*reading);
    for (const Id& place : {member.from, member.to}) {
      if (std::find(all.places.begin(), all.places.end(), place) == all.places.end()) {
        all.places.push_back(place);
      }
    }
  }
  Result<StackedWay> way = wayOf(tr("as drawn"), std::move(drawn).value(), all);
  if (!way) return way.error();
  all.ways.push_back(std::move(way).value());
  Result<std::vector<StackMember>> fromZero = membersFromZero(
      {part, desk.solution(), desk.setup(), desk.job().machine}, axis, from, to, {});
  Result<Stack> made = fromZero ? stackOf(std::move(fromZero).value()) : fromZero.error();
  if (made) {
    Result<StackedWay> second = wayOf(tr("as made from this zero"), std::move(made).value(), all);
    if (!second) return second.error();
    all.ways.push_back(std::move(second).value());
  } else {
    all.remarks << QString::fromStdString(made.error().text) + QLatin1Char('.');
  }
  compareWays(all);
  nameWidest(all);
  return all;
}

Result<Stacked> stackAcross(const Desk& desk, const std::string& gap) {
  const Gap* wanted = desk.job().gap(gap);
  if (!wanted) return Error{ErrorCode::notFound, "there is no gap " + gap, gap};
  Result<GapStack> sum = gapStack(desk.job(), *wanted);
  if (!sum) return sum.error();
  Stacked all;
  all.step = stepOf(desk);
  all.title = QString::fromStdString(gap);
  all.least = sum->least;
  all.greatest = sum->greatest;
  for (const StackMember& member : sum->stack.members) {
    if (!desk.hasPart() || member.part != desk.part().name) continue;
    all.places.push_back(member.from);
    all.places.push_back(member.to);
    if (const Id* reading = member.reading()) all.readings.push_back(*reading);
  }
  Result<StackedWay> way = wayOf(tr("as drawn"), std::move(sum->stack), all);
  if (!way) return way.error();
  all.ways.push_back(std::move(way).value());
  judgeLimits(all);
  nameWidest(all);
  return all;
}

}  // namespace inchwright::app
