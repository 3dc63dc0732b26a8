// What is refused of a whole job and of a shop, each with its place and its reason; sets of pins.

#include <gtest/gtest.h>

#include <functional>

#include "core/part/check.h"
#include "core/part/edit.h"
#include "core/part/shop_owned.h"
#include "tests/core/part/sample_part.h"

namespace inchwright {
namespace {

Lettered lettered(const char* text) {
  const auto read = readLength(text);
  EXPECT_TRUE(read.ok()) << text;
  return read ? *read : Lettered{};
}

Job jobOfTwo() {
  Job job;
  job.parts = {samplePart(), samplePart()};
  job.parts[0].name = "Front";
  job.parts[1].name = "Back";
  return job;
}

struct BadJob {
  const char* place;
  const char* says;
  std::function<void(Job&)> change;
};

TEST(CheckJob, RefusesWithPlaceAndReason) {
  const auto opposite = [](std::string of, Axis across) {
    return [=](Job& job) { job.parts[1].opposite = OppositeOf{of, across}; };
  };
  const auto gaps = [](std::vector<std::string> names) {
    return [=](Job& job) {
      for (const std::string& name : names) job.gaps.emplace_back().name = name;
    };
  };
  const auto tool = [](auto Shop::*list, const char* size) {
    return [=](Job& job) {
      auto& tools = (job.shop.*list).emplace();
      tools.emplace_back().size = lettered(size);
      tools.back().stands = lettered("1");
      tools.back().stands->value = Length::ticks(-1);
    };
  };
  const auto laid = [](auto change) {
    return [=](Job& job) {
      LaidParallel one;
      one.thick = lettered("1/8");
      one.tall = lettered("1/2");
      change(one);
      job.parts[0].setups[0].held.parallels = {one};
    };
  };
  const Length zero;
  const BadJob rows[] = {
      {"/gaps/0/name", "a gap has a name of its own", gaps({""})},
      {"/gaps/1/name", "a gap has a name of its own", gaps({"shake", "shake"})},
      {"/parts/1/opposite_of", "that is there", opposite("Middle", Axis::x)},
      {"/parts/1/opposite_of", "across x or y", opposite("Front", Axis::z)},
      {"/parts/1/name", "is there twice", [](Job& job) { job.parts[1].name = "Front"; }},
      {"/parts/1/features/0/id", "an id is 1 to 64 bytes",
       [](Job& job) { job.parts[1].features[0].id = " A"; }},
      {"/shop/countersinks/0/stands", "", tool(&Shop::countersinks, "1/2")},
      {"/shop/counterbores/0/stands", "", tool(&Shop::counterbores, "1/2")},
      {"/shop/reamers/0/stands", "", tool(&Shop::reamers, "1/2")},
      {"/shop/cutters/0/stands", "", tool(&Shop::cutters, "1/2")},
      {"/machine/finder_error", "not below 0",
       [](Job& job) {
         job.machine.finderError = lettered("1");
         job.machine.finderError->value = Length::ticks(-1);
       }},
      {"/parts/0/setups/0/parallels/0/thick", "greater than 0",
       laid([=](LaidParallel& one) { one.thick->value = zero; })},
      {"/parts/0/setups/0/parallels/0/tall", "greater than 0",
       laid([=](LaidParallel& one) { one.tall->value = zero; })},
      {"/parts/0/setups/0/parallels/0/gap", "not below 0", laid([](LaidParallel& one) {
         one.gap = lettered("1");
         one.gap->value = Length::ticks(-1);
       })},
      {"/parts/0/setups/0/parallels/0/to", "ends beyond where it begins",
       laid([](LaidParallel& one) { one.from = one.to = lettered("1"); })},
  };
  EXPECT_TRUE(checkJob(jobOfTwo()).ok());
  for (const BadJob& row : rows) {
    SCOPED_TRACE(row.place);
    Job job = jobOfTwo();
    row.change(job);
    const Result<Done> result = checkJob(job);
    ASSERT_FALSE(result.ok());
    EXPECT_EQ(result.error().place, row.place);
    EXPECT_NE(result.error().text.find(row.says), std::string::npos) << result.error().text;
  }
  Job job = jobOfTwo();
  laid([](LaidParallel& one) { one.gap = lettered("1"), one.gap->value = Length(); })(job);
  EXPECT_TRUE(checkJob(job).ok()) << "no gap is a gap of 0";
  laid([](LaidParallel& one) { one.from = lettered("1"); })(job);
  EXPECT_TRUE(checkJob(job).ok()) << "it may go on to the end of the work";
  laid([](LaidParallel& one) { one.to = lettered("1"); })(job);
  EXPECT_TRUE(checkJob(job).ok());
  laid([](LaidParallel& one) { one.from = lettered("1"), one.to = lettered("1 1/64"); })(job);
  EXPECT_TRUE(checkJob(job).ok());
}

TEST(CheckJob, TheOtherHandIsNotThatOfAnotherHand) {
  Job job = jobOfTwo();
  job.parts.push_back(samplePart());
  job.parts[2].name = "Third";
  job.parts[1].opposite = OppositeOf{"Front", Axis::x};
  job.parts[2].opposite = OppositeOf{"Back", Axis::y};
  const Result<Done> result = checkJob(job);
  ASSERT_FALSE(result.ok());
  EXPECT_EQ(result.error().place, "/parts/2/opposite_of");
}

TEST(Job, FindsByNameOrNotAtAll) {
  Job job = jobOfTwo();
  job.pictures.resize(2);
  job.pictures[0].name = "front";
  job.pictures[1].name = "back";
  EXPECT_EQ(job.picture("back"), &job.pictures[1]);
  EXPECT_EQ(job.picture("side"), nullptr);
  EXPECT_EQ(job.part("Back"), &job.parts[1]);
  EXPECT_EQ(job.part("Side"), nullptr);
}

TEST(PinSizes, AreASizeOrASetOfThem) {
  struct Case {
    const char* text;
    std::size_t count;
    const char* first;
    const char* last;
  };
  for (const Case& one : {Case{".125", 1, ".125", ".125"},
                          {"0.061 to 0.250", 190, ".061", ".250"},
                          {"0.061 to 0.250 by 0.0005", 379, ".061", ".250"},
                          {"0.011 to 0.012 by 0.0007", 2, ".011", ".0117"},
                          {"2 mm to 3 mm by 0.1 mm", 11, "2 mm", "3 mm"},
                          {".25 to .25", 1, ".25", ".25"}}) {
    const auto sizes = pinSizesIn(one.text);
    ASSERT_TRUE(sizes.ok()) << one.text;
    EXPECT_EQ(sizes->size(), one.count) << one.text;
    EXPECT_EQ(sizes->front(), lettered(one.first).value) << one.text;
    EXPECT_EQ(sizes->back(), lettered(one.last).value) << one.text;
  }
  for (const char* text :
       {"", "none", "0", ".250 to .061", ".061 to", ".061 to x", "x to .250", ".061 to .250 by 0",
        ".061 to .250 by x", ".061 ±.001", ".061 to .250 ±.001"}) {
    EXPECT_EQ(pinSizesIn(text).error().code, ErrorCode::badText) << text;
  }
  EXPECT_EQ(pinSizesIn(".001 to 1 by .00001").error().code, ErrorCode::tooLarge);
}

}  // namespace
}  // namespace inchwright
