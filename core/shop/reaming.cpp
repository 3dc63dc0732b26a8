#include "core/shop/reaming.h"

#include "core/shop/sizes.h"

namespace inchwright {
namespace {

struct Allowance {
  Length least;
  std::string_view rule;
};

Allowance allowanceFor(Length reamer, Unit unit) {
  if (unit == Unit::inch) {
    if (reamer >= sixtyFourths(8)) {
      return {sixtyFourths(1),
              "about 1/64 under the reamer (Applied Science for Metal Workers par. 313)"};
    }
    return {tenThousandths(50), "0.005 to 0.010 under a small reamer (trade table)"};
  }
  if (reamer <= microns(5000)) {
    return {microns(100), "0.1 to 0.2 mm under a reamer up to 5 mm (course table)"};
  }
  if (reamer <= microns(20'000)) {
    return {microns(200), "0.2 to 0.3 mm under a reamer up to 20 mm (course table)"};
  }
  return {microns(300), "0.3 to 0.5 mm under a larger reamer (course table)"};
}

std::optional<DrillUnder> largestLeaving(Length size, Length least, std::string_view rule,
                                         const DrillSets& sets) {
  const std::optional<Length> limit = size.minus(least);
  const Drill* drill = limit ? drillAtOrBelow(*limit, sets) : nullptr;
  if (!drill) return std::nullopt;
  return DrillUnder{*drill, Length::ticks(size.ticks() - drill->diameter.ticks()),
                    std::string(rule)};
}

}  // namespace

std::optional<DrillUnder> drillUnderReamer(Length reamer, Unit unit, const DrillSets& sets) {
  const Allowance allowance = allowanceFor(reamer, unit);
  std::optional<DrillUnder> under = largestLeaving(reamer, allowance.least, allowance.rule, sets);
  if (!under || under->left > sixtyFourths(2)) return std::nullopt;
  return under;
}

std::optional<DrillUnder> drillUnderBore(Length bore, const DrillSets& sets) {
  return largestLeaving(bore, sixtyFourths(2), "at least 1/32 under, for boring (from memory)",
                        sets);
}

}  // namespace inchwright
