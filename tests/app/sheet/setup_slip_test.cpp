#include "app/sheet/setup_slip.h"

#include <gtest/gtest.h>

#include <QLineEdit>
#include <QTest>
#include <memory>

#include "app/session/work.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class SetupSlipTest : public PlateOnDesk {
 protected:
  void SetUp() override {
    PlateOnDesk::SetUp();
    enterLines({"edge L left", "edge F front", "hole A 1/4", "L A 3/8", "F A 1/2", "zero x L",
                "zero y F"});
    slip = std::make_unique<SetupSlip>(desk);
    slip->show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(slip.get()));
  }

  QLineEdit* named(const QString& name) {
    for (QLineEdit* field : slip->findChildren<QLineEdit*>()) {
      if (field->accessibleName().contains(name, Qt::CaseInsensitive)) return field;
    }
    return nullptr;
  }

  std::unique_ptr<SetupSlip> slip;
};

TEST_F(SetupSlipTest, AStepTypedIsOnTheSheetAtOnceAndCanBeUndone) {
  QLineEdit* step = named(QStringLiteral("step"));
  ASSERT_NE(step, nullptr);
  step->setFocus();
  step->selectAll();
  QTest::keyClicks(step, QStringLiteral("0.001"));
  QTest::keyClick(step, Qt::Key_Return);
  EXPECT_EQ(desk.job().machine.step, "0.001");
  EXPECT_EQ(desk.table()->rows[0].x.text, "0.375");
  desk.undo();
  EXPECT_EQ(desk.job().machine.step, "0.0005");
}

TEST_F(SetupSlipTest, TakenAwayWhileAFieldIsBeingTypedInItKeepsWhatWasTyped) {
  QLineEdit* name = named(QStringLiteral("name"));
  ASSERT_NE(name, nullptr);
  name->setFocus();
  name->selectAll();
  QTest::keyClicks(name, QStringLiteral("first side"));
  slip.reset();
  EXPECT_EQ(desk.setup().name, "first side");
}

}  // namespace
}  // namespace inchwright::app
