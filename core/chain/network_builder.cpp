#include "core/chain/network_builder.h"

#include <algorithm>
#include <limits>
#include <tuple>

#include "core/graph/forest.h"

namespace inchwright {
namespace {

enum class Trust { shape, stated, plain, divided, assumed, bracketed };

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

// The first bytes of an id as a number that compares like them.
std::uint64_t startOf(std::string_view id) {
  std::uint64_t start = 0;
  for (std::size_t i = 0; i < sizeof start; ++i) {
    start = start << 8 | (i < id.size() ? static_cast<unsigned char>(id[i]) : 0u);
  }
  return start;
}

// The numbers of ids in ascending order; most differ in their first bytes.
std::vector<std::uint32_t> inOrder(const std::vector<Id>& ids) {
  std::vector<std::pair<std::uint64_t, std::uint32_t>> starts;
  starts.reserve(ids.size());
  for (const Id& id : ids)
    starts.push_back({startOf(id), static_cast<std::uint32_t>(starts.size())});
  std::sort(starts.begin(), starts.end(), [&](const auto& a, const auto& b) {
    return a.first != b.first ? a.first < b.first : ids[a.second] < ids[b.second];
  });
  std::vector<std::uint32_t> order;
  order.reserve(ids.size());
  for (const auto& [start, number] : starts) order.push_back(number);
  return order;
}

// Places by id; links and relations by trust, then by what they join, then by what they say.
template <class One, class Key>
void sortBy(const Part& part, std::vector<One>& all, const Key& key) {
  std::vector<std::pair<Trust, std::uint32_t>> order;
  order.reserve(all.size());
  for (const One& one : all) {
    order.push_back({trustIn(part, one.source), static_cast<std::uint32_t>(order.size())});
  }
  std::sort(order.begin(), order.end(), [&](const auto& first, const auto& second) {
    if (first.first != second.first) return first.first < second.first;
    const One& a = all[first.second];
    const One& b = all[second.second];
    if (key(a) != key(b)) return key(a) < key(b);
    if (comesFirst(part, a.source, b.source)) return true;
    return !comesFirst(part, b.source, a.source) && first.second < second.second;
  });
  std::vector<One> sorted;
  sorted.reserve(all.size());
  for (const auto& [trust, index] : order) sorted.push_back(std::move(all[index]));
  all = std::move(sorted);
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

NetworkBuilder::NetworkBuilder(const Part& part) : part_(part) {
  std::vector<Id> ids;
  std::vector<std::uint32_t> owners;
  std::vector<std::array<bool, 3>> axes;
  for (std::uint32_t i = 0; i < part.features.size(); ++i) {
    firstOf_.push_back(static_cast<std::uint32_t>(ids.size()));
    std::array<bool, 3> has{};
    const auto add = [&](Id id) {
      ids.push_back(std::move(id));
      owners.push_back(i);
      axes.push_back(has);
    };
    const Feature& feature = part.features[i];
    for (const Axis axis : axesOf(feature)) has[static_cast<std::size_t>(axis)] = true;
    if (has == std::array<bool, 3>{}) continue;
    if (innerPlaceCount(feature) == 0) {
      add(feature.id);
      continue;
    }
    for (Place& place : placesOf(feature)) add(std::move(place.id));
  }
  const auto count = static_cast<std::uint32_t>(ids.size());
  firstOf_.push_back(count);
  const std::vector<std::uint32_t> byId = inOrder(ids);
  ids_.resize(count);
  owners_.resize(count);
  placesOf_.resize(count);
  for (std::vector<std::uint32_t>& nodes : nodes_) nodes.assign(count, kNone);
  for (std::uint32_t place = 0; place < count; ++place) {
    const std::uint32_t was = byId[place];
    ids_[place] = std::move(ids[was]);
    owners_[place] = owners[was];
    placesOf_[was] = place;
    for (std::size_t axis = 0; axis < kAxes.size(); ++axis) {
      if (!axes[was][axis]) continue;
      nodes_[axis][place] = static_cast<std::uint32_t>(networks_[axis].places.size());
      networks_[axis].places.push_back(ids_[place]);
      networks_[axis].owners.push_back(owners_[place]);
    }
  }
  for (const Axis axis : kAxes) networks_[static_cast<std::size_t>(axis)].axis = axis;
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

void NetworkBuilder::link(Axis axis, std::uint32_t from, std::uint32_t to, const Rational& length,
                          bool exact, Source source) {
  if (from == kNone || to == kNone) return;
  const auto number = static_cast<std::size_t>(axis);
  const std::uint32_t a = nodes_[number][from];
  const std::uint32_t b = nodes_[number][to];
  if (a == kNone || b == kNone) return;
  // What is made of figures of 64 bits halved or turned fits; `take` looks for what does not.
  const std::int64_t ticks = length.rounded().value_or(std::numeric_limits<std::int64_t>::min());
  networks_[number].links.push_back(
      {a, b, ticks, exact, source, length.minus(ticks).value_or(Rational())});
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
  sortBy(part_, network.links,
         [](const AxisLink& link) { return std::tie(link.from, link.to, link.ticks); });
  sortBy(part_, network.relations,
         [](const AxisRelation& relation) { return std::tie(relation.terms); });
  return std::move(network);
}

}  // namespace inchwright
