#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <vector>

#include "core/geometry/path.h"
#include "core/measure/length.h"
#include "core/part/feature.h"

namespace inchwright {

/// The two axes of each plane, in the order of `BeyondChains::lines`.
inline constexpr std::array<std::array<Axis, 2>, 3> kPlanes{
    {{Axis::x, Axis::y}, {Axis::x, Axis::z}, {Axis::y, Axis::z}}};

/// A place, or a group that moves as one, with more than one answer; or a line.
struct SeveralAnswers {
  Id place;               ///< the first of the group by its id; of a line its own
  std::vector<Id> about;  ///< all that move with it, itself among them
  std::array<Axis, 2> axes{Axis::x, Axis::y};
  bool isTaken = false;  ///< by the tracing; else it is in doubt, and not placed
  /// Many places that hang on each other: there may be answers that were not found. Then a single
  /// one may stand among `answers`.
  bool mayHaveMore = false;
  bool isLine = false;  ///< `answers` are points of it: where it passes what tells them best apart
  /// Of `place`, along both axes, from the outer sides at the lower ends; the one taken first.
  std::vector<std::array<Length, 2>> answers;

  bool operator==(const SeveralAnswers&) const = default;
};

/// What one reading would have to be for a contradiction to close.
struct WouldBe {
  std::uint32_t reading = 0;      ///< index into Part::readings
  Length length;                  ///< of a distance
  std::optional<double> degrees;  ///< of an angle instead, within one turn
  bool closesAll = false;         ///< with it every spare reading agrees
  /// What the spare readings then still have against it: half the squares of how far they miss, in
  /// three times what they may, each up to 8.
  double misfit = 0;

  bool operator==(const WouldBe&) const = default;
};

/// Placed readings that don't meet.
struct CentresClash {
  std::array<Axis, 2> axes{Axis::x, Axis::y};
  std::vector<std::uint32_t> members;     ///< indices into Part::readings, ascending
  std::vector<std::uint32_t> understood;  ///< indices into Part::understood that come in
  /// Inches, angles times distance: what the spare one says less what the others make.
  double missesBy = 0;
  std::optional<std::uint32_t> spare;  ///< the reading that only checked; empty: nothing was placed
  std::vector<WouldBe> wouldBe;
  /// What the spare one speaks of has several answers, and agrees with none; the nearest is told.
  bool isOfSeveral = false;

  bool operator==(const CentresClash&) const = default;
};

enum class FreeWay : std::uint8_t {
  swings,    ///< about `about`, at its distance
  slides,    ///< along a straight way: through `about`, or along a line
  together,  ///< with others that hang on each other: no simple way
};

/// How a place that its readings hold half can still move.
struct FreePlace {
  Id place;
  FreeWay way = FreeWay::together;
  Id about;

  bool operator==(const FreePlace&) const = default;
};

/// A place that an error in a reading moves many times over.
struct WeakPlace {
  Id place;
  std::uint32_t reading = 0;
  double factor = 0;  ///< inches an inch

  bool operator==(const WeakPlace&) const = default;
};

/// What a place was solved from.
struct HeldBy {
  std::array<Axis, 2> axes{Axis::x, Axis::y};
  std::vector<std::uint32_t> readings;    ///< indices into Part::readings, ascending
  std::vector<std::uint32_t> understood;  ///< indices into Part::understood, ascending
  std::vector<Id> from;                   ///< places settled before that these go out from
  std::vector<Id> together;               ///< places that were solved with it, at one go

  bool operator==(const HeldBy&) const = default;
};

/// What is found on the way of placing beyond the chains. C at 2 from A and 2 from B, untraced: one
/// of `answers`, two figures in it, not taken.
struct BeyondChains {
  /// Lines, and circles by centre and radius, in inches from the systems' origins along the part's
  /// own axes: by axis pair (xy, xz, yz) and id.
  std::array<std::map<Id, PlaneLine>, 3> lines;
  std::array<std::map<Id, PlaneCircle>, 3> circles;
  std::map<Id, HeldBy> held;  ///< the places that were solved for
  std::vector<SeveralAnswers> answers;
  std::vector<CentresClash> clashes;
  std::vector<FreePlace> free;
  std::vector<WeakPlace> weak;
  std::set<std::uint32_t> used;        ///< readings that placed or checked something here
  std::set<std::uint32_t> understood;  ///< likewise, indices into Part::understood
  std::set<std::uint32_t> checked;     ///< of all readings, those that a spare one here checks
  double residual = 0;                 ///< inches, the greatest

  bool operator==(const BeyondChains&) const = default;
};

}  // namespace inchwright
