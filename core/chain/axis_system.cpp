#include "core/chain/axis_system.h"

#include <algorithm>
#include <utility>

#include "core/chain/tree_paths.h"
#include "core/graph/branches.h"

namespace inchwright {
namespace {

// Positions stay below this, so that what is made of them fits 64 bits.
const Rational kFarthest(std::int64_t{1} << 62);

Error sumTooFar() {
  return {ErrorCode::outOfRange, "a sum of readings leaves the exact range", ""};
}

bool isNear(const std::optional<Rational>& ticks) {
  return ticks && *ticks<kFarthest&& * ticks> kFarthest.negated();
}

// sum + factor · value, kept empty once it has left its range.
void addTo(std::optional<Rational>& sum, const Rational& factor, const Rational& value) {
  const auto product = factor.times(value);
  sum = sum && product ? sum->plus(*product) : std::nullopt;
}

// +1 or −1 at an outer side, as it faces; else 0.
int sideAt(const Part& part, const AxisNetwork& network, std::uint32_t node) {
  const auto* edge = part.features[network.owners[node]].as<kind::Edge>();
  return edge != nullptr && edge->side ? outward(*edge->side) : 0;
}

}  // namespace

Result<AxisSystem> AxisSystem::of(const Part& part, AxisNetwork network) {
  AxisSystem system;
  std::vector<Link> bare;
  bare.reserve(network.links.size());
  for (const AxisLink& link : network.links) bare.push_back({link.from, link.to, link.ticks});
  auto forest = Forest::of(static_cast<std::uint32_t>(network.places.size()), std::move(bare));
  if (!forest) return forest.error();
  system.network_ = std::move(network);
  system.forest_ = *std::move(forest);
  system.takeRests();
  if (const auto taken = system.takeRelations(); !taken) return taken.error();
  if (const auto done = system.express(part); !done) return done.error();
  return system;
}

// The forest counts whole ticks; what its links have beyond them is summed beside it. Empty where
// none has anything.
void AxisSystem::takeRests() {
  const auto& links = network_.links;
  const bool none = std::all_of(links.begin(), links.end(),
                                [](const AxisLink& link) { return link.rest.isZero(); });
  if (none) return;
  rests_.resize(nodeCount());
  const Branches branches(forest_);
  for (std::uint32_t node = 0; node < nodeCount(); ++node) {
    if (forest_.root(node) != node) continue;
    branches.walkFrom(node, [&](std::uint32_t here, std::uint32_t from, std::uint32_t link) {
      if (link == kNone) return;
      const Rational& rest = links[link].rest;
      const auto sum = rests_[from].plus(links[link].to == here ? rest : rest.negated());
      rests_[here] = sum.value_or(Rational());
    });
  }
}

// Where a place lies from the root of its tree. Rests have small denominators: it always fits.
Rational AxisSystem::inTree(std::uint32_t node) const {
  const Rational whole = forest_.position(node);
  return rests_.empty() ? whole : rests_[node].plus(whole).value_or(whole);
}

Rational AxisSystem::missOf(std::uint32_t link) const {
  const Rational whole = Rational::of(forest_.missOf(link), 1).value_or(Rational());
  if (rests_.empty()) return whole;
  const AxisLink& one = network_.links[link];
  const auto drawn = rests_[one.to].minus(rests_[one.from]);
  const auto rest = drawn ? one.rest.minus(*drawn) : std::nullopt;
  return (rest ? whole.plus(*rest) : std::nullopt).value_or(whole);
}

Result<Done> AxisSystem::takeRelations() {
  for (std::uint32_t i = 0; i < network_.relations.size(); ++i) {
    Sparse factors;
    std::optional<Rational> constant = Rational();
    for (const auto& [node, coefficient] : network_.relations[i].terms) {
      const Sparse one{{forest_.root(node), Rational(1)}};
      addTo(constant, Rational(-coefficient), inTree(node));
      if (!constant || !addScaled(factors, one, Rational(coefficient))) return sumTooFar();
    }
    auto dependence = elimination_.add(i, factors, *constant);
    if (!dependence) return dependence.error();
    if (*dependence) {
      spareRelations_.push_back(std::move((*dependence)->equations));
      continue;
    }
    for (const auto& [node, coefficient] : network_.relations[i].terms) {
      related_.insert(forest_.root(node));
    }
  }
  return Done{};
}

// Trees whose roots come to the same free ones are fixed against each other. The part itself comes
// first, the others by their first place.
std::vector<std::vector<std::uint32_t>> AxisSystem::groups(const Part& part) {
  std::vector<std::uint32_t> known(nodeCount(), kNone);  // by root: its group
  std::map<Sparse, std::uint32_t> mixed;
  std::vector<std::vector<std::uint32_t>> all;
  std::vector<int> sides;
  for (std::uint32_t node = 0; node < nodeCount(); ++node) {
    const std::uint32_t root = forest_.root(node);
    if (known[root] == kNone) {
      const auto fresh = static_cast<std::uint32_t>(all.size());
      const auto found = expressions_.find(root);
      const Sparse* free = found == expressions_.end() ? nullptr : &found->second.free;
      std::uint32_t& group = free == nullptr || free->size() == 1
                                 ? known[free == nullptr ? root : free->begin()->first]
                                 : mixed.emplace(*free, kNone).first->second;
      if (group == kNone) {
        group = fresh;
        all.emplace_back();
        sides.push_back(0);
      }
      known[root] = group;
    }
    all[known[root]].push_back(node);
    sides[known[root]] += sideAt(part, network_, node) != 0 ? 1 : 0;
  }
  std::size_t best = 0;
  for (std::size_t i = 1; i < all.size(); ++i) {
    if (std::pair(sides[i], all[i].size()) > std::pair(sides[best], all[best].size())) best = i;
  }
  if (best != 0) std::rotate(all.begin(), all.begin() + best, all.begin() + best + 1);
  return all;
}

// The part's own place becomes a free one: what its base was made of is told by it.
bool AxisSystem::freeThePart(std::uint32_t root) {
  const auto found = expressions_.find(root);
  if (found == expressions_.end() || found->second.free.size() == 1) return true;
  const Elimination::Expression own = std::move(found->second);
  const auto [pivot, by] = *own.free.begin();
  // The pivot's tree was free; it is made of the part's place from now on.
  expressions_[pivot].free[pivot] = Rational(1);
  expressions_.erase(root);
  for (auto& [tree, expression] : expressions_) {
    const auto share = expression.free.find(pivot);
    if (share == expression.free.end()) continue;
    const auto factor = share->second.over(by);
    if (!factor || !addScaled(expression.free, own.free, factor->negated()) ||
        !addScaled(expression.free, {{root, Rational(1)}}, *factor) ||
        !addScaled(expression.equations, own.equations, factor->negated())) {
      return false;
    }
    std::optional<Rational> constant = expression.constant;
    addTo(constant, factor->negated(), own.constant);
    if (!constant) return false;
    expression.constant = *constant;
  }
  return true;
}

Result<Done> AxisSystem::express(const Part& part) {
  for (const std::uint32_t root : related_) {
    Elimination::Expression expression = elimination_.of(root);
    if (!expression.equations.empty()) expressions_.emplace(root, std::move(expression));
  }
  const auto all = groups(part);
  if (!all.empty() && !freeThePart(forest_.root(all.front().front()))) return sumTooFar();
  group_.resize(nodeCount());
  constant_.resize(nodeCount());
  std::map<std::uint32_t, std::uint32_t> variableAt;  // by free root
  for (std::size_t i = 0; i < all.size(); ++i) {
    // The origin is a lower outer side if the group has one, else an upper one, else its first.
    std::uint32_t origin = all[i].front();
    const auto rank = [&](std::uint32_t node) {
      const int side = sideAt(part, network_, node);
      return side < 0 ? 0 : side > 0 ? 1 : 2;
    };
    for (const std::uint32_t node : all[i]) {
      group_[node] = static_cast<int>(i);
      if (rank(node) < rank(origin)) origin = node;
    }
    groups_.push_back({{}, origin});
    const auto found = expressions_.find(forest_.root(origin));
    const bool isFree = found == expressions_.end();
    if (!isFree && found->second.free.size() > 1) continue;
    variableAt[isFree ? forest_.root(origin) : found->second.free.begin()->first] =
        static_cast<std::uint32_t>(origins_.size());
    origins_.push_back(origin);
  }
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (!expressGroup(all[i], variableAt)) return sumTooFar();
  }
  return Done{};
}

