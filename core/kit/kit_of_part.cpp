#include "core/kit/kit_of_part.h"

#include <algorithm>
#include <numeric>

#include "core/kit/effects.h"
#include "core/turned/lathe_readout.h"

namespace inchwright {
namespace {

bool fits(const FoundSize& found, const SizeLimits& limits) {
  return verdictOf(found, {limits.least, limits.greatest}) == Verdict::in;
}

/// Whether the shaft that was chosen to suit a hole is still called for by a hole that is as its
/// own print wants it: a fraction's limits are far wider than what a mate asks.
bool asksForItsShaft(const Job& job, const Part& part, const Id& place) {
  const Mended* const chosen = chosenWay(part, place);
  if (!chosen || chosen->way != WayOut::shaft) return false;
  for (const Mate* mate : matesOfHole(job, part.name, place)) {
    const Result<FoundSize> wanted = wantedClearance(job, *mate);
    const Result<SizeNow> hole = sizeNow(job, PartPlace{part.name, place, {}});
    const Result<SizeNow> shaft = sizeNow(job, mate->shaft);
    if (!wanted || !hole || !shaft) continue;
    if (verdictOf(clearanceOf(hole->size, shaft->size), *wanted) != Verdict::in) return true;
  }
  return false;
}

/// A place as it is now or, where a way out was chosen that is not yet done, as it will be.
struct SideNow {
  SizeNow now;
  std::optional<Mended> chosen;
};

std::optional<SideNow> sideNow(const Job& job, const SizeOrPlace& side) {
  const Result<SizeNow> now = sizeNow(job, side);
  if (!now) return std::nullopt;
  SideNow all{*now, {}};
  const auto* at = std::get_if<PartPlace>(&side);
  const Part* part = at ? job.part(at->part) : nullptr;
  if (!part || !now->measured) return all;
  const Result<SizeNow> drawn = sizeAsDrawn(job, side);
  const Mended* const chosen = chosenWay(*part, at->place);
  if (!drawn || !chosen) return all;
  if (fits(now->size, {*drawn->size.least, *drawn->size.greatest})) {
    if (asksForItsShaft(job, *part, at->place)) all.chosen = *chosen;
    return all;
  }
  if (const auto next = chosenNextSize(*part, at->place, now->size, job.unit)) {
    if (isOpenedTo(*next, now->size)) return all;
    all.now.size = {next->limits.least, next->limits.greatest};
  }
  all.chosen = *chosen;
  const bool lined = chosen->way == WayOut::bush || chosen->way == WayOut::plug ||
                     chosen->way == WayOut::eccentricBush;
  if (lined || chosen->way == WayOut::openToSize) all.now = *drawn;
  return all;
}

class Suiting {
 public:
  Suiting(const Job& job, const Part& part) : job_(job), part_(part) {}

  std::vector<Suits> take() {
    for (const Mate& mate : job_.mates) {
      const Result<FoundSize> wanted = wantedClearance(job_, mate);
      if (!wanted) continue;
      for (const SizeOrPlace& hole : holesOf(mate)) {
        add(mate, *wanted, hole, mate.shaft, true);
      }
      add(mate, *wanted, mate.shaft, holesOf(mate).front(), false);
    }
    return std::move(all_);
  }

 private:
  void add(const Mate& mate, const FoundSize& wanted, const SizeOrPlace& own,
           const SizeOrPlace& other, bool isHole) {
    const auto* at = std::get_if<PartPlace>(&own);
    if (!at || at->part != part_.name) return;
    const auto here = sideNow(job_, own), there = sideNow(job_, other);
    if (!here || !there) return;
    Suits suits;
    suits.mate = mate.name;
    suits.place = at->place;
    suits.isHole = isHole;
    const Feature* feature = featureOfPlace(part_, at->place);
    if (feature && diameterOf(*feature)) suits.lettered = diameterOf(*feature)->text;
    if (const auto* place = std::get_if<PartPlace>(&other)) {
      suits.otherPart = place->part;
      suits.otherPlace = place->place;
    }
    suits.other = there->now.size;
    suits.otherMeasured = there->now.measured;
    suits.otherUnlikely = there->now.unlikely;
    suits.measured = here->now.measured;
    suits.wanted = wanted;
    suits.clearance = isHole ? clearanceOf(here->now.size, suits.other)
                             : clearanceOf(suits.other, here->now.size);
    suits.make = isHole ? holeFor(suits.other, wanted) : shaftFor(suits.other, wanted);
    suits.suited = isHole && here->chosen && here->chosen->way == WayOut::shaft &&
                   !there->now.measured && !here->now.unlikely;
    const bool toSuit = there->chosen && there->chosen->way == WayOut::shaft;
    if (!isHole && toSuit) suits.chosen = there->chosen;
    all_.push_back(std::move(suits));
  }

