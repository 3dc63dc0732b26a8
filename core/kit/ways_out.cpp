#include "core/kit/ways_out.h"

#include <algorithm>

#include "core/kit/effects.h"
#include "core/making/tools_owned.h"
#include "core/part/name_table.h"
#include "core/shop/threads.h"

namespace inchwright {
namespace {

constexpr NameTable<3> kEffectNames{"reading", "mate", "gap"};

const Error kNothingFits{ErrorCode::outOfRange, "what was measured can't be worked with"};

/// The entry that counts: the last one measured there.
const MadeRow* lastRow(const AsMade& made, std::string_view part, std::string_view place) {
  const MadeRow* last = nullptr;
  for (const MadeRow& row : made.rows) {
    const bool measured = row.foundSize.known() || row.foundX || row.foundY;
    if (row.part == part && row.place == place && measured) last = &row;
  }
  return last;
}

class Finding {
 public:
  Finding(const Job& job, const Drilled& drilled, const MadeRow& row)
      : job_(job), drilled_(drilled), row_(row) {}

  /// The ways and, for each, what becomes of the hole.
  Result<std::vector<Way>> take() {
    hole_ = wrongHole(*row_.wantedSize, row_.foundSize, row_.offX, row_.offY, job_.unit);
    // Metal is still there to be cut: nothing is lined.
    const bool onlyUnder = row_.has(Verdict::under) && !offPlace();
    // What is as its print wants it is not cut again: only what goes into it can follow it.
    const bool well = row_.has(Verdict::in) && !offPlace();
    if (row_.has(Verdict::under)) addOpening();
    addShafts();
    for (const auto add : {&Finding::addBush, &Finding::addPlug, &Finding::addEccentric}) {
      if (onlyUnder || well) break;
      if (const Result<Done> added = (this->*add)(); !added) return added.error();
    }
    if (!well) addNextSize();
    add(begun(WayOut::leave), {row_.foundSize, true, {}});
    return std::move(ways_);
  }
  const std::vector<HoleThen>& thens() const { return thens_; }

 private:
  void add(Way way, HoleThen then) {
    ways_.push_back(std::move(way));
    thens_.push_back(std::move(then));
  }

  Way begun(WayOut kind) const {
    Way way;
    way.way = kind;
    way.setup = row_.setup;
    way.towardX = hole_.offX.negated();
    way.towardY = hole_.offY.negated();
    return way;
  }

  FoundSize asWanted() const { return {hole_.wanted.least, hole_.wanted.greatest}; }
  bool offPlace() const { return row_.has(Verdict::offPlace); }

  /// One for each mate of the hole: its clearance as it is asked for, on the hole as found.
  void addShafts() {
    for (const Mate* mate : matesOfHole(job_, row_.part, row_.place)) {
      const Result<FoundSize> wanted = wantedClearance(job_, *mate);
      if (!wanted || !row_.foundSize.known()) continue;
      Way way = begun(WayOut::shaft);
      FoundSize shaft;
      if (row_.foundSize.greatest && wanted->greatest) {
        shaft.least = row_.foundSize.greatest->minus(*wanted->greatest);
      }
      if (row_.foundSize.least && wanted->least) {
        shaft.greatest = row_.foundSize.least->minus(*wanted->least);
      }
      way.shaft = shaft;
      way.sizeName = mate->name;
      const bool canBeHad = shaft.least && shaft.greatest && *shaft.least <= *shaft.greatest;
      add(std::move(way),
          {row_.foundSize, true, canBeHad ? std::optional(shaft) : std::nullopt, mate->name});
    }
  }

  /// Reamed or bored out to the size that is wanted, where it is.
  void addOpening() {
    Way way = begun(WayOut::openToSize);
    way.size = hole_.nominal;
    const Result<Thread> thread = threadNamed(drilled_.thread);
    way.sizeName = thread ? thread->tapDrill : sizeName(hole_.nominal, hole_.unit);
    setCentre(way, false);
    add(std::move(way), {asWanted(), true, {}});
  }

  /// About the wanted centre; where the hole is only over size, about the one it has.
  Result<Done> addBush() {
    Result<Bushing> bush = bushOnWantedCentre(hole_);
    if (!bush) return bush.error();
    Way way = begun(WayOut::bush);
    const bool wantedCentre = offPlace();
    setCentre(way, wantedCentre);
    way.bushing = *std::move(bush);
    add(std::move(way), {asWanted(), !wantedCentre, {}});
    return Done{};
  }

