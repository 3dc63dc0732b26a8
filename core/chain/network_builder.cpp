#include "core/chain/network_builder.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <tuple>
#include <utility>

#include "core/graph/forest.h"

namespace inchwright {
namespace {

using Trust = NetworkBuilder::Trust;
constexpr std::size_t kTrusts = 6;

Trust trustIn(const Part& part, const Source& source) {
  switch (source.kind) {
    case SourceKind::feature:
      return Trust::shape;
    case SourceKind::understanding:
      return part.understood[source.index].stated ? Trust::stated : Trust::assumed;
    case SourceKind::reading:
      break;
  }
  const Lettered& figure = part.readings[source.index].figure;
  if (figure.reference) return Trust::bracketed;
  return figure.exact ? Trust::plain : Trust::divided;
}

// The numbers of ids in ascending order; most differ in their first bytes.
std::vector<std::uint32_t> inOrder(const std::vector<std::string_view>& ids) {
  std::vector<std::pair<std::uint64_t, std::uint32_t>> starts;
  starts.reserve(ids.size());
  for (const std::string_view id : ids)
    starts.push_back({firstBytes(id), static_cast<std::uint32_t>(starts.size())});
  std::sort(starts.begin(), starts.end(), [&](const auto& a, const auto& b) {
    return a.first != b.first ? a.first < b.first : ids[a.second] < ids[b.second];
  });
  std::vector<std::uint32_t> order;
  order.reserve(ids.size());
  for (const auto& [start, number] : starts) order.push_back(number);
  return order;
}

// The numbers by their keys, each below `keys`; those of one key in the order they come.
template <class KeyOf>
std::vector<std::uint32_t> counted(const std::vector<std::uint32_t>& numbers, std::size_t keys,
                                   KeyOf keyOf) {
  std::vector<std::uint32_t> next(keys + 1);
  for (const std::uint32_t number : numbers) ++next[keyOf(number) + 1];
  for (std::size_t key = 0; key < keys; ++key) next[key + 1] += next[key];
  std::vector<std::uint32_t> order(numbers.size());
  for (const std::uint32_t number : numbers) order[next[keyOf(number)]++] = number;
  return order;
}

// By trust and by the two places, then by length and by what says it. Linear, since few begin at
// one place.
void sortLinks(const Part& part, const std::vector<Trust>& trust, std::size_t placeCount,
               std::vector<AxisLink>& links) {
  std::vector<std::uint32_t> order(links.size());
  std::iota(order.begin(), order.end(), 0u);
  const auto fromOf = [&](std::uint32_t link) { return links[link].from; };
  order = counted(order, placeCount, fromOf);
  const auto isBefore = [&](std::uint32_t first, std::uint32_t second) {
    const AxisLink& a = links[first];
    const AxisLink& b = links[second];
    if (a.to != b.to) return a.to < b.to;
    if (a.ticks != b.ticks) return a.ticks < b.ticks;
    if (comesFirst(part, a.source, b.source)) return true;
    return !comesFirst(part, b.source, a.source) && first < second;
  };
  for (auto here = order.begin(); here != order.end();) {
    const auto end = std::find_if(
        here, order.end(), [&](std::uint32_t link) { return fromOf(link) != fromOf(*here); });
    if (end - here > 1) std::sort(here, end, isBefore);
    here = end;
  }
  order = counted(order, kTrusts,
                  [&](std::uint32_t link) { return static_cast<std::size_t>(trust[link]); });
  std::vector<AxisLink> sorted;
  sorted.reserve(links.size());
  for (const std::uint32_t link : order) sorted.push_back(links[link]);
  links = std::move(sorted);
}

// By trust, then by what they relate, then by what says it.
void sortRelations(const Part& part, std::vector<AxisRelation>& relations) {
  std::stable_sort(relations.begin(), relations.end(),
                   [&](const AxisRelation& a, const AxisRelation& b) {
                     const Trust first = trustIn(part, a.source), second = trustIn(part, b.source);
                     if (first != second) return first < second;
                     if (a.terms != b.terms) return a.terms < b.terms;
                     return comesFirst(part, a.source, b.source);
                   });
}

}  // namespace

bool comesFirst(const Part& part, const Source& a, const Source& b) {
  if (a.kind != b.kind) return a.kind < b.kind;
  if (a.kind == SourceKind::reading) return part.readings[a.index].id < part.readings[b.index].id;
  if (a.kind == SourceKind::feature) return part.features[a.index].id < part.features[b.index].id;
  const auto key = [&](const Source& source) {
    const Understanding& what = part.understood[source.index];
    return std::tie(what.kind, what.of, what.between, what.about);
  };
  return key(a) < key(b);
}

NetworkBuilder::NetworkBuilder(const Part& part, std::optional<Axis> only)
    : part_(part), only_(only) {
  std::vector<std::string_view> ids;
  std::vector<std::uint32_t> owners;
  std::vector<AxisSet> axes;
  ids.reserve(part.features.size());
  owners.reserve(part.features.size());
  axes.reserve(part.features.size());
  firstOf_.reserve(part.features.size() + 1);
  for (std::uint32_t i = 0; i < part.features.size(); ++i) {
    firstOf_.push_back(static_cast<std::uint32_t>(ids.size()));
    const Feature& feature = part.features[i];
    const AxisSet has = axesOf(feature);
    if (has.empty()) continue;
    const auto add = [&](std::string_view id) {
      ids.push_back(id);
      owners.push_back(i);
      axes.push_back(has);
    };
    add(feature.id);
    if (innerPlaceCount(feature) == 0) continue;
    ofSeveral_.push_back(i);
    std::vector<Place> places = placesOf(feature);
    for (std::size_t k = 1; k < places.size(); ++k) {
      add(innerIds_.emplace_back(std::move(places[k].id)));
    }
  }
  const auto count = static_cast<std::uint32_t>(ids.size());
  firstOf_.push_back(count);
  const std::vector<std::uint32_t> byId = inOrder(ids);
  ids_.resize(count);
  owners_.resize(count);
  placesOf_.resize(count);
  for (std::uint32_t place = 0; place < count; ++place) {
    const std::uint32_t was = byId[place];
    ids_[place] = ids[was];
    owners_[place] = owners[was];
    placesOf_[was] = place;
  }
  for (const Axis axis : kAxes) {
    AxisNetwork& network = networks_[static_cast<std::size_t>(axis)];
    std::vector<std::uint32_t>& nodes = nodes_[static_cast<std::size_t>(axis)];
    network.axis = axis;
    nodes.assign(count, kNone);
    if (!takes(axis)) continue;
    network.places.reserve(count);
    network.owners.reserve(count);
    network.isInner.reserve(count);
    for (std::uint32_t place = 0; place < count; ++place) {
      if (!axes[byId[place]].has(axis)) continue;
      nodes[place] = static_cast<std::uint32_t>(network.places.size());
      network.places.emplace_back(ids_[place]);
      network.owners.push_back(owners_[place]);
      network.isInner.push_back(firstOf_[owners_[place]] != byId[place]);
    }
    network.links.reserve(part.readings.size());
    trust_[static_cast<std::size_t>(axis)].reserve(part.readings.size());
  }
  numbers_ = IdNumbers(ids_);
}

std::uint32_t NetworkBuilder::place(std::string_view id) const {
  return numbers_.find(ids_, id).value_or(kNone);
}

std::uint32_t NetworkBuilder::placeCount(std::uint32_t feature) const {
  return firstOf_[feature + 1] - firstOf_[feature];
}

std::uint32_t NetworkBuilder::placeOf(std::uint32_t feature, std::uint32_t which) const {
  return placesOf_[firstOf_[feature] + which];
}

void NetworkBuilder::link(Axis axis, std::uint32_t from, std::uint32_t to, std::int64_t ticks,
                          bool exact, Source source, const Rational& rest) {
  if (from == kNone || to == kNone) return;
  const auto number = static_cast<std::size_t>(axis);
  const std::uint32_t a = nodes_[number][from];
  const std::uint32_t b = nodes_[number][to];
  if (a == kNone || b == kNone) return;
  networks_[number].links.push_back({a, b, ticks, exact, source, rest});
  trust_[number].push_back(trustIn(part_, source));
}

void NetworkBuilder::link(Axis axis, std::uint32_t from, std::uint32_t to, const Rational& length,
                          bool exact, Source source) {
  // What is made of figures of 64 bits halved or turned fits; `take` looks for what does not.
  const std::int64_t ticks = length.rounded().value_or(std::numeric_limits<std::int64_t>::min());
  link(axis, from, to, ticks, exact, source, length.minus(ticks).value_or(Rational()));
}

void NetworkBuilder::relate(Axis axis, const std::vector<std::pair<std::uint32_t, int>>& terms,
                            Source source) {
  const auto number = static_cast<std::size_t>(axis);
  AxisRelation relation{{}, source};
  for (const auto& [place, coefficient] : terms) {
    if (place == kNone || nodes_[number][place] == kNone) return;
    relation.terms.push_back({nodes_[number][place], coefficient});
  }
  std::sort(relation.terms.begin(), relation.terms.end());
  networks_[number].relations.push_back(std::move(relation));
}

void NetworkBuilder::relateEqual(Axis axis, const std::vector<std::uint32_t>& of, Source source) {
  const int last = static_cast<int>(of.size()) - 1;
  for (int i = 1; i < last; ++i) {
    relate(axis, {{of.front(), last - i}, {of[static_cast<std::size_t>(i)], -last}, {of.back(), i}},
           source);
  }
}

Result<AxisNetwork> NetworkBuilder::take(Axis axis) {
  AxisNetwork& network = networks_[static_cast<std::size_t>(axis)];
  for (const AxisLink& link : network.links) {
    if (link.ticks == std::numeric_limits<std::int64_t>::min()) {
      return Error{ErrorCode::outOfRange, "a length does not fit the exact range",
                   network.places[link.to]};
    }
  }
  sortLinks(part_, trust_[static_cast<std::size_t>(axis)], network.places.size(), network.links);
  sortRelations(part_, network.relations);
  return std::move(network);
}

}  // namespace inchwright
