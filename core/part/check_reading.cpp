#include "core/part/check.h"
#include "core/part/plain_decimal.h"

namespace inchwright {
namespace {

/// A radius, diameter or pitch circle is a size of the one feature `from`.
Fault checkSizeReading(const Reading& reading, const PlaceIndex& index, const Pointer& pointer) {
  if (Fault fault = checkKnown(reading.from, index, pointer / "from")) return fault;
  const std::string size(nameOf(reading.kind));
  if (!reading.to.empty()) {
    return faultAt(pointer / "to", "a " + size + " is of `from` alone: leave `to` out");
  }
  const PlaceIndex::Entry entry = *index.find(reading.from);
  const FeatureKind of = entry.feature->kind();
  const bool fits = reading.kind == ReadingKind::pcd ? of == FeatureKind::ring && entry.isFeature
                                                     : hasRadius(*entry.feature);
  if (!fits) {
    return faultAt(pointer / "from", "`" + reading.from + "` is of kind `" +
                                         std::string(nameOf(of)) + "` and has no " + size);
  }
  const SizeSymbol refused =
      reading.kind == ReadingKind::radius ? SizeSymbol::diameter : SizeSymbol::radius;
  if (reading.figure.symbol == refused) {
    return faultAt(pointer / "text", "the figure is lettered as another size than a " + size);
  }
  return std::nullopt;
}

/// Two places of one face.
Fault checkEnds(const Reading& reading, const PlaceIndex& index, const Pointer& pointer) {
  if (Fault fault = checkKnown(reading.from, index, pointer / "from")) return fault;
  if (Fault fault = checkKnown(reading.to, index, pointer / "to")) return fault;
  Fault fault = checkPoints({reading.from, reading.to}, index, pointer);
  if (fault) fault->place = (pointer / (fault->place.back() == '0' ? "from" : "to")).text();
  return fault;
}

Fault checkAgainst(const Reading& reading, const PlaceIndex& index, const Pointer& pointer) {
  const Pointer here = pointer / "against";
  switch (reading.against.size()) {
    case 0:
      break;
    case 1:
      if (reading.against[0] == reading.from) {
        return faultAt(here, "`" + reading.from + "` is named twice here");
      }
      return checkStraight(reading.against[0], reading.from, index, here);
    case 2:
      if (reading.against[0] == reading.against[1]) {
        return faultAt(here / 1, "`" + reading.against[1] + "` is named twice here");
      }
      return checkPoints(reading.against, index, here);
    default:
      return faultAt(here, "an angle is measured against a line, an edge or two places");
  }
  if (!reading.reversed) return std::nullopt;
  return faultAt(pointer / "reversed", "`reversed` goes with an angle `against` a line or an edge");
}

/// Between two places, or of a line; from the face's X, or from what it is measured against.
Fault checkAngle(const Reading& reading, const PlaceIndex& index, const Pointer& pointer) {
  const std::optional<PlaceIndex::Entry> from = index.find(reading.from);
  const bool ofLine = from && from->feature->is<kind::Line>();
  if (ofLine && !reading.to.empty()) {
    return faultAt(pointer / "to",
                   "`" + reading.from + "` is a line and has its own direction: leave `to` out");
  }
  if (!ofLine) {
    if (Fault fault = checkEnds(reading, index, pointer)) return fault;
  }
  return checkAgainst(reading, index, pointer);
}

Fault checkSquareOff(const Reading& reading, const PlaceIndex& index, const Pointer& pointer) {
  if (Fault fault = checkKnown(reading.from, index, pointer / "from")) return fault;
  if (Fault fault = checkPoints({reading.from}, index, pointer)) {
    fault->place = (pointer / "from").text();
    return fault;
  }
  return checkStraight(reading.to, reading.from, index, pointer / "to");
}

Fault checkFigure(const Reading& reading, const Pointer& pointer) {
  if (reading.kind == ReadingKind::angle) {
    if (reading.angle) return std::nullopt;
    return faultAt(pointer / "text", "an angle reading needs its angle");
  }
  const Length value = reading.figure.value;
  if (reading.kind == ReadingKind::along) {
    if (value >= Length()) return std::nullopt;
    return faultAt(pointer / "text",
                   "a reading runs in the positive direction of its axis: swap the ends `from` and "
                   "`to`, and leave the minus sign out");
  }
  if (value > Length()) return std::nullopt;
  std::string_view what = nameOf(reading.kind);
  if (reading.kind == ReadingKind::centres) what = "centre distance";
  if (reading.kind == ReadingKind::squareOff) what = "distance square to a line";
  return faultAt(pointer / "text", "a " + std::string(what) + " is greater than 0");
}

Fault checkPrintPlace(const Reading& reading, const Pointer& pointer) {
  const Pointer here = pointer / "place";
  if (!reading.place.empty() && reading.place.size() != 2) {
    return faultAt(here, "a place on the print is two values");
  }
  for (std::size_t i = 0; i < reading.place.size(); ++i) {
    if (plainDecimal(reading.place[i])) continue;
    return faultAt(here / i, "a place on the print is plain decimals in inches");
  }
  return std::nullopt;
}

Fault checkWhat(const Reading& reading, const PlaceIndex& index, const Pointer& pointer) {
  switch (reading.kind) {
    case ReadingKind::along:
      if (Fault f = checkPlace(reading.from, reading.axis, index, pointer / "from")) return f;
      return checkPlace(reading.to, reading.axis, index, pointer / "to");
    case ReadingKind::centres:
      return checkEnds(reading, index, pointer);
    case ReadingKind::angle:
      return checkAngle(reading, index, pointer);
    case ReadingKind::squareOff:
      return checkSquareOff(reading, index, pointer);
    case ReadingKind::radius:
    case ReadingKind::diameter:
    case ReadingKind::pcd:
      break;
  }
  return checkSizeReading(reading, index, pointer);
}

}  // namespace

Fault checkReading(const Reading& reading, const PlaceIndex& index, const Pointer& pointer) {
  if (Fault fault = checkWhat(reading, index, pointer)) return fault;
  if (reading.from == reading.to) {
    return faultAt(pointer / "to", "a reading runs between two places, and this names one twice");
  }
  if (Fault fault = checkFigure(reading, pointer)) return fault;
  return checkPrintPlace(reading, pointer);
}

}  // namespace inchwright
