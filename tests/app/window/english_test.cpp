// The desk in British and American words: in either, nothing of the other is left.

#include <gtest/gtest.h>

#include <QAction>
#include <QComboBox>
#include <QDirIterator>
#include <QFile>
#include <QLabel>
#include <QListWidget>
#include <QMenuBar>
#include <QPushButton>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QTextBrowser>

#include "app/machine/machine_view.h"
#include "app/session/preferences.h"
#include "app/sheet/setup_slip.h"
#include "app/window/details_slip.h"
#include "app/window/help_page.h"
#include "app/window/start_slip.h"
#include "tests/app/window/window_fixture.h"
#include "tests/support/offers_on_desk.h"

namespace inchwright::app {
namespace {

/// Words of British shops and spelling of which an American print has others. Source: the tables of
/// shop terms of both sides; spelling from common dictionaries, from memory.
QRegularExpression british() {
  return QRegularExpression(
      QStringLiteral("\\b(centres?|centred|colours?|grey|(milli)?metres?|anticlockwise|towards|"
                     "vices?|PCD|tapping (size|drill)|spanners?|swarf|thro|CRS|cheese head|"
                     "C'BORE|C'SINK|S'FACE|gauge block|licence)\\b"),
      QRegularExpression::CaseInsensitiveOption);
}

void note(QStringList& all, const QWidget* widget) {
  all << widget->windowTitle() << widget->toolTip() << widget->accessibleName()
      << widget->accessibleDescription();
  if (const auto* label = qobject_cast<const QLabel*>(widget)) all << label->text();
  if (const auto* button = qobject_cast<const QAbstractButton*>(widget)) all << button->text();
  if (const auto* box = qobject_cast<const QComboBox*>(widget)) {
    for (int i = 0; i < box->count(); ++i) all << box->itemText(i);
  }
  if (const auto* page = qobject_cast<const QTextBrowser*>(widget)) all << page->toPlainText();
  if (const auto* list = qobject_cast<const QListWidget*>(widget)) {
    for (int i = 0; i < list->count(); ++i) all << list->item(i)->text();
  }
}

QStringList wordsOn(QWidget* top) {
  QStringList all;
  note(all, top);
  for (const QWidget* widget : top->findChildren<QWidget*>()) note(all, widget);
  for (const QAction* action : top->findChildren<QAction*>()) all << action->text();
  for (QString& text : all) text.remove(QLatin1Char('&'));
  all.removeAll(QString());
  return all;
}

/// A part that makes the desk use every one of those words: a clash and a loose ring, a tapped hole
/// of an unknown thread, a spotface, millimetres, a zero on a ring, counting towards.
constexpr const char* kWordy = R"({
  "inchwright": 1,
  "job": {"title": "Clock plates", "print": "", "unit": "in", "notes": ""},
  "machine": {"unit": "mm", "step": "0.01", "x_counts": "left", "y_counts": "towards",
              "finder": "0.200 in"},
  "parts": [{
    "name": "Vice jaw, grey", "quantity": 1, "material": "",
    "features": [
      {"id": "L", "kind": "edge", "axis": "x", "side": "left"},
      {"id": "F", "kind": "edge", "axis": "y", "side": "front"},
      {"id": "G", "kind": "ring", "face": "top", "holes": 4, "pcd": "1 1/2", "first_angle": "0",
       "diameter": "1/8"},
      {"id": "H", "kind": "ring", "face": "top", "holes": 3, "first_angle": "0", "diameter": "1/8"},
      {"id": "A", "kind": "hole", "face": "top", "diameter": "1/4", "make": "spotface",
       "seat_diameter": "1/2"},
      {"id": "B", "kind": "hole", "face": "top", "diameter": "1/4", "make": "counterbore",
       "seat_diameter": "1/2", "seat_depth": "1/8"},
      {"id": "C", "kind": "hole", "face": "top", "diameter": "1/4"}],
    "readings": [
      {"id": "r1", "axis": "x", "from": "L", "to": "G", "text": "1"},
      {"id": "r2", "axis": "y", "from": "F", "to": "G", "text": "1"},
      {"id": "r3", "axis": "x", "from": "G", "to": "A", "text": "1"},
      {"id": "r4", "axis": "y", "from": "G", "to": "A", "text": "1"},
      {"id": "r5", "axis": "x", "from": "G", "to": "B", "text": "2"},
      {"id": "r6", "axis": "y", "from": "G", "to": "B", "text": "1"},
      {"id": "r7", "kind": "centres", "from": "A", "to": "B", "text": "1 1/4"},
      {"id": "r8", "kind": "centres", "from": "A", "to": "C", "text": "5/8"}],
    "understood": [{"kind": "concentric", "of": ["G", "H"], "stated": false}],
    "setups": [{"name": "1", "face": "top", "turn": 90, "zero": {"x": {"at": "G"}, "y": {"at": "G"}}}]
  }]
})";

