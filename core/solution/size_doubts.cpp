#include <algorithm>
#include <cmath>
#include <numbers>
#include <unordered_map>
#include <utility>

#include "core/measure/writing.h"
#include "core/shop/fits.h"
#include "core/shop/threads.h"
#include "core/solution/doubts.h"

namespace inchwright {
namespace {

using What = SizeOddity::What;

void addOddity(std::vector<SizeOddity>& odd, What what, std::string figure = {},
               std::string other = {}) {
  odd.push_back({what, std::move(figure), std::move(other)});
}

bool hasSeat(const Drilled& drilled) {
  return drilled.make == Make::counterbore || drilled.make == Make::countersink ||
         drilled.make == Make::spotface;
}

void checkSeat(const Drilled& drilled, std::vector<SizeOddity>& odd) {
  if (!drilled.seatDiameter) {
    if (hasSeat(drilled)) addOddity(odd, What::seatNotSaid);
    return;
  }
  const Lettered& seat = *drilled.seatDiameter;
  if (drilled.diameter && seat.value <= drilled.diameter->value) {
    addOddity(odd, What::seatNotWider, seat.text, drilled.diameter->text);
  }
  const auto& depth = drilled.depth.length;
  if (!drilled.depth.through && depth && drilled.seatDepth &&
      drilled.seatDepth->value >= depth->value) {
    addOddity(odd, What::seatTooDeep, drilled.seatDepth->text, depth->text);
  }
}

// A tapped hole's diameter says the outside of its thread, or what it is drilled for it: between
// the basic diameter inside a nut (5/8 of the height of a 60° triangle below the outside on each
// side, ISO 68-1) and half that depth.
void checkThread(const Drilled& drilled, const Lettered* diameter, std::vector<SizeOddity>& odd) {
  if (drilled.thread.empty()) {
    if (drilled.make == Make::tap) addOddity(odd, What::threadNotSaid);
    return;
  }
  if (drilled.make != Make::tap && !hasSeat(drilled)) {
    addOddity(odd, What::notTapped, drilled.thread);
  }
  const auto thread = threadNamed(drilled.thread);
  if (!thread || diameter == nullptr) return;
  const double size = diameter->value.toInches();
  const double outside = thread->major.toInches();
  const double depth = 1.25 * std::numbers::sqrt3 / 2 * thread->pitch.toDouble() /
                       static_cast<double>(Length::kTicksPerInch);
  // A number drill off either way is what shops take for it.
  constexpr double kDrillOff = 0.006;
  const bool isTapping = size > outside - depth - kDrillOff && size < outside - depth / 2;
  if (isTapping || std::abs(size - outside) < kDrillOff) return;
  addOddity(odd, What::offThread, diameter->text, thread->name);
}

// Capitals are holes' (ISO 286-1).
void checkClass(const Drilled& drilled, std::vector<SizeOddity>& odd) {
  const Length size = drilled.diameter->value;
  if (!limitsOfClass(drilled.limits, size) && !fitByName(drilled.limits, size)) {
    addOddity(odd, What::limitsUnknown, drilled.limits);
  } else if (drilled.limits.front() >= 'a') {
    addOddity(odd, What::shaftLimits, drilled.limits);
  }
}

void checkLimits(const Drilled& drilled, std::vector<SizeOddity>& odd) {
  if (!drilled.diameter || drilled.limits.empty()) return;
  if (drilled.limits.find('/') == std::string::npos) return checkClass(drilled, odd);
  const auto limits = readLength(drilled.limits, {drilled.diameter->unit});
  if (!limits || !limits->tolerance) return;
  const auto low = limits->value.plus(limits->tolerance->lower);
  const auto high = limits->value.plus(limits->tolerance->upper);
  // Limits lie about a size, beside it by no more than a fit takes: a 64th.
  constexpr std::int64_t kFarthest = Length::kTicksPerInch / 64;
  const std::int64_t size = drilled.diameter->value.ticks();
  if (!low || !high) return;
  if (size >= low->ticks() - kFarthest && size <= high->ticks() + kFarthest) return;
  addOddity(odd, What::offLimits, drilled.diameter->text, drilled.limits);
}

using DiametersRead = std::unordered_map<std::string_view, const Lettered*>;

DiametersRead diametersRead(const Part& part) {
  DiametersRead read;
  for (const Reading& reading : part.readings) {
    if (reading.kind == ReadingKind::diameter) read.emplace(reading.from, &reading.figure);
  }
  return read;
}

// Its diameter as entered, else as a reading says; null where nothing does.
const Lettered* diameterSaid(const Feature& feature, const DiametersRead& read) {
  if (feature.drilled()->diameter) return &*feature.drilled()->diameter;
  const auto found = read.find(feature.id);
  return found == read.end() ? nullptr : found->second;
}

// How thick the part is square to a face, where both its sides are placed.
std::optional<Length> thicknessBelow(const Part& part, const Solution& solution, Face face) {
  const Axis axis = axisAcross(face);
  std::optional<Rational> low, high;
  for (const Feature& feature : part.features) {
    const auto* edge = feature.as<kind::Edge>();
    if (edge == nullptr || edge->axis != axis || !edge->side) continue;
    const Position* position = solution.position(feature.id, axis);
    if (position == nullptr || position->group != 0) continue;
    (outward(*edge->side) > 0 ? high : low) = position->ticks;
  }
  if (!low || !high) return std::nullopt;
  const auto between = high->minus(*low);
  const auto thick = between ? nearestTick(*between) : std::nullopt;
  return thick && thick->ticks() > 0 ? thick : std::nullopt;
}

// How deep a slot or a hole's seat goes; holes are drilled where the checks before cutting look at
// their depth.
const Lettered* depthOfCut(const Feature& feature) {
  if (const Drilled* drilled = feature.drilled()) {
    return drilled->seatDepth ? &*drilled->seatDepth : nullptr;
  }
  const auto* slot = feature.as<kind::Slot>();
  const bool said = slot != nullptr && !slot->depth.through && slot->depth.length;
  return said ? &*slot->depth.length : nullptr;
}

void checkDepth(const Part& part, const Solution& solution, const Feature& feature,
                std::vector<SizeOddity>& odd) {
  const Lettered* depth = depthOfCut(feature);
  if (depth == nullptr) return;
  const auto thick = thicknessBelow(part, solution, feature.face);
  if (!thick || depth->value < *thick) return;
  addOddity(odd, What::deeperThanPart, depth->text, writePlain(*thick, depth->unit));
}

void checkRow(const Feature& feature, std::vector<SizeOddity>& odd) {
  const auto* row = feature.as<kind::Row>();
  if (row != nullptr && row->holes == 1) addOddity(odd, What::oneHole);
}

void checkRing(const Feature& feature, std::vector<SizeOddity>& odd) {
  const auto* ring = feature.as<kind::Ring>();
  if (ring == nullptr) return;
  if (ring->holes == 1) addOddity(odd, What::oneHole);
  if (ring->firstAngle && ring->firstAngle->value >= Angle::degrees(360)) {
    addOddity(odd, What::pastFullTurn, ring->firstAngle->text);
  }
}

std::vector<SizeOddity> generalOddities(const General& general) {
  std::vector<SizeOddity> odd;
  for (const auto* figure : {&general.fractions, &general.twoPlaces, &general.threePlaces}) {
    if (*figure && !(*figure)->questions.empty()) {
      addOddity(odd, What::generalOdd, (*figure)->text);
    }
  }
  if (general.twoPlaces && general.threePlaces &&
      general.threePlaces->value > general.twoPlaces->value) {
    addOddity(odd, What::generalOrder, general.threePlaces->text, general.twoPlaces->text);
  }
  return odd;
}

std::string aboutOf(const std::vector<SizeOddity>& odd) {
  std::string about;
  for (const SizeOddity& one : odd) {
    for (const std::string& text : {one.figure, one.other}) {
      if (!text.empty()) about += (about.empty() ? "" : ", ") + text;
    }
  }
  return about;
}

void addOdd(std::vector<SizeOddity> odd, DoubtKey key, std::optional<Source> source,
            std::vector<Doubt>& doubts) {
  if (odd.empty()) return;
  Doubt doubt{std::move(key), aboutOf(odd)};
  doubt.source = source;
  doubt.sizes = std::move(odd);
  doubts.push_back(std::move(doubt));
}

void addAngleDoubts(const Part& part, std::vector<Doubt>& doubts) {
  for (std::uint32_t i = 0; i < part.readings.size(); ++i) {
    const Reading& reading = part.readings[i];
    if (!reading.angle || reading.angle->value < Angle::degrees(360)) continue;
    addOdd({{What::pastFullTurn, reading.angle->text, {}}},
           {DoubtTopic::oddSizes, {}, {}, {reading.id}}, Source{SourceKind::reading, i}, doubts);
  }
}

// ---- members that are nearly known ones ----

void addNearly(const Extra& extra, std::string_view object, std::vector<Misspelt>& all) {
  for (const UnknownMember& one : extra) {
    if (!one.meant.empty()) all.push_back({one.name, one.meant, std::string(object)});
  }
}

void addMisspeltOf(std::initializer_list<const Extra*> extras, DoubtKey key,
                   std::vector<Doubt>& doubts) {
  std::vector<Misspelt> all;
  for (const Extra* extra : extras) addNearly(*extra, {}, all);
  if (all.empty()) return;
  Doubt doubt{std::move(key)};
  for (const Misspelt& one : all) {
    doubt.about += (doubt.about.empty() ? "" : ", ") + one.name + " " + one.meant;
  }
  doubt.misspelt = std::move(all);
  doubts.push_back(std::move(doubt));
}

}  // namespace

void addSizeDoubts(const Part& part, const Solution& solution, std::vector<Doubt>& doubts) {
  const DiametersRead read = diametersRead(part);
  addOdd(generalOddities(part.general), {DoubtTopic::oddSizes}, std::nullopt, doubts);
  for (std::uint32_t i = 0; i < part.features.size(); ++i) {
    const Feature& feature = part.features[i];
    std::vector<SizeOddity> odd;
    if (const Drilled* drilled = feature.drilled()) {
      checkSeat(*drilled, odd);
      const Lettered* diameter = diameterSaid(feature, read);
      const bool isTapped = !drilled->thread.empty() || drilled->make == Make::tap;
      if (diameter == nullptr && !isTapped) addOddity(odd, What::sizeNotSaid);
      checkThread(*drilled, diameter, odd);
      checkLimits(*drilled, odd);
    }
    checkRow(feature, odd);
    checkRing(feature, odd);
    checkDepth(part, solution, feature, odd);
    if (odd.empty()) continue;
    addOdd(std::move(odd), {DoubtTopic::oddSizes, {}, {}, {}, {feature.id}},
           Source{SourceKind::feature, i}, doubts);
  }
  addAngleDoubts(part, doubts);
}

std::vector<Misspelt> misspeltOutsideParts(const Job& job) {
  std::vector<Misspelt> all;
  addNearly(job.extra, "document", all);
  addNearly(job.jobExtra, "job", all);
  addNearly(job.machine.extra, "machine", all);
  addNearly(job.machine.travelExtra, "machine", all);
  addNearly(job.shop.extra, "shop", all);
  if (job.lathe) addNearly(job.lathe->extra, "lathe", all);
  for (const Gap& gap : job.gaps) {
    addNearly(gap.extra, "gap " + gap.name, all);
    for (const auto& member : gap.members) addNearly(member.extra, "gap " + gap.name, all);
  }
  for (const Mate& mate : job.mates) addNearly(mate.extra, "mate " + mate.name, all);
  return all;
}

void addMisspelt(const Part& part, std::vector<Doubt>& doubts) {
  addMisspeltOf({&part.extra, &part.general.extra}, {DoubtTopic::misspelt}, doubts);
  for (const Feature& feature : part.features) {
    if (feature.extra.empty()) continue;
    addMisspeltOf({&feature.extra}, {DoubtTopic::misspelt, {}, {}, {}, {feature.id}}, doubts);
  }
  for (const Reading& reading : part.readings) {
    if (reading.extra.empty()) continue;
    addMisspeltOf({&reading.extra}, {DoubtTopic::misspelt, {}, {}, {reading.id}}, doubts);
  }
  for (const Understanding& what : part.understood) {
    if (what.extra.empty()) continue;
    addMisspeltOf({&what.extra}, {DoubtTopic::misspelt, what.kind, what.axis, {}, what.of}, doubts);
  }
  for (const Setup& setup : part.setups) {
    DoubtKey key{DoubtTopic::misspelt};
    key.setup = setup.name;
    addMisspeltOf({&setup.extra, &setup.zeroExtra, &setup.stockExtra, &setup.held.overhangExtra},
                  std::move(key), doubts);
    for (const ZeroAlong& zero : setup.zero) {
      DoubtKey along{DoubtTopic::misspelt, {}, zero.axis};
      along.setup = setup.name;
      addMisspeltOf({&zero.extra}, std::move(along), doubts);
    }
  }
}

}  // namespace inchwright
