// The features a line can name, kind by kind.

#include <array>
#include <cctype>
#include <charconv>
#include <optional>
#include <utility>

#include "core/lines/callout_items.h"
#include "core/lines/feature_callout.h"
#include "core/lines/line_words.h"
#include "core/lines/lines.h"
#include "core/lines/turned_line.h"
#include "core/lines/typed_name.h"
#include "core/part/edit.h"
#include "core/shop/threads.h"

namespace inchwright {
namespace {

/// Words that end a figure and begin something else.
const std::vector<std::string_view> kStops{
    "deep",        "through", "drill", "ream",  "bore",     "tap",    "counterbore",
    "countersink", "by",      "on",    "from",  "spotface", "holes",  "spaces",
    "pitch",       "about",   "left",  "right", "front",    "back",   "top",
    "bottom",      "x",       "y",     "z",     "in",       "turning"};

bool isStop(std::string_view word) {
  for (const std::string_view stop : kStops) {
    if (word == stop) return true;
  }
  return false;
}

/// An id begins with a letter and is no word of the line's own; `R` and `Ø` begin sizes only when a
/// figure is glued to them.
bool looksLikeId(std::string_view word) {
  return !word.empty() && std::isalpha(static_cast<unsigned char>(word[0])) != 0 && !isStop(word);
}

Result<Lettered> figureFrom(LineWords& words, Unit unit, std::string_view what) {
  std::size_t count = 0;
  while (!words.peek(count).empty() && !isStop(words.peek(count))) ++count;
  if (count == 0) return words.refuse("give the " + std::string(what) + " here");
  // Two figures may stand side by side, as in `pitch 9/16 1/8`: the longest that is one is taken.
  std::size_t taken = count;
  while (taken > 1 && !readLength(words.span(taken), {unit}).ok()) --taken;
  if (!readLength(words.span(taken), {unit}).ok()) taken = count;
  const std::string_view text = words.take(taken);
  auto figure = readLength(text, {unit});
  if (figure.ok()) return figure;
  Error error = figure.error();
  error.at = words.at(text) + error.at.value_or(0);
  return error;
}

Result<int> countFrom(LineWords& words) {
  const std::string_view text = words.peek();
  int count = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), count);
  if (fault != std::errc{} || end != text.data() + text.size() || count < 1) {
    return words.refuse("give a whole number here: how many");
  }
  words.take();
  return count;
}

/// Reads one more piece of a feature, when the next word begins one that its kind has.
class FeatureReader {
 public:
  FeatureReader(Feature& feature, LineWords& words, const LineContext& context)
      : feature_(feature), words_(words), context_(context) {}

  Result<Done> read() {
    while (!words_.empty()) {
      const auto piece = readPiece();
      if (!piece.ok()) return piece;
    }
    return finish();
  }

 private:
  template <class Figure>
  Result<Done> into(Figure& member, std::string_view what) {
    if (member) return words_.refuse("the " + std::string(what) + " is given already");
    const std::size_t at = words_.at();
    auto figure = figureFrom(words_, context_.unit, what);
    if (!figure.ok()) return figure.error();
    if (figure->symbol == SizeSymbol::radius && !feature_.is<kind::Round>()) {
      return Error{ErrorCode::badText, "a radius is lettered here: is it a round?", {}, at};
    }
    member = std::move(figure).value();
    return Done{};
  }

  Result<Done> readPiece() {
    const std::string_view word = words_.peek();
    if (const auto axis = axisNamed(word)) return takeAxis(*axis);
    if (const auto side = faceNamed(word)) return takeSide(*side);
    if (drilled_ != nullptr) {
      if (const auto make = makeNamed(word)) return takeMake(*make);
      if (words_.takeIf("through")) return setThrough();
      if (words_.takeIf("deep")) return takeDepth();
    }
    if (auto* slot = feature_.as<kind::Slot>()) {
      return words_.takeIf("by") ? into(slot->length, "length over all")
                                 : into(slot->width, "width");
    }
    if (auto* ring = feature_.as<kind::Ring>()) return readRingPiece(*ring);
    if (auto* row = feature_.as<kind::Row>()) return readRowPiece(*row);
    if (auto* round = feature_.as<kind::Round>()) {
      if (words_.takeIf("about")) return takeAbout(*round);
      return into(round->radius, "radius");
    }
    if (drilled_ != nullptr) {
      return drilled_->make == Make::tap ? takeThread() : into(drilled_->diameter, "diameter");
    }
    return words_.refuse("this word means nothing for " + std::string(nameOf(feature_.kind())));
  }

