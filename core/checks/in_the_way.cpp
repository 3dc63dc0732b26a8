#include <algorithm>

#include "core/checks/cut.h"
#include "core/plan/machine_axes.h"

namespace inchwright {
namespace {

/// The vice about the work as it is now: which axis of the face goes from jaw to jaw, which along.
struct ViceFrame {
  std::size_t across = 0;  ///< index of the face's axis square to the jaws
  std::size_t along = 1;
  Side fixedSide = Side::front;
  Side movingSide = Side::back;
  int into = 1;  ///< the direction from the fixed jaw into the work, along `across`
  std::int64_t fixedAt = 0;
  std::int64_t movingAt = 0;
  std::optional<std::int64_t> lowEnd;  ///< of the work now, along the jaws
  std::optional<std::int64_t> highEnd;
  bool fromHighEnd = false;  ///< parallels are measured from the upper end
};

std::optional<std::int64_t> ticksOf(const std::optional<Length>& length) {
  if (!length) return std::nullopt;
  return length->ticks();
}

// The left end of the work as it lies; where the jaws run away from the operator, the near one.
bool leftEndIsHigh(const Setup& setup, Axis along) {
  const MachineAxes axes = machineAxes(setup.face, setup.turn);
  return axes.x.axis == along ? axes.x.sign < 0 : axes.y.sign < 0;
}

std::optional<ViceFrame> viceOf(const CheckedWork& work) {
  const Setup& setup = work.setup;
  if (!setup.jaw) return std::nullopt;
  const auto axes = axesIn(setup.face);
  ViceFrame vice;
  vice.fixedSide = *setup.jaw;
  vice.movingSide = oppositeOf(vice.fixedSide);
  const Axis across = axisAcross(vice.fixedSide);
  if (across == axisAcross(setup.face)) return std::nullopt;
  vice.across = axes[0] == across ? 0 : 1;
  vice.along = 1 - vice.across;
  const auto fixedAt = work.block.now(vice.fixedSide), movingAt = work.block.now(vice.movingSide);
  if (!fixedAt || !movingAt) return std::nullopt;
  vice.into = -outward(vice.fixedSide);
  vice.fixedAt = fixedAt->ticks();
  vice.movingAt = movingAt->ticks();
  const Axis along = axes[vice.along];
  vice.lowEnd = ticksOf(work.block.now(sideAt(along, false)));
  vice.highEnd = ticksOf(work.block.now(sideAt(along, true)));
  const bool stopAlong = setup.stop && axisAcross(*setup.stop) == along;
  vice.fromHighEnd = stopAlong ? outward(*setup.stop) > 0 : leftEndIsHigh(setup, along);
  return vice;
}

/// One side of a band across the work: from `near` to `far` of a jaw, in the direction into the
/// work.
void setBand(Rectangle& rectangle, std::size_t axis, std::int64_t jawAt, int into,
             std::int64_t near, std::int64_t far) {
  const std::int64_t a = jawAt + into * near, b = jawAt + into * far;
  rectangle.low[axis] = std::min(a, b);
  rectangle.high[axis] = std::max(a, b);
}

Rectangle rectangleOf(const LaidParallel& one, const ViceFrame& vice) {
  Rectangle rectangle;
  const std::int64_t gap = one.gap ? one.gap->value.ticks() : 0;
  const bool fixed = one.jaw == Jaw::fixed;
  setBand(rectangle, vice.across, fixed ? vice.fixedAt : vice.movingAt,
          fixed ? vice.into : -vice.into, gap, gap + one.thick->value.ticks());
  const auto& end = vice.fromHighEnd ? vice.highEnd : vice.lowEnd;
  if (!end) return rectangle;
  const int way = vice.fromHighEnd ? -1 : 1;
  const auto place = [&](const std::optional<Lettered>& from) -> std::optional<std::int64_t> {
    if (!from) return std::nullopt;
    return *end + way * from->value.ticks();
  };
  rectangle.low[vice.along] = place(way > 0 ? one.from : one.to);
  rectangle.high[vice.along] = place(way > 0 ? one.to : one.from);
  return rectangle;
}

/// A jaw: all that lies beyond its side of the work, but where the work stands out of the jaws.
Rectangle rectangleOf(Side side, std::int64_t at, const CheckedWork& work, const ViceFrame& vice) {
  Rectangle rectangle;
  if (outward(side) > 0) {
    rectangle.low[vice.across] = at;
  } else {
    rectangle.high[vice.across] = at;
  }
  const Axis along = axesIn(work.setup.face)[vice.along];
  for (const bool upper : {false, true}) {
    const auto& out = work.setup.held.overhang[static_cast<std::size_t>(sideAt(along, upper))];
    const auto& end = upper ? vice.highEnd : vice.lowEnd;
    if (!out || !end) continue;
    auto& bound = upper ? rectangle.high[vice.along] : rectangle.low[vice.along];
    bound = *end + (upper ? -1 : 1) * out->value.ticks();
  }
  return rectangle;
}

class WayChecker {
 public:
  explicit WayChecker(const CheckedWork& work)
      : work_(work), cuts_(cutPlaces(work)), around_(work.tools.marginAround().ticks()) {}