  static FoundSize holeFor(const FoundSize& shaft, const FoundSize& wanted) {
    FoundSize hole;
    if (shaft.greatest && wanted.least) hole.least = shaft.greatest->plus(*wanted.least);
    if (shaft.least && wanted.greatest) hole.greatest = shaft.least->plus(*wanted.greatest);
    return hole;
  }

  static FoundSize shaftFor(const FoundSize& hole, const FoundSize& wanted) {
    FoundSize shaft;
    if (hole.greatest && wanted.greatest) shaft.least = hole.greatest->minus(*wanted.greatest);
    if (hole.least && wanted.least) shaft.greatest = hole.least->minus(*wanted.least);
    return shaft;
  }

  const Job& job_;
  const Part& part_;
  std::vector<Suits> all_;
};

}  // namespace

CameOut cameOut(const Job& job, const Part& part, MadeRow row) {
  CameOut one{std::move(row), {}, {}, false};
  const bool counts = one.isWrong() || asksForItsShaft(job, part, one.row.place);
  const Mended* const chosen = counts ? chosenWay(part, one.row.place) : nullptr;
  if (!chosen) return one;
  one.chosen = *chosen;
  const Result<std::vector<Way>> ways = waysWithoutEffects(job, part, one.row);
  for (const Way& way : ways ? *ways : std::vector<Way>{}) {
    if (way.way == chosen->way && !one.way) one.way = way;
  }
  if (!one.way) {
    one.changed = chosen->way == WayOut::openToSize;  // it is over size by now
    return one;
  }
  one.changed = isOtherThanChosen(chosen->chosen, figuresOf(*one.way));
  return one;
}

bool isToBeSuited(const Job& job, const Mate& mate) {
  const auto* at = std::get_if<PartPlace>(&mate.shaft);
  const Part* const part = at ? job.part(at->part) : nullptr;
  if (!part) return false;
  const std::vector<Suits> all = Suiting(job, *part).take();
  return std::any_of(all.begin(), all.end(), [&](const Suits& one) {
    return one.mate == mate.name && !one.isHole && one.replaces();
  });
}

Result<KitOfPart> kitOfPart(const Job& job, const Part& part, const Solution& solution) {
  KitOfPart kit;
  kit.suits = Suiting(job, part).take();
  Result<std::vector<MadeRow>> rows = madeRows(job, part, solution);
  if (!rows) return rows.error();
  for (MadeRow& row : *rows) {
    if (!row.foundSize.known() && !row.foundX && !row.foundY) continue;
    kit.cameOut.push_back(cameOut(job, part, std::move(row)));
  }
  return kit;
}

Result<LatheWork> latheWorkToSuit(const Job& job, const Part& part, const Solution& solution,
                                  const Setup& setup, const TableOptions& options) {
  Result<LatheWork> work = latheWork(job, part, solution, setup, options);
  if (!work) return work;
  std::vector<Suits> all = Suiting(job, part).take();
  std::erase_if(all, [](const Suits& one) { return !one.chosen || one.measured; });
  if (all.empty()) return work;
  const Lathe lathe = latheFor(job, options);
  const Result<LatheReadout> readout =
      LatheReadout::of(lathe, {part, solution, setup, job.machine}, work->shape);
  if (!readout) return readout.error();
  for (const Suits& one : all) {
    if (!one.replaces()) {
      for (LatheRow& row : work->rows) row.unsuited = row.unsuited || row.id == one.place;
      continue;
    }
    const Length middle =
        Length::ticks(std::midpoint(one.make.least->ticks(), one.make.greatest->ticks()));
    const LatheFigure figure = readout->cross(middle, true);
    for (LatheRow& row : work->rows) {
      if (row.id != one.place) continue;
      row.struckOut = row.dia;
      row.dia = figure;
      holdTo(row, {*one.make.least, *one.make.greatest}, work->step, work->halved);
    }
    for (Cut& cut : work->cuts) {
      const bool its = std::find(cut.of.begin(), cut.of.end(), one.place) != cut.of.end();
      const bool toSize = cut.op == CutOp::finish || cut.op == CutOp::bore;
      if (its && toSize) cut.dia = figure;
      if (!its || cut.op != CutOp::rough) continue;
      const Length leaves =
          lathe.roughLeaves ? lathe.roughLeaves->value : customaryRoughLeaves(lathe.unit);
      if (const auto over = middle.plus(leaves)) cut.dia = readout->cross(*over, true);
    }
  }
  return work;
}

}  // namespace inchwright
