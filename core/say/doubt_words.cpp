#include "core/say/doubt_words.h"

#include <algorithm>

#include "core/base/listed.h"
#include "core/measure/writing.h"
#include "core/say/placing_words.h"
#include "core/say/reading_words.h"

namespace inchwright {
namespace {

std::string capital(Axis axis) {
  std::string name(nameOf(axis));
  name[0] = static_cast<char>(name[0] - 'a' + 'A');
  return name;
}

// ---- loops ----

std::string signBefore(const Rational& step, bool first) {
  return step.sign() < 0 ? (first ? "−" : " − ") : (first ? "" : " + ");
}

// A figure as a term of a sum: ` + 3/8`, ` − 2 × 7/16`.
std::string termOf(const LoopMember& member, const Lettered& figure, Unit unit, bool first) {
  std::string text = signBefore(member.step, first);
  const Rational size = figure.value.rational();
  const auto factor = member.step.over(size);
  if (factor && factor->magnitude() != Rational(1)) {
    const Rational bare = factor->magnitude();
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
      text += signBefore(member.step, first) + spoken(member.step.magnitude(), unit) + " (" +
              sourceWords(part, member.source) + ")";
    }
  }
  return text;
}

// The understandings that a loop rests on, in words.
std::string restingOn(const Part& part, const Clash& clash) {
  std::vector<std::string> labels;
  for (const LoopMember& member : clash.loop) {
    if (member.source.kind != SourceKind::understanding) continue;
    const std::string label = sourceWords(part, member.source);
    if (std::find(labels.begin(), labels.end(), label) == labels.end()) labels.push_back(label);
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

std::string loopText(const Part& part, const Clash& clash) {
  const LoopMember& last = clash.loop.back();
  const Lettered* closing = figureOf(part, last.source);
  if (clash.loop.size() == 1) {
    return (closing != nullptr ? closing->text : sourceWords(part, last.source)) +
           " is measured from " + last.from + " to itself";
  }
  const Unit unit = closing != nullptr ? closing->unit : Unit::inch;
  const Rational said = last.step.negated();
  const Rational made = said.minus(clash.missesBy).value_or(said);
  const std::string sum = sumOf(part, clash, unit);
  const std::string total = spoken(made, unit);
  std::string text = wayThrough(clash) + restingOn(part, clash);
  if (!sum.empty() && sum != total) text += ": " + sum;
  text += " makes " + total;
  text += ", ";
  text += closing != nullptr ? "the print says " : sourceWords(part, last.source) + " asks for ";
  text += spoken(said, unit);
  if (closing != nullptr && closing->reference) text += " in brackets";
  if (last.source.kind == SourceKind::reading) {
    text += " from " + endsWords(part, part.readings[last.source.index]);
  }
  return text + ": " + spoken(clash.missesBy.magnitude(), unit) +
         (clash.missesBy.sign() > 0 ? " too long" : " too short");
}

std::string clashText(const Part& part, const Clash& clash, const std::vector<Suspect>& suspects) {
  std::string text = loopText(part, clash);
  if (suspects.empty()) return text;
  const Suspect& first = suspects.front();
  const bool turned = first.reason.look == Likeness::endsSwapped;
  return text + "; " + readingWords(part, first.reading) + (turned ? " may run " : " may be ") +
         wouldBeText(part, first);
}

std::string roundedText(const Part& part, const Rounding& rounding) {
  if (rounding.fractions.empty()) {
    return loopText(part, rounding.loop) + ", which is what rounding can take; no fractions fit";
  }
  std::vector<std::string> meant;
  for (const MeantFraction& one : rounding.fractions) {
    meant.push_back(readingWords(part, one.reading) + " is " + writeFraction(one.meant));
  }
  return loopText(part, rounding.loop) + ": rounded, each is a fraction; it closes when " +
         listed(meant);
}

// ---- understandings ----

std::string isOrAre(const Understanding& what) {
  return what.of.size() == 1 ? " is " : " are ";
}

std::string senseText(const Understanding& what) {
  return what.sense == Sense::clockwise ? "clockwise" : "anticlockwise";
}

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
      return listed(what.of) + " are taken to touch";
    case UnderstandingKind::parallel:
      return listed(what.of) + " are taken to be parallel";
    case UnderstandingKind::square:
      return listed(what.of) + " are taken to be square to each other";
    case UnderstandingKind::on:
      return listed(what.of) + isOrAre(what) + "taken to lie on " + what.about;
    case UnderstandingKind::wayRound:
      return listed(what.of) + " are taken to go round " + senseText(what);
    case UnderstandingKind::beside:
      break;
  }
  return listed(what.of) + isOrAre(what) + "taken to lie beside " + what.about +
         (what.side ? ", on its " + std::string(nameOf(*what.side)) + " side" : std::string());
}

std::string wrongWayText(const Understanding& what, bool isTraced) {
  const std::string found = isTraced ? "the tracing" : "the readings";
  if (what.kind == UnderstandingKind::beside) {
    return listed(what.of) + isOrAre(what) + "said to lie beside " + what.about + ", on its " +
           std::string(nameOf(*what.side)) + " side, and " + found +
           (isTraced ? " puts " : " put ") + (what.of.size() == 1 ? "it" : "them") +
           " on the other";
  }
  return listed(what.of) + " are said to go round " + senseText(what) + ", and " + found +
         (isTraced ? " has" : " have") + " them the other way round";
}

// ---- readings and features ----

std::string notPlacedText(const Part& part, const Doubt& doubt) {
  const Source& source = *doubt.source;
  switch (source.kind) {
    case SourceKind::understanding:
      return listed(doubt.key.places) + ": that they are " +
             kindWords(part.understood[source.index].kind) +
             " is kept but does not place anything yet";
    case SourceKind::reading:
      return readingWords(part, part.readings[source.index]) +
             (part.readings[source.index].kind == ReadingKind::angle ? " is an angle"
              : part.readings[source.index].kind == ReadingKind::centres
                  ? " is a centre distance"
                  : " is a distance square off") +
             "; it is kept but does not place anything yet";
    case SourceKind::feature:
      break;
  }
  return part.features[source.index].id +
         " is a line that nothing places: give two places on it, or one and its angle";
}

std::string sizeText(const Part& part, const Doubt& doubt) {
  const Reading& reading = part.readings[doubt.source->index];
  return "the print says " + std::string(doubt.saysRadius ? "a radius of " : "") +
         reading.figure.text + " for " + reading.from + ", which is entered as " + doubt.entered +
         (doubt.saysRadius ? " across" : "");
}

std::string readTwiceText(const Part& part, const Doubt& doubt) {
  const Reading& reading = part.readings[doubt.source->index];
  return endsWords(part, reading) + " was read as " + reading.figure.text + " and then as " +
         reading.again + "; a third look at the print settles it";
}

std::string metricText(const Part& part, const Doubt& doubt) {
  const std::string who = doubt.source->kind == SourceKind::reading
                              ? endsWords(part, part.readings[doubt.source->index])
                              : doubt.key.places.front();
  return who + " says " + doubt.about + " on a print in inches; is it in millimetres?";
}

std::string tracedText(const Part& part, const Doubt& doubt) {
  if (doubt.source->kind == SourceKind::feature) {
    const Feature& feature = part.features[doubt.source->index];
    const bool isArc = feature.is<kind::Arc>();
    const std::string sign = isArc ? "R" : "Ø";
    const Lettered& figure = isArc ? *radiusOf(feature) : *diameterOf(feature);
    return feature.id + " is lettered " + (figure.symbol == SizeSymbol::none ? sign : "") +
           figure.text + " and is traced at about " + sign + writeFraction(*doubt.drawn) +
           ": look again";
  }
  const Reading& reading = part.readings[doubt.source->index];
  if (doubt.key.topic == DoubtTopic::swappedEnds) {
    return reading.figure.text + " runs from " + reading.from + " to " + reading.to +
           ", and the tracing has " + reading.to + " on the other hand of " + reading.from +
           "; nothing else checks it: swap its ends?";
  }
  return endsWords(part, reading) + " says " + reading.figure.text + " and is traced at about " +
         (doubt.drawn ? writeFraction(*doubt.drawn) : std::to_string(*doubt.drawnDegrees) + "°") +
         "; nothing else checks it";
}

std::string oddityText(const SizeOddity& odd) {
  switch (odd.what) {
    case SizeOddity::What::seatNotWider:
      return "its seat of " + odd.figure + " is no wider than its hole of " + odd.other;
    case SizeOddity::What::seatNotSaid:
      return "nothing says how wide its seat is";
    case SizeOddity::What::sizeNotSaid:
      return "nothing says how large it is";
    case SizeOddity::What::limitsUnknown:
      return "the limits " + odd.figure + " are in no table here: they are kept and do nothing";
    case SizeOddity::What::shaftLimits:
      return odd.figure + " is the class of a shaft, and this is a hole: is " +
             std::string(1, static_cast<char>(odd.figure[0] - 'a' + 'A')) + odd.figure.substr(1) +
             " meant?";
    case SizeOddity::What::seatTooDeep:
      return "its seat is " + odd.figure + " deep, and the whole hole only " + odd.other;
    case SizeOddity::What::threadNotSaid:
      return "it is tapped, and no thread is named";
    case SizeOddity::What::notTapped:
      return "it has a thread, " + odd.figure + ", and is not tapped";
    case SizeOddity::What::offThread:
      return odd.figure + " is neither the outside of its thread, " + odd.other +
             ", nor what is drilled for it";
    case SizeOddity::What::offLimits:
      return odd.figure + " lies well outside of its limits, " + odd.other;
    case SizeOddity::What::deeperThanPart:
      return "it is " + odd.figure + " deep, and the part " + odd.other + " thick: is it through?";
    case SizeOddity::What::pastFullTurn:
      return odd.figure + "° is a full turn or more";
    case SizeOddity::What::oneHole:
      return "it has one hole: how many does the print show?";
    case SizeOddity::What::generalOrder:
      return "three places are allowed " + odd.figure + " and two places only " + odd.other +
             ": are they changed over?";
    case SizeOddity::What::generalOdd:
      break;
  }
  return odd.figure + " is an odd tolerance: is it read right?";
}

std::string subjectOf(const Part& part, const Doubt& doubt) {
  const DoubtKey& key = doubt.key;
  if (!key.setup.empty()) return "setup " + key.setup;
  if (!key.readings.empty()) return readingWords(part, key.readings.front());
  if (!key.places.empty()) return listed(key.places);
  return doubt.key.topic == DoubtTopic::oddSizes ? "the title block" : "the part";
}

std::string oddSizesText(const Part& part, const Doubt& doubt) {
  std::vector<std::string> texts;
  for (const SizeOddity& one : doubt.sizes) texts.push_back(oddityText(one));
  return subjectOf(part, doubt) + ": " + joined(texts, "; ");
}

std::string misspeltDoubtText(const Part& part, const Doubt& doubt) {
  std::vector<std::string> texts;
  for (const Misspelt& one : doubt.misspelt) texts.push_back(misspeltText(one));
  return subjectOf(part, doubt) + ": " + joined(texts, "; ");
}

// ---- order and place ----

// What comes of a sine has a dozen figures that nobody asks for: shown to a ten-thousandth.
std::string amountText(Length amount) {
  constexpr std::int64_t kTenthOfAThou = Length::kTicksPerInch / 10'000;
  const std::string plain = writePlain(amount, Unit::inch);
  if (plain.find('.') == std::string::npos || amount.ticks() < kTenthOfAThou) return plain;
  const std::int64_t tenths = (amount.ticks() + kTenthOfAThou / 2) / kTenthOfAThou;
  return writeDecimal(Length::ticks(tenths * kTenthOfAThou), Unit::inch);
}

std::string orderText(const Doubt& doubt) {
  const std::vector<Id>& places = doubt.key.places;
  const std::string along = doubt.key.axis ? " along " + capital(*doubt.key.axis) : "";
  const std::string by = doubt.by ? amountText(*doubt.by) : "";
  switch (doubt.key.topic) {
    case DoubtTopic::crossedSides:
      return "the sides " + places.front() + " and " + places.back() + " lie the wrong way round" +
             along + (by.empty() ? "" : ", by " + by);
    case DoubtTopic::sameSide:
      return listed(places) + " all say that they are one outer side" + along;
    case DoubtTopic::outside:
      return places.front() + " lies outside the part: " + by + " beyond " + places.back() + along;
    case DoubtTopic::breaksEdge:
      return places.size() < 2
                 ? places.front() + " is larger than the part" + along + ", by " + by
                 : places.front() + " runs over the edge " + places.back() + " by " + by;
    case DoubtTopic::holesMeet:
      return listed(places) + " run into each other by " + by;
    default:
      break;
  }
  return places.front() + " is on a face that no setup has up: it is on no sheet";
}

std::string textOf(const Part& part, const Solution& solution, const Doubt& doubt) {
  switch (doubt.key.topic) {
    case DoubtTopic::clash:
      return clashText(part, solution.clashes[doubt.index], solution.suspects[doubt.index]);
    case DoubtTopic::rounded:
    case DoubtTopic::misfit:
      return roundedText(part, solution.roundings[doubt.index]);
    case DoubtTopic::crossedSides:
    case DoubtTopic::sameSide:
    case DoubtTopic::outside:
    case DoubtTopic::breaksEdge:
    case DoubtTopic::holesMeet:
    case DoubtTopic::noSetup:
      return orderText(doubt);
    case DoubtTopic::swappedEnds:
    case DoubtTopic::offTrace:
      if (doubt.source->kind == SourceKind::understanding) {
        return wrongWayText(part.understood[doubt.source->index], true);
      }
      return tracedText(part, doubt);
    case DoubtTopic::wrongWay:
      return wrongWayText(part.understood[doubt.source->index], false);
    case DoubtTopic::oddSizes:
      return oddSizesText(part, doubt);
    case DoubtTopic::misspelt:
      return misspeltDoubtText(part, doubt);
    case DoubtTopic::millimetres:
      return metricText(part, doubt);
    case DoubtTopic::loose: {
      const Loose& loose = solution.loose[doubt.index];
      return loose.id + ": nothing says where it lies along " + capital(loose.axis) + "; " +
             adviceText(loose);
    }
    case DoubtTopic::assumed:
      if (doubt.source->kind == SourceKind::feature) {
        return doubt.about + " of " + part.features[doubt.source->index].id +
               " came from where it was traced; read it off the print";
      }
      return assumedText(part.understood[doubt.source->index]) + "; the print does not say so";
    case DoubtTopic::notPlaced:
      return notPlacedText(part, doubt);
    case DoubtTopic::question:
      if (doubt.placing != PlacingDoubt::none) return placingText(part, solution, doubt);
      if (!doubt.source) return joined(doubt.questions, "; ");
      return (doubt.source->kind == SourceKind::reading
                  ? readingWords(part, part.readings[doubt.source->index])
                  : doubt.pointsAt().front()) +
             ": " + joined(doubt.questions, "; ");
    case DoubtTopic::size:
      return sizeText(part, doubt);
    case DoubtTopic::readTwice:
      return readTwiceText(part, doubt);
    case DoubtTopic::alone:
      break;
  }
  return "nothing checks " + readingsWords(part, doubt.key.readings) +
         (doubt.key.readings.size() == 1 ? "; read it twice" : "; read them twice");
}

}  // namespace

