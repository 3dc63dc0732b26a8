#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "core/base/result.h"
#include "core/chain/network.h"

namespace inchwright {

/// An axis network while it is gathered: nodes can be looked up by the id of their place.
class NetworkBuilder {
 public:
  explicit NetworkBuilder(const Part& part, Axis axis);

  const Part& part() const { return part_; }
  Axis axis() const { return network_.axis; }
  /// The node of a place; empty when it has no position along this axis.
  std::optional<std::uint32_t> node(const Id& place) const;
  const Feature* featureOf(std::uint32_t node) const;

  /// Both are ignored when a place they name has no position along this axis.
  void link(const Id& from, const Id& to, std::int64_t ticks, bool exact, Source source);
  void relate(const std::vector<std::pair<Id, int>>& terms, Source source);
  /// The spaces between consecutive ones are alike. Each inner one is set against the two ends, so
  /// that solving a long row costs no more than its length.
  void relateEqual(const std::vector<Id>& of, Source source);

  AxisNetwork take() { return std::move(network_); }

 private:
  const Part& part_;
  AxisNetwork network_;
  std::unordered_map<Id, std::uint32_t> nodes_;
  std::vector<std::uint32_t> features_;
};

/// What the shape of a feature fixes among its own places, and against those it is built on: the
/// pitch of a row, a ring's geometry, the ends of a slot, a round inside its corner.
void addFeatureLinks(NetworkBuilder& builder, std::uint32_t feature);

/// The diameter of a ring's pitch circle: its own, else that of a reading; empty when neither.
const Lettered* pitchDiameterOf(const Part& part, const Feature& ring);

}  // namespace inchwright
