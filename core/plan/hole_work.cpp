#include "core/plan/hole_work.h"

#include <map>
#include <tuple>

#include "core/plan/off_place.h"
#include "core/plan/zero.h"

namespace inchwright {
namespace {

Length customaryFraction(const General& general) {
  return general.fractions ? general.fractions->value : Length::ticks(Length::kTicksPerInch / 64);
}

/// Holes that are alike in all that matters to a plan share it.
using LikeKey =
    std::tuple<Face, std::string, std::string, std::string, std::string, std::string, std::string,
               std::string, int, int, bool, bool, bool, bool, std::string, std::int64_t>;

std::string textOf(const std::optional<Lettered>& figure) {
  if (!figure) return "";
  return figure->text + (figure->unit == Unit::inch ? "" : "|mm");
}

class HolePlans {
 public:
  HolePlans(const HolesAsked& asked, const WorkBlock& block, const ToolsOwned& tools)
      : asked_(asked),
        block_(block),
        tools_(tools),
        close_(closelyLettered(*asked.part)),
        offPlaces_(*asked.job, *asked.part, *asked.solution) {}

  std::vector<PlannedHole> take() {
    std::vector<PlannedHole> holes;
    holes.reserve(asked_.part->features.size());
    for (const Feature& feature : asked_.part->features) {
      const Drilled* drilled = feature.drilled();
      if (!drilled) continue;
      for (const Place& place : drivenPlaces(feature)) {
        holes.push_back(holeAt(feature, *drilled, place.id));
      }
    }
    return holes;
  }

 private:
  PlannedHole holeAt(const Feature& feature, const Drilled& drilled, const Id& place) {
    PlannedHole hole;
    hole.id = place;
    hole.feature = feature.id;
    hole.face = feature.face;
    hole.drilled = &drilled;
    hole.centre = centreOf(place, feature.face);
    hole.diameter = finishedDiameter(drilled).value_or(Length());
    if (isUp(feature.face)) hole.onFace = block_.stock(feature.face);
    hole.closePlace = close_.count(place) > 0 || close_.count(feature.id) > 0;
    const bool out = breaksOutNow(hole);
    const Pair pair = pairOf(hole);
    if (const Mended* const chosen = chosenWay(*asked_.part, place)) {
      planMended(hole, *chosen, workOf(hole, out, pair));
      return hole;
    }
    // Most holes are like the one before, which is told sooner than a key is made.
    const Standing standing{feature.face, hole.closePlace, out, pair};
    if (last_.drilled && last_.standing == standing && *last_.drilled == drilled) {
      hole.plan = last_.plan;
      return hole;
    }
    const LikeKey key{feature.face,
                      textOf(drilled.diameter),
                      drilled.thread,
                      textOf(drilled.seatDiameter),
                      textOf(drilled.seatDepth),
                      drilled.seatAngle ? drilled.seatAngle->text : std::string(),
                      drilled.depth.through ? "" : textOf(drilled.depth.length),
                      drilled.limits,
                      static_cast<int>(drilled.make),
                      static_cast<int>(drilled.locate),
                      hole.closePlace,
                      out,
                      pair.leads,
                      pair.there,
                      pair.text(),
                      pair.further.ticks()};
    const auto [entry, fresh] = plans_.emplace(key, SharedPlan());
    if (fresh) {
      entry->second = planHole(workOf(hole, out, pair), tools_, asked_.job->machine.speeds);
    }
    hole.plan = entry->second;
    last_ = {standing, &drilled, hole.plan};
    return hole;
  }

