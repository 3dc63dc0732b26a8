// Custom of the trade: common practice, no source.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "core/plan/table.h"
#include "tests/outside/published_part.h"

namespace inchwright {
namespace {

// A hole to be reamed is drilled undersize, by .006 to .018 in, never at the reamer's own size; and
// it is spotted before it is drilled, and drilled before it is reamed.
TEST(TradeCustom, ReamedHolesAreDrilledUndersize) {
  for (const char* size : {"1/8", "3/16", "1/4", "5/16", "3/8", "7/16", "1/2"}) {
    SCOPED_TRACE(size);
    Part part = published("edge L x left\nedge F y front\nhole A " + std::string(size) +
                          "\nr1 x L A 1\nr2 y F A 1");
    part.features.back().drilled()->make = Make::ream;
    const Solution solution = solved(part);
    const auto table = makeTable(Job(), part, solution, defaultSetup(part, solution));
    ASSERT_TRUE(table.ok()) << table.error().text;
    ASSERT_EQ(table->rows.size(), 1u);
    const auto& steps = table->rows[0].plan->steps;
    const auto find = [&steps](Op op) {
      return std::find_if(steps.begin(), steps.end(),
                          [op](const HoleStep& step) { return step.op == op; });
    };
    const auto spot = find(Op::spot);
    const auto drill = find(Op::drill);
    const auto ream = find(Op::ream);
    ASSERT_TRUE(spot < drill && drill < ream && ream != steps.end());
    EXPECT_EQ(ream->size, length(size));
    const Length left = *ream->size->minus(*drill->size);
    EXPECT_GE(left, length("0.006"));
    EXPECT_LE(left, length("0.018"));
  }
}

}  // namespace
}  // namespace inchwright