  Result<Done> readRingPiece(kind::Ring& ring) {
    if (words_.takeIf("on")) return into(ring.pitchDiameter, "pitch circle diameter");
    if (words_.takeIf("from")) return takeFirstAngle(ring);
    if (words_.takeIf("turning")) {
      const auto sense = senseNamed(words_.peek());
      if (!sense) return words_.refuse("say `clockwise` or `anticlockwise`");
      words_.take();
      ring.sense = *sense;
      return Done{};
    }
    if (!counted_) return takeHoles(ring);
    if (words_.takeIf("holes")) return Done{};
    return into(ring.drilled.diameter, "diameter");
  }

  Result<Done> readRowPiece(kind::Row& row) {
    if (words_.takeIf("pitch")) return into(row.pitch, "pitch");
    if (!counted_) return takeHoles(row);
    return into(row.drilled.diameter, "diameter");
  }

  /// `from 90 .125` is an angle and a diameter: the longest that is an angle is taken. That may be
  /// too much of `from 90 1/8`, which `finish` asks about where no other diameter follows.
  Result<Done> takeFirstAngle(kind::Ring& ring) {
    std::size_t count = 0;
    while (!words_.peek(count).empty() && !isStop(words_.peek(count))) ++count;
    if (count == 0) return words_.refuse("give the angle of the first hole here");
    std::size_t taken = count;
    while (taken > 1 && !readAngle(words_.span(taken)).ok()) --taken;
    const bool fraction =
        taken == 2 && words_.peek(1).find_first_not_of("0123456789/") == std::string_view::npos;
    if (!readAngle(words_.span(taken)).ok()) taken = count;
    fractionAt_ = fraction ? std::optional(words_.at(words_.peek(1))) : std::nullopt;
    const std::string_view text = words_.take(taken);
    auto angle = readAngle(text);
    if (!angle.ok()) {
      Error error = angle.error();
      error.at = words_.at(text) + error.at.value_or(0);
      return error;
    }
    ring.firstAngle = std::move(angle).value();
    return Done{};
  }

  Result<Done> takeHoles(kind::Ring& ring) {
    const auto count = countFrom(words_);
    if (!count.ok()) return count.error();
    words_.takeIf("holes");
    ring.holes = *count;
    counted_ = true;
    return Done{};
  }

  /// `5 holes` or `4 spaces`: always said which.
  Result<Done> takeHoles(kind::Row& row) {
    const auto count = countFrom(words_);
    if (!count.ok()) return count.error();
    counted_ = true;
    if (words_.takeIf("holes")) {
      row.holes = *count;
    } else if (words_.takeIf("spaces")) {
      row.holes = *count + 1;
      row.countedBySpaces = true;
    } else {
      return words_.refuse("say whether these are `holes` or `spaces`");
    }
    return Done{};
  }

  Result<Done> takeAxis(Axis axis) {
    // `3/16 x` breaks off: the axis stands in front.
    const auto* half = feature_.as<kind::Slot>();
    if (half != nullptr && half->width && axis == Axis::x && words_.peek(1).empty()) {
      return words_.refuse("the figure behind this is missing, as in `3/16 x 5/8`");
    }
    const auto* across = feature_.as<kind::Edge>();
    if (directed_ && (across == nullptr || across->axis != axis)) {
      return words_.refuse("which way it runs is said already; a length over all follows `by`");
    }
    if (auto* edge = feature_.as<kind::Edge>()) {
      edge->axis = axis;
    } else if (auto* slot = feature_.as<kind::Slot>()) {
      slot->axis = axis;
    } else if (auto* row = feature_.as<kind::Row>()) {
      row->axis = axis;
    } else {
      return words_.refuse("this word means nothing for " + std::string(nameOf(feature_.kind())));
    }
    words_.take();
    directed_ = true;
    return Done{};
  }