class EnglishOfTheDeskTest : public WindowTest {
 protected:
  void SetUp() override {
    WindowTest::SetUp();
    QFile file(folder.filePath(QStringLiteral("wordy.inchwright")));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(kWordy);
    file.close();
    ASSERT_TRUE(window->files().open(file.fileName())) << qPrintable(told.join('\n'));
  }
  void TearDown() override {
    choose(QStringLiteral("British"));
    Preferences::setEnglish(EnglishChoice::system);
    WindowTest::TearDown();
  }

  void choose(const QString& word) {
    for (QAction* action : window->findChildren<QAction*>()) {
      if (action->text().remove(QLatin1Char('&')) == word) {
        action->trigger();
        QCoreApplication::processEvents();
        return;
      }
    }
    ADD_FAILURE() << qPrintable(word);
  }

  QStringList everything() {
    QStringList all = wordsOn(window.get());
    for (int i = 0; i < 9; ++i) {
      window->work().trace(static_cast<FeatureKind>(i));
      all << window->work().prompt() << window->work().offer();
    }
    window->work().zero();
    all << window->work().prompt();
    window->work().stack();
    all << window->work().prompt();
    for (int i = 0; i < 8; ++i) {
      window->work().relate(static_cast<UnderstandingKind>(i));
      all << window->work().prompt();
    }
    all << offered();
    window->work().look();
    all << wordsOn(std::make_unique<SetupSlip>(window->desk()).get());
    all << wordsOn(std::make_unique<DetailsSlip>(window->desk()).get());
    all << wordsOn(std::make_unique<StartSlip>().get());
    all << wordsOn(std::make_unique<HelpPage>(window->menuBar()).get());
    MachineView atMachine(window->desk());
    for (std::size_t i = 0; i < window->desk().table()->rows.size(); ++i) {
      atMachine.go(static_cast<int>(i));
      all << wordsOn(&atMachine);
    }
    for (const Page& page : window->desk().sheet()->pages()) {
      for (const DrawItem& item : page.items) {
        if (const auto* text = std::get_if<TextItem>(&item)) {
          all << QString::fromStdString(text->text);
        }
      }
    }
    // What the user named stays as it was named.
    for (QString& text : all) text.remove(QStringLiteral("Vice jaw, grey"));
    return all;
  }

  /// What is asked of each kind of offer.
  QStringList offered() {
    seen::Offers offers = test::OffersOnDesk::sound();
    offers.readings[1].witnesses = test::kUnsure;
    offers.readings[2].witnesses = test::kPlain;
    offers.readings[3].witnesses = {};
    offers.readings.push_back(test::dimension(true, 0, 20, {}, {}));
    for (const auto kind : {seen::OfferedFeature::ring, seen::OfferedFeature::slot}) {
      offers.features.push_back(test::holeAt(2.5, 1.5));
      offers.features.back().kind = kind;
    }
    Work& work = window->work();
    work.noteOffers(PictureOffers{offers, Homography()});
    work.goThroughOffers();
    EXPECT_EQ(work.doing(), Doing::offering);
    QStringList all;
    for (std::size_t i = 0; i < work.offersWaiting(); ++i) {
      all << work.prompt() << work.offer() << work.echo({}).text;
      work.pass();
    }
    return all;
  }

  QTemporaryDir folder;
};

TEST_F(EnglishOfTheDeskTest, AmericanWordsLeaveNoBritishOnes) {
  choose(QStringLiteral("American"));
  ASSERT_EQ(spokenEnglish(), English::us);
  for (const QString& text : everything()) {
    EXPECT_FALSE(british().match(text).hasMatch()) << qPrintable(text);
  }
}

