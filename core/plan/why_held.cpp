#include "core/plan/why_held.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/place/face_plane.h"

namespace inchwright {
namespace {

/// Positions in the plane of a setup's face, along the part's own axes.
class FaceOfSetup {
 public:
  explicit FaceOfSetup(const WorkAt& work)
      : work_(work), axes_(axesIn(work.setup.face)), own_(ownDirections(work.setup.face)) {}

  const std::array<Axis, 2>& axes() const { return axes_; }

  std::optional<std::array<Rational, 2>> ticksOf(const Id& place) const {
    std::array<Rational, 2> at;
    for (const std::size_t k : {0U, 1U}) {
      const Position* position = work_.position(place, axes_[k]);
      if (position == nullptr) return std::nullopt;
      at[k] = position->ticks;
    }
    return at;
  }

  std::optional<ReadoutPoint> shown(const std::array<Rational, 2>& at) const {
    ReadoutPoint point;
    for (const std::size_t k : {0U, 1U}) {
      const TableAxis* along = work_.along(axes_[k]);
      if (along == nullptr) return std::nullopt;
      Position position;
      position.ticks = at[k];
      position.how = How::numeric;
      const auto coordinate = work_.coordinate(*along, position);
      if (!coordinate) return std::nullopt;
      (along->machine == MachineAxis::x ? point.x : point.y) = *coordinate;
    }
    return point;
  }

  /// Ticks from one to another as the face is seen: to its right, and up.
  std::array<double, 2> way(const std::array<Rational, 2>& from,
                            const std::array<Rational, 2>& to) const {
    return {own_[0] * (to[0].toDouble() - from[0].toDouble()),
            own_[1] * (to[1].toDouble() - from[1].toDouble())};
  }

 private:
  const WorkAt& work_;
  std::array<Axis, 2> axes_;
  std::array<int, 2> own_;
};

std::optional<WhyHeld::End> endAt(const FaceOfSetup& face, const Id& place,
                                  const std::array<Rational, 2>& held) {
  const auto at = face.ticksOf(place);
  const auto shown = at ? face.shown(*at) : std::nullopt;
  if (!shown) return std::nullopt;
  const auto [right, up] = face.way(*at, held);
  const double degrees = std::atan2(up, right) * 180 / std::numbers::pi;
  return WhyHeld::End{place, *shown, Length::ticks(std::llround(std::hypot(right, up))),
                      degrees < 0 ? degrees + 360 : degrees};
}

// The other answers, moved as the first of the group would be: of what was solved at one go only
// for the place that was asked for.
void tellOthers(const FaceOfSetup& face, const BeyondChains& beyond,
                const std::array<Rational, 2>& at, WhyHeld& held) {
  for (const SeveralAnswers& several : beyond.answers) {
    const bool isOf =
        several.place == held.place ||
        (held.together.empty() &&
         std::find(several.about.begin(), several.about.end(), held.place) != several.about.end());
    if (!several.isTaken || !isOf || several.axes != face.axes()) continue;
    for (std::size_t i = 1; i < several.answers.size(); ++i) {
      std::array<Rational, 2> there = at;
      for (const std::size_t k : {0U, 1U}) {
        const auto by = Rational(several.answers[i][k].ticks() - several.answers[0][k].ticks());
        there[k] = at[k].plus(by).value_or(at[k]);
      }
      const auto shown = face.shown(there);
      if (!shown) continue;
      const auto [right, up] = face.way(at, there);
      held.others.push_back({*shown, Length::ticks(std::llround(std::hypot(right, up)))});
    }
  }
}

}  // namespace

std::optional<WhyHeld> heldAt(const WorkAt& work, const Id& place) {
  const BeyondChains& beyond = work.solution.beyond;
  const auto found = beyond.held.find(place);
  const FaceOfSetup face(work);
  if (found == beyond.held.end() || found->second.axes != face.axes()) return std::nullopt;
  const auto at = face.ticksOf(place);
  const auto shown = at ? face.shown(*at) : std::nullopt;
  if (!shown) return std::nullopt;
  const HeldBy& by = found->second;
  WhyHeld held{place, *shown, {}, by.understood, {}, by.together, {}};
  for (const std::uint32_t reading : by.readings) {
    held.readings.push_back(work.part.readings[reading].id);
  }
  for (const Id& end : by.from) {
    if (auto one = endAt(face, end, *at)) held.ends.push_back(*std::move(one));
  }
  tellOthers(face, beyond, *at, held);
  return held;
}

}  // namespace inchwright
