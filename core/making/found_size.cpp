#include "core/making/found_size.h"

#include <algorithm>

#include "core/part/name_table.h"
#include "core/shop/gauge_pins.h"

namespace inchwright {
namespace {

constexpr NameTable<6> kVerdictNames{"in",        "over",        "under",
                                     "off_place", "cannot_tell", "not_measured"};

constexpr std::string_view kWidestClass = "ZZ";
constexpr Length kLargestPin = Length::ticks(4510 * (Length::kTicksPerInch / 1000));

/// All that a pin may be.
std::optional<SizeLimits> pinLimits(const TriedPin& pin, const PinHabit& habit) {
  const std::string& written = pin.pinClass.empty() ? habit.pinClass : pin.pinClass;
  const std::string_view pinClass = written.empty() ? kWidestClass : std::string_view(written);
  const std::optional<PinSign> sign = pin.sign ? pin.sign : habit.sign;
  Result<Length> width = gaugePinTolerance(pinClass, pin.size.value);
  if (!width) width = gaugePinTolerance(kWidestClass, kLargestPin);
  Tolerance tolerance;
  if (sign != PinSign::minus) tolerance.upper = *width;
  if (sign != PinSign::plus) tolerance.lower = width->negated();
  return limitsOf(pin.size, tolerance);
}

const Error kTooFar{ErrorCode::outOfRange, "what was measured can't be held"};

}  // namespace

std::string_view nameOf(Verdict verdict) {
  return nameIn(kVerdictNames, verdict);
}

Result<FoundSize> foundSize(const MadePlace& made, const PinHabit& habit) {
  FoundSize found;
  if (made.size) {
    Tolerance error;
    if (made.with && made.with->error) {
      error = Tolerance::symmetric(made.with->error->value.magnitude());
    }
    const auto limits = limitsOf(*made.size, error);
    if (!limits) return kTooFar;
    found = {limits->least, limits->greatest};
  }
  FoundSize byPins;
  if (made.go) {
    const auto pin = pinLimits(*made.go, habit);
    if (!pin) return kTooFar;
    byPins.least = pin->least;
  }
  if (made.noGo) {
    const auto pin = pinLimits(*made.noGo, habit);
    if (!pin) return kTooFar;
    byPins.greatest = pin->greatest;
  }
  if (!found.known()) return byPins;
  FoundSize both = found;
  if (byPins.least) both.least = std::max(*both.least, *byPins.least);
  if (byPins.greatest) both.greatest = std::min(*both.greatest, *byPins.greatest);
  if (*both.least <= *both.greatest) return both;
  if (byPins.least) found.greatest = std::max(*found.greatest, *byPins.least);
  if (byPins.greatest) found.least = std::min(*found.least, *byPins.greatest);
  return found;
}

Verdict verdictOf(const FoundSize& found, const FoundSize& wanted) {
  if (!found.known()) return Verdict::notMeasured;
  if (wanted.greatest && found.least && *found.least > *wanted.greatest) return Verdict::over;
  if (wanted.least && found.greatest && *found.greatest < *wanted.least) return Verdict::under;
  const bool reachesDown = !wanted.least || (found.least && *found.least >= *wanted.least);
  const bool reachesUp =
      !wanted.greatest || (found.greatest && *found.greatest <= *wanted.greatest);
  return reachesDown && reachesUp ? Verdict::in : Verdict::cannotTell;
}

bool isUnlikely(const FoundSize& found, Length nominal) {
  constexpr std::int64_t kAlwaysLikely = Length::kTicksPerInch / 16;
  const std::int64_t far = std::max(kAlwaysLikely, std::abs(nominal.ticks()) / 4);
  const auto isFar = [&](const std::optional<Length>& end) {
    const auto off = end ? end->minus(nominal) : std::nullopt;
    return end && (!off || std::abs(off->ticks()) > far);
  };
  return isFar(found.least) || isFar(found.greatest);
}

PinHabit pinHabit(const Shop& shop) {
  if (!shop.pins || shop.pins->empty()) return {};
  return {shop.pins->front().pinClass, shop.pins->front().sign};
}

}  // namespace inchwright
