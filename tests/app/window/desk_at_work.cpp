// The suite's own main, and a desk that somebody works at until the process is killed:
// window_test --desk-at-work FILE SEED [saving]
//
// Begins as the program does, with what an earlier process left behind or else with FILE; says
// which points the part has, as `had P1 P2 …`, and then types one point after another into the
// strip, with `saving` now and then to the file, each said with the moment at which it stood on the
// desk, as `edit P3 NANOSECONDS`. It ends only when it is told to.

#include <gtest/gtest.h>

#include <QApplication>
#include <QLineEdit>
#include <QTest>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <random>
#include <string>
#include <string_view>

#include "app/window/desk_files.h"
#include "app/window/desk_style.h"
#include "app/window/desk_window.h"
#include "app/window/end_signals.h"

namespace inchwright::app {
namespace {

Asking whoGoesOn() {
  Asking asking;
  asking.unsavedWork = [](const QString&) { return Asking::Answer::leave; };
  // Goes on with what was left; of a file that is open elsewhere only looks.
  asking.choose = [](const Asking::Question& question) {
    std::printf("asked %s\n", qUtf8Printable(QString(question.text).replace(u'\n', u' ')));
    return question.usual;
  };
  asking.tell = [](const QString& what) { std::printf("told %s\n", qUtf8Printable(what)); };
  return asking;
}

long long nanoseconds() {
  return std::chrono::duration_cast<std::chrono::nanoseconds>(
             std::chrono::steady_clock::now().time_since_epoch())
      .count();
}

int workUntilKilled(int argc, char** argv) {
  if (argc < 4) return 2;
  const bool saving = argc > 4;
  QApplication application(argc, argv);
  QCoreApplication::setApplicationName(QStringLiteral("Inchwright"));
  dressApplication(application);
  std::setvbuf(stdout, nullptr, _IOLBF, 0);
  const EndSignals ending;
  DeskWindow window(whoGoesOn());
  window.show();
  if (!window.recover() && !window.files().open(QString::fromLocal8Bit(argv[2]))) return 1;
  std::printf("had");
  for (const Feature& feature : window.desk().part().features) {
    std::printf(" %s", feature.id.c_str());
  }
  std::printf("\n");
  auto* line = window.findChild<QLineEdit*>(QStringLiteral("line"));
  std::mt19937 random(static_cast<unsigned>(std::atoi(argv[3])));
  for (std::size_t next = window.desk().part().features.size() + 1; ending.came() == 0; ++next) {
    const std::string id = "P" + std::to_string(next);
    QTest::keyClicks(line, QString::fromStdString("point " + id));
    QTest::keyClick(line, Qt::Key_Return);
    if (window.desk().part().features.size() != next) return 1;
    std::printf("edit %s %lld\n", id.c_str(), nanoseconds());
    if (saving && random() % 8 == 0) QTest::keyClick(&window, Qt::Key_S, Qt::ControlModifier);
    QTest::qWait(20 + static_cast<int>(random() % 120));
  }
  return 0;
}

}  // namespace
}  // namespace inchwright::app

int main(int argc, char** argv) {
  if (argc > 1 && argv[1] == std::string_view("--desk-at-work")) {
    return inchwright::app::workUntilKilled(argc, argv);
  }
  testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
