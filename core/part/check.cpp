#include "core/part/check.h"

#include <algorithm>
#include <set>
#include <string_view>
#include <unordered_set>

#include "core/part/plain_decimal.h"

namespace inchwright {
namespace {

Fault checkKnown(const Id& id, const PlaceIndex& index, const Pointer& pointer) {
  if (index.find(id)) return std::nullopt;
  return faultAt(pointer, id.empty() ? "an id is missing here" : "there is no `" + id + "`");
}

Fault checkAllKnown(const std::vector<Id>& ids, const PlaceIndex& index, const Pointer& pointer) {
  std::unordered_set<std::string_view> seen;
  for (std::size_t i = 0; i < ids.size(); ++i) {
    if (Fault fault = checkKnown(ids[i], index, pointer / i)) return fault;
    if (!seen.insert(ids[i]).second) {
      return faultAt(pointer / i, "`" + ids[i] + "` is named twice here");
    }
  }
  return std::nullopt;
}

/// A centre distance or an angle lies between two places of one face.
Fault checkPair(const Reading& reading, const PlaceIndex& index, const Pointer& pointer) {
  if (Fault fault = checkKnown(reading.from, index, pointer / "from")) return fault;
  if (Fault fault = checkKnown(reading.to, index, pointer / "to")) return fault;
  const AxisSet from = index.find(reading.from)->axes;
  if (from.shared(from) < 2) {
    return faultAt(
        pointer / "from",
        "`" + reading.from + "` is no point of a face: name a hole, a point or the like");
  }
  if (from.shared(index.find(reading.to)->axes) < 2) {
    return faultAt(pointer / "to", "`" + reading.to + "` is no point of the face in which `" +
                                       reading.from + "` lies");
  }
  return std::nullopt;
}

bool hasRadius(const Feature& feature) {
  return feature.drilled() != nullptr || feature.is(FeatureKind::slot) ||
         feature.is(FeatureKind::round) || feature.is(FeatureKind::arc) ||
         feature.is(FeatureKind::outside) || feature.is(FeatureKind::bored) ||
         feature.is(FeatureKind::groove);
}

/// A radius, diameter or pitch circle is a size of the one feature `from`.
Fault checkSizeReading(const Reading& reading, const PlaceIndex& index, const Pointer& pointer) {
  if (Fault fault = checkKnown(reading.from, index, pointer / "from")) return fault;
  const std::string kind(nameOf(reading.kind));
  if (!reading.to.empty()) {
    return faultAt(pointer / "to", "a " + kind + " is of `from` alone: leave `to` out");
  }
  const PlaceIndex::Entry entry = *index.find(reading.from);
  const FeatureKind of = entry.feature->kind();
  const bool fits = reading.kind == ReadingKind::pcd ? of == FeatureKind::ring && entry.isFeature
                                                     : hasRadius(*entry.feature);
  if (!fits) {
    return faultAt(pointer / "from", "`" + reading.from + "` is of kind `" +
                                         std::string(nameOf(of)) + "` and has no " + kind);
  }
  const SizeSymbol refused =
      reading.kind == ReadingKind::radius ? SizeSymbol::diameter : SizeSymbol::radius;
  if (reading.figure.symbol == refused) {
    return faultAt(pointer / "text", "the figure is lettered as another size than a " + kind);
  }
  return std::nullopt;
}

Fault checkFigure(const Reading& reading, const Pointer& pointer) {
  if (reading.kind == ReadingKind::angle) {
    if (reading.angle) return std::nullopt;
    return faultAt(pointer / "text", "an angle reading needs its angle");
  }
  const Length value = reading.figure.value;
  if (reading.kind == ReadingKind::along) {
    if (value >= Length()) return std::nullopt;
    return faultAt(pointer / "text",
                   "a reading runs in the positive direction of its axis: swap the ends `from` and "
                   "`to`, and leave the minus sign out");
  }
  if (value > Length()) return std::nullopt;
  return faultAt(pointer / "text",
                 "a " +
                     std::string(reading.kind == ReadingKind::centres ? "centre distance"
                                                                      : nameOf(reading.kind)) +
                     " is greater than 0");
}

Fault checkPrintPlace(const Reading& reading, const Pointer& pointer) {
  const Pointer here = pointer / "place";
  if (!reading.place.empty() && reading.place.size() != 2) {
    return faultAt(here, "a place on the print is two values");
  }
  for (std::size_t i = 0; i < reading.place.size(); ++i) {
    if (plainDecimal(reading.place[i])) continue;
    return faultAt(here / i, "a place on the print is plain decimals in inches");
  }
  return std::nullopt;
}

struct Wanted {
  bool needsAxis;
  std::size_t least;
  std::size_t most;
  const char* advice;
};

constexpr std::size_t kAnyNumber = 1'000'000;

Wanted wantedBy(UnderstandingKind kind) {
  switch (kind) {
    case UnderstandingKind::inLine:
      return {true, 2, kAnyNumber, "in line says an `axis` and two or more `of`"};
    case UnderstandingKind::midway:
      return {true, 1, 1, "midway says an `axis`, one `of` and two `between`"};
    case UnderstandingKind::symmetric:
      return {true, 2, 2, "symmetric says an `axis`, two `of` and `about`"};
    case UnderstandingKind::equal:
      return {true, 3, kAnyNumber, "equal says an `axis` and three or more `of`, in order"};
    case UnderstandingKind::concentric:
      return {false, 2, kAnyNumber, "concentric says two or more `of`"};
    case UnderstandingKind::tangent:
      return {false, 2, 2, "tangent says two `of`"};
    case UnderstandingKind::parallel:
      return {false, 2, kAnyNumber, "parallel says two or more `of`"};
    case UnderstandingKind::square:
      break;
  }
  return {false, 2, 2, "square says two `of`"};
}

/// Each kind has its members and no others.
Fault checkShape(const Understanding& it, const Pointer& pointer) {
  const Wanted shape = wantedBy(it.kind);
  const bool midway = it.kind == UnderstandingKind::midway;
  const bool symmetric = it.kind == UnderstandingKind::symmetric;
  if (shape.needsAxis && !it.axis) return faultAt(pointer, shape.advice);
  if (it.of.size() < shape.least || it.of.size() > shape.most) {
    return faultAt(pointer / "of", shape.advice);
  }
  if (it.between.size() != (midway ? 2U : 0U)) return faultAt(pointer / "between", shape.advice);
  if (it.about.empty() == symmetric) return faultAt(pointer / "about", shape.advice);
  return std::nullopt;
}

Fault checkConcentric(const Understanding& it, const PlaceIndex& index, const Pointer& pointer) {
  const AxisSet first = index.find(it.of[0])->axes;
  for (std::size_t i = 0; i < it.of.size(); ++i) {
    if (index.find(it.of[i])->axes.shared(first) >= 2) continue;
    return faultAt(pointer / "of" / i,
                   "concentric ones share a centre in one face, and `" + it.of[i] + "` has none");
  }
  return std::nullopt;
}

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
  std::set<std::string_view> seen;
  for (std::size_t i = 0; i < part.setups.size(); ++i) {
    const Setup& setup = part.setups[i];
    const Pointer pointer = Pointer() / "setups" / i;
    if (setup.name.empty()) return faultAt(pointer / "name", "a setup needs a name");
    if (!seen.insert(setup.name).second) {
      return faultAt(pointer / "name", "the setup `" + setup.name + "` is there twice");
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
  return checkSetups(part, *index);
}

}  // namespace

Fault checkPlace(const Id& id, Axis axis, const PlaceIndex& index, const Pointer& pointer) {
  if (Fault fault = checkKnown(id, index, pointer)) return fault;
  const PlaceIndex::Entry entry = *index.find(id);
  if (entry.axes.has(axis)) return std::nullopt;
  const FeatureKind kind = entry.feature->kind();
  if (kind == FeatureKind::line || kind == FeatureKind::arc) {
    return faultAt(pointer, "`" + id + "` is of kind `" + std::string(nameOf(kind)) +
                                "`, which has no place of its own: name a point of it");
  }
  return faultAt(pointer, "`" + id + "` has no place along " + std::string(nameOf(axis)));
}

Fault checkReading(const Reading& reading, const PlaceIndex& index, const Pointer& pointer) {
  switch (reading.kind) {
    case ReadingKind::along:
      if (Fault f = checkPlace(reading.from, reading.axis, index, pointer / "from")) return f;
      if (Fault f = checkPlace(reading.to, reading.axis, index, pointer / "to")) return f;
      break;
    case ReadingKind::centres:
    case ReadingKind::angle:
      if (Fault fault = checkPair(reading, index, pointer)) return fault;
      break;
    default:
      if (Fault fault = checkSizeReading(reading, index, pointer)) return fault;
  }
  if (reading.from == reading.to) {
    return faultAt(pointer / "to", "a reading runs between two places, and this names one twice");
  }
  if (Fault fault = checkFigure(reading, pointer)) return fault;
  return checkPrintPlace(reading, pointer);
}

Fault checkUnderstanding(const Understanding& it, const PlaceIndex& index, const Pointer& pointer) {
  if (Fault fault = checkShape(it, pointer)) return fault;
  if (Fault fault = checkAllKnown(it.of, index, pointer / "of")) return fault;
  if (Fault fault = checkAllKnown(it.between, index, pointer / "between")) return fault;
  if (!it.about.empty()) {
    if (Fault fault = checkKnown(it.about, index, pointer / "about")) return fault;
  }
  for (const Id& id : it.of) {
    const bool again = std::find(it.between.begin(), it.between.end(), id) != it.between.end();
    if (again || id == it.about) return faultAt(pointer / "of", "`" + id + "` is named twice here");
  }
  if (it.kind == UnderstandingKind::concentric) return checkConcentric(it, index, pointer);
  if (!wantedBy(it.kind).needsAxis) return std::nullopt;
  for (std::size_t i = 0; i < it.of.size(); ++i) {
    if (Fault f = checkPlace(it.of[i], *it.axis, index, pointer / "of" / i)) return f;
  }
  for (std::size_t i = 0; i < it.between.size(); ++i) {
    if (Fault f = checkPlace(it.between[i], *it.axis, index, pointer / "between" / i)) return f;
  }
  if (it.about.empty()) return std::nullopt;
  return checkPlace(it.about, *it.axis, index, pointer / "about");
}

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
  std::set<std::string_view> seen;
  for (std::size_t i = 0; i < job.parts.size(); ++i) {
    const Pointer pointer = Pointer() / "parts" / i;
    places += placeCount(job.parts[i]);
    if (places > kMostPlaces) return tooManyPlaces(pointer.text() + "/features");
    if (Fault fault = faultIn(job.parts[i])) {
      fault->place = pointer.text() + fault->place;
      return *fault;
    }
    if (!seen.insert(job.parts[i].name).second) {
      return *faultAt(pointer / "name", "the part `" + job.parts[i].name + "` is there twice");
    }
  }
  if (const Fault fault = checkPictures(job)) return *fault;
  return Done{};
}

}  // namespace inchwright
