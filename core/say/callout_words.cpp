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

}  // namespace inchwright
