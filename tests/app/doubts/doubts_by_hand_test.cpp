// Doubts settled by keys and by the mouse, over the documents of the deceits: what a line says is
// what is acted on, and every step of it can be taken back.
#include <gtest/gtest.h>

#include <QLineEdit>
#include <QListWidget>
#include <QTest>
#include <QVBoxLayout>
#include <algorithm>
#include <map>
#include <random>
#include <string>
#include <vector>

#include "app/base/spoken_english.h"
#include "app/doubts/doubts_slip.h"
#include "app/strip/strip.h"
#include "core/document/document.h"
#include "core/say/doubt_words.h"
#include "core/say/reading_words.h"
#include "tests/deceits/told/cases.h"
#include "tests/support/by_hand.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

constexpr unsigned kSeed = 20'261'130;
constexpr int kDocuments = 40;
constexpr int kSteps = 12;

QString shown(const std::string& words) {
  return withWholeFigures(coreWords(words));
}

/// Enter on such a line settles something.
bool isChoice(const QString& row) {
  return row.startsWith(QStringLiteral("   ▸ "));
}

/// By key, and by what it is about: whether it was accepted.
std::multimap<std::string, bool> standing(const Solution& solution) {
  std::multimap<std::string, bool> all;
  for (const Doubt& one : solution.doubts) all.emplace(one.key.text() + one.about, one.accepted);
  return all;
}

class DoubtsByHand : public PlateOnDesk {
 protected:
  void SetUp() override {
    PlateOnDesk::SetUp();
    desktop = std::make_unique<QWidget>();
    auto* column = new QVBoxLayout(desktop.get());
    slip = new DoubtsSlip(work, desktop.get());
    strip = new Strip(work, desktop.get());
    column->addWidget(slip);
    column->addWidget(strip);
    QObject::connect(slip, &DoubtsSlip::settled, strip->line(), qOverload<>(&QWidget::setFocus));
    desktop->resize(500, 400);
    desktop->show();
    desktop->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(desktop.get()));
    take = calledIn<QPushButton>(*slip, QStringLiteral("Read the suspected figure so"));
    accept = calledIn<QPushButton>(*slip, QStringLiteral("Accept the doubt, or take that back"));
  }

  std::size_t below(std::size_t bound) { return random() % bound; }
  QString row() const { return slip->list()->currentItem()->text(); }
  /// The line that says the doubt which the chosen line belongs to.
  QString heading() const {
    int number = slip->list()->currentRow();
    while (number > 0 && slip->list()->item(number)->text().startsWith(QLatin1String("   "))) {
      --number;
    }
    return slip->list()->item(number)->text();
  }
  std::string bytes() const { return writeDocument(desk.job()); }

  void begin(const Job& job);
  void walk();
  void step();
  void enterOnTheLine();
  void readSoByTheButton();
  void acceptOrTakeBack();
  void undoOrRedo();
  void expectRead(const Part& before, const QString& said);
  void expectStepOf(const QString& title);
  /// How many are.
  int expectAccepted(const Part& part, const Solution& before, const QString& said, bool wanted);

  std::unique_ptr<QWidget> desktop;
  DoubtsSlip* slip = nullptr;
  Strip* strip = nullptr;
  QPushButton* take = nullptr;
  QPushButton* accept = nullptr;
  std::mt19937 random{kSeed};
  std::vector<std::string> versions;
  std::vector<QString> titles;  ///< of the step that led to each version
  std::size_t now = 0;
  std::map<std::string, int> did;
};

void DoubtsByHand::begin(const Job& job) {
  desk.take(job, {});
  work.look();
  strip->line()->clear();
  versions = {bytes()};
  titles = {QString()};
  now = 0;
}

void DoubtsByHand::walk() {
  static const std::vector<Qt::Key> kKeys{Qt::Key_Up,   Qt::Key_Down, Qt::Key_Down,
                                          Qt::Key_Down, Qt::Key_Home, Qt::Key_End};
  slip->list()->setFocus();
  for (std::size_t presses = below(8); presses > 0; --presses) {
    QTest::keyClick(slip->list(), kKeys[below(kKeys.size())]);
  }
  // Every other time on to something that can be read otherwise.
  const bool further = below(2) == 0;
  for (int left = slip->list()->count(); further && left > 0 && !isChoice(row()); --left) {
    QTest::keyClick(slip->list(), Qt::Key_Down);
  }
  EXPECT_EQ(bytes(), versions[now]);
}

