#pragma once

#include <gtest/gtest.h>

#include <initializer_list>
#include <string>
#include <vector>

#include "core/making/hole_plan.h"

namespace inchwright::test {

inline Lettered figure(const std::string& text) {
  const auto read = readLength(text);
  EXPECT_TRUE(read.ok()) << text;
  return read ? *read : Lettered{};
}
inline Length size(const std::string& text) {
  return figure(text).value;
}

/// A shop of these drills, and customary tools else: `drillsOwned({"number", "1/4"})`.
inline Shop drillsOwned(std::initializer_list<const char*> sets) {
  Shop shop;
  shop.drills.emplace();
  for (const char* text : sets) {
    const auto set = readDrillSet(text);
    EXPECT_TRUE(set.ok()) << text;
    if (set) shop.drills->push_back({*set, std::nullopt, {}});
  }
  return shop;
}

inline OwnedReamer reamer(const std::string& text, ReamedBy by = ReamedBy::machine) {
  OwnedReamer one;
  one.size = figure(text);
  one.by = by;
  return one;
}

inline OwnedBoring boringHead(const char* least, const char* greatest,
                              std::optional<DialCounts> dial, const char* division) {
  OwnedBoring one;
  one.least = figure(least);
  one.greatest = figure(greatest);
  one.dial = dial;
  one.division = figure(division);
  return one;
}

/// A hole through work an inch thick: `hole("1/4", Make::ream)`, `hole("", Make::tap, "2 BA")`.
inline HoleWork hole(const std::string& diameter, Make make, const std::string& thread = "") {
  HoleWork work;
  if (!diameter.empty()) work.drilled.diameter = figure(diameter);
  work.drilled.make = make;
  work.drilled.thread = thread;
  work.throughNow = size("1");
  work.throughFinished = size("1");
  return work;
}
/// The same so deep.
inline HoleWork blind(HoleWork work, const std::string& depth) {
  work.drilled.depth = {false, figure(depth)};
  return work;
}

inline HolePlan plan(const HoleWork& work, const Shop& shop = {}) {
  return planHole(work, ToolsOwned(shop), {});
}

inline std::vector<const HoleStep*> stepsOf(const HolePlan& plan, Op op) {
  std::vector<const HoleStep*> found;
  for (const HoleStep& step : plan.steps) {
    if (step.op == op) found.push_back(&step);
  }
  return found;
}

/// The tools of a plan on one line: `spot, C, ream 1/4, deburr`.
inline std::string toolsOf(const HolePlan& plan) {
  std::string text;
  for (const HoleStep& step : plan.steps) text += (text.empty() ? "" : ", ") + step.tool;
  return text;
}

}  // namespace inchwright::test
