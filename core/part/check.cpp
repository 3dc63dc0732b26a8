#include "core/part/check.h"

#include <algorithm>
#include <set>
#include <string_view>
#include <unordered_set>

#include "core/part/as_it_looks.h"
#include "core/part/plain_decimal.h"

namespace inchwright {
namespace {

Fault checkZero(const ZeroAlong& zero, Face face, const PlaceIndex& index, const Pointer& pointer) {
  const auto axes = axesIn(face);
  if (std::find(axes.begin(), axes.end(), zero.axis) == axes.end()) {
    return faultAt(pointer, std::string(nameOf(zero.axis)) + " does not lie in the " +
                                std::string(nameOf(face)) + " face: zero is given along " +
                                std::string(nameOf(axes[0])) + " and " +
                                std::string(nameOf(axes[1])));
  }
  if (zero.middle.empty() == zero.at.empty()) {
    return faultAt(pointer, "zero is in the `middle` of two places or `at` one: say which");
  }
  if (!zero.at.empty()) {
    if (zero.ofStock) return faultAt(pointer / "of", "`of` goes with `middle` only");
    return checkPlace(zero.at, zero.axis, index, pointer / "at");
  }
  const Pointer here = pointer / "middle";
  if (zero.middle.size() != 2) return faultAt(here, "a middle is that of two places");
  if (Fault fault = checkAllKnown(zero.middle, index, here)) return fault;
  for (std::size_t i = 0; i < 2; ++i) {
    if (Fault fault = checkPlace(zero.middle[i], zero.axis, index, here / i)) return fault;
  }
  return std::nullopt;
}

Fault checkHeldSide(const std::optional<Side>& side, Face face, const Pointer& pointer) {
  if (!side || axisAcross(*side) != axisAcross(face)) return std::nullopt;
  return faultAt(pointer, "with the " + std::string(nameOf(face)) + " face up the " +
                              std::string(nameOf(*side)) + " can meet no jaw and no stop");
}

Fault checkGeneral(const General& general, const Pointer& pointer) {
  const std::pair<const char*, const std::optional<Lettered>*> lengths[] = {
      {"fractions", &general.fractions},
      {"two_places", &general.twoPlaces},
      {"three_places", &general.threePlaces}};
  for (const auto& [key, figure] : lengths) {
    if (*figure && (*figure)->value < Length()) {
      return faultAt(pointer / key, "a general tolerance is plus and minus: leave the sign out");
    }
  }
  if (general.angles && general.angles->value < Angle()) {
    return faultAt(pointer / "angles", "a general tolerance is plus and minus: leave the sign out");
  }
  return std::nullopt;
}

Fault checkHeading(const Part& part) {
  if (part.name.empty()) return faultAt(Pointer() / "name", "a part needs a name");
  if (part.quantity < 1) return faultAt(Pointer() / "quantity", "the quantity is 1 or more");
  if (!part.hand.empty() && part.hand != "left" && part.hand != "right") {
    return faultAt(Pointer() / "hand", "the hand is `left` or `right`");
  }
  return checkGeneral(part.general, Pointer() / "general");
}

Fault checkReadings(const Part& part, const PlaceIndex& index) {
  std::unordered_set<std::string_view> seen;
  for (std::size_t i = 0; i < part.readings.size(); ++i) {
    const Reading& reading = part.readings[i];
    const Pointer pointer = Pointer() / "readings" / i;
    if (!isSoundId(reading.id)) {
      return faultAt(pointer / "id",
                     "an id is 1 to 64 bytes without control characters or outer blanks");
    }
    if (!seen.insert(reading.id).second) {
      return faultAt(pointer / "id", "the reading `" + reading.id +
                                         "` is there twice; give one of the two another id");
    }
    if (Fault fault = checkReading(reading, index, pointer)) return fault;
  }
  return std::nullopt;
}

Fault checkSetups(const Part& part, const PlaceIndex& index) {
  std::set<std::string> seen;
  for (std::size_t i = 0; i < part.setups.size(); ++i) {
    const Setup& setup = part.setups[i];
    const Pointer pointer = Pointer() / "setups" / i;
    if (setup.name.empty()) return faultAt(pointer / "name", "a setup needs a name");
    if (!seen.insert(asItLooks(setup.name)).second) {
      return faultAt(pointer / "name",
                     "the setup `" + setup.name + "` is there twice, as it looks");
    }
    if (Fault fault = checkSetup(setup, index, pointer)) return fault;
  }
  return std::nullopt;
}

Fault checkMachineRoom(const Machine& machine) {
  const Pointer pointer = Pointer() / "machine";
  for (const Axis axis : kAxes) {
    const auto& travel = machine.travel[static_cast<std::size_t>(axis)];
    if (travel && travel->value <= Length()) {
      return faultAt(pointer / "travel" / nameOf(axis), "a slide travels more than 0");
    }
  }
  if (machine.quill && machine.quill->value <= Length()) {
    return faultAt(pointer / "quill", "a quill comes down more than 0");
  }
  for (std::size_t i = 0; i < machine.speeds.size(); ++i) {
    if (machine.speeds[i] < 1) return faultAt(pointer / "speeds" / i, "a speed is 1 or more");
  }
  return std::nullopt;
}

Error tooManyPlaces(std::string pointer) {
  return {ErrorCode::tooLarge, "more than " + std::to_string(kMostPlaces) + " places in one job",
          std::move(pointer)};
}

Fault faultIn(const Part& part) {
  if (Fault fault = checkHeading(part)) return fault;
  if (Fault fault = checkTurnedOnly(part)) return fault;
  const Result<PlaceIndex> index = PlaceIndex::of(part);
  if (!index) return index.error();
  for (std::size_t i = 0; i < part.features.size(); ++i) {
    if (Fault fault = checkFeature(part.features[i], *index, Pointer() / "features" / i))
      return fault;
  }
  if (Fault fault = checkReadings(part, *index)) return fault;
  for (std::size_t i = 0; i < part.understood.size(); ++i) {
    if (Fault fault =
            checkUnderstanding(part.understood[i], *index, Pointer() / "understood" / i)) {
      return fault;
    }
  }
  if (Fault fault = checkOutlines(part, *index)) return fault;
  for (std::size_t i = 0; i < part.made.size(); ++i) {
    const MadePlace& made = part.made[i];
    if (!made.go || !made.noGo || made.go->size.value <= made.noGo->size.value) continue;
    return faultAt(Pointer() / "made" / i / "no_go",
                   "a pin that does not go in is no smaller than one that does");
  }
  return checkSetups(part, *index);
}

}  // namespace

Fault checkSetup(const Setup& setup, const PlaceIndex& index, const Pointer& pointer) {
  if (setup.turn != 0 && setup.turn != 90 && setup.turn != 180 && setup.turn != 270) {
    return faultAt(pointer / "turn", "a part is turned by 0, 90, 180 or 270 degrees");
  }
  AxisSet seen;
  for (const ZeroAlong& zero : setup.zero) {
    const Pointer here = pointer / "zero" / nameOf(zero.axis);
    if (seen.has(zero.axis)) return faultAt(here, "zero is given twice along this axis");
    seen.add(zero.axis);
    if (Fault fault = checkZero(zero, setup.face, index, here)) return fault;
  }
  for (std::size_t i = 0; i < setup.stock.size(); ++i) {
    if (!setup.stock[i] || setup.stock[i]->value >= Length()) continue;
    return faultAt(pointer / "stock" / nameOf(static_cast<Side>(i)),
                   "what is still to come off is 0 or more");
  }
  if (Fault fault = checkHeldSide(setup.jaw, setup.face, pointer / "jaw")) return fault;
  if (Fault fault = checkHeldSide(setup.stop, setup.face, pointer / "stop")) return fault;
  if (setup.jaw && setup.jaw == setup.stop) {
    return faultAt(pointer / "stop", "the jaw and the stop can't meet the same side");
  }
  if (Fault fault = checkHolding(setup.held, setup.face, pointer)) return fault;
  if (Fault fault = checkCurves(setup, index, pointer)) return fault;
  return checkAllKnown(setup.checks, index, pointer / "checks");
}

std::size_t placeCount(const Part& part) {
  std::size_t count = 0;
  for (const Feature& feature : part.features) {
    count += 1 + static_cast<std::size_t>(innerPlaceCount(feature));
  }
  return count;
}

Result<Done> checkPart(const Part& part) {
  if (placeCount(part) > kMostPlaces) return tooManyPlaces("/features");
  if (Fault fault = faultIn(part)) return *fault;
  return Done{};
}

Result<Done> checkJob(const Job& job) {
  if (const Result<Step> step = readStep(job.machine.step, job.machine.unit); !step) {
    return Error{ErrorCode::badDocument, step.error().text, "/machine/step"};
  }
  if (job.machine.finder && job.machine.finder->value <= Length()) {
    return *faultAt(Pointer() / "machine" / "finder",
                    "the finder's tip has a diameter greater than 0");
  }
  if (job.machine.accuracy && job.machine.accuracy->value < Length()) {
    return *faultAt(Pointer() / "machine" / "accuracy",
                    "how close the machine goes is not below 0");
  }
  if (job.machine.finderError && job.machine.finderError->value < Length()) {
    return *faultAt(Pointer() / "machine" / "finder_error", "the error of a zero is not below 0");
  }
  if (Fault fault = checkMachineRoom(job.machine)) return *fault;
  if (Result<Done> shop = checkShop(job.shop); !shop) {
    Error error = shop.error();
    error.place = "/shop" + error.place;
    return error;
  }
  for (std::size_t i = 0; i < job.gaps.size(); ++i) {
    const Gap& gap = job.gaps[i];
    if (gap.name.empty() || job.gap(gap.name) != &gap) {
      return *faultAt(Pointer() / "gaps" / i / "name", "a gap has a name of its own");
    }
  }
  if (Fault fault = checkLathe(job)) return *fault;
  if (Fault fault = checkMates(job)) return *fault;
  std::size_t places = 0;
  std::set<std::string> seen;
  for (std::size_t i = 0; i < job.parts.size(); ++i) {
    const Pointer pointer = Pointer() / "parts" / i;
    places += placeCount(job.parts[i]);
    if (places > kMostPlaces) return tooManyPlaces(pointer.text() + "/features");
    if (Fault fault = faultIn(job.parts[i])) {
      fault->place = pointer.text() + fault->place;
      return *fault;
    }
    if (const auto& opposite = job.parts[i].opposite) {
      const Part* base = job.part(opposite->part);
      if (base == nullptr || base->opposite || opposite->across == Axis::z) {
        return *faultAt(pointer / "opposite_of",
                        "the other hand is that of a part that is there, across x or y");
      }
    }
    if (!seen.insert(asItLooks(job.parts[i].name)).second) {
      return *faultAt(pointer / "name",
                      "the part `" + job.parts[i].name + "` is there twice, as it looks");
    }
  }
  if (const Fault fault = checkPictures(job)) return *fault;
  return Done{};
}

}  // namespace inchwright