  Result<Done> takeSide(Side side) {
    if (auto* edge = feature_.as<kind::Edge>()) {
      if (directed_ && edge->axis != axisAcross(side)) {
        return words_.refuse("the " + std::string(nameOf(side)) + " side does not lie across " +
                             std::string(nameOf(edge->axis)));
      }
      *edge = {axisAcross(side), side};
      directed_ = true;
    } else if (auto* round = feature_.as<kind::Round>()) {
      round->side = side;
    } else {
      return words_.refuse("this word means nothing for " + std::string(nameOf(feature_.kind())));
    }
    words_.take();
    return Done{};
  }

  Result<Done> takeMake(Make make) {
    words_.take();
    drilled_->make = make;
    // `10-32 tap`: what was taken for a size is the thread.
    if (make == Make::tap && drilled_->diameter) {
      drilled_->thread = drilled_->diameter->text;
      drilled_->diameter.reset();
      return Done{};
    }
    if (make == Make::tap || words_.empty() || isStop(words_.peek()) || drilled_->diameter) {
      return Done{};
    }
    return into(drilled_->diameter, "diameter");
  }

  Result<Done> takeThread() {
    const std::string_view text = words_.takeUntil(kStops);
    if (text.empty()) return words_.refuse("give the thread here, such as 1/4-20 UNC or 2 BA");
    drilled_->thread = std::string(text);
    return Done{};
  }

  Result<Done> setThrough() {
    drilled_->depth = Depth{};
    return Done{};
  }

  Result<Done> takeDepth() {
    drilled_->depth.through = false;
    return into(drilled_->depth.length, "depth");
  }

  Result<Done> takeAbout(kind::Round& round) {
    if (words_.empty()) return words_.refuse("name the hole or point it is struck about");
    round.about = std::string(words_.take());
    return Done{};
  }

  Result<Done> finish() {
    const bool counts = feature_.is<kind::Ring>() || feature_.is<kind::Row>();
    if (counts && !counted_) return words_.refuse("say how many holes");
    // `5/8 by 3/16`: the width is the lesser, whichever stands first.
    auto* slot = feature_.as<kind::Slot>();
    if (slot && slot->width && slot->length && slot->length->value < slot->width->value) {
      std::swap(slot->width, slot->length);
    }
    if (!directed_) directAlong(context_.axis);
    if (fractionAt_ && !drilled_->diameter && drilled_->thread.empty()) {
      return Error{ErrorCode::badText,
                   "is this part of the angle, or the diameter? Write `deg` behind the angle: "
                   "`22 1/2 deg` or `90 deg 1/8`",
                   {},
                   fractionAt_};
    }
    return Done{};
  }

  void directAlong(Axis axis) {
    if (auto* edge = feature_.as<kind::Edge>()) edge->axis = axis;
    if (auto* slot = feature_.as<kind::Slot>()) slot->axis = axis;
    if (auto* row = feature_.as<kind::Row>()) row->axis = axis;
  }

  Feature& feature_;
  LineWords& words_;
  const LineContext& context_;
  Drilled* drilled_ = feature_.drilled();
  bool counted_ = false;                   ///< how many holes are said
  bool directed_ = false;                  ///< the axis is said
  std::optional<std::size_t> fractionAt_;  ///< of a first angle that may end before it
};

/// `10-32 tap` and `2 BA tap` name a thread before the word that says so: seen ahead, since such a
/// name need be no length.
bool threadComesFirst(const LineWords& words) {
  if (words.peek() == "tap") return false;
  for (std::size_t i = 0; !words.peek(i).empty(); ++i) {
    if (words.peek(i) == "tap") return true;
    if (isStop(words.peek(i))) return false;
  }
  return false;
}

Error shiftedBy(Error error, std::size_t by) {
  error.at = by + error.at.value_or(0);
  return error;
}

