#include "core/shop/drill_work.h"

#include <cmath>
#include <numbers>

#include "core/shop/sizes.h"

namespace inchwright {
namespace {

struct OversizeRow {
  Length upTo;
  Length mean;
  Length greatest;
};

constexpr OversizeRow kOversize[] = {
    {sixtyFourths(4), tenThousandths(15), tenThousandths(20)},
    {sixtyFourths(8), tenThousandths(30), tenThousandths(45)},
    {sixtyFourths(16), tenThousandths(40), tenThousandths(65)},
    {sixtyFourths(32), tenThousandths(50), tenThousandths(80)},
    {sixtyFourths(48), tenThousandths(50), tenThousandths(80)},
    {sixtyFourths(64), tenThousandths(70), tenThousandths(90)},
};

struct ToleranceRow {
  Length upTo;
  Length over;
};

constexpr ToleranceRow kDrilledHole[] = {
    {sixtyFourths(8), tenThousandths(40)},   {sixtyFourths(16), tenThousandths(50)},
    {sixtyFourths(32), tenThousandths(60)},  {sixtyFourths(48), tenThousandths(80)},
    {sixtyFourths(64), tenThousandths(100)}, {sixtyFourths(128), tenThousandths(120)},
};

}  // namespace

Length pointLength(Length diameter, int includedDegrees) {
  const double half = includedDegrees * std::numbers::pi / 360;
  return Length::ticks(std::llround(static_cast<double>(diameter.ticks()) / 2 / std::tan(half)));
}

DrillOversize drillOversize(Length diameter) {
  for (const OversizeRow& row : kOversize) {
    if (diameter <= row.upTo) return {row.mean, row.greatest};
  }
  const OversizeRow& last = kOversize[std::size(kOversize) - 1];
  return {last.mean, last.greatest};
}

DrilledHoleTolerance drilledHoleTolerance(Length diameter) {
  constexpr Length kUnder = tenThousandths(10);
  for (const ToleranceRow& row : kDrilledHole) {
    if (diameter <= row.upTo) return {row.over, kUnder};
  }
  return {kDrilledHole[std::size(kDrilledHole) - 1].over, kUnder};
}

}  // namespace inchwright