/// Exactly one step was made, which is called so.
void DoubtsByHand::expectStepOf(const QString& title) {
  ASSERT_NE(bytes(), versions[now]);
  EXPECT_EQ(desk.undoTitle(), title);
  versions.resize(now + 1);
  titles.resize(now + 1);
  versions.push_back(bytes());
  titles.push_back(title);
  ++now;
}

/// What was read so is what the line or the button said, and nothing else.
void DoubtsByHand::expectRead(const Part& before, const QString& said) {
  const Part& after = desk.part();
  std::vector<std::size_t> changed;
  ASSERT_EQ(after.readings.size(), before.readings.size());
  for (std::size_t i = 0; i < before.readings.size(); ++i) {
    if (!(after.readings[i] == before.readings[i])) changed.push_back(i);
  }
  if (said.contains(QLatin1String("all of them as fractions"))) {
    EXPECT_FALSE(changed.empty());
    for (const std::size_t i : changed) {
      EXPECT_EQ(after.readings[i].figure.text, before.readings[i].figure.text);
      EXPECT_FALSE(after.readings[i].meant.empty());
    }
    ++did["fractions"];
    return expectStepOf(QStringLiteral("Read rounded decimals as fractions"));
  }
  if (said.contains(QLatin1String("the print shows"))) {
    EXPECT_TRUE(changed.empty());
    EXPECT_EQ(after.understood.size(), before.understood.size() + 1);
    const QString title = desk.undoTitle();
    const QString place = title.section(QLatin1Char(' '), 2, -2);
    EXPECT_TRUE(said.contains(QStringLiteral("the print shows %1 ").arg(place)))
        << qPrintable(said) << " / " << qPrintable(title);
    ++did["answers"];
    return expectStepOf(QStringLiteral("Choose where %1 lies").arg(place));
  }
  ASSERT_EQ(changed.size(), 1u) << qPrintable(said);
  const Reading& was = before.readings[changed[0]];
  const Reading& is = after.readings[changed[0]];
  const QString words = QString::fromStdString(readingWords(before, was));
  EXPECT_TRUE(said.contains(shown(words.toStdString()))) << qPrintable(said);
  const bool swapped = is.from != was.from;
  const std::string made = swapped ? "from " + is.from + " to " + is.to : is.figure.text;
  EXPECT_EQ(swapped, is.figure.text == was.figure.text);
  EXPECT_TRUE(said.contains(shown(made))) << made << " / " << qPrintable(said);
  EXPECT_EQ(std::tie(is.id, is.kind, is.axis), std::tie(was.id, was.kind, was.axis));
  ++did["read"];
  expectStepOf(QStringLiteral("Read %1 as %2").arg(words, QString::fromStdString(made)));
}

void DoubtsByHand::enterOnTheLine() {
  const QString said = row();
  const Part before = desk.part();
  QTest::keyClick(slip->list(), Qt::Key_Return);
  if (isChoice(said)) return expectRead(before, said);
  EXPECT_EQ(bytes(), versions[now]) << qPrintable(said);
  ++did["nothing"];
}

void DoubtsByHand::readSoByTheButton() {
  // Whatever line is chosen, of a reading that is chosen on the print.
  Id chosen;
  if (!desk.part().readings.empty() && below(2) == 0) {
    chosen = desk.part().readings[below(desk.part().readings.size())].id;
    desk.select({{}, {chosen}});
  }
  if (!take->isEnabled()) return;
  const QString tip = withWholeFigures(take->toolTip());
  const Part before = desk.part();
  const QString said = row();
  QTest::mouseClick(take, Qt::LeftButton);
  if (chosen.empty() || tip.contains(QLatin1String("Reads all")) ||
      tip.contains(QLatin1String("Writes down"))) {
    return expectRead(before, tip.contains(QLatin1String("Writes down")) ? said : tip);
  }
  EXPECT_NE(*before.reading(chosen), *desk.part().reading(chosen)) << qPrintable(tip);
  expectRead(before, tip);
}

