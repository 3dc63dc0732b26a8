#include <algorithm>
#include <cmath>
#include <numbers>
#include <unordered_map>

#include "core/base/sets.h"
#include "core/measure/writing.h"
#include "core/part/plain_decimal.h"
#include "core/place/face_plane.h"
#include "core/solution/doubts.h"

namespace inchwright {
namespace {

/// A traced place is good to about 1/64 in; three deviations of the difference of two.
constexpr double kTracingError = 3 * 1.4142 / 64;
/// Of twice the distance from the middle of two traced places to a third; of a radius from three
/// points of a curve, and a share of it.
constexpr double kSizeError = 0.1;
constexpr double kArcError = 0.2;
/// A copy is stretched by a little, once squared up.
constexpr double kStretch = 0.02;
/// Where many readings agree, how well they do tells how well this print is traced: from so many
/// on, but never better than to about 1/128 in; and its two axes may be stretched differently.
constexpr std::size_t kEnoughToTell = 8;
constexpr double kFinestTracing = 1.4142 / 128;
constexpr double kUneven = 0.005;
constexpr double kDeviations = 4;
/// Inches; a shorter distance tells more of its ends than of the scale.
constexpr double kTellsScale = 0.5;
/// From here on two traced places lie the other way round.
constexpr double kTurned = 0.06;
/// Inches; two places nearer to each other show no direction.
constexpr double kLeastForAngle = 0.25;
/// Degrees; as far as two traced places so near to each other turn by their errors.
constexpr double kTurnedAngle = 15;

/// A reading between two traced features of one view, or the size of a feature that is traced.
struct Drawn {
  Source source;
  /// From the one end to the other as drawn: inches, along the axis or straight, or degrees of the
  /// direction. Of an arc its radius, of turned work its diameter.
  double value = 0;
};

Face viewOf(const Feature& feature) {
  return feature.is<kind::Edge>() ? Face::top : feature.face;
}

/// Of every place along an axis, in inches as drawn. What a feature's own figures hold to it, such
/// as the holes of a row, is drawn so far from where the feature is.
std::vector<std::optional<double>> tracedPlaces(const Part& part, const AxisSystem& system) {
  const AxisNetwork& network = system.network();
  Sets held(network.places.size());
  for (const AxisLink& link : network.links) {
    if (link.source.kind == SourceKind::feature) held.join(link.from, link.to);
  }
  std::vector<std::optional<double>> traced(network.places.size());
  std::vector<std::uint32_t> own(part.features.size());
  for (std::uint32_t i = 0; i < traced.size(); ++i) {
    if (network.isInner[i]) continue;
    own[network.owners[i]] = i;
    traced[i] = tracedAlong(part.features[network.owners[i]], network.axis);
  }
  for (std::uint32_t i = 0; i < traced.size(); ++i) {
    const std::uint32_t whole = own[network.owners[i]];
    if (!network.isInner[i] || !traced[whole] || held.find(i) != held.find(whole)) continue;
    const std::int64_t apart = system.forest().position(i) - system.forest().position(whole);
    traced[i] = *traced[whole] + Length::ticks(apart).toInches();
  }
  return traced;
}

std::vector<Drawn> drawnAlong(const Part& part, const AxisSystem& system) {
  const AxisNetwork& network = system.network();
  const std::vector<std::optional<double>> traced = tracedPlaces(part, system);
  const auto view = [&](std::uint32_t node) { return viewOf(part.features[network.owners[node]]); };
  std::vector<Drawn> all;
  for (const AxisLink& link : network.links) {
    if (link.source.kind != SourceKind::reading || !traced[link.from] || !traced[link.to]) continue;
    if (view(link.from) != view(link.to)) continue;
    if (network.owners[link.from] == network.owners[link.to]) continue;
    all.push_back({link.source, *traced[link.to] - *traced[link.from]});
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
    if (drawn) all.push_back({Source{SourceKind::reading, i}, *drawn});
  }
  return all;
}

/// Of arcs the radius; of turned work twice as far from the centre line as a surface is traced.
std::vector<Drawn> drawnSizes(const Part& part) {
  std::vector<Drawn> all;
  const Feature* line = part.turned ? part.feature(centreLine().id) : nullptr;
  for (std::uint32_t i = 0; i < part.features.size(); ++i) {
    const Feature& feature = part.features[i];
    const Source source{SourceKind::feature, i};
    if (feature.is<kind::Arc>() && radiusOf(feature) && feature.traced.size() == 3) {
      if (const auto radius = plainDecimal(feature.traced[2])) all.push_back({source, *radius});
    }
    const bool isSurface = feature.is<kind::Outside>() || feature.is<kind::Bored>();
    if (line == nullptr || !isSurface || !diameterOf(feature)) continue;
    const Axis across = axesIn(feature.face)[1];
    const auto middle = tracedAlong(*line, across), surface = tracedAlong(feature, across);
    if (middle && surface) all.push_back({source, 2 * std::abs(*surface - *middle)});
  }
  return all;
}

const Lettered& figureOf(const Part& part, const Drawn& drawn) {
  if (drawn.source.kind == SourceKind::reading) return part.readings[drawn.source.index].figure;
  const Feature& feature = part.features[drawn.source.index];
  return feature.is<kind::Arc>() ? *radiusOf(feature) : *diameterOf(feature);
}

bool isAngle(const Part& part, const Drawn& drawn) {
  return drawn.source.kind == SourceKind::reading &&
         part.readings[drawn.source.index].kind == ReadingKind::angle;
}

bool isRoughlyAt(const Part& part, const Drawn& drawn) {
  if (isAngle(part, drawn)) {
    const Reading& reading = part.readings[drawn.source.index];
    const double way = reading.sense == Sense::clockwise ? -1 : 1;
    const double off = drawn.value - way * (reading.angle ? reading.angle->value.toDegrees() : 0);
    return std::abs(std::remainder(off, 360.0)) <= kTurnedAngle;
  }
  const double lettered = figureOf(part, drawn).value.toInches();
  const double off = std::abs(drawn.value - lettered);
  if (drawn.source.kind == SourceKind::reading) return off <= kTracingError + kStretch * lettered;
  const bool isArc = part.features[drawn.source.index].is<kind::Arc>();
  return off <= kSizeError + (isArc ? kArcError : kStretch) * drawn.value;
}

/// How the readings along the axes that are roughly at their tracing agree with it: the middle one
/// tells the scale, so that a misread one hardly moves it, and what is left how finely this print
/// is traced.
class Tracings {
 public:
  Tracings(const Part& part, const std::vector<Drawn>& along) : part_(part) {
    std::vector<std::pair<double, double>> pairs;
    for (const Drawn& one : along) {
      if (!isRoughlyAt(part, one)) continue;
      pairs.push_back({figureOf(part, one).value.toInches(), one.value});
    }
    if (pairs.size() < kEnoughToTell) return;
    std::vector<double> ratios, off;
    for (const auto& [lettered, drawn] : pairs) {
      squares_ += lettered * lettered;
      if (lettered >= kTellsScale) ratios.push_back(drawn / lettered);
    }
    if (!ratios.empty()) scale_ = middleOf(ratios);
    for (const auto& [lettered, drawn] : pairs) off.push_back(std::abs(drawn - scale_ * lettered));
    constexpr double kOfNormal = 1.4826;  // deviation by median, of normal errors
    deviation_ = std::max(kOfNormal * middleOf(off), kFinestTracing);
  }