TEST_F(EnglishOfTheDeskTest, TheSameWalkInBritishFindsThem) {
  choose(QStringLiteral("British"));
  const QString all = everything().join(QLatin1Char('\n'));
  for (const char* word :
       {"anticlockwise", "MILLIMETRES", "millimetres", "towards", "centre", "PCD", "C'BORE"}) {
    EXPECT_TRUE(all.contains(QLatin1String(word))) << word;
  }
  for (const char* word : {"counterclockwise", "MILLIMETERS", "toward ", "center", "CBORE"}) {
    EXPECT_FALSE(all.contains(QRegularExpression(QStringLiteral("\\b%1").arg(word)))) << word;
  }
}

TEST_F(EnglishOfTheDeskTest, TheChoiceIsKeptAndTheWorkIsNotTouched) {
  const Job before = window->desk().job();
  type(QStringLiteral("point P"));
  choose(QStringLiteral("American"));
  EXPECT_EQ(Preferences::english(), EnglishChoice::us);
  EXPECT_NE(window->desk().part().feature("P"), nullptr);
  type(QStringLiteral("delete P"));
  QTest::keyClick(line(), Qt::Key_Z, Qt::ControlModifier);
  QTest::keyClick(line(), Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(window->desk().job(), before);
  EXPECT_TRUE(window->isWindowModified() == window->desk().unsaved());
}

TEST_F(EnglishOfTheDeskTest, TheMenusWorkWhenTheyAreMadeAnew) {
  choose(QStringLiteral("American"));
  choose(QStringLiteral("British"));
  QTest::keyClick(line(), Qt::Key_F4, Qt::ControlModifier);
  EXPECT_FALSE(window->findChild<QWidget*>(QStringLiteral("sheet"))->isVisible());
  QTest::keyClick(line(), Qt::Key_F10);
  EXPECT_EQ(window->menuBar()->activeAction(), window->menuBar()->actions().front());
}

/// Every word in tr() that a Briton spells or says in a way of his own has its American one.
// `1 setup(s)` is what one reads where the file of translations does not know the words.
TEST(EnglishSources, EveryCountedWordHasItsNumbers) {
  const QString top = QStringLiteral(INCHWRIGHT_SOURCE_DIR);
  const QRegularExpression call(QStringLiteral("tr\\(\\s*\"([^\"]*%n[^\"]*)\""));
  for (const char* english : {"GB", "US"}) {
    QFile file(
        top + QStringLiteral("/resources/english/inchwright_en_%1.ts").arg(QLatin1String(english)));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QString known = QString::fromUtf8(file.readAll());
    int found = 0;
    QDirIterator files(top + QStringLiteral("/app"), {QStringLiteral("*.cpp")}, QDir::Files,
                       QDirIterator::Subdirectories);
    while (files.hasNext()) {
      QFile source(files.next());
      ASSERT_TRUE(source.open(QIODevice::ReadOnly));
      auto matches = call.globalMatch(QString::fromUtf8(source.readAll()));
      while (matches.hasNext()) {
        ++found;
        const QString text = matches.next().captured(1).toHtmlEscaped();
        EXPECT_TRUE(known.contains(QStringLiteral("<source>%1</source>").arg(text)))
            << qPrintable(text);
      }
    }
    EXPECT_GE(found, 5);
  }
}

TEST(EnglishSources, EveryBritishWordInTheSourcesIsTranslated) {
  deskApplication();
  speakEnglish(EnglishChoice::us);
  const QRegularExpression call(QStringLiteral("tr\\(\\s*((?:\"(?:[^\"\\\\]|\\\\.)*\"\\s*)+)"));
  int found = 0;
  QDirIterator files(QStringLiteral(INCHWRIGHT_SOURCE_DIR "/app"), {QStringLiteral("*.cpp")},
                     QDir::Files, QDirIterator::Subdirectories);
  while (files.hasNext()) {
    QFile file(files.next());
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    auto matches = call.globalMatch(QString::fromUtf8(file.readAll()));
    while (matches.hasNext()) {
      QString text = matches.next().captured(1).trimmed();
      text.replace(QRegularExpression(QStringLiteral("\"\\s*\"")), QString());
      text = text.mid(1, text.size() - 2);
      if (!british().match(text).hasMatch()) continue;
      ++found;
      EXPECT_NE(QCoreApplication::translate("Any", text.toUtf8()), text) << qPrintable(text);
    }
  }
  EXPECT_GE(found, 5);
  speakEnglish(EnglishChoice::uk);
}

}  // namespace
}  // namespace inchwright::app
