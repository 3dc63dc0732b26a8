#include "core/suspect/centre_suspects.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/place/part_plane.h"
#include "core/place/plane_rows.h"
#include "core/suspect/lookalike.h"

namespace inchwright {
namespace {

// As the look-alikes of lengths are weighed, in nats.
constexpr double kLooksAlike = 1;
constexpr double kOtherWay = 2;
constexpr double kTracedWithin = 0.03;  ///< inches
constexpr double kMostByTrace = 8;

const Feature* ownerOf(const Part& part, const Id& place) {
  for (const Feature& feature : part.features) {
    if (isNamedBy(feature, place)) return &feature;
  }
  return nullptr;
}

// The traced way between the two ends, where both are traced themselves.
std::optional<PlanePoint> tracedWay(const Part& part, const Reading& reading) {
  const Feature *from = ownerOf(part, reading.from), *to = ownerOf(part, reading.to);
  if (from == nullptr || to == nullptr || from->id != reading.from || to->id != reading.to) {
    return std::nullopt;
  }
  const auto axes = axesIn(to->is<kind::Edge>() ? from->face : to->face);
  PlanePoint way;
  for (const std::size_t k : {0U, 1U}) {
    const auto a = tracedAlong(*from, axes[k]), b = tracedAlong(*to, axes[k]);
    const bool isAcross = reading.kind == ReadingKind::along && axes[k] != reading.axis;
    if (isAcross) continue;
    if (!a || !b) return std::nullopt;
    (k == 0 ? way.x : way.y) = *b - *a;
  }
  return way;
}

// What the tracing has against a figure, in nats.
double againstTrace(const Part& part, const Reading& reading, double value) {
  const auto way = tracedWay(part, reading);
  if (!way) return 0;
  const double length = std::hypot(way->x, way->y);
  double off = 0;
  if (reading.kind == ReadingKind::angle) {
    if (!reading.against.empty()) return 0;
    const Feature* owner = ownerOf(part, reading.from);
    const bool isBehind =
        owner != nullptr &&
        (owner->face == Face::bottom || owner->face == Face::back || owner->face == Face::left);
    if (isBehind) return 0;
    const double swing = reading.sense == Sense::clockwise ? -1 : 1;
    const double turn = swing * value * std::numbers::pi / 180 - std::atan2(way->y, way->x);
    off = std::abs(std::remainder(turn, 2 * std::numbers::pi)) * length;
  } else if (reading.kind == ReadingKind::along) {
    off = std::abs(way->x + way->y - value);
  } else if (reading.kind == ReadingKind::centres) {
    off = std::abs(length - value);
  } else {
    return 0;
  }
  return std::min(off * off / (2 * kTracedWithin * kTracedWithin), kMostByTrace);
}

std::string degreesLike(double degrees, int places) {
  const double scale = std::pow(10.0, places);
  const auto count = std::llround(degrees * scale) % std::llround(360 * scale);
  std::string digits = std::to_string(std::abs(count));
  if (places > 0) {
    const auto wanted = static_cast<std::size_t>(places) + 1;
    if (digits.size() < wanted) digits.insert(0, wanted - digits.size(), '0');
    digits.insert(digits.size() - static_cast<std::size_t>(places), ".");
  }
  return (count < 0 ? "-" : "") + digits;
}

struct Likened {
  double cost = 0;
  AngleLook look = AngleLook::none;
};

// How easily one angle is taken for another.
Likened resemblanceOfAngles(double seen, double would, int places) {
  const double within = 0.6 * std::pow(10.0, -places);
  const auto isAbout = [&](double other) {
    return std::abs(std::remainder(would - other, 360)) <= within;
  };
  if (isAbout(90 - seen)) return {kOtherWay, AngleLook::otherAxis};
  if (isAbout(-seen)) return {kOtherWay, AngleLook::otherTurn};
  if (isAbout(180 - seen)) return {kOtherWay, AngleLook::otherEnd};
  if (isAbout(seen + 180)) return {kOtherWay, AngleLook::otherPlace};
  const double minutes = (seen - std::floor(seen)) * 100 / 60;
  if (places == 2 && minutes < 1 && isAbout(std::floor(seen) + minutes)) {
    return {kOtherWay, AngleLook::minutesAsPoints};
  }
  const std::string a = degreesLike(seen, places), b = degreesLike(would, places);
  if (a.size() == b.size()) {
    int differing = 0;
    for (std::size_t i = 0; i < a.size(); ++i) differing += a[i] != b[i] ? 1 : 0;
    if (differing == 1) return {kLooksAlike, AngleLook::alike};
    if (differing == 2) {
      std::string sortedA = a, sortedB = b;
      std::sort(sortedA.begin(), sortedA.end());
      std::sort(sortedB.begin(), sortedB.end());
      if (sortedA == sortedB) return {kLooksAlike + 1, AngleLook::swapped};
    }
  }
  return {kNoResemblance, AngleLook::none};
}

// To the figure that the print could letter there.
Length asLettered(const Reading& reading, Length would) {
  const Lettered& figure = reading.figure;
  std::int64_t step = 0;
  if (figure.lettering == Lettering::fraction) {
    step = Length::kTicksPerInch / 64;
  } else {
    step = ticksPer(figure.unit);
    for (int i = 0; i < std::min(figure.places, 6); ++i) step /= 10;
  }
  const std::int64_t nearest = (would.ticks() + step / 2) / step * step;
  return nearest > 0 ? Length::ticks(nearest) : would;
}

// Of decimals within two of the last place, which is as far as rounding goes, the one that the
// lettered figure is most easily taken for.
Length nearAndAlike(const Reading& reading, Length would) {
  const Lettered& figure = reading.figure;
  if (figure.lettering == Lettering::fraction) return would;
  std::int64_t unit = ticksPer(figure.unit);
  for (int i = 0; i < std::min(figure.places, 6); ++i) unit /= 10;
  Length best = would;
  double least = resemblance(figure, would).cost;
  for (const int off : {-1, 1, -2, 2}) {
    const Length near = Length::ticks(would.ticks() + off * unit);
    // Beyond what is lettered, the other way, it would miss by more than it does.
    if (near <= Length() || near == figure.value) continue;
    if ((near < figure.value) != (would < figure.value)) continue;
    const double cost = resemblance(figure, near).cost + 0.3 * std::abs(off);
    if (cost >= least) continue;
    least = cost;
    best = near;
  }
  return best;
}

CentreSuspect suspectOf(const Part& part, const WouldBe& would) {
  const Reading& reading = part.readings[would.reading];
  CentreSuspect suspect;
  suspect.reading = would.reading;
  suspect.closesAll = would.closesAll;
  Likened look;
  double seen = 0, other = 0;
  if (would.degrees) {
    const int places = placesOfAngle(reading);
    suspect.degrees = would.degrees;
    seen = reading.angle->value.toDegrees();
    // What the others make is rounded too: a figure within two of the last place may be meant.
    const double unit = std::pow(10.0, -places);
    look = resemblanceOfAngles(seen, *would.degrees, places);
    for (const int off : {-1, 1, -2, 2}) {
      const double near = std::round(*would.degrees / unit) * unit + off * unit;
      if ((near < seen) != (*would.degrees < seen)) continue;
      const Likened nearBy = resemblanceOfAngles(seen, near, places);
      if (nearBy.cost + 0.3 * std::abs(off) >= look.cost) continue;
      look = {nearBy.cost + 0.3 * std::abs(off), nearBy.look};
      suspect.degrees = near;
    }
    other = *suspect.degrees;
    suspect.wouldBeText = degreesLike(other, places);
  } else {
    suspect.wouldBe = nearAndAlike(reading, asLettered(reading, would.length));
    suspect.wouldBeText = letteredLike(reading.figure, suspect.wouldBe);
    const Resemblance lengths = resemblance(reading.figure, suspect.wouldBe);
    look.cost = lengths.cost;
    suspect.reason = lengths.reason;
    seen = reading.figure.value.toInches();
    other = suspect.wouldBe.toInches();
  }
  suspect.look = look.look;
  suspect.weight = againstTrace(part, reading, seen) - againstTrace(part, reading, other) -
                   look.cost - would.misfit;
  return suspect;
}

}  // namespace

std::vector<CentreSuspect> rankCentreSuspects(const Part& part, const CentresClash& clash) {
  std::vector<CentreSuspect> suspects;
  for (const WouldBe& would : clash.wouldBe) {
    CentreSuspect suspect = suspectOf(part, would);
    // One that would be what it is was not misread: it only lies at the edge of its rounding.
    const Reading& reading = part.readings[would.reading];
    const bool isSame =
        suspect.degrees
            ? std::abs(std::remainder(*suspect.degrees - reading.angle->value.toDegrees(), 360)) <=
                  agreesWithin(reading) * 180 / std::numbers::pi
            : suspect.wouldBe == reading.figure.value;
    if (!isSame) suspects.push_back(std::move(suspect));
  }
  std::stable_sort(suspects.begin(), suspects.end(),
                   [&](const CentreSuspect& a, const CentreSuspect& b) {
                     if (a.weight != b.weight) return a.weight > b.weight;
                     return part.readings[a.reading].id < part.readings[b.reading].id;
                   });
  return suspects;
}

}  // namespace inchwright
