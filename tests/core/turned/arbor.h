#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "core/part/edit.h"
#include "core/solution/solution.h"
#include "core/turned/lathe_work.h"

namespace inchwright {

inline Lettered lettered(std::string_view text) {
  return readLength(text).value();
}

/// A turned part put together by hand: edges along X, readings between them, stretches.
class Arbor {
 public:
  Arbor() { part_.name = "Arbor"; }

  Arbor& edge(const Id& id, std::optional<Side> side = std::nullopt) {
    return add(id, kind::Edge{Axis::x, side});
  }
  Arbor& reads(const Id& from, const Id& to, std::string_view text) {
    Reading reading;
    reading.id = "r" + std::to_string(part_.readings.size() + 1);
    reading.from = from;
    reading.to = to;
    reading.figure = lettered(text);
    part_.readings.push_back(reading);
    return *this;
  }
  Arbor& add(const Id& id, Shape shape) {
    Feature feature;
    feature.id = id;
    feature.shape = std::move(shape);
    part_.features.push_back(feature);
    return *this;
  }
  Arbor& outside(const Id& id, const Id& from, const Id& to, std::string_view diameter) {
    return add(id, kind::Outside{{from, to}, lettered(diameter)});
  }
  Arbor& held(Side side, std::string_view standsOut = {}) {
    auto& setup = part_.setups.emplace_back();
    setup.name = std::to_string(part_.setups.size());
    setup.chucked.emplace();
    setup.chucked->held = side;
    if (!standsOut.empty()) setup.chucked->standsOut = lettered(standsOut);
    return *this;
  }
  Part& part() { return part_; }

  LatheWork work(std::size_t setup = 0, const Lathe& lathe = {}) {
    part_ = turnedPart(std::move(part_));
    Job job;
    job.lathe = lathe;
    const auto solution = solve(part_);
    EXPECT_TRUE(solution.ok());
    auto made = latheWork(job, part_, *solution, part_.setups[setup]);
    if (!made.ok()) {
      ADD_FAILURE() << made.error().text;
      return {};
    }
    return *std::move(made);
  }

 private:
  Part part_;
};

/// 3/4 × 1/2 at the left, a shoulder of 3/4 for 1/4, then 3/8 for 1 in.
inline Arbor stepped() {
  Arbor arbor;
  arbor.edge("L", Side::left).edge("S").edge("T").edge("R", Side::right);
  arbor.reads("L", "S", "1/2").reads("S", "T", "1/4").reads("T", "R", "1");
  arbor.outside("A", "L", "S", "1/2").outside("B", "S", "T", "3/4").outside("C", "T", "R", ".375");
  return arbor;
}

inline std::string rowsOf(const LatheWork& work) {
  std::string text;
  for (const LatheRow& row : work.rows) {
    text += row.id + " " + row.length.text + " " + (row.dia ? row.dia->text : "-") +
            (row.cutHere ? "" : " done") + "\n";
  }
  return text;
}

inline std::string cutsOf(const LatheWork& work) {
  std::string text;
  for (const Cut& cut : work.cuts) {
    text += std::string(nameOf(cut.op));
    for (const Id& id : cut.of) text += " " + id;
    text +=
        " " + (cut.length ? cut.length->text : "-") + " " + (cut.dia ? cut.dia->text : "-") + "\n";
  }
  return text;
}

}  // namespace inchwright
