#include "core/document/holding_document.h"

#include <charconv>

#include "core/document/json_string.h"

namespace inchwright {
namespace {

LaidParallel readParallel(const JsonValue& value, const Where& where, Trouble& trouble, Unit unit) {
  LaidParallel one;
  ObjectReader object(value, where, trouble);
  object.readWord("jaw", one.jaw, jawNamed, 2);
  object.read("thick", one.thick, unit);
  object.read("tall", one.tall, unit);
  object.read("gap", one.gap, unit);
  object.read("from", one.from, unit);
  object.read("to", one.to, unit);
  one.extra = object.rest();
  return one;
}

void readSpan(ObjectReader& object, Axis axis, Obstacle& one, Trouble& trouble, Unit unit) {
  if (!object.has(nameOf(axis))) return;
  std::vector<Lettered> ends;
  object.each(nameOf(axis), [&](const JsonValue& item, const Where& here) {
    if (item.kind() != JsonKind::string) return trouble.report(here, "a length is a string");
    Result<Lettered> figure = readLength(item.string(), {unit});
    if (!figure) return trouble.report(here, figure.error().text, figure.error().at);
    ends.push_back(*std::move(figure));
  });
  if (trouble.any()) return;
  if (ends.size() != 2) return object.report(nameOf(axis), "two figures are wanted: low and high");
  one.along[static_cast<std::size_t>(axis)] = {ends[0], ends[1]};
}

Obstacle readObstacle(const JsonValue& value, const Where& where, Trouble& trouble, Unit unit) {
  Obstacle one;
  ObjectReader object(value, where, trouble);
  for (const Axis axis : kAxes) readSpan(object, axis, one, trouble, unit);
  object.read("tall", one.tall, unit);
  one.extra = object.rest();
  return one;
}

StockPiece readPiece(const JsonValue& value, const Where& where, Trouble& trouble, Unit unit) {
  StockPiece piece;
  ObjectReader object(value, where, trouble);
  object.read("name", piece.name);
  for (const Axis axis : kAxes) {
    object.read(nameOf(axis), piece.size[static_cast<std::size_t>(axis)], unit);
  }
  piece.extra = object.rest();
  return piece;
}

void writeParallel(std::string& out, const LaidParallel& one) {
  ObjectWriter object(out);
  object.text("jaw", nameOf(one.jaw));
  object.figure("thick", one.thick);
  object.figure("tall", one.tall);
  object.figure("gap", one.gap);
  object.figure("from", one.from);
  object.figure("to", one.to);
  object.rest(one.extra);
  object.close();
}

void writeObstacle(std::string& out, const Obstacle& one) {
  ObjectWriter object(out);
  for (const Axis axis : kAxes) {
    const auto& span = one.along[static_cast<std::size_t>(axis)];
    if (span) object.textsIfAny(nameOf(axis), {span->first.text, span->second.text});
  }
  object.figure("tall", one.tall);
  object.rest(one.extra);
  object.close();
}

void writePiece(std::string& out, const StockPiece& piece) {
  ObjectWriter object(out);
  object.text("name", piece.name);
  for (const Axis axis : kAxes) {
    object.figure(nameOf(axis), piece.size[static_cast<std::size_t>(axis)]);
  }
  object.rest(piece.extra);
  object.close();
}

template <class Entry, class Write>
void writeInOneLine(std::string& out, const std::vector<Entry>& entries, Write write) {
  out += '[';
  for (std::size_t i = 0; i < entries.size(); ++i) {
    if (i > 0) out += ", ";
    write(out, entries[i]);
  }
  out += ']';
}

}  // namespace

void readHolding(ObjectReader& setup, Holding& held, Trouble& trouble, Unit unit) {
  if (setup.has("parallels")) held.parallels.emplace();
  setup.each("parallels", [&](const JsonValue& item, const Where& here) {
    held.parallels->push_back(readParallel(item, here, trouble, unit));
  });
  setup.each("clamps", [&](const JsonValue& item, const Where& here) {
    held.clamps.push_back(readObstacle(item, here, trouble, unit));
  });
  setup.each("clear_of", [&](const JsonValue& item, const Where& here) {
    held.clearOf.push_back(readObstacle(item, here, trouble, unit));
  });
  setup.within("overhang", [&](ObjectReader& overhang) {
    for (std::size_t i = 0; i < held.overhang.size(); ++i) {
      overhang.read(nameOf(static_cast<Side>(i)), held.overhang[i], unit);
    }
    held.overhangExtra = overhang.rest();
  });
  setup.each("pieces", [&](const JsonValue& item, const Where& here) {
    held.pieces.push_back(readPiece(item, here, trouble, unit));
  });
}

void writeHolding(ObjectWriter& setup, const Holding& held) {
  if (held.parallels) writeInOneLine(setup.value("parallels"), *held.parallels, writeParallel);
  if (!held.clamps.empty()) writeInOneLine(setup.value("clamps"), held.clamps, writeObstacle);
  if (!held.clearOf.empty()) writeInOneLine(setup.value("clear_of"), held.clearOf, writeObstacle);
  bool anyOverhang = !held.overhangExtra.empty();
  for (const auto& side : held.overhang) anyOverhang = anyOverhang || side;
  if (anyOverhang) {
    ObjectWriter overhang(setup.value("overhang"));
    for (std::size_t i = 0; i < held.overhang.size(); ++i) {
      overhang.figure(nameOf(static_cast<Side>(i)), held.overhang[i]);
    }
    overhang.rest(held.overhangExtra);
    overhang.close();
  }
  if (!held.pieces.empty()) writeInOneLine(setup.value("pieces"), held.pieces, writePiece);
}

void readMachineRoom(ObjectReader& object, Machine& machine, Trouble& trouble) {
  object.within("travel", [&](ObjectReader& travel) {
    for (const Axis axis : kAxes) {
      travel.read(nameOf(axis), machine.travel[static_cast<std::size_t>(axis)], machine.unit);
    }
    machine.travelExtra = travel.rest();
  });
  object.read("quill", machine.quill, machine.unit);
  object.readWord("column", machine.column, columnNamed, 3);
  object.each("speeds", [&](const JsonValue& item, const Where& here) {
    const std::string_view raw = item.raw();
    int speed = 0;
    const auto [end, fault] = std::from_chars(raw.data(), raw.data() + raw.size(), speed);
    if (item.kind() != JsonKind::number || fault != std::errc() || end != raw.data() + raw.size()) {
      return trouble.report(here, "a speed is a whole number of revolutions a minute");
    }
    machine.speeds.push_back(speed);
  });
  object.readWord("rotary_counts", machine.rotaryCounts, senseNamed, 2);
}

void writeMachineRoom(ObjectWriter& object, const Machine& machine) {
  bool anyTravel = !machine.travelExtra.empty();
  for (const auto& axis : machine.travel) anyTravel = anyTravel || axis;
  if (anyTravel) {
    ObjectWriter travel(object.value("travel"));
    for (const Axis axis : kAxes) {
      travel.figure(nameOf(axis), machine.travel[static_cast<std::size_t>(axis)]);
    }
    travel.rest(machine.travelExtra);
    travel.close();
  }
  object.figure("quill", machine.quill);
  if (machine.column) object.text("column", nameOf(*machine.column));
  if (!machine.speeds.empty()) {
    writeInOneLine(object.value("speeds"), machine.speeds,
                   [](std::string& out, int speed) { out += std::to_string(speed); });
  }
  if (machine.rotaryCounts) object.text("rotary_counts", nameOf(*machine.rotaryCounts));
}

}  // namespace inchwright
