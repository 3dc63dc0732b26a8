#include "core/seen/parts.h"

#include "core/base/sets.h"

namespace inchwright::seen {
namespace {

struct Run {
  int y, from, past;
};

std::vector<Run> runsOf(const Grey& cover, std::uint8_t above, const Stop& stop) {
  std::vector<Run> runs;
  for (int y = 0; y < cover.height && !stop.asked(); ++y) {
    const std::uint8_t* row = cover.row(y);
    int x = 0;
    while (x < cover.width) {
      while (x < cover.width && row[x] <= above) ++x;
      const int from = x;
      while (x < cover.width && row[x] > above) ++x;
      if (x > from) runs.push_back({y, from, x});
    }
  }
  return runs;
}

}  // namespace

Parts partsOf(const Grey& cover, std::uint8_t above, const Stop& stop) {
  const std::vector<Run> runs = runsOf(cover, above, stop);
  Sets sets(runs.size());
  std::size_t upper = 0;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (stop.askedAt(i)) return {};
    const Run& r = runs[i];
    while (upper < i &&
           (runs[upper].y < r.y - 1 || (runs[upper].y == r.y - 1 && runs[upper].past < r.from))) {
      ++upper;
    }
    for (std::size_t k = upper; k < i && runs[k].y == r.y - 1 && runs[k].from <= r.past; ++k) {
      sets.unite(static_cast<std::uint32_t>(k), static_cast<std::uint32_t>(i));
    }
  }
  Parts out;
  out.of = Plane<std::int32_t>(cover.width, cover.height, -1);
  std::vector<int> number(runs.size(), -1);
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (stop.askedAt(i)) return out;
    const Run& r = runs[i];
    int& n = number[sets.find(static_cast<std::uint32_t>(i))];
    const Box box{r.from, r.y, r.past - r.from, 1};
    if (n < 0) {
      n = static_cast<int>(out.list.size());
      out.list.push_back({box, 0});
    }
    Part& part = out.list[n];
    part.box = around(part.box, box);
    part.area += box.w;
    std::fill(out.of.row(r.y) + r.from, out.of.row(r.y) + r.past, n);
  }
  return out;
}

}  // namespace inchwright::seen
