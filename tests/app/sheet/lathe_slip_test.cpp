#include "app/sheet/lathe_slip.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QLineEdit>
#include <QTest>
#include <memory>

#include "tests/support/by_hand.h"
#include "tests/support/kit_on_desk.h"

namespace inchwright::app {
namespace {

class LatheSlipTest : public KitOnDesk {
 protected:
  void SetUp() override {
    KitOnDesk::SetUp();
    desk.choosePart(5);
    slip = std::make_unique<LatheSlip>(desk);
    slip->show();
  }
  QLineEdit* field(const char* name) {
    return calledIn<QLineEdit>(*slip, QString::fromLatin1(name));
  }
  void type(const char* name, const char* text) {
    typeOver(*field(name), QString::fromLatin1(text));
    QTest::keyClick(field(name), Qt::Key_Return);
  }
  void choose(const char* name, Qt::Key key) {
    auto* box = calledIn<QComboBox>(*slip, QString::fromLatin1(name));
    box->setFocus();
    QTest::keyClick(box, key);
  }

  std::unique_ptr<LatheSlip> slip;
};

TEST_F(LatheSlipTest, ShowsHowItIsHeld) {
  EXPECT_EQ(field("Name of the setup")->text(), QStringLiteral("1"));
  EXPECT_EQ(field("How far it stands out of the chuck")->text(), QStringLiteral("5/8"));
  EXPECT_EQ(field("Step of the lathe's readout")->text(), QStringLiteral("0.001"));
  EXPECT_EQ(calledIn<QComboBox>(*slip, QStringLiteral("Zero on"))->currentText(),
            QStringLiteral("R"));
}

TEST_F(LatheSlipTest, WhatIsTypedIsOnMySheetAtOnceAndCanBeUndone) {
  type("How far it stands out of the chuck", "1 1/4");
  EXPECT_EQ(desk.setup().chucked->standsOut->text, "1 1/4");
  EXPECT_TRUE(desk.lathe()->standsOutTooFar);
  desk.undo();
  EXPECT_EQ(desk.setup().chucked->standsOut->text, "5/8");
  EXPECT_FALSE(desk.lathe()->standsOutTooFar);
}

TEST_F(LatheSlipTest, TheRadiusIsCountedWhenTheReadoutDoes) {
  const std::string diameter = desk.lathe()->rows.back().dia->text;
  choose("Cross slide counts", Qt::Key_Down);
  EXPECT_TRUE(desk.lathe()->halved);
  EXPECT_EQ(readLength(desk.lathe()->rows.back().dia->text)->value.ticks() * 2,
            readLength(diameter)->value.ticks());
}

TEST_F(LatheSlipTest, WhatCantBeReadChangesNothing) {
  const Job before = desk.job();
  type("How far it stands out of the chuck", "half way");
  type("Step of the lathe's readout", "coarse");
  EXPECT_EQ(desk.job(), before);
}

TEST_F(LatheSlipTest, AZeroSetOtherwiseStaysUntilAnotherIsChosen) {
  Part part = desk.part();
  part.setups[0].zero = {{Axis::x, {"L", "R"}, {}, false, {}, {}},
                         {Axis::y, {}, "CL", false, {}, {}}};
  ASSERT_TRUE(desk.applyPart(part, QStringLiteral("Zero in the middle")));
  const std::vector<ZeroAlong> zero = desk.setup().zero;
  auto* box = calledIn<QComboBox>(*slip, QStringLiteral("Zero on"));
  EXPECT_EQ(box->currentText(), QStringLiteral("middle of L–R"));
  type("How far it stands out of the chuck", "3/4");
  EXPECT_EQ(desk.setup().chucked->standsOut->text, "3/4");
  EXPECT_EQ(desk.setup().zero, zero);
  choose("Zero on", Qt::Key_Home);
  EXPECT_EQ(desk.setup().zeroAlong(Axis::x), nullptr);
  EXPECT_NE(desk.setup().zeroAlong(Axis::y), nullptr);
}

TEST_F(LatheSlipTest, APartingToolIsAddedAndTakenAway) {
  type("Width of the parting tool", "1/16");
  ASSERT_TRUE(desk.setup().chucked->partOff);
  EXPECT_EQ(desk.lathe()->cuts.back().op, CutOp::partOff);
  type("Width of the parting tool", "");
  EXPECT_FALSE(desk.setup().chucked->partOff);
}

}  // namespace
}  // namespace inchwright::app
