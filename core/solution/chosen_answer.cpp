#include "core/solution/chosen_answer.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include "core/geometry/path.h"
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

// Where the outer side at the lower end lies, in ticks; 0 where none is placed.
double lowEnd(const Part& part, const Positions& positions, Axis axis) {
  for (const Feature& feature : part.features) {
    const auto* edge = feature.as<kind::Edge>();
    if (edge == nullptr || edge->axis != axis || !edge->side || outward(*edge->side) > 0) continue;
    const Position* low = positions.find(feature.id, axis);
    if (low != nullptr && low->group == 0) return low->ticks.toDouble();
  }
  return 0;
}

// Where a place lies from there, as answers are told; empty where it is not placed.
std::optional<double> fromLowEnd(const Part& part, const Positions& positions, const Id& place,
                                 Axis axis) {
  const Position* at = positions.find(place, axis);
  if (at == nullptr || at->group != 0) return std::nullopt;
  return at->ticks.toDouble() - lowEnd(part, positions, axis);
}

// Whether a line is placed, and past a point that is told from the lower ends.
bool runsThrough(const Part& part, const WholePlaced& placed, const SeveralAnswers& several,
                 const std::array<Length, 2>& point) {
  const auto plane = std::find(kPlanes.begin(), kPlanes.end(), several.axes) - kPlanes.begin();
  const auto& lines = placed.beyond.lines[static_cast<std::size_t>(plane)];
  const auto line = lines.find(several.place);
  if (line == lines.end()) return false;
  PlanePoint at{};
  for (const std::size_t which : {0U, 1U}) {
    const double ticks = static_cast<double>(point[which].ticks()) +
                         lowEnd(part, placed.positions, several.axes[which]);
    (which == 0 ? at.x : at.y) = ticks / static_cast<double>(Length::kTicksPerInch);
  }
  return std::abs(leftOf(line->second, at)) * static_cast<double>(Length::kTicksPerInch) <=
         kSameTicks;
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
  const std::array<Length, 2>& wanted = several.answers[index];
  if (several.isLine) return runsThrough(part, *placed, several, wanted);
  for (const std::size_t which : {0U, 1U}) {
    const auto at = fromLowEnd(part, placed->positions, several.place, several.axes[which]);
    if (!at || std::abs(*at - static_cast<double>(wanted[which].ticks())) > kSameTicks) {
      return false;
    }
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
  for (std::size_t i = 0; !several.isLine && i < near.size(); ++i) {
    for (std::size_t j = i + 1; j < near.size(); ++j) {
      what.of = {near[i], near[j], several.place};
      for (const Sense sense : {Sense::anticlockwise, Sense::clockwise}) {
        what.sense = sense;
        if (leadsTo(part, what, several, index)) return what;
      }
    }
  }
  const auto beside = [&](std::vector<Id> places, const Id& about) -> std::optional<Understanding> {
    Understanding side;
    side.stated = true;
    side.kind = UnderstandingKind::beside;
    side.of = std::move(places);
    side.about = about;
    for (const Side one :
         {Side::left, Side::right, Side::front, Side::back, Side::bottom, Side::top}) {
      side.side = one;
      if (leadsTo(part, side, several, index)) return side;
    }
    return std::nullopt;
  };
  for (std::size_t i = 0; i < near.size(); ++i) {
    if (!several.isLine) {
      if (const auto found = beside({several.place}, near[i])) return *found;
      continue;
    }
    // Of a line, what it touches: one place beside it, or two on the same side.
    if (const auto found = beside({near[i]}, several.place)) return *found;
    for (std::size_t j = 0; j < i; ++j) {
      if (const auto found = beside({near[j], near[i]}, several.place)) return *found;
    }
  }
  return Error{ErrorCode::notFound,
               "nothing that can be said in one line tells this answer from the other",
               several.place};
}

}  // namespace inchwright
