#include "core/tolerance/grouped_network.h"

#include <algorithm>

#include "core/graph/edges_at.h"
#include "core/graph/forest.h"

namespace inchwright {
namespace {

/// As `GroupedNetwork::scale`.
std::int64_t scaleOf(const ToleranceNetwork& network) {
  Int128 finest = 1;
  for (const TolerancedLink& link : network.links) {
    finest = std::max(finest, link.rest.denominator());
  }
  // A rest takes a length beyond its ticks by less than one.
  const Int128 reach = network.reach + static_cast<Int128>(network.links.size());
  std::int64_t scale = 1;
  while (scale < finest && reach * scale * 2 < kFarthestReach) scale *= 2;
  return scale;
}

/// The rest of a link in parts of a tick; below half of them.
std::int64_t restOf(const TolerancedLink& link, std::int64_t scale) {
  const auto parts = link.rest.times(scale);
  return parts ? parts->rounded().value_or(0) : 0;
}

}  // namespace

std::int64_t ticksBelow(std::int64_t parts, std::int64_t scale) {
  const std::int64_t towardsZero = parts / scale;
  return towardsZero * scale > parts ? towardsZero - 1 : towardsZero;
}

std::int64_t ticksAbove(std::int64_t parts, std::int64_t scale) {
  return -ticksBelow(-parts, scale);
}

std::int64_t nearestTick(std::int64_t parts, std::int64_t scale) {
  return parts < 0 ? -nearestTick(-parts, scale) : ticksBelow(parts + scale / 2, scale);
}

GroupedNetwork groupRigidly(const ToleranceNetwork& network, Rigid by) {
  const auto isRigid = [&](const TolerancedLink& link) {
    return !link.toleranced &&
           (by == Rigid::shapesAndBasic || link.source.kind != SourceKind::reading);
  };
  const auto count = static_cast<std::uint32_t>(network.places.size());
  std::vector<std::uint32_t> rigid;
  for (std::uint32_t i = 0; i < network.links.size(); ++i) {
    if (isRigid(network.links[i])) rigid.push_back(i);
  }
  const EdgesAt rigidAt(count, rigid.size(), [&](std::uint32_t number) {
    const TolerancedLink& link = network.links[rigid[number]];
    return std::pair(link.from, link.to);
  });

  GroupedNetwork grouped;
  const std::int64_t scale = grouped.scale = scaleOf(network);
  grouped.group.assign(count, kNone);
  grouped.offset.assign(count, 0);
  std::vector<std::uint32_t> queue;
  for (std::uint32_t start = 0; start < count; ++start) {
    if (grouped.group[start] != kNone) continue;
    grouped.group[start] = grouped.groups;
    queue.assign(1, start);
    for (std::size_t i = 0; i < queue.size(); ++i) {
      for (const std::uint32_t number : rigidAt[queue[i]]) {
        const TolerancedLink& link = network.links[rigid[number]];
        const bool forward = link.from == queue[i];
        const std::uint32_t next = forward ? link.to : link.from;
        if (grouped.group[next] != kNone) continue;
        const std::int64_t length = link.low * scale + restOf(link, scale);
        grouped.group[next] = grouped.groups;
        grouped.offset[next] = grouped.offset[queue[i]] + (forward ? length : -length);
        queue.push_back(next);
      }
    }
    ++grouped.groups;
  }

  for (std::uint32_t i = 0; i < network.links.size(); ++i) {
    const TolerancedLink& link = network.links[i];
    const std::int64_t shift =
        grouped.offset[link.to] - grouped.offset[link.from] - restOf(link, scale);
    const std::int64_t low = link.low * scale;
    const std::int64_t high = link.high * scale;
    if (grouped.group[link.from] == grouped.group[link.to]) {
      const bool holds = low <= shift && shift <= high;
      if (!holds) grouped.impossible.push_back(i);
      if (holds && !isRigid(link)) grouped.inner.push_back(i);
      continue;
    }
    grouped.edges.push_back(
        {grouped.group[link.from], grouped.group[link.to], low - shift, high - shift});
    grouped.linkOf.push_back(i);
  }
  return grouped;
}

}  // namespace inchwright