  /// A hole for which a way out was chosen is planned by itself.
  void planMended(PlannedHole& hole, const Mended& chosen, HoleWork work) {
    HolePlan plan;
    if (!chosen.piece.empty()) {
      plan = planHole(work, tools_, asked_.job->machine.speeds);
      plan.notes.push_back(HoleNote::pieceWrong);
    } else {
      bool unlikely = false;
      work.putRight = putRightAt(hole.id, *hole.drilled, chosen, unlikely);
      plan = planHole(work, tools_, asked_.job->machine.speeds);
      if (work.putRight && isOtherThanChosen(chosen.chosen, figuresOf(*work.putRight))) {
        plan.notes.push_back(HoleNote::chosenAnew);
      }
      if (unlikely) plan.notes.push_back(HoleNote::foundUnlikely);
    }
    hole.plan = std::move(plan);
    const std::optional<PutRight>& right = hole.plan->putRight;
    if (!right) return;
    if (right->next) {
      hole.drilled = &right->next->drilled;
      hole.diameter = right->next->size;
    } else if (right->bushing) {
      hole.diameter = right->bushing->bore;
    }
  }

  static ChosenFigures figuresOf(const PutRight& right) {
    ChosenFigures now;
    if (right.bushing) now.bore = right.bushing->bore;
    if (right.next) now.least = now.greatest = right.next->size;
    return now;
  }

  /// Empty where the hole as last measured is right, or was not measured.
  std::optional<PutRight> putRightAt(const Id& place, const Drilled& drilled, const Mended& chosen,
                                     bool& unlikely) {
    const MadePlace* last = nullptr;
    for (const MadePlace& made : asked_.part->made) {
      if (made.place == place && made.piece.empty() && made.measured()) last = &made;
    }
    const Result<DrawnSize> drawn = drawnSize(*asked_.part, place);
    if (!last || !drawn) return std::nullopt;
    const Result<FoundSize> found = foundSize(*last, pinHabit(asked_.job->shop));
    if (!found) return std::nullopt;
    unlikely = isUnlikely(*found, drawn->nominal);
    const Result<OffPlace> off = offPlaces_.of(*last);
    const bool astray = off && off->beyond;
    const bool sound =
        !found->known() ||
        verdictOf(*found, {drawn->limits.least, drawn->limits.greatest}) == Verdict::in;
    if (unlikely || (sound && !astray)) return std::nullopt;
    const WrongHole hole = wrongHole(*drawn, *found, off ? off->x : std::nullopt,
                                     off ? off->y : std::nullopt, asked_.job->unit);
    const Result<PutRight> right = putRight(chosen.way, drilled, hole, *found);
    if (!right) return std::nullopt;
    return *right;
  }

  std::optional<std::array<Length, 2>> centreOf(const Id& place, Face face) const {
    std::array<Length, 2> centre;
    for (std::size_t i = 0; i < 2; ++i) {
      const Position* position = placedPosition(*asked_.solution, place, axesIn(face)[i]);
      const auto at = position ? nearestTick(position->ticks) : std::nullopt;
      if (!at) return std::nullopt;
      centre[i] = *at;
    }
    return centre;
  }

  bool isUp(Face face) const { return asked_.setup && asked_.setup->face == face; }

  bool breaksOutNow(const PlannedHole& hole) const {
    if (!hole.centre) return false;
    const Length radius = Length::ticks(hole.diameter.ticks() / 2);
    for (std::size_t i = 0; i < 2; ++i) {
      for (const bool upper : {false, true}) {
        const Side side = sideAt(axesIn(hole.face)[i], upper);
        const auto at = isUp(hole.face) ? block_.now(side) : block_.finished(side);
        if (!at) continue;
        const std::int64_t inside = (at->ticks() - (*hole.centre)[i].ticks()) * (upper ? 1 : -1);
        if (inside < radius.ticks()) return true;
      }
    }
    return false;
  }

  /// A hole drilled with another part's: does it lead, and how much further does the drill go then.
  struct Pair {
    bool leads = false;
    Length further;
    std::optional<PartPlace> with;  ///< the other hole
    bool there = true;

    std::string text() const { return with ? with->part + '\n' + with->place : std::string(); }
    bool operator==(const Pair&) const = default;
  };

