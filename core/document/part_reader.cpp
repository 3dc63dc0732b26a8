#include "core/document/part_reader.h"

#include <algorithm>

#include "core/document/holding_document.h"
#include "core/document/kit_document.h"
#include "core/document/lathe_document.h"
#include "core/document/outline_document.h"
#include "core/document/picture_json.h"
#include "core/part/edit.h"
#include "core/part/feature_members.h"

namespace inchwright {
namespace {

/// What every entry of a part is read with.
struct Context {
  Trouble& trouble;
  Unit unit;
};

/// `±1/64` and `+/-1/64` are read as `1/64`: a title block may be copied as it stands.
void readPlusMinus(ObjectReader& object, std::string_view name, std::optional<Lettered>& out,
                   Unit unit) {
  const std::optional<std::string> text = object.textOf(name);
  if (!text) return;
  std::size_t start = 0;
  for (std::string_view mark : {"±", "+/-"}) {
    if (text->starts_with(mark)) start = mark.size();
  }
  Result<Lettered> figure = readLength(std::string_view(*text).substr(start), {unit});
  if (!figure) {
    std::optional<std::size_t> at = figure.error().at;
    if (at) *at += start;
    return object.report(name, figure.error().text, at);
  }
  figure->text = *text;
  out = *std::move(figure);
}

/// Reads the members of a feature's kind.
class MemberReader : public NoMembers {
 public:
  MemberReader(ObjectReader& object, Unit unit) : object_(object), unit_(unit) {}

  void word(std::string_view name, Axis& out) { object_.readWord(name, out, axisNamed, 3); }
  void word(std::string_view name, std::optional<Axis>& out) {
    object_.readWord(name, out, axisNamed, 3);
  }
  void word(std::string_view name, std::optional<Side>& out) {
    object_.readWord(name, out, faceNamed, 6);
  }
  void word(std::string_view name, Face& out) { object_.readWord(name, out, faceNamed, 6); }
  void word(std::string_view name, Make& out) { object_.readWord(name, out, makeNamed, 7); }
  void word(std::string_view name, Locate& out) { object_.readWord(name, out, locateNamed, 5); }
  void word(std::string_view name, Hand& out) { object_.readWord(name, out, handNamed, 2); }
  void word(std::string_view name, Sense& out) { object_.readWord(name, out, senseNamed, 2); }
  template <class Word>
  void needed(std::string_view name, Word& out, std::string_view advice) {
    if (object_.has(name)) {
      word(name, out);
    } else {
      object_.report(std::string(advice));
    }
  }
  template <class Word>
  void wordUnless(std::string_view name, Word& out, Word) {
    word(name, out);
  }
  template <class Size>
  void size(std::string_view name, Size& out, SizeSymbol) {
    object_.read(name, out, unit_);
  }
  template <class Angle>
  void angle(std::string_view name, Angle& out) {
    object_.read(name, out);
  }
  void depth(std::string_view name, Depth& out) {
    if (object_.textOf(name) == "through") return;
    object_.read(name, out.length, unit_);
    if (out.length) out.through = false;
  }
  void text(std::string_view name, std::string& out) { object_.read(name, out); }
  void texts(std::string_view name, std::vector<std::string>& out) { object_.read(name, out); }
  void id(std::string_view name, Id& out) { object_.read(name, out); }
  void ids(std::string_view name, std::vector<Id>& out) { object_.read(name, out); }
  void pair(std::string_view name, std::vector<Id>& out) { object_.read(name, out); }
  void flag(std::string_view name, bool& out) { object_.read(name, out); }
  void partPlace(std::string_view name, Apart<PartPlace>& out) {
    object_.within(name, [&](ObjectReader& inner) {
      PartPlace at;
      inner.read("part", at.part);
      inner.read("place", at.place);
      at.extra = inner.rest();
      out = std::move(at);
    });
  }
  void count(kind::Ring& ring) {
    if (!object_.has("holes")) {
      return object_.report("a ring says how many `holes` it has: 1 to 1000");
    }
    object_.read("holes", ring.holes);
  }
  void count(kind::Row& row) {
    const bool spaces = object_.has("spaces");
    if (spaces && object_.has("holes")) {
      return object_.report("spaces", "give `holes` or `spaces`, as the print does, not both");
    }
    if (!spaces && !object_.has("holes")) {
      return object_.report(
          "a row says how many `holes` or how many `spaces` it has: 1 to 1000 holes");
    }
    object_.read("holes", row.holes);
    if (!spaces) return;
    int between = 0;
    object_.read("spaces", between);
    row.holes = std::clamp(between, 0, kMostHoles) + 1;
    row.countedBySpaces = true;
  }

