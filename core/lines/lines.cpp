#include "core/lines/lines.h"

#include <algorithm>
#include <utility>

#include "core/base/listed.h"
#include "core/base/near_word.h"
#include "core/lines/found_line.h"
#include "core/lines/line_words.h"
#include "core/lines/typed_name.h"
#include "core/part/common_axis.h"
#include "core/part/edit.h"
#include "core/part/place_index.h"

namespace inchwright {
namespace {

std::string upper(Axis axis) {
  std::string name(nameOf(axis));
  name[0] = static_cast<char>(name[0] - 'a' + 'A');
  return name;
}

/// The words that a line may begin with.
std::vector<std::string_view> firstWords() {
  std::vector<std::string_view> known{"zero", "stock", "delete", "rename", "found", "locate"};
  for (int i = 0; i < kFeatureKinds; ++i) known.push_back(nameOf(static_cast<FeatureKind>(i)));
  for (int i = 0; i < kReadingKinds; ++i) known.push_back(nameOf(static_cast<ReadingKind>(i)));
  for (int i = 0; i < kUnderstandingKinds; ++i) {
    known.push_back(nameOf(static_cast<UnderstandingKind>(i)));
  }
  // Its line says `in line`.
  std::erase(known, nameOf(UnderstandingKind::inLine));
  return known;
}

/// The one that another word is probably a slip for: `hoel` → `hole`.
std::string_view firstWordMeantBy(std::string_view word) {
  return nearestWord(word, firstWords()).value_or(std::string_view());
}

/// A name of the document as people say it: `in line`, `centre drill`.
std::string spoken(std::string_view name) {
  std::string words(name);
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

/// Everything one line can do, over a copy of the part.
class LineReader {
 public:
  LineReader(const Part& part, const PlaceIndex& index, std::string_view line,
             const LineContext& context)
      : part_(part), index_(index), words_(line), context_(context) {}

  Result<LineOutcome> read() {
    const std::string_view first = words_.peek();
    if (first.empty()) return words_.refuse("the line is empty");
    // An id wins over a word: a hole may be called `x`.
    if (isPlace(first) && isPlace(words_.peek(1))) return readReading({}, {});
    if (const auto kind = featureKindNamed(first)) return readFeature(*kind);
    if (const auto axis = axisNamed(first)) {
      words_.take();
      return readReading({}, axis);
    }
    if (first == "in") return readInLine();
    if (const auto kind = readingWord(first)) return readOther(*kind);
    if (const auto kind = understandingKindNamed(first)) return readUnderstanding(*kind);
    if (first == "zero") return readZero();
    if (first == "stock") return readStock();
    if (first == "delete") return readDelete();
    if (first == "rename") return readRename();
    if (first == "found") return readFound();
    if (first == "locate") return readLocate();
    return readNamedReading();
  }

 private:
  bool isPlace(std::string_view word) const {
    return !word.empty() && index_.find(word).has_value();
  }

  Result<LineOutcome> finish(LineDid did, Id id, std::string said) {
    if (!words_.empty()) {
      return words_.refuse("`" + std::string(words_.peek()) + "` is more than this line needs");
    }
    auto checked = checkPart(part_);
    if (!checked.ok()) return checked.error();
    return LineOutcome{std::move(part_), did, std::move(id), std::move(said)};
  }

  /// `r7 x A B 1 3/16` or `r7 A B 1 3/16`; anything else is no line we know.
  Result<LineOutcome> readNamedReading() {
    const auto axis = axisNamed(words_.peek(1));
    const std::size_t ends = axis ? 2 : 1;
    // `centrse A B 5/8` is a slip, and no reading of that name along an axis.
    const std::string_view meant = firstWordMeantBy(words_.peek());
    if (!meant.empty() || !isPlace(words_.peek(ends)) || !isPlace(words_.peek(ends + 1))) {
      if (isPlace(words_.peek())) {
        return words_.refuse("a reading names two features and then the figure: `L A 3/8`");
      }
      return words_.refuse("there is no feature and no word `" + std::string(words_.peek()) + "`" +
                           (meant.empty() ? "" : "; is `" + std::string(meant) + "` meant?"));
    }
    Id id(words_.take());
    if (axis) words_.take();
    return readReading(std::move(id), axis);
  }

  Result<Reading> ends(ReadingKind kind, Id id) {
    Reading reading;
    reading.kind = kind;
    reading.id = id.empty() ? nextReadingId(part_) : std::move(id);
    for (Id* end : {&reading.from, &reading.to}) {
      if (!isPlace(words_.peek())) {
        return words_.refuse("name the feature the dimension runs " +
                             std::string(end == &reading.from ? "from" : "to"));
      }
      *end = Id(words_.take());
    }
    return reading;
  }

  Result<LineOutcome> readReading(Id id, std::optional<Axis> axis) {
    auto reading = ends(ReadingKind::along, std::move(id));
    if (!reading.ok()) return reading.error();
    const auto shared = axis ? axisBetween(part_, reading->from, reading->to, *axis)
                             : axisOfReading(part_, reading->from, reading->to, context_.axis);
    if (!shared.ok()) return shared.error();
    if (axis && *shared != *axis) {
      return words_.refuse("these two can't be measured along " + upper(*axis));
    }
    reading->axis = *shared;
    return keep(std::move(*reading));
  }

  /// Words that begin a reading which is along no axis.
  static std::optional<ReadingKind> readingWord(std::string_view word) {
    if (word == "centers") return ReadingKind::centres;
    const auto kind = readingKindNamed(word);
    return kind != ReadingKind::along ? kind : std::nullopt;
  }

  /// `centres A C 5/8`, `square_off A V 3/8`, `radius M 3/8`, `angle A C 55 against L clockwise`.
  Result<LineOutcome> readOther(ReadingKind kind) {
    words_.take();
    const Feature* from = part_.feature(words_.peek());
    const bool line = from != nullptr && from->is<kind::Line>();
    const bool single = kind == ReadingKind::radius || kind == ReadingKind::diameter ||
                        kind == ReadingKind::pcd || (kind == ReadingKind::angle && line);
    if (!single) {
      auto reading = ends(kind, {});
      if (!reading.ok()) return reading.error();
      return keep(std::move(*reading));
    }
    if (!isPlace(words_.peek())) return words_.refuse("name the feature whose size this is");
    Reading reading;
    reading.kind = kind;
    reading.id = nextReadingId(part_);
    reading.from = Id(words_.take());
    return keep(std::move(reading));
  }

  /// Behind the figure of an angle: what it is measured against, and which way.
  void takeTurning(Reading& reading) {
    while (!words_.empty()) {
      if (words_.takeIf("against")) {
        reading.against = takePlaces();
      } else if (words_.takeIf("reversed")) {
        reading.reversed = true;
      } else if (const auto sense = senseNamed(words_.peek())) {
        words_.take();
        reading.sense = *sense;
      } else {
        return;
      }
    }
  }

  Result<LineOutcome> keep(Reading reading) {
    const std::size_t at = words_.at();
    const bool turned = reading.kind == ReadingKind::angle;
    const std::string_view text =
        turned ? words_.takeUntil({"against", "reversed", "clockwise", "anticlockwise"})
               : words_.takeRest();
    if (text.empty()) return words_.refuse("give the figure as lettered on the print");
    Error fault;
    if (reading.kind == ReadingKind::angle) {
      auto angle = readAngle(text);
      if (!angle.ok()) return shifted(angle.error(), at);
      reading.figure.text = std::string(text);
      reading.angle = std::move(angle).value();
      takeTurning(reading);
    } else {
      auto figure = readLength(text, {context_.unit});
      if (!figure.ok()) return shifted(figure.error(), at);
      reading.figure = std::move(figure).value();
    }
    const bool along = reading.kind == ReadingKind::along;
    const std::string said =
        reading.id + ": " + reading.from + (reading.to.empty() ? "" : " to " + reading.to) +
        (along ? " along " + upper(reading.axis) : "") + ", " + std::string(text);
    Id id = reading.id;
    part_.readings.push_back(std::move(reading));
    return finish(LineDid::reading, std::move(id), said);
  }

  static Error shifted(Error error, std::size_t by) {
    error.at = by + error.at.value_or(0);
    return error;
  }

  /// A ring has so many figures that which is which is said.
  static std::string piecesOf(const Feature& feature) {
    const auto* ring = feature.as<kind::Ring>();
    if (!ring) return {};
    std::string said = ": " + std::to_string(ring->holes) + " holes";
    if (ring->pitchDiameter) said += " on " + ring->pitchDiameter->text;
    if (ring->firstAngle) {
      const std::string& angle = ring->firstAngle->text;
      const bool bare = angle.find_first_not_of("0123456789 ./") == std::string::npos;
      said += ", the first at " + angle + (bare ? " degrees" : "");
    }
    if (const auto& each = ring->drilled.diameter) said += ", " + each->text + " across";
    return said;
  }

  Result<LineOutcome> readFeature(FeatureKind kind) {
    words_.take();
    const std::size_t at = words_.at();
    const std::string_view tail = words_.takeRest();
    auto feature = readFeatureLine(part_, kind, tail, context_);
    if (!feature.ok()) return shifted(feature.error(), at);
    // Those that are still to come are not forgotten.
    std::string& note = feature->feature.note;
    if (feature->alike > 1 && note.empty()) note = std::string(tail);
    const Id id = feature->feature.id;
    const std::string said = spoken(nameOf(kind)) + " " + id + piecesOf(feature->feature);
    part_.features.push_back(feature->feature);
    auto outcome = finish(LineDid::feature, id, said);
    if (!outcome.ok()) return outcome;
    outcome->question = feature->question;
    outcome->feature = std::move(feature).value();
    return outcome;
  }

  std::vector<Id> takePlaces() {
    std::vector<Id> ids;
    while (isPlace(words_.peek())) ids.emplace_back(words_.take());
    return ids;
  }

  Result<LineOutcome> readInLine() {
    words_.take();
    if (!words_.takeIf("line")) return words_.refuse("say `in line` and then the axis");
    return readRelation(UnderstandingKind::inLine);
  }

  Result<LineOutcome> readUnderstanding(UnderstandingKind kind) {
    words_.take();
    return readRelation(kind);
  }

  /// Whether a kind speaks along an axis where the line names none and says nothing else.
  static bool isAlong(UnderstandingKind kind) {
    return kind == UnderstandingKind::inLine || kind == UnderstandingKind::midway ||
           kind == UnderstandingKind::symmetric || kind == UnderstandingKind::equal;
  }

  /// `in line y A B`, `in line slanted A B C`, `midway both A B C`, `equal radius M W`,
  /// `on A B about V`, `way_round A B C clockwise`, `beside A about V left`, `tangent M W inside`.
  Result<LineOutcome> readRelation(UnderstandingKind kind) {
    Understanding understanding;
    understanding.kind = kind;
    bool free = !isAlong(kind);
    if (!isPlace(words_.peek())) {
      if (const auto axis = axisNamed(words_.peek())) {
        words_.take();
        understanding.axis = axis;
      } else if (kind == UnderstandingKind::equal && equalByNamed(words_.peek())) {
        understanding.by = equalByNamed(words_.take());
        free = true;
      } else {
        free = words_.takeIf("slanted") || words_.takeIf("both") || free;
      }
    }
    understanding.of = takePlaces();
    if (kind == UnderstandingKind::midway && understanding.of.size() == 3) {
      understanding.between.assign(understanding.of.begin() + 1, understanding.of.end());
      understanding.of.resize(1);
    }
    takeRelated(understanding);
    const Feature* about = part_.feature(understanding.about);
    free = free || (about != nullptr && about->is<kind::Line>());
    if (!free && !understanding.axis) understanding.axis = context_.axis;
    const std::string said = spoken(nameOf(kind)) + " " + joined(understanding.of, ", ");
    Id id = understanding.of.empty() ? Id() : understanding.of.front();
    part_.understood.push_back(std::move(understanding));
    return finish(LineDid::understanding, std::move(id), said);
  }

  /// What stands behind the places of an understanding.
  void takeRelated(Understanding& understanding) {
    while (!words_.empty()) {
      if (words_.takeIf("about")) {
        understanding.about = Id(words_.take());
      } else if (words_.takeIf("stated")) {
        understanding.stated = true;
      } else if (const auto sense = senseNamed(words_.peek())) {
        words_.take();
        understanding.sense = *sense;
      } else if (const auto side = faceNamed(words_.peek())) {
        words_.take();
        understanding.side = *side;
      } else if (const auto touch = touchNamed(words_.peek())) {
        words_.take();
        understanding.touch = *touch;
      } else {
        return;
      }
    }
  }

  /// The one that is meant, made where there is none; the same whenever this line asks.
  Setup& setup() {
    if (!setup_) setup_ = std::min(context_.setup, part_.setups.size());
    if (*setup_ == part_.setups.size()) {
      Setup made;
      made.name = std::to_string(part_.setups.size() + 1);
      made.face = context_.face;
      part_.setups.push_back(std::move(made));
    }
    return part_.setups[*setup_];
  }

  Result<LineOutcome> readZero() {
    words_.take();
    const auto axis = axisNamed(words_.peek());
    if (!axis) return words_.refuse("say along which axis: `zero x` or `zero y`");
    words_.take();
    ZeroAlong zero;
    zero.axis = *axis;
    if (words_.takeIf("middle")) {
      zero.middle = takePlaces();
      zero.ofStock = words_.takeIf("stock");
      if (!zero.ofStock) words_.takeIf("finished");
    } else {
      zero.at = Id(words_.take());
    }
    auto& zeros = setup().zero;
    const auto same = [&](const ZeroAlong& z) { return z.axis == *axis; };
    zeros.erase(std::remove_if(zeros.begin(), zeros.end(), same), zeros.end());
    zeros.push_back(std::move(zero));
    std::sort(zeros.begin(), zeros.end(),
              [](const ZeroAlong& a, const ZeroAlong& b) { return a.axis < b.axis; });
    return finish(LineDid::setup, setup().name, upper(*axis) + " zero set");
  }

  /// `locate A mate B of Back plate`, `locate A coordinate`.
  Result<LineOutcome> readLocate() {
    words_.take();
    const Id id(words_.take());
    const auto feature = std::find_if(part_.features.begin(), part_.features.end(),
                                      [&](const Feature& one) { return one.id == id; });
    if (feature == part_.features.end() || !feature->drilled()) {
      return words_.refuse("name the hole, ring or row whose place is found so");
    }
    const auto how = locateNamed(words_.peek());
    if (!how) return words_.refuse("say how: coordinate, mate, pair, assembly or suit");
    words_.take();
    Drilled& drilled = *feature->drilled();
    drilled.locate = *how;
    drilled.mate.reset();
    std::string said = id + ": " + std::string(nameOf(*how));
    if (!words_.empty()) {
      PartPlace mate;
      mate.place = Id(words_.take());
      if (!words_.takeIf("of")) return words_.refuse("name the other part: `B of Back plate`");
      mate.part = std::string(words_.takeRest());
      said += ", " + mate.place + " of " + mate.part;
      drilled.mate = std::move(mate);
    } else if (*how == Locate::mate) {
      return words_.refuse("name what it is spotted through: `B of Back plate`");
    }
    return finish(LineDid::feature, id, said);
  }

  Result<LineOutcome> readStock() {
    words_.take();
    const auto side = faceNamed(words_.peek());
    if (!side) return words_.refuse("name the side: left, right, front, back, bottom or top");
    words_.take();
    const std::size_t at = words_.at();
    auto figure = readLength(words_.takeRest(), {context_.unit});
    if (!figure.ok()) return shifted(figure.error(), at);
    const std::string said = "stock on the " + std::string(nameOf(*side)) + ": " + figure->text;
    setup().stock[static_cast<std::size_t>(*side)] = std::move(figure).value();
    return finish(LineDid::setup, setup().name, said);
  }

  Result<LineOutcome> readDelete() {
    words_.take();
    if (words_.empty()) return words_.refuse("name the feature or the reading to take away");
    const Id id(words_.take());
    if (part_.reading(id) != nullptr) {
      auto next = removeReading(part_, id);
      if (!next.ok()) return next.error();
      part_ = std::move(next).value();
      return finish(LineDid::removed, id, "took away reading " + id);
    }
    auto next = removeFeature(part_, id);
    if (!next.ok()) return next.error();
    part_ = std::move(next->part);
    return finish(LineDid::removed, id, "took away " + id + " and what hung on it");
  }

  Result<LineOutcome> readRename() {
    words_.take();
    const Id from(words_.take());
    if (words_.empty()) return words_.refuse("name the feature and then its new name");
    const Id to(words_.peek());
    if (const std::string fault = nameFault(to); !fault.empty()) return words_.refuse(fault);
    if (part_.reading(to) != nullptr) {
      return words_.refuse("`" + to + "` is the name of a reading: give it another");
    }
    words_.take();
    std::string question = nameQuestion(part_, to, from);
    auto next = renameFeature(part_, from, to);
    if (!next.ok()) return next.error();
    part_ = std::move(next).value();
    auto outcome = finish(LineDid::renamed, to, from + " is now called " + to);
    if (outcome.ok()) outcome->question = std::move(question);
    return outcome;
  }

  Result<LineOutcome> readFound() {
    words_.take();
    const std::size_t at = words_.at();
    const auto found = readFoundLine(part_, words_.takeRest(), context_.unit);
    if (!found) return shifted(found.error(), at);
    std::string places;
    for (const MadePlace& made : *found) {
      part_ = withMade(part_, made);
      places += (places.empty() ? "" : ", ") + made.place;
    }
    return finish(LineDid::found, found->back().place, "found at " + places);
  }

  Part part_;
  const PlaceIndex& index_;
  LineWords words_;
  const LineContext& context_;
  std::optional<std::size_t> setup_;
};

}  // namespace

bool beginsALine(std::string_view word) {
  const std::vector<std::string_view> words = firstWords();
  return std::find(words.begin(), words.end(), word) != words.end();
}

Result<LineOutcome> applyLine(const Part& part, std::string_view line, const LineContext& context) {
  const auto index = PlaceIndex::of(part);
  if (!index.ok()) return index.error();
  return LineReader(part, *index, line, context).read();
}

}  // namespace inchwright
