#include "core/kit/as_made.h"

#include <algorithm>
#include <map>

#include "core/kit/found_place.h"
#include "core/kit/kit_of_part.h"
#include "core/making/put_right.h"
#include "core/plan/off_place.h"
#include "core/shop/fits.h"
#include "core/turned/lathe_work.h"

namespace inchwright {
namespace {

class MadeRows {
 public:
  explicit MadeRows(const Job& job) : job_(job) {}

  Result<Done> addAll(const Part& part, const Solution& solution, AsMade& all) {
    OffPlaces places(job_, part, solution);
    for (const MadePlace& made : part.made) {
      const bool known =
          std::any_of(part.features.begin(), part.features.end(),
                      [&](const Feature& one) { return isNamedBy(one, made.place); });
      if (!known) {
        all.nowhere.push_back({part.name, made.place, {}});
        continue;
      }
      if (!made.setup.empty() && part.setup(made.setup) == nullptr) {
        all.nowhere.push_back({part.name, made.place, made.setup});
      }
      if (const Result<Done> added = add(part, solution, made, places); !added)
        return added.error();
    }
    return Done{};
  }
  std::vector<MadeRow> take() && { return std::move(rows_); }

 private:
  Result<Done> add(const Part& part, const Solution& solution, const MadePlace& made,
                   OffPlaces& places) {
    MadeRow row;
    row.part = part.name;
    row.place = made.place;
    row.setup = made.setup;
    row.piece = made.piece;
    const Result<DrawnSize> drawn = drawnSize(part, made.place);
    if (drawn) row.wantedSize = *drawn;
    const Result<FoundSize> found = foundSize(made, pinHabit(job_.shop));
    if (!found) return found.error();
    row.foundSize = *found;
    if (const auto next = chosenNextSize(part, made.place, *found, job_.unit);
        next && isOpenedTo(*next, *found)) {
      row.wantedSize = DrawnSize{next->size, next->limits};
    }
    row.unlikely = drawn && isUnlikely(*found, drawn->nominal);
    if (made.x) row.foundX = made.x->value;
    if (made.y) row.foundY = made.y->value;
    Result<OffPlace> off = places.of(made);
    if (!off) return off.error();
    row.wantedX = std::move(off->wantedX);
    row.wantedY = std::move(off->wantedY);
    row.offX = off->x;
    row.offY = off->y;
    if (const Setup* setup = part.setup(made.setup); setup && setup->chucked) {
      const Result<Done> placed = alongTheLathe(part, solution, *setup, row);
      if (!placed) return placed.error();
    }
    addVerdicts(row, off->beyond);
    rows_.push_back(std::move(row));
    return Done{};
  }

  static void addVerdicts(MadeRow& row, bool astray) {
    Verdict size = Verdict::notMeasured;
    if (row.foundSize.known()) {
      size = row.wantedSize ? verdictOf(row.foundSize, {row.wantedSize->limits.least,
                                                        row.wantedSize->limits.greatest})
                            : Verdict::cannotTell;
    }
    const bool placeMeasured = row.foundX || row.foundY;
    if (size == Verdict::notMeasured && placeMeasured && !astray) size = Verdict::in;
    if (size != Verdict::notMeasured || !astray) row.verdicts.push_back(size);
    if (astray) row.verdicts.push_back(Verdict::offPlace);
  }

  /// Lengths are measured along the lathe as its carriage reads; there are no budgets there.
  Result<Done> alongTheLathe(const Part& part, const Solution& solution, const Setup& setup,
                             MadeRow& row) {
    const Result<LatheWork> work = latheWork(job_, part, solution, setup);
    if (!work) return work.error();
    for (const LatheRow& one : work->rows) {
      if (one.id != row.place) continue;
      row.wantedX = Coordinate{one.length.text, one.length.value, Length(), one.length.exact};
      if (row.foundX) row.offX = row.foundX->minus(one.length.value);
    }
    return Done{};
  }

