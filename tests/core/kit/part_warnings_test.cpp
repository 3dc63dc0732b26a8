// What a sheet says of parts that may be mistaken for its own.
#include "core/say/part_warnings.h"

#include <gtest/gtest.h>

#include "core/kit/solved_kit.h"

namespace inchwright {
namespace {

Part bored(const char* name, const char* bore) {
  Part part;
  part.name = name;
  for (const char* id : {"A", "B", "C"}) {
    Feature hole{id, Face::top, kind::Hole{}, {}, {}, {}};
    hole.drilled()->diameter = *readLength(*id == 'C' ? bore : "1/4");
    part.features.push_back(hole);
  }
  return part;
}

std::vector<std::string> warningsOf(const Job& job, std::size_t part) {
  SolvedKit kit(job);
  return partWarnings(job, part, kit.likeOthers(part),
                      {Length::ticks(Length::kTicksPerInch / 2000), Unit::inch});
}

TEST(PartWarnings, NameTheOtherAndTheDifference) {
  Job job;
  job.parts = {bored("Front cock", "9/32"), bored("Back cock", "5/16")};
  EXPECT_EQ(warningsOf(job, 1),
            std::vector<std::string>{"like Front cock, but: C diameter is 5/16, not 9/32"});
  EXPECT_EQ(warningsOf(job, 0),
            std::vector<std::string>{"like Back cock, but: C diameter is 9/32, not 5/16"});
}

TEST(PartWarnings, ACopyIsNotLeftWithoutAWord) {
  Job job;
  job.parts = {bored("Front cock", "9/32"), bored("Front cock 2", "9/32")};
  EXPECT_EQ(warningsOf(job, 0),
            std::vector<std::string>{"the same as Front cock 2 in all that is cut"});
}

TEST(PartWarnings, TheSamePartTurnedOverIsSaidOnBothSheets) {
  Job job;
  job.parts = {bored("Right cock", "9/32")};
  job.parts.push_back(mirrored(job.parts[0], Axis::x));
  job.parts[1].name = "Left cock";
  job.parts[1].opposite = OppositeOf{"Right cock", Axis::x};
  for (const std::size_t part : {0, 1}) {
    const std::vector<std::string> all = warningsOf(job, part);
    ASSERT_EQ(all.size(), 1u);
    EXPECT_TRUE(all[0].starts_with("the same part as " + job.parts[1 - part].name)) << all[0];
  }
}

}  // namespace
}  // namespace inchwright
