#pragma once

#include <string>
#include <vector>

#include "core/plan/milled_cuts.h"
#include "tests/core/checks/held_plate.h"

namespace inchwright::test {

/// A plate of 4 by 3 by 1/2 with slots and pockets, its zero at its lower left corner.
struct MilledPlate : HeldPlate {
  MilledPlate() : HeldPlate("4", "3", "1/2") {
    for (const auto& [axis, at] : {std::pair{Axis::x, "L"}, {Axis::y, "F"}}) {
      ZeroAlong zero;
      zero.axis = axis;
      zero.at = at;
      setup.zero.push_back(zero);
    }
  }

  static OwnedCutter cutter(const std::string& size) {
    OwnedCutter one;
    one.size = lettered(size);
    return one;
  }
  static Depth deep(const std::string& text) {
    if (text.empty()) return {true, std::nullopt};
    return {false, lettered(text)};
  }
  /// Its middle at x, y.
  void slot(const Id& id, Axis axis, const std::string& width, const std::string& length,
            const std::string& x, const std::string& y, const std::string& depth) {
    kind::Slot shape;
    shape.axis = axis;
    shape.width = lettered(width);
    shape.length = lettered(length);
    shape.depth = deep(depth);
    add(id, shape);
    read(Axis::x, "L", id, x);
    read(Axis::y, "F", id, y);
  }
  void point(const Id& id, const std::string& x, const std::string& y) {
    add(id, kind::Point{});
    read(Axis::x, "L", id, x);
    read(Axis::y, "F", id, y);
  }
  /// About a point at 1 1/2, 1: from 1 to the right of it to straight above it.
  void curvedSlot(const std::string& width, const std::string& endY, const std::string& depth) {
    point("E0", "1 1/2", "1");
    point("E1", "2 1/2", "1");
    point("E2", "1 1/2", endY);
    slotAbout(width, depth);
  }
  /// From E1 to E2 about E0.
  void slotAbout(const std::string& width, const std::string& depth) {
    kind::Slot shape;
    shape.width = lettered(width);
    shape.ends = {"E1", "E2"};
    shape.about = "E0";
    shape.depth = deep(depth);
    add("V", shape);
  }
  void inner(const Id& id, Axis axis, const std::string& at) {
    add(id, kind::Edge{axis, std::nullopt});
    read(axis, axis == Axis::x ? "L" : "F", id, at);
  }
  void round(const Id& id, const Id& a, const Id& b, const std::string& radius) {
    kind::Round shape;
    shape.radius = lettered(radius);
    shape.corner = {a, b};
    add(id, shape);
  }
  void outline(const std::vector<Id>& follows, const std::string& depth) {
    GivenOutline given;
    given.follows = follows;
    given.isInner = true;
    given.depth = deep(depth);
    part.outlines.push_back(given);
  }
  /// From x and y on, so wide and so high; with rounds in its corners where a radius is given.
  void pocket(const std::string& x, const std::string& width, const std::string& y,
              const std::string& height, const std::string& depth, const std::string& radius = "") {
    inner("PL", Axis::x, x);
    inner("PF", Axis::y, y);
    add("PR", kind::Edge{Axis::x, std::nullopt});
    read(Axis::x, "PL", "PR", width);
    add("PK", kind::Edge{Axis::y, std::nullopt});
    read(Axis::y, "PF", "PK", height);
    if (radius.empty()) return outline({"PF", "PR", "PK", "PL"}, depth);
    round("C1", "PF", "PR", radius);
    round("C2", "PR", "PK", radius);
    round("C3", "PK", "PL", radius);
    round("C4", "PL", "PF", radius);
    outline({"PF", "C1", "PR", "C2", "PK", "C3", "PL", "C4"}, depth);
  }
  /// An L: 2 1/2 by 2 with its upper right quarter left standing.
  void ell(const std::string& depth) {
    inner("PL", Axis::x, "1/2");
    inner("PM", Axis::x, "1 1/2");
    inner("PR", Axis::x, "3");
    inner("PF", Axis::y, "1/2");
    inner("PN", Axis::y, "1 1/2");
    inner("PK", Axis::y, "2 1/2");
    outline({"PF", "PR", "PN", "PM", "PK", "PL"}, depth);
  }

  std::vector<MilledCut> cuts() const {
    const Solution solution = solved(part);
    const auto work = workAt(job, part, solution, setup);
    if (!work) {
      ADD_FAILURE() << work.error().text;
      return {};
    }
    return milledCuts(*work);
  }

 private:
  template <class Kind>
  void add(const Id& id, Kind kind) {
    Feature feature;
    feature.id = id;
    feature.shape = kind;
    part.features.push_back(feature);
  }
};

/// One line a run: `middle 0.8750 2.2500 > 1.6250 2.2500`.
inline std::vector<std::string> runsOf(const MilledCut& cut) {
  constexpr const char* kNames[] = {"middle", "side", "clearing", "leaving", "wall"};
  std::vector<std::string> lines;
  for (const CutterRun& run : cut.runs) {
    lines.push_back(std::string(kNames[static_cast<int>(run.what)]) + " " + run.from.x.text + " " +
                    run.from.y.text + " > " + run.to.x.text + " " + run.to.y.text);
  }
  return lines;
}

}  // namespace inchwright::test
