#include "core/kit/effects.h"

#include <algorithm>

namespace inchwright {
namespace {

bool isAt(const SizeOrPlace& side, std::string_view part, std::string_view place) {
  const auto* at = std::get_if<PartPlace>(&side);
  return at && at->part == part && at->place == place;
}

bool isAt(const SizeOrPlace& side, const MadeRow& row) {
  return isAt(side, row.part, row.place);
}

bool holds(const FoundSize& found, const FoundSize& wanted) {
  return verdictOf(found, wanted) == Verdict::in;
}

FoundSize asFound(const Span& span) {
  return {Length::ticks(span.low), Length::ticks(span.high)};
}

}  // namespace

std::vector<const Mate*> matesOfHole(const Job& job, std::string_view part,
                                     std::string_view place) {
  std::vector<const Mate*> mates;
  for (const Mate& mate : job.mates) {
    const std::vector<SizeOrPlace> holes = holesOf(mate);
    const bool its = std::any_of(holes.begin(), holes.end(),
                                 [&](const SizeOrPlace& one) { return isAt(one, part, place); });
    if (its) mates.push_back(&mate);
  }
  return mates;
}

Effects::Effects(const Job& job, std::span<const Solution> solutions, const Part& part,
                 const MadeRow& row)
    : job_(job),
      part_(part),
      row_(row),
      solutions_(solutions),
      mates_(matesOfHole(job, row.part, row.place)) {
  const Setup* setup = part.setup(row.setup);
  const std::size_t index = static_cast<std::size_t>(&part - job.parts.data());
  if (!setup || setup->chucked) return;
  const Result<WorkAt> work = workAt(job, part, solutions[index], *setup);
  if (!work) return;
  const auto add = [&](const TableAxis& axis, const std::optional<Length>& off) {
    if (!off) return;
    const bool turnedRound = axis.part.sign * axis.counts < 0;
    off_.emplace_back(axis.part.axis, turnedRound ? off->negated() : *off);
  };
  add(work->x, row.offX);
  add(work->y, row.offY);
}

std::vector<Effect> Effects::with(const HoleThen& then) const {
  std::vector<Effect> all;
  addMates(then, all);
  addReadings(then, all);
  addGaps(then, all);
  return all;
}

void Effects::addMates(const HoleThen& then, std::vector<Effect>& all) const {
  for (const Mate* mate : mates_) {
    const Result<SizeNow> shaft = sizeNow(job_, mate->shaft);
    const Result<FoundSize> wanted = wantedClearance(job_, *mate);
    if (!shaft || !wanted) continue;
    const bool suited = then.shaft && then.shaftOf == mate->name;
    const FoundSize& onto = suited ? *then.shaft : shaft->size;
    Effect effect;
    effect.of = Effect::Of::mate;
    effect.name = mate->name;
    effect.before = clearanceOf(row_.foundSize, shaft->size);
    effect.after = clearanceOf(then.size, onto);
    effect.holds = holds(effect.after, *wanted);
    all.push_back(std::move(effect));
  }
}

/// A reading to the hole, its other end where the print has it.
void Effects::addReadings(const HoleThen& then, std::vector<Effect>& all) const {
  for (const Reading& reading : part_.readings) {
    if (reading.kind != ReadingKind::along || reading.figure.reference) continue;
    const bool from = reading.from == row_.place, to = reading.to == row_.place;
    if (from == to) continue;
    const auto off =
        std::find_if(off_.begin(), off_.end(),
                     [&](const std::pair<Axis, Length>& one) { return one.first == reading.axis; });
    if (off == off_.end()) continue;
    const auto tolerance = toleranceOf(reading.figure, part_.general);
    const auto limits = limitsOf(reading.figure, tolerance);
    const auto now = reading.figure.value.plus(to ? off->second : off->second.negated());
    if (!limits || !now) continue;
    Effect effect;
    effect.of = Effect::Of::reading;
    effect.name = reading.id;
    effect.before = {*now, *now};
    effect.after =
        then.whereFound ? effect.before : FoundSize{reading.figure.value, reading.figure.value};
    effect.holds = holds(effect.after, {limits->least, limits->greatest});
    all.push_back(std::move(effect));
  }
}

void Effects::addGaps(const HoleThen& then, std::vector<Effect>& all) const {
  const FoundFigures found = foundFigures(job_, solutions_);
  FoundFigures after = found;
  after.size = [&](const PartPlace& at) -> std::optional<SizeLimits> {
    const bool here = at.part == row_.part && at.place == row_.place;
    if (here && then.size.least && then.size.greatest) {
      return SizeLimits{*then.size.least, *then.size.greatest};
    }
    return found.size(at);
  };
  after.distance = [&](const Part& part, Axis axis, const Id& from, const Id& to) {
    const bool here = part.name == row_.part && (from == row_.place || to == row_.place);
    // Put on its place it is where the print has it.
    if (here && !then.whereFound) return std::optional<SizeLimits>();
    return found.distance(part, axis, from, to);
  };
  for (const Gap& gap : job_.gaps) {
    const bool its = std::any_of(gap.members.begin(), gap.members.end(), [&](const GapMember& one) {
      const bool walks = one.part == row_.part && (one.from == row_.place || one.to == row_.place);
      return walks || (one.hole && isAt(*one.hole, row_)) || (one.shaft && isAt(*one.shaft, row_));
    });
    if (!its) continue;
    const Result<GapStack> before = gapStackAsFound(job_, gap, found);
    const Result<GapStack> later = gapStackAsFound(job_, gap, after);
    if (!before || !later) continue;
    Effect effect;
    effect.of = Effect::Of::gap;
    effect.name = gap.name;
    effect.before = asFound(before->stack.worst);
    effect.after = asFound(later->stack.worst);
    effect.holds = later->keeps(later->stack.worst);
    all.push_back(std::move(effect));
  }
}

}  // namespace inchwright
