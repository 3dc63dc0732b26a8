#include "core/document/document.h"

#include "core/document/atomic_file.h"
#include "core/document/gap_document.h"
#include "core/document/holding_document.h"
#include "core/document/json_text.h"
#include "core/document/kit_document.h"
#include "core/document/lathe_document.h"
#include "core/document/object_reader.h"
#include "core/document/object_writer.h"
#include "core/document/part_reader.h"
#include "core/document/part_writer.h"
#include "core/document/picture_json.h"
#include "core/document/shop_document.h"
#include "core/part/check.h"

namespace inchwright {
namespace {

constexpr int kVersion = 1;
constexpr std::string_view kVersionName = "inchwright";

/// A number above ours, however long, is a newer format; anything else but ours is none of ours.
std::optional<Error> refuseVersion(const JsonValue& root) {
  if (root.kind() != JsonKind::object) {
    return Error{ErrorCode::badDocument, "a document is one JSON object", ""};
  }
  const std::string pointer = pointerStep(kVersionName);
  for (const JsonValue::Member& member : root.members()) {
    if (member.name != kVersionName) continue;
    const std::string_view raw = member.value.raw();
    if (raw == std::to_string(kVersion)) return std::nullopt;
    const bool whole = member.value.kind() == JsonKind::number &&
                       raw.find_first_not_of("0123456789") == std::string_view::npos;
    if (whole && raw != "0") {
      return Error{ErrorCode::newerFormat,
                   "this is format " + ObjectReader::shortened(raw) +
                       ", and this program reads format 1: use a newer one",
                   pointer};
    }
    return Error{ErrorCode::badDocument, "the number of the format is wanted here: 1", pointer};
  }
  return Error{ErrorCode::badDocument,
               "no Inchwright document: the member `inchwright` with the number of its format is "
               "missing",
               ""};
}

void readHeading(ObjectReader& heading, Job& job) {
  heading.read("title", job.title);
  heading.read("print", job.print);
  heading.readWord("unit", job.unit, unitNamed, 2);
  heading.readWord("projection", job.projection, projectionNamed, 2);
  heading.read("notes", job.notes);
  job.jobExtra = heading.rest();
}

void readMachine(ObjectReader& object, Machine& machine, Trouble& trouble) {
  object.readWord("unit", machine.unit, unitNamed, 2);
  if (machine.unit == Unit::millimetre) machine.step = kMillimetreStep;
  object.read("step", machine.step);
  object.readWord("x_counts", machine.xCounts, countsXNamed, 2);
  object.readWord("y_counts", machine.yCounts, countsYNamed, 2);
  object.read("finder", machine.finder, machine.unit);
  object.read("accuracy", machine.accuracy, machine.unit);
  object.read("finder_error", machine.finderError, machine.unit);
  readMachineRoom(object, machine, trouble);
  machine.extra = object.rest();
}

void writeHeading(std::string& out, const Job& job) {
  ObjectWriter object(out);
  object.text("title", job.title);
  object.text("print", job.print);
  object.text("unit", nameOf(job.unit));
  if (job.projection) object.text("projection", nameOf(*job.projection));
  object.text("notes", job.notes);
  object.rest(job.jobExtra);
  object.close();
}

void writeMachine(std::string& out, const Machine& machine) {
  ObjectWriter object(out);
  object.text("unit", nameOf(machine.unit));
  object.text("step", machine.step);
  object.text("x_counts", nameOf(machine.xCounts));
  object.text("y_counts", nameOf(machine.yCounts));
  object.figure("finder", machine.finder);
  object.figure("accuracy", machine.accuracy);
  object.figure("finder_error", machine.finderError);
  writeMachineRoom(object, machine);
  object.rest(machine.extra);
  object.close();
}

/// The name of the part that an entry of `parts` is the other hand of.
std::optional<std::string> oppositeOf(const JsonValue& entry) {
  if (entry.kind() != JsonKind::object) return std::nullopt;
  for (const JsonValue::Member& member : entry.members()) {
    if (member.name != "opposite_of") continue;
    return member.value.kind() == JsonKind::string ? member.value.string() : std::string();
  }
  return std::nullopt;
}

}  // namespace

Result<Job> readDocument(std::string_view json) {
  const Result<JsonText> text = JsonText::parse(json);
  if (!text) return text.error();
  const JsonValue root = text->root();
  if (const std::optional<Error> refused = refuseVersion(root)) return *refused;
  Job job;
  Trouble trouble;
  const Where top;
  ObjectReader object(root, top, trouble);
  int version = 0;
  object.read(kVersionName, version);
  // The unit of bare figures has to be known before any part is read.
  object.within("job", [&](ObjectReader& heading) { readHeading(heading, job); });
  object.within("machine",
                [&](ObjectReader& machine) { readMachine(machine, job.machine, trouble); });
  object.within("shop", [&](ObjectReader& shop) { job.shop = readShopObject(shop, trouble); });
  object.within("lathe", [&](ObjectReader& lathe) { job.lathe = readLathe(lathe); });
  object.require("parts", "a document lists its parts, be the list empty");
  object.each("parts", [&](const JsonValue& item, const Where& here) {
    job.parts.push_back(oppositeOf(item) ? Part() : readPart(item, here, trouble, job.unit));
  });
  // The other hands follow the parts that they are the other hand of, wherever those stand.
  std::size_t next = 0;
  object.each("parts", [&](const JsonValue& item, const Where& here) {
    Part& part = job.parts[next++];
    const std::optional<std::string> base = oppositeOf(item);
    if (!base) return;
    const Part* of = job.part(*base);
    if (of == nullptr || of->opposite) {
      return trouble.report(here,
                            "there is no part `" + *base + "` of which this is the other hand");
    }
    Part made = readOppositePart(item, here, trouble, job.unit, *of);
    part = std::move(made);
  });
  object.each("pictures", [&](const JsonValue& item, const Where& here) {
    job.pictures.push_back(readPicture(item, here, trouble));
  });
  object.each("gaps", [&](const JsonValue& item, const Where& here) {
    job.gaps.push_back(readGap(item, here, trouble, job.unit));
  });
  object.each("mates", [&](const JsonValue& item, const Where& here) {
    job.mates.push_back(readMate(item, here, trouble, job.unit));
  });
  if (trouble.any()) return trouble.first();
  job.extra = object.rest();
  if (const Result<Done> sound = checkJob(job); !sound) return sound.error();
  return job;
}

std::string writeDocument(const Job& job) {
  std::string out;
  ObjectWriter object(out, 0);
  object.whole(kVersionName, kVersion);
  writeHeading(object.value("job"), job);
  writeMachine(object.value("machine"), job.machine);
  if (!job.shop.saysNothing()) writeShopObject(object.value("shop"), job.shop, 2);
  if (job.lathe) writeLathe(object.value("lathe"), *job.lathe);
  std::string& list = object.value("parts");
  list += '[';
  for (std::size_t i = 0; i < job.parts.size(); ++i) {
    list += i == 0 ? "\n    " : ",\n    ";
    const Part& part = job.parts[i];
    const Part* base = part.opposite ? job.part(part.opposite->part) : nullptr;
    if (base != nullptr) {
      writeOppositePart(list, part, *base, 4);
    } else {
      writePart(list, part, 4);
    }
  }
  list += job.parts.empty() ? "]" : "\n  ]";
  if (!job.pictures.empty()) {
    std::string& pictures = object.value("pictures");
    const char* before = "[\n    ";
    for (const Picture& picture : job.pictures) {
      pictures += before;
      before = ",\n    ";
      writePicture(pictures, picture);
    }
    pictures += "\n  ]";
  }
  if (!job.gaps.empty()) {
    std::string& gaps = object.value("gaps");
    gaps += '[';
    for (std::size_t i = 0; i < job.gaps.size(); ++i) {
      gaps += i == 0 ? "\n    " : ",\n    ";
      writeGap(gaps, job.gaps[i], 4);
    }
    gaps += "\n  ]";
  }
  if (!job.mates.empty()) {
    std::string& mates = object.value("mates");
    const char* before = "[\n    ";
    for (const Mate& mate : job.mates) {
      mates += before;
      before = ",\n    ";
      writeMate(mates, mate);
    }
    mates += "\n  ]";
  }
  object.rest(job.extra);
  object.close();
  out += '\n';
  return out;
}

Result<Job> loadDocument(const std::filesystem::path& file) {
  const Result<std::string> text = readWholeFile(file, kLargestDocument);
  if (!text) return text.error();
  return readDocument(*text);
}

Result<std::string> savableDocument(const Job& job) {
  std::string text = writeDocument(job);
  if (text.size() > kLargestDocument) {
    return Error{ErrorCode::tooLarge,
                 "it has grown beyond " + std::to_string(kLargestDocument / (1024 * 1024)) +
                     " MB, more than could be opened again: take a picture away",
                 {}};
  }
  const Result<Job> again = readDocument(text);
  if (!again) {
    Error error = again.error();
    error.text = "it could not be opened again: " + error.text;
    return error;
  }
  if (!(*again == job)) {
    return Error{ErrorCode::badDocument, "it would not be the same when it is opened again", {}};
  }
  return text;
}

Result<Done> saveDocument(const Job& job, const std::filesystem::path& file) {
  const Result<std::string> text = savableDocument(job);
  if (!text) return text.error();
  return replaceFile(file, *text);
}

}  // namespace inchwright
