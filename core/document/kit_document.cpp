#include "core/document/kit_document.h"

#include <charconv>
#include <utility>

#include "core/document/json_string.h"
#include "core/document/object_writer.h"

namespace inchwright {
namespace {

/// `".2500"`, or `{"size", "class", "sign"}`.
std::optional<TriedPin> readPin(ObjectReader& object, std::string_view name, Unit unit) {
  if (!object.has(name)) return std::nullopt;
  std::optional<Lettered> size;
  TriedPin pin;
  if (object.isText(name)) {
    object.read(name, size, unit);
  } else {
    object.within(name, [&](ObjectReader& inner) {
      if (!inner.require("size", "a pin has a size")) return;
      inner.read("size", size, unit);
      inner.read("class", pin.pinClass);
      inner.readWord("sign", pin.sign, pinSignNamed, 2);
      pin.extra = inner.rest();
    });
  }
  if (!size) return std::nullopt;
  pin.size = *std::move(size);
  return pin;
}

void writePin(ObjectWriter& object, std::string_view name, const std::optional<TriedPin>& pin) {
  if (!pin) return;
  if (pin->pinClass.empty() && !pin->sign && pin->extra.empty()) {
    return object.text(name, pin->size.text);
  }
  ObjectWriter inner(object.value(name));
  inner.text("size", pin->size.text);
  inner.textIfAny("class", pin->pinClass);
  if (pin->sign) inner.text("sign", nameOf(*pin->sign));
  inner.rest(pin->extra);
  inner.close();
}

}  // namespace

void readSizeOrPlace(ObjectReader& object, std::string_view name, std::optional<SizeOrPlace>& out,
                     Unit unit) {
  if (!object.has(name)) return;
  if (object.isText(name)) {
    std::optional<Lettered> size;
    object.read(name, size, unit);
    if (size) out = *std::move(size);
    return;
  }
  object.within(name, [&](ObjectReader& inner) {
    if (!inner.require("part", "say which part, or give the size as text") ||
        !inner.require("place", "say which place of the part")) {
      return;
    }
    PartPlace at;
    inner.read("part", at.part);
    inner.read("place", at.place);
    at.extra = inner.rest();
    out = std::move(at);
  });
}

void writeSizeOrPlace(std::string& out, const SizeOrPlace& side) {
  if (const auto* size = std::get_if<Lettered>(&side)) {
    return appendQuoted(out, size->text);
  }
  const PartPlace& at = std::get<PartPlace>(side);
  ObjectWriter object(out);
  object.text("part", at.part);
  object.text("place", at.place);
  object.rest(at.extra);
  object.close();
}

MadePlace readMade(const JsonValue& value, const Where& where, Trouble& trouble, Unit unit) {
  MadePlace made;
  ObjectReader object(value, where, trouble);
  if (!object.require("place", "say where it was made")) return made;
  object.read("place", made.place);
  object.read("setup", made.setup);
  object.read("piece", made.piece);
  object.read("ticks", made.ticks);
  object.read("ticked_x", made.tickedX, unit);
  object.read("ticked_y", made.tickedY, unit);
  object.read("x", made.x, unit);
  object.read("y", made.y, unit);
  object.read("size", made.size, unit);
  made.go = readPin(object, "go", unit);
  made.noGo = readPin(object, "no_go", unit);
  object.within("with", [&](ObjectReader& inner) {
    made.with.emplace();
    inner.read("name", made.with->name);
    inner.read("error", made.with->error, unit);
    made.with->extra = inner.rest();
  });
  object.read("when", made.when);
  made.extra = object.rest();
  return made;
}

void writeMade(std::string& out, const MadePlace& made) {
  ObjectWriter object(out);
  object.text("place", made.place);
  object.textIfAny("setup", made.setup);
  object.textIfAny("piece", made.piece);
  object.textsIfAny("ticks", made.ticks);
  object.figure("ticked_x", made.tickedX);
  object.figure("ticked_y", made.tickedY);
  object.figure("x", made.x);
  object.figure("y", made.y);
  object.figure("size", made.size);
  writePin(object, "go", made.go);
  writePin(object, "no_go", made.noGo);
  if (made.with) {
    ObjectWriter inner(object.value("with"));
    inner.textIfAny("name", made.with->name);
    inner.figure("error", made.with->error);
    inner.rest(made.with->extra);
    inner.close();
  }
  object.textIfAny("when", made.when);
  object.rest(made.extra);
  object.close();
}

/// A length among the figures of a way out: its ticks, else the text at a readout's step.
std::optional<Length> chosenLength(const JsonValue& value, Unit unit, bool isTicks) {
  if (isTicks && value.kind() == JsonKind::number) {
    std::int64_t ticks = 0;
    const std::string_view raw = value.raw();
    const auto read = std::from_chars(raw.data(), raw.data() + raw.size(), ticks);
    if (read.ec == std::errc() && read.ptr == raw.data() + raw.size()) return Length::ticks(ticks);
  }
  if (isTicks || value.kind() != JsonKind::string) return std::nullopt;
  const Result<Lettered> figure = readLength(value.string(), {unit});
  return figure ? std::optional(figure->value) : std::nullopt;
}

/// Hand-written figures may be anything; what can't be read says nothing.
ChosenFigures chosenFigures(const std::string& figures, Unit unit) {
  ChosenFigures chosen;
  const Result<JsonText> text = JsonText::parse(figures);
  if (!text || text->root().kind() != JsonKind::object) return chosen;
  for (const bool ticks : {true, false}) {
    for (const JsonValue::Member& member : text->root().members()) {
      if (member.name == (ticks ? "bore_ticks" : "bore")) {
        chosen.bore = chosenLength(member.value, unit, ticks);
      }
      if (member.name != (ticks ? "size_ticks" : "size")) continue;
      std::vector<JsonValue> ends{member.value};
      if (member.value.kind() == JsonKind::array) ends = member.value.items();
      if (ends.empty()) continue;
      chosen.least = chosenLength(ends.front(), unit, ticks);
      chosen.greatest = chosenLength(ends.back(), unit, ticks);
    }
    chosen.exact = ticks;
    if (chosen.bore || chosen.least || chosen.greatest) return chosen;
  }
  return chosen;
}

Mended readMended(const JsonValue& value, const Where& where, Trouble& trouble, Unit unit) {
  Mended mended;
  ObjectReader object(value, where, trouble);
  if (!object.require("place", "say which place was put right") ||
      !object.require("way", "say which way out was chosen")) {
    return mended;
  }
  object.read("place", mended.place);
  object.read("piece", mended.piece);
  object.readWord("way", mended.way, wayOutNamed, kWaysOut);
  object.readJson("figures", mended.figures);
  if (!mended.figures.empty()) mended.chosen = chosenFigures(mended.figures, unit);
  object.read("reason", mended.reason);
  object.read("when", mended.when);
  mended.extra = object.rest();
  return mended;
}

void writeMended(std::string& out, const Mended& mended) {
  ObjectWriter object(out);
  object.text("place", mended.place);
  object.textIfAny("piece", mended.piece);
  object.text("way", nameOf(mended.way));
  if (!mended.figures.empty()) object.json("figures", mended.figures);
  object.textIfAny("reason", mended.reason);
  object.textIfAny("when", mended.when);
  object.rest(mended.extra);
  object.close();
}

PrintedSheet readPrinted(const JsonValue& value, const Where& where, Trouble& trouble) {
  PrintedSheet printed;
  ObjectReader object(value, where, trouble);
  if (!object.require("setup", "say of which setup the sheet was")) return printed;
  object.read("setup", printed.setup);
  object.read("edition", printed.edition);
  if (printed.edition < 1) object.report("edition", "editions are counted from 1");
  object.read("sheet", printed.number);
  object.read("when", printed.when);
  object.read("readout", printed.readout);
  object.read("zero", printed.zero);
  object.each("rows", [&](const JsonValue& item, const Where& here) {
    std::vector<std::string> cells;
    if (item.kind() == JsonKind::array) {
      for (const JsonValue& cell : item.items()) {
        if (cell.kind() == JsonKind::string) cells.push_back(cell.string());
      }
    }
    if (cells.size() != 4 || item.items().size() != 4) {
      trouble.report(here, "a printed row is four texts: the place, two figures, what was made");
      return;
    }
    printed.rows.push_back({cells[0], cells[1], cells[2], cells[3]});
  });
  printed.extra = object.rest();
  return printed;
}

void writePrinted(std::string& out, const PrintedSheet& printed) {
  ObjectWriter object(out);
  object.text("setup", printed.setup);
  object.whole("edition", printed.edition);
  object.textIfAny("sheet", printed.number);
  object.textIfAny("when", printed.when);
  object.textIfAny("readout", printed.readout);
  object.textIfAny("zero", printed.zero);
  if (!printed.rows.empty()) {
    std::string& rows = object.value("rows");
    rows += '[';
    for (const PrintedRow& row : printed.rows) {
      rows += &row == &printed.rows.front() ? "[" : ", [";
      bool first = true;
      for (const std::string* cell : {&row.place, &row.first, &row.second, &row.made}) {
        if (!std::exchange(first, false)) rows += ", ";
        appendQuoted(rows, *cell);
      }
      rows += ']';
    }
    rows += ']';
  }
  object.rest(printed.extra);
  object.close();
}

Mate readMate(const JsonValue& value, const Where& where, Trouble& trouble, Unit unit) {
  Mate mate;
  ObjectReader object(value, where, trouble);
  if (!object.require("name", "every mate has one") ||
      !object.require("hole", "say which hole, or its size") ||
      !object.require("shaft", "say which shaft, or its size")) {
    return mate;
  }
  object.read("name", mate.name);
  std::optional<SizeOrPlace> hole, shaft;
  readSizeOrPlace(object, "hole", hole, unit);
  readSizeOrPlace(object, "shaft", shaft, unit);
  if (hole) mate.hole = *std::move(hole);
  if (shaft) mate.shaft = *std::move(shaft);
  object.read("fit", mate.fit);
  object.read("least", mate.least, unit);
  object.read("greatest", mate.greatest, unit);
  if (!mate.fit.empty() && (mate.least || mate.greatest)) {
    object.report("fit", "give the fit's name, or `least` and `greatest`, not both");
  }
  object.read("places", mate.places);
  mate.extra = object.rest();
  return mate;
}

void writeMate(std::string& out, const Mate& mate) {
  ObjectWriter object(out);
  object.text("name", mate.name);
  writeSizeOrPlace(object.value("hole"), mate.hole);
  writeSizeOrPlace(object.value("shaft"), mate.shaft);
  object.textIfAny("fit", mate.fit);
  object.figure("least", mate.least);
  object.figure("greatest", mate.greatest);
  object.textsIfAny("places", mate.places);
  object.rest(mate.extra);
  object.close();
}

}  // namespace inchwright
