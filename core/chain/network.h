#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/part/job.h"

namespace inchwright {

/// What stands behind a link or a relation.
enum class SourceKind {
  reading,        ///< index into Part::readings
  understanding,  ///< index into Part::understood
  feature,        ///< index into Part::features: the pitch of a row, a ring's geometry, a radius
};

struct Source {
  SourceKind kind = SourceKind::reading;
  std::uint32_t index = 0;

  auto operator<=>(const Source&) const = default;
};

/// Whether `a` comes first, by what each says rather than where it stands in the document: readings
/// by their ids, what is understood by its words, features by their ids.
bool comesFirst(const Part& part, const Source& a, const Source& b);

/// position(to) − position(from) = length.
struct AxisLink {
  std::uint32_t from = 0;
  std::uint32_t to = 0;
  std::int64_t ticks = 0;  ///< the length at the nearest tick
  bool exact = true;       ///< false where the length is rounded (a ring's cosine, divided figures)
  Source source;
  /// What the length has beyond `ticks`, at most half a tick: of half a slot or a ring's offset, so
  /// that a position made of several is rounded once.
  Rational rest = {};

  Rational length() const { return rest.plus(ticks).value_or(ticks); }

  bool operator==(const AxisLink&) const = default;
};

/// Σ coefficient · position(node) = 0, for midway, symmetric and equal spaces.
struct AxisRelation {
  std::vector<std::pair<std::uint32_t, std::int32_t>> terms;  ///< by node, ascending
  Source source;

  bool operator==(const AxisRelation&) const = default;
};

/// One axis of a part as a graph: places are nodes, what fixes one against another are links, what
/// joins more than two are relations.
///
/// Its order depends only on what the print says, never on how it was listed: places by id, links
/// by how far they are trusted when readings contradict each other (the shape of features, stated
/// understandings, readings, assumed understandings, reference readings), then by their places and
/// ids; relations likewise.
///
/// `L A 3/8` and `A B 1` along x, holes A and B, edge L: places A, B, L; links 2→0 of 3/8 in and
/// 0→1 of 1 in, ordered 0→1, 2→0.
struct AxisNetwork {
  Axis axis = Axis::x;
  std::vector<Id> places;
  std::vector<std::uint32_t> owners;  ///< by place: index into Part::features
  std::vector<bool> isInner;  ///< by place: a hole or an end of its owner, not the owner's own
  std::vector<AxisLink> links;
  std::vector<AxisRelation> relations;

  /// The number of a place; empty when it has no position along this axis.
  std::optional<std::uint32_t> node(std::string_view place) const;
  bool operator==(const AxisNetwork&) const = default;
};

/// Reads the networks of the three axes out of a part, from all faces and views alike; in the order
/// of `kAxes`. Requires: `checkPart(part)` is fine. Errors: `outOfRange` when a length overflows.
Result<std::array<AxisNetwork, 3>> networksOf(const Part& part);
/// That of one axis alone. As above.
Result<AxisNetwork> networkOf(const Part& part, Axis axis);

/// The id of a reading or feature; of what is understood the first place it speaks of.
const Id& idOf(const Part& part, const Source& source);

/// The figure of a reading; nothing for other sources.
const Lettered* figureOf(const Part& part, const Source& source);

}  // namespace inchwright
