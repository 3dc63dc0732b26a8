// How large figures have to be for the distance they are read from. Human factors guidance of the
// FAA (from memory): preferred letter height 20 to 22 minutes of arc, 16 the least; 5.8 mm at 1 m
// for 20 minutes. DIN 1450 (from memory) multiplies by 1.4 for an acuity of 0.5.

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <set>
#include <string>
#include <variant>

#include "core/plan/table.h"
#include "core/sheet/tape_up.h"
#include "tests/outside/published_part.h"

namespace inchwright {
namespace {

constexpr double kMinuteOfArc = 3.14159265358979 / (180 * 60);

double heightFor(double minutes, double distance) {
  return 2 * distance * std::tan(minutes * kMinuteOfArc / 2);
}

struct Plate {
  Job job;
  Part part;
  Solution solution;
  SetupTable table;
};

Plate plate() {
  Plate plate;
  plate.part = published(R"(
      edge L x left
      edge R x right
      edge F y front
      edge K y back
      hole A 1/4
      hole B 3/16
      r1 x L A 3/8
      r2 x A B 1 3/16
      r3 x B R 7/16
      r4 y F A 3/4
      r5 y F B 5/8
      r6 y F K 1 1/2)");
  plate.solution = solved(plate.part);
  plate.job.parts = {plate.part};
  auto table =
      makeTable(plate.job, plate.part, plate.solution, defaultSetup(plate.part, plate.solution));
  EXPECT_TRUE(table.ok());
  if (table) plate.table = *std::move(table);
  return plate;
}

// Every coordinate of the table, with the heights at which it stands on the sheet. One may stand
// there twice: in its row, and among the figures that are needed once.
std::map<std::string, std::set<double>> heightsOf(const Plate& plate, double distance) {
  std::map<std::string, std::set<double>> heights;
  for (const TableRow& row : plate.table.rows) {
    heights[signedText(row.x)];
    heights[signedText(row.y)];
  }
  SheetOptions options;
  options.readingDistance = distance;
  for (const Page& page :
       tapeUpSheet(plate.job, plate.part, plate.solution, plate.table, options)) {
    for (const DrawItem& item : page.items) {
      const auto* text = std::get_if<TextItem>(&item);
      if (text == nullptr) continue;
      const auto found = heights.find(text->text);
      if (found != heights.end()) found->second.insert(text->height);
    }
  }
  return heights;
}

TEST(ReadingDistance, CoordinatesAreLargeEnoughForAWeakEye) {
  const Plate part = plate();
  ASSERT_EQ(part.table.rows.size(), 2u);
  for (const double distance : {600.0, 1000.0, 1500.0}) {
    SCOPED_TRACE(distance);
    for (const auto& [figure, heights] : heightsOf(part, distance)) {
      ASSERT_FALSE(heights.empty()) << figure << " is not on the sheet";
      EXPECT_GE(*heights.begin(), 5.8 * distance / 1000 - 1e-9) << figure;
      // In its row: the least size and half the acuity, and within 2 % of the preferred one for it.
      EXPECT_GE(*heights.rbegin(), 1.4 * heightFor(16, distance)) << figure;
      EXPECT_NEAR(*heights.rbegin(), 1.4 * heightFor(20, distance), 0.02 * *heights.rbegin())
          << figure;
    }
  }
}

}  // namespace
}  // namespace inchwright
