#include "core/making/put_right.h"

#include <algorithm>

#include "core/measure/writing.h"
#include "core/shop/threads.h"

namespace inchwright {
namespace {

std::int64_t roundStep(Unit unit) {
  return unit == Unit::inch ? Length::kTicksPerInch / 64 : Length::kTicksPerMillimetre / 2;
}

/// However wide its limits, what is further off a size was never opened to it; from memory.
Length nearTo(Unit unit) {
  return Length::ticks(unit == Unit::inch ? Length::kTicksPerInch / 500
                                          : Length::kTicksPerMillimetre / 20);
}

/// The thread in place of the print's; what it is else stays.
std::optional<NextSize> nextThread(const Drilled& drilled, const WrongHole& hole) {
  const Result<Thread> now = threadNamed(drilled.thread);
  if (!now) return std::nullopt;
  const Thread* next = nullptr;
  for (const Thread& one : threads()) {
    if (one.series != now->series || one.major <= now->major) continue;
    if (one.tapDrillDiameter < hole.found || (next && one.major >= next->major)) continue;
    next = &one;
  }
  if (!next) return std::nullopt;
  const std::optional<SizeLimits> limits = tappedLimits(*next);
  if (!limits) return std::nullopt;
  NextSize size{next->major, next->name, *limits, drilled, hole.unit};
  size.drilled.thread = next->name;
  return size;
}

std::optional<Length> roundSize(const WrongHole& hole) {
  const std::int64_t grid = roundStep(hole.unit);
  const Length reached = Length::ticks(hole.found.ticks() / grid * grid);
  const auto over = hole.wanted.greatest.minus(hole.nominal);
  const auto most = over ? reached.plus(std::min(*over, nearTo(hole.unit))) : std::nullopt;
  if (reached > hole.nominal && most && hole.found <= *most) return reached;
  const auto least = hole.nominal.plus(Length::ticks(1));
  if (!least) return std::nullopt;
  const std::int64_t larger = std::max(hole.found, *least).ticks();
  const std::int64_t steps = larger / grid + (larger % grid > 0 ? 1 : 0);
  return Length::ticks(grid).times(steps);
}

}  // namespace

WrongHole wrongHole(const DrawnSize& drawn, const FoundSize& found, std::optional<Length> offX,
                    std::optional<Length> offY, Unit unit) {
  WrongHole hole;
  hole.unit = unit;
  hole.wanted = drawn.limits;
  hole.nominal = drawn.nominal;
  hole.found = found.greatest.value_or(drawn.limits.greatest);
  hole.offX = offX.value_or(Length());
  hole.offY = offY.value_or(Length());
  return hole;
}

std::optional<NextSize> nextSize(const Drilled& drilled, const WrongHole& hole) {
  if (drilled.make == Make::tap) return nextThread(drilled, hole);
  const std::optional<Length> size = roundSize(hole);
  if (!size) return std::nullopt;
  const auto by = size->minus(hole.nominal);
  const auto least = by ? hole.wanted.least.plus(*by) : std::nullopt;
  const auto greatest = by ? hole.wanted.greatest.plus(*by) : std::nullopt;
  if (!least || !greatest) return std::nullopt;
  NextSize next{*size, writePlain(*size, hole.unit), {*least, *greatest}, drilled, hole.unit};
  Lettered lettered;
  lettered.value = *size;
  lettered.unit = hole.unit;
  lettered.text = next.name;
  if (drilled.diameter) lettered.tolerance = drilled.diameter->tolerance;
  next.drilled.diameter = std::move(lettered);
  // Limits in figures are the old size's; those by name go by whatever size there is.
  const bool figures = !drilled.limits.empty() && drilled.limits.find_first_of("0123456789.") == 0;
  if (figures) {
    next.drilled.limits =
        writeDecimal(*least, hole.unit) + "/" + writeDecimal(*greatest, hole.unit);
  }
  return next;
}

const Mended* chosenWay(const Part& part, std::string_view place) {
  const Mended* last = nullptr;
  for (const Mended& one : part.mended) {
    if (one.place == place) last = &one;
  }
  return last;
}

std::optional<NextSize> chosenNextSize(const Part& part, std::string_view place,
                                       const FoundSize& found, Unit unit) {
  const Mended* const chosen = chosenWay(part, place);
  if (!chosen || chosen->way != WayOut::nextSize || !found.known()) return std::nullopt;
  const Result<DrawnSize> drawn = drawnSize(part, place);
  const auto feature = std::find_if(part.features.begin(), part.features.end(),
                                    [&](const Feature& one) { return isNamedBy(one, place); });
  if (!drawn || feature == part.features.end() || !feature->drilled()) return std::nullopt;
  return nextSize(*feature->drilled(), wrongHole(*drawn, found, {}, {}, unit));
}

bool isOpenedTo(const NextSize& next, const FoundSize& found) {
  if (next.drilled.make == Make::tap) return found.least && *found.least >= next.limits.least;
  const auto least = next.size.minus(nearTo(next.unit));
  return found.least && least && *found.least >= std::max(*least, next.limits.least);
}

bool isOtherThanChosen(const ChosenFigures& was, const ChosenFigures& now) {
  const std::int64_t within = was.exact ? 0 : Length::kTicksPerInch / 1000;
  const auto differ = [within](const std::optional<Length>& a, const std::optional<Length>& b) {
    if (!a || !b) return false;
    const auto apart = a->minus(*b);
    return !apart || apart->magnitude().ticks() > within;
  };
  return differ(was.bore, now.bore) || differ(was.least, now.least) ||
         differ(was.greatest, now.greatest);
}

Result<PutRight> putRight(WayOut way, const Drilled& drilled, const WrongHole& hole,
                          const FoundSize& found) {
  PutRight right;
  // What is over size by now can't be opened to it.
  const bool over = way == WayOut::openToSize && hole.found > hole.wanted.greatest;
  right.way = over ? WayOut::leave : way;
  right.found = found;
  if (way == WayOut::nextSize) {
    right.next = nextSize(drilled, hole);
    if (!right.next) return Error{ErrorCode::badRequest, "there is no next size for this hole", ""};
    return right;
  }
  const auto figuresOf = way == WayOut::bush            ? bushOnWantedCentre
                         : way == WayOut::plug          ? plugFor
                         : way == WayOut::eccentricBush ? eccentricBush
                                                        : nullptr;
  if (!figuresOf) return right;
  Result<Bushing> bushing = figuresOf(hole);
  if (!bushing) return bushing.error();
  right.bushing = *std::move(bushing);
  return right;
}

}  // namespace inchwright
