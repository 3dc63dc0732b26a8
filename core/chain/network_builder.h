#pragma once

#include <array>
#include <cstdint>
#include <deque>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/chain/network.h"
#include "core/part/id_numbers.h"

namespace inchwright {

/// The networks of a part's three axes while they are gathered. Every place is looked up by its id
/// once; from there on it is a number, the same for all axes: of a hole A and an edge L across x,
/// A is 0 and L is 1, and L has no node along y.
class NetworkBuilder {
 public:
  /// Refers to the part, which has to outlive it. With `only`, what is said along the other axes is
  /// left out.
  explicit NetworkBuilder(const Part& part, std::optional<Axis> only = std::nullopt);

  const Part& part() const { return part_; }
  bool takes(Axis axis) const { return !only_ || *only_ == axis; }
  /// The number of a place; kNone when there is none of that id.
  std::uint32_t place(std::string_view id) const;
  /// Numbers of the features with more places than one: only their shapes say where places lie.
  const std::vector<std::uint32_t>& featuresOfSeveral() const { return ofSeveral_; }
  /// Of a feature's own places, itself first: how many there are, and the number of one.
  std::uint32_t placeCount(std::uint32_t feature) const;
  std::uint32_t placeOf(std::uint32_t feature, std::uint32_t which) const;
  const Feature& ownerOf(std::uint32_t place) const { return part_.features[owners_[place]]; }

  /// How far what stands behind a link is trusted, most first.
  enum class Trust : std::uint8_t { shape, stated, plain, divided, assumed, bracketed };

  /// All are ignored when a place they name has no position along this axis.
  void link(Axis axis, std::uint32_t from, std::uint32_t to, std::int64_t ticks, bool exact,
            Source source, const Rational& rest = {});
  void link(Axis axis, std::uint32_t from, std::uint32_t to, const Rational& length, bool exact,
            Source source);
  void relate(Axis axis, const std::vector<std::pair<std::uint32_t, int>>& terms, Source source);
  /// The spaces between consecutive ones are alike. Each inner one is set against the two ends, so
  /// that solving a long row costs no more than its length.
  void relateEqual(Axis axis, const std::vector<std::uint32_t>& of, Source source);

  /// The network of an axis in its order, once each. Errors: `outOfRange`.
  Result<AxisNetwork> take(Axis axis);

 private:
  const Part& part_;
  std::optional<Axis> only_;
  std::deque<Id> innerIds_;            // those that no feature bears
  std::vector<std::string_view> ids_;  // by place, ascending
  std::vector<std::uint32_t> owners_;  // by place
  std::vector<std::uint32_t> ofSeveral_;
  std::vector<std::uint32_t> firstOf_;               // by feature, into placesOf_
  std::vector<std::uint32_t> placesOf_;              // numbers of places, feature by feature
  IdNumbers numbers_;                                // of ids_
  std::array<std::vector<std::uint32_t>, 3> nodes_;  // by axis and place; kNone where it has none
  std::array<AxisNetwork, 3> networks_;
  std::array<std::vector<Trust>, 3> trust_;  // by axis and link, until they are in order
};

}  // namespace inchwright