  /// Whether a figure is what is drawn, as far as the tracing of the others can tell.
  bool agrees(const Drawn& one) const {
    if (!isRoughlyAt(part_, one)) return false;
    const bool isAlong = one.source.kind == SourceKind::reading &&
                         part_.readings[one.source.index].kind == ReadingKind::along;
    if (!deviation_ || !isAlong) return true;
    // At the scale that the others tell as well as they can, or as large as it is meant to be.
    const double lettered = figureOf(part_, one).value.toInches();
    const double others = squares_ - lettered * lettered;
    if (others <= 0) return true;
    const double off =
        std::min(std::abs(one.value - scale_ * lettered), std::abs(one.value - lettered));
    return off <=
           kDeviations * *deviation_ * (1 + lettered / std::sqrt(others)) + kUneven * lettered;
  }

 private:
  static double middleOf(std::vector<double>& values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
  }

  const Part& part_;
  double squares_ = 0;  ///< of the figures, inches
  double scale_ = 1;
  std::optional<double> deviation_;  ///< of a distance; empty where too few agree
};

Length in64ths(double inches) {
  return Length::ticks(std::llround(std::abs(inches) * 64) * (Length::kTicksPerInch / 64));
}

Doubt offTrace(const Part& part, const Drawn& drawn, bool isTurned) {
  Doubt doubt{{isTurned ? DoubtTopic::swappedEnds : DoubtTopic::offTrace}};
  doubt.source = drawn.source;
  if (drawn.source.kind == SourceKind::reading) {
    const Reading& reading = part.readings[drawn.source.index];
    doubt.key.readings = {reading.id};
    if (reading.kind == ReadingKind::along) doubt.key.axis = reading.axis;
    doubt.nearby = {reading.from, reading.to};
  } else {
    doubt.key.places = {part.features[drawn.source.index].id};
  }
  if (isAngle(part, drawn)) {
    doubt.drawnDegrees =
        static_cast<int>(std::lround(drawn.value < 0 ? drawn.value + 360 : drawn.value));
  } else {
    doubt.drawn = in64ths(drawn.value);
  }
  doubt.about = figureOf(part, drawn).text + ", " +
                (doubt.drawn ? writePlain(*doubt.drawn, Unit::inch)
                             : std::to_string(*doubt.drawnDegrees) + " degrees");
  return doubt;
}

}  // namespace

void addTracedDoubts(const Part& part, const std::array<AxisSystem, 3>& systems,
                     const Solution& solution, std::vector<Doubt>& doubts) {
  std::vector<Drawn> all;
  const auto add = [&all](const std::vector<Drawn>& more) {
    all.insert(all.end(), more.begin(), more.end());
  };
  for (const AxisSystem& system : systems) add(drawnAlong(part, system));
  const Tracings tracings(part, all);
  add(drawnAcross(part));
  add(drawnSizes(part));
  // One drawing has one scale: all its lengths tell whether it is kept to.
  std::size_t lengths = 0, agreeing = 0;
  for (const Drawn& one : all) {
    if (isAngle(part, one)) continue;
    ++lengths;
    agreeing += isRoughlyAt(part, one) ? 1 : 0;
  }
  const bool toScale = agreeing >= 2 && 2 * agreeing > lengths;
  for (const Drawn& one : all) {
    const bool isReading = one.source.kind == SourceKind::reading;
    if (isReading && solution.status[one.source.index] != ReadingStatus::alone) continue;
    if (tracings.agrees(one)) continue;
    const bool isTurned = isReading && one.value < -kTurned &&
                          part.readings[one.source.index].kind == ReadingKind::along &&
                          figureOf(part, one).value.ticks() > 0;
    if (isTurned || toScale) doubts.push_back(offTrace(part, one, isTurned));
  }
}

}  // namespace inchwright
