#include "core/suspect/suspects.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "tests/core/suspect/drawn_print.h"
#include "tests/support/suspected.h"

namespace inchwright {
namespace {

/// A part along X, written as a table: edges L and R, holes A, B, …; `L A 3/8` a reading.
class Along {
 public:
  Along& place(const Id& id, const std::string& traced = "") {
    Feature feature;
    feature.id = id;
    const bool isEdge = id == "L" || id == "R";
    feature.shape = kind::Hole{};
    if (isEdge) feature.shape = kind::Edge{Axis::x, id == "L" ? Side::left : Side::right};
    if (!traced.empty()) feature.traced = {traced};
    if (!traced.empty() && !isEdge) feature.traced.push_back("0.5");
    part_.features.push_back(std::move(feature));
    return *this;
  }

  Along& reading(const Id& id, const Id& from, const Id& to, const std::string& text) {
    Reading reading;
    reading.id = id;
    reading.from = from;
    reading.to = to;
    const auto figure = readLength(text);
    EXPECT_TRUE(figure.ok()) << text;
    if (figure.ok()) reading.figure = *figure;
    part_.readings.push_back(std::move(reading));
    return *this;
  }

  Along& midway(const Id& of, const Id& low, const Id& high, bool stated) {
    Understanding understanding;
    understanding.kind = UnderstandingKind::midway;
    understanding.axis = Axis::x;
    understanding.of = {of};
    understanding.between = {low, high};
    understanding.stated = stated;
    part_.understood.push_back(std::move(understanding));
    return *this;
  }

  const Part& part() const { return part_; }

  std::vector<test::Suspected> clashes() const {
    const auto solution = solve(part_);
    EXPECT_TRUE(solution.ok());
    return solution.ok() ? test::suspectedIn(part_, *solution) : std::vector<test::Suspected>{};
  }