/// Of all doubts those that the line names, and no other, are accepted now, or no longer.
int DoubtsByHand::expectAccepted(const Part& part, const Solution& before, const QString& said,
                                 bool wanted) {
  const std::multimap<std::string, bool> were = standing(before);
  int turned = 0;
  const auto isTraced = [](const Doubt& one) {
    return one.key.topic == DoubtTopic::assumed && !one.key.kind;
  };
  for (const Doubt& doubt : before.doubts) {
    const bool gone =
        isTraced(doubt) && !standing(desk.solution()).contains(doubt.key.text() + doubt.about);
    if (!gone) continue;
    ++turned;
    EXPECT_TRUE(wanted && said.contains(shown(doubtText(part, before, doubt))));
  }
  for (const Doubt& doubt : desk.solution().doubts) {
    const auto was = were.find(doubt.key.text() + doubt.about);
    if (was == were.end()) {
      ADD_FAILURE() << "new: " << doubt.key.text() << " " << doubt.about;
      continue;
    }
    if (was->second == doubt.accepted) continue;
    ++turned;
    EXPECT_EQ(doubt.accepted, wanted);
    const QString words = shown(doubtText(part, before, doubt));
    const bool together = said.contains(QStringLiteral("not placed yet along")) &&
                          doubt.key.topic == DoubtTopic::loose;
    EXPECT_TRUE(together || said.contains(words)) << qPrintable(said) << " / " << qPrintable(words);
  }
  EXPECT_GE(turned, 1) << qPrintable(said);
  EXPECT_TRUE(turned == 1 || said.contains(QStringLiteral("not placed yet along")));
  return turned;
}

void DoubtsByHand::acceptOrTakeBack() {
  const QString said = heading();
  const Part before = desk.part();
  const Solution solved = desk.solution();
  if (!accept->isEnabled()) return;
  if (below(2) == 0) {
    QTest::mouseClick(accept, Qt::LeftButton);
  } else {
    accept->setFocus();
    QTest::keyClick(accept, Qt::Key_Space);
  }
  if (said.startsWith(QStringLiteral("✓ "))) {
    expectAccepted(before, solved, said, false);
    ++did["take back"];
    expectStepOf(QStringLiteral("Take back that a doubt was accepted"));
  } else {
    ASSERT_EQ(work.doing(), Doing::accepting) << qPrintable(said);
    EXPECT_TRUE(shown(work.prompt().toStdString()).contains(said.mid(2)))
        << qPrintable(work.prompt()) << " / " << qPrintable(said);
    const QString reason = QStringLiteral("seen %1").arg(below(1000));
    typeOver(*strip->line(), reason);
    QTest::keyClick(strip->line(), Qt::Key_Return);
    const int accepted = expectAccepted(before, solved, said, true);
    ++did["accept"];
    const QString what =
        accepted == 1 ? QStringLiteral("a doubt") : QStringLiteral("%1 doubts").arg(accepted);
    expectStepOf(QStringLiteral("Accept %1: %2").arg(what, reason));
  }
  EXPECT_EQ(desk.part().readings, before.readings);
}

void DoubtsByHand::undoOrRedo() {
  const bool back = below(2) == 0;
  if (back ? now == 0 : now + 1 == versions.size()) return;
  back ? desk.undo() : desk.redo();
  now = back ? now - 1 : now + 1;
  EXPECT_EQ(bytes(), versions[now]);
  EXPECT_EQ(desk.undoTitle(), titles[now]);
  ++did[back ? "undo" : "redo"];
}

void DoubtsByHand::step() {
  walk();
  if (slip->list()->currentRow() < 0) return;
  switch (below(5)) {
    case 0:
    case 1:
      return enterOnTheLine();
    case 2:
      return readSoByTheButton();
    case 3:
      return acceptOrTakeBack();
    default:
      return undoOrRedo();
  }
}

TEST_F(DoubtsByHand, ALineIsWhatIsActedOnAndEachStepGoesBack) {
  const std::vector<Deceit> deceits = allDeceits();
  const std::map<std::string, int> wanted{{"accept", 20},  {"take back", 10}, {"read", 2},
                                          {"nothing", 80}, {"undo", 10},      {"redo", 2}};
  const auto isEnough = [&] {
    return std::all_of(wanted.begin(), wanted.end(),
                       [&](const auto& one) { return did[one.first] >= one.second; });
  };
  // Which documents are drawn follows from how many there are: now and then it takes some more.
  for (int i = 0; i < kDocuments || (i < 4 * kDocuments && !isEnough()); ++i) {
    const Deceit& deceit = deceits[below(deceits.size())];
    const auto job = readDocument(changedDocument(deceit));
    if (!job.ok() || job->parts.empty()) continue;
    SCOPED_TRACE(deceit.line);
    begin(*job);
    for (int step = 0; step < kSteps; ++step) {
      ASSERT_NO_FATAL_FAILURE(this->step());
    }
    while (now > 0) {
      desk.undo();
      EXPECT_EQ(bytes(), versions[--now]);
    }
  }
  for (const auto& [what, least] : wanted) EXPECT_GE(did[what], least) << what;
}

}  // namespace
}  // namespace inchwright::app
