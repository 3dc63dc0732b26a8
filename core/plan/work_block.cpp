#include "core/plan/work_block.h"

#include "core/plan/zero.h"

namespace inchwright {
namespace {

std::optional<Length> spanBetween(const std::optional<Length>& low,
                                  const std::optional<Length>& high) {
  if (!low || !high || *high <= *low) return std::nullopt;
  return high->minus(*low);
}

}  // namespace

Side oppositeOf(Side side) {
  switch (side) {
    case Side::top:
      return Side::bottom;
    case Side::bottom:
      return Side::top;
    case Side::front:
      return Side::back;
    case Side::back:
      return Side::front;
    case Side::left:
      return Side::right;
    case Side::right:
      break;
  }
  return Side::left;
}

Side sideAt(Axis axis, bool upper) {
  switch (axis) {
    case Axis::x:
      return upper ? Side::right : Side::left;
    case Axis::y:
      return upper ? Side::back : Side::front;
    case Axis::z:
      break;
  }
  return upper ? Side::top : Side::bottom;
}

WorkBlock::WorkBlock(const Part& part, const Solution& solution, const Setup* setup) {
  for (const Feature& feature : part.features) {
    const std::optional<Side> side = sideOf(feature);
    if (!side || outerSideOf(feature, axisAcross(*side)) != side) continue;
    const auto index = static_cast<std::size_t>(*side);
    const Position* position = placedPosition(solution, feature.id, axisAcross(*side));
    if (!position) continue;
    const std::optional<Length> at = nearestTick(position->ticks);
    if (!at) continue;
    // Of several the outermost.
    const std::optional<Length>& known = sides_[index];
    const bool further = !known || (outward(*side) > 0 ? *at > *known : *at < *known);
    if (!further) continue;
    sides_[index] = at;
    ids_[index] = feature.id;
  }
  if (!setup) return;
  for (std::size_t i = 0; i < stock_.size(); ++i) stock_[i] = setup->stockOn(static_cast<Side>(i));
}

std::optional<Length> WorkBlock::now(Side side) const {
  const std::optional<Length> at = finished(side);
  if (!at) return std::nullopt;
  return outward(side) > 0 ? at->plus(stock(side)) : at->minus(stock(side));
}

std::optional<Length> WorkBlock::sizeFinished(Axis axis) const {
  return spanBetween(finished(sideAt(axis, false)), finished(sideAt(axis, true)));
}

std::optional<Length> WorkBlock::sizeNow(Axis axis) const {
  return spanBetween(now(sideAt(axis, false)), now(sideAt(axis, true)));
}

}  // namespace inchwright
