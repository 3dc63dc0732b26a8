#include "core/place/outline_corners.h"

#include <algorithm>
#include <optional>

namespace inchwright {
namespace {

class CornerPlacing {
 public:
  CornerPlacing(const Part& part, const std::array<AxisSystem, 3>& systems,
                std::array<std::vector<Position>, 3>& positions)
      : part_(part), systems_(systems), positions_(positions) {}

  void place(const GivenOutline& outline) {
    std::vector<Straight> straights;
    for (const Id& id : outline.follows) {
      const Feature* feature = part_.feature(id);
      const auto* edge = feature ? feature->as<kind::Edge>() : nullptr;
      if (edge) straights.push_back({id, edge->axis});
    }
    const std::size_t count = straights.size(), all = outline.follows.size();
    if (count < 3) return;
    for (std::size_t i = 0; i < all; ++i) {
      const Feature* round = part_.feature(outline.follows[i]);
      if (!round || !round->is<kind::Round>()) continue;
      const Id& before = outline.follows[(i + all - 1) % all];
      const auto at = std::find_if(straights.begin(), straights.end(),
                                   [&](const Straight& one) { return one.id == before; });
      if (at == straights.end()) continue;
      const auto k = static_cast<std::size_t>(at - straights.begin());
      placeRound(*round, {straights[(k + count - 1) % count], straights[k],
                          straights[(k + 1) % count], straights[(k + 2) % count]});
    }
  }

 private:
  struct Straight {
    Id id;
    Axis axis;  ///< the one it lies square to
  };

  Position* find(const Id& place, Axis axis) {
    for (std::size_t i = 0; i < systems_.size(); ++i) {
      if (systems_[i].axis() != axis) continue;
      const std::vector<Id>& places = systems_[i].network().places;
      const auto found = std::lower_bound(places.begin(), places.end(), place);
      if (found == places.end() || *found != place) return nullptr;
      return &positions_[i][static_cast<std::size_t>(found - places.begin())];
    }
    return nullptr;
  }

  /// The round between the second and the third of four edges that follow each other.
  void placeRound(const Feature& round, const std::array<Straight, 4>& along) {
    const kind::Round& shape = *round.as<kind::Round>();
    const bool theirs = shape.corner.size() == 2 &&
                        std::is_permutation(shape.corner.begin(), shape.corner.end(),
                                            std::array{along[1].id, along[2].id}.begin());
    if (!theirs || !shape.radius) return;
    std::array<const Position*, 4> at{};
    for (std::size_t i = 0; i < 4; ++i) {
      if (i > 0 && along[i].axis == along[i - 1].axis) return;
      at[i] = find(along[i].id, along[i].axis);
      if (!at[i] || at[i]->group != 0) return;
    }
    // Along an edge the way goes from the one before to the one after; the round lies back from the
    // corner along the first and on along the second.
    const int first = at[2]->ticks < at[0]->ticks ? -1 : 1;
    const int second = at[3]->ticks < at[1]->ticks ? -1 : 1;
    set(round, along[2].axis, *at[2], -first * shape.radius->value.ticks(), *at[0]);
    set(round, along[1].axis, *at[1], second * shape.radius->value.ticks(), *at[3]);
  }

  void set(const Feature& round, Axis axis, const Position& edge, std::int64_t further,
           const Position& other) {
    for (const Id& id : {round.id, round.id + "0"}) {
      Position* position = find(id, axis);
      const auto ticks = edge.ticks.plus(Rational(further));
      if (!position || position->group == 0 || !ticks) continue;
      *position = edge;
      position->ticks = *ticks;
      position->assumed = edge.assumed || other.assumed;
      position->disputed = edge.disputed || other.disputed;
    }
  }

  const Part& part_;
  const std::array<AxisSystem, 3>& systems_;
  std::array<std::vector<Position>, 3>& positions_;
};

}  // namespace

void placeOutlineCorners(const Part& part, const std::array<AxisSystem, 3>& systems,
                         std::array<std::vector<Position>, 3>& positions) {
  CornerPlacing placing(part, systems, positions);
  for (const GivenOutline& outline : part.outlines) placing.place(outline);
}

}  // namespace inchwright
