#include "core/chain/ordered.h"

#include <algorithm>
#include <numeric>
#include <tuple>

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

std::vector<std::uint32_t> sortedNumbers(std::size_t count, const auto& less) {
  std::vector<std::uint32_t> numbers(count);
  std::iota(numbers.begin(), numbers.end(), 0u);
  std::stable_sort(numbers.begin(), numbers.end(), less);
  return numbers;
}

}  // namespace

AxisNetwork inOrder(const Part& part, const AxisNetwork& network) {
  AxisNetwork result;
  result.axis = network.axis;
  const auto byId = sortedNumbers(network.places.size(), [&](std::uint32_t a, std::uint32_t b) {
    return network.places[a] < network.places[b];
  });
  std::vector<std::uint32_t> rank(byId.size());
  for (std::uint32_t i = 0; i < byId.size(); ++i) {
    rank[byId[i]] = i;
    result.places.push_back(network.places[byId[i]]);
  }

  const auto key = [&](const AxisLink& link) {
    return std::tuple(trustIn(part, link.source), rank[link.from], rank[link.to], link.ticks);
  };
  const auto linkOrder = sortedNumbers(network.links.size(), [&](std::uint32_t a, std::uint32_t b) {
    const AxisLink& one = network.links[a];
    const AxisLink& other = network.links[b];
    const auto keyA = key(one);
    const auto keyB = key(other);
    if (keyA != keyB) return keyA < keyB;
    return labelOf(part, one.source) < labelOf(part, other.source);
  });
  for (const std::uint32_t i : linkOrder) {
    AxisLink link = network.links[i];
    link.from = rank[link.from];
    link.to = rank[link.to];
    result.links.push_back(link);
  }

  std::vector<AxisRelation> relations = network.relations;
  for (AxisRelation& relation : relations) {
    for (auto& term : relation.terms) term.first = rank[term.first];
    std::sort(relation.terms.begin(), relation.terms.end());
  }
  const auto order = sortedNumbers(relations.size(), [&](std::uint32_t a, std::uint32_t b) {
    const Trust trustA = trustIn(part, relations[a].source);
    const Trust trustB = trustIn(part, relations[b].source);
    if (trustA != trustB) return trustA < trustB;
    if (relations[a].terms != relations[b].terms) return relations[a].terms < relations[b].terms;
    return labelOf(part, relations[a].source) < labelOf(part, relations[b].source);
  });
  for (const std::uint32_t i : order) result.relations.push_back(relations[i]);
  return result;
}

std::string joined(const std::vector<std::string>& names, const std::string& between) {
  std::string text;
  for (const std::string& name : names) {
    if (!text.empty()) text += between;
    text += name;
  }
  return text;
}

std::string labelOf(const Part& part, const Source& source) {
  if (source.kind == SourceKind::reading) return part.readings[source.index].id;
  if (source.kind == SourceKind::feature) {
    const Feature& feature = part.features[source.index];
    return std::string(nameOf(feature.kind())) + " " + feature.id;
  }
  const Understanding& what = part.understood[source.index];
  switch (what.kind) {
    case UnderstandingKind::inLine:
      return joined(what.of, ", ") + " in line";
    case UnderstandingKind::midway:
      return joined(what.of, ", ") + " midway " + joined(what.between, "–");
    case UnderstandingKind::symmetric:
      return joined(what.of, ", ") + " symmetric about " + what.about;
    case UnderstandingKind::equal:
      return joined(what.of, ", ") + " equally spaced";
    case UnderstandingKind::concentric:
    case UnderstandingKind::tangent:
    case UnderstandingKind::parallel:
    case UnderstandingKind::square:
      break;
  }
  return joined(what.of, ", ") + " " + std::string(nameOf(what.kind));
}

const Lettered* figureOf(const Part& part, const Source& source) {
  return source.kind == SourceKind::reading ? &part.readings[source.index].figure : nullptr;
}

}  // namespace inchwright
