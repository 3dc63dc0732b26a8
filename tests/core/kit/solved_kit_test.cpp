#include "core/kit/solved_kit.h"

#include <gtest/gtest.h>

#include <functional>
#include <limits>

#include "tests/core/kit/kit_job.h"

namespace inchwright {
namespace {

TEST(SolvedKit, SolvesAgainOnlyWhatChanged) {
  Job job = KitJob().job;
  SolvedKit kit(job);
  EXPECT_EQ(kit.timesSolved(), 0u);
  EXPECT_EQ(kit.solutions().size(), 2u);
  EXPECT_EQ(kit.timesSolved(), 2u);
  job.parts[1].readings[0].figure = *readLength("1 1/8");
  kit.follow(job);
  kit.solutions();
  EXPECT_EQ(kit.timesSolved(), 3u);
  EXPECT_EQ(*kit.solution(1).between("L", "R", Axis::x), readLength("1 1/8")->value.rational());
  std::swap(job.parts[0], job.parts[1]);
  job.title = "another";
  kit.follow(job);
  EXPECT_EQ(*kit.solution(0).between("L", "R", Axis::x), readLength("1 1/8")->value.rational());
  EXPECT_EQ(*kit.solution(1).between("L", "R", Axis::x), readLength("3")->value.rational());
  EXPECT_EQ(kit.timesSolved(), 3u);
}

TEST(SolvedKit, TwoPartsOfOneValueHaveASolutionEach) {
  Job job = KitJob().job;
  SolvedKit kit(job);
  kit.solutions();
  job.parts.push_back(job.parts[0]);
  kit.follow(job);
  EXPECT_EQ(kit.solutions()[2].placed, kit.solutions()[0].placed);
  EXPECT_FALSE(kit.solution(2).placed.empty());
  job.parts.erase(job.parts.begin());
  kit.follow(job);
  EXPECT_EQ(*kit.solution(1).between("L", "R", Axis::x), readLength("3")->value.rational());
}

TEST(SolvedKit, ASumThatCannotBeHeldIsADoubt) {
  Job job = KitJob().job;
  Part& part = job.parts[1];
  part.features[2] = {"M", Face::top, kind::Edge{Axis::x, {}}, {}, {}, {}};
  part.readings[0].figure.value = Length::ticks(std::numeric_limits<std::int64_t>::max() - 1);
  Reading further = part.readings[0];
  further.id = "r2";
  further.from = "R";
  further.to = "M";
  part.readings.push_back(further);
  ASSERT_FALSE(solve(part).ok());
  SolvedKit kit(job);
  EXPECT_TRUE(kit.solution(1).isDraft());
  EXPECT_FALSE(kit.solution(0).isDraft());
}

TEST(SolvedKit, LikePartsAreFoundAgainAfterAnEdit) {
  Job job = KitJob().job;
  job.parts.push_back(job.parts[0]);
  job.parts[2].name = "Other plate";
  SolvedKit kit(job);
  std::vector<Difference> like = kit.likeOthers(0);
  ASSERT_EQ(like.size(), 1u);
  EXPECT_TRUE(like[0].same());
  EXPECT_EQ(like[0].a, "Other plate");
  EXPECT_EQ(like[0].b, "Plate");
  job.parts[2].features[4].as<kind::Hole>()->drilled.diameter = *readLength("5/16");
  job.parts[2].readings[0].figure = *readLength("1 1/16");
  kit.follow(job);
  like = kit.likeOthers(0);
  ASSERT_EQ(like.size(), 1u);
  ASSERT_EQ(like[0].changed.size(), 1u);
  EXPECT_EQ(like[0].changed[0].a, "5/16");
  EXPECT_EQ(like[0].changed[0].b, "1/4");
  ASSERT_EQ(like[0].moved.size(), 2u);  // B is dimensioned from A
  EXPECT_EQ(*like[0].moved[0].dx, readLength("1/16")->value.negated());
  // Where zero is counts as well.
  job.parts[2].setups[0].zero[0].at = "R";
  kit.follow(job);
  like = kit.likeOthers(0);
  ASSERT_EQ(like.size(), 1u);
  EXPECT_EQ(like[0].moved[0].ids.a, "L");
  EXPECT_EQ(*like[0].moved[0].dx, readLength("3")->value);
  EXPECT_TRUE(kit.likeOthers(1).empty());
}

class TurnedOver : public ::testing::Test {
 protected:
  void SetUp() override {
    job = KitJob().job;
    for (Feature& feature : job.parts[0].features) feature.extra = {};
    job.parts.push_back(mirrored(job.parts[0], Axis::x));
    other().name = "Left plate";
    other().opposite = OppositeOf{"Plate", Axis::x};
  }
  Part& other() { return job.parts[2]; }
  /// In both hands, as an edit of the one that is followed.
  void both(const std::function<void(Drilled&)>& change) {
    for (const std::size_t i : {0, 2}) change(*job.parts[i].features[4].drilled());
  }