std::string reworded(const Part& part, const std::string& text, English english) {
  if (english == English::uk) return text;
  return inEnglish(text, english,
                   [&](std::string_view word) { return part.feature(word) != nullptr; });
}

std::string spoken(const Rational& ticks, Unit unit) {
  const auto rounded = nearestTick(ticks);
  if (!rounded) return "more than can be held";
  return writePlain(*rounded, unit) + (unit == Unit::millimetre ? " mm" : "");
}

std::string adviceText(const Loose& loose) {
  std::string text;
  const std::string along = " along " + capital(loose.axis);
  switch (loose.lacks) {
    case Loose::Lacks::pitchDiameter:
      text = "give the PCD of ring " + loose.of;
      break;
    case Loose::Lacks::firstAngle:
      text = "give the angle of the first hole of ring " + loose.of;
      break;
    case Loose::Lacks::anything:
      text = "nothing on the print places it";
      break;
    case Loose::Lacks::side:
      text = "say which side of the part " + loose.of + " is; the round lies inside it";
      break;
    case Loose::Lacks::distance:
      if (loose.free) text = freeText(*loose.free) + "; ";
      if (!loose.free && !loose.kin.empty()) {
        std::vector<Id> named = loose.kin;
        if (loose.moreKin) named.push_back("others");
        text = "it hangs together with " + listed(named) + "; ";
      }
      text += loose.fixed.empty() ? "give a distance" + along
                                  : "give its distance" + along + " from " + loose.fixed +
                                        ", or say what it is in line with";
  }
  return text;
}

std::string misspeltText(const Misspelt& misspelt) {
  return (misspelt.object.empty() ? "" : misspelt.object + ": ") + "the document's " +
         misspelt.name + " is not known here and does nothing; is " + misspelt.meant + " meant?";
}

std::string doubtText(const Part& part, const Solution& solution, const Doubt& doubt,
                      English english) {
  return reworded(part, textOf(part, solution, doubt), english);
}

std::vector<std::string> doubtTexts(const Part& part, const Solution& solution, English english) {
  std::vector<std::string> texts;
  texts.reserve(solution.doubts.size());
  for (const Doubt& doubt : solution.doubts) {
    texts.push_back(doubtText(part, solution, doubt, english));
  }
  return texts;
}

}  // namespace inchwright
