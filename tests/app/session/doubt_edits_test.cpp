// What settles a doubt makes of a part, and what it leaves as it is.
#include "app/session/doubt_edits.h"

#include <gtest/gtest.h>

#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class DoubtEdits : public testing::Test {
 protected:
  void SetUp() override {
    part = jobOfPlate(
               "edge L left\nedge R right\nhole A 1/4\nhole B 1/4\nL A 3/8\nL R (2)\nA R 1.688\n"
               "angle A B 30\n")
               .parts[0];
    for (Reading& one : part.readings) {
      one.again = "1";
      one.offered = "G S";
      one.meant = "1/2";
    }
  }
  Suspect suspect(std::size_t i, const char* text) const {
    Suspect out;
    out.reading = part.readings[i].id;
    out.wouldBeText = text;
    return out;
  }

  Part part;
};

// What was said of the old figure, twice over or by the print, is not said of the new.
TEST_F(DoubtEdits, AnotherFigureForgetsWhatWasSaidOfTheOld) {
  struct Case {
    std::size_t reading;
    const char* text;
    bool same;
  };
  for (const Case& one :
       {Case{0, "5/8", false}, {0, "3/8", true}, {2, "1.687", false}, {3, "35", false}}) {
    SCOPED_TRACE(one.text);
    const Reading before = part.readings[one.reading];
    const auto next = withFigure(before, one.text, Unit::inch);
    ASSERT_TRUE(next.ok());
    EXPECT_EQ(next->figure.text, one.text);
    EXPECT_EQ(next->again, "") << "it was not read twice so";
    EXPECT_EQ(next->offered, one.same ? before.offered : "");
    EXPECT_EQ(next->meant, one.same ? before.meant : "");
    EXPECT_EQ(next->id, before.id);
    EXPECT_EQ(next->from, before.from);
    EXPECT_EQ(next->to, before.to);
  }
  EXPECT_EQ(withFigure(part.readings[3], "35", Unit::inch)->angle, *readAngle("35"));
  EXPECT_EQ(withFigure(part.readings[0], "12.7", Unit::millimetre)->figure.value,
            readLength("1/2")->value);
  for (const char* wrong : {"", "1/0", "three", "3/8 and"}) {
    EXPECT_FALSE(withFigure(part.readings[0], wrong, Unit::inch).ok()) << wrong;
    EXPECT_FALSE(withFigure(part.readings[3], wrong, Unit::inch).ok()) << wrong;
  }
}

TEST_F(DoubtEdits, ASuspectedFigureIsReadAsItWouldHaveToBe) {
  const auto settled = readSo(part, suspect(0, "5/8"), Unit::inch);
  ASSERT_TRUE(settled.ok());
  EXPECT_EQ(settled->part.readings[0].figure.text, "5/8");
  EXPECT_EQ(settled->part.readings[0].figure.value, readLength("5/8")->value);
  EXPECT_TRUE(settled->title.startsWith("Read ")) << settled->title.toStdString();
  EXPECT_TRUE(settled->title.endsWith(" as 5/8")) << settled->title.toStdString();
  // Only that one.
  Part rest = settled->part;
  rest.readings[0] = part.readings[0];
  EXPECT_EQ(rest, part);
  // What stands in brackets stays in brackets.
  const auto reference = readSo(part, suspect(1, "2 1/8"), Unit::inch);
  ASSERT_TRUE(reference.ok());
  EXPECT_TRUE(reference->part.readings[1].figure.reference);
  EXPECT_EQ(reference->part.readings[1].figure.value, readLength("2 1/8")->value);
  EXPECT_FALSE(settled->part.readings[0].figure.reference);
  // Of a reading that is gone, and of a figure that is none, nothing is made.
  Suspect gone = suspect(0, "5/8");
  gone.reading = "r99";
  const auto none = readSo(part, gone, Unit::inch);
  ASSERT_FALSE(none.ok());
  EXPECT_EQ(none.error().code, ErrorCode::notFound);
  EXPECT_FALSE(readSo(part, suspect(0, "1/0"), Unit::inch).ok());
}

TEST_F(DoubtEdits, WhereTheEndsAreSwappedTheFigureStays) {
  Suspect swapped = suspect(0, "3/8");
  swapped.reason.look = Likeness::endsSwapped;
  const auto settled = readSo(part, swapped, Unit::inch);
  ASSERT_TRUE(settled.ok());
  EXPECT_EQ(settled->part.readings[0].from, "A");
  EXPECT_EQ(settled->part.readings[0].to, "L");
  EXPECT_EQ(settled->part.readings[0].figure, part.readings[0].figure);
}

TEST_F(DoubtEdits, AnAngleOrADistanceThatDoesNotMeetIsReadSo) {
  CentreSuspect angle;
  angle.reading = 3;
  angle.wouldBeText = "35";
  angle.degrees = 35;
  const auto turned = readSo(part, angle, Unit::inch);
  ASSERT_TRUE(turned.ok()) << turned.error().text;
  EXPECT_EQ(turned->part.readings[3].angle, *readAngle("35°"));
  EXPECT_TRUE(turned->title.endsWith("35°")) << turned->title.toStdString();
  CentreSuspect distance;
  distance.reading = 1;
  distance.wouldBeText = "2 1/16";
  const auto other = readSo(part, distance, Unit::inch);
  ASSERT_TRUE(other.ok());
  EXPECT_EQ(other->part.readings[1].figure.text, "2 1/16");
  EXPECT_TRUE(other->part.readings[1].figure.reference) << "as it was";
  distance.wouldBeText = "1/0";
  EXPECT_FALSE(readSo(part, distance, Unit::inch).ok());
}

// 1.688 was rounded from 1 11/16: it counts as that, and stands as it is lettered.
TEST_F(DoubtEdits, RoundedDecimalsCountAsTheirFractionsAndKeepTheirText) {
  Rounding rounding;
  rounding.fractions = {{part.readings[2].id, readLength("1 11/16")->value}};
  const Settled settled = readAsFractions(part, rounding);
  const Reading& read = settled.part.readings[2];
  EXPECT_EQ(read.figure.text, "1.688");
  EXPECT_EQ(read.meant, "1 11/16");
  EXPECT_EQ(read.figure.value, readLength("1 11/16")->value);
  EXPECT_TRUE(read.figure.exact);
  EXPECT_EQ(read.again, "1") << "it was read twice as it is lettered";
  EXPECT_EQ(settled.part.readings[0], part.readings[0]);
  EXPECT_FALSE(settled.title.isEmpty());
}

}  // namespace
}  // namespace inchwright::app
