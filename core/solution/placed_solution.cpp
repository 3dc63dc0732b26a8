#include "core/solution/placed_solution.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/base/listed.h"
#include "core/chain/axis_solver.h"
#include "core/measure/writing.h"

namespace inchwright {
namespace {

std::string inDecimals(Length length) {
  return showAtStep(length.rational(), Step{Length::ticks(254'000), Unit::inch}).text;
}

std::string spokenPoint(const std::array<Length, 2>& at) {
  return "(" + inDecimals(at[0]) + ", " + inDecimals(at[1]) + ")";
}

std::string textOf(const SeveralAnswers& several) {
  std::vector<std::string> others;
  for (const auto& at : several.answers) others.push_back(spokenPoint(at));
  if (!several.isTaken) {
    return several.place + " may lie at " + joined(others, " or ") +
           "; say which way round it lies, or on which side";
  }
  const std::string taken = others.front();
  others.erase(others.begin());
  return several.place + " is taken to lie at " + taken + ", where it is traced; " +
         joined(others, " or ") + " would do as well";
}

std::string textOf(const Part& part, const CentresClash& clash, const std::vector<Id>& names) {
  const auto miss = static_cast<std::int64_t>(
      std::llround(std::abs(clash.missesBy) * static_cast<double>(Length::kTicksPerInch)));
  const std::string by = inDecimals(Length::ticks(miss));
  if (!clash.spare) {
    return joined(names, ", ") + " do not meet: they miss each other by " + by;
  }
  const Reading& spare = part.readings[*clash.spare];
  const bool isAngle = spare.kind == ReadingKind::angle && spare.angle;
  return joined(names, ", ") + " do not agree: " + spare.id + " (" +
         (isAngle ? spare.angle->text : spare.figure.text) + ") misses by " + by;
}

}  // namespace

DoubtKey keyOf(const SeveralAnswers& several) {
  return {DoubtTopic::question, {}, {}, {}, {several.place}};
}

Result<PlacedPart> placeBeyondChains(const Part& part, const std::array<AxisSystem, 3>& systems,
                                     Solution& solution) {
  std::array<std::vector<Position>, 3> positions;
  for (std::size_t i = 0; i < positions.size(); ++i) {
    positions[i] = std::move(solution.positions.along(systems[i].axis()).positions);
  }
  PlacePartOptions options;
  options.findContradictions = false;
  auto placed = placePart(part, systems, positions, options);
  if (!placed) return placed.error();
  for (std::size_t i = 0; i < positions.size(); ++i) {
    solution.positions.along(systems[i].axis()).positions = std::move(placed->positions[i]);
  }
  for (const std::uint32_t index : placed->used) {
    solution.status[index] = ReadingStatus::alone;
  }
  for (const std::uint32_t index : placed->checked) {
    ReadingStatus& status = solution.status[index];
    if (status == ReadingStatus::alone) status = ReadingStatus::agrees;
  }
  for (const CentresClash& clash : placed->clashes) {
    for (const std::uint32_t index : clash.members) {
      solution.status[index] = ReadingStatus::clashes;
    }
  }
  return placed;
}

void addPlacingDoubts(const Part& part, const PlacedPart& placed, std::vector<Doubt>& doubts) {
  const auto add = [&](DoubtKey key, std::string text) {
    Doubt doubt{std::move(key)};
    doubt.about = text;
    doubt.questions = {std::move(text)};
    for (const AcceptedDoubt& one : part.accepted) {
      if (!one.covers(doubt.key.text(), doubt.about)) continue;
      doubt.accepted = true;
      doubt.reason = one.reason;
    }
    doubts.push_back(std::move(doubt));
  };
  for (const CentresClash& clash : placed.clashes) {
    std::vector<Id> names;
    for (const std::uint32_t member : clash.members) names.push_back(part.readings[member].id);
    const std::string text = textOf(part, clash, names);
    std::sort(names.begin(), names.end());
    add({DoubtTopic::question, {}, {}, std::move(names), {}}, text);
  }
  for (const SeveralAnswers& several : placed.answers) add(keyOf(several), textOf(several));
  for (const WeakPlace& weak : placed.weak) {
    const Id& reading = part.readings[weak.reading].id;
    add({DoubtTopic::question, {}, {}, {reading}, {weak.place}},
        weak.place + " is weakly held: a thou in " + reading + " moves it over " +
            std::to_string(std::llround(std::floor(weak.factor))) + " thou");
  }
}

Result<PlacedPart> placedFacts(const Part& part) {
  Result<WholePlaced> whole = placeWhole(part);
  if (!whole) return whole.error();
  return std::move(whole->placed);
}

}  // namespace inchwright
