#include <algorithm>
#include <cmath>
#include <string>

#include "core/measure/writing.h"
#include "core/solution/doubts.h"

namespace inchwright {
namespace {

// Ten-thousandths of an inch, as what was looked at is kept in documents.
std::string toTenths(double inches) {
  const auto ticks = std::llround(inches * static_cast<double>(Length::kTicksPerInch));
  return showAtStep(Rational(ticks), Step{Length::ticks(254'000), Unit::inch}).text;
}

std::string figuresOf(const SeveralAnswers& several) {
  std::string text;
  for (const auto& [first, second] : several.answers) {
    if (!text.empty()) text += " or ";
    text += toTenths(first.toInches()) + ", " + toTenths(second.toInches());
  }
  if (several.mayHaveMore) text += " or more";
  if (!several.isTaken) text += ", none taken";
  return text;
}

// What holds in the plane only: along an axis the chains see to it, and a side or a way round only
// chooses.
bool isOfPlane(const Understanding& what) {
  switch (what.kind) {
    case UnderstandingKind::tangent:
    case UnderstandingKind::parallel:
    case UnderstandingKind::square:
    case UnderstandingKind::on:
      return true;
    case UnderstandingKind::inLine:
    case UnderstandingKind::symmetric:
    case UnderstandingKind::equal:
      return !what.axis;
    default:
      return false;
  }
}

// Lines, and what is understood in the plane, that came to nothing: no figure shows it.
void addNotPlaced(const Part& part, const BeyondChains& beyond, std::vector<Doubt>& doubts) {
  // A line that can run in several ways is asked about as such.
  const auto isInDoubt = [&](const Id& id) {
    return std::any_of(beyond.answers.begin(), beyond.answers.end(),
                       [&](const SeveralAnswers& one) { return one.isLine && one.place == id; });
  };
  for (std::uint32_t i = 0; i < part.features.size(); ++i) {
    const Feature& feature = part.features[i];
    const auto isPlaced = [&](const auto& lines) { return lines.contains(feature.id); };
    if (!feature.is<kind::Line>() || isInDoubt(feature.id) ||
        std::any_of(beyond.lines.begin(), beyond.lines.end(), isPlaced)) {
      continue;
    }
    doubts.push_back({{DoubtTopic::notPlaced, {}, {}, {}, {feature.id}}});
    doubts.back().source = Source{SourceKind::feature, i};
  }
  for (std::uint32_t i = 0; i < part.understood.size(); ++i) {
    const Understanding& what = part.understood[i];
    if (!isOfPlane(what) || beyond.understood.contains(i)) continue;
    std::vector<Id> places = what.of;
    if (!what.about.empty()) places.push_back(what.about);
    if (std::any_of(places.begin(), places.end(), isInDoubt)) continue;
    doubts.push_back({{DoubtTopic::notPlaced, what.kind, {}, {}, std::move(places)}});
    doubts.back().source = Source{SourceKind::understanding, i};
  }
}

}  // namespace

void addPlacingDoubts(const Part& part, const BeyondChains& beyond, std::vector<Doubt>& doubts) {
  const auto add = [&](PlacingDoubt placing, std::size_t index) -> Doubt& {
    doubts.push_back({{DoubtTopic::question}});
    doubts.back().placing = placing;
    doubts.back().index = index;
    return doubts.back();
  };
  for (std::size_t i = 0; i < beyond.clashes.size(); ++i) {
    const CentresClash& clash = beyond.clashes[i];
    Doubt& doubt = add(PlacingDoubt::clashes, i);
    for (const std::uint32_t member : clash.members) {
      doubt.key.readings.push_back(part.readings[member].id);
    }
    std::sort(doubt.key.readings.begin(), doubt.key.readings.end());
    // Of understandings alone it is told by their places.
    for (std::size_t k = 0; clash.members.empty() && k < clash.understood.size(); ++k) {
      const std::vector<Id>& of = part.understood[clash.understood[k]].of;
      doubt.key.places.insert(doubt.key.places.end(), of.begin(), of.end());
    }
    for (const Id& id : doubt.key.readings) {
      doubt.about += id + " " + part.reading(id)->figure.text + ", ";
    }
    doubt.about += "misses by " + toTenths(clash.missesBy);
  }
  for (std::size_t i = 0; i < beyond.answers.size(); ++i) {
    const SeveralAnswers& several = beyond.answers[i];
    Doubt& doubt = add(PlacingDoubt::answers, i);
    doubt.key.places = {several.place};
    doubt.about = figuresOf(several);
  }
  for (std::size_t i = 0; i < beyond.weak.size(); ++i) {
    const WeakPlace& weak = beyond.weak[i];
    Doubt& doubt = add(PlacingDoubt::weak, i);
    doubt.key.readings = {part.readings[weak.reading].id};
    doubt.key.places = {weak.place};
    doubt.about = toTenths(weak.factor);
  }
  addNotPlaced(part, beyond, doubts);
}

}  // namespace inchwright
