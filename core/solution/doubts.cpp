#include "core/solution/doubts.h"

#include <algorithm>
#include <tuple>
#include <utility>

#include "core/measure/writing.h"
#include "core/part/feature_members.h"

namespace inchwright {
namespace {

void addUnique(std::vector<Id>& ids, const Id& id) {
  if (!id.empty() && std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
}

void addText(std::string& about, const std::string& text) {
  if (text.empty()) return;
  if (!about.empty()) about += ", ";
  about += text;
}

std::string lengthText(const Rational& ticks) {
  const auto length = nearestTick(ticks);
  if (!length) return "?";
  return (length->ticks() < 0 ? "-" : "") + writePlain(length->magnitude(), Unit::inch);
}

// ---- loops ----

// Its readings, by id, or where it has none its places; with their figures and the miss.
Doubt doubtOf(const Part& part, const Clash& loop, DoubtTopic topic, std::size_t index) {
  Doubt doubt{{topic, {}, loop.axis}};
  doubt.index = index;
  std::vector<std::pair<Id, std::string>> figures;
  for (const LoopMember& member : loop.loop) {
    addUnique(doubt.nearby, member.from);
    if (member.source.kind != SourceKind::reading) continue;
    const Reading& reading = part.readings[member.source.index];
    figures.push_back({reading.id, reading.figure.text});
  }
  std::sort(figures.begin(), figures.end());
  for (const auto& [id, text] : figures) {
    addUnique(doubt.key.readings, id);
    addText(doubt.about, id + " " + text);
  }
  if (figures.empty()) doubt.key.places = doubt.nearby;
  addText(doubt.about, "misses by " + lengthText(loop.missesBy));
  return doubt;
}

void addLoops(const Part& part, const Solution& solution, std::vector<Doubt>& doubts) {
  for (std::size_t i = 0; i < solution.clashes.size(); ++i) {
    doubts.push_back(doubtOf(part, solution.clashes[i], DoubtTopic::clash, i));
  }
  for (std::size_t i = 0; i < solution.roundings.size(); ++i) {
    const Rounding& one = solution.roundings[i];
    const auto topic = one.fractions.empty() ? DoubtTopic::misfit : DoubtTopic::rounded;
    doubts.push_back(doubtOf(part, one.loop, topic, i));
  }
}

// ---- understandings ----

std::vector<Id> placesIn(const Understanding& what) {
  std::vector<Id> ids = what.of;  // all different
  for (const Id& id : what.between) addUnique(ids, id);
  addUnique(ids, what.about);
  return ids;
}

void addUnderstandings(const Part& part, std::vector<Doubt>& doubts) {
  for (std::uint32_t i = 0; i < part.understood.size(); ++i) {
    const Understanding& what = part.understood[i];
    if (what.stated) continue;
    Doubt doubt{{DoubtTopic::assumed, what.kind, what.axis, {}, placesIn(what)}};
    doubt.source = Source{SourceKind::understanding, i};
    doubts.push_back(std::move(doubt));
  }
}

// ---- readings ----

bool isReadOtherwise(const Reading& reading) {
  if (reading.again.empty()) return false;
  if (reading.kind == ReadingKind::angle) {
    const auto again = readAngle(reading.again);
    return !again || !reading.angle || again->value != reading.angle->value;
  }
  const auto again = readLength(reading.again, {reading.figure.unit});
  return !again || again->value != reading.figure.value;
}

// The size a feature is entered with that a reading of this kind speaks of.
const std::optional<Lettered>& sizeOf(const Feature& feature, ReadingKind kind) {
  const std::optional<Lettered>& radius = radiusOf(feature);
  const std::optional<Lettered>& diameter = diameterOf(feature);
  const auto* ring = feature.as<kind::Ring>();
  if (const auto* slot = feature.as<kind::Slot>()) return slot->width;
  if (kind == ReadingKind::pcd && ring) return ring->pitchDiameter;
  if (kind == ReadingKind::radius) return radius ? radius : diameter;
  return diameter ? diameter : radius;
}

// A size that stands at the feature and in a reading must be the same.
bool isOtherSize(const Reading& reading, const Feature& feature, const Lettered& size) {
  const bool isRadius = radiusOf(feature) && &size == &*radiusOf(feature);
  const bool saysRadius = reading.kind == ReadingKind::radius;
  const auto kept = size.value.times(isRadius && !saysRadius ? 2 : 1);
  const auto said = reading.figure.value.times(saysRadius && !isRadius ? 2 : 1);
  return !kept || !said || *kept != *said;
}

// What is asked about a figure. A diameter or radius is hardly ever lettered as a product.
std::vector<std::string> askedOf(const Lettered& figure, bool isAcross) {
  std::vector<std::string> asked = figure.questions;
  if (isAcross && figure.multiplied) addUnique(asked, kPlacesOrProduct);
  return asked;
}

void addReading(const Part& part, std::uint32_t number, bool isUnused, std::vector<Doubt>& doubts) {
  const Reading& reading = part.readings[number];
  const auto add = [&](DoubtTopic topic, std::string about) -> Doubt& {
    doubts.push_back({{topic, {}, {}, {reading.id}}, std::move(about)});
    doubts.back().source = Source{SourceKind::reading, number};
    for (const Id& end : {reading.from, reading.to}) addUnique(doubts.back().nearby, end);
    return doubts.back();
  };
  const bool isSize = reading.kind == ReadingKind::radius ||
                      reading.kind == ReadingKind::diameter || reading.kind == ReadingKind::pcd;
  if (!isSize && reading.kind != ReadingKind::along && isUnused) {
    add(DoubtTopic::notPlaced, reading.figure.text);
  }
  if (auto asked = askedOf(reading.figure, isSize); !asked.empty()) {
    add(DoubtTopic::question, reading.figure.text).questions = std::move(asked);
  }
  if (isReadOtherwise(reading)) {
    add(DoubtTopic::readTwice, reading.figure.text + ", " + reading.again);
  }
  const Feature* feature = isSize ? part.feature(reading.from) : nullptr;
  if (feature == nullptr) return;
  const std::optional<Lettered>& size = sizeOf(*feature, reading.kind);
  if (!size || !isOtherSize(reading, *feature, *size)) return;
  Doubt& doubt = add(DoubtTopic::size, reading.figure.text + ", " + size->text);
  doubt.key.places = {feature->id};
  doubt.entered = size->text;
  doubt.saysRadius = reading.kind == ReadingKind::radius && &size != &radiusOf(*feature);
}

// ---- features ----

// What is asked about the figures of a feature, each once, and those figures.
struct AskedOfSizes : NoMembers {
  std::vector<std::string> asked;
  std::string about;

  // A symbol is refused at diameters and radii alone.
  void size(std::string_view, const std::optional<Lettered>& figure, SizeSymbol refused) {
    if (!figure) return;
    const std::vector<std::string> all = askedOf(*figure, refused != SizeSymbol::none);
    if (all.empty()) return;
    for (const std::string& question : all) addUnique(asked, question);
    addText(about, figure->text);
  }
  void depth(std::string_view, const Depth& depth) { size({}, depth.length, SizeSymbol::none); }
};

// The figures of a ring or row that came from clicks on the print: nothing is measured from it.
std::string figuresByTrace(const Feature& feature) {
  std::string figures;
  const auto add = [&](const std::vector<std::string>& given, std::string_view member,
                       const std::string& text) {
    if (std::find(given.begin(), given.end(), member) != given.end()) addText(figures, text);
  };
  if (const auto* ring = feature.as<kind::Ring>()) {
    if (ring->pitchDiameter) add(ring->byTrace, "pcd", ring->pitchDiameter->text);
    if (ring->firstAngle) add(ring->byTrace, "first_angle", ring->firstAngle->text + "°");
  }
  if (const auto* row = feature.as<kind::Row>()) {
    if (row->pitch) add(row->byTrace, "pitch", row->pitch->text);
  }
  return figures;
}

void addFeature(const Part& part, std::uint32_t number, std::vector<Doubt>& doubts) {
  const Feature& feature = part.features[number];
  const auto add = [&](DoubtTopic topic, std::string about) -> Doubt& {
    doubts.push_back({{topic, {}, {}, {}, {feature.id}}, std::move(about)});
    doubts.back().source = Source{SourceKind::feature, number};
    return doubts.back();
  };
  if (const std::string traced = figuresByTrace(feature); !traced.empty()) {
    add(DoubtTopic::assumed, traced);
  }
  AskedOfSizes sizes;
  visitMembers(feature, sizes);
  if (sizes.asked.empty()) return;
  add(DoubtTopic::question, sizes.about).questions = std::move(sizes.asked);
}

// Accepted is what was looked at: where its figures are told and are others now, it stands again.
void tellAccepted(const Part& part, std::vector<Doubt>& doubts) {
  if (part.accepted.empty()) return;
  for (Doubt& doubt : doubts) {
    const std::string key = doubt.key.text();
    for (const AcceptedDoubt& one : part.accepted) {
      if (!one.covers(key, doubt.about)) continue;
      doubt.accepted = true;
      doubt.reason = one.reason;
    }
  }
}

}  // namespace

std::vector<Doubt> doubtsOf(const Part& part, const std::array<AxisSystem, 3>& systems,
                            const Solution& solution) {
  std::vector<Doubt> all;
  addLoops(part, solution, all);
  addOrderDoubts(part, systems, solution, all);
  addTracedDoubts(part, systems, solution, all);
  addSizeDoubts(part, solution, all);
  addMisspelt(part, all);
  addPlacingDoubts(part, solution.beyond, all);
  for (std::size_t i = 0; i < solution.loose.size(); ++i) {
    const Loose& loose = solution.loose[i];
    all.push_back({{DoubtTopic::loose, {}, loose.axis, {}, {loose.id}}});
    all.back().index = i;
  }
  addUnderstandings(part, all);
  for (std::uint32_t i = 0; i < part.readings.size(); ++i) {
    addReading(part, i, solution.status[i] == ReadingStatus::unused, all);
  }
  for (std::uint32_t i = 0; i < part.features.size(); ++i) addFeature(part, i, all);
  if (std::vector<Id> alone = solution.aloneIds(part); !alone.empty()) {
    all.push_back({{DoubtTopic::alone, {}, {}, std::move(alone)}});
  }
  // Loops stay in their own order, shortest first.
  std::stable_sort(all.begin(), all.end(), [](const Doubt& a, const Doubt& b) {
    const bool isLoop = a.key.topic == DoubtTopic::clash;
    if (a.key.topic != b.key.topic || isLoop) return a.key.topic < b.key.topic;
    return std::tie(a.key.kind, a.key.places, a.key.axis, a.key.readings, a.key.setup) <
           std::tie(b.key.kind, b.key.places, b.key.axis, b.key.readings, b.key.setup);
  });
  tellAccepted(part, all);
  return all;
}

}  // namespace inchwright
