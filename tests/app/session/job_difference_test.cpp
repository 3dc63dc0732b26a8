#include "app/session/job_difference.h"

#include <gtest/gtest.h>

#include "core/lines/lines.h"

namespace inchwright::app {
namespace {

Job plate(std::initializer_list<const char*> lines) {
  Job job;
  job.parts.emplace_back();
  job.parts[0].name = "Plate";
  for (const char* line : lines) {
    auto next = applyLine(job.parts[0], line, {});
    EXPECT_TRUE(next.ok()) << line;
    if (next.ok()) job.parts[0] = std::move(next->part);
  }
  return job;
}

TEST(JobDifference, SaysWhatIsOtherByItsEndsAndFigures) {
  const Job there = plate({"edge L left", "hole A 1/4", "hole D 1/8", "L A 3/8"});
  const Job here = plate({"edge L left", "hole A 5/16", "L A 7/16", "hole E 1/4"});
  const QStringList said = jobDifference(there, here);
  for (const char* line : {"r1 (L to A) is 3/8 there and 7/16 here", "D is only there",
                           "E is only here", "A is another there, or lies elsewhere"}) {
    EXPECT_TRUE(said.contains(QString::fromLatin1(line))) << line << " not among\n"
                                                          << said.join(u'\n').toStdString();
  }
  EXPECT_EQ(said.size(), 4);
}

TEST(JobDifference, EqualJobsDifferInNothingAndOthersAlwaysInSomething) {
  const Job job = plate({"edge L left", "hole A 1/4", "L A 3/8"});
  EXPECT_TRUE(jobDifference(job, job).isEmpty());
  Job titled = job;
  titled.title = "Hall clock";
  EXPECT_EQ(jobDifference(job, titled),
            QStringList{QStringLiteral("title, machine or pictures differ")});
  Job turned = job;
  std::swap(turned.parts[0].features[0], turned.parts[0].features[1]);
  EXPECT_EQ(jobDifference(job, turned).size(), 1);
  Job quantity = job;
  quantity.parts[0].quantity = 4;
  EXPECT_EQ(jobDifference(job, quantity).size(), 1);
  Job another = job;
  another.parts.emplace_back();
  another.parts.back().name = "Cock";
  EXPECT_EQ(jobDifference(job, another), QStringList{QStringLiteral("the part Cock is only here")});
}

TEST(JobDifference, ManyAreCounted) {
  Job there = plate({"edge L left"}), here = there;
  for (int i = 0; i < 20; ++i) {
    auto next = applyLine(here.parts[0], "point P" + std::to_string(i), {});
    here.parts[0] = std::move(next->part);
  }
  const QStringList said = jobDifference(there, here, 5);
  ASSERT_EQ(said.size(), 5);
  EXPECT_EQ(said.back(), QStringLiteral("and 16 more"));
}

}  // namespace
}  // namespace inchwright::app
