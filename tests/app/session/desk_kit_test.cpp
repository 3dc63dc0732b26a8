// What the desk says of the part on it as one of a kit: parts like it, what it goes with, the
// lathe.
#include <gtest/gtest.h>

#include "app/session/desk.h"
#include "tests/support/kit_on_desk.h"

namespace inchwright::app {
namespace {

class DeskKit : public KitOnDesk {
 protected:
  void put(const char* name) {
    for (std::size_t i = 0; i < desk.job().parts.size(); ++i) {
      if (desk.job().parts[i].name == name) desk.choosePart(static_cast<int>(i));
    }
    ASSERT_EQ(desk.part().name, name);
  }
  /// Of the part on the desk: no way out is chosen any more.
  void forgetChoice() {
    Part part = desk.part();
    part.mended.clear();
    desk.applyPart(part, QStringLiteral("choose nothing"));
  }
  std::string textOfSheet() const {
    std::string all;
    for (const Page& page : desk.sheet()->pages()) {
      for (const DrawItem& item : page.items) {
        if (const auto* text = std::get_if<TextItem>(&item)) all += text->text + " ";
      }
    }
    return all;
  }
  bool says(const char* words) const { return textOfSheet().find(words) != std::string::npos; }
};

TEST_F(DeskKit, TheSheetWarnsOfAPartLikeIt) {
  put("Back click");
  EXPECT_TRUE(says("like Front click, but: H diameter is 5/64, not 1/16")) << textOfSheet();
  // And no longer when the two are not alike any more.
  Part part = desk.part();
  part.features.erase(part.features.begin() + 6, part.features.end());
  part.readings = {part.readings[0], part.readings[1], part.readings[6]};
  part.setups.clear();
  part.made.clear();
  desk.applyPart(part, QStringLiteral("take the holes away"));
  EXPECT_FALSE(says("like Front click"));
}

TEST_F(DeskKit, WhatMayNotGoTogetherIsSaidOfThosePartsAlone) {
  put("Click plate");
  // A shaft to suit is chosen: the bush's own sheet says its size, and nothing is open.
  EXPECT_TRUE(desk.kitDoubts().empty()) << desk.kitDoubts().front();
  forgetChoice();
  bool mate = false, hole = false;
  for (const std::string& one : desk.kitDoubts()) {
    mate = mate || one.starts_with("Mate bush in the plate");
    hole = hole || one.ends_with("over size. No way out is chosen yet");
    EXPECT_EQ(one.find("side shake"), std::string::npos) << one;
  }
  EXPECT_TRUE(mate);
  EXPECT_TRUE(hole);
  put("Bush");
  EXPECT_FALSE(desk.kitDoubts().empty());
  put("Back click");
  EXPECT_TRUE(desk.kitDoubts().empty());
}

TEST_F(DeskKit, AMeasuredSizeIsWorkedInAtOnce) {
  put("Click plate");
  forgetChoice();
  put("Bush");
  const auto tells = [&] {
    for (const std::string& one : desk.kitDoubts()) {
      if (one.starts_with("Mate bush in the plate")) return true;
    }
    return false;
  };
  ASSERT_TRUE(tells());
  MadePlace made;
  made.place = "P";
  made.setup = "1";
  made.size = *readLength(".3153");
  made.with = Instrument{"micrometer", *readLength(".0001"), {}};
  Part part = desk.part();
  part.made.push_back(made);
  desk.applyPart(part, QStringLiteral("measure"));
  EXPECT_FALSE(tells());
}

TEST_F(DeskKit, ATurnedPartHasItsLatheSheet) {
  put("Bush");
  EXPECT_EQ(desk.table(), nullptr);
  ASSERT_NE(desk.lathe(), nullptr);
  EXPECT_TRUE(desk.isWorkedOut());
  ASSERT_NE(desk.sheet(), nullptr);
  EXPECT_GE(desk.sheet()->pageCount(), 1u);
  EXPECT_TRUE(says("TURN TO"));
  EXPECT_TRUE(says("to suit its mate, not the print's 0.313")) << textOfSheet();
  EXPECT_EQ(desk.step()->size, readLength("0.001")->value);
}

TEST_F(DeskKit, ATurnedPartWithoutASetupIsHeldByItsLeftEnd) {
  put("Bush");
  Part part = desk.part();
  part.setups.clear();
  part.made.clear();
  desk.applyPart(part, QStringLiteral("no setup"));
  ASSERT_NE(desk.lathe(), nullptr);
  EXPECT_EQ(desk.lathe()->held, Side::left);
  EXPECT_TRUE(desk.lathe()->zeroAssumed);
  EXPECT_TRUE(says("nothing says where zero is: the free end was taken"));
}

TEST_F(DeskKit, AnEditionIsNotedSavedAndToldOnThePage) {
  put("Back click");
  EXPECT_EQ(desk.edition()->before, 0);
  EXPECT_FALSE(says("CHANGED SINCE"));
  desk.notePrinted("2026-11-20");
  EXPECT_EQ(desk.edition()->before, 1);
  EXPECT_FALSE(desk.edition()->isNew());
  // A figure is put right after the sheet was printed.
  Part part = desk.part();
  for (Reading& reading : part.readings) {
    if (reading.id == "r4") reading.figure = *readLength("7/16");
  }
  desk.applyPart(part, QStringLiteral("read r4 again"));
  ASSERT_TRUE(desk.edition()->isNew());
  EXPECT_EQ(desk.edition()->changes, std::vector<std::string>{"H: X +0.4375, was +0.3750"});
  EXPECT_TRUE(says("CHANGED SINCE EDITION 1, printed 2026-11-20")) << textOfSheet();
  EXPECT_TRUE(says("H: X +0.4375, was +0.3750"));
  // It survives being saved.
  const auto again = readDocument(writeDocument(desk.job()));
  ASSERT_TRUE(again.ok());
  Desk other;
  other.take(*again, {});
  other.choosePart(desk.partIndex());
  EXPECT_EQ(*other.edition(), *desk.edition());
  // Undone, the printed sheet holds again; printed anew, it is edition 2.
  desk.undo();
  EXPECT_FALSE(desk.edition()->isNew());
  desk.redo();
  desk.notePrinted("2026-11-21");
  EXPECT_EQ(desk.edition()->number, 2);
  EXPECT_FALSE(desk.edition()->isNew());
}

}  // namespace
}  // namespace inchwright::app
