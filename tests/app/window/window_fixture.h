#pragma once

#include <gtest/gtest.h>

#include <QDir>
#include <QLineEdit>
#include <QTest>
#include <memory>

#include "app/session/preferences.h"
#include "app/window/desk_files.h"
#include "app/window/desk_style.h"
#include "app/window/desk_window.h"
#include "tests/support/by_hand.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {

/// The whole desk offscreen, answered by the test instead of by dialogs.
class WindowTest : public testing::Test {
 protected:
  void SetUp() override {
    dressApplication(deskApplication());
    // Windows of earlier tests went without being left, as in a crash.
    QDir(dataFolder(QStringLiteral("journal"))).removeRecursively();
    window = std::make_unique<DeskWindow>(answers());
    window->resize(1280, 720);
    window->show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
  }

  Asking answers() {
    Asking asking;
    asking.fileToOpen = [this] { return toOpen; };
    asking.pictureToOpen = [this] { return pictureToOpen; };
    asking.fileToSave = [this](const QString&) { return toSave; };
    asking.unsavedWork = [this](const QString&) {
      ++askedForUnsaved;
      return answer;
    };
    asking.fileForSheet = [this](const QString& suggested) {
      suggestedSheet = suggested;
      return toWrite;
    };
    asking.choose = [this](const Asking::Question& question) {
      questions << question.text;
      for (qsizetype i = 0; i < question.answers.size(); ++i) {
        const QString words = QString(question.answers[i]).remove(QLatin1Char('&'));
        if (!pick.isEmpty() && words.startsWith(pick)) return static_cast<int>(i);
      }
      return question.escape;
    };
    asking.tell = [this](const QString& what) { told << what; };
    return asking;
  }

  QLineEdit* line() { return window->findChild<QLineEdit*>(QStringLiteral("line")); }

  void type(const QString& text) {
    QTest::keyClicks(line(), text);
    QTest::keyClick(line(), Qt::Key_Return);
  }

  template <class Widget>
  Widget* named(QWidget* in, const QString& name) {
    return calledIn<Widget>(*in, name);
  }

  std::unique_ptr<DeskWindow> window;
  QString toOpen, toSave, toWrite, suggestedSheet, pictureToOpen;
  QString pick;  ///< how the answer begins that is given to a question; none: as Escape
  Asking::Answer answer = Asking::Answer::leave;
  int askedForUnsaved = 0;
  QStringList told, questions;
};

}  // namespace inchwright::app
