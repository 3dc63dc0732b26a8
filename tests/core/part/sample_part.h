#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/part/job.h"

namespace inchwright {

/// A figure that says no more than its text and value, in inches as sixty-fourths.
inline Lettered sixtyFourths(int count, std::string text) {
  Lettered figure;
  figure.text = std::move(text);
  figure.value = Length::ticks(count * (Length::kTicksPerInch / 64));
  return figure;
}

inline Feature edge(Id id, Axis axis, std::optional<Side> side = std::nullopt) {
  Feature feature;
  feature.id = std::move(id);
  feature.shape = kind::Edge{axis, side};
  return feature;
}

inline Feature onTop(Id id, FeatureKind kind) {
  Feature feature;
  feature.id = std::move(id);
  feature.shape = emptyShape(kind);
  return feature;
}

inline Reading along(Id id, Axis axis, Id from, Id to, Lettered figure) {
  Reading reading;
  reading.id = std::move(id);
  reading.axis = axis;
  reading.from = std::move(from);
  reading.to = std::move(to);
  reading.figure = std::move(figure);
  return reading;
}

inline Reading ofKind(Id id, ReadingKind kind, Id from, Id to = "") {
  Reading reading;
  reading.id = std::move(id);
  reading.kind = kind;
  reading.from = std::move(from);
  reading.to = std::move(to);
  reading.figure = sixtyFourths(40, "5/8");
  return reading;
}

inline Understanding understood(UnderstandingKind kind, std::optional<Axis> axis,
                                std::vector<Id> of) {
  Understanding understanding;
  understanding.kind = kind;
  understanding.axis = axis;
  understanding.of = std::move(of);
  return understanding;
}

/// A front plate with one of each kind of feature, reading, understanding and zero.
inline Part samplePart() {
  Part part;
  part.name = "Front plate";
  part.features = {edge("L", Axis::x, Side::left),  edge("R", Axis::x, Side::right),
                   edge("F", Axis::y, Side::front), edge("K", Axis::y, Side::back),
                   onTop("A", FeatureKind::hole),   onTop("B", FeatureKind::hole),
                   onTop("C", FeatureKind::point),  onTop("S", FeatureKind::slot),
                   onTop("G", FeatureKind::ring),   onTop("D", FeatureKind::row),
                   onTop("M", FeatureKind::round),  onTop("N", FeatureKind::round),
                   onTop("P", FeatureKind::line),   onTop("E", FeatureKind::hole)};
  part.features[4].drilled()->diameter = sixtyFourths(16, "1/4");
  part.features[4].traced = {"0.41", "0.77"};
  part.features[7].as<kind::Slot>()->axis = Axis::x;
  part.features[8].as<kind::Ring>()->holes = 6;
  part.features[9].shape = kind::Row{.axis = Axis::y, .holes = 5, .countedBySpaces = true};
  part.features[10].shape = kind::Round{.side = Side::left, .about = "A"};
  part.features[11].shape = kind::Round{.corner = {"R", "K"}};
  part.features[12].shape = kind::Line{{"A", "L"}};
  part.features[13].face = Face::front;
  part.readings = {along("r1", Axis::x, "L", "A", sixtyFourths(24, "3/8")),
                   along("r2", Axis::x, "A", "G3", sixtyFourths(76, "1 3/16")),
                   along("r3", Axis::y, "F", "S1", sixtyFourths(28, "7/16")),
                   ofKind("r4", ReadingKind::centres, "A", "C"),
                   ofKind("r5", ReadingKind::radius, "M"),
                   ofKind("r6", ReadingKind::diameter, "B"),
                   ofKind("r7", ReadingKind::pcd, "G"),
                   ofKind("r8", ReadingKind::angle, "A", "B")};
  part.readings[7].angle = LetteredAngle{"5/8", Angle::degrees(1), std::nullopt, false};
  part.understood = {understood(UnderstandingKind::midway, Axis::y, {"A"}),
                     understood(UnderstandingKind::inLine, Axis::y, {"A", "B", "C"}),
                     understood(UnderstandingKind::equal, Axis::x, {"A", "B", "C"}),
                     understood(UnderstandingKind::symmetric, Axis::x, {"A", "B"}),
                     understood(UnderstandingKind::concentric, std::nullopt, {"A", "G"}),
                     understood(UnderstandingKind::parallel, std::nullopt, {"P", "L", "R"})};
  part.understood[0].between = {"F", "K"};
  part.understood[3].about = "C";
  Setup setup;
  setup.name = "1";
  setup.zero = {{Axis::x, {"L", "R"}, "", true, std::nullopt, {}},
                {Axis::y, {}, "D1", false, std::nullopt, {}}};
  setup.stock[static_cast<std::size_t>(Side::left)] = sixtyFourths(4, "1/16");
  setup.jaw = Side::front;
  setup.stop = Side::left;
  setup.checks = {"A", "G2"};
  part.setups = {setup};
  part.accepted = {{"loose:A:y"}, {"loose:G3:x"}};
  return part;
}

}  // namespace inchwright
