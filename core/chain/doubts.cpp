#include "core/chain/doubts.h"

#include <algorithm>
#include <set>
#include <utility>

#include "core/chain/feature_links.h"
#include "core/chain/label.h"
#include "core/measure/writing.h"
#include "core/part/feature_members.h"

namespace inchwright {
namespace {

std::string capital(Axis axis) {
  std::string name(nameOf(axis));
  name[0] = static_cast<char>(name[0] - 'a' + 'A');
  return name;
}

std::string listed(const std::vector<Id>& ids) {
  if (ids.size() < 2) return joined(ids, "");
  const std::vector<Id> front(ids.begin(), ids.end() - 1);
  return joined(front, ", ") + " and " + ids.back();
}

void addUnique(std::vector<Id>& ids, const Id& id) {
  if (!id.empty() && std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
}

// ---- clashes ----

// A figure as a term of a sum: ` + 3/8`, ` − 2 × 7/16`.
std::string termOf(const LoopMember& member, const Lettered& figure, Unit unit, bool first) {
  std::string text = member.step.sign() < 0 ? (first ? "−" : " − ") : (first ? "" : " + ");
  const Rational size = figure.value.rational();
  const auto factor = member.step.over(size);
  if (factor && *factor != Rational(1) && *factor != Rational(-1)) {
    const Rational bare = factor->sign() < 0 ? factor->negated() : *factor;
    text += std::to_string(static_cast<long long>(bare.numerator()));
    if (!bare.isWhole()) text += "/" + std::to_string(static_cast<long long>(bare.denominator()));
    text += " × ";
  }
  return text + spoken(size, unit);
}

std::string sumOf(const Part& part, const Clash& clash, Unit unit) {
  std::string text;
  for (std::size_t i = 0; i + 1 < clash.loop.size(); ++i) {
    const LoopMember& member = clash.loop[i];
    const bool first = text.empty();
    if (const Lettered* figure = figureOf(part, member.source)) {
      text += termOf(member, *figure, unit, first);
    } else if (!member.step.isZero()) {
      text += member.step.sign() < 0 ? (first ? "−" : " − ") : (first ? "" : " + ");
      const Rational size = member.step.sign() < 0 ? member.step.negated() : member.step;
      text += spoken(size, unit) + " (" + member.label + ")";
    }
  }
  return text;
}

// The understandings that a clash rests on, in words.
std::string restingOn(const Clash& clash) {
  std::vector<std::string> labels;
  for (const LoopMember& member : clash.loop) {
    if (member.source.kind == SourceKind::understanding) addUnique(labels, member.label);
  }
  return labels.empty() ? "" : " (with " + joined(labels, "; ") + ")";
}

std::string wayThrough(const Clash& clash) {
  std::vector<Id> names{clash.loop.front().from};
  for (std::size_t i = 0; i + 1 < clash.loop.size(); ++i) {
    const LoopMember& member = clash.loop[i];
    if (names.back() != member.from && !member.from.empty()) names.push_back(member.from);
    const bool step = member.source.kind != SourceKind::feature || !member.step.isZero();
    if (step && !member.to.empty()) names.push_back(member.to);
  }
  return joined(names, "–");
}

std::string textOf(const Part& part, const Clash& clash) {
  const LoopMember& last = clash.loop.back();
  const Lettered* closing = figureOf(part, last.source);
  const Unit unit = closing != nullptr ? closing->unit : Unit::inch;
  const Rational said = last.step.negated();
  const Rational made = said.minus(clash.missesBy).value_or(said);
  const bool isLong = clash.missesBy.sign() > 0;
  const Rational miss = isLong ? clash.missesBy : clash.missesBy.negated();
  std::string text;
  if (clash.loop.size() == 1) {
    text = last.label + " is measured from " + last.from + " to itself";
  } else {
    const std::string sum = sumOf(part, clash, unit);
    const std::string total = spoken(made, unit);
    text = wayThrough(clash) + restingOn(clash);
    if (!sum.empty() && sum != total) text += ": " + sum;
    text += " makes " + total;
    text += ", " + (closing != nullptr ? "the print says " : last.label + " asks for ");
    text += spoken(said, unit);
    if (closing != nullptr && closing->reference) text += " in brackets";
    text += " (" + last.label + "): " + spoken(miss, unit) + (isLong ? " too long" : " too short");
  }
  if (!clash.suspects.empty()) {
    text += "; " + clash.suspects.front().reading + " may be " + clash.suspects.front().wouldBeText;
  }
  return text;
}

Doubt doubtOf(const Part& part, const Clash& clash) {
  Doubt doubt;
  doubt.kind = DoubtKind::clash;
  std::vector<Id> names = clash.readingIds();
  if (names.empty()) {
    for (const LoopMember& member : clash.loop) addUnique(names, member.label);
  }
  std::sort(names.begin(), names.end());
  doubt.key = "clash:" + std::string(nameOf(clash.axis)) + ":" + joined(names, "+");
  doubt.text = textOf(part, clash);
  doubt.about = clash.readingIds();
  for (const LoopMember& member : clash.loop) addUnique(doubt.about, member.from);
  return doubt;
}

// ---- understandings ----

std::string assumedText(const Understanding& what) {
  const std::string along = what.axis ? " along " + capital(*what.axis) : "";
  switch (what.kind) {
    case UnderstandingKind::inLine:
      return listed(what.of) + " are taken to be in line" + along;
    case UnderstandingKind::midway:
      return listed(what.of) + " is taken to be midway between " + listed(what.between) + along;
    case UnderstandingKind::symmetric:
      return listed(what.of) + " are taken to lie alike on both sides of " + what.about + along;
    case UnderstandingKind::equal:
      return "the spaces " + joined(what.of, "–") + " are taken to be equal" + along;
    case UnderstandingKind::concentric:
      return listed(what.of) + " are taken to share one centre";
    case UnderstandingKind::tangent:
    case UnderstandingKind::parallel:
    case UnderstandingKind::square:
    case UnderstandingKind::on:
    case UnderstandingKind::wayRound:
    case UnderstandingKind::beside:
      break;
  }
  return listed(what.of) + " are taken to be " + std::string(nameOf(what.kind));
}

std::vector<Id> aboutOf(const Understanding& what) {
  std::vector<Id> ids;
  for (const Id& id : what.of) addUnique(ids, id);
  for (const Id& id : what.between) addUnique(ids, id);
  addUnique(ids, what.about);
  return ids;
}

void addUnderstandings(const Part& part, std::vector<Doubt>& assumed, std::vector<Doubt>& kept) {
  for (const Understanding& what : part.understood) {
    const std::string kind(nameOf(what.kind));
    const std::vector<Id> about = aboutOf(what);
    const std::string axis = what.axis ? std::string(nameOf(*what.axis)) : "";
    if (!what.stated) {
      assumed.push_back({DoubtKind::assumed,
                         "assumed:" + kind + ":" + axis + ":" + joined(about, "+"),
                         assumedText(what) + "; the print does not say so", about, false});
    }
    if (what.kind == UnderstandingKind::tangent || what.kind == UnderstandingKind::parallel ||
        what.kind == UnderstandingKind::square) {
      kept.push_back(
          {DoubtKind::unplacedKind, "kind:" + kind + ":" + joined(about, "+"),
           listed(about) + ": that they are " + kind + " is kept but does not place anything yet",
           about, false});
    }
  }
}

// ---- readings ----

void addReadings(const Part& part, std::vector<Doubt>& kept, std::vector<Doubt>& questions,
                 std::vector<Doubt>& twice) {
  for (const Reading& reading : part.readings) {
    std::vector<Id> about{reading.id};
    addUnique(about, reading.from);
    addUnique(about, reading.to);
    if (reading.kind == ReadingKind::centres || reading.kind == ReadingKind::angle) {
      kept.push_back(
          {DoubtKind::unplacedKind, "kind:" + reading.id,
           reading.id +
               (reading.kind == ReadingKind::angle ? " is an angle" : " is a centre distance") +
               "; it is kept but does not place anything yet",
           about, false});
    }
    if (!reading.figure.questions.empty()) {
      questions.push_back({DoubtKind::question, "question:" + reading.id,
                           reading.id + ": " + joined(reading.figure.questions, "; "), about,
                           false});
    }
    if (reading.again.empty()) continue;
    bool differs = true;
    if (reading.kind == ReadingKind::angle) {
      const auto again = readAngle(reading.again);
      differs = !again || !reading.angle || again->value != reading.angle->value;
    } else {
      const auto again = readLength(reading.again, {reading.figure.unit});
      differs = !again || again->value != reading.figure.value;
    }
    if (differs) {
      twice.push_back({DoubtKind::readTwice, "readtwice:" + reading.id,
                       reading.id + " was read as " + reading.figure.text + " and then as " +
                           reading.again + "; a third look at the print settles it",
                       about, false});
    }
  }
}

// The size a feature is entered with that a reading of this kind speaks of.
const std::optional<Lettered>& sizeOf(const Feature& feature, ReadingKind kind) {
  const std::optional<Lettered>& radius = radiusOf(feature);
  const std::optional<Lettered>& diameter = diameterOf(feature);
  const auto* ring = feature.as<kind::Ring>();
  if (kind == ReadingKind::pcd && ring) return ring->pitchDiameter;
  if (kind == ReadingKind::radius) return radius ? radius : diameter;
  return diameter ? diameter : radius;
}

// A size that stands at the feature and in a reading must be the same.
void addSizes(const Part& part, std::vector<Doubt>& questions) {
  for (const Reading& reading : part.readings) {
    if (reading.kind != ReadingKind::radius && reading.kind != ReadingKind::diameter &&
        reading.kind != ReadingKind::pcd) {
      continue;
    }
    const Feature* feature = part.feature(reading.from);
    if (feature == nullptr) continue;
    const std::optional<Lettered>& size = sizeOf(*feature, reading.kind);
    if (!size) continue;
    const bool isRadius = &size == &radiusOf(*feature);
    const bool saysRadius = reading.kind == ReadingKind::radius;
    const auto kept = size->value.times(isRadius && !saysRadius ? 2 : 1);
    const auto said = reading.figure.value.times(saysRadius && !isRadius ? 2 : 1);
    if (kept && said && *kept == *said) continue;
    questions.push_back({DoubtKind::question,
                         "question:" + reading.id,
                         reading.id + " says " + reading.figure.text + " for " + feature->id +
                             ", which is entered as " + size->text,
                         {reading.id, feature->id},
                         false});
  }
}

// ---- features ----

// What is asked about the figures of a feature, each once.
struct AskedOfSizes : NoMembers {
  std::vector<std::string> asked;

  void size(std::string_view, const std::optional<Lettered>& figure, SizeSymbol) {
    if (!figure) return;
    for (const std::string& question : figure->questions) addUnique(asked, question);
  }
  void depth(std::string_view, const Depth& depth) { size({}, depth.length, SizeSymbol::none); }
};

void addFeatures(const Part& part, std::vector<Doubt>& kept, std::vector<Doubt>& questions) {
  for (const Feature& feature : part.features) {
    if (feature.is(FeatureKind::line) || feature.is(FeatureKind::arc)) {
      kept.push_back({DoubtKind::unplacedKind,
                      "kind:" + feature.id,
                      feature.id + " is " + (feature.is(FeatureKind::line) ? "a line" : "an arc") +
                          "; it is kept but not placed yet",
                      {feature.id},
                      false});
    }
    AskedOfSizes sizes;
    visitMembers(feature, sizes);
    if (const std::vector<std::string>& asked = sizes.asked; !asked.empty()) {
      questions.push_back({DoubtKind::question,
                           "question:" + feature.id,
                           feature.id + ": " + joined(asked, "; "),
                           {feature.id},
                           false});
    }
  }
}

void append(std::vector<Doubt>& all, std::vector<Doubt> more) {
  std::stable_sort(more.begin(), more.end(),
                   [](const Doubt& a, const Doubt& b) { return a.key < b.key; });
  std::set<std::string> keys;
  for (const Doubt& doubt : all) keys.insert(doubt.key);
  for (Doubt& doubt : more) {
    if (keys.insert(doubt.key).second) all.push_back(std::move(doubt));
  }
}

void addAlone(const Solution& solution, std::vector<Doubt>& all) {
  const std::vector<Id> ids = solution.aloneIds();
  if (ids.empty()) return;
  const std::string text = ids.size() == 1 ? "nothing checks " + ids[0] + "; read it twice"
                                           : "nothing checks " + listed(ids) + "; read them twice";
  all.push_back({DoubtKind::alone, "alone", text, ids, false});
}

}  // namespace

std::string spoken(const Rational& ticks, Unit unit) {
  const auto rounded = nearestTick(ticks);
  if (!rounded) return "more than can be held";
  return writePlain(*rounded, unit) + (unit == Unit::millimetre ? " mm" : "");
}

std::string adviceFor(const Part& part, const Feature& feature, const Id& place, Axis axis,
                      const Id& fixed, const std::vector<Id>& kin) {
  const std::string along = " along " + capital(axis);
  if (const auto* ring = feature.as<kind::Ring>(); ring && place != feature.id) {
    const char* lacking = ring->firstAngle ? "the PCD" : "the angle of the first hole";
    if (!ring->firstAngle || pitchDiameterOf(part, feature) == nullptr) {
      return std::string("give ") + lacking + " of ring " + feature.id;
    }
  }
  const auto* round = feature.as<kind::Round>();
  for (const Id& edge : round ? round->corner : std::vector<Id>()) {
    const Feature* one = part.feature(edge);
    if (one != nullptr && axisOf(*one) == axis && !sideOf(*one)) {
      return "say which side of the part " + edge + " is; the round lies inside it";
    }
  }
  std::string advice;
  if (!kin.empty()) {
    const bool many = kin.size() > kMostNamed;
    std::vector<Id> named(kin.begin(), kin.begin() + std::min(kin.size(), kMostNamed));
    if (many) named.push_back("others");
    advice = "it hangs together with " + listed(named) + "; ";
  }
  if (fixed.empty()) return advice + "give a distance" + along;
  return advice + "give its distance" + along + " from " + fixed +
         ", or say what it is in line with";
}

std::vector<Doubt> doubtsOf(const Part& part, const Solution& solution) {
  std::vector<Doubt> all;
  for (const Clash& clash : solution.clashes) {
    Doubt doubt = doubtOf(part, clash);
    const auto same = [&](const Doubt& one) { return one.key == doubt.key; };
    if (std::none_of(all.begin(), all.end(), same)) all.push_back(std::move(doubt));
  }
  for (const Loose& loose : solution.loose) {
    all.push_back({DoubtKind::loose,
                   "loose:" + loose.id + ":" + std::string(nameOf(loose.axis)),
                   loose.id + ": nothing says where it lies along " + capital(loose.axis) + "; " +
                       loose.advice,
                   {loose.id},
                   false});
  }
  std::vector<Doubt> assumed, kept, questions, twice;
  addUnderstandings(part, assumed, kept);
  addReadings(part, kept, questions, twice);
  addSizes(part, questions);
  addFeatures(part, kept, questions);
  append(all, std::move(assumed));
  append(all, std::move(kept));
  append(all, std::move(questions));
  append(all, std::move(twice));
  addAlone(solution, all);
  for (Doubt& doubt : all) {
    doubt.accepted = std::any_of(part.accepted.begin(), part.accepted.end(),
                                 [&](const AcceptedDoubt& one) { return one.key == doubt.key; });
  }
  return all;
}

}  // namespace inchwright
