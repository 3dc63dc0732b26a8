#include "core/part/parts_of_job.h"

#include <gtest/gtest.h>

#include "core/part/edit.h"

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

/// The kit with what its mates and gaps name; the hole of the mate is a ring.
Job wholeKit() {
  Job job = kit();
  Feature ring = job.parts[0].features[0];
  ring.id = "G";
  ring.shape = kind::Ring{};
  ring.as<kind::Ring>()->holes = 4;
  Feature spare = ring;
  spare.id = "S";
  job.parts[0].features = {ring, spare};
  for (const char* id : {"B", "D"}) {
    Feature journal;
    journal.id = id;
    journal.shape = emptyShape(FeatureKind::hole);
    job.parts[1].features.push_back(journal);
  }
  job.parts[2].features = job.parts[1].features;
  job.parts[0].features[1].drilled()->mate = PartPlace{"cock", "D", {}};
  job.mates[0].hole = PartPlace{"plate", "G", {}};
  job.mates[0].places = {"G1", "G3"};
  job.gaps[0].members[0].from = "G";
  job.gaps[0].members[0].to = "G4";
  return job;
}

TEST(PartsOfJob, AFeatureRenamedIsNamedSoByMatesGapsAndHolesOfOtherParts) {
  const Job job = wholeKit();
  const Result<Job> edited = withPartEdited(job, 0, *renameFeature(job.parts[0], "G", "W"));
  ASSERT_TRUE(edited) << edited.error().text;
  EXPECT_EQ(std::get<PartPlace>(edited->mates[0].hole).place, "W");
  EXPECT_EQ(edited->mates[0].places, (std::vector<Id>{"W1", "W3"}));
  EXPECT_EQ(edited->gaps[0].members[0].from, "W");
  EXPECT_EQ(edited->gaps[0].members[0].to, "W4");
  EXPECT_EQ(std::get<PartPlace>(edited->mates[0].shaft).place, "D");

  // What hangs on the other hand follows it as well.
  const Result<Job> other = withPartEdited(job, 1, *renameFeature(job.parts[1], "D", "E"));
  ASSERT_TRUE(other) << other.error().text;
  EXPECT_EQ(std::get<PartPlace>(other->mates[0].shaft).place, "E");
  EXPECT_EQ(other->parts[0].features[1].drilled()->mate->place, "E");
  ASSERT_NE(other->parts[2].feature("E"), nullptr);
}

TEST(PartsOfJob, WhatStandsBesideAnEditedPartStaysAsItIs) {
  Job job = wholeKit();
  job.title = "Wall clock";
  job.print = "sheet 2";
  job.unit = Unit::millimetre;
  job.projection = Projection::third;
  job.notes = "from the back";
  job.jobExtra.push_back({"colour", "7"});
  job.machine.step = "0.005";
  job.shop.drills.emplace();
  job.lathe.emplace();
  job.pictures.emplace_back();
  job.extra.push_back({"more", "1"});
  for (std::size_t part = 0; part < 2; ++part) {
    Part next = job.parts[part];
    next.material = "brass";
    const Result<Job> edited = withPartEdited(job, part, next);
    ASSERT_TRUE(edited) << edited.error().text;
    Job wanted = job;
    wanted.parts[part].material = "brass";
    if (part == 1) wanted.parts[2] = edited->parts[2];  // the other hand follows
    EXPECT_EQ(*edited, wanted) << part;
  }
}

TEST(PartsOfJob, NothingThatTheJobNamesGoesUnasked) {
  const Job job = wholeKit();
  const auto refused = [&](std::size_t part, const Part& next) {
    const Result<Job> edited = withPartEdited(job, part, next);
    return edited ? "" : edited.error().text;
  };
  Part fewer = job.parts[0];
  fewer.features[0].as<kind::Ring>()->holes = 3;
  EXPECT_EQ(refused(0, fewer).substr(0, 35), "gap end shake still names `G4`: tak");
  EXPECT_EQ(refused(0, removeFeature(job.parts[0], "G")->part).substr(0, 31),
            "mate arbor in plate still names");
  EXPECT_EQ(refused(1, removeFeature(job.parts[1], "B")->part), "") << "nothing names it";
  EXPECT_NE(refused(1, removeFeature(job.parts[1], "D")->part), "");
  EXPECT_EQ(refused(0, job.parts[0]), "");
  Job dangling = job;
  dangling.mates[0].hole = PartPlace{"plate", "Q", {}};
  dangling.mates[0].places.clear();
  Part more = job.parts[0];
  more.material = "brass";
  EXPECT_TRUE(withPartEdited(dangling, 0, more)) << "it was not there before";
}

}  // namespace
}  // namespace inchwright
