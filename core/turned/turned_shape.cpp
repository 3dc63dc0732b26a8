#include "core/turned/turned_shape.h"

#include <algorithm>
#include <cmath>

#include "core/shop/threads.h"
#include "core/turned/lathe_formulas.h"

namespace inchwright {
namespace {

/// A taper's figures agree when its two ends differ by no more than this: half a thou.
constexpr std::int64_t kTaperAgrees = Length::kTicksPerInch / 2000;

struct Ends {
  std::optional<Rational> left, right;
  bool exact = true;
  bool disputed = false;
  bool swapped = false;  ///< the first of `between` is the right one
};

Ends endsOf(const Solution& solution, const std::vector<Id>& between) {
  Ends ends;
  if (between.size() != 2) return ends;
  const Position* a = solution.position(between[0], Axis::x);
  const Position* b = solution.position(between[1], Axis::x);
  if (!a || !b || a->group != 0 || b->group != 0) return ends;
  ends.swapped = a->ticks > b->ticks;
  ends.left = ends.swapped ? b->ticks : a->ticks;
  ends.right = ends.swapped ? a->ticks : b->ticks;
  ends.exact = a->isExact() && b->isExact();
  ends.disputed = a->disputed || b->disputed;
  return ends;
}

/// How much a taper grows on the diameter along its length, and whether that is exact.
struct Growth {
  std::optional<Length> grows;
  bool exact = true;
};

Growth growthOf(const kind::Taper& taper, const Rational& run) {
  if (taper.perFoot) {
    const auto twelfth =
        Rational::of(taper.perFoot->value.ticks(), Int128{12} * Length::kTicksPerInch);
    const auto exact = twelfth ? twelfth->times(run) : std::nullopt;
    const auto ticks = exact ? nearestTick(*exact) : std::nullopt;
    return {ticks, exact && exact->isWhole()};
  }
  if (taper.angle) {
    const double grows = taperOfAngle(taper.angle->value.toDegrees()) * run.toDouble();
    if (std::isfinite(grows) && std::abs(grows) < 9e18)
      return {Length::ticks(std::llround(grows)), false};
  }
  return {std::nullopt, false};
}

class Shaping {
 public:
  Shaping(const Part& part, const Solution& solution) : part_(part), solution_(solution) {}

  TurnedShape take() {
    for (const Feature& feature : part_.features) add(feature);
    checkSurfaces();
    checkOverlaps();
    for (const Feature& feature : part_.features) checkAtEdge(feature);
    return std::move(shape_);
  }

 private:
  void add(const Feature& feature) {
    if (const auto* edge = feature.as<kind::Edge>()) return addEnd(feature.id, *edge);
    const std::vector<Id>* between = betweenOf(feature);
    if (!between) return;
    const Ends ends = endsOf(solution_, *between);
    TurnedStretch stretch;
    stretch.id = feature.id;
    stretch.kind = feature.kind();
    stretch.inner = feature.is<kind::Bored>();
    stretch.left = ends.left;
    stretch.right = ends.right;
    stretch.exact = ends.exact;
    stretch.disputed = ends.disputed;
    if (ends.left && *ends.left == *ends.right) fault(TurnedFaultKind::backToFront, feature.id);
    addDiameters(feature, ends, stretch);
    shape_.stretches.push_back(std::move(stretch));
  }

  void addEnd(const Id& id, const kind::Edge& edge) {
    if (edge.axis != Axis::x) return;
    const Position* at = solution_.position(id, Axis::x);
    const bool placed = at && at->group == 0;
    if (placed) shape_.edges.emplace_back(id, at->ticks);
    if (!edge.side) return;
    if (*edge.side == Side::left) {
      shape_.leftEdge = id;
      if (placed) shape_.leftEnd = at->ticks;
    } else {
      shape_.rightEdge = id;
      if (placed) shape_.rightEnd = at->ticks;
    }
  }