  const Job& job_;
  std::vector<MadeRow> rows_;
};

/// All that any of two may be.
FoundSize hull(const FoundSize& a, const FoundSize& b) {
  FoundSize both;
  if (a.least && b.least) both.least = std::min(*a.least, *b.least);
  if (a.greatest && b.greatest) both.greatest = std::max(*a.greatest, *b.greatest);
  return both;
}

Result<std::optional<FoundSize>> foundAt(const Job& job, const Part& part, const Id& place) {
  std::map<std::string, FoundSize> byPiece;
  for (const MadePlace& made : part.made) {
    if (made.place != place) continue;
    const Result<FoundSize> found = foundSize(made, pinHabit(job.shop));
    if (!found) return found.error();
    if (found->known()) byPiece[made.piece] = *found;
  }
  std::optional<FoundSize> all;
  for (const auto& [piece, found] : byPiece) all = all ? hull(*all, found) : found;
  return all;
}

Result<SizeNow> sizeOf(const Job& job, const SizeOrPlace& side, bool asMade) {
  if (const auto* text = std::get_if<Lettered>(&side)) {
    const auto limits = limitsOf(*text, text->tolerance);
    if (!limits) return Error{ErrorCode::outOfRange, "the limits of this size can't be held"};
    return SizeNow{{limits->least, limits->greatest}, text->value};
  }
  const PartPlace& at = std::get<PartPlace>(side);
  const Part* part = job.part(at.part);
  if (!part) {
    return Error{ErrorCode::notFound, "the job has no part `" + at.part + "`", at.part};
  }
  const Result<DrawnSize> drawn = drawnSize(*part, at.place);
  if (!drawn) return drawn.error();
  if (asMade) {
    const Result<std::optional<FoundSize>> found = foundAt(job, *part, at.place);
    if (!found) return found.error();
    if (*found) return SizeNow{**found, drawn->nominal, true, isUnlikely(**found, drawn->nominal)};
  }
  return SizeNow{{drawn->limits.least, drawn->limits.greatest}, drawn->nominal};
}

Result<FoundSize> clearanceIn(const Job& job, const Mate& mate, bool asMade, bool& measured) {
  const Result<SizeNow> shaft = sizeOf(job, mate.shaft, asMade);
  if (!shaft) return shaft.error();
  measured = measured || shaft->measured;
  std::optional<FoundSize> all;
  for (const SizeOrPlace& one : holesOf(mate)) {
    const Result<SizeNow> hole = sizeOf(job, one, asMade);
    if (!hole) return hole.error();
    measured = measured || hole->measured;
    const FoundSize clearance = clearanceOf(hole->size, shaft->size);
    all = all ? hull(*all, clearance) : clearance;
  }
  return *all;
}

MateState stateOf(const Job& job, const Mate& mate) {
  MateState state;
  state.name = mate.name;
  for (const auto* side : {&mate.hole, &mate.shaft}) {
    state.fault = sideFault(job, *side, side == &mate.hole);
    if (state.fault) return state;
  }
  bool drawnOnly = false;
  const Result<FoundSize> wanted = wantedClearance(job, mate);
  const Result<FoundSize> drawn = clearanceIn(job, mate, false, drawnOnly);
  const Result<FoundSize> now = clearanceIn(job, mate, true, state.measured);
  for (const Result<FoundSize>* one : {&wanted, &drawn, &now}) {
    if (one->ok()) continue;
    state.fault = one->error();
    return state;
  }
  state.wanted = *wanted;
  state.clearanceAsDrawn = *drawn;
  state.clearance = *now;
  state.verdict = verdictOf(*now, *wanted);
  const Result<SizeNow> hole = sizeOf(job, mate.hole, false),
                        shaft = sizeOf(job, mate.shaft, false);
  state.tightAsLettered = hole && shaft && hole->nominal < shaft->nominal && wanted->least &&
                          *wanted->least >= Length();
  state.toBeSuited = state.measured && state.verdict != Verdict::in && isToBeSuited(job, mate);
  // What the drawn limits leave open is told by measuring, not by an instrument.
  if (!state.measured && state.verdict == Verdict::cannotTell) state.verdict = Verdict::notMeasured;
  return state;
}

GapState stateOf(const Job& job, const Gap& gap, const FoundFigures& found) {
  GapState state;
  state.name = gap.name;
  const Result<GapStack> drawn = gapStack(job, gap);
  const Result<GapStack> made = gapStackAsFound(job, gap, found);
  for (const Result<GapStack>* one : {&drawn, &made}) {
    if (one->ok()) continue;
    state.fault = one->error();
    return state;
  }
  state.least = drawn->least;
  state.greatest = drawn->greatest;
  state.asDrawn = drawn->stack.worst;
  state.asMade = made->stack.worst;
  state.keepsAsDrawn = drawn->keeps(drawn->stack.worst);
  state.keeps = made->keeps(made->stack.worst);
  return state;
}

}  // namespace

bool MadeRow::has(Verdict verdict) const {
  return std::find(verdicts.begin(), verdicts.end(), verdict) != verdicts.end();
}

bool MadeRow::cameOutWrong() const {
  return has(Verdict::over) || has(Verdict::under) || has(Verdict::offPlace);
}

Result<SizeNow> sizeNow(const Job& job, const SizeOrPlace& side) {
  return sizeOf(job, side, true);
}

Result<SizeNow> sizeAsDrawn(const Job& job, const SizeOrPlace& side) {
  return sizeOf(job, side, false);
}

FoundSize clearanceOf(const FoundSize& hole, const FoundSize& shaft) {
  FoundSize clearance;
  if (hole.least && shaft.greatest) clearance.least = hole.least->minus(*shaft.greatest);
  if (hole.greatest && shaft.least) clearance.greatest = hole.greatest->minus(*shaft.least);
  return clearance;
}

std::vector<SizeOrPlace> holesOf(const Mate& mate) {
  const auto* at = std::get_if<PartPlace>(&mate.hole);
  if (!at || mate.places.empty()) return {mate.hole};
  std::vector<SizeOrPlace> holes;
  for (const Id& place : mate.places) holes.push_back(PartPlace{at->part, place, {}});
  return holes;
}

Result<FoundSize> wantedClearance(const Job& job, const Mate& mate) {
  if (mate.fit.empty()) {
    if (!mate.least && !mate.greatest) {
      return Error{ErrorCode::badRequest,
                   "the mate `" + mate.name +
                       "` says no clearance: give its `fit`, or `least` and "
                       "`greatest`",
                   mate.name};
    }
    FoundSize wanted;
    if (mate.least) wanted.least = mate.least->value;
    if (mate.greatest) wanted.greatest = mate.greatest->value;
    if (wanted.least && wanted.greatest && *wanted.least > *wanted.greatest) {
      return Error{ErrorCode::badRequest,
                   "the mate `" + mate.name + "` has a least clearance above its greatest",
                   mate.name};
    }
    return wanted;
  }
  const Result<SizeNow> hole = sizeAsDrawn(job, mate.hole);
  if (!hole) return hole.error();
  const Result<Fit> fit = fitByName(mate.fit, hole->nominal);
  if (!fit) return fit.error();
  return FoundSize{fit->leastClearance(), fit->greatestClearance()};
}

FoundFigures foundFigures(const Job& job, std::span<const Solution> solutions) {
  FoundFigures found;
  found.size = [&job](const PartPlace& at) -> std::optional<SizeLimits> {
    const Part* part = job.part(at.part);
    if (!part) return std::nullopt;
    const Result<std::optional<FoundSize>> size = foundAt(job, *part, at.place);
    if (!size || !*size || !(*size)->least || !(*size)->greatest) return std::nullopt;
    return SizeLimits{*(*size)->least, *(*size)->greatest};
  };
  found.distance = [&job, solutions](const Part& part, Axis axis, const Id& from, const Id& to) {
    for (std::size_t i = 0; i < job.parts.size(); ++i) {
      if (job.parts[i].name == part.name) {
        return foundDistance(job, job.parts[i], solutions[i], axis, from, to);
      }
    }
    return std::optional<SizeLimits>();
  };
  return found;
}

Result<std::vector<MadeRow>> madeRows(const Job& job, const Part& part, const Solution& solution) {
  MadeRows rows(job);
  AsMade aside;
  const Result<Done> added = rows.addAll(part, solution, aside);
  if (!added) return added.error();
  return std::move(rows).take();
}

std::vector<MateState> mateStates(const Job& job) {
  std::vector<MateState> all;
  for (const Mate& mate : job.mates) all.push_back(stateOf(job, mate));
  return all;
}

GapState gapState(const Job& job, const Gap& gap, std::span<const Solution> solutions) {
  return stateOf(job, gap, foundFigures(job, solutions));
}

Result<AsMade> asMade(const Job& job, std::span<const Solution> solutions) {
  AsMade all;
  MadeRows rows(job);
  for (std::size_t i = 0; i < job.parts.size(); ++i) {
    const Result<Done> added = rows.addAll(job.parts[i], solutions[i], all);
    if (!added) return added.error();
  }
  all.rows = std::move(rows).take();
  for (MadeRow& row : all.rows) {
    const Part& part = *job.part(row.part);
    const bool isChosen = std::any_of(
        part.mended.begin(), part.mended.end(),
        [&](const Mended& one) { return one.place == row.place && one.piece == row.piece; });
    row.open = !isChosen && row.cameOutWrong();
    const CameOut one = cameOut(job, part, row);
    if (one.changed) {
      all.changed.push_back({row.part, row.place, one.chosen->way, one.chosen->chosen});
    }
  }
  all.mates = mateStates(job);
  const FoundFigures found = foundFigures(job, solutions);
  for (const Gap& gap : job.gaps) all.gaps.push_back(stateOf(job, gap, found));
  return all;
}

bool hasOpen(const AsMade& made, std::string_view part) {
  return std::any_of(made.rows.begin(), made.rows.end(),
                     [&](const MadeRow& row) { return row.part == part && row.open; });
}

AsMade concerning(const Job& job, const AsMade& all, std::string_view part) {
  AsMade some;
  const auto isOf = [part](const SizeOrPlace& side) {
    const auto* at = std::get_if<PartPlace>(&side);
    return at && at->part == part;
  };
  const auto copyThose = [](const auto& from, auto& to, const auto& wanted) {
    for (std::size_t i = 0; i < from.size(); ++i) {
      if (wanted(i)) to.push_back(from[i]);
    }
  };
  copyThose(all.rows, some.rows, [&](std::size_t i) { return all.rows[i].part == part; });
  copyThose(all.changed, some.changed, [&](std::size_t i) { return all.changed[i].part == part; });
  copyThose(all.nowhere, some.nowhere, [&](std::size_t i) { return all.nowhere[i].part == part; });
  copyThose(all.mates, some.mates,
            [&](std::size_t i) { return isOf(job.mates[i].hole) || isOf(job.mates[i].shaft); });
  copyThose(all.gaps, some.gaps, [&](std::size_t i) {
    const std::vector<GapMember>& members = job.gaps[i].members;
    return std::any_of(members.begin(), members.end(), [&](const GapMember& one) {
      return one.part == part || (one.hole && isOf(*one.hole)) || (one.shaft && isOf(*one.shaft));
    });
  });
  return some;
}

}  // namespace inchwright
