#pragma once

#include <gtest/gtest.h>

#include <array>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "core/place/placing.h"

namespace inchwright::test {

/// A part with all that is placed of it, by chains and beyond.
struct PlacedForTest {
  Part part;
  std::array<AxisSystem, 3> systems;
  PlacedPart placed;

  static PlacedForTest of(Part part, const PlacePartOptions& options = {}) {
    PlacedForTest out;
    out.part = std::move(part);
    if (out.part.name.empty()) out.part.name = "Part";
    const auto sound = checkPart(out.part);
    EXPECT_TRUE(sound) << (sound ? "" : sound.error().text + " " + sound.error().place);
    auto systems = systemsOf(out.part);
    if (!sound || !systems) {
      ADD_FAILURE() << "no systems";
      return out;
    }
    out.systems = *std::move(systems);
    std::array<std::vector<Position>, 3> positions;
    for (std::size_t i = 0; i < 3; ++i) positions[i] = out.systems[i].positions();
    auto placed = placePart(out.part, out.systems, positions, options);
    if (!placed) {
      ADD_FAILURE() << placed.error().text;
      return out;
    }
    out.placed = *std::move(placed);
    return out;
  }

  const Position* position(std::string_view id, Axis axis) const {
    const auto which = static_cast<std::size_t>(axis);
    const auto node = systems[which].node(id);
    return node ? &placed.positions[which][*node] : nullptr;
  }
  bool isPlaced(std::string_view id, Axis axis) const {
    const Position* found = position(id, axis);
    return found != nullptr && found->group == 0;
  }
  /// Inches from another place.
  double from(std::string_view other, std::string_view id, Axis axis) const {
    const Position *a = position(other, axis), *b = position(id, axis);
    if (a == nullptr || b == nullptr || a->group != 0 || b->group != 0) {
      ADD_FAILURE() << id << " is not placed";
      return 0;
    }
    return (b->ticks.toDouble() - a->ticks.toDouble()) / static_cast<double>(Length::kTicksPerInch);
  }
};

}  // namespace inchwright::test
