#include "core/plan/table_rows.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>
#include <utility>

#include "core/plan/order_of_work.h"

namespace inchwright {
namespace {

bool makesRows(const Feature& feature, Face face) {
  if (feature.face != face) return false;
  switch (feature.kind()) {
    case FeatureKind::hole:
    case FeatureKind::point:
    case FeatureKind::slot:
    case FeatureKind::ring:
    case FeatureKind::row:
      return true;
    default:
      return false;
  }
}

// A ring, row or slot as a whole is not drilled: its holes or ends are.
std::vector<Place> drivenPlaces(const Feature& feature) {
  std::vector<Place> places = placesOf(feature);
  if (places.size() > 1) places.erase(places.begin());
  return places;
}

std::string printFraction(const Coordinate& coordinate, Unit jobUnit) {
  if (jobUnit != Unit::inch || !coordinate.exact) return {};
  return writeFraction(coordinate.value.magnitude());
}

/// What rows share that are worked together: the rank, the first drill, the run of tools.
using Group = std::tuple<int, Length, std::vector<std::tuple<int, Length, std::string>>>;

Group groupOf(const Feature& feature, const Making& making) {
  Group group{making.rank, making.first, {}};
  auto& run = std::get<2>(group);
  for (const MakingStep& step : making.steps) {
    const Tool& tool = step.tool;
    run.emplace_back(static_cast<int>(step.kind), step.diameter,
                     tool.figure ? tool.name + tool.figure->text : tool.name);
  }
  const auto* slot = feature.as<kind::Slot>();
  if (!slot) return group;
  const auto add = [&](const std::optional<Lettered>& figure) {
    run.emplace_back(0, figure ? figure->value : Length(), figure ? figure->text : std::string());
  };
  add(slot->width);
  add(slot->length);
  add(slot->depth.through ? std::nullopt : slot->depth.length);
  return group;
}

/// A row with what decides where it stands.
struct Draft {
  TableRow row;
  Group group;
};

class RowMaker {
 public:
  explicit RowMaker(const WorkAt& work) : work_(work) {
    for (const Loose& loose : work.solution.loose) loose_[{loose.id, loose.axis}] = &loose;
  }

  Result<RowsFound> take() && {
    for (const Feature& feature : work_.part.features) {
      if (!makesRows(feature, work_.setup.face)) continue;
      const Making making = makingOf(feature);
      const Group group = groupOf(feature, making);
      for (const Place& place : drivenPlaces(feature)) {
        if (const auto failure = addPlace(feature, place, making, group)) return *failure;
      }
    }
    inCuttingOrder();
    return std::move(found_);
  }

 private:
  std::optional<Error> addPlace(const Feature& feature, const Place& place, const Making& making,
                                const Group& group) {
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
    row.xFraction = printFraction(row.x, work_.jobUnit);
    row.yFraction = printFraction(row.y, work_.jobUnit);
    row.steps = making.steps;
    row.faults = making.faults;
    row.disputed = x->disputed || y->disputed || work_.x.zero->disputed || work_.y.zero->disputed;
    row.assumed = x->assumed || y->assumed;
    drafts_.push_back({std::move(row), group});
    return std::nullopt;
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

  void inCuttingOrder() {
    std::map<Group, std::vector<std::size_t>> groups;
    for (std::size_t i = 0; i < drafts_.size(); ++i) groups[drafts_[i].group].push_back(i);
    int number = 0;
    for (const auto& [group, members] : groups) {
      std::vector<WorkStop> stops;
      for (std::size_t i : members) {
        const TableRow& row = drafts_[i].row;
        stops.push_back({row.id, {row.x.value.toMillimetres(), row.y.value.toMillimetres()}});
      }
      for (std::size_t i : shortTravel(stops)) {
        TableRow& row = drafts_[members[i]].row;
        row.group = number;
        found_.rows.push_back(std::move(row));
      }
      ++number;
    }
  }

  const WorkAt& work_;
  std::map<std::pair<Id, Axis>, const Loose*> loose_;
  std::set<std::pair<Id, Axis>> told_;
  std::vector<Draft> drafts_;
  RowsFound found_;
};

}  // namespace

Result<RowsFound> tableRows(const WorkAt& work) {
  return RowMaker(work).take();
}

}  // namespace inchwright
