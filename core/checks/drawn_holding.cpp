#include "core/checks/drawn_holding.h"

#include <algorithm>
#include <utility>

#include "core/checks/held_shapes.h"

namespace inchwright {
namespace {

/// How far beyond the work something is drawn that goes on for ever.
constexpr std::int64_t kBeyond = Length::kTicksPerInch / 4;

class HoldingDrawer {
 public:
  HoldingDrawer(const WorkAt& at, const CheckedSetup& checked)
      : at_(at),
        checked_(checked),
        block_(at.part, at.solution, &at.setup),
        tools_(at.job.shop),
        work_{at.job, at.part,       at.solution, at.setup,
              block_, checked.holes, tools_,      checked.milled} {}

  DrawnHolding take() {
    if (!reach()) return {};
    if (const std::optional<ViceFrame> vice = viceOf(work_)) {
      addJaws(*vice);
      addParallels(*vice);
    }
    addObstacles(at_.setup.held.clamps, FindingCode::clamp);
    addObstacles(at_.setup.held.clearOf, FindingCode::clearOf);
    for (const Finding& finding : checked_.findings) {
      for (const Id& place : finding.places) addPlace(place);
    }
    return std::move(drawn_);
  }

 private:
  /// Where what goes on for ever is cut off; false where the work has no known size.
  bool reach() {
    const auto axes = axesIn(at_.setup.face);
    for (std::size_t i = 0; i < 2; ++i) {
      const auto low = block_.now(sideAt(axes[i], false)), high = block_.now(sideAt(axes[i], true));
      if (!low || !high) return false;
      low_[i] = low->ticks() - kBeyond;
      high_[i] = high->ticks() + kBeyond;
    }
    return true;
  }

  /// A spot of the face's axes on the table.
  std::optional<PlanePoint> onTable(const Spot& spot) const {
    PlanePoint point;
    for (const TableAxis* axis : {&at_.x, &at_.y}) {
      const std::size_t i = axesIn(at_.setup.face)[0] == axis->part.axis ? 0 : 1;
      const auto ticks = axis->onTable(Rational(spot[i]));
      const auto length = ticks ? nearestTick(*ticks) : std::nullopt;
      if (!length) return std::nullopt;
      (axis == &at_.x ? point.x : point.y) = length->toMillimetres();
    }
    return point;
  }

  /// A millimetre along one of the face's axes, or back, as it lies on the table.
  PlanePoint stepAlong(std::size_t axis, int way) const {
    Spot from{}, to{};
    to[axis] = way * Length::kTicksPerMillimetre;
    const auto a = onTable(from), b = onTable(to);
    return a && b ? PlanePoint{b->x - a->x, b->y - a->y} : PlanePoint{};
  }

  HeldThing* add(FindingCode code, std::size_t which, std::optional<Jaw> jaw,
                 const Rectangle& rectangle) {
    Spot low{}, high{};
    for (std::size_t i = 0; i < 2; ++i) {
      low[i] = std::clamp(rectangle.low[i].value_or(low_[i]), low_[i], high_[i]);
      high[i] = std::clamp(rectangle.high[i].value_or(high_[i]), low_[i], high_[i]);
      if (low[i] >= high[i]) return nullptr;
    }
    const auto a = onTable(low), b = onTable(high);
    if (!a || !b) return nullptr;
    HeldThing thing;
    thing.code = code;
    thing.which = which;
    thing.jaw = jaw;
    thing.low = {std::min(a->x, b->x), std::min(a->y, b->y)};
    thing.high = {std::max(a->x, b->x), std::max(a->y, b->y)};
    thing.met = std::any_of(
        checked_.findings.begin(), checked_.findings.end(), [&](const Finding& finding) {
          if (finding.code != code) return false;
          return code == FindingCode::jaw ? finding.jaw == jaw : finding.which == which;
        });
    drawn_.things.push_back(thing);
    return &drawn_.things.back();
  }

  void addJaws(const ViceFrame& vice) {
    for (const Jaw jaw : {Jaw::fixed, Jaw::moving}) {
      const bool fixed = jaw == Jaw::fixed;
      add(FindingCode::jaw, 0, jaw,
          jawRectangle(fixed ? vice.fixedSide : vice.movingSide,
                       fixed ? vice.fixedAt : vice.movingAt, work_, vice));
    }
  }

  void addParallels(const ViceFrame& vice) {
    const auto& parallels = at_.setup.held.parallels;
    for (std::size_t i = 0; parallels && i < parallels->size(); ++i) {
      const LaidParallel& one = (*parallels)[i];
      // Whatever is not said of its ends, it is drawn no longer than the work.
      Rectangle rectangle = rectangleOf(one, vice);
      if (!rectangle.low[vice.along]) rectangle.low[vice.along] = low_[vice.along] + kBeyond;
      if (!rectangle.high[vice.along]) rectangle.high[vice.along] = high_[vice.along] - kBeyond;
      HeldThing* const thing = add(FindingCode::parallel, i, one.jaw, rectangle);
      if (!thing) continue;
      thing->away = stepAlong(vice.across, one.jaw == Jaw::fixed ? vice.into : -vice.into);
    }
  }

  void addObstacles(const std::vector<Obstacle>& obstacles, FindingCode code) {
    for (std::size_t i = 0; i < obstacles.size(); ++i) {
      if (const auto rectangle = rectangleOf(obstacles[i], work_)) {
        HeldThing* const thing = add(code, i, std::nullopt, *rectangle);
        if (!thing) continue;
        thing->away = stepAlong(0, 1);
        thing->up = stepAlong(1, 1);
      }
    }
  }

  void addPlace(const Id& place) {
    const bool known = std::any_of(drawn_.found.begin(), drawn_.found.end(),
                                   [&](const FoundAt& one) { return one.place == place; });
    if (known) return;
    for (const PlannedHole& hole : checked_.holes) {
      if (hole.id != place || hole.face != at_.setup.face || !hole.centre) continue;
      const auto at = onTable({(*hole.centre)[0].ticks(), (*hole.centre)[1].ticks()});
      if (at) drawn_.found.push_back({place, *at});
    }
    const SeenFrame frame(at_.setup.face);
    for (const PlannedSlot& slot : checked_.milled) {
      if (slot.id != place || slot.shape.way.empty()) continue;
      const auto [low, high] = extentsOf(slot.shape.way);
      const PlanePoint middle{(low.x + high.x) / 2, (low.y + high.y) / 2};
      const auto at = onTable({frame.along(0, middle).ticks(), frame.along(1, middle).ticks()});
      if (at) drawn_.found.push_back({place, *at});
    }
  }

  const WorkAt& at_;
  const CheckedSetup& checked_;
  WorkBlock block_;
  ToolsOwned tools_;
  CheckedWork work_;
  Spot low_{};
  Spot high_{};
  DrawnHolding drawn_;
};

}  // namespace

DrawnHolding drawnHolding(const WorkAt& work, const CheckedSetup& checked) {
  return HoldingDrawer(work, checked).take();
}

HeldWork heldWork(const WorkAt& work) {
  CheckedSetup checked =
      planAndCheck(work.job, work.part, work.solution, work.setup, ToolsOwned(work.job.shop));
  DrawnHolding drawn = drawnHolding(work, checked);
  const WorkBlock block(work.part, work.solution, &work.setup);
  return {std::move(drawn), std::move(checked.findings), std::move(checked.pieces),
          putInOtherwise(work, block)};
}

}  // namespace inchwright
