#include "core/part/parts_of_job.h"

#include <gtest/gtest.h>

namespace inchwright {
namespace {

Job kit() {
  Job job;
  for (const char* name : {"plate", "arbor", "cock"}) {
    job.parts.emplace_back();
    job.parts.back().name = name;
  }
  Feature hole;
  hole.id = "A";
  hole.shape = emptyShape(FeatureKind::hole);
  hole.drilled()->mate = PartPlace{"arbor", "B", {}};
  job.parts[0].features.push_back(hole);
  job.parts[2].opposite = OppositeOf{"arbor", Axis::x};
  Mate mate;
  mate.name = "arbor in plate";
  mate.hole = PartPlace{"plate", "A", {}};
  mate.shaft = PartPlace{"arbor", "D", {}};
  job.mates.push_back(mate);
  Gap gap;
  gap.name = "end shake";
  gap.members.resize(2);
  gap.members[0].part = "plate";
  gap.members[1].hole = PartPlace{"arbor", "D", {}};
  job.gaps.push_back(gap);
  return job;
}

std::vector<std::string> namesOf(const Job& job) {
  std::vector<std::string> names;
  for (const Part& part : job.parts) names.push_back(part.name);
  return names;
}

using Names = std::vector<std::string>;

TEST(PartsOfJob, APartIsMovedWithNothingElseChanged) {
  EXPECT_EQ(namesOf(*movePart(kit(), "plate", 1)), (Names{"arbor", "plate", "cock"}));
  EXPECT_EQ(namesOf(*movePart(kit(), "cock", 0)), (Names{"cock", "plate", "arbor"}));
  EXPECT_EQ(namesOf(*movePart(kit(), "plate", 99)), (Names{"arbor", "cock", "plate"}));
  EXPECT_EQ(*movePart(*movePart(kit(), "cock", 0), "cock", 2), kit());
  EXPECT_EQ(movePart(kit(), "bridge", 0).error().code, ErrorCode::notFound);
}

TEST(PartsOfJob, ACopyHasThePrintAndNothingOfWhatWasDone) {
  Job job = kit();
  MadePlace made;
  made.place = "A";
  made.ticks = {"drill 1/4"};
  job.parts[0].made.push_back(made);
  job.parts[0].mended.emplace_back();
  job.parts[0].accepted.emplace_back();
  const Result<Job> copied = copyPart(job, "plate", "back plate");
  ASSERT_TRUE(copied) << copied.error().text;
  EXPECT_EQ(namesOf(*copied), (Names{"plate", "back plate", "arbor", "cock"}));
  EXPECT_EQ(copied->parts[1].features, job.parts[0].features);
  EXPECT_TRUE(copied->parts[1].made.empty());
  EXPECT_TRUE(copied->parts[1].mended.empty());
  EXPECT_TRUE(copied->parts[1].accepted.empty());
  EXPECT_EQ(copied->parts[0], job.parts[0]);
  EXPECT_EQ(copied->mates, job.mates);
  EXPECT_EQ(copyPart(job, "plate", "arbor").error().code, ErrorCode::badRequest);
  EXPECT_EQ(copyPart(job, "plate", "").error().code, ErrorCode::badRequest);
}

TEST(PartsOfJob, ARenamedPartIsStillMentionedByAllThatMentionedIt) {
  const Result<Job> renamed = renamePart(kit(), "arbor", "crutch arbor");
  ASSERT_TRUE(renamed) << renamed.error().text;
  EXPECT_TRUE(mentionsOfPart(*renamed, "arbor").empty());
  EXPECT_EQ(mentionsOfPart(*renamed, "crutch arbor"), mentionsOfPart(kit(), "arbor"));
  EXPECT_EQ(std::get<PartPlace>(renamed->mates[0].shaft).part, "crutch arbor");
  EXPECT_EQ(std::get<PartPlace>(*renamed->gaps[0].members[1].hole).part, "crutch arbor");
  EXPECT_EQ(renamed->parts[2].opposite->part, "crutch arbor");
  EXPECT_EQ(renamed->parts[0].features[0].drilled()->mate->part, "crutch arbor");
  EXPECT_EQ(*renamePart(*renamed, "crutch arbor", "arbor"), kit());
  EXPECT_EQ(*renamePart(kit(), "arbor", "arbor"), kit());
  EXPECT_EQ(renamePart(kit(), "arbor", "plate").error().code, ErrorCode::badRequest);
}

TEST(PartsOfJob, WhatMentionsAPartIsNamedOnce) {
  EXPECT_EQ(mentionsOfPart(kit(), "arbor"), (Names{"mate arbor in plate", "gap end shake",
                                                   "hole A of plate", "cock, its other hand"}));
  EXPECT_EQ(mentionsOfPart(kit(), "plate"), (Names{"mate arbor in plate", "gap end shake"}));
  EXPECT_TRUE(mentionsOfPart(kit(), "cock").empty());
}

}  // namespace
}  // namespace inchwright
