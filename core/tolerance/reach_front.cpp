#include "core/tolerance/reach_front.h"

#include <algorithm>
#include <functional>
#include <vector>

namespace inchwright {
namespace {

/// `yes` where the mask is all ones, `no` where it is zero.
std::uint32_t choose(std::uint32_t mask, std::uint32_t yes, std::uint32_t no) {
  return no ^ ((no ^ yes) & mask);
}

/// A node that waits in the heap.
struct Entry {
  std::int64_t key = 0;
  std::uint32_t node = 0;
  bool operator>(const Entry& other) const { return key > other.key; }
};

std::uint32_t maskOf(bool is) {
  return 0U - static_cast<std::uint32_t>(is);
}

}  // namespace

ReachFront::ReachFront(std::size_t side, std::span<const std::uint32_t> firstWay,
                       std::span<const ReachWay> ways, std::span<ReachStop> stops,
                       std::uint32_t source)
    : side_(side), firstWay_(firstWay), ways_(ways), stops_(stops) {
  std::fill(stops_.begin(), stops_.end(), ReachStop{});
  keys_.fill(INT64_MAX);
  stops_[source] = {0, kNone, 0};
  keys_[0] = 0;
  nodes_[0] = source;
}

void ReachFront::step() {
  // Two at a time, so that neither comparison waits for the other.
  std::array<std::int64_t, 2> key{keys_[0], keys_[1]};
  std::array<std::uint32_t, 2> at{0, 1};
  for (std::uint32_t start = 0; start < count_; start += kStride) {
#pragma GCC unroll 4
    for (std::uint32_t i = start; i < start + kStride; ++i) {
      const bool isLess = keys_[i] < key[i % 2];
      key[i % 2] = isLess ? keys_[i] : key[i % 2];
      at[i % 2] = isLess ? i : at[i % 2];
    }
  }
  const std::uint32_t least = key[1] < key[0] ? at[1] : at[0];
  const std::int64_t reached = keys_[least];
  const std::uint32_t node = nodes_[least];
  std::uint32_t count = count_ - 1;
  keys_[least] = keys_[count];
  nodes_[least] = nodes_[count];
  stops_[nodes_[count]].slot = least;
  keys_[count] = INT64_MAX;
  const std::uint32_t end = firstWay_[node + 1];
  for (std::uint32_t i = firstWay_[node]; i < end; ++i) {
    const ReachWay& way = ways_[i];
    ReachStop& stop = stops_[way.to];
    const std::int64_t value = reached + way.costs[side_];
    const std::uint32_t isBetter = maskOf(value < stop.distance);
    const std::uint32_t isNew = maskOf(stop.slot == kNone);
    const std::uint32_t slot = choose(isNew, count, stop.slot);
    const std::uint32_t place = choose(isBetter, slot, kNowhere);
    stop.distance = std::min(value, stop.distance);
    stop.by = choose(isBetter, way.edge, stop.by);
    stop.slot = choose(isBetter, slot, stop.slot);
    keys_[place] = value;
    nodes_[place] = way.to;
    count += isBetter & isNew & 1;
  }
  count_ = count;
}

void ReachFront::finish() {
  std::vector<Entry> heap;
  const auto push = [&](const Entry& entry) {
    heap.push_back(entry);
    std::push_heap(heap.begin(), heap.end(), std::greater<>());
  };
  for (std::uint32_t i = 0; i < count_; ++i) push({keys_[i], nodes_[i]});
  count_ = 0;
  while (!heap.empty()) {
    std::pop_heap(heap.begin(), heap.end(), std::greater<>());
    const Entry next = heap.back();
    heap.pop_back();
    if (next.key > stops_[next.node].distance) continue;
    const std::uint32_t end = firstWay_[next.node + 1];
    for (std::uint32_t i = firstWay_[next.node]; i < end; ++i) {
      const ReachWay& way = ways_[i];
      ReachStop& stop = stops_[way.to];
      const std::int64_t value = next.key + way.costs[side_];
      if (value >= stop.distance) continue;
      stop.distance = value;
      stop.by = way.edge;
      push({value, way.to});
    }
  }
}

}  // namespace inchwright
