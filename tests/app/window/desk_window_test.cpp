#include "app/window/desk_window.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QClipboard>
#include <QGuiApplication>
#include <QMenu>
#include <QMenuBar>
#include <QMimeData>
#include <QPushButton>
#include <QTemporaryDir>

#include "app/window/outputs.h"
#include "tests/app/window/window_fixture.h"

namespace inchwright::app {
namespace {

class DeskWindowTest : public WindowTest {};

TEST_F(DeskWindowTest, SampleOpensWithASheet) {
  ASSERT_TRUE(window->files().openSample());
  EXPECT_EQ(window->desk().part().name, "Front plate");
  ASSERT_NE(window->desk().sheet(), nullptr);
  EXPECT_GE(window->desk().sheet()->pageCount(), 1U);
  EXPECT_FALSE(window->desk().unsaved());
}

TEST_F(DeskWindowTest, LinesTypedOnBlankPaperMakeATable) {
  ASSERT_TRUE(window->files().newJob());
  for (const char* text :
       {"edge L left", "edge F front", "hole A 1/4 ream", "L A 3/8", "F A 1/2"}) {
    type(QString::fromLatin1(text));
    EXPECT_TRUE(line()->text().isEmpty()) << text;
  }
  ASSERT_NE(window->desk().table(), nullptr);
  ASSERT_EQ(window->desk().table()->rows.size(), 1u);
  EXPECT_EQ(window->desk().table()->rows[0].x.text, "0.3750");
  EXPECT_EQ(window->desk().table()->rows[0].y.text, "0.5000");
}

TEST_F(DeskWindowTest, TypingOnASheetLandsInTheStrip) {
  ASSERT_TRUE(window->files().openSample());
  auto* sheet = window->findChild<QWidget*>(QStringLiteral("sheet"));
  QTest::keyClick(sheet, 'L', Qt::ShiftModifier);
  EXPECT_EQ(line()->text(), QStringLiteral("L"));
}

TEST_F(DeskWindowTest, UndoLeadsBackToTheFirstBytes) {
  ASSERT_TRUE(window->files().openSample());
  const Job before = window->desk().job();
  type(QStringLiteral("point Y"));
  type(QStringLiteral("L Y 1"));
  EXPECT_TRUE(window->isWindowModified());
  QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
  QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(window->desk().job(), before);
  EXPECT_FALSE(window->isWindowModified());
  QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
  EXPECT_NE(window->desk().part().feature("Y"), nullptr);
}

TEST_F(DeskWindowTest, SavedAndOpenedAgainIsTheSame) {
  QTemporaryDir folder;
  ASSERT_TRUE(window->files().openSample());
  type(QStringLiteral("point P"));
  toSave = folder.filePath(QStringLiteral("plate"));
  ASSERT_TRUE(window->files().save());
  const Job saved = window->desk().job();
  EXPECT_EQ(window->desk().file(), toSave + QStringLiteral(".inchwright"));
  ASSERT_TRUE(window->files().newJob());
  EXPECT_EQ(askedForUnsaved, 0);
  ASSERT_TRUE(window->files().open(toSave + QStringLiteral(".inchwright")));
  EXPECT_EQ(window->desk().job(), saved);
}

TEST_F(DeskWindowTest, UnsavedWorkIsAskedForAndStayKeepsIt) {
  ASSERT_TRUE(window->files().newJob());
  type(QStringLiteral("point P"));
  answer = Asking::Answer::stay;
  EXPECT_FALSE(window->files().openSample());
  EXPECT_EQ(askedForUnsaved, 1);
  EXPECT_NE(window->desk().part().feature("P"), nullptr);
}

TEST_F(DeskWindowTest, BrokenFileIsToldAndChangesNothing) {
  QTemporaryDir folder;
  ASSERT_TRUE(window->files().openSample());
  const QString file = folder.filePath(QStringLiteral("broken.inchwright"));
  QFile broken(file);
  ASSERT_TRUE(broken.open(QIODevice::WriteOnly));
  broken.write("{\"inchwright\": 1, ");
  broken.close();
  EXPECT_FALSE(window->files().open(file));
  ASSERT_EQ(told.size(), 1);
  EXPECT_EQ(window->desk().part().name, "Front plate");
}

TEST_F(DeskWindowTest, SheetsFillTheWindowByKey) {
  auto* print = window->findChild<QWidget*>(QStringLiteral("print"));
  auto* sheet = window->findChild<QWidget*>(QStringLiteral("sheet"));
  QTest::keyClick(window.get(), Qt::Key_F4, Qt::ControlModifier);
  EXPECT_TRUE(print->isVisible());
  EXPECT_FALSE(sheet->isVisible());
  QTest::keyClick(window.get(), Qt::Key_F3);
  EXPECT_FALSE(print->isVisible());
  EXPECT_TRUE(sheet->isVisible());
  QTest::keyClick(window.get(), Qt::Key_F4);
  EXPECT_TRUE(print->isVisible() && sheet->isVisible());
}

TEST_F(DeskWindowTest, WhatTakesFocusHasAName) {
  ASSERT_TRUE(window->files().openSample());
  for (const QWidget* widget : window->findChildren<QWidget*>()) {
    if (widget->focusPolicy() == Qt::NoFocus || qobject_cast<const QMenu*>(widget)) continue;
    EXPECT_FALSE(widget->accessibleName().isEmpty())
        << widget->metaObject()->className() << ' ' << qPrintable(widget->objectName());
  }
}

TEST_F(DeskWindowTest, NoKeyMeansTwoThings) {
  QMap<QString, QString> taken;
  for (const QAction* action : window->findChildren<QAction*>()) {
    const QString key = action->shortcut().toString();
    if (key.isEmpty()) continue;
    EXPECT_FALSE(taken.contains(key))
        << qPrintable(key + ": " + taken[key] + ", " + action->text());
    taken[key] = action->text();
  }
  // Letters with Alt: menus, words below the strip and the doubts share one row of keys.
  QMap<QString, QString> letters;
  const auto note = [&](const QString& text) {
    const QString key = QKeySequence::mnemonic(text).toString();
    if (key.isEmpty()) return;
    EXPECT_FALSE(letters.contains(key) || taken.contains(key))
        << qPrintable(key + ": " + letters[key] + taken[key] + ", " + text);
    letters[key] = text;
  };
  for (const QAction* action : window->menuBar()->actions()) note(action->text());
  for (const auto* button : window->findChildren<QPushButton*>()) {
    if (button->window() == window.get() && button->isVisible()) note(button->text());
  }
}

TEST_F(DeskWindowTest, SheetIsWrittenAsTheEndingSays) {
  QTemporaryDir folder;
  ASSERT_TRUE(window->files().openSample());
  const auto never = [](const QStringList&) { return false; };
  const auto written = [&](const QString& name) {
    const QString file = folder.filePath(name);
    EXPECT_TRUE(exportSheet(window->desk(), file, never).ok()) << qPrintable(name);
    QFile there(file);
    return there.open(QIODevice::ReadOnly) ? there.read(5) : QByteArray();
  };
  EXPECT_EQ(written(QStringLiteral("a.pdf")), "%PDF-");
  EXPECT_EQ(written(QStringLiteral("a.csv")), "part,");
  EXPECT_FALSE(exportSheet(window->desk(), folder.filePath(QStringLiteral("a.doc")), never).ok());
}

TEST_F(DeskWindowTest, TableIsCopiedAsTextAndHtml) {
  ASSERT_TRUE(window->files().openSample());
  const SetupTable& table = *window->desk().table();
  ASSERT_TRUE(copyTable(window->desk()).ok());
  const QMimeData* copied = QGuiApplication::clipboard()->mimeData();
  const QString text = copied->text();
  EXPECT_EQ(text.count(QLatin1Char('\n')), static_cast<int>(table.rows.size()) + 1);
  EXPECT_TRUE(text.contains(QString::fromStdString(signedText(table.rows[0].x))));
  EXPECT_EQ(copied->html().count(QStringLiteral("<tr>")), static_cast<int>(table.rows.size()) + 1);
}

}  // namespace
}  // namespace inchwright::app
