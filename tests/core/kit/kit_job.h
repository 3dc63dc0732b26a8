#pragma once

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "core/document/document.h"
#include "core/making/found_size.h"
#include "core/solution/solution.h"

namespace inchwright {

/// A job of a back plate, an arbor and two levers, as a document: what the tests of the kit change.
inline const char* const kKitJob = R"({
  "inchwright": 1,
  "job": {"title": "Click work", "print": "", "unit": "in", "notes": ""},
  "machine": {"unit": "in", "step": "0.0001", "x_counts": "right", "y_counts": "away", "accuracy": "0.0005"},
  "parts": [
    {
      "name": "Plate",
      "quantity": 1,
      "material": "brass",
      "general": {"fractions": "1/64", "two_places": "0.010", "three_places": "0.005"},
      "features": [
        {"id": "L", "kind": "edge", "axis": "x", "side": "left"},
        {"id": "R", "kind": "edge", "axis": "x", "side": "right"},
        {"id": "F", "kind": "edge", "axis": "y", "side": "front"},
        {"id": "K", "kind": "edge", "axis": "y", "side": "back"},
        {"id": "A", "kind": "hole", "face": "top", "diameter": "1/4", "limits": "H7", "make": "ream", "depth": "through"},
        {"id": "B", "kind": "hole", "face": "top", "diameter": ".250 +.001 -.000", "make": "ream", "depth": "through"},
        {"id": "C", "kind": "hole", "face": "top", "make": "tap", "depth": "through", "thread": "8-32 UNC"}
      ],
      "readings": [
        {"id": "r1", "axis": "x", "from": "L", "to": "A", "text": "1.000 ±.002"},
        {"id": "r2", "axis": "y", "from": "F", "to": "A", "text": ".750 ±.002"},
        {"id": "r3", "axis": "x", "from": "L", "to": "R", "text": "3"},
        {"id": "r4", "axis": "y", "from": "F", "to": "K", "text": "1 1/2"},
        {"id": "r5", "axis": "x", "from": "A", "to": "B", "text": "1.000 ±.001"},
        {"id": "r6", "axis": "y", "from": "F", "to": "B", "text": ".750 ±.002"},
        {"id": "r7", "axis": "x", "from": "L", "to": "C", "text": "1/2"},
        {"id": "r8", "axis": "y", "from": "F", "to": "C", "text": "3/8"}
      ],
      "understood": [],
      "setups": [
        {"name": "1", "face": "top", "turn": 0, "zero": {"x": {"at": "L"}, "y": {"at": "F"}}}
      ],
      "made": [MADE]
    },
    {
      "name": "Arbor",
      "quantity": 1,
      "material": "silver steel",
      "shape": "turned",
      "features": [
        {"id": "L", "kind": "edge", "axis": "x", "side": "left"},
        {"id": "R", "kind": "edge", "axis": "x", "side": "right"},
        {"id": "D", "kind": "outside", "between": ["L", "R"], "diameter": ".2490 +.0003 -0"}
      ],
      "readings": [
        {"id": "r1", "axis": "x", "from": "L", "to": "R", "text": "1"}
      ],
      "understood": [],
      "setups": [
        {"name": "1", "face": "top", "turn": 0, "kind": "lathe", "held": "left"}
      ],
      "made": [ARBOR]
    }
  ],
  "gaps": [
    {"name": "pitch", "least": ".998", "greatest": "1.002", "members": [{"part": "Plate", "axis": "x", "from": "A", "to": "B", "sign": "+"}]},
    {"name": "rock", "greatest": ".0015", "members": [{"hole": {"part": "Plate", "place": "A"}, "shaft": {"part": "Arbor", "place": "D"}, "sign": "+"}]}
  ],
  "mates": [
    {"name": "arbor in A", "hole": {"part": "Plate", "place": "A"}, "shaft": {"part": "Arbor", "place": "D"}, "least": ".0007", "greatest": ".0016"},
    {"name": "pin in B", "hole": {"part": "Plate", "place": "B"}, "shaft": ".2490/.2493", "fit": "RC4"}
  ]
})";

/// The job with these entries of `made` in the plate and in the arbor, and its solutions.
struct KitJob {
  Job job;
  std::vector<Solution> solutions;

  explicit KitJob(const std::string& plate = {}, const std::string& arbor = {}) {
    std::string text = kKitJob;
    text.replace(text.find("MADE"), 4, plate);
    text.replace(text.find("ARBOR"), 5, arbor);
    auto read = readDocument(text);
    if (!read.ok()) {
      ADD_FAILURE() << read.error().place << ' ' << read.error().text;
      return;
    }
    job = *std::move(read);
    for (const Part& part : job.parts) {
      auto solved = solve(part);
      if (!solved.ok()) ADD_FAILURE() << solved.error().text;
      solutions.push_back(solved.ok() ? *std::move(solved) : Solution{});
    }
  }
};

inline Length inTenThousandths(std::int64_t count) {
  return Length::ticks(count * 254'000);
}

/// `2500, 2506` in tenths of a thou.
inline FoundSize tenths(std::int64_t least, std::int64_t greatest) {
  return {inTenThousandths(least), inTenThousandths(greatest)};
}

}  // namespace inchwright
