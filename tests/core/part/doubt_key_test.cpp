#include "core/part/doubt_key.h"

#include <gtest/gtest.h>

namespace inchwright {
namespace {

TEST(DoubtKey, TextsOfDocuments) {
  const std::vector<std::pair<DoubtKey, std::string>> table{
      {{DoubtTopic::loose, {}, Axis::y, {}, {"C"}}, "loose:C:y"},
      {{DoubtTopic::clash, {}, Axis::x, {"r1", "r4"}, {}}, "clash:x:r1+r4"},
      {{DoubtTopic::clash, {}, Axis::x, {}, {"A", "B"}}, "clash:x::A+B"},
      {{DoubtTopic::assumed, UnderstandingKind::midway, Axis::y, {}, {"A", "F", "K"}},
       "assumed:midway:y:A+F+K"},
      {{DoubtTopic::notPlaced, UnderstandingKind::tangent, {}, {}, {"A", "B"}}, "kind:tangent:A+B"},
      {{DoubtTopic::notPlaced, {}, {}, {"r6"}, {}}, "kind:r6"},
      {{DoubtTopic::notPlaced, {}, {}, {}, {"M"}}, "kind:feature:M"},
      {{DoubtTopic::question, {}, {}, {"r5"}, {}}, "question:r5"},
      {{DoubtTopic::question, {}, {}, {}, {"r5"}}, "question:feature:r5"},
      {{DoubtTopic::question, {}, {}, {"r5"}, {"A"}}, "question:reading:r5:A"},
      {{DoubtTopic::readTwice, {}, {}, {"r5"}, {}}, "readtwice:r5"},
      {{DoubtTopic::size, {}, {}, {"r5"}, {"A"}}, "size::r5:A"},
      {{DoubtTopic::outside, {}, Axis::x, {}, {"A+B", "C:y", "D\\"}},
       "outside:x::A\\+B+C\\:y+D\\\\"},
      {{DoubtTopic::alone}, "alone"}};
  for (const auto& [key, text] : table) {
    EXPECT_EQ(key.text(), text);
    EXPECT_EQ(DoubtKey::read(text), key) << text;
  }
}

TEST(DoubtKey, OthersAreLeftAlone) {
  for (const char* text :
       {"", "x", "loose", "loose:C", "loose:C:w:", "alone:A", "clash:x:r1+", "kind:tangent:A:B"}) {
    EXPECT_EQ(DoubtKey::read(text), std::nullopt) << text;
  }
}

}  // namespace
}  // namespace inchwright
