#include "core/solution/chosen_answer.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "core/place/placing.h"

namespace inchwright {
namespace {

constexpr std::size_t kMostTried = 8;  // places on each hand of a way round
constexpr double kSameTicks = 100;

bool movesWithAnswer(const SeveralAnswers& several, const Id& id) {
  return std::find(several.about.begin(), several.about.end(), id) != several.about.end();
}

// What the readings of the places in question go out from, and what is understood of them, nearest
// first; each once.
std::vector<Id> neighbours(const Part& part, const SeveralAnswers& several) {
  std::vector<Id> out;
  const auto add = [&](const Id& id) {
    if (id.empty() || movesWithAnswer(several, id)) return;
    if (std::find(out.begin(), out.end(), id) == out.end()) out.push_back(id);
  };
  for (const Reading& reading : part.readings) {
    if (movesWithAnswer(several, reading.from)) add(reading.to);
    if (movesWithAnswer(several, reading.to)) add(reading.from);
  }
  for (const Understanding& what : part.understood) {
    const bool speaksOfIt = std::any_of(what.of.begin(), what.of.end(),
                                        [&](const Id& id) { return movesWithAnswer(several, id); });
    if (!speaksOfIt) continue;
    for (const Id& id : what.of) add(id);
    for (const Id& id : what.between) add(id);
    add(what.about);
  }
  for (const Feature& feature : part.features) {
    if (out.size() < kMostTried) add(feature.id);
  }
  return out;
}

// Where a place lies from the outer sides at the lower ends, as answers are told; empty where it is
// not placed.
std::optional<double> fromLowEnd(const Part& part, const Positions& positions, const Id& place,
                                 Axis axis) {
  const Position* at = positions.find(place, axis);
  if (at == nullptr) return std::nullopt;
  for (const Feature& feature : part.features) {
    const auto* edge = feature.as<kind::Edge>();
    if (edge == nullptr || edge->axis != axis || !edge->side || outward(*edge->side) > 0) continue;
    const Position* low = positions.find(feature.id, axis);
    if (low == nullptr || low->group != at->group) continue;
    return at->ticks.toDouble() - low->ticks.toDouble();
  }
  return at->ticks.toDouble();
}

bool leadsTo(Part part, const Understanding& what, const SeveralAnswers& several,
             std::size_t index) {
  part.understood.push_back(what);
  if (!checkPart(part).ok()) return false;
  PlacePartOptions options;
  options.findContradictions = false;
  const auto placed = placeWhole(part, options);
  if (!placed.ok()) return false;
  const auto inDoubt = [&](const SeveralAnswers& one) {
    return one.place == several.place && one.axes == several.axes;
  };
  if (std::any_of(placed->beyond.answers.begin(), placed->beyond.answers.end(), inDoubt)) {
    return false;
  }
  for (const std::size_t which : {0U, 1U}) {
    const auto at = fromLowEnd(part, placed->positions, several.place, several.axes[which]);
    const auto wanted = static_cast<double>(several.answers[index][which].ticks());
    if (!at || std::abs(*at - wanted) > kSameTicks) return false;
  }
  return true;
}

}  // namespace

Result<Understanding> understandingFor(const Part& part, const SeveralAnswers& several,
                                       std::size_t index) {
  const std::vector<Id> near = neighbours(part, several);
  Understanding what;
  what.stated = true;
  what.kind = UnderstandingKind::wayRound;
  for (std::size_t i = 0; i < near.size(); ++i) {
    for (std::size_t j = i + 1; j < near.size(); ++j) {
      what.of = {near[i], near[j], several.place};
      for (const Sense sense : {Sense::anticlockwise, Sense::clockwise}) {
        what.sense = sense;
        if (leadsTo(part, what, several, index)) return what;
      }
    }
  }
  what = {};
  what.stated = true;
  what.kind = UnderstandingKind::beside;
  what.of = {several.place};
  for (const Id& about : near) {
    for (const Side side :
         {Side::left, Side::right, Side::front, Side::back, Side::bottom, Side::top}) {
      what.about = about;
      what.side = side;
      if (leadsTo(part, what, several, index)) return what;
    }
  }
  return Error{ErrorCode::notFound,
               "nothing that can be said in one line tells this answer from the other",
               several.place};
}

}  // namespace inchwright