  void addDiameters(const Feature& feature, const Ends& ends, TurnedStretch& stretch) {
    const auto both = [&](const std::optional<Lettered>& diameter) {
      if (!diameter) return fault(TurnedFaultKind::noDiameter, feature.id);
      stretch.atLeft = stretch.atRight = diameter->value;
      stretch.exact = stretch.exact && diameter->exact;
    };
    if (const auto* outside = feature.as<kind::Outside>()) both(outside->diameter);
    if (const auto* bored = feature.as<kind::Bored>()) both(bored->diameter);
    if (const auto* groove = feature.as<kind::Groove>()) both(groove->diameter);
    if (const auto* screwed = feature.as<kind::Screwed>()) {
      const Result<Thread> thread = threadNamed(screwed->thread);
      if (thread) {
        stretch.atLeft = stretch.atRight = thread->major;
      } else {
        fault(TurnedFaultKind::noSuchThread, feature.id);
      }
    }
    if (const auto* taper = feature.as<kind::Taper>()) addTaper(*taper, ends, stretch);
  }

  void addTaper(const kind::Taper& taper, const Ends& ends, TurnedStretch& stretch) {
    if (!ends.left) return;
    const Rational run = *ends.right->minus(*ends.left);
    const Growth growth = growthOf(taper, run);
    std::optional<Length> large, small;
    if (taper.large) large = taper.large->value;
    if (taper.small) small = taper.small->value;
    const int said = taper.large.has_value() + taper.small.has_value() + taper.angle.has_value() +
                     taper.perFoot.has_value();
    if (said < 2 || (!large && !small)) return fault(TurnedFaultKind::taperUnsaid, stretch.id);
    if (large && small && growth.grows) {
      const std::int64_t off = large->ticks() - small->ticks() - growth.grows->ticks();
      if (std::abs(off) > kTaperAgrees) {
        fault(TurnedFaultKind::taperContradicts, stretch.id, {}, Length::ticks(std::abs(off)));
      }
    }
    if (!large && growth.grows) large = small->plus(*growth.grows);
    if (!small && growth.grows) small = large->minus(*growth.grows);
    if (!large || !small) return;
    if (std::min(*large, *small) <= Length()) {
      return fault(TurnedFaultKind::taperToNothing, stretch.id);
    }
    if (!taper.large || !taper.small) stretch.exact = stretch.exact && growth.exact;
    // Unsaid, the large end is at the first of the two edges.
    const bool largeAtFirst = taper.largeAt.empty() || taper.largeAt == taper.between[0];
    const bool largeAtLeft = largeAtFirst != ends.swapped;
    stretch.atLeft = largeAtLeft ? large : small;
    stretch.atRight = largeAtLeft ? small : large;
    stretch.includedDegrees = taper.angle ? taper.angle->value.toDegrees()
                                          : angleOfTaper((large->toInches() - small->toInches()) *
                                                         Length::kTicksPerInch / run.toDouble());
  }

  void fault(TurnedFaultKind kind, const Id& id, const Id& other = {}, Length by = {}) {
    shape_.faults.push_back({kind, id, other, by});
  }

  static bool overlap(const TurnedStretch& a, const TurnedStretch& b) {
    return a.left && b.left && *a.left < *b.right && *b.left < *a.right;
  }

  /// A groove's floor lies below the surface it is cut into, and a bore leaves metal.
  void checkSurfaces() {
    for (const TurnedStretch& one : shape_.stretches) {
      const bool groove = one.isGroove();
      if ((!groove && !one.inner) || !one.atLeft) continue;
      for (const TurnedStretch& surface : shape_.stretches) {
        if (!surface.isTurned() || !surface.atLeft || !surface.atRight || !overlap(one, surface))
          continue;
        const Length least = std::min(*surface.atLeft, *surface.atRight);
        const std::int64_t over = one.atLeft->ticks() - least.ticks();
        if (over < 0) continue;
        fault(groove ? TurnedFaultKind::grooveTooLarge : TurnedFaultKind::boreTooLarge, one.id,
              surface.id, Length::ticks(over));
      }
    }
  }

  static bool isSurface(const TurnedStretch& one) {
    return one.isTurned() && one.atLeft.has_value();
  }

