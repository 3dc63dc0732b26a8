#include "core/plan/table_rows.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>
#include <utility>

#include "core/plan/making.h"
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

std::string_view locateNote(Locate locate) {
  switch (locate) {
    case Locate::mate:
      return "locate from its mate";
    case Locate::pair:
      return "drill with its mate, as a pair";
    case Locate::assembly:
      return "locate on assembly";
    case Locate::suit:
      return "locate to suit";
    case Locate::coordinate:
      break;
  }
  return {};
}

void addNote(std::string& notes, std::string_view note) {
  if (note.empty()) return;
  if (!notes.empty()) notes += "; ";
  notes += note;
}

std::string printFraction(const Coordinate& coordinate, Unit jobUnit) {
  if (jobUnit != Unit::inch || !coordinate.exact) return {};
  return writeFraction(coordinate.value.magnitude());
}

/// A row with what decides where it stands.
using Group = std::tuple<int, Length, std::string>;  // rank, first drill, run of tools

struct Draft {
  TableRow row;
  Group group;
};

class RowMaker {
 public:
  RowMaker(const Part& part, const Solution& solution, const Setup& setup, const SetupFrame& frame,
           const Step& step, Unit jobUnit)
      : part_(part),
        solution_(solution),
        setup_(setup),
        frame_(frame),
        step_(step),
        jobUnit_(jobUnit) {
    for (const Doubt& doubt : solution.doubts) {
      if (doubt.kind != DoubtKind::assumed) continue;
      assumed_.insert(doubt.about.begin(), doubt.about.end());
    }
    for (const Loose& loose : solution.loose) loose_[{loose.id, loose.axis}] = &loose;
  }

  Result<RowsFound> take() && {
    for (const Feature& feature : part_.features) {
      if (!makesRows(feature, setup_.face)) continue;
      const Making making = makingOf(feature, step_.unit);
      for (const Place& place : drivenPlaces(feature)) {
        if (const std::optional<Error> failure = addPlace(feature, place, making)) return *failure;
      }
    }
    inCuttingOrder();
    return std::move(found_);
  }

 private:
  std::optional<Error> addPlace(const Feature& feature, const Place& place, const Making& making) {
    const Position* x = placed(feature, place.id, frame_.x);
    const Position* y = placed(feature, place.id, frame_.y);
    if (!x || !y) return std::nullopt;
    const Result<Coordinate> atX = coordinateOf(frame_.x, *x, step_);
    if (!atX) return atX.error();
    const Result<Coordinate> atY = coordinateOf(frame_.y, *y, step_);
    if (!atY) return atY.error();
    TableRow row;
    row.id = place.id;
    row.feature = feature.id;
    row.kind = feature.kind();
    row.x = *atX;
    row.y = *atY;
    row.size = making.size;
    row.xFraction = printFraction(row.x, jobUnit_);
    row.yFraction = printFraction(row.y, jobUnit_);
    row.steps = making.steps;
    row.disputed = x->disputed || y->disputed || frame_.x.zero->disputed || frame_.y.zero->disputed;
    row.note = noteOf(feature, row, making);
    drafts_.push_back({std::move(row), {making.rank, making.first, making.run}});
    return std::nullopt;
  }

  std::string noteOf(const Feature& feature, const TableRow& row, const Making& making) const {
    std::string note;
    if (row.disputed) addNote(note, "a loop it lies on does not close");
    if (feature.drilled()) addNote(note, locateNote(feature.drilled()->locate));
    if (assumed_.count(row.id) || assumed_.count(feature.id)) {
      addNote(note, "its place rests on an assumption");
    }
    if (!row.x.exact || !row.y.exact) addNote(note, "no exact figure: rounded to the tick");
    for (const std::string& one : making.notes) addNote(note, one);
    addNote(note, feature.note);
    return note;
  }

  const Position* placed(const Feature& feature, const Id& place, const TableAxis& axis) {
    const Axis along = axis.part.axis;
    const Position* position = placedPosition(solution_, place, along);
    if (position && axis.zero) return position;
    // What the solver says of the place, else of its feature (once), else the bare fact.
    Loose loose{place, along, "nothing on the print places it"};
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
        stops.push_back({row.id, row.x.value.toMillimetres(), row.y.value.toMillimetres()});
      }
      for (std::size_t i : shortTravel(stops)) {
        TableRow& row = drafts_[members[i]].row;
        row.group = number;
        found_.rows.push_back(std::move(row));
      }
      ++number;
    }
  }

  const Part& part_;
  const Solution& solution_;
  const Setup& setup_;
  const SetupFrame& frame_;
  const Step& step_;
  Unit jobUnit_;
  std::set<Id> assumed_;
  std::map<std::pair<Id, Axis>, const Loose*> loose_;
  std::set<std::pair<Id, Axis>> told_;
  std::vector<Draft> drafts_;
  RowsFound found_;
};

}  // namespace

Result<RowsFound> tableRows(const Part& part, const Solution& solution, const Setup& setup,
                            const SetupFrame& frame, const Step& step, Unit jobUnit) {
  return RowMaker(part, solution, setup, frame, step, jobUnit).take();
}

}  // namespace inchwright
