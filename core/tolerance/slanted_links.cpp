#include "core/tolerance/slanted_links.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

#include "core/place/face_plane.h"

namespace inchwright {
namespace {

// Less than this of a reading along an axis is nothing: a tick in two inches.
constexpr double kNoShare = 1e-9;

// The way from one end of a reading to the other, in ticks.
struct Slant {
  std::array<Axis, 2> axes{};
  std::array<double, 2> way{};
  double length = 0;
  bool isAligned = false;  ///< with an axis
  double turned = 0;       ///< radians, as the face is seen
  int hand = 1;            ///< −1 where the face is seen turned over
};

// How far the far end may stray from the near one along the way, or square to it, to the left; and
// the other way of the two, where that alone runs along an axis.
struct Room {
  double low = 0, high = 0;
  bool isAcross = false;
  double other = 0;
};

std::optional<Slant> slantOf(const Part& part, const Solution& solution, const Reading& reading) {
  for (const Feature& feature : part.features) {
    if (!isNamedBy(feature, reading.to)) continue;
    Slant slant;
    slant.axes = axesIn(feature.face);
    for (const std::size_t k : {0U, 1U}) {
      const auto apart = solution.between(reading.from, reading.to, slant.axes[k]);
      if (!apart) return std::nullopt;
      slant.way[k] = apart->toDouble();
    }
    slant.length = std::hypot(slant.way[0], slant.way[1]);
    if (slant.length < 1) return std::nullopt;
    slant.isAligned =
        std::min(std::abs(slant.way[0]), std::abs(slant.way[1])) < kNoShare * slant.length;
    const auto own = ownDirections(feature.face);
    slant.hand = own[0] * own[1];
    slant.turned = std::atan2(own[1] * slant.way[1], own[0] * slant.way[0]);
    return slant;
  }
  return std::nullopt;
}

// A distance may grow by what is left to its upper limit less what straying sideways adds to it:
// as much as along the way, or of one along an axis as far as costs a tenth.
Room roomOfDistance(const Slant& slant, const Lettered& figure, const Tolerance& tolerance) {
  const double lettered = static_cast<double>(figure.value.ticks());
  Room room{lettered + static_cast<double>(tolerance.lower.ticks()) - slant.length,
            lettered + static_cast<double>(tolerance.upper.ticks()) - slant.length};
  double sideways = std::max({-room.low, room.high, 0.0});
  if (slant.isAligned) {
    sideways = std::min(std::sqrt(0.2 * slant.length * std::max(room.high, 0.0)), slant.length / 4);
    room.other = sideways;
  }
  if (slant.length > 2 * sideways) {
    room.high -= sideways * sideways / (2 * (slant.length - sideways));
  }
  return room;
}

// An angle lets the far end stray sideways, and lengthwise no more than that. What it misses by
// where things were placed is taken off.
Room roomOfAngle(const Slant& slant, const Reading& reading, double plusMinus) {
  const double swing = reading.sense == Sense::clockwise ? -1 : 1;
  const double miss =
      std::remainder(slant.turned - swing * reading.angle->value.toRadians(), 2 * std::numbers::pi);
  const auto sideways = [&](double angle) {
    const double tangent = std::tan(std::clamp(angle, -1.0, 1.0));
    return slant.length * tangent / (1 + std::abs(tangent));
  };
  const double further = sideways(plusMinus - miss), back = sideways(plusMinus + miss);
  const double lengthwise = std::max({further, back, 0.0});
  return slant.hand > 0 ? Room{-back, further, true, lengthwise}
                        : Room{-further, back, true, lengthwise};
}

// What an axis gets of a room, in whole ticks, inwards.
TolerancedLink linkOf(const ToleranceNetwork& network, const Reading& reading, std::uint32_t index,
                      const Slant& slant, const Room& room, std::size_t k) {
  const double c = slant.way[0] / slant.length, s = slant.way[1] / slant.length;
  const double weight = room.isAcross ? (k == 0 ? -s : c) : (k == 0 ? c : s);
  const double share = 1 / (std::abs(c) + std::abs(s));
  double low = (weight > 0 ? room.low : -room.high) * share;
  double high = (weight > 0 ? room.high : -room.low) * share;
  if (slant.isAligned && std::abs(weight) < 0.5) {
    low = -room.other;
    high = room.other;
  }
  TolerancedLink link;
  link.from = *network.node(reading.from);
  link.to = *network.node(reading.to);
  link.nominal = std::llround(slant.way[k]);
  link.low = static_cast<std::int64_t>(std::ceil(slant.way[k] + low));
  link.high = static_cast<std::int64_t>(std::floor(slant.way[k] + high));
  link.toleranced = true;
  link.source = {SourceKind::reading, index};
  return link;
}

// Half of what an angle may stray, radians; empty for one in brackets or basic.
std::optional<double> eitherOf(const Part& part, const Reading& reading) {
  if (!reading.angle || reading.angle->reference) return std::nullopt;
  if (reading.angle->plusMinus) return reading.angle->plusMinus->toRadians();
  if (part.general.angles) return part.general.angles->value.toRadians();
  return std::nullopt;
}

}  // namespace

Result<SlantedLinks> slantedLinks(const Part& part, const Solution& solution,
                                  const ToleranceNetwork& network) {
  SlantedLinks all;
  for (std::uint32_t i = 0; i < part.readings.size(); ++i) {
    const Reading& reading = part.readings[i];
    std::optional<Room> room;
    std::optional<Slant> slant;
    if (reading.kind == ReadingKind::centres) {
      const auto tolerance = toleranceOf(reading.figure, part.general);
      if (!tolerance || reading.figure.reference) continue;
      slant = slantOf(part, solution, reading);
      if (slant) room = roomOfDistance(*slant, reading.figure, *tolerance);
    } else if (reading.kind == ReadingKind::angle) {
      const auto either = eitherOf(part, reading);
      if (!either) continue;
      if (!reading.to.empty()) slant = slantOf(part, solution, reading);
      if (slant && reading.against.empty()) room = roomOfAngle(*slant, reading, *either);
      if (!room) all.others.push_back(i);
    } else if (reading.kind == ReadingKind::squareOff && !reading.figure.reference &&
               toleranceOf(reading.figure, part.general)) {
      all.others.push_back(i);
    }
    if (!room || !network.node(reading.from) || !network.node(reading.to)) continue;
    for (const std::size_t k : {0U, 1U}) {
      if (slant->axes[k] != network.axis) continue;
      if (!(std::abs(slant->way[k]) < 4e18)) {
        return Error{ErrorCode::outOfRange, "a reading goes beyond the exact range", reading.id};
      }
      all.links.push_back(linkOf(network, reading, i, *slant, *room, k));
    }
  }
  return all;
}

}  // namespace inchwright
