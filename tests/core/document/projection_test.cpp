#include <gtest/gtest.h>

#include <string>

#include "core/document/document.h"

namespace inchwright {
namespace {

TEST(ProjectionInTheDocument, IsKeptWhereItIsSaid) {
  for (const char* word : {"first", "third"}) {
    const auto job = readDocument(std::string(R"({"inchwright": 1, "job": {"projection": ")") +
                                  word + R"("}, "parts": []})");
    ASSERT_TRUE(job.ok()) << job.error().text;
    ASSERT_TRUE(job->projection);
    EXPECT_EQ(nameOf(*job->projection), word);
    EXPECT_EQ(readDocument(writeDocument(*job)).value(), *job);
  }
  EXPECT_EQ(writeDocument(Job()).find("projection"), std::string::npos);
}

TEST(ProjectionInTheDocument, AnotherWordIsRefusedWithItsPlace) {
  const auto job =
      readDocument(R"({"inchwright": 1, "job": {"projection": "second"}, "parts": []})");
  ASSERT_FALSE(job.ok());
  EXPECT_EQ(job.error().place, "/job/projection");
}

}  // namespace
}  // namespace inchwright