  /// Of two surfaces at one length only one can be there. Steps of a bore may be lettered through
  /// one another.
  void checkOverlaps() {
    for (std::size_t i = 0; i < shape_.stretches.size(); ++i) {
      const TurnedStretch& one = shape_.stretches[i];
      for (std::size_t j = 0; isSurface(one) && j < i; ++j) {
        const TurnedStretch& other = shape_.stretches[j];
        if (!isSurface(other) || !overlap(one, other)) continue;
        fault(TurnedFaultKind::twoSurfaces, one.id, other.id);
      }
    }
  }

  void checkAtEdge(const Feature& feature) {
    if (const auto* centre = feature.as<kind::CentreDrill>()) {
      if (centre->at == shape_.leftEdge || centre->at == shape_.rightEdge) return;
      if (shape_.leftEdge.empty() || shape_.rightEdge.empty()) return;
      fault(TurnedFaultKind::drilledWithin, feature.id, centre->at);
    }
    const auto* chamfer = feature.as<kind::Chamfer>();
    const auto at = chamfer && chamfer->length ? shape_.edgeAt(chamfer->at) : std::nullopt;
    if (!at) return;
    for (const TurnedStretch& one : shape_.stretches) {
      if (!one.left || (*one.left != *at && *one.right != *at)) continue;
      const auto run = one.right->minus(*one.left);
      if (!run || chamfer->length->value.rational() <= *run) continue;
      fault(TurnedFaultKind::chamferTooLong, feature.id, one.id);
    }
  }

  const Part& part_;
  const Solution& solution_;
  TurnedShape shape_;
};

}  // namespace

const TurnedStretch* TurnedShape::stretch(std::string_view id) const {
  const auto found = std::find_if(stretches.begin(), stretches.end(),
                                  [&](const TurnedStretch& one) { return one.id == id; });
  return found == stretches.end() ? nullptr : &*found;
}

namespace {

const Rational& beginning(const TurnedStretch& one, bool fromRight) {
  return fromRight ? *one.right : *one.left;
}

/// Whether `one` begins nearer to the end that is worked from.
bool isInFront(const TurnedStretch& one, const TurnedStretch& of, bool fromRight) {
  const Rational& a = beginning(one, fromRight);
  const Rational& b = beginning(of, fromRight);
  return fromRight ? a > b : a < b;
}

bool isInTheWay(const TurnedStretch& one, const TurnedStretch& of, bool fromRight) {
  const Length begins = fromRight ? *of.atRight : *of.atLeft;
  if (of.inner) return std::min(*one.atLeft, *one.atRight) < begins;
  return one.standsOut() && std::max(*one.atLeft, *one.atRight) > begins;
}

}  // namespace

const TurnedStretch* TurnedShape::inFrontOf(const TurnedStretch& of, bool fromRight) const {
  if (!of.left || !of.atLeft || !of.atRight) return nullptr;
  const TurnedStretch* worst = nullptr;
  bool opened = !of.inner || edgeAt(fromRight ? rightEdge : leftEdge) == beginning(of, fromRight);
  for (const TurnedStretch& one : stretches) {
    if (&one == &of || one.inner != of.inner || !one.left || !one.atLeft || !one.atRight) continue;
    if (!isInFront(one, of, fromRight)) continue;
    const bool reaches = fromRight ? *one.left <= *of.right : *one.right >= *of.left;
    opened = opened || reaches;
    if (!isInTheWay(one, of, fromRight)) continue;
    const bool worse = !worst || (of.inner ? *one.atLeft < *worst->atLeft
                                           : std::max(*one.atLeft, *one.atRight) >
                                                 std::max(*worst->atLeft, *worst->atRight));
    if (worse) worst = &one;
  }
  return worst || opened ? worst : &of;
}

std::optional<Rational> TurnedShape::edgeAt(std::string_view id) const {
  for (const auto& [edge, at] : edges) {
    if (edge == id) return at;
  }
  return std::nullopt;
}

TurnedShape turnedShape(const Part& part, const Solution& solution) {
  return Shaping(part, solution).take();
}

}  // namespace inchwright