  std::vector<Finding> take() && {
    if (const std::optional<ViceFrame> vice = viceOf(work_)) {
      checkParallels(*vice);
      checkJaws(*vice);
      checkBed();
    }
    checkStop();
    checkObstacles(work_.setup.held.clamps, FindingCode::clamp);
    checkObstacles(work_.setup.held.clearOf, FindingCode::clearOf);
    return std::move(findings_);
  }

 private:
  /// How much nearer than it may a tool of a cut comes to a rectangle; 0 or less where it does not.
  std::int64_t nearerBy(const CutPlace& cut, const CutPlace::Tool& tool,
                        const Rectangle& rectangle) const {
    const Rectangle grown =
        cut.length > 0 ? grownBack(rectangle, cut.along, cut.length) : rectangle;
    return tool.radius + around_ - distanceTo(grown, cut.from);
  }

  /// The tool that comes nearest among those that pass; its finding, or nothing.
  template <class Passes>
  Finding* check(const CutPlace& cut, const Rectangle& rectangle, FindingCode code, Passes passes) {
    const CutPlace::Tool* worst = nullptr;
    std::int64_t by = 0;
    for (const CutPlace::Tool& tool : cut.tools) {
      if (!passes(tool)) continue;
      const std::int64_t nearer = nearerBy(cut, tool, rectangle);
      if (nearer <= by) continue;
      by = nearer;
      worst = &tool;
    }
    if (!worst) return nullptr;
    Finding finding;
    finding.code = code;
    finding.places = {cut.id};
    finding.by = Length::ticks(by);
    finding.setup = work_.setup.name;
    finding.tool = worst->name;
    findings_.push_back(std::move(finding));
    return &findings_.back();
  }

  void checkParallels(const ViceFrame& vice) {
    const auto& parallels = work_.setup.held.parallels;
    for (std::size_t i = 0; parallels && i < parallels->size(); ++i) {
      const LaidParallel& one = (*parallels)[i];
      const Rectangle rectangle = rectangleOf(one, vice);
      for (const CutPlace& cut : cuts_) {
        Finding* found = check(cut, rectangle, FindingCode::parallel,
                               [](const CutPlace::Tool& tool) { return tool.through; });
        if (!found) continue;
        found->which = i;
        found->jaw = one.jaw;
        found->shift = shiftOf(one, cut, vice);
      }
    }
  }

  /// How far the parallel would have to go, away from its jaw (above 0) or towards it: the shorter
  /// way that leaves it beside the jaw.
  std::optional<Length> shiftOf(const LaidParallel& one, const CutPlace& cut,
                                const ViceFrame& vice) const {
    const bool fixed = one.jaw == Jaw::fixed;
    const std::int64_t jawAt = fixed ? vice.fixedAt : vice.movingAt;
    const int into = fixed ? vice.into : -vice.into;
    const std::int64_t gap = one.gap ? one.gap->value.ticks() : 0;
    const std::int64_t thick = one.thick->value.ticks();
    const CutPlace::Tool* widest = nullptr;
    for (const CutPlace::Tool& tool : cut.tools) {
      if (tool.through && (!widest || tool.radius > widest->radius)) widest = &tool;
    }
    const std::int64_t keep = widest->radius + around_;
    const std::int64_t run = cut.along == vice.across ? cut.length : 0;
    std::int64_t low = into * (cut.from[vice.across] - jawAt);
    std::int64_t high = into * (cut.from[vice.across] + run - jawAt);
    if (low > high) std::swap(low, high);
    const std::int64_t away = high + keep - gap, towards = gap - (low - keep - thick);
    const bool roomAtJaw = low - keep - thick >= 0;
    if (roomAtJaw && towards < away) return Length::ticks(-towards);
    return Length::ticks(away);
  }

