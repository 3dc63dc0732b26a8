#include "core/document/lathe_document.h"

#include "core/part/setup.h"

namespace inchwright {

Lathe readLathe(ObjectReader& object) {
  Lathe lathe;
  object.readWord("unit", lathe.unit, unitNamed, 2);
  if (lathe.unit == Unit::millimetre) lathe.step = kLatheMillimetreStep;
  object.read("step", lathe.step);
  object.readWord("carriage_counts", lathe.carriageCounts, carriageCountsNamed, 2);
  object.readWord("cross_counts", lathe.crossCounts, crossCountsNamed, 2);
  object.read("carriage_letter", lathe.carriageLetter);
  object.read("cross_letter", lathe.crossLetter);
  object.read("rough_leaves", lathe.roughLeaves, lathe.unit);
  lathe.extra = object.rest();
  return lathe;
}

void writeLathe(std::string& out, const Lathe& lathe) {
  ObjectWriter object(out);
  object.text("unit", nameOf(lathe.unit));
  object.text("step", lathe.step);
  object.text("carriage_counts", nameOf(lathe.carriageCounts));
  object.text("cross_counts", nameOf(lathe.crossCounts));
  object.text("carriage_letter", lathe.carriageLetter);
  object.text("cross_letter", lathe.crossLetter);
  object.figure("rough_leaves", lathe.roughLeaves);
  object.rest(lathe.extra);
  object.close();
}

std::optional<Chucked> readChucked(ObjectReader& setup, Unit unit) {
  if (!setup.isText("kind") || setup.textOf("kind") != "lathe") return std::nullopt;
  Chucked chucked;
  setup.readWord("held", chucked.held, faceNamed, 6);
  if (axisAcross(chucked.held) != Axis::x) {
    setup.report("held", "turned work is held by its `left` or its `right` end");
  }
  setup.read("stands_out", chucked.standsOut, unit);
  setup.within("part_off", [&](ObjectReader& object) {
    std::optional<Lettered> width;
    if (!object.require("width", "say how wide the parting tool is")) return;
    object.read("width", width, unit);
    if (!width) return;
    PartOff cut;
    cut.width = *std::move(width);
    object.readWord("corner", cut.corner, toolCornerNamed, 2);
    cut.extra = object.rest();
    chucked.partOff = std::move(cut);
  });
  return chucked;
}

void writeChucked(ObjectWriter& setup, const Chucked& chucked) {
  setup.text("kind", "lathe");
  setup.text("held", nameOf(chucked.held));
  setup.figure("stands_out", chucked.standsOut);
  if (!chucked.partOff) return;
  ObjectWriter object(setup.value("part_off"));
  object.text("width", chucked.partOff->width.text);
  object.text("corner", nameOf(chucked.partOff->corner));
  object.rest(chucked.partOff->extra);
  object.close();
}

}  // namespace inchwright
