#include "core/document/part_writer.h"

#include <optional>
#include <string_view>
#include <type_traits>
#include <vector>

#include "core/document/holding_document.h"
#include "core/document/json_string.h"
#include "core/document/kit_document.h"
#include "core/document/lathe_document.h"
#include "core/document/object_writer.h"
#include "core/document/outline_document.h"
#include "core/document/picture_json.h"
#include "core/part/feature_members.h"

namespace inchwright {
namespace {

/// Writes the members of a feature's kind.
class MemberWriter : public NoMembers {
 public:
  explicit MemberWriter(ObjectWriter& object) : object_(object) {}

  template <class Word>
  void word(std::string_view name, Word value) {
    object_.text(name, nameOf(value));
  }
  template <class Word>
  void word(std::string_view name, const std::optional<Word>& value) {
    if (value) object_.text(name, nameOf(*value));
  }
  template <class Word>
  void needed(std::string_view name, Word value, std::string_view) {
    object_.text(name, nameOf(value));
  }
  template <class Word>
  void wordUnless(std::string_view name, Word value, std::remove_const_t<Word> usual) {
    if (value != usual) object_.text(name, nameOf(value));
  }
  void size(std::string_view name, const std::optional<Lettered>& figure, SizeSymbol) {
    object_.figure(name, figure);
  }
  void angle(std::string_view name, const std::optional<LetteredAngle>& angle) {
    object_.angle(name, angle);
  }
  void depth(std::string_view name, const Depth& depth) {
    if (depth.through) {
      object_.text(name, "through");
    } else {
      object_.figure(name, depth.length);
    }
  }
  void text(std::string_view name, const std::string& text) { object_.textIfAny(name, text); }
  void texts(std::string_view name, const std::vector<std::string>& texts) {
    object_.textsIfAny(name, texts);
  }
  void id(std::string_view name, const Id& id) { object_.textIfAny(name, id); }
  void ids(std::string_view name, const std::vector<Id>& ids) { object_.textsIfAny(name, ids); }
  void pair(std::string_view name, const std::vector<Id>& ids) { object_.textsIfAny(name, ids); }
  void flag(std::string_view name, bool on) {
    if (on) object_.flag(name, on);
  }
  void partPlace(std::string_view name, const std::optional<PartPlace>& at) {
    if (!at) return;
    ObjectWriter inner(object_.value(name));
    inner.text("part", at->part);
    inner.text("place", at->place);
    inner.rest(at->extra);
    inner.close();
  }
  void count(const kind::Ring& ring) { object_.whole("holes", ring.holes); }
  void count(const kind::Row& row) {
    object_.whole(row.countedBySpaces ? "spaces" : "holes",
                  row.holes - (row.countedBySpaces ? 1 : 0));
  }