/// In the words of the line itself: `ring G 6 on 2 1/2 from 30 drill 1/8`.
Result<FeatureLine> inOwnWords(Feature feature, LineWords words, const LineContext& context) {
  if (feature.is<kind::Hole>() && threadComesFirst(words)) {
    feature.drilled()->thread = std::string(words.takeUntil({"tap"}));
    feature.drilled()->make = Make::tap;
    words.take();
  }
  const auto read = FeatureReader(feature, words, context).read();
  if (!read.ok()) return read.error();
  return FeatureLine{std::move(feature), 0};
}

/// As the print letters it: `3 HOLES 3/32 ON 1 1/16 PCD`. A slot or row may say its axis in front,
/// a ring its first angle and turning behind.
Result<FeatureLine> asLettered(Feature feature, LineWords words, const LineContext& context) {
  Axis axis = context.axis;
  if (feature.is<kind::Slot>() || feature.is<kind::Row>()) {
    const auto axes = axesIn(feature.face);
    if (const auto said = axisNamed(words.peek())) {
      axis = *said;
      words.take();
    } else if (words.takeIf("level")) {
      axis = axes[0];
    } else if (words.takeIf("upright")) {
      axis = axes[1];
    }
  }
  const std::size_t at = words.at();
  const std::string_view callout = words.takeUntil({"from", "turning"});
  auto line = featureFromCallout(std::move(feature), callout, axis, context.unit);
  if (!line) return shiftedBy(line.error(), at);
  auto* ring = line->feature.as<kind::Ring>();
  while (ring != nullptr && !words.empty()) {
    const bool from = words.takeIf("from");
    if (!from) words.take();
    const std::size_t here = words.at();
    const std::string_view text = words.takeUntil({"from", "turning"});
    if (from) {
      auto angle = readAngle(text);
      if (!angle) return shiftedBy(angle.error(), here);
      ring->firstAngle = std::move(angle).value();
    } else if (const auto sense = senseNamed(text)) {
      ring->sense = *sense;
    } else {
      return Error{ErrorCode::badText, "say `clockwise` or `anticlockwise`", {}, here};
    }
  }
  if (!words.empty()) {
    return words.refuse("`" + std::string(words.peek()) + "` is more than this line needs");
  }
  return line;
}

bool isLettered(FeatureKind kind) {
  return kind == FeatureKind::hole || kind == FeatureKind::slot || kind == FeatureKind::ring ||
         kind == FeatureKind::row || kind == FeatureKind::round || kind == FeatureKind::arc;
}

/// Two readings of one text, of which the second was refused too: the one that got further says
/// what is wrong.
Error further(const Error& one, const Error& other) {
  return other.at.value_or(0) > one.at.value_or(0) ? other : one;
}

/// Whether the callout was refused at a word that is probably a slip for one that it knows; the
/// refusal then asks about that.
bool isAtSlip(const Error& error, std::string_view tail) {
  if (!error.at || *error.at >= tail.size()) return false;
  const std::string_view from = tail.substr(*error.at);
  return !calloutWordMeantBy(from.substr(0, from.find_first_of(" \t"))).empty();
}

Result<FeatureLine> readTail(Feature feature, const LineWords& words, std::string_view tail,
                             const LineContext& context) {
  if (isTurned(feature.kind())) {
    LineWords rest = words;
    const std::size_t at = rest.at();
    auto line = readTurnedLine(std::move(feature), rest.takeRest(), context.unit);
    return line ? line : Result<FeatureLine>(shiftedBy(line.error(), at));
  }
  const bool lettered = isLettered(feature.kind()) && !words.empty();
  // A hole is first read as prints letter it; the other kinds have words of their own before.
  if (lettered && feature.is<kind::Hole>()) {
    auto line = asLettered(feature, words, context);
    if (line || line.error().code == ErrorCode::badRequest) return line;
    auto own = inOwnWords(std::move(feature), words, context);
    if (own) return own;
    return isAtSlip(line.error(), tail) ? line.error() : further(line.error(), own.error());
  }
  auto own = inOwnWords(feature, words, context);
  if (own || !lettered) return own;
  auto line = asLettered(std::move(feature), words, context);
  if (line || line.error().code == ErrorCode::badRequest) return line;
  return isAtSlip(line.error(), tail) ? line.error() : further(own.error(), line.error());
}

