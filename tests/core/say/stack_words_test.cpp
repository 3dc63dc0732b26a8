#include "core/say/stack_words.h"

#include <gtest/gtest.h>

namespace inchwright {
namespace {

StackMember memberOf(MemberKind what) {
  StackMember member;
  member.what = std::move(what);
  member.text = "1 3/16";
  member.from = "A";
  return member;
}

Lettered sizeAs(const char* text) {
  return *readLength(text);
}

TEST(StackWords, EveryKindOfMemberHasItsName) {
  const struct {
    MemberKind what;
    const char* name;
  } kCases[] = {
      {member::Read{"r2"}, "r2"},
      {member::Shape{FeatureKind::row, "D"}, "row D"},
      {member::FromZero{"A"}, "A"},
      {member::FromZero{"A", Axis::y}, "A y"},
      {member::Named{"bridge screw"}, "bridge screw"},
      {member::Alone{}, "length 1 3/16"},
      {member::Fitted{"H7/g6", "1/4"}, "fit H7/g6 on 1/4"},
      {member::Screwed{"1/4-20 UNC", "normal", "9/32"}, "1/4-20 UNC in normal hole 9/32"},
      {member::ScrewedIn{"M4", sizeAs("4.5 mm")}, "M4 in hole 4.5 mm"},
      {member::ScrewedIn{"M4", PartPlace{"Bridge", "A", {}}}, "M4 in hole A of Bridge"},
      {member::Shafted{sizeAs(".2505"), PartPlace{"Arbor", "P", {}}},
       "hole .2505 on shaft P of Arbor"},
      {member::Found{}, "measured"},
  };
  for (const auto& [what, name] : kCases) EXPECT_EQ(memberName(memberOf(what)), name);
}

TEST(StackWords, OnlyWhatIsWorkedToFromZeroBeginsThere) {
  EXPECT_EQ(beginsAt(memberOf(member::FromZero{"B"})), "zero");
  EXPECT_EQ(beginsAt(memberOf(member::Read{"r2"})), "A");
}

}  // namespace
}  // namespace inchwright