  Result<Done> addPlug() {
    Result<Bushing> plug = plugFor(hole_);
    if (!plug) return plug.error();
    Way way = begun(WayOut::plug);
    setCentre(way, true);
    way.bushing = *std::move(plug);
    add(std::move(way), {asWanted(), false, {}});
    return Done{};
  }

  Result<Done> addEccentric() {
    if (hole_.off().isZero()) return Done{};
    Result<Bushing> bush = eccentricBush(hole_);
    if (!bush) return bush.error();
    Way way = begun(WayOut::eccentricBush);
    setCentre(way, false);
    way.bushing = *std::move(bush);
    add(std::move(way), {asWanted(), false, {}});
    return Done{};
  }

  void setCentre(Way& way, bool wanted) const {
    const auto along = [&](const std::optional<Coordinate>& at,
                           const std::optional<Length>& found) {
      if (!wanted && found) return found;
      return at ? std::optional(at->value) : std::nullopt;
    };
    way.centreX = along(row_.wantedX, row_.foundX);
    way.centreY = along(row_.wantedY, row_.foundY);
  }

  void addNextSize() {
    const std::optional<NextSize> next = nextSize(drilled_, hole_);
    if (!next) return;
    Way way = begun(WayOut::nextSize);
    way.size = next->size;
    way.sizeName = next->name;
    setCentre(way, false);
    add(std::move(way), {{next->size, next->size}, true, {}});
  }

  const Job& job_;
  const Drilled& drilled_;
  const MadeRow& row_;
  WrongHole hole_;
  std::vector<Way> ways_;
  std::vector<HoleThen> thens_;
};

/// Of what a hole is that can be put right. Errors as `waysOut`.
Result<const Drilled*> drilledAt(const Part& part, std::string_view place) {
  const Feature* const feature = featureOfPlace(part, place);
  if (!feature) {
    return Error{ErrorCode::notFound,
                 "the part `" + part.name + "` has no place `" + std::string(place) + "`",
                 std::string(place)};
  }
  if (feature->drilled()) return feature->drilled();
  return Error{ErrorCode::badRequest, "`" + std::string(place) + "` is no hole",
               std::string(place)};
}

}  // namespace

ChosenFigures figuresOf(const Way& way) {
  ChosenFigures figures;
  if (way.bushing) figures.bore = way.bushing->bore;
  if (way.size) figures.least = figures.greatest = way.size;
  if (way.shaft) {
    figures.least = way.shaft->least;
    figures.greatest = way.shaft->greatest;
  }
  figures.exact = figures.bore || figures.least || figures.greatest;
  return figures;
}

Result<std::vector<Way>> waysWithoutEffects(const Job& job, const Part& part, const MadeRow& row) {
  const Result<const Drilled*> drilled = drilledAt(part, row.place);
  if (!drilled) return drilled.error();
  if (!row.wantedSize) {
    return Error{ErrorCode::badRequest, "`" + row.place + "` has no size on the print", row.place};
  }
  return Finding(job, **drilled, row).take();
}

std::string_view nameOf(Effect::Of of) {
  return nameIn(kEffectNames, of);
}

Result<std::vector<Way>> waysOut(const Job& job, std::span<const Solution> solutions,
                                 std::string_view part, std::string_view place) {
  const Part* const one = job.part(part);
  if (!one) {
    return Error{ErrorCode::notFound, "the job has no part `" + std::string(part) + "`",
                 std::string(part)};
  }
  const Result<const Drilled*> drilled = drilledAt(*one, place);
  if (!drilled) return drilled.error();
  const Result<AsMade> made = asMade(job, solutions);
  if (!made) return made.error();
  const MadeRow* const row = lastRow(*made, part, place);
  if (!row || !row->wantedSize) {
    return Error{ErrorCode::badRequest,
                 row ? "`" + std::string(place) + "` has no size on the print"
                     : "nothing was measured at `" + std::string(place) +
                           "`: put what was found into `made`",
                 std::string(place)};
  }
  Finding finding(job, **drilled, *row);
  Result<std::vector<Way>> ways = finding.take();
  if (!ways) return ways;
  const Effects effects(job, solutions, *one, *row);
  for (std::size_t i = 0; i < ways->size(); ++i) {
    (*ways)[i].effects = effects.with(finding.thens()[i]);
  }
  return ways;
}

}  // namespace inchwright