  Pair pairOf(const PlannedHole& hole) {
    const Job& job = *asked_.job;
    Pair own;
    own.with = hole.drilled->mate;
    if (own.with) {
      const Part* const other = job.part(own.with->part);
      own.there = other && featureOfPlace(*other, own.with->place);
    }
    if (hole.drilled->locate != Locate::pair) return own;
    const Part& part = *asked_.part;
    bool before = false;  // whether this part stands in the document before the one looked at
    for (const Part& other : job.parts) {
      if (&other == &part || other.name == part.name) {
        before = true;
        continue;
      }
      for (const Feature& feature : other.features) {
        const Drilled* drilled = feature.drilled();
        if (!drilled || drilled->locate != Locate::pair || !drilled->mate) continue;
        const bool named =
            drilled->mate->part == part.name &&
            (drilled->mate->place == hole.id || drilled->mate->place == hole.feature);
        // The one that names its mate follows it; where both do, the part that comes first leads.
        if (!named || (hole.drilled->mate && !before)) continue;
        // A ring or row that names a whole one goes with it hole by hole.
        return {true, thicknessOf(other, axisAcross(feature.face)),
                PartPlace{other.name, feature.id, {}}};
      }
    }
    own.leads = !hole.drilled->mate;
    return own;
  }

  Length thicknessOf(const Part& part, Axis axis) {
    const auto [entry, fresh] = thickness_.emplace(std::pair(part.name, axis), Length());
    if (!fresh) return entry->second;
    if (const Result<Solution> solution = solve(part, {.findSuspects = false})) {
      entry->second = WorkBlock(part, *solution, nullptr).sizeFinished(axis).value_or(Length());
    }
    return entry->second;
  }

  HoleWork workOf(const PlannedHole& hole, bool out, const Pair& pair) const {
    HoleWork work;
    work.drilled = *hole.drilled;
    work.unit = asked_.job->unit;
    work.material = asked_.part->material;
    work.closePlace = hole.closePlace;
    work.breaksOut = out;
    const Axis across = axisAcross(hole.face);
    const bool up = isUp(hole.face);
    work.onFace = hole.onFace;
    work.throughFinished = block_.sizeFinished(across);
    if (work.throughFinished) {
      work.throughFinished = work.throughFinished->plus(work.onFace);
    }
    work.throughNow = up ? block_.sizeNow(across) : work.throughFinished;
    work.pairLeads = pair.leads;
    work.with = pair.with;
    work.mateThere = pair.there;
    if (work.throughNow) work.throughNow = work.throughNow->plus(pair.further);
    return work;
  }

  const HolesAsked& asked_;
  const WorkBlock& block_;
  const ToolsOwned& tools_;
  std::set<std::string_view> close_;
  OffPlaces offPlaces_;
  std::map<LikeKey, SharedPlan> plans_;
  using Standing = std::tuple<Face, bool, bool, Pair>;
  struct {
    Standing standing;
    const Drilled* drilled = nullptr;
    SharedPlan plan;
  } last_;
  std::map<std::pair<std::string, Axis>, Length> thickness_;
};

}  // namespace

std::set<std::string_view> closelyLettered(const Part& part) {
  const std::int64_t fraction = 2 * customaryFraction(part.general).ticks();
  std::set<std::string_view> close;
  for (const Reading& reading : part.readings) {
    const Lettered& figure = reading.figure;
    const bool places = reading.kind == ReadingKind::along || reading.kind == ReadingKind::centres;
    if (!places || figure.reference) continue;
    const bool tight = figure.tolerance && figure.tolerance->width().ticks() < fraction;
    const bool decimal = figure.lettering == Lettering::decimal && figure.places >= 3 &&
                         (!figure.tolerance || tight);
    if (!tight && !decimal && !figure.basic) continue;
    close.insert(reading.from);
    close.insert(reading.to);
  }
  return close;
}

std::optional<Length> finishedDiameter(const Drilled& drilled) {
  if (drilled.make == Make::tap) {
    if (const Result<Thread> thread = threadNamed(drilled.thread); thread) return thread->major;
  }
  if (!drilled.diameter) return std::nullopt;
  return drilled.diameter->value;
}

std::vector<PlannedHole> planHoles(const HolesAsked& asked, const WorkBlock& block,
                                   const ToolsOwned& tools) {
  return HolePlans(asked, block, tools).take();
}

}  // namespace inchwright
