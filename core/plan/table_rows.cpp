#include "core/plan/table_rows.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>
#include <unordered_map>
#include <utility>

#include "core/plan/hole_work.h"
#include "core/plan/order_of_work.h"
#include "core/plan/tools_in_order.h"

namespace inchwright {
namespace {

std::string printFraction(const Coordinate& coordinate, Unit jobUnit) {
  if (jobUnit != Unit::inch || !coordinate.exact) return {};
  return writeFraction(coordinate.value.magnitude());
}

/// What rows share that are worked together: the kind of work they end with, the first drill, the
/// run of tools, and what the shop or the print lacks for it.
using Group = std::tuple<OrderRule, Length, std::vector<std::tuple<OrderRule, Length, std::string>>,
                         std::vector<std::string>>;

HolePlan pointPlan() {
  HolePlan plan;
  HoleStep& step = plan.steps.emplace_back();
  step.op = Op::mark;
  step.kind = ToolKind::hand;
  step.tool = "mark";
  step.rule = Rule::markOnly;
  return plan;
}

Group groupOf(const Feature& feature, const HolePlan& plan) {
  Group group;
  auto& [rank, first, run, said] = group;
  rank = feature.is<kind::Point>() ? OrderRule::marks : OrderRule::drills;
  for (const HoleStep* step : fittingsOf(plan)) {
    const OrderRule order = orderOf(*step);
    run.emplace_back(order, step->size.value_or(Length()), step->tool);
    // Seats come with the drilling, and edges are broken on every hole.
    if (order >= OrderRule::bars && order != OrderRule::edges) rank = std::max(rank, order);
    if (order == OrderRule::drills && first.isZero()) first = step->size.value_or(Length());
  }
  for (const Lacking& lacking : plan.lacking) said.push_back(lacking.wanted);
  if (!goesByCoordinates(plan)) rank = OrderRule::elsewhere;
  const auto* slot = feature.as<kind::Slot>();
  if (!slot) return group;
  rank = OrderRule::slots;
  const auto add = [&words = said](const std::optional<Lettered>& figure) {
    words.push_back(figure ? figure->text : std::string());
  };
  add(slot->width);
  add(slot->length);
  add(slot->depth.through ? std::nullopt : slot->depth.length);
  return group;
}

// Steps of the readout by which two legs from one place can differ through rounding alone, where
// they are as long in truth: a symmetrical print keeps the order of its names.
constexpr double kSameSteps = 3;

class RowMaker {
 public:
  explicit RowMaker(const WorkAt& work) : work_(work) {
    for (const Loose& loose : work.solution.loose) loose_[{loose.id, loose.axis}] = &loose;
    const ToolsOwned tools(work.job.shop);
    const WorkBlock block(work.part, work.solution, &work.setup);
    const HolesAsked asked{&work.job, &work.part, &work.solution, &work.setup};
    rows_.reserve(work.part.features.size());
    holes_ = planHoles(asked, block, tools);
    for (PlannedSlot& slot : planSlots(asked, block, tools)) slots_[slot.id] = slot.steps;
  }

  Result<RowsFound> take() && {
    for (const Feature& feature : work_.part.features) {
      if (!makesRows(feature, work_.setup.face)) continue;
      for (const Place& place : drivenPlaces(feature)) {
        if (const auto failure = addPlace(feature, place)) return *failure;
      }
    }
    inCuttingOrder();
    return std::move(found_);
  }

 private:
  /// Of a slot's ends the slot's. Places are asked for in the order in which holes are planned:
  /// that of the features, of which some are left out.
  const SharedPlan& planAt(const Feature& feature, const Id& place) {
    static const SharedPlan kNone, kPoint{pointPlan()};
    if (feature.is<kind::Point>()) return kPoint;
    if (!feature.drilled()) {
      const auto slot = slots_.find(feature.id);
      return slot == slots_.end() ? kNone : slot->second;
    }
    while (holes_[hole_].id != place) ++hole_;
    return holes_[hole_].plan;
  }

