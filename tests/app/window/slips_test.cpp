// The slips that lie on the desk: tour, start, details, setup; and what happens at the start.

#include <gtest/gtest.h>

#include <QComboBox>
#include <QDialog>
#include <QFile>
#include <QLabel>
#include <QMenuBar>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTimer>
#include <algorithm>
#include <functional>

#include "app/session/journal.h"
#include "app/session/preferences.h"
#include "app/sheet/setup_slip.h"
#include "app/sheet/sheet_view.h"
#include "app/window/details_slip.h"
#include "app/window/start_slip.h"
#include "app/window/tour_slip.h"
#include "core/document/document.h"
#include "tests/app/window/window_fixture.h"

namespace inchwright::app {
namespace {

class SlipsTest : public WindowTest {
 protected:
  void SetUp() override {
    WindowTest::SetUp();
    ASSERT_TRUE(window->files().openSample());
  }

  /// Does something to the dialog that comes up next, which then goes away by it.
  void whenAsked(std::function<void(QDialog*)> act) {
    QTimer::singleShot(0, window.get(), [this, act] {
      for (QWidget* top : QApplication::topLevelWidgets()) {
        auto* dialog = qobject_cast<QDialog*>(top);
        if (dialog == nullptr || !dialog->isVisible()) continue;
        ++seen;
        EXPECT_TRUE(QTest::qWaitForWindowActive(dialog));
        act(dialog);
        if (dialog->isVisible()) dialog->reject();
        return;
      }
    });
  }

  void press(QDialog* slip, const QString& text) {
    for (auto* button : slip->findChildren<QPushButton*>()) {
      if (!button->text().remove(QLatin1Char('&')).startsWith(text)) continue;
      QTest::mouseClick(button, Qt::LeftButton);
      return;
    }
    ADD_FAILURE() << qPrintable(text);
  }

  void write(QLineEdit* field, const QString& text) {
    ASSERT_NE(field, nullptr);
    field->setFocus();
    field->selectAll();
    QTest::keyClicks(field, text);
  }

  TourSlip* tour() { return window->findChild<TourSlip*>(); }

