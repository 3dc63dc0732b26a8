#pragma once

#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/measure/length.h"
#include "core/part/job.h"
#include "core/solution/solution.h"

namespace inchwright {

/// One stretch of a turned part between two of its edges, as far as the print places it.
struct TurnedStretch {
  Id id;
  FeatureKind kind = FeatureKind::outside;
  bool inner = false;  ///< inside the part: bored
  /// Its ends along X of the part, ticks, `left` < `right`; empty when an edge is loose.
  std::optional<Rational> left;
  std::optional<Rational> right;
  bool exact = true;      ///< false when an end or a diameter was rounded to the tick
  bool disputed = false;  ///< an end lies on a loop that does not close
  /// Diameters at its two ends; alike but for a taper. A thread's is its outside; empty when
  /// nothing says it.
  std::optional<Length> atLeft;
  std::optional<Length> atRight;
  std::optional<double> includedDegrees;  ///< of a taper

  bool isGroove() const { return kind == FeatureKind::groove; }
  bool isThread() const { return kind == FeatureKind::screwed; }
  bool isPlain() const { return kind == FeatureKind::outside; }
  /// A surface that others are cut into, at one diameter or from one to another.
  bool isTurned() const { return isPlain() || kind == FeatureKind::taper; }
  /// What a tool on its way along the part meets.
  bool standsOut() const { return isTurned() || isThread(); }

  bool operator==(const TurnedStretch&) const = default;
};

enum class TurnedFaultKind {
  backToFront,       ///< its edges lie the other way round or on one another
  taperUnsaid,       ///< fewer than two of large, small, angle, taper per foot
  taperContradicts,  ///< more than two, and they don't agree to a step of a thou
  noSuchThread,
  noDiameter,      ///< nothing says how thick it is: it is in no cut
  grooveTooLarge,  ///< a groove's floor is not below the surface that it is cut into
  boreTooLarge,    ///< a bore leaves no metal under the surface over it
  twoSurfaces,     ///< two surfaces over one another along part of their length
  taperToNothing,  ///< its small end would be nothing or less
  chamferTooLong,  ///< longer than the surface it breaks the edge of
  drilledWithin,   ///< a centre at an edge that is no end of the part
};

/// What is wrong with a stretch, and with which other.
struct TurnedFault {
  TurnedFaultKind kind = TurnedFaultKind::backToFront;
  Id id;
  Id other;   ///< the surface it runs into; may be empty
  Length by;  ///< how far; 0 where that says nothing

  bool operator==(const TurnedFault&) const = default;
};

/// A turned part as it lies along X: what is turned, from the left end to the right one.
struct TurnedShape {
  std::vector<TurnedStretch> stretches;        ///< in the part's order
  std::vector<std::pair<Id, Rational>> edges;  ///< those across X that are placed
  std::optional<Rational> leftEnd;             ///< the edge with side left, ticks along X
  std::optional<Rational> rightEnd;
  Id leftEdge;
  Id rightEdge;
  std::vector<TurnedFault> faults;

  const TurnedStretch* stretch(std::string_view id) const;
  /// What stands in the way of a tool that comes from the right end (`fromRight`) or the left one:
  /// outside the largest surface in front that is larger than `of` where it begins, inside the
  /// smallest bore in front that is smaller, or `of` itself where nothing at all is bored in front.
  /// Null where nothing does. A neck of 3/8 behind a collar of 3/4 → the collar.
  const TurnedStretch* inFrontOf(const TurnedStretch& of, bool fromRight) const;
  std::optional<Rational> edgeAt(std::string_view id) const;
  bool operator==(const TurnedShape&) const = default;
};

/// Requires: `solution` is of `part`. Positions are exact; the second diameter of a taper is exact
/// where it follows from a taper per foot, else rounded to the tick.
/// A taper of 1/2 in per foot from 3/4 over 3 in → 5/8 at its small end.
TurnedShape turnedShape(const Part& part, const Solution& solution);

}  // namespace inchwright