 private:
  Part part_;
};

Length inches(const std::string& text) {
  const auto figure = readLength(text);
  EXPECT_TRUE(figure.ok()) << text;
  return figure.ok() ? figure->value : Length();
}

const Suspect* suspectIn(const test::Suspected& clash, const Id& reading) {
  for (const Suspect& suspect : clash.suspects) {
    if (suspect.reading == reading) return &suspect;
  }
  return nullptr;
}

TEST(Suspects, NoneWhereEverythingCloses) {
  const auto along = Along()
                         .place("L")
                         .place("A")
                         .place("R")
                         .reading("r1", "L", "A", "3/8")
                         .reading("r2", "A", "R", "1 5/8")
                         .reading("r3", "L", "R", "2");
  EXPECT_TRUE(along.clashes().empty());
}

// The only link that two loops share, and neither of the third's: no lettering is needed.
TEST(Suspects, TheOneLinkThatClosesEveryLoop) {
  const auto clashes = Along()
                           .place("L")
                           .place("A")
                           .place("B")
                           .place("R")
                           .reading("r1", "L", "A", "3/8")
                           .reading("r2", "A", "B", "1 3/16")
                           .reading("r3", "B", "R", "7/16")
                           .reading("r4", "L", "B", "1 11/16")
                           .reading("r5", "A", "R", "1 3/4")
                           .clashes();
  ASSERT_FALSE(clashes.empty());
  for (const test::Suspected& clash : clashes) {
    ASSERT_FALSE(clash.suspects.empty());
    const Suspect& first = clash.suspects.front();
    EXPECT_EQ(first.reading, "r2");
    EXPECT_EQ(first.wouldBe, inches("1 5/16"));
    EXPECT_EQ(first.wouldBeText, "1 5/16");
    EXPECT_EQ(clash.why.front(), "looks like 1 5/16");
    EXPECT_EQ(reasonText({}, first), "the two look alike");
    EXPECT_TRUE(first.closesAll);
    EXPECT_TRUE(
        std::is_sorted(clash.suspects.begin() + 1, clash.suspects.end(),
                       [](const Suspect& a, const Suspect& b) { return a.weight > b.weight; }));
  }
}

TEST(Suspects, LetteringDecidesAmongLinksInSeries) {
  const auto clashes = Along()
                           .place("L")
                           .place("A")
                           .place("B")
                           .place("R")
                           .reading("r1", "L", "A", "1 1/8")
                           .reading("r2", "A", "B", "1 1/16")
                           .reading("r3", "B", "R", "2 1/4")
                           .reading("r4", "L", "R", "(4 13/16)")
                           .clashes();
  ASSERT_EQ(clashes.size(), 1u);
  const Suspect& first = clashes[0].suspects.front();
  EXPECT_EQ(first.reading, "r2");
  EXPECT_EQ(first.wouldBe, inches("1 7/16"));
  EXPECT_EQ(clashes[0].why.front(), "looks like 1 7/16");
  // Each of the others closes the loop too, and stands behind.
  const Suspect* overall = suspectIn(clashes[0], "r4");
  ASSERT_NE(overall, nullptr);
  EXPECT_EQ(overall->wouldBeText, "4 7/16");
  EXPECT_LT(overall->weight, first.weight);
}

TEST(Suspects, TracingDecidesWhereLetteringCannot) {
  const auto clashes = Along()
                           .place("L", "0.01")
                           .place("A", "1.26")
                           .place("B", "2.75")
                           .place("R", "4.01")
                           .reading("r1", "L", "A", "1 1/4")
                           .reading("r2", "A", "B", "1/2")
                           .reading("r3", "B", "R", "1 1/4")
                           .reading("r4", "L", "R", "4")
                           .clashes();
  ASSERT_EQ(clashes.size(), 1u);
  const Suspect& first = clashes[0].suspects.front();
  EXPECT_EQ(first.reading, "r2");
  EXPECT_EQ(first.wouldBe, inches("1 1/2"));
  EXPECT_EQ(clashes[0].why.front(), "a whole inch dropped; the tracing puts it at about 1 1/2");
}

// r2 says 1 1/4, which is the distance from L to B, yet stands between A and B.
TEST(Suspects, WrongEnd) {
  const auto clashes = Along()
                           .place("L", "0")
                           .place("A", "0.47")
                           .place("B", "1.25")
                           .place("R", "3.12")
                           .reading("r1", "L", "A", "15/32")
                           .reading("r2", "A", "B", "1 1/4")
                           .reading("r3", "B", "R", "1 7/8")
                           .reading("r4", "L", "R", "3 1/8")
                           .clashes();
  ASSERT_EQ(clashes.size(), 1u);
  const Suspect& first = clashes[0].suspects.front();
  EXPECT_EQ(first.reading, "r2");
  EXPECT_EQ(first.wouldBe, inches("25/32"));
  EXPECT_EQ(clashes[0].why.front(),
            "measured from L rather than A; the tracing puts it at about 25/32");
}

TEST(Suspects, TwoMisreadingsEachHeadAList) {
  const auto clashes = Along()
                           .place("L", "0")
                           .place("A", "1")
                           .place("B", "2.44")
                           .place("R", "3.5")
                           .reading("r1", "L", "A", "2")
                           .reading("r2", "A", "B", "1 1/16")
                           .reading("r3", "B", "R", "1 1/16")
                           .reading("r4", "L", "B", "2 7/16")
                           .reading("r5", "A", "R", "2 1/2")
                           .reading("r6", "L", "R", "3 1/2")
                           .clashes();
  ASSERT_GE(clashes.size(), 2u);
  std::set<Id> heads;
  for (const test::Suspected& clash : clashes) {
    ASSERT_FALSE(clash.suspects.empty());
    heads.insert(clash.suspects.front().reading);
    EXPECT_FALSE(clash.suspects.front().closesAll);
  }
  EXPECT_TRUE(heads.count("r1"));
  EXPECT_TRUE(heads.count("r2"));
  const auto found = std::find_if(clashes.begin(), clashes.end(), [](const test::Suspected& clash) {
    return clash.suspects.front().reading == "r1";
  });
  EXPECT_EQ(found->suspects.front().wouldBe, inches("1"));
  EXPECT_NE(found->why.front().find("together with 1 1/16 from A to B"), std::string::npos);
}

// Nothing is traced: the two are found by the loops alone.
TEST(Suspects, TwoMisreadingsAreFoundWithoutATracing) {
  const auto clashes = Along()
                           .place("L")
                           .place("A")
                           .place("B")
                           .place("C")
                           .place("R")
                           .reading("r1", "L", "A", "1 1/8")
                           .reading("r2", "A", "B", "2 3/8")
                           .reading("r3", "L", "B", "2 1/2")
                           .reading("r4", "B", "C", "5/8")
                           .reading("r5", "C", "R", "3/16")
                           .reading("r6", "B", "R", "15/16")
                           .reading("r7", "L", "R", "3 7/16")
                           .reading("r8", "A", "R", "2 5/16")
                           .clashes();
  // 2 3/8 for 1 3/8, and 3/16 for 5/16: no single reading would do.
  ASSERT_GE(clashes.size(), 2u);
  bool dropped = false, alike = false;
  for (const test::Suspected& clash : clashes) {
    ASSERT_FALSE(clash.suspects.empty());
    for (const Suspect& one : clash.suspects) {
      EXPECT_FALSE(one.closesAll);
      EXPECT_EQ(one.ofMany, 0) << "two explain all of it";
      dropped = dropped || (one.reading == "r2" && one.wouldBe == inches("1 3/8") &&
                            one.together == std::vector<Id>{"r5"});
      alike = alike || (one.reading == "r5" && one.wouldBe == inches("5/16") &&
                        one.together == std::vector<Id>{"r2"});
    }
  }
  EXPECT_TRUE(dropped && alike);
}

TEST(Suspects, TwoInOneLoopLeadItTogether) {
  const auto clashes = Along()
                           .place("L", "0")
                           .place("A", "1.37")
                           .place("B", "2")
                           .place("R", "4.01")
                           .reading("r1", "L", "A", "3/8")
                           .reading("r2", "A", "B", "5/8")
                           .reading("r3", "B", "R", "7")
                           .reading("r4", "L", "R", "4")
                           .clashes();
  // 3/8 for 1 3/8 and 7 for 2: one alone would close the loop, yet not fit the tracing.
  ASSERT_EQ(clashes.size(), 1u);
  std::set<Id> leading;
  for (std::size_t i = 0; i < 2 && i < clashes[0].suspects.size(); ++i) {
    leading.insert(clashes[0].suspects[i].reading);
  }
  EXPECT_EQ(leading, (std::set<Id>{"r1", "r3"}));
}

// r1 and r2 are both wrong, on a loop of their own each and together on a third, which misses by
// the sum or the difference: the one pair that closes all three.
TEST(Suspects, TwoThatShareALoopAndHaveOneEach) {
  for (const auto& [first, second] : {std::pair("1 7/8", "1 1/4"), std::pair("1 7/8", "1 3/4")}) {
    const auto clashes = Along()
                             .place("L")
                             .place("A")
                             .place("B")
                             .place("M")
                             .place("N")
                             .reading("r1", "L", "A", first)   // 1 3/8
                             .reading("r2", "A", "B", second)  // 1 1/2
                             .reading("r3", "L", "B", "2 7/8")
                             .reading("r4", "L", "M", "5/8")
                             .reading("r5", "M", "A", "3/4")
                             .reading("r6", "A", "N", "13/16")
                             .reading("r7", "N", "B", "11/16")
                             .clashes();
    ASSERT_GE(clashes.size(), 2u) << second;
    std::set<Id> heads;
    for (const test::Suspected& clash : clashes) {
      ASSERT_FALSE(clash.suspects.empty());
      const Suspect& head = clash.suspects.front();
      heads.insert(head.reading);
      EXPECT_EQ(head.wouldBe, inches(head.reading == "r1" ? "1 3/8" : "1 1/2")) << second;
      EXPECT_EQ(head.together, std::vector<Id>{head.reading == "r1" ? "r2" : "r1"}) << second;
      EXPECT_EQ(head.ofMany, 0);
    }
    EXPECT_TRUE(heads == (std::set<Id>{"r1", "r2"}) || heads.size() == 1) << second;
    EXPECT_TRUE(heads.count("r1") + heads.count("r2") == heads.size()) << second;
  }
}

// Three in a row are wrong, each on a loop of its own, and the length over all three is right:
// nothing but the three together closes all.
TEST(Suspects, ThreeThatShareALoopAndHaveOneEach) {
  const auto clashes = Along()
                           .place("L")
                           .place("A")
                           .place("B")
                           .place("C")
                           .place("M")
                           .place("N")
                           .place("P")
                           .reading("r1", "L", "A", "1 7/8")
                           .reading("r2", "A", "B", "1 1/4")
                           .reading("r3", "B", "C", "15/16")
                           .reading("r4", "L", "M", "5/8")
                           .reading("r5", "M", "A", "3/4")
                           .reading("r6", "A", "N", "13/16")
                           .reading("r7", "N", "B", "11/16")
                           .reading("r8", "B", "P", "9/16")
                           .reading("r9", "P", "C", "1/2")
                           .reading("r10", "L", "C", "3 15/16")
                           .clashes();
  ASSERT_GE(clashes.size(), 3u);
  const std::map<Id, const char*> right{{"r1", "1 3/8"}, {"r2", "1 1/2"}, {"r3", "1 1/16"}};
  for (const test::Suspected& clash : clashes) {
    ASSERT_FALSE(clash.suspects.empty());
    const Suspect& head = clash.suspects.front();
    ASSERT_EQ(right.count(head.reading), 1u) << head.reading;
    EXPECT_EQ(head.wouldBe, inches(right.at(head.reading)));
    EXPECT_EQ(head.together.size(), 2u);
    EXPECT_EQ(head.ofMany, 0) << head.reading;
  }
}

// Neither end of a figure need be traced: what hangs on it is. H is traced where 7/8 for r1, or for
// r2, would put it.
TEST(Suspects, TheTracingOfWhatHangsOnALoopDecides) {
  for (const bool isFirst : {true, false}) {
    const auto clashes = Along()
                             .place("L", "0")
                             .place("A")
                             .place("H", isFirst ? "1.37" : "0.87")
                             .place("R", "1.25")
                             .reading("r1", "L", "A", "3/8")
                             .reading("r2", "A", "R", "3/8")
                             .reading("r3", "L", "R", "1 1/4")
                             .reading("h", "A", "H", "1/2")
                             .clashes();
    ASSERT_EQ(clashes.size(), 1u);
    ASSERT_FALSE(clashes[0].suspects.empty());
    EXPECT_EQ(clashes[0].suspects.front().reading, isFirst ? "r1" : "r2");
    EXPECT_EQ(clashes[0].suspects.front().wouldBe, inches("7/8"));
  }
}

// To half a millimetre, and a 32nd of an inch.
TEST(Suspects, TheTracingIsToldInThePrintsOwnUnit) {
  const auto clashes = Along()
                           .place("L", "0")
                           .place("A", "1.0827")  // 27.5 mm
                           .place("R", "2.0669")  // 52.5 mm
                           .reading("r1", "L", "A", "21.5 mm")
                           .reading("r2", "A", "R", "25 mm")
                           .reading("r3", "L", "R", "52.5 mm")
                           .clashes();
  ASSERT_EQ(clashes.size(), 1u);
  const Suspect& first = clashes[0].suspects.front();
  EXPECT_EQ(first.reading, "r1");
  EXPECT_EQ(first.traced, inches("27.5 mm"));
}

// A is midway between L and R: 2 · r1 must make r2, so half of the miss lies in r1.
TEST(Suspects, SeesThroughAMidway) {
  const auto clashes = Along()
                           .place("L")
                           .place("A")
                           .place("R")
                           .reading("r1", "L", "A", "1 3/16")
                           .reading("r2", "L", "R", "2 5/8")
                           .midway("A", "L", "R", true)
                           .clashes();
  ASSERT_EQ(clashes.size(), 1u);
  const Suspect* half = suspectIn(clashes[0], "r1");
  const Suspect* whole = suspectIn(clashes[0], "r2");
  ASSERT_NE(half, nullptr);
  ASSERT_NE(whole, nullptr);
  EXPECT_EQ(half->wouldBe, inches("1 5/16"));
  EXPECT_EQ(whole->wouldBe, inches("2 3/8"));
  EXPECT_EQ(clashes[0].suspects.front().reading, "r1");
}

TEST(Suspects, AStretchedCopyDoesNotMislead) {
  // Drawn 4 % too long; 13/16 was read for 13/64.
  const auto clashes = Along()
                           .place("L", "0")
                           .place("A", "1.56")
                           .place("B", "1.771")
                           .place("C", "3.33")
                           .place("R", "6.45")
                           .reading("r1", "L", "A", "1 1/2")
                           .reading("r2", "A", "B", "13/16")
                           .reading("r3", "B", "C", "1 1/2")
                           .reading("r4", "C", "R", "3")
                           .reading("r5", "L", "R", "6 13/64")
                           .clashes();
  ASSERT_EQ(clashes.size(), 1u);
  EXPECT_EQ(clashes[0].suspects.front().reading, "r2");
  EXPECT_EQ(clashes[0].suspects.front().wouldBe, inches("13/64"));
}

TEST(Suspects, NothingThatCannotBe) {
  // Without r1 the loop would need a negative length there.
  const auto clashes = Along()
                           .place("L")
                           .place("A")
                           .place("R")
                           .reading("r1", "L", "A", "1/2")
                           .reading("r2", "A", "R", "4")
                           .reading("r3", "L", "R", "3")
                           .clashes();
  ASSERT_EQ(clashes.size(), 1u);
  EXPECT_EQ(suspectIn(clashes[0], "r1"), nullptr);
  for (const Suspect& suspect : clashes[0].suspects) EXPECT_GT(suspect.wouldBe.ticks(), 0);
}

TEST(Suspects, FourMisreadingsStillNameWhatClosesEachLoop) {
  Along along;
  along.place("L").place("R");
  // Independent loops through one place each, joined in one block by the overall length.
  const char* wrong[] = {"1 1/8", "1 3/8", "1 5/8", "1 7/8", "1 9/16"};
  for (int i = 0; i < 5; ++i) {
    const std::string id = "H" + std::to_string(i);
    along.place(id);
    along.reading("a" + id, "L", id, wrong[i]);
    along.reading("b" + id, id, "R", "2");
  }
  along.reading("o", "L", "R", "3");
  const auto clashes = along.clashes();
  ASSERT_FALSE(clashes.empty());
  for (const test::Suspected& clash : clashes) EXPECT_FALSE(clash.suspects.empty());
}

// A correction that is believed must close what it claims to close.
TEST(Suspects, WhatClosesAllDoes) {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    SCOPED_TRACE(seed);
    const auto print = drawn::Maker(seed, drawn::Manner::chained).make(1, drawn::Trace::gaussian);
    const auto solution = solve(print.part);
    ASSERT_TRUE(solution.ok());
    for (const test::Suspected& clash : test::suspectedIn(print.part, *solution)) {
      for (const Suspect& suspect : clash.suspects) {
        Part mended = print.part;
        for (Reading& reading : mended.readings) {
          if (reading.id != suspect.reading) continue;
          if (suspect.reason.look == Likeness::endsSwapped) std::swap(reading.from, reading.to);
          reading.figure.value = suspect.wouldBe;
        }
        const auto again = solve(mended, {.findSuspects = false});
        ASSERT_TRUE(again.ok());
        EXPECT_EQ(again->clashes.empty(), suspect.closesAll) << suspect.reading;
      }
    }
  }
}

TEST(Suspects, OrderDoesNotMatter) {
  std::mt19937_64 random(11);
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    SCOPED_TRACE(seed);
    Part part = drawn::Maker(seed, seed % 2 == 0 ? drawn::Manner::chained : drawn::Manner::ladder)
                    .make(2, seed % 3 == 0 ? drawn::Trace::none : drawn::Trace::uniform)
                    .part;
    const auto first = solve(part);
    ASSERT_TRUE(first.ok());
    std::shuffle(part.features.begin(), part.features.end(), random);
    std::shuffle(part.readings.begin(), part.readings.end(), random);
    const auto second = solve(part);
    ASSERT_TRUE(second.ok());
    ASSERT_EQ(first->clashes.size(), second->clashes.size());
    for (std::size_t i = 0; i < first->clashes.size(); ++i) {
      EXPECT_EQ(first->suspects[i], second->suspects[i]);
    }
  }
}

}  // namespace
}  // namespace inchwright