/// `M6`, `M6-6H`: the name of a thread, and might be that of a feature.
bool namesThread(std::string_view word) {
  return word.size() > 1 && word[0] == 'M' && word[1] >= '1' && word[1] <= '9' &&
         threadNamed(word).ok();
}

bool isSized(const Feature& feature) {
  const Drilled* hole = feature.drilled();
  return hole == nullptr || hole->diameter || hole->seatDiameter || !hole->thread.empty();
}

}  // namespace

Result<FeatureLine> readFeatureLine(const Part& part, FeatureKind kind, std::string_view tail,
                                    const LineContext& context) {
  LineWords words(tail);
  Feature feature;
  feature.shape = emptyShape(kind);
  feature.face = context.face;
  // No callout begins with a times; of an edge it is the axis.
  const auto isName = [&](std::size_t i) {
    const bool letter = kind != FeatureKind::edge && words.peek(i) == "X";
    return looksLikeId(words.peek(i)) &&
           (letter || !beginsCallout(words.peek(i), words.peek(i + 1)));
  };
  // `hole A 1/4` and `edge left` say again what it is: no name, nor a callout in which a name
  // would mean nothing.
  const std::string_view again = words.peek();
  if (again == nameOf(kind) && (isName(1) || (isName(0) && part.feature(again) == nullptr))) {
    words.take();
  }
  // `R 3/8` is a radius, and no hole named R.
  const bool radius = isLettered(kind) && (words.peek() == "R" || words.peek() == "RAD") &&
                      readLength(words.peek(1), {context.unit}).ok();
  if (!radius && isName(0)) {
    const std::string fault = nameFault(words.peek());
    if (!fault.empty()) return Error{ErrorCode::badRequest, fault, {}, words.at()};
    feature.id = std::string(words.take());
  }
  const bool thread = feature.is<kind::Hole>() && !feature.id.empty() && namesThread(feature.id);
  auto line = readTail(feature, words, tail, context);
  // `M6 x 12 DEEP` is a thread, where the hole would else have a name and no size.
  const std::string_view behind = words.peek();
  const bool goesOn = behind == "x" || behind == "X" || behind == "×" || behind == "-";
  if (thread && (goesOn || !line || !isSized(line->feature))) {
    feature.id.clear();
    auto whole = readTail(std::move(feature), LineWords(tail), tail, context);
    if (whole ? isSized(whole->feature) : whole.error().code == ErrorCode::badRequest) {
      line = std::move(whole);
    }
  }
  if (!line) return line.error();
  Id& id = line->feature.id;
  if (id.empty()) {
    id = nextFeatureId(part, sideOf(line->feature));
  } else if (std::string question = nameQuestion(part, id); !question.empty()) {
    line->question += (line->question.empty() ? "" : "; ") + question;
  }
  return line;
}

Result<FeatureLine> readFeatureLine(const Part& part, std::string_view tail,
                                    const LineContext& context) {
  auto hole = readFeatureLine(part, FeatureKind::hole, tail, context);
  // Two meanings of a hole are asked about; nothing else may guess at one.
  if (hole || hole.error().code == ErrorCode::badRequest) return hole;
  for (const FeatureKind kind : {FeatureKind::ring, FeatureKind::row, FeatureKind::edge,
                                 FeatureKind::slot, FeatureKind::round}) {
    if (kind == FeatureKind::slot && !tellsOfSlot(tail)) continue;
    auto line = readFeatureLine(part, kind, tail, context);
    if (!line) continue;
    // `1 1 /4` is no circle of one hole.
    const auto* ring = line->feature.as<kind::Ring>();
    const auto* row = line->feature.as<kind::Row>();
    if ((ring == nullptr || ring->pitchDiameter) && (row == nullptr || row->pitch)) return line;
  }
  return hole;
}

}  // namespace inchwright
