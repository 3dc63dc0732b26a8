#include <gtest/gtest.h>

#include "core/document/document.h"

namespace inchwright {
namespace {

constexpr const char* kDocument = R"({
  "inchwright": 1, "job": {"title": "", "print": "", "unit": "in", "notes": ""},
  "parts": [{"name": "Plate", "features": [], "readings": [], "understood": [], "setups": [],
    "made": [{"place": "A", "setup": "Setup 1", "ticks": ["spot", "drill 15/64"],
              "x": "0.3752", "later": true}]}]
})";

TEST(MadeDocument, IsReadAndWrittenBack) {
  const auto job = readDocument(kDocument);
  ASSERT_TRUE(job.ok()) << job.error().place << ' ' << job.error().text;
  ASSERT_EQ(job->parts[0].made.size(), 1u);
  const MadePlace& made = job->parts[0].made[0];
  EXPECT_EQ(made.place, "A");
  EXPECT_EQ(made.ticks.size(), 2u);
  ASSERT_TRUE(made.x.has_value());
  EXPECT_EQ(made.x->text, "0.3752");
  EXPECT_FALSE(made.y.has_value());
  EXPECT_EQ(made.extra.size(), 1u);
  const auto again = readDocument(writeDocument(*job));
  ASSERT_TRUE(again.ok());
  EXPECT_EQ(*again, *job);
}

TEST(MadeDocument, EntryWithoutAPlaceIsRefused) {
  const auto job = readDocument(R"({"inchwright": 1, "parts": [{"name": "P",
    "made": [{"ticks": []}]}]})");
  ASSERT_FALSE(job.ok());
  EXPECT_EQ(job.error().place, "/parts/0/made/0");
}

}  // namespace
}  // namespace inchwright