  int seen = 0;
};

TEST_F(SlipsTest, TheTourWalksByKeysAndEndsByItself) {
  window->startTour();
  ASSERT_NE(tour(), nullptr);
  EXPECT_TRUE(tour()->isVisible());
  const QRect desk = window->centralWidget()->rect();
  QStringList texts;
  for (int step = 0; tour()->isVisible() && step < 20; ++step) {
    EXPECT_EQ(tour()->step(), step);
    EXPECT_TRUE(desk.contains(tour()->geometry())) << step;
    for (const QLabel* label : tour()->findChildren<QLabel*>()) {
      texts << label->text();
      // The words fit the slip they stand on.
      EXPECT_LE(label->heightForWidth(label->width()), label->height())
          << qPrintable(label->text());
    }
    QTest::keyClick(tour(), Qt::Key_Right);
  }
  EXPECT_FALSE(tour()->isVisible());
  EXPECT_GE(texts.size(), 12);
  EXPECT_TRUE(Preferences::tourSeen());
}

TEST_F(SlipsTest, TheTourLiesBesideWhatItSpeaksOf) {
  window->startTour();
  for (const char* name : {"print", "line", "sheet", "doubts"}) {
    const auto* place = window->findChild<QWidget*>(QLatin1String(name));
    ASSERT_NE(place, nullptr) << name;
    const QPoint middle = place->mapTo(window->centralWidget(), place->rect().center());
    EXPECT_FALSE(tour()->geometry().contains(middle)) << name;
    QTest::keyClick(tour(), Qt::Key_Right);
  }
}

TEST_F(SlipsTest, TheTourGoesBackAndIsLeftByEscape) {
  window->startTour();
  QTest::keyClick(tour(), Qt::Key_Right);
  QTest::keyClick(tour(), Qt::Key_Right);
  QTest::keyClick(tour(), Qt::Key_Left);
  EXPECT_EQ(tour()->step(), 1);
  QTest::keyClick(tour(), Qt::Key_Escape);
  EXPECT_FALSE(tour()->isVisible());
}

TEST_F(SlipsTest, TheTourStaysWholeWhenTheWindowIsSmall) {
  window->startTour();
  window->resize(900, 560);
  QCoreApplication::processEvents();
  EXPECT_TRUE(window->centralWidget()->rect().contains(tour()->geometry()));
}

TEST_F(SlipsTest, StartOffersEveryWayAndBlankPaperIsOneEnterAway) {
  whenAsked([](QDialog* slip) {
    EXPECT_GE(slip->findChildren<QPushButton*>().size(), 5);
    QTest::keyClick(slip, Qt::Key_Return);
  });
  QTest::keyClick(line(), Qt::Key_N, Qt::ControlModifier);
  EXPECT_EQ(seen, 1);
  EXPECT_TRUE(window->desk().part().features.empty());
}

TEST_F(SlipsTest, PastedReadingsMakeAPart) {
  whenAsked([this](QDialog* slip) {
    auto* readings = slip->findChild<QPlainTextEdit*>();
    readings->setFocus();
    QTest::keyClicks(readings, QStringLiteral("L A 3/8"));
    QTest::keyClick(readings, Qt::Key_Return);
    QTest::keyClicks(readings, QStringLiteral("A B 1 3/16"));
    press(slip, QStringLiteral("Begin with"));
  });
  window->showStart();
  ASSERT_EQ(window->desk().part().readings.size(), 2u);
  EXPECT_EQ(window->desk().part().readings[1].figure.text, "1 3/16");
}

TEST_F(SlipsTest, AReadingThatCannotBeReadIsNamedAndTheSlipStays) {
  StartSlip slip;
  slip.show();
  ASSERT_TRUE(QTest::qWaitForWindowActive(&slip));
  auto* readings = slip.findChild<QPlainTextEdit*>();
  QTest::keyClicks(readings, QStringLiteral("L A three eighths"));
  press(&slip, QStringLiteral("Begin with"));
  EXPECT_TRUE(slip.isVisible());
  bool said = false;
  for (const QLabel* label : slip.findChildren<QLabel*>()) {
    said = said || label->text().contains(QStringLiteral("line 1"));
  }
  EXPECT_TRUE(said);
}

TEST_F(SlipsTest, GivingUpTheStartKeepsWhatLiesOnTheDesk) {
  whenAsked([](QDialog* slip) { QTest::keyClick(slip, Qt::Key_Escape); });
  window->showStart();
  EXPECT_EQ(window->desk().part().name, "Front plate");
}

TEST_F(SlipsTest, DetailsAreOneStepOfUndo) {
  const Job before = window->desk().job();
  whenAsked([this](QDialog* slip) {
    write(named<QLineEdit>(slip, QStringLiteral("Job")), QStringLiteral("Hall clock"));
    write(named<QLineEdit>(slip, QStringLiteral("Part")), QStringLiteral("Plate one"));
    write(named<QLineEdit>(slip, QStringLiteral("On fractions")), QStringLiteral("1/32"));
    named<QSpinBox>(slip, QStringLiteral("Quantity"))->setValue(4);
    press(slip, QStringLiteral("Done"));
  });
  QTest::keyClick(line(), Qt::Key_I, Qt::ControlModifier);
  EXPECT_EQ(window->desk().job().title, "Hall clock");
  EXPECT_EQ(window->desk().part().name, "Plate one");
  EXPECT_EQ(window->desk().part().quantity, 4);
  ASSERT_TRUE(window->desk().part().general.fractions);
  EXPECT_EQ(window->desk().part().general.fractions->text, "1/32");
  window->desk().undo();
  EXPECT_EQ(window->desk().job(), before);
}

TEST_F(SlipsTest, DetailsGivenUpChangeNothing) {
  const Job before = window->desk().job();
  whenAsked([this](QDialog* slip) {
    write(named<QLineEdit>(slip, QStringLiteral("Job")), QStringLiteral("Hall clock"));
    QTest::keyClick(slip, Qt::Key_Escape);
  });
  window->showDetails();
  EXPECT_EQ(window->desk().job(), before);
  EXPECT_FALSE(window->desk().canUndo());
}

TEST_F(SlipsTest, TheSetupSlipChangesTheSheetAsOneTypes) {
  whenAsked([this](QDialog* slip) {
    auto* turn = named<QComboBox>(slip, QStringLiteral("Turned, anticlockwise"));
    turn->setFocus();
    QTest::keyClick(turn, Qt::Key_Down);
    EXPECT_EQ(window->desk().setup().turn, 90);
    auto* stock = named<QLineEdit>(slip, QStringLiteral("Stock on the left"));
    write(stock, QStringLiteral("1/8"));
    QTest::keyClick(stock, Qt::Key_Return);
    EXPECT_EQ(window->desk().setup().stockOn(Side::left), readLength("1/8", {})->value);
  });
  QTest::keyClick(line(), Qt::Key_F5);
  EXPECT_EQ(seen, 1);
}

TEST_F(SlipsTest, AFigureThatIsNoneIsSaidAndTheOneBeforeStays) {
  whenAsked([this](QDialog* slip) {
    auto* step = named<QLineEdit>(slip, QStringLiteral("Step of the readout"));
    write(step, QStringLiteral("fine"));
    QTest::keyClick(step, Qt::Key_Return);
    bool said = false;
    for (const QLabel* label : slip->findChildren<QLabel*>()) {
      said = said || label->text().startsWith(QStringLiteral("Step of the readout: "));
    }
    EXPECT_TRUE(said);
  });
  window->showSetup();
  EXPECT_EQ(window->desk().job().machine.step, "0.0005");
}

TEST_F(SlipsTest, AnotherUnitOfThePrintReadsItsBareFiguresAnew) {
  Job job = emptyJob();
  job.parts[0].features.resize(2);
  job.parts[0].features[0].id = "A";
  job.parts[0].features[1].id = "B";
  Reading reading;
  reading.id = "r1";
  reading.from = "A";
  reading.to = "B";
  reading.figure = *readLength("12.7");
  job.parts[0].readings.push_back(reading);
  window->desk().take(job, {});
  whenAsked([this](QDialog* slip) {
    auto* unit = named<QComboBox>(slip, QStringLiteral("Bare figures are in"));
    unit->setFocus();
    QTest::keyClick(unit, Qt::Key_Down);
    press(slip, QStringLiteral("Done"));
  });
  window->showDetails();
  EXPECT_EQ(window->desk().part().readings[0].figure.value, readLength("12.7 mm")->value);
  EXPECT_TRUE(savableDocument(window->desk().job()).ok());
}

TEST_F(SlipsTest, TheFinderStaysWhatItIsInAnotherUnitOfTheReadout) {
  window->files().newJob();
  Job job = window->desk().job();
  job.machine.finder = *readLength("0.2");
  window->desk().apply(job, QStringLiteral("finder"));
  const Length before = job.machine.finder->value;
  whenAsked([this](QDialog* slip) {
    auto* unit = named<QComboBox>(slip, QStringLiteral("Unit of the readout"));
    unit->setFocus();
    QTest::keyClick(unit, Qt::Key_Down);
  });
  window->showSetup();
  ASSERT_EQ(window->desk().job().machine.unit, Unit::millimetre);
  EXPECT_EQ(window->desk().job().machine.finder->value, before);
  EXPECT_TRUE(savableDocument(window->desk().job()).ok());
}

TEST_F(SlipsTest, PaperAndMachineAreRememberedForTheNextStart) {
  whenAsked([this](QDialog* slip) {
    auto* paper = named<QComboBox>(slip, QStringLiteral("Paper"));
    paper->setFocus();
    QTest::keyClick(paper, Qt::Key_Down);
    auto* unit = named<QComboBox>(slip, QStringLiteral("Unit of the readout"));
    unit->setFocus();
    QTest::keyClick(unit, Qt::Key_Down);
    QTest::mouseClick(named<QPushButton>(slip, QStringLiteral("Keep this machine for new jobs")),
                      Qt::LeftButton);
  });
  window->showSetup();
  EXPECT_EQ(Preferences::sheet().paper, Paper::letter);
  EXPECT_EQ(Preferences::machine().unit, Unit::millimetre);
  EXPECT_EQ(emptyJob().unit, Unit::millimetre);
  Preferences::setMachine(Machine());
  Preferences::setSheet(SheetOptions());
}

TEST_F(SlipsTest, ASpoiltPreferenceIsAsAtTheFirstStart) {
  const QString file = QStandardPaths::writableLocation(QStandardPaths::GenericConfigLocation) +
                       QStringLiteral("/inchwright/desk.ini");
  Preferences::setEnglish(EnglishChoice::us);
  QFile ini(file);
  ASSERT_TRUE(ini.open(QIODevice::WriteOnly | QIODevice::Truncate));
  ini.write("[machine]\nstep=enormous\nunit=furlong\n[sheet]\ndistance=-4\n[General]\nenglish=x\n");
  ini.close();
  EXPECT_EQ(Preferences::machine(), Machine());
  EXPECT_GE(Preferences::sheet().readingDistance, 300);
  EXPECT_EQ(Preferences::english(), EnglishChoice::system);
  EXPECT_FALSE(Preferences::tourSeen());
  ini.remove();
}

TEST_F(SlipsTest, LeftWorkIsOfferedAtTheStartAndUndoLeadsBackToTheFile) {
  QTemporaryDir folder;
  toSave = folder.filePath(QStringLiteral("plate.inchwright"));
  ASSERT_TRUE(window->files().saveAs());
  const Job saved = window->desk().job();
  // Another process dies with work in it.
  {
    Desk other;
    other.take(saved, toSave);
    Journal died(other);
    Feature point;
    point.id = "NEW";
    Part part = other.part();
    part.features.push_back(point);
    ASSERT_TRUE(other.applyPart(part, QStringLiteral("point")));
    died.flush();
  }
  pick = QStringLiteral("Go on");
  DeskWindow next(answers());
  next.show();
  next.begin();
  ASSERT_EQ(questions.size(), 1);
  EXPECT_TRUE(questions[0].contains(QStringLiteral("plate.inchwright")));
  EXPECT_NE(next.desk().part().feature("NEW"), nullptr);
  EXPECT_TRUE(next.desk().unsaved());
  next.desk().undo();
  EXPECT_EQ(next.desk().job(), saved);
  EXPECT_FALSE(next.desk().unsaved());
}

TEST_F(SlipsTest, ZeroIsSetByAClickOnMySheetAndTheSheetFollowsAtOnce) {
  auto* sheet = window->findChild<SheetView*>();
  const Page& page = window->desk().sheet()->page(0);
  const auto target = std::find_if(page.targets.begin(), page.targets.end(),
                                   [](const PaperTarget& one) { return one.place == "A"; });
  ASSERT_NE(target, page.targets.end());
  QTest::keyClick(line(), Qt::Key_F7);
  const auto spot = sheet->whereIs("A");
  ASSERT_TRUE(spot);
  QTest::mouseClick(sheet->viewport(), Qt::LeftButton, {}, spot->toPoint());
  for (const Axis axis : {Axis::x, Axis::y}) {
    ASSERT_NE(window->desk().setup().zeroAlong(axis), nullptr);
    EXPECT_EQ(window->desk().setup().zeroAlong(axis)->at, "A");
  }
  const auto row =
      std::find_if(window->desk().table()->rows.begin(), window->desk().table()->rows.end(),
                   [](const TableRow& one) { return one.id == "A"; });
  EXPECT_EQ(row->x.text, "0.0000");
  EXPECT_EQ(window->desk().sheet()->page(0).items.size(), sheet->page(0).items.size());
  window->desk().undo();
  EXPECT_FALSE(window->desk().unsaved());
}

TEST_F(SlipsTest, ShiftOnMySheetCollectsTwoSidesForTheMiddle) {
  auto* sheet = window->findChild<SheetView*>();
  // Large enough for holes and edges to lie apart.
  window->fill(DeskWindow::Filling::mine);
  sheet->fit(SheetView::Fit::width);
  QCoreApplication::processEvents();
  QTest::keyClick(line(), Qt::Key_F7);
  QTest::mouseClick(sheet->viewport(), Qt::LeftButton, Qt::ShiftModifier,
                    sheet->whereIs("F")->toPoint());
  EXPECT_EQ(window->work().chosen(), std::vector<Id>{"F"});
  QTest::mouseClick(sheet->viewport(), Qt::LeftButton, {}, sheet->whereIs("K")->toPoint());
  const ZeroAlong* zero = window->desk().setup().zeroAlong(Axis::y);
  ASSERT_NE(zero, nullptr);
  EXPECT_EQ(zero->middle, (std::vector<Id>{"F", "K"}));
}

TEST_F(SlipsTest, AClickOnMySheetChoosesAndADragOnlyMovesIt) {
  auto* sheet = window->findChild<SheetView*>();
  sheet->fit(SheetView::Fit::width);
  const QPoint at = sheet->whereIs("A")->toPoint();
  QTest::mouseClick(sheet->viewport(), Qt::LeftButton, {}, at);
  EXPECT_EQ(window->desk().selection().places, std::vector<Id>{"A"});
  window->desk().select({});
  QTest::mousePress(sheet->viewport(), Qt::LeftButton, {}, at);
  QTest::mouseMove(sheet->viewport(), at + QPoint(0, 40));
  QTest::mouseRelease(sheet->viewport(), Qt::LeftButton, {}, at + QPoint(0, 40));
  EXPECT_TRUE(window->desk().selection().empty());
}

TEST_F(SlipsTest, WhileTracingMySheetIsNoPlaceToPutAHole) {
  auto* sheet = window->findChild<SheetView*>();
  window->work().trace(FeatureKind::hole);
  QTest::mouseClick(sheet->viewport(), Qt::LeftButton, {}, sheet->whereIs("A")->toPoint());
  EXPECT_FALSE(window->work().pending());
}

}  // namespace
}  // namespace inchwright::app
