#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <span>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/chain/network.h"
#include "core/chain/position.h"
#include "core/graph/elimination.h"
#include "core/graph/forest.h"

namespace inchwright {

/// Links with factors, and the relations they lead over: what a position is made of, or what
/// together must come to nothing (Σ factor · ticks = 0). A loop has factors ±1 and its links in
/// walking order; one that closes over relations may have others, and names them.
struct Circuit {
  std::vector<std::pair<std::uint32_t, Rational>> links;
  std::vector<std::uint32_t> relations;
};

/// One axis of a part as exact equations: every place's position expressed by free variables,
///
///     position(node) = Σ factor · variable + constant
///
/// Made once a part and axis; solving, suspects, tolerances and placing all start from it.
///
/// Places that hang together move as one **group**. A **variable** is the position of one place of
/// a group, its origin. Variable 0 belongs to group 0, the part itself: the component with the most
/// outer sides (edges with a `side`), then the most places, then the first id. Its origin is where
/// positions count from, so variable 0 is 0 and stands in no expression. Any other is loose until
/// something else places it. Most groups have a variable of their own; one that a relation ties to
/// others (midway between the part and a loose hole) has a mixture of theirs.
///
/// `L A 3/8`, `B C 1` along x: group 0 is L at 0 and A at 3/8 in; variable 1 is B, and C lies at
/// 1 · variable 1 + 1 in. With M midway between A and B: M = 1/2 · variable 1 + 3/16 in.
///
/// All in ticks of the part's own axes; exact, in 128-bit rationals. A value.
class AxisSystem {
 public:
  /// A variable with its factor.
  struct Term {
    std::uint32_t variable = 0;
    Rational factor;

    bool operator==(const Term&) const = default;
  };

  /// A variable that something else than chains has placed: `ticks` from the part's origin.
  struct Placed {
    std::uint32_t variable = 0;
    Rational ticks;
    How how = How::numeric;
    double residual = 0;    ///< in ticks
    bool disputed = false;  ///< what placed it contradicts itself
  };

  /// Requires: `network` is one of `networksOf`. Errors: `outOfRange` when a sum or a fraction
  /// leaves its exact type. Linear in places and links, but for relations.
  static Result<AxisSystem> of(const Part& part, AxisNetwork network);

  const AxisNetwork& network() const { return network_; }
  Axis axis() const { return network_.axis; }
  const Forest& forest() const { return forest_; }
  /// What a link says less what the forest makes of its ends: 0 for those it holds.
  Rational missOf(std::uint32_t link) const;
  const Elimination& elimination() const { return elimination_; }
  /// Combinations of relations that leave no place free: each has to come to 0.
  const std::vector<Sparse>& spareRelations() const { return spareRelations_; }
  std::uint32_t nodeCount() const { return forest_.nodeCount(); }
  std::optional<std::uint32_t> node(std::string_view place) const { return network_.node(place); }

  /// Groups and variables are numbered by their first place, the part's own as 0.
  int groupCount() const { return static_cast<int>(groups_.size()); }
  int groupOf(std::uint32_t node) const { return group_[node]; }
  std::uint32_t variableCount() const { return static_cast<std::uint32_t>(origins_.size()); }
  /// The node whose position a variable is.
  std::uint32_t originOf(std::uint32_t variable) const { return origins_[variable]; }
  /// The variables that a place hangs on, by number, without variable 0.
  std::span<const Term> termsOf(std::uint32_t node) const { return groups_[group_[node]].terms; }
  const Rational& constantOf(std::uint32_t node) const { return constant_[node]; }
  /// Of which links and relations that expression is made.
  std::optional<Circuit> membersOf(std::uint32_t node) const;
  /// Σ factor · relation + Σ factor · position(node) told in links of the forest. Requires that the
  /// factors cancel within each tree. Empty when a factor leaves 128 bits.
  std::optional<Circuit> membersOf(const Sparse& relations, const Sparse& nodes) const;

  /// How a tree of the forest is reached from the variables: where it is entered, and over what.
  struct Way {
    std::uint32_t entrance = 0;
    Circuit members;
  };
  std::vector<Way> ways() const;

  /// Positions from the chains alone, by node: those of a loose group from its own origin.
  std::vector<Position> positions() const;
  /// Puts in place what hangs on placed variables alone; it is in group 0 from then on, as a result
  /// of the least exact of them. Other positions stay as they are. False, and nothing changed, when
  /// a sum leaves the exact range.
  bool place(std::span<const Placed> placed, std::vector<Position>& positions) const;

  bool operator==(const AxisSystem&) const = default;

 private:
  struct Group {
    std::vector<Term> terms;
    std::uint32_t origin = 0;

    bool operator==(const Group&) const = default;
  };

  void takeRests();
  Rational inTree(std::uint32_t node) const;
  Result<Done> takeRelations();
  Result<Done> express(const Part& part);
  std::vector<std::vector<std::uint32_t>> groups(const Part& part);
  bool freeThePart(std::uint32_t root);
  std::pair<Sparse, Rational> baseOf(std::uint32_t root) const;
  bool expressGroup(const std::vector<std::uint32_t>& nodes,
                    const std::map<std::uint32_t, std::uint32_t>& variableAt);

  AxisNetwork network_;
  Forest forest_;
  std::vector<Rational> rests_;      // by node, what its place in its tree has beyond whole ticks
  Elimination elimination_;          // over the roots of trees
  std::set<std::uint32_t> related_;  // roots of trees that independent relations join
  std::map<std::uint32_t, Elimination::Expression> expressions_;  // by root, of those not free
  std::vector<Sparse> spareRelations_;
  std::vector<Group> groups_;
  std::vector<std::uint32_t> origins_;  // by variable
  std::vector<int> group_;              // by node
  std::vector<Rational> constant_;      // by node
};

/// The systems of the three axes of a part, in the order of `kAxes`.
/// Requires: `checkPart(part)` is fine. Errors: as above.
Result<std::array<AxisSystem, 3>> systemsOf(const Part& part);

}  // namespace inchwright
