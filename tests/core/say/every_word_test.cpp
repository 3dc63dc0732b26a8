// Words for every value that can be worded: none is missing, none stands for two.
#include <gtest/gtest.h>

#include <set>
#include <string>

#include "core/lines/lines.h"
#include "core/say/callout_words.h"
#include "core/say/kit_words.h"
#include "core/say/plan_words.h"

namespace inchwright {
namespace {

// Plain words: no name of the document, nothing doubled, nothing left open at an end.
void expectPlain(const std::string& words) {
  EXPECT_FALSE(words.empty());
  EXPECT_EQ(words.find('_'), std::string::npos) << words;
  EXPECT_EQ(words.find("  "), std::string::npos) << words;
  EXPECT_FALSE(words.starts_with(' ') || words.ends_with(' ') || words.ends_with(',')) << words;
}

template <class Value, class Words>
void expectOwnWords(Value last, Words words, std::size_t alike = 0) {
  std::set<std::string> seen;
  for (int i = 0; i <= static_cast<int>(last); ++i) {
    const std::string said = words(static_cast<Value>(i));
    expectPlain(said);
    seen.insert(said);
  }
  EXPECT_EQ(seen.size() + alike, static_cast<std::size_t>(last) + 1);
}

TEST(EveryWord, IsThereAndItsOwn) {
  expectOwnWords(Verdict::notMeasured, [](Verdict one) { return verdictWords(one); });
  expectOwnWords(WayOut::openToSize, [](WayOut one) { return wayWords(one); });
  // A thread and a seat are both made as lettered.
  expectOwnWords(
      Rule::afterPressing, [](Rule one) { return wordsOf(one); }, 1);
  expectOwnWords(OrderRule::elsewhere, [](OrderRule one) { return wordsOf(one); });
  expectOwnWords(Unsaid::thickness, [](Unsaid one) { return wordsOf(one); });
}

// What a callout was understood to say is said back before it is taken: any of it that is left out
// is a hole made otherwise than lettered.
TEST(CalloutWords, SayBackAllThatWasUnderstood) {
  struct Case {
    FeatureKind kind;
    const char* callout;
    const char* words;
  };
  Part part;
  part.name = "Plate";
  for (const Case& one : {
           Case{FeatureKind::hole, "1/4", "drill, through"},
           Case{FeatureKind::hole, "1/4 REAM", "ream, through"},
           Case{FeatureKind::hole, "1/2 BORE", "bore, through"},
           Case{FeatureKind::hole, "1/4 DRILL 3/8 DEEP", "drill, 3/8 deep"},
           Case{FeatureKind::hole, "10-32 TAP 1/2 DEEP", "tap 10-32, 1/2 deep"},
           Case{FeatureKind::hole, "1/4 DRILL, 1/2 CBORE 3/16 DEEP",
                "drill, through; counterbore 1/2, 3/16 deep"},
           Case{FeatureKind::hole, "1/4 DRILL, 1/2 CSK 82°",
                "drill, through; countersink 1/2, 82°"},
           Case{FeatureKind::hole, "1/4 DRILL, 5/8 SPOTFACE", "drill, through; spotface 5/8"},
           Case{FeatureKind::hole, "4 HOLES 1/8 DRILL", "drill, through; the print speaks of 4"},
           Case{FeatureKind::ring, "6 on 2 1/8 drill 1/8", "drill, through; 6 holes"},
           Case{FeatureKind::row, "5 holes pitch 1/2 drill 1/8", "drill, through; 5 holes along x"},
           Case{FeatureKind::slot, "x 1/4 by 1", "1 over all, along x, through"},
           Case{FeatureKind::slot, "y 1/4 by 1 deep 1/8", "1 over all, along y, 1/8 deep"},
       }) {
    const auto line = readFeatureLine(part, one.kind, one.callout, {});
    ASSERT_TRUE(line.ok()) << one.callout << ": " << line.error().text;
    EXPECT_EQ(calloutWords(*line), one.words) << one.callout;
  }
}

// A seat by a document, whose words may name no way of making it.
TEST(CalloutWords, ASeatIsNamedByWhatItIs) {
  FeatureLine line;
  line.feature.shape = kind::Hole{};
  Drilled& hole = *line.feature.drilled();
  hole.diameter = *readLength("1/4");
  hole.make = Make::drill;
  hole.seatDiameter = *readLength("1/2");
  EXPECT_EQ(calloutWords(line), "drill, through; counterbore or spotface 1/2");
  hole.seatAngle = *readAngle("90");
  EXPECT_EQ(calloutWords(line), "drill, through; countersink 1/2, 90");
  hole.make = Make::countersink;
  hole.seatAngle.reset();
  EXPECT_EQ(calloutWords(line), "drill, through; countersink 1/2");
  hole.limits = "H7";
  hole.locate = Locate::assembly;
  line.feature.note = "with its mate";
  EXPECT_EQ(calloutWords(line),
            "drill, limits H7, through; countersink 1/2; on assembly, not by its coordinates; "
            "noted: with its mate");
}

}  // namespace
}  // namespace inchwright
