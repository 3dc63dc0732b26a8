#include "core/part/opposite.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <utility>

#include "core/measure/writing.h"
#include "core/part/job.h"
#include "core/part/place_index.h"

namespace inchwright {
namespace {

constexpr std::int64_t kWholeTurn = 360 * Angle::kPerDegree;

Side flipped(Side side, Axis across) {
  if (axisAcross(side) != across) return side;
  switch (side) {
    case Side::left:
      return Side::right;
    case Side::right:
      return Side::left;
    case Side::front:
      return Side::back;
    case Side::back:
      return Side::front;
    default:
      return side;
  }
}

void flip(std::optional<Side>& side, Axis across) {
  if (side) side = flipped(*side, across);
}

Sense otherWay(Sense sense) {
  return sense == Sense::clockwise ? Sense::anticlockwise : Sense::clockwise;
}

std::string negatedText(const std::string& decimal) {
  if (decimal.starts_with('-')) return decimal.substr(1);
  const bool zero = decimal.find_first_not_of("0.") == std::string::npos;
  return zero ? decimal : "-" + decimal;
}

/// An angle's text that is read as exactly this: `150`, `157° 30' 0.5"`.
std::string textOf(Angle angle) {
  const std::int64_t count = angle.microArcseconds();
  const std::int64_t degrees = count / Angle::kPerDegree, rest = count % Angle::kPerDegree;
  if (rest == 0) return std::to_string(degrees);
  const std::int64_t minutes = rest / 60'000'000, seconds = rest % 60'000'000;
  std::string text = std::to_string(degrees) + "° " + std::to_string(minutes) + "'";
  if (seconds == 0) return text;
  std::string parts = std::to_string(1'000'000 + seconds % 1'000'000).substr(1);
  parts.erase(parts.find_last_not_of('0') + 1);
  return text + " " + std::to_string(seconds / 1'000'000) + (parts.empty() ? "" : "." + parts) +
         "\"";
}

/// The direction of what lies in a face, as the mirrored part's face is seen: its own X runs the
/// other way, but for top and bottom turned about X.
Angle turnedRound(Angle angle, Face face, Axis across) {
  const bool level = axisAcross(face) == Axis::z && across == Axis::y;
  const std::int64_t half = kWholeTurn / 2;
  std::int64_t count = (level ? 0 : half) - angle.microArcseconds();
  count %= kWholeTurn;
  return Angle::microArcseconds(count < 0 ? count + kWholeTurn : count);
}

class Mirror {
 public:
  Mirror(const Part& from, Axis across) : from_(from), across_(across), part_(from) {}

  Part take() && {
    for (Feature& feature : part_.features) turn(feature);
    for (Reading& reading : part_.readings) turn(reading);
    for (Understanding& one : part_.understood) {
      if (one.sense) one.sense = otherWay(*one.sense);
      flip(one.side, across_);
    }
    for (Setup& setup : part_.setups) turn(setup);
    for (GivenOutline& outline : part_.outlines) {
      outline.face = flipped(outline.face, across_);
      std::reverse(outline.follows.begin(), outline.follows.end());
    }
    if (!part_.hand.empty()) part_.hand = part_.hand == "left" ? "right" : "left";
    part_.views.clear();
    part_.accepted.clear();
    part_.made.clear();
    part_.mended.clear();
    part_.printed.clear();
    part_.opposite.reset();
    return std::move(part_);
  }

 private:
  void turn(Feature& feature) {
    turnTrace(feature);
    if (auto* edge = feature.as<kind::Edge>()) flip(edge->side, across_);
    if (auto* round = feature.as<kind::Round>()) flip(round->side, across_);
    if (auto* ring = feature.as<kind::Ring>()) {
      ring->sense = otherWay(ring->sense);
      if (ring->firstAngle) turn(*ring->firstAngle, feature.face);
    }
    feature.face = flipped(feature.face, across_);
  }

  void turnTrace(Feature& feature) const {
    if (const auto* edge = feature.as<kind::Edge>()) {
      if (edge->axis == across_ && !feature.traced.empty()) {
        feature.traced[0] = negatedText(feature.traced[0]);
      }
      return;
    }
    const auto axes = axesIn(feature.face);
    const bool radius = feature.traced.size() == 3;
    for (std::size_t i = 0; i < feature.traced.size() - (radius ? 1 : 0); ++i) {
      if (axes[i % 2] == across_) feature.traced[i] = negatedText(feature.traced[i]);
    }
  }