  Job job;
};

TEST_F(TurnedOver, PlainHolesThroughAreTheSamePart) {
  EXPECT_TRUE(sameTurnedOver(job, other()));
  EXPECT_FALSE(sameTurnedOver(job, job.parts[0]));  // it follows nobody
}

TEST_F(TurnedOver, ABlindHoleIsNot) {
  both([](Drilled& drilled) { drilled.depth = {false, *readLength("3/8")}; });
  EXPECT_FALSE(sameTurnedOver(job, other()));
}

TEST_F(TurnedOver, ASeatIsNot) {
  both([](Drilled& drilled) {
    drilled.make = Make::countersink;
    drilled.seatDiameter = *readLength("3/8");
  });
  EXPECT_FALSE(sameTurnedOver(job, other()));
}

TEST_F(TurnedOver, ADifferenceOfItsOwnIsNot) {
  other().features[4].drilled()->diameter = *readLength("5/16");
  EXPECT_FALSE(sameTurnedOver(job, other()));
}

TEST_F(TurnedOver, WhatIsDrilledIntoAnEdgeIsNot) {
  Feature hole{"E", Face::front, kind::Hole{}, {}, {}, {}};
  job.parts[0].features.push_back(hole);
  other().features.push_back(hole);
  EXPECT_FALSE(sameTurnedOver(job, other()));
}

// Between the plate and one whose hole A, 1 in from the left and 3/4 in from the front, has another
// name.
Difference fromRenamed(const char* fromLeft, bool isLooseAcross) {
  const KitJob kit;
  const Part& plate = kit.job.parts[0];
  Part other = plate;
  other.name = "Other plate";
  other.features[4].id = "Q";
  for (Reading& reading : other.readings) {
    for (Id* id : {&reading.from, &reading.to}) {
      if (*id == "A") *id = "Q";
    }
  }
  other.readings[0].figure = *readLength(fromLeft);
  if (isLooseAcross) other.readings.erase(other.readings.begin() + 1);
  return *differenceOf(kit.job, plate, kit.solutions[0], other, *solve(other));
}

// Wherever it stands in the list.
TEST(DifferenceOf, TheFirstPlaceOfAPartMayHaveAnotherName) {
  const KitJob kit;
  const Part& plate = kit.job.parts[0];
  for (const std::size_t at : {std::size_t{0}, std::size_t{6}}) {
    Part other = plate;
    other.name = "Other plate";
    const Feature hole = other.features[4];
    other.features.erase(other.features.begin() + 4);
    other.features.insert(other.features.begin() + static_cast<std::ptrdiff_t>(at), hole);
    other.features[at].id = "Q";
    for (Reading& reading : other.readings) {
      for (Id* id : {&reading.from, &reading.to}) {
        if (*id == "A") *id = "Q";
      }
    }
    const Difference found = *differenceOf(kit.job, plate, kit.solutions[0], other, *solve(other));
    EXPECT_TRUE(found.same()) << at;
    EXPECT_EQ(found.alike.back(), (Pair{"A", "Q"})) << at;
  }
}

TEST(DifferenceOf, WhatGoesThroughAndWhatIsBlindAreTold) {
  const KitJob kit;
  const Part& plate = kit.job.parts[0];
  Part other = plate;
  other.name = "Other plate";
  other.features[4].drilled()->depth = {false, *readLength("3/8")};
  const Difference found = *differenceOf(kit.job, plate, kit.solutions[0], other, *solve(other));
  EXPECT_EQ(found.changed, (std::vector<Changed>{{{"A", "A"}, "depth", "through", "3/8"}}));
}

// A place that has its own is no other's, and an edge is told by its name alone.
TEST(DifferenceOf, WhatIsMatchedByNameIsNotMatchedAgain) {
  const KitJob kit;
  const Part& plate = kit.job.parts[0];
  Part other = plate;
  other.name = "Other plate";
  Feature near = other.features[4];
  near.id = "N";
  other.features.push_back(near);
  for (const std::size_t i : {0U, 1U}) {
    other.readings.push_back(other.readings[i]);
    other.readings.back().id = i == 0 ? "n1" : "n2";
    other.readings.back().to = "N";
  }
  other.features[1].id = "W";
  for (Reading& reading : other.readings) {
    if (reading.to == "R") reading.to = "W";
  }
  const Difference found = *differenceOf(kit.job, plate, kit.solutions[0], other, *solve(other));
  EXPECT_EQ(found.only,
            (std::vector<OnlyIn>{{"Plate", "R"}, {"Other plate", "W"}, {"Other plate", "N"}}));
  EXPECT_TRUE(found.moved.empty() && found.changed.empty());
}

const std::vector<OnlyIn> kNotMatched{{"Plate", "A"}, {"Other plate", "Q"}};

TEST(DifferenceOf, APlaceUnderAnotherNameIsFoundWithinAQuarterOfAnInch) {
  const Difference near = fromRenamed("1.25", false);
  EXPECT_TRUE(near.only.empty());
  ASSERT_FALSE(near.moved.empty());
  EXPECT_EQ(near.moved.back(), (Moved{{"A", "Q"}, inTenThousandths(2500), Length()}));
  EXPECT_EQ(fromRenamed("1.2501", false).only, kNotMatched);
}

TEST(DifferenceOf, APlaceLooseAlongOneAxisIsFoundByItsNameAlone) {
  EXPECT_EQ(fromRenamed("1.000", true).only, kNotMatched);
}

}  // namespace
}  // namespace inchwright