  void checkJaws(const ViceFrame& vice) {
    const auto& owned = work_.tools.shop().vice;
    const auto thick = work_.block.sizeNow(axisAcross(work_.setup.face));
    if (!owned || !owned->jawHeight || !thick) return;
    // How far below the face the jaws begin.
    const std::int64_t top = standsOn().ticks() + thick->ticks() - owned->jawHeight->value.ticks();
    for (const Jaw jaw : {Jaw::fixed, Jaw::moving}) {
      const bool fixed = jaw == Jaw::fixed;
      const Side side = fixed ? vice.fixedSide : vice.movingSide;
      const Rectangle rectangle =
          rectangleOf(side, fixed ? vice.fixedAt : vice.movingAt, work_, vice);
      for (const CutPlace& cut : cuts_) {
        Finding* found = check(cut, rectangle, FindingCode::jaw, [&](const CutPlace::Tool& tool) {
          return tool.end && tool.end->ticks() > top;
        });
        if (!found) continue;
        found->jaw = jaw;
        found->side = side;
      }
    }
  }

  /// What the work stands on above the vice's bed: the lowest of its parallels.
  Length standsOn() const {
    const auto& parallels = work_.setup.held.parallels;
    if (!parallels || parallels->empty()) return Length();
    Length least = (*parallels)[0].tall->value;
    for (const LaidParallel& one : *parallels) least = std::min(least, one.tall->value);
    return least;
  }

  void checkBed() {
    if (!work_.setup.held.parallels) return;  // nobody said what it stands on
    const Length room = standsOn();
    for (const CutPlace& cut : cuts_) {
      const CutPlace::Tool* deepest = nullptr;
      for (const CutPlace::Tool& tool : cut.tools) {
        if (tool.through && (!deepest || tool.below > deepest->below)) deepest = &tool;
      }
      if (!deepest || deepest->below <= room) continue;
      Finding finding;
      finding.code = FindingCode::viceBed;
      finding.places = {cut.id};
      finding.by = deepest->below.minus(room);
      finding.setup = work_.setup.name;
      finding.tool = deepest->name;
      finding.wanted = deepest->below;
      finding.had = room;
      findings_.push_back(std::move(finding));
    }
  }

  void checkStop() {
    const auto& stop = work_.setup.stop;
    const auto axes = axesIn(work_.setup.face);
    if (!stop || axisAcross(*stop) == axisAcross(work_.setup.face)) return;
    const auto at = work_.block.now(*stop);
    if (!at) return;
    Rectangle rectangle;
    const std::size_t axis = axes[0] == axisAcross(*stop) ? 0 : 1;
    (outward(*stop) > 0 ? rectangle.low : rectangle.high)[axis] = at->ticks();
    for (const CutPlace& cut : cuts_) {
      Finding* found =
          check(cut, rectangle, FindingCode::stop, [](const CutPlace::Tool&) { return true; });
      if (found) found->side = *stop;
    }
  }

  void checkObstacles(const std::vector<Obstacle>& obstacles, FindingCode code) {
    const auto axes = axesIn(work_.setup.face);
    for (std::size_t i = 0; i < obstacles.size(); ++i) {
      Rectangle rectangle;
      bool known = true;
      for (std::size_t j = 0; j < 2; ++j) {
        const auto& span = obstacles[i].along[static_cast<std::size_t>(axes[j])];
        if (!span) continue;
        const auto lower = work_.block.finished(sideAt(axes[j], false));
        known = known && lower.has_value();
        if (!lower) continue;
        rectangle.low[j] = lower->ticks() + span->first.value.ticks();
        rectangle.high[j] = lower->ticks() + span->second.value.ticks();
      }
      if (!known) continue;
      for (const CutPlace& cut : cuts_) {
        Finding* found = check(cut, rectangle, code, [](const CutPlace::Tool&) { return true; });
        if (found) found->which = i;
      }
    }
  }

  const CheckedWork& work_;
  std::vector<CutPlace> cuts_;
  std::int64_t around_;
  std::vector<Finding> findings_;
};

}  // namespace

std::vector<Finding> checkInTheWay(const CheckedWork& work) {
  return WayChecker(work).take();
}

}  // namespace inchwright
