#include "core/checks/held_shapes.h"

#include <algorithm>

#include "core/plan/machine_axes.h"

namespace inchwright {
namespace {

std::optional<std::int64_t> ticksOf(const std::optional<Length>& length) {
  if (!length) return std::nullopt;
  return length->ticks();
}

// The left end of the work as it lies; where the jaws run away from the operator, the near one.
bool leftEndIsHigh(const Setup& setup, Axis along) {
  const MachineAxes axes = machineAxes(setup.face, setup.turn);
  return axes.x.axis == along ? axes.x.sign < 0 : axes.y.sign < 0;
}

/// One side of a band across the work: from `near` to `far` of a jaw, in the direction into the
/// work.
void setBand(Rectangle& rectangle, std::size_t axis, std::int64_t jawAt, int into,
             std::int64_t near, std::int64_t far) {
  const std::int64_t a = jawAt + into * near, b = jawAt + into * far;
  rectangle.low[axis] = std::min(a, b);
  rectangle.high[axis] = std::max(a, b);
}

}  // namespace

std::optional<ViceFrame> viceOf(const CheckedWork& work) {
  const Setup& setup = work.setup;
  if (!setup.jaw) return std::nullopt;
  const auto axes = axesIn(setup.face);
  ViceFrame vice;
  vice.fixedSide = *setup.jaw;
  vice.movingSide = oppositeOf(vice.fixedSide);
  const Axis across = axisAcross(vice.fixedSide);
  if (across == axisAcross(setup.face)) return std::nullopt;
  vice.across = axes[0] == across ? 0 : 1;
  vice.along = 1 - vice.across;
  const auto fixedAt = work.block.now(vice.fixedSide), movingAt = work.block.now(vice.movingSide);
  if (!fixedAt || !movingAt) return std::nullopt;
  vice.into = -outward(vice.fixedSide);
  vice.fixedAt = fixedAt->ticks();
  vice.movingAt = movingAt->ticks();
  const Axis along = axes[vice.along];
  vice.lowEnd = ticksOf(work.block.now(sideAt(along, false)));
  vice.highEnd = ticksOf(work.block.now(sideAt(along, true)));
  const bool stopAlong = setup.stop && axisAcross(*setup.stop) == along;
  vice.fromHighEnd = stopAlong ? outward(*setup.stop) > 0 : leftEndIsHigh(setup, along);
  return vice;
}

Rectangle rectangleOf(const LaidParallel& one, const ViceFrame& vice) {
  Rectangle rectangle;
  const std::int64_t gap = one.gap ? one.gap->value.ticks() : 0;
  const bool fixed = one.jaw == Jaw::fixed;
  setBand(rectangle, vice.across, fixed ? vice.fixedAt : vice.movingAt,
          fixed ? vice.into : -vice.into, gap, gap + one.thick->value.ticks());
  const auto& end = vice.fromHighEnd ? vice.highEnd : vice.lowEnd;
  if (!end) return rectangle;
  const int way = vice.fromHighEnd ? -1 : 1;
  const auto place = [&](const std::optional<Lettered>& from) -> std::optional<std::int64_t> {
    if (!from) return std::nullopt;
    return *end + way * from->value.ticks();
  };
  rectangle.low[vice.along] = place(way > 0 ? one.from : one.to);
  rectangle.high[vice.along] = place(way > 0 ? one.to : one.from);
  return rectangle;
}

Rectangle jawRectangle(Side side, std::int64_t at, const CheckedWork& work, const ViceFrame& vice) {
  Rectangle rectangle;
  if (outward(side) > 0) {
    rectangle.low[vice.across] = at;
  } else {
    rectangle.high[vice.across] = at;
  }
  const Axis along = axesIn(work.setup.face)[vice.along];
  for (const bool upper : {false, true}) {
    const auto& out = work.setup.held.overhang[static_cast<std::size_t>(sideAt(along, upper))];
    const auto& end = upper ? vice.highEnd : vice.lowEnd;
    if (!out || !end) continue;
    auto& bound = upper ? rectangle.high[vice.along] : rectangle.low[vice.along];
    bound = *end + (upper ? -1 : 1) * out->value.ticks();
  }
  return rectangle;
}

std::optional<Rectangle> stopRectangle(const CheckedWork& work) {
  const auto& stop = work.setup.stop;
  const auto axes = axesIn(work.setup.face);
  if (!stop || axisAcross(*stop) == axisAcross(work.setup.face)) return std::nullopt;
  const auto at = work.block.now(*stop);
  if (!at) return std::nullopt;
  Rectangle rectangle;
  const std::size_t axis = axes[0] == axisAcross(*stop) ? 0 : 1;
  (outward(*stop) > 0 ? rectangle.low : rectangle.high)[axis] = at->ticks();
  return rectangle;
}

std::optional<Rectangle> rectangleOf(const Obstacle& obstacle, const CheckedWork& work) {
  const auto axes = axesIn(work.setup.face);
  Rectangle rectangle;
  for (std::size_t i = 0; i < 2; ++i) {
    const auto& span = obstacle.along[static_cast<std::size_t>(axes[i])];
    if (!span) continue;
    const auto lower = work.block.finished(sideAt(axes[i], false));
    if (!lower) return std::nullopt;
    rectangle.low[i] = lower->ticks() + span->first.value.ticks();
    rectangle.high[i] = lower->ticks() + span->second.value.ticks();
  }
  return rectangle;
}

}  // namespace inchwright