 private:
  ObjectWriter& object_;
};

void writeFeature(std::string& out, const Feature& feature) {
  ObjectWriter object(out);
  object.text("id", feature.id);
  object.text("kind", nameOf(feature.kind()));
  MemberWriter members(object);
  visitMembers(feature, members);
  object.textsIfAny("traced", feature.traced);
  object.textIfAny("note", feature.note);
  object.rest(feature.extra);
  object.close();
}

void writeReading(std::string& out, const Reading& reading) {
  ObjectWriter object(out);
  object.text("id", reading.id);
  if (reading.kind == ReadingKind::along) {
    object.text("axis", nameOf(reading.axis));
  } else {
    object.text("kind", nameOf(reading.kind));
  }
  object.text("from", reading.from);
  object.textIfAny("to", reading.to);
  if (reading.against.size() == 1) {
    object.text("against", reading.against[0]);
  } else {
    object.textsIfAny("against", reading.against);
  }
  if (reading.sense) object.text("sense", nameOf(*reading.sense));
  if (reading.reversed) object.flag("reversed", true);
  object.text("text", reading.figure.text);
  object.textIfAny("meant", reading.meant);
  object.textIfAny("view", reading.view);
  object.textsIfAny("place", reading.place);
  object.textIfAny("again", reading.again);
  object.textIfAny("offered", reading.offered);
  object.rest(reading.extra);
  object.close();
}

void writeUnderstanding(std::string& out, const Understanding& understanding) {
  ObjectWriter object(out);
  object.text("kind", nameOf(understanding.kind));
  if (understanding.axis) object.text("axis", nameOf(*understanding.axis));
  if (understanding.kind == UnderstandingKind::midway && understanding.of.size() == 1) {
    object.text("of", understanding.of[0]);
  } else {
    object.textsIfAny("of", understanding.of);
  }
  object.textsIfAny("between", understanding.between);
  object.textIfAny("about", understanding.about);
  if (understanding.by) object.text("by", nameOf(*understanding.by));
  if (understanding.touch) object.text("touch", nameOf(*understanding.touch));
  if (understanding.sense) object.text("sense", nameOf(*understanding.sense));
  if (understanding.side) object.text("side", nameOf(*understanding.side));
  object.flag("stated", understanding.stated);
  object.rest(understanding.extra);
  object.close();
}

void writeZeroAlong(std::string& out, const ZeroAlong& zero) {
  ObjectWriter object(out);
  object.textsIfAny("middle", zero.middle);
  object.textIfAny("at", zero.at);
  if (zero.ofStock) object.text("of", "stock");
  object.figure("offset", zero.offset);
  object.rest(zero.extra);
  object.close();
}

void writeZero(std::string& out, const Setup& setup) {
  ObjectWriter object(out);
  for (Axis axis : kAxes) {
    const ZeroAlong* zero = setup.zeroAlong(axis);
    if (zero != nullptr) writeZeroAlong(object.value(nameOf(axis)), *zero);
  }
  object.rest(setup.zeroExtra);
  object.close();
}

/// In the order in which the contract names the sides.
constexpr Side kStockOrder[] = {Side::left, Side::right, Side::front,
                                Side::back, Side::top,   Side::bottom};

void writeStock(std::string& out, const Setup& setup) {
  ObjectWriter object(out);
  for (Side side : kStockOrder) {
    object.figure(nameOf(side), setup.stock[static_cast<std::size_t>(side)]);
  }
  object.rest(setup.stockExtra);
  object.close();
}

bool hasStock(const Setup& setup) {
  for (const auto& allowance : setup.stock) {
    if (allowance) return true;
  }
  return !setup.stockExtra.empty();
}

void writeSetup(std::string& out, const Setup& setup, int indent) {
  ObjectWriter object(out, indent);
  object.text("name", setup.name);
  object.text("face", nameOf(setup.face));
  object.whole("turn", setup.turn);
  if (!setup.zero.empty() || !setup.zeroExtra.empty()) writeZero(object.value("zero"), setup);
  if (hasStock(setup)) writeStock(object.value("stock"), setup);
  if (setup.jaw) object.text("jaw", nameOf(*setup.jaw));
  if (setup.stop) object.text("stop", nameOf(*setup.stop));
  writeHolding(object, setup.held);
  writeCurves(object, setup.curves);
  object.textsIfAny("checks", setup.checks);
  if (setup.chucked) writeChucked(object, *setup.chucked);
  object.rest(setup.extra);
  object.close();
}

void writeAccepted(std::string& out, const AcceptedDoubt& accepted) {
  if (accepted == AcceptedDoubt(accepted.key)) return appendQuoted(out, accepted.key);
  ObjectWriter object(out);
  object.text("key", accepted.key);
  object.textIfAny("about", accepted.about);
  object.textIfAny("reason", accepted.reason);
  object.rest(accepted.extra);
  object.close();
}

void writeGeneral(std::string& out, const General& general) {
  ObjectWriter object(out);
  object.figure("fractions", general.fractions);
  object.figure("two_places", general.twoPlaces);
  object.figure("three_places", general.threePlaces);
  object.angle("angles", general.angles);
  object.rest(general.extra);
  object.close();
}

/// One entry a line, or `[]`. `indent` is that of the list's own closing bracket.
template <class Entry, class Write>
void writeList(std::string& out, const std::vector<Entry>& entries, int indent, Write write) {
  out += '[';
  const char* before = "\n";
  for (const Entry& entry : entries) {
    out += before;
    before = ",\n";
    out.append(static_cast<std::size_t>(indent) + 2, ' ');
    write(out, entry);
  }
  if (!entries.empty()) {
    out += '\n';
    out.append(static_cast<std::size_t>(indent), ' ');
  }
  out += ']';
}

}  // namespace

void writePart(std::string& out, const Part& part, int indent) {
  ObjectWriter object(out, indent);
  const int inner = indent + 2;
  object.text("name", part.name);
  object.whole("quantity", part.quantity);
  object.text("material", part.material);
  object.textIfAny("hand", part.hand);
  if (part.turned) object.text("shape", "turned");
  if (part.general != General{}) writeGeneral(object.value("general"), part.general);
  const auto writeFeatures = [&](const std::vector<Feature>& features) {
    writeList(object.value("features"), features, inner, writeFeature);
  };
  if (part.turned) {
    std::vector<Feature> features = part.features;
    std::erase(features, centreLine());
    writeFeatures(features);
  } else {
    writeFeatures(part.features);
  }
  writeList(object.value("readings"), part.readings, inner, writeReading);
  writeList(object.value("understood"), part.understood, inner, writeUnderstanding);
  writeList(object.value("setups"), part.setups, inner,
            [inner](std::string& text, const Setup& setup) { writeSetup(text, setup, inner + 2); });
  if (!part.outlines.empty()) {
    writeList(object.value("outlines"), part.outlines, inner, writeOutline);
  }
  if (!part.views.empty()) writeList(object.value("views"), part.views, inner, writePictureView);
  if (!part.accepted.empty()) {
    writeList(object.value("accepted"), part.accepted, inner, writeAccepted);
  }
  if (!part.made.empty()) writeList(object.value("made"), part.made, inner, writeMade);
  if (!part.mended.empty()) writeList(object.value("mended"), part.mended, inner, writeMended);
  if (!part.printed.empty()) writeList(object.value("printed"), part.printed, inner, writePrinted);
  object.rest(part.extra);
  object.close();
}

}  // namespace inchwright
