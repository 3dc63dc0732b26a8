#include <algorithm>
#include <cmath>
#include <numbers>
#include <unordered_map>

#include "core/measure/writing.h"
#include "core/place/face_plane.h"
#include "core/solution/doubts.h"

namespace inchwright {
namespace {

/// A traced place is good to about 1/64 in; three deviations of the difference of two.
constexpr double kTracingError = 3 * 1.4142 / 64;
/// A copy is stretched by a little, once squared up.
constexpr double kStretch = 0.02;
/// From here on two traced places lie the other way round.
constexpr double kTurned = 0.06;
/// Inches; two places nearer to each other show no direction.
constexpr double kLeastForAngle = 0.25;
/// Degrees; as far as two traced places so near to each other turn by their errors.
constexpr double kTurnedAngle = 15;

/// A reading between two traced features of one view.
struct Drawn {
  std::uint32_t reading = 0;
  /// From the one end to the other as drawn: inches, along the axis or straight, or degrees of the
  /// direction.
  double value = 0;
};

Face viewOf(const Feature& feature) {
  return feature.is<kind::Edge>() ? Face::top : feature.face;
}

std::vector<Drawn> drawnAlong(const Part& part, const AxisNetwork& network) {
  std::vector<std::optional<double>> traced(network.places.size());
  for (std::size_t i = 0; i < traced.size(); ++i) {
    const Feature& owner = part.features[network.owners[i]];
    if (!network.isInner[i]) traced[i] = tracedAlong(owner, network.axis);
  }
  const auto view = [&](std::uint32_t node) { return viewOf(part.features[network.owners[node]]); };
  std::vector<Drawn> all;
  for (const AxisLink& link : network.links) {
    if (link.source.kind != SourceKind::reading || !traced[link.from] || !traced[link.to]) continue;
    if (view(link.from) != view(link.to)) continue;
    all.push_back({link.source.index, *traced[link.to] - *traced[link.from]});
  }
  return all;
}

/// Of a centre distance or an angle; empty for what is no distance or direction of two.
std::optional<double> drawnAcross(const Reading& reading, const Feature& from, const Feature& to) {
  const Face view = viewOf(from);
  if (view != viewOf(to)) return std::nullopt;
  const auto along = [&](Axis axis) -> std::optional<double> {
    const auto start = tracedAlong(from, axis), end = tracedAlong(to, axis);
    return start && end ? std::optional(*end - *start) : std::nullopt;
  };
  const auto [first, second] = axesIn(view);
  const auto across = along(first), up = along(second);
  if (!across || !up) return std::nullopt;
  if (reading.kind == ReadingKind::centres) return std::hypot(*across, *up);
  // Of a short distance the direction is drawn too badly; one from a line may mean four rays.
  const bool isPlain = reading.kind == ReadingKind::angle && reading.against.empty();
  if (!isPlain || std::hypot(*across, *up) < kLeastForAngle) return std::nullopt;
  const auto own = ownDirections(view);
  return std::atan2(*up * own[1], *across * own[0]) * 180 / std::numbers::pi;
}

std::vector<Drawn> drawnAcross(const Part& part) {
  std::unordered_map<std::string_view, const Feature*> features;
  std::vector<Drawn> all;
  for (std::uint32_t i = 0; i < part.readings.size(); ++i) {
    const Reading& reading = part.readings[i];
    if (reading.kind != ReadingKind::centres && reading.kind != ReadingKind::angle) continue;
    if (features.empty()) {
      for (const Feature& feature : part.features) features.emplace(feature.id, &feature);
    }
    const auto from = features.find(reading.from), to = features.find(reading.to);
    if (from == features.end() || to == features.end()) continue;
    const auto drawn = drawnAcross(reading, *from->second, *to->second);
    if (drawn) all.push_back({i, *drawn});
  }
  return all;
}

bool agrees(const Reading& reading, double drawn) {
  if (reading.kind == ReadingKind::angle) {
    const double way = reading.sense == Sense::clockwise ? -1 : 1;
    const double off = drawn - way * (reading.angle ? reading.angle->value.toDegrees() : 0);
    return std::abs(std::remainder(off, 360.0)) <= kTurnedAngle;
  }
  const double lettered = reading.figure.value.toInches();
  return std::abs(drawn - lettered) <= kTracingError + kStretch * lettered;
}

Doubt offTrace(const Part& part, const Drawn& drawn, bool isTurned) {
  const Reading& reading = part.readings[drawn.reading];
  Doubt doubt{{isTurned ? DoubtTopic::swappedEnds : DoubtTopic::offTrace, {}, {}, {reading.id}}};
  if (reading.kind == ReadingKind::along) doubt.key.axis = reading.axis;
  doubt.source = Source{SourceKind::reading, drawn.reading};
  doubt.nearby = {reading.from, reading.to};
  if (reading.kind == ReadingKind::angle) {
    doubt.drawnDegrees =
        static_cast<int>(std::lround(drawn.value < 0 ? drawn.value + 360 : drawn.value));
    doubt.about = reading.figure.text + ", " + std::to_string(*doubt.drawnDegrees) + " degrees";
  } else {
    constexpr std::int64_t k64th = Length::kTicksPerInch / 64;
    doubt.drawn = Length::ticks(std::llround(std::abs(drawn.value) * 64) * k64th);
    doubt.about = reading.figure.text + ", " + writePlain(*doubt.drawn, Unit::inch);
  }
  return doubt;
}

}  // namespace

void addTracedDoubts(const Part& part, const std::array<AxisSystem, 3>& systems,
                     const Solution& solution, std::vector<Doubt>& doubts) {
  std::vector<Drawn> all;
  for (const AxisSystem& system : systems) {
    const std::vector<Drawn> along = drawnAlong(part, system.network());
    all.insert(all.end(), along.begin(), along.end());
  }
  // One drawing has one scale: both its axes tell whether it is kept to.
  const auto agreeing =
      static_cast<std::size_t>(std::count_if(all.begin(), all.end(), [&](const Drawn& one) {
        return agrees(part.readings[one.reading], one.value);
      }));
  const bool toScale = agreeing >= 2 && 2 * agreeing > all.size();
  const std::vector<Drawn> across = drawnAcross(part);
  all.insert(all.end(), across.begin(), across.end());
  for (const Drawn& one : all) {
    const Reading& reading = part.readings[one.reading];
    if (solution.status[one.reading] != ReadingStatus::alone) continue;
    if (agrees(reading, one.value)) continue;
    const bool isTurned = reading.kind == ReadingKind::along && one.value < -kTurned &&
                          reading.figure.value.ticks() > 0;
    if (isTurned || toScale) doubts.push_back(offTrace(part, one, isTurned));
  }
}

}  // namespace inchwright
