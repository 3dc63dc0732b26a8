#include <algorithm>

#include "core/checks/cut.h"
#include "core/checks/held_shapes.h"

namespace inchwright {
namespace {

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
    return tool.radius + around_ - cut.distanceFrom(rectangle);
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
    const auto [from, to] = cut.reach(vice.across);
    std::int64_t low = into * (from - jawAt);
    std::int64_t high = into * (to - jawAt);
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
          jawRectangle(side, fixed ? vice.fixedAt : vice.movingAt, work_, vice);
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
    const std::optional<Rectangle> rectangle = stopRectangle(work_);
    if (!rectangle) return;
    for (const CutPlace& cut : cuts_) {
      Finding* found =
          check(cut, *rectangle, FindingCode::stop, [](const CutPlace::Tool&) { return true; });
      if (found) found->side = *stop;
    }
  }

  void checkObstacles(const std::vector<Obstacle>& obstacles, FindingCode code) {
    for (std::size_t i = 0; i < obstacles.size(); ++i) {
      const std::optional<Rectangle> rectangle = rectangleOf(obstacles[i], work_);
      if (!rectangle) continue;
      for (const CutPlace& cut : cuts_) {
        Finding* found = check(cut, *rectangle, code, [](const CutPlace::Tool&) { return true; });
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
