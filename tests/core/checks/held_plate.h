#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "core/checks/checks.h"
#include "core/solution/solution.h"
#include "tests/support/solved_part.h"

namespace inchwright::test {

inline Lettered lettered(const std::string& text) {
  const auto read = readLength(text);
  EXPECT_TRUE(read.ok()) << text;
  return read ? *read : Lettered{};
}
inline Length inch(const std::string& text) {
  return lettered(text).value;
}
/// Ten-thousandths of an inch as a print letters them in two units of them: `10625` is `1.0625`.
inline std::string decimal(std::int64_t tenThousandths) {
  const std::string sign = tenThousandths < 0 ? "-" : "";
  const std::int64_t size = std::abs(tenThousandths);
  std::string places = std::to_string(10'000 + size % 10'000).substr(1);
  return sign + std::to_string(size / 10'000) + "." + places;
}

/// A plate in the vice: sides L R F K U T, holes placed one by one from L and F (or from U for
/// those of another face), a setup with the top up. Made for tests of what may go wrong.
struct HeldPlate {
  Job job;
  Part part;
  Setup setup;

  HeldPlate(const std::string& width, const std::string& depth, const std::string& thick) {
    part.name = "Plate";
    part.material = "steel";
    setup.name = "1";
    addEdge("L", Side::left);
    addEdge("R", Side::right);
    addEdge("F", Side::front);
    addEdge("K", Side::back);
    addEdge("U", Side::bottom);
    addEdge("T", Side::top);
    read(Axis::x, "L", "R", width);
    read(Axis::y, "F", "K", depth);
    read(Axis::z, "U", "T", thick);
  }

  void addEdge(const Id& id, Side side) {
    Feature edge;
    edge.id = id;
    edge.shape = kind::Edge{axisAcross(side), side};
    part.features.push_back(edge);
  }
  void read(Axis axis, const Id& from, const Id& to, const std::string& text) {
    Reading reading;
    reading.id = "r" + std::to_string(part.readings.size() + 1);
    reading.axis = axis;
    reading.from = from;
    reading.to = to;
    reading.figure = lettered(text);
    part.readings.push_back(reading);
  }
  /// A hole with its centre along the face's two axes from the lower sides.
  Drilled& hole(const Id& id, const std::string& a, const std::string& b, const std::string& size,
                Face face = Face::top) {
    Feature feature;
    feature.id = id;
    feature.face = face;
    kind::Hole shape;
    shape.drilled.diameter = lettered(size);
    feature.shape = shape;
    part.features.push_back(feature);
    const auto axes = axesIn(face);
    const Id lower[] = {"L", "F", "U"};
    read(axes[0], lower[static_cast<std::size_t>(axes[0])], id, a);
    read(axes[1], lower[static_cast<std::size_t>(axes[1])], id, b);
    return *part.features.back().drilled();
  }
  void blind(const Id& id, const std::string& depth) {
    for (Feature& feature : part.features) {
      if (feature.id == id) feature.drilled()->depth = {false, lettered(depth)};
    }
  }
  LaidParallel& parallel(Jaw jaw, const std::string& thick, const std::string& tall,
                         const std::string& gap) {
    if (!setup.held.parallels) setup.held.parallels.emplace();
    LaidParallel one;
    one.jaw = jaw;
    one.thick = lettered(thick);
    one.tall = lettered(tall);
    one.gap = lettered(gap);
    setup.held.parallels->push_back(one);
    return setup.held.parallels->back();
  }
  void vice(const std::string& jawHeight) {
    job.shop.vice.emplace();
    job.shop.vice->jawHeight = lettered(jawHeight);
  }

  std::vector<Finding> findings() const {
    const Solution solution = solved(part);
    const WorkBlock block(part, solution, &setup);
    const ToolsOwned tools(job.shop);
    const std::vector<PlannedHole> holes =
        planHoles({&job, &part, &solution, &setup}, block, tools);
    const std::vector<PlannedSlot> milled =
        planSlots({&job, &part, &solution, &setup}, block, tools);
    auto found = checkSetupWork({job, part, solution, setup, block, holes, tools, milled});
    for (const Finding& finding : found) expectWhole(finding);
    return found;
  }

 private:
  /// What is said of a finding is there, and its figures agree; it names the setup that it holds
  /// in, or none where it holds in any.
  void expectWhole(const Finding& finding) const {
    using enum FindingCode;
    SCOPED_TRACE(std::string(nameOf(finding.code)));
    const auto isOneOf = [&](std::initializer_list<FindingCode> codes) {
      return std::find(codes.begin(), codes.end(), finding.code) != codes.end();
    };
    const bool anywhere =
        isOneOf({breaksInto, breaksOut, thinWall, breaksThrough, noTool, cornerTooTight});
    EXPECT_EQ(finding.setup, anywhere ? "" : setup.name);
    if (!isOneOf({noTool, drillAtReamSize})) {
      ASSERT_TRUE(finding.by);
      EXPECT_GT(*finding.by, Length());
    }
    if (isOneOf({viceBed, tooDeep})) {
      ASSERT_TRUE(finding.wanted && finding.had);
      EXPECT_EQ(finding.wanted->minus(*finding.had), finding.by);
    }
    if (isOneOf({breaksInto, breaksOut, thinWall, breaksThrough})) {
      const Length wall = ToolsOwned(job.shop).marginWall();
      ASSERT_TRUE(finding.had);
      EXPECT_NEAR(finding.had->plus(*finding.by)->toInches(),
                  finding.code == breaksOut ? 0 : wall.toInches(), 1e-8);
    }
  }
};

/// One line a finding: `parallel A 0.0312`, by in inches to four places.
inline std::vector<std::string> linesOf(const std::vector<Finding>& findings) {
  std::vector<std::string> lines;
  for (const Finding& finding : findings) {
    std::string line(nameOf(finding.code));
    for (const Id& place : finding.places) line += " " + place;
    if (finding.by) {
      // To the nearest, halves upwards.
      line += " " + decimal((finding.by->ticks() + 127'000) / 254'000);
    }
    lines.push_back(line);
  }
  std::sort(lines.begin(), lines.end());
  return lines;
}

using Lines = std::vector<std::string>;

}  // namespace inchwright::test