// Where a tree's root lies from the free roots, by the relations.
std::pair<Sparse, Rational> AxisSystem::baseOf(std::uint32_t root) const {
  const auto found = expressions_.find(root);
  if (found == expressions_.end()) return {{{root, Rational(1)}}, Rational()};
  return {found->second.free, found->second.constant};
}

bool AxisSystem::expressGroup(const std::vector<std::uint32_t>& nodes,
                              const std::map<std::uint32_t, std::uint32_t>& variableAt) {
  Group& group = groups_[group_[nodes.front()]];
  // A variable is the position of its origin, not of the free root it hangs on.
  std::optional<Rational> turned = Rational();
  for (const auto& [root, factor] : baseOf(forest_.root(nodes.front())).first) {
    const std::uint32_t variable = variableAt.at(root);
    if (variable != 0) group.terms.push_back({variable, factor});
    const std::uint32_t origin = origins_[variable];
    const auto there = baseOf(forest_.root(origin)).second.plus(inTree(origin));
    if (!there) return false;
    addTo(turned, factor.negated(), *there);
  }
  if (!turned) return false;
  std::uint32_t root = kNone;
  std::optional<Rational> base;
  for (const std::uint32_t node : nodes) {
    if (forest_.root(node) != root) {
      root = forest_.root(node);
      base = baseOf(root).second.plus(*turned);
    }
    const auto constant = base ? base->plus(inTree(node)) : std::nullopt;
    if (!isNear(constant)) return false;
    constant_[node] = *constant;
  }
  std::sort(group.terms.begin(), group.terms.end(),
            [](const Term& a, const Term& b) { return a.variable < b.variable; });
  return true;
}