  void turn(LetteredAngle& angle, Face face) const {
    angle.value = turnedRound(angle.value, face, across_);
    angle.text = textOf(angle.value);
    // A tolerance stays with its angle, in degrees.
    if (angle.plusMinus) angle.text += " ±" + textOf(*angle.plusMinus);
  }

  void turn(Reading& reading) {
    if (reading.kind == ReadingKind::along && reading.axis == across_) {
      std::swap(reading.from, reading.to);
    }
    reading.place.clear();
    if (reading.kind != ReadingKind::angle || !reading.angle) return;
    // Between two lines it is as large as ever and swings the other way.
    if (!reading.against.empty()) {
      if (reading.sense || reading.against.size() == 2) {
        reading.sense = otherWay(reading.sense.value_or(Sense::anticlockwise));
      }
      return;
    }
    if (reading.sense == Sense::clockwise) {
      const std::int64_t count = kWholeTurn - reading.angle->value.microArcseconds();
      reading.angle->value = Angle::microArcseconds(count);
    }
    reading.sense.reset();
    turn(*reading.angle, faceOf(reading.from));
    // A line has no direction: 0 to 180.
    if (reading.to.empty() && reading.angle->value >= Angle::degrees(180)) {
      reading.angle->value =
          Angle::microArcseconds(reading.angle->value.microArcseconds() - 180 * Angle::kPerDegree);
      reading.angle->text = textOf(reading.angle->value);
    }
    reading.figure.text = reading.angle->text;
  }

  Face faceOf(const Id& place) const {
    for (const Feature& feature : from_.features) {
      if (isNamedBy(feature, place)) return feature.face;
    }
    return Face::top;
  }

  void turn(Setup& setup) const {
    setup.face = flipped(setup.face, across_);
    flip(setup.jaw, across_);
    flip(setup.stop, across_);
    std::array<std::optional<Lettered>, 6> stock;
    for (std::size_t i = 0; i < stock.size(); ++i) {
      const Side side = flipped(static_cast<Side>(i), across_);
      stock[static_cast<std::size_t>(side)] = setup.stock[i];
    }
    setup.stock = std::move(stock);
    for (ZeroAlong& zero : setup.zero) {
      if (zero.axis != across_ || !zero.offset) continue;
      zero.offset->value = zero.offset->value.negated();
      zero.offset->text = writePlain(zero.offset->value, zero.offset->unit) +
                          (zero.offset->unit == Unit::inch ? " in" : " mm");
    }
    setup.held = Holding{};
  }

  const Part& from_;
  Axis across_;
  Part part_;
};

/// Entries that were as `before` had them become as `after` has them; what is new there comes in.
template <class Entry, class Member>
std::vector<Entry> follow(const std::vector<Entry>& own, const std::vector<Entry>& before,
                          const std::vector<Entry>& after, Member id) {
  const auto in = [&](const std::vector<Entry>& list, const Entry& entry) -> const Entry* {
    const auto found = std::find_if(list.begin(), list.end(),
                                    [&](const Entry& one) { return one.*id == entry.*id; });
    return found == list.end() ? nullptr : &*found;
  };
  std::vector<Entry> out;
  for (const Entry& entry : own) {
    const Entry* was = in(before, entry);
    const Entry* is = in(after, entry);
    const bool followsIt = was != nullptr && *was == entry;
    if (followsIt && is == nullptr) continue;
    out.push_back(followsIt ? *is : entry);
  }
  for (const Entry& entry : after) {
    if (in(before, entry) == nullptr && in(own, entry) == nullptr) out.push_back(entry);
  }
  return out;
}

}  // namespace

Part mirrored(const Part& part, Axis across) {
  return Mirror(part, across).take();
}

Part followed(const Part& opposite, const Part& before, const Part& after) {
  const Part was = mirrored(before, opposite.opposite->across);
  Part is = mirrored(after, opposite.opposite->across);
  Part out = opposite;
  out.features = follow(opposite.features, was.features, is.features, &Feature::id);
  out.readings = follow(opposite.readings, was.readings, is.readings, &Reading::id);
  const auto take = [](auto& own, const auto& old, auto& now) {
    if (own == old) own = std::move(now);
  };
  take(out.understood, was.understood, is.understood);
  take(out.setups, was.setups, is.setups);
  take(out.outlines, was.outlines, is.outlines);
  take(out.general, was.general, is.general);
  take(out.material, was.material, is.material);
  take(out.hand, was.hand, is.hand);
  out.turned = is.turned;
  return out;
}

}  // namespace inchwright
