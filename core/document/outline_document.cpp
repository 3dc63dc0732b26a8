#include "core/document/outline_document.h"

namespace inchwright {
namespace {

void readDepthOf(ObjectReader& object, GivenOutline& outline, Unit unit) {
  const std::optional<std::string> text = object.textOf("depth");
  if (!text) return;
  outline.depth.emplace();
  if (*text == "through") return;
  auto length = readLength(*text, {unit});
  if (!length) return object.report("depth", length.error().text, length.error().at);
  outline.depth->through = false;
  outline.depth->length = *std::move(length);
}

void readOverrun(ObjectReader& object, GivenCurve& curve) {
  if (!object.has("overrun")) return;
  std::string text;
  curve.overrunIsNumber = !object.isText("overrun");
  if (curve.overrunIsNumber) {
    object.readJson("overrun", text);
  } else {
    text = object.textOf("overrun").value_or("");
  }
  auto angle = readAngle(text);
  if (!angle) return object.report("overrun", angle.error().text, angle.error().at);
  curve.overrun = *std::move(angle);
}

}  // namespace

void readOutlines(ObjectReader& part, std::vector<GivenOutline>& outlines, Trouble& trouble,
                  Unit unit) {
  part.each("outlines", [&](const JsonValue& item, const Where& here) {
    GivenOutline outline;
    ObjectReader object(item, here, trouble);
    object.readWord("face", outline.face, faceNamed, 6);
    object.read("follows", outline.follows);
    object.read("inner", outline.isInner);
    readDepthOf(object, outline, unit);
    outline.extra = object.rest();
    outlines.push_back(std::move(outline));
  });
}

void writeOutline(std::string& out, const GivenOutline& outline) {
  ObjectWriter object(out);
  object.text("face", nameOf(outline.face));
  object.textsIfAny("follows", outline.follows);
  if (outline.isInner) object.flag("inner", true);
  if (outline.depth) {
    object.text("depth", outline.depth->length ? outline.depth->length->text : "through");
  }
  object.rest(outline.extra);
  object.close();
}

void readCurves(ObjectReader& setup, std::vector<GivenCurve>& curves, Trouble& trouble, Unit unit) {
  setup.each("curves", [&](const JsonValue& item, const Where& here) {
    GivenCurve curve;
    ObjectReader object(item, here, trouble);
    if (!object.require("of", "say which round or arc is cut")) return;
    object.read("of", curve.of);
    object.readWord("way", curve.way, curveWayNamed, 3);
    object.read("cutter", curve.cutter, unit);
    object.readWord("cutter_at", curve.cutterAt, cutterAtNamed, 4);
    object.read("ridge", curve.ridge, unit);
    if (object.has("count")) {
      int count = 0;
      object.read("count", count);
      curve.count = count;
    }
    readOverrun(object, curve);
    curve.extra = object.rest();
    curves.push_back(std::move(curve));
  });
}

void writeCurves(ObjectWriter& setup, const std::vector<GivenCurve>& curves) {
  if (curves.empty()) return;
  std::string& out = setup.value("curves");
  out += '[';
  for (std::size_t i = 0; i < curves.size(); ++i) {
    const GivenCurve& curve = curves[i];
    if (i > 0) out += ", ";
    ObjectWriter object(out);
    object.text("of", curve.of);
    object.text("way", nameOf(curve.way));
    object.figure("cutter", curve.cutter);
    if (curve.cutterAt != CutterAt::right) object.text("cutter_at", nameOf(curve.cutterAt));
    object.figure("ridge", curve.ridge);
    if (curve.count) object.whole("count", *curve.count);
    if (curve.overrun && curve.overrunIsNumber) {
      object.json("overrun", curve.overrun->text);
    } else {
      object.angle("overrun", curve.overrun);
    }
    object.rest(curve.extra);
    object.close();
  }
  out += ']';
}

}  // namespace inchwright
