#include "core/tolerance/grouped_network.h"

#include "core/graph/edges_at.h"
#include "core/graph/forest.h"

namespace inchwright {

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
        grouped.group[next] = grouped.groups;
        grouped.offset[next] = grouped.offset[queue[i]] + (forward ? link.low : -link.low);
        queue.push_back(next);
      }
    }
    ++grouped.groups;
  }

  for (std::uint32_t i = 0; i < network.links.size(); ++i) {
    const TolerancedLink& link = network.links[i];
    const std::int64_t shift = grouped.offset[link.to] - grouped.offset[link.from];
    if (grouped.group[link.from] == grouped.group[link.to]) {
      const bool holds = link.low <= shift && shift <= link.high;
      if (!holds) grouped.impossible.push_back(i);
      if (holds && !isRigid(link)) grouped.inner.push_back(i);
      continue;
    }
    grouped.edges.push_back(
        {grouped.group[link.from], grouped.group[link.to], link.low - shift, link.high - shift});
    grouped.linkOf.push_back(i);
  }
  return grouped;
}

}  // namespace inchwright