 private:
  ObjectReader& object_;
  Unit unit_;
};

Feature readFeature(const JsonValue& value, const Where& where, const Context& context) {
  Feature feature;
  ObjectReader object(value, where, context.trouble);
  if (!object.require("id", "every feature has one") ||
      !object.require("kind", "say what the feature is")) {
    return feature;
  }
  object.read("id", feature.id);
  FeatureKind kind = FeatureKind::point;
  object.readWord("kind", kind, featureKindNamed, std::variant_size_v<AnyShape>);
  feature.shape = emptyShape(kind);
  MemberReader members(object, context.unit);
  visitMembers(feature, members);
  object.read("traced", feature.traced);
  object.read("note", feature.note);
  feature.extra = object.rest();
  return feature;
}

/// One id or a list of them.
void readIds(ObjectReader& object, std::string_view name, std::vector<Id>& ids) {
  if (object.isText(name)) {
    ids.emplace_back();
    object.read(name, ids.back());
  } else {
    object.read(name, ids);
  }
}

Reading readReading(const JsonValue& value, const Where& where, const Context& context) {
  Reading reading;
  ObjectReader object(value, where, context.trouble);
  if (!object.require("id", "every reading has one") ||
      !object.require("from", "say where the reading starts") ||
      !object.require("text", "say what the print shows")) {
    return reading;
  }
  object.read("id", reading.id);
  object.readWord("kind", reading.kind, readingKindNamed, kReadingKinds);
  if (reading.kind == ReadingKind::along &&
      object.require("axis", "say `x`, `y` or `z`, or the `kind` of reading")) {
    object.readWord("axis", reading.axis, axisNamed, 3);
  }
  object.read("from", reading.from);
  object.read("to", reading.to);
  if (reading.kind == ReadingKind::angle) {
    readIds(object, "against", reading.against);
    object.readWord("sense", reading.sense, senseNamed, 2);
    object.read("reversed", reading.reversed);
    object.read("text", reading.angle);
    object.read("text", reading.figure.text);
  } else {
    std::optional<Lettered> figure;
    object.read("text", figure, context.unit);
    if (figure) reading.figure = *std::move(figure);
    std::optional<Lettered> meant;
    object.read("meant", meant, context.unit);
    if (meant) {
      reading.meant = meant->text;
      reading.figure.value = meant->value;
      reading.figure.exact = meant->exact;
    }
  }
  object.read("view", reading.view);
  object.read("place", reading.place);
  object.read("again", reading.again);
  object.read("offered", reading.offered);
  reading.extra = object.rest();
  return reading;
}

Understanding readUnderstanding(const JsonValue& value, const Where& where,
                                const Context& context) {
  Understanding understanding;
  ObjectReader object(value, where, context.trouble);
  if (!object.require("kind", "say what is understood")) return understanding;
  object.readWord("kind", understanding.kind, understandingKindNamed, kUnderstandingKinds);
  object.readWord("axis", understanding.axis, axisNamed, 3);
  readIds(object, "of", understanding.of);
  object.read("between", understanding.between);
  object.read("about", understanding.about);
  switch (understanding.kind) {
    case UnderstandingKind::equal:
      object.readWord("by", understanding.by, equalByNamed, 2);
      break;
    case UnderstandingKind::tangent:
      object.readWord("touch", understanding.touch, touchNamed, 2);
      break;
    case UnderstandingKind::wayRound:
      object.readWord("sense", understanding.sense, senseNamed, 2);
      break;
    case UnderstandingKind::beside:
      object.readWord("side", understanding.side, faceNamed, 6);
      break;
    default:
      break;
  }
  object.read("stated", understanding.stated);
  understanding.extra = object.rest();
  return understanding;
}

ZeroAlong readZeroAlong(ObjectReader& object, Axis axis, Unit unit) {
  ZeroAlong zero;
  zero.axis = axis;
  object.read("middle", zero.middle);
  object.read("at", zero.at);
  if (const std::optional<std::string> of = object.textOf("of")) {
    zero.ofStock = *of == "stock";
    if (!zero.ofStock && *of != "finished") {
      object.report("of", "`" + ObjectReader::shortened(*of) + "` is none of `finished`, `stock`");
    }
  }
  object.read("offset", zero.offset, unit);
  zero.extra = object.rest();
  return zero;
}

Setup readSetup(const JsonValue& value, const Where& where, const Context& context) {
  Setup setup;
  ObjectReader object(value, where, context.trouble);
  if (!object.require("name", "every setup has one")) return setup;
  object.read("name", setup.name);
  object.readWord("face", setup.face, faceNamed, 6);
  object.read("turn", setup.turn);
  object.within("zero", [&](ObjectReader& zero) {
    for (Axis axis : kAxes) {
      zero.within(nameOf(axis), [&](ObjectReader& along) {
        setup.zero.push_back(readZeroAlong(along, axis, context.unit));
      });
    }
    setup.zeroExtra = zero.rest();
  });
  object.within("stock", [&](ObjectReader& stock) {
    for (std::size_t i = 0; i < setup.stock.size(); ++i) {
      stock.read(nameOf(static_cast<Side>(i)), setup.stock[i], context.unit);
    }
    setup.stockExtra = stock.rest();
  });
  object.readWord("jaw", setup.jaw, faceNamed, 6);
  object.readWord("stop", setup.stop, faceNamed, 6);
  readHolding(object, setup.held, context.trouble, context.unit);
  readCurves(object, setup.curves, context.trouble, context.unit);
  object.read("checks", setup.checks);
  setup.chucked = readChucked(object, context.unit);
  setup.extra = object.rest();
  return setup;
}

/// A key alone, or with what the doubt was about and why it may stand.
AcceptedDoubt readAccepted(const JsonValue& value, const Where& where, Trouble& trouble) {
  AcceptedDoubt accepted;
  if (value.kind() == JsonKind::string) {
    accepted.key = value.string();
    return accepted;
  }
  if (value.kind() != JsonKind::object) {
    trouble.report(where, "a string is wanted here, or an object with a `key`");
    return accepted;
  }
  ObjectReader object(value, where, trouble);
  if (!object.require("key", "say which doubt was accepted")) return accepted;
  object.read("key", accepted.key);
  object.read("about", accepted.about);
  object.read("reason", accepted.reason);
  accepted.extra = object.rest();
  return accepted;
}

void readGeneral(ObjectReader& object, General& general, Unit unit) {
  readPlusMinus(object, "fractions", general.fractions, unit);
  readPlusMinus(object, "two_places", general.twoPlaces, unit);
  readPlusMinus(object, "three_places", general.threePlaces, unit);
  object.read("angles", general.angles);
  general.extra = object.rest();
}

}  // namespace

Part readPart(const JsonValue& value, const Where& where, Trouble& trouble, Unit unit) {
  const Context context{trouble, unit};
  Part part;
  ObjectReader object(value, where, trouble);
  if (!object.require("name", "every part has one")) return part;
  object.read("name", part.name);
  object.read("quantity", part.quantity);
  object.read("material", part.material);
  object.read("hand", part.hand);
  if (const std::optional<std::string> shape = object.textOf("shape")) {
    part.turned = *shape == "turned";
    if (!part.turned) {
      object.report("shape", "the shape of a part is `turned`, or not said: a flat one");
    }
  }
  object.within("general",
                [&](ObjectReader& general) { readGeneral(general, part.general, unit); });
  object.each("features", [&](const JsonValue& item, const Where& here) {
    part.features.push_back(readFeature(item, here, context));
  });
  object.each("readings", [&](const JsonValue& item, const Where& here) {
    part.readings.push_back(readReading(item, here, context));
  });
  object.each("understood", [&](const JsonValue& item, const Where& here) {
    part.understood.push_back(readUnderstanding(item, here, context));
  });
  object.each("setups", [&](const JsonValue& item, const Where& here) {
    part.setups.push_back(readSetup(item, here, context));
  });
  readOutlines(object, part.outlines, trouble, unit);
  object.each("views", [&](const JsonValue& item, const Where& here) {
    part.views.push_back(readPictureView(item, here, trouble));
  });
  object.each("accepted", [&](const JsonValue& item, const Where& here) {
    part.accepted.push_back(readAccepted(item, here, trouble));
  });
  object.each("made", [&](const JsonValue& item, const Where& here) {
    part.made.push_back(readMade(item, here, trouble, unit));
  });
  object.each("mended", [&](const JsonValue& item, const Where& here) {
    part.mended.push_back(readMended(item, here, trouble, unit));
  });
  object.each("printed", [&](const JsonValue& item, const Where& here) {
    part.printed.push_back(readPrinted(item, here, trouble));
  });
  part.extra = object.rest();
  return part.turned ? turnedPart(std::move(part)) : part;
}

}  // namespace inchwright
