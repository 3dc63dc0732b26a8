#include <algorithm>

#include "core/checks/cut.h"
#include "core/plan/machine_axes.h"
#include "core/plan/zero.h"
#include "core/shop/sizes.h"

namespace inchwright {
namespace {

// Under either of these the work is not held (common practice, no source).
constexpr Length kLeastGrip = sixtyFourths(8);
constexpr std::int64_t kGripShare = 3;

/// Places that the table drives to along one axis of the part: lowest and highest.
struct DrivenEnds {
  Id low, high;
  std::int64_t from = 0, to = 0;
  bool any = false;

  void take(const Id& id, std::int64_t at) {
    if (!any || at < from) {
      from = at;
      low = id;
    }
    if (!any || at > to) {
      to = at;
      high = id;
    }
    any = true;
  }
};

void addTravel(const CheckedWork& work, std::vector<Finding>& findings) {
  const MachineAxes machine = machineAxes(work.setup.face, work.setup.turn);
  for (const auto& [along, table] :
       {std::pair{machine.x.axis, Axis::x}, {machine.y.axis, Axis::y}}) {
    const auto& travel = work.job.machine.travel[static_cast<std::size_t>(table)];
    if (!travel) continue;
    DrivenEnds ends;
    for (const Feature& feature : work.part.features) {
      const bool driven =
          feature.drilled() || feature.is<kind::Slot>() || feature.is<kind::Point>();
      if (!driven || feature.face != work.setup.face) continue;
      for (const Place& place : drivenPlaces(feature)) {
        const Position* position = placedPosition(work.solution, place.id, along);
        const auto at = position ? nearestTick(position->ticks) : std::nullopt;
        if (at) ends.take(place.id, at->ticks());
      }
    }
    if (!ends.any || ends.to - ends.from <= travel->value.ticks()) continue;
    Finding finding;
    finding.code = FindingCode::travel;
    finding.places = {ends.low, ends.high};
    finding.by = Length::ticks(ends.to - ends.from - travel->value.ticks());
    finding.setup = work.setup.name;
    finding.axis = table;
    finding.wanted = Length::ticks(ends.to - ends.from);
    findings.push_back(std::move(finding));
  }
}

void addGrip(const CheckedWork& work, std::vector<Finding>& findings) {
  const auto& vice = work.tools.shop().vice;
  const auto height = work.block.sizeNow(axisAcross(work.setup.face));
  if (!work.setup.jaw || !vice || !vice->jawHeight || !height) return;
  Length stands;
  const auto& parallels = work.setup.held.parallels;
  for (std::size_t i = 0; parallels && i < parallels->size(); ++i) {
    const Length tall = (*parallels)[i].tall->value;
    stands = i == 0 ? tall : std::min(stands, tall);
  }
  const std::int64_t held =
      std::min(vice->jawHeight->value.ticks() - stands.ticks(), height->ticks());
  const std::int64_t third = (height->ticks() + kGripShare - 1) / kGripShare;
  const std::int64_t wanted = std::max(kLeastGrip.ticks(), third);
  if (held >= wanted) return;
  Finding finding;
  finding.code = FindingCode::grip;
  finding.by = Length::ticks(wanted - held);
  finding.setup = work.setup.name;
  finding.wanted = Length::ticks(wanted);
  finding.had = Length::ticks(std::max<std::int64_t>(held, 0));
  findings.push_back(std::move(finding));
}

/// Whether the work as it is now goes between the jaws at all.
void addOpening(const CheckedWork& work, std::vector<Finding>& findings) {
  const auto& vice = work.tools.shop().vice;
  if (!work.setup.jaw || !vice || !vice->opens) return;
  const Axis between = axisAcross(*work.setup.jaw);
  const auto size = work.block.sizeNow(between);
  if (!size || *size <= vice->opens->value) return;
  Finding finding;
  finding.code = FindingCode::grip;
  finding.by = Length::ticks(size->ticks() - vice->opens->value.ticks());
  finding.setup = work.setup.name;
  finding.axis = between;
  finding.wanted = *size;
  finding.had = vice->opens->value;
  findings.push_back(std::move(finding));
}

/// The side of an axis that is fixed in a setup: by the stop, the fixed jaw, or what it stands on.
Side fixedSide(const Setup& setup, Axis axis) {
  for (const auto& side : {setup.stop, setup.jaw}) {
    if (side && axisAcross(*side) == axis) return *side;
  }
  if (axisAcross(setup.face) == axis) return oppositeOf(setup.face);
  return sideAt(axis, false);
}

}  // namespace

std::vector<Finding> checkRoom(const CheckedWork& work) {
  std::vector<Finding> findings;
  addGrip(work, findings);
  addOpening(work, findings);
  addTravel(work, findings);
  return findings;
}

std::vector<PieceLeft> piecesLeft(const Setup& setup, const WorkBlock& block) {
  std::vector<PieceLeft> all;
  for (const StockPiece& piece : setup.held.pieces) {
    PieceLeft left;
    left.name = piece.name;
    for (const Axis axis : kAxes) {
      const auto& measured = piece.size[static_cast<std::size_t>(axis)];
      const auto wanted = block.sizeFinished(axis);
      if (!measured || !wanted) continue;
      const Side fixed = fixedSide(setup, axis), other = oppositeOf(fixed);
      const Length keeps = block.stock(fixed);
      const Length rest = Length::ticks(measured->value.ticks() - wanted->ticks() - keeps.ticks());
      left.left[static_cast<std::size_t>(fixed)] = keeps;
      left.left[static_cast<std::size_t>(other)] = rest;
      left.cleansUp = left.cleansUp && rest >= Length();
    }
    all.push_back(std::move(left));
  }
  return all;
}

std::vector<Finding> checkPieces(const Setup& setup, const WorkBlock& block) {
  std::vector<Finding> findings;
  for (const PieceLeft& piece : piecesLeft(setup, block)) {
    for (std::size_t i = 0; i < piece.left.size(); ++i) {
      if (!piece.left[i] || *piece.left[i] >= Length()) continue;
      Finding finding;
      finding.code = FindingCode::stockTooSmall;
      finding.by = piece.left[i]->negated();
      finding.setup = setup.name;
      finding.side = static_cast<Side>(i);
      finding.axis = axisAcross(static_cast<Side>(i));
      finding.piece = piece.name;
      findings.push_back(std::move(finding));
    }
  }
  return findings;
}

std::string_view nameOf(Unsaid unsaid) {
  constexpr std::string_view kNames[] = {"stands_on", "jaw_height", "stick_out", "travel",
                                         "thickness"};
  return kNames[static_cast<std::size_t>(unsaid)];
}

std::vector<Unsaid> unsaidOf(const CheckedWork& work) {
  std::vector<Unsaid> unsaid;
  const auto add = [&](bool lacks, Unsaid what) {
    if (lacks) unsaid.push_back(what);
  };
  const bool inVice = work.setup.jaw.has_value();
  const auto& vice = work.tools.shop().vice;
  add(inVice && !work.setup.held.parallels, Unsaid::standsOn);
  add(inVice && !(vice && vice->jawHeight), Unsaid::jawHeight);
  bool stands = false;
  for (const PlannedHole& hole : work.holes) {
    for (const HoleStep& step : hole.plan->steps) stands = stands || step.stands.has_value();
  }
  add(!stands || !work.job.machine.quill, Unsaid::stickOut);
  add(!work.job.machine.travel[0] && !work.job.machine.travel[1], Unsaid::travel);
  add(!work.block.sizeFinished(axisAcross(work.setup.face)), Unsaid::thickness);
  return unsaid;
}

std::vector<Finding> checkSetupWork(const CheckedWork& work) {
  std::vector<Finding> all = checkBetweenHoles(work.part, work.block, work.holes, work.tools);
  const auto take = [&](std::vector<Finding> more) {
    for (Finding& finding : more) all.push_back(std::move(finding));
  };
  take(checkMilled(work.part, work.solution, work.block, work.holes, work.tools));
  take(checkOutline(work, work.setup.face));
  take(checkInTheWay(work));
  take(checkTools(work));
  take(checkRoom(work));
  take(checkPieces(work.setup, work.block));
  std::stable_sort(all.begin(), all.end(),
                   [](const Finding& a, const Finding& b) { return a.code < b.code; });
  return all;
}

}  // namespace inchwright