  std::optional<Error> addPlace(const Feature& feature, const Place& place) {
    const Position* x = placed(feature, place.id, work_.x);
    const Position* y = placed(feature, place.id, work_.y);
    if (!x || !y) return std::nullopt;
    const Result<Coordinate> atX = work_.coordinate(work_.x, *x);
    if (!atX) return atX.error();
    const Result<Coordinate> atY = work_.coordinate(work_.y, *y);
    if (!atY) return atY.error();
    TableRow row;
    row.id = place.id;
    row.feature = feature.id;
    row.kind = feature.kind();
    row.x = *atX;
    row.y = *atY;
    row.xFraction = printFraction(row.x, work_.job.unit);
    row.yFraction = printFraction(row.y, work_.job.unit);
    row.plan = planAt(feature, place.id);
    row.disputed = x->disputed || y->disputed || work_.x.zero->disputed || work_.y.zero->disputed;
    row.assumed = x->assumed || y->assumed;
    membersOf(feature, row.plan).push_back(rows_.size());
    rows_.push_back(std::move(row));
    return std::nullopt;
  }

  /// The rows that are worked together with this one. But for slots, whose own figures count, that
  /// is told once for all that share a plan.
  std::vector<std::size_t>& membersOf(const Feature& feature, const SharedPlan& plan) {
    if (feature.is<kind::Slot>()) return groups_[groupOf(feature, *plan)];
    std::vector<std::size_t>*& members = groupOfPlan_[&*plan];
    if (!members) members = &groups_[groupOf(feature, *plan)];
    return *members;
  }

  const Position* placed(const Feature& feature, const Id& place, const TableAxis& axis) {
    const Axis along = axis.part.axis;
    const Position* position = work_.position(place, along);
    if (position && axis.zero) return position;
    // What the solver says of the place, else of its feature (once), else the bare fact.
    Loose loose{place, along, Loose::Lacks::anything};
    if (const auto own = loose_.find({place, along}); own != loose_.end()) {
      loose = *own->second;
    } else if (const auto whole = loose_.find({feature.id, along}); whole != loose_.end()) {
      loose = *whole->second;
    }
    if (told_.insert({loose.id, along}).second) found_.unplaced.push_back(std::move(loose));
    return nullptr;
  }

  /// In whole steps of the readout: what shows as equal is as far.
  double stepsTo(const Coordinate& at) const {
    const auto shown = at.value.ticks() + at.rounding.ticks();
    return std::round(static_cast<double>(shown) / static_cast<double>(work_.step.size.ticks()));
  }

  void inCuttingOrder() {
    int number = 0;
    found_.rows.reserve(rows_.size());
    for (const auto& [group, members] : groups_) {
      std::vector<WorkStop> stops;
      for (std::size_t i : members) {
        const TableRow& row = rows_[i];
        stops.push_back({row.id, {stepsTo(row.x), stepsTo(row.y)}});
      }
      for (std::size_t i : shortTravel(stops, kSameSteps)) {
        TableRow& row = rows_[members[i]];
        row.group = number;
        found_.rows.push_back(std::move(row));
      }
      ++number;
    }
  }

  const WorkAt& work_;
  std::vector<PlannedHole> holes_;
  std::size_t hole_ = 0;  ///< the last one asked for
  std::unordered_map<Id, SharedPlan> slots_;
  std::map<std::pair<Id, Axis>, const Loose*> loose_;
  std::set<std::pair<Id, Axis>> told_;
  std::vector<TableRow> rows_;
  std::map<Group, std::vector<std::size_t>> groups_;
  std::unordered_map<const HolePlan*, std::vector<std::size_t>*> groupOfPlan_;
  RowsFound found_;
};

}  // namespace

bool makesRows(const Feature& feature, Face face) {
  return feature.face == face &&
         (feature.drilled() || feature.is<kind::Slot>() || feature.is<kind::Point>());
}

Result<RowsFound> tableRows(const WorkAt& work) {
  return RowMaker(work).take();
}

}  // namespace inchwright
