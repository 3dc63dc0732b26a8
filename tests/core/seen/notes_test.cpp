#include "core/seen/notes.h"

#include <gtest/gtest.h>

namespace inchwright::seen {
namespace {

Note note(const char* word, const char* size, int of) {
  return {word, {{size, -0.1, 3}}, {}, 1, {}, of};
}

std::vector<std::string> kept(const std::vector<Note>& notes) {
  std::vector<std::string> words;
  for (const Note& one : undisputed(notes)) words.push_back(one.word + one.size.front().text);
  return words;
}

using Words = std::vector<std::string>;

TEST(Notes, OfOneHoleThatIsNotedTwoWaysNeitherCounts) {
  EXPECT_EQ(kept({note("DRILL", "5/32", 0), note("REAM", "11/32", 1), note("REAM", "5/32", 0)}),
            (Words{"REAM11/32"}));
  EXPECT_EQ(kept({note("DRILL", "5/32", 0), note("DRILL", "3/32", 0)}), Words{});
}

TEST(Notes, WhatIsSaidTwiceAlikeCounts) {
  EXPECT_EQ(kept({note("DRILL", "5/32", 0), note("DRILL", "5/32", 0)}),
            (Words{"DRILL5/32", "DRILL5/32"}));
  EXPECT_EQ(kept({note("DRILL", "5/32", 0), note("REAM", "5/32", 1)}),
            (Words{"DRILL5/32", "REAM5/32"}));
}

TEST(Notes, WhatPointsAtNothingDisputesNothing) {
  EXPECT_EQ(kept({note("DRILL", "5/32", -1), note("REAM", "1/4", -1)}),
            (Words{"DRILL5/32", "REAM1/4"}));
}

}  // namespace
}  // namespace inchwright::seen
