#pragma once

#include <gtest/gtest.h>

#include "core/chain/axis_system.h"

namespace inchwright::test {

/// What a part comes to along one axis; empty, and a failure, where that can't be made.
inline AxisSystem systemAlong(const Part& part, Axis axis) {
  auto systems = systemsOf(part);
  EXPECT_TRUE(systems.ok());
  return systems.ok() ? std::move((*systems)[static_cast<std::size_t>(axis)]) : AxisSystem{};
}

inline AxisNetwork networkAlong(const Part& part, Axis axis) {
  auto networks = networksOf(part);
  EXPECT_TRUE(networks.ok());
  return networks.ok() ? std::move((*networks)[static_cast<std::size_t>(axis)]) : AxisNetwork{};
}

}  // namespace inchwright::test
