#include "app/window/details_slip.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QTest>
#include <memory>

#include "tests/support/by_hand.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

class Details : public testing::Test {
 protected:
  void SetUp() override {
    deskApplication();
    Job job;
    job.parts.resize(2);
    job.parts[0].name = "Plate";
    job.parts[1].name = "Cock";
    desk.take(job, {});
    slip = std::make_unique<DetailsSlip>(desk);
    slip->show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(slip.get()));
  }
  template <class Field>
  Field* named(const char* name) {
    for (Field* one : slip->findChildren<Field*>()) {
      if (one->accessibleName().startsWith(QLatin1String(name))) return one;
    }
    return nullptr;
  }
  void type(const char* field, const char* text) {
    typeOver(*named<QLineEdit>(field), QString::fromUtf8(text));
  }
  void done() { pressIn(*slip, QStringLiteral("Done")); }
  QString said() { return slip->findChild<QLabel*>(QStringLiteral("said"))->text(); }

  Desk desk;
  std::unique_ptr<DetailsSlip> slip;
};

TEST_F(Details, AllIsTakenAsOneStep) {
  type("Part", "Front plate");
  type("On fractions", "1/64");
  type("On angles", "1/2");
  QTest::keyClick(named<QComboBox>("Hand"), Qt::Key_Down);
  done();
  EXPECT_FALSE(slip->isVisible());
  const Part& part = desk.part();
  EXPECT_EQ(part.name, "Front plate");
  EXPECT_EQ(part.general.fractions->text, "1/64");
  EXPECT_EQ(part.general.angles->text, "1/2");
  EXPECT_EQ(part.hand, "left");
  desk.undo();
  EXPECT_EQ(desk.part().name, "Plate");
  EXPECT_FALSE(desk.canUndo());
}

TEST_F(Details, WhatCannotBeReadIsSaidAndNothingIsLost) {
  type("Material", "brass");
  type("On two places", ".01o");
  done();
  EXPECT_TRUE(slip->isVisible());
  EXPECT_TRUE(said().startsWith(QStringLiteral("On two places can't be taken: ")))
      << qPrintable(said());
  EXPECT_EQ(named<QLineEdit>("Material")->text(), QStringLiteral("brass"));
  EXPECT_FALSE(desk.canUndo());
  type("On two places", ".010");
  type("Part", "Cock");
  done();
  EXPECT_TRUE(said().startsWith(QStringLiteral("Part can't be taken: "))) << qPrintable(said());
  type("Part", "Plate");
  done();
  EXPECT_EQ(desk.part().material, "brass");
  EXPECT_EQ(desk.part().general.twoPlaces->text, ".010");
}

}  // namespace
}  // namespace inchwright::app
