#include "core/say/callout_words.h"

namespace inchwright {
namespace {

/// Pieces with something between them.
class Said {
 public:
  void add(std::string piece, const char* between = "; ") {
    text_ += (text_.empty() ? "" : between) + std::move(piece);
  }
  std::string take() && { return std::move(text_); }

 private:
  std::string text_;
};

void saySeat(const Drilled& hole, Said& said) {
  if (!hole.seatDiameter) return;
  const bool named = hole.make == Make::counterbore || hole.make == Make::countersink ||
                     hole.make == Make::spotface;
  const bool sunk = hole.make == Make::countersink || hole.seatAngle;
  said.add((named  ? std::string(nameOf(hole.make))
            : sunk ? std::string("countersink")
                   : std::string("counterbore or spotface")) +
           " " + hole.seatDiameter->text);
  if (hole.seatDepth) said.add(hole.seatDepth->text + " deep", ", ");
  if (hole.seatAngle) said.add(hole.seatAngle->text, ", ");
}

void sayDrilled(const Drilled& hole, Said& said) {
  if (!hole.thread.empty()) {
    said.add("tap " + hole.thread);
  } else if (hole.diameter) {
    const bool own = hole.make == Make::ream || hole.make == Make::bore;
    said.add(own ? std::string(nameOf(hole.make)) : "drill");
  }
  if (!hole.limits.empty()) said.add("limits " + hole.limits, ", ");
  if (hole.depth.through) {
    said.add("through", ", ");
  } else if (hole.depth.length) {
    said.add(hole.depth.length->text + " deep", ", ");
  }
  saySeat(hole, said);
  if (hole.locate == Locate::assembly) said.add("on assembly, not by its coordinates");
}

}  // namespace

std::string calloutWords(const FeatureLine& line) {
  Said said;
  const Feature& feature = line.feature;
  if (const Drilled* hole = feature.drilled()) sayDrilled(*hole, said);
  if (const auto* ring = feature.as<kind::Ring>()) {
    said.add(std::to_string(ring->holes) + " holes");
  }
  if (const auto* row = feature.as<kind::Row>()) {
    said.add(std::to_string(row->holes) + " holes along " + std::string(nameOf(row->axis)));
  }
  if (const auto* slot = feature.as<kind::Slot>()) {
    if (slot->length) said.add(slot->length->text + " over all");
    if (slot->axis) said.add("along " + std::string(nameOf(*slot->axis)), ", ");
    said.add(slot->depth.length ? slot->depth.length->text + " deep" : "through", ", ");
  }
  if (line.alike > 1) said.add("the print speaks of " + std::to_string(line.alike));
  if (!feature.note.empty()) said.add("noted: " + feature.note);
  return std::move(said).take();
}

std::string calloutExamples(FeatureKind kind, Unit unit) {
  const bool inch = unit == Unit::inch;
  switch (kind) {
    case FeatureKind::edge:
      return "left, or x";
    case FeatureKind::hole:
      return inch ? "1/4 ream 3/8 deep, or C'BORE 3/8 x 3/16 DEEP" : "Ø6 H7, or M6 x 1 x 12 DEEP";
    case FeatureKind::slot:
      return inch ? "3/16 x 5/8, or 3/16 WIDE x 5/8 CRS" : "6 x 20, or 6 WIDE x 14 CRS";
    case FeatureKind::ring:
      return inch ? "3 holes 3/32 on 1 1/16 PCD, or 6 x #7 on 2 1/2 from 30"
                  : "6 x Ø5 ON Ø40 PCD, or 4 x M4 ON Ø30 PCD";
    case FeatureKind::row:
      return inch ? "5 holes 1/8 at 9/16 pitch, or 4 SPACES AT 1/2, 1/8 DRILL"
                  : "5 x Ø3 at 15 pitch, or 4 SPACES AT 12, Ø3";
    case FeatureKind::round:
    case FeatureKind::arc:
      return inch ? "R 3/8, or 3/8 RAD" : "R10, or 10 RAD";
    case FeatureKind::chamfer:
      return inch ? "1/16 x 45°, or CHAM 1/32" : "1 x 45°, or CHAM 0,5";
    default:
      break;
  }
  return {};
}

}  // namespace inchwright