std::vector<AxisSystem::Way> AxisSystem::ways() const {
  // A tree is entered where its group's origin is, else where a relation meets it first.
  std::map<std::uint32_t, std::uint32_t> entrance;
  for (const Group& group : groups_) entrance.emplace(forest_.root(group.origin), group.origin);
  for (const AxisRelation& relation : network_.relations) {
    for (const auto& [node, coefficient] : relation.terms) {
      const std::uint32_t root = forest_.root(node);
      const auto at = entrance.emplace(root, node);
      const bool isOrigin = groups_[group_[node]].origin == at.first->second;
      if (!isOrigin) at.first->second = std::min(at.first->second, node);
    }
  }
  std::vector<Way> all;
  for (const auto& [root, node] : entrance) {
    auto members = expressions_.count(root) == 0 && node == groups_[group_[node]].origin
                       ? Circuit{}
                       : membersOf(node);
    all.push_back({node, members.value_or(Circuit{})});
  }
  return all;
}

std::optional<Circuit> AxisSystem::membersOf(std::uint32_t node) const {
  Sparse relations;
  const auto found = expressions_.find(forest_.root(node));
  if (found != expressions_.end() && !addScaled(relations, found->second.equations, Rational(-1))) {
    return std::nullopt;
  }
  Sparse nodes{{node, Rational(1)}};
  std::optional<Rational> rest = Rational(-1);
  const auto less = [&](std::uint32_t variable, const Rational& factor) {
    const std::uint32_t origin = origins_[variable];
    const auto there = expressions_.find(forest_.root(origin));
    return addScaled(nodes, {{origin, Rational(1)}}, factor.negated()) &&
           (there == expressions_.end() || addScaled(relations, there->second.equations, factor));
  };
  for (const auto& [variable, factor] : termsOf(node)) {
    rest = rest ? rest->plus(factor) : std::nullopt;
    if (!less(variable, factor)) return std::nullopt;
  }
  if (!rest || (!rest->isZero() && !less(0, rest->negated()))) return std::nullopt;
  return membersOf(relations, nodes);
}

std::optional<Circuit> AxisSystem::membersOf(const Sparse& relations, const Sparse& nodes) const {
  const std::optional<Sparse> links = pathsOf(forest_, network_, relations, nodes);
  if (!links) return std::nullopt;
  Circuit members;
  members.links.assign(links->begin(), links->end());
  for (const auto& one : relations) members.relations.push_back(one.first);
  return members;
}

std::vector<Position> AxisSystem::positions() const {
  std::vector<Position> positions(nodeCount());
  for (std::uint32_t node = 0; node < nodeCount(); ++node) {
    positions[node].group = group_[node];
    // Both are below 2^62.
    const Rational origin = constant_[groups_[group_[node]].origin];
    positions[node].ticks = constant_[node].minus(origin).value_or(constant_[node]);
  }
  const auto isExact = [](const AxisLink& link) { return link.exact; };
  if (std::all_of(network_.links.begin(), network_.links.end(), isExact)) return positions;
  const Branches branches(forest_);
  for (const Way& way : ways()) {
    const bool rounded =
        std::any_of(way.members.links.begin(), way.members.links.end(),
                    [&](const auto& member) { return !network_.links[member.first].exact; });
    branches.walkFrom(
        way.entrance, [&](std::uint32_t node, std::uint32_t from, std::uint32_t link) {
          const bool before = link == kNone ? rounded : positions[from].how == How::rounded;
          if (before || (link != kNone && !network_.links[link].exact)) {
            positions[node].how = How::rounded;
          }
        });
  }
  return positions;
}

bool AxisSystem::place(std::span<const Placed> placed, std::vector<Position>& positions) const {
  std::vector<const Placed*> by(variableCount());
  for (const Placed& one : placed) by[one.variable] = &one;
  std::vector<Position> result = positions;
  for (std::uint32_t node = 0; node < nodeCount(); ++node) {
    Position& here = result[node];
    const auto terms = termsOf(node);
    const bool follows = std::all_of(
        terms.begin(), terms.end(), [&](const Term& term) { return by[term.variable] != nullptr; });
    if (terms.empty() || !follows) continue;
    std::optional<Rational> sum = constant_[node];
    for (const auto& [variable, factor] : terms) {
      const Placed& one = *by[variable];
      addTo(sum, factor, one.ticks);
      here.how = std::max(here.how, one.how);
      here.residual = std::max(here.residual, one.residual);
      here.disputed = here.disputed || one.disputed;
    }
    if (!isNear(sum)) return false;
    here.ticks = *sum;
    here.group = 0;
  }
  positions = std::move(result);
  return true;
}

Result<std::array<AxisSystem, 3>> systemsOf(const Part& part) {
  auto networks = networksOf(part);
  if (!networks) return networks.error();
  std::array<AxisSystem, 3> systems;
  for (std::size_t i = 0; i < systems.size(); ++i) {
    auto system = AxisSystem::of(part, std::move((*networks)[i]));
    if (!system) return system.error();
    systems[i] = *std::move(system);
  }
  return systems;
}

}  // namespace inchwright
