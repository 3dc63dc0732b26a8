// Everything on the desk by keyboard, and named for those who do not see it.

#include <gtest/gtest.h>

#include <QAccessible>
#include <QAction>
#include <QApplication>
#include <QMenu>
#include <QMenuBar>
#include <QPushButton>
#include <QSet>
#include <QTextBrowser>
#include <functional>

#include "app/canvas/print_view.h"
#include "app/window/help_page.h"
#include "core/lines/lines.h"
#include "core/lines/pasted.h"
#include "core/part/edit.h"
#include "tests/app/window/window_fixture.h"

namespace inchwright::app {
namespace {

class KeysTest : public WindowTest {
 protected:
  void SetUp() override {
    WindowTest::SetUp();
    ASSERT_TRUE(window->files().openSample());
  }
};

QString letterOf(const QString& text) {
  return QKeySequence::mnemonic(text).toString();
}

TEST_F(KeysTest, EveryActionHasAKeyOrALetterInItsMenu) {
  const std::function<void(const QMenu*)> walk = [&](const QMenu* menu) {
    QSet<QString> letters;
    for (const QAction* action : menu->actions()) {
      if (action->isSeparator()) continue;
      const QString letter = letterOf(action->text());
      EXPECT_FALSE(letter.isEmpty()) << qPrintable(action->text());
      EXPECT_FALSE(letters.contains(letter)) << qPrintable(action->text());
      letters += letter;
      if (action->menu() != nullptr) {
        walk(action->menu());
      } else {
        EXPECT_FALSE(action->shortcut().isEmpty()) << qPrintable(action->text());
      }
    }
  };
  for (const QAction* top : window->menuBar()->actions()) {
    EXPECT_FALSE(letterOf(top->text()).isEmpty()) << qPrintable(top->text());
    walk(top->menu());
  }
  for (const QAction* action : window->actions()) EXPECT_FALSE(action->shortcut().isEmpty());
}

TEST_F(KeysTest, TheEmptyLineLeavesEveryKeyOfTheMenusToThem) {
  line()->setFocus();
  for (const QAction* action : window->findChildren<QAction*>()) {
    for (const QKeySequence& key : action->shortcuts()) {
      ASSERT_EQ(key.count(), 1) << qPrintable(key.toString());
      QKeyEvent event(QEvent::ShortcutOverride, key[0].key(), key[0].keyboardModifiers());
      event.ignore();
      QCoreApplication::sendEvent(line(), &event);
      EXPECT_FALSE(event.isAccepted()) << qPrintable(key.toString() + ' ' + action->text());
    }
  }
}

TEST_F(KeysTest, UndoFromTheEmptyLineTakesBackTheWorkAndFromAFullOneTheTyping) {
  QTest::keyClicks(line(), QStringLiteral("point NEW"));
  QTest::keyClick(line(), Qt::Key_Return);
  ASSERT_NE(window->desk().part().feature("NEW"), nullptr);
  QTest::keyClicks(line(), QStringLiteral("x"));
  QTest::keyClick(line(), Qt::Key_Z, Qt::ControlModifier);
  EXPECT_NE(window->desk().part().feature("NEW"), nullptr);
  line()->clear();
  QTest::keyClick(line(), Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(window->desk().part().feature("NEW"), nullptr);
}

TEST_F(KeysTest, TabReachesEverythingAndComesBack) {
  QSet<const QWidget*> wanted;
  for (const QWidget* widget : window->findChildren<QWidget*>()) {
    const bool reachable = (widget->focusPolicy() & Qt::TabFocus) != 0 && widget->isVisible() &&
                           widget->isEnabled() && widget->focusProxy() == nullptr &&
                           !widget->isWindow();
    // Of a group of which one is chosen Tab reaches that one; arrows walk the others.
    const auto* one = qobject_cast<const QAbstractButton*>(widget);
    if (one != nullptr && one->autoExclusive() && !one->isChecked()) continue;
    if (reachable) wanted += widget;
  }
  ASSERT_GT(wanted.size(), 12);
  for (const Qt::Key key : {Qt::Key_Tab, Qt::Key_Backtab}) {
    QSet<const QWidget*> left = wanted;
    line()->setFocus();
    for (int i = 0; i < 60; ++i) {
      left.remove(QApplication::focusWidget());
      QTest::keyClick(QApplication::focusWidget(), key);
    }
    for (const QWidget* widget : left) {
      ADD_FAILURE() << widget->metaObject()->className() << ' '
                    << qPrintable(widget->accessibleName());
    }
  }
}

TEST_F(KeysTest, WhatTakesTheFocusIsSpokenWithARole) {
  for (QWidget* widget : window->findChildren<QWidget*>()) {
    if (widget->focusPolicy() == Qt::NoFocus || !widget->isVisible()) continue;
    const QAccessibleInterface* spoken = QAccessible::queryAccessibleInterface(widget);
    ASSERT_NE(spoken, nullptr);
    EXPECT_FALSE(spoken->text(QAccessible::Name).isEmpty()) << widget->metaObject()->className();
    EXPECT_NE(spoken->role(), QAccessible::NoRole);
    EXPECT_NE(spoken->role(), QAccessible::Client) << widget->metaObject()->className();
  }
}

TEST_F(KeysTest, TheGuideNamesEveryKey) {
  const HelpPage page(window->menuBar());
  const QString text = page.findChild<QTextBrowser*>()->toPlainText();
  for (const QAction* action : window->findChildren<QAction*>()) {
    for (const QKeySequence& key : action->shortcuts()) {
      EXPECT_TRUE(text.contains(key.toString(QKeySequence::NativeText)))
          << qPrintable(key.toString() + ' ' + action->text());
    }
  }
  for (const auto* button : window->findChildren<QPushButton*>()) {
    const QString letter = letterOf(button->text());
    if (letter.isEmpty() || button->window() != window.get()) continue;
    EXPECT_TRUE(text.contains(letter)) << qPrintable(button->text());
  }
}

TEST_F(KeysTest, TheGuideNamesWhatTheMouseDoesAndWhatEnterCompletes) {
  const HelpPage page(window->menuBar());
  const QString text = page.findChild<QTextBrowser*>()->toPlainText();
  for (const char* words : {"Ctrl+click", "Shift+click", "pinch", "double click", "stated",
                            "What Enter completes", "How close to work", "Tone of the picture"}) {
    EXPECT_TRUE(text.contains(QLatin1String(words))) << words;
  }
}

TEST_F(KeysTest, EveryLineOfTheGuideCanBeTyped) {
  Part named;
  named.name = "Plate";
  const auto plate = applyLines(named, "hole A 1/4\nhole B 1/4\nhole C 1/4\nL R 4\nF K 3", {});
  ASSERT_TRUE(plate.ok()) << plate.error().text;
  for (const auto& [typed, what] : HelpPage::lines()) {
    // The guide shows how a name comes about; here it is taken already.
    Part part = *plate;
    const QStringList words = typed.split(QLatin1Char(' '));
    if (words[0] == QLatin1String("hole") || words[0] == QLatin1String("edge")) {
      auto without = removeFeature(part, words[1].toStdString());
      ASSERT_TRUE(without.ok());
      part = std::move(without->part);
    }
    const auto outcome = applyLine(part, typed.toStdString(), {});
    EXPECT_TRUE(outcome.ok()) << qPrintable(typed) << ": "
                              << (outcome.ok() ? "" : outcome.error().text);
  }
}

TEST_F(KeysTest, MenusOpenByTheirOwnKeyAndByLetter) {
  QTest::keyClick(line(), Qt::Key_F10);
  EXPECT_EQ(window->menuBar()->activeAction(), window->menuBar()->actions().front());
  QTest::keyClick(window->menuBar(), Qt::Key_Escape);
  line()->setFocus();
  QTest::keyClick(line(), Qt::Key_U, Qt::AltModifier);
  const QMenu* guide = window->menuBar()->actions().back()->menu();
  EXPECT_TRUE(guide->isVisible());
}

TEST_F(KeysTest, GoingToTheLineAboveAndWalkingItNeedsNoMouse) {
  QTest::keyClick(line(), Qt::Key_5, Qt::ControlModifier);
  ASSERT_NE(QApplication::focusWidget(), nullptr);
  EXPECT_EQ(QApplication::focusWidget()->parentWidget()->objectName(), QStringLiteral("ledger"));
}

TEST_F(KeysTest, WhatIsChosenIsDeletedByOneKeyAndComesBackByAnother) {
  const Job before = window->desk().job();
  window->desk().select({{"A"}, {}});
  QTest::keyClick(line(), Qt::Key_D, Qt::ControlModifier);
  EXPECT_EQ(window->desk().part().feature("A"), nullptr);
  QTest::keyClick(line(), Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(window->desk().job(), before);
}

TEST_F(KeysTest, ThePrintSpeaksOfEveryPlaceAndReading) {
  auto* print = window->findChild<PrintView*>();
  QAccessibleInterface* spoken = QAccessible::queryAccessibleInterface(print);
  ASSERT_NE(spoken, nullptr);
  EXPECT_EQ(spoken->role(), QAccessible::Canvas);
  ASSERT_EQ(spoken->childCount(), print->thingCount());
  ASSERT_GT(spoken->childCount(), 6);
  QStringList names;
  const QRect all(print->mapToGlobal(QPoint(0, 0)), print->size());
  for (int i = 0; i < spoken->childCount(); ++i) {
    QAccessibleInterface* child = spoken->child(i);
    ASSERT_NE(child, nullptr);
    EXPECT_EQ(spoken->indexOfChild(child), i);
    EXPECT_EQ(child->parent(), spoken);
    names << child->text(QAccessible::Name);
    EXPECT_FALSE(names.back().isEmpty());
    EXPECT_FALSE(child->text(QAccessible::Description).isEmpty()) << qPrintable(names.back());
    EXPECT_TRUE(child->rect().intersects(all)) << qPrintable(names.back());
  }
  EXPECT_TRUE(names.contains(QStringLiteral("hole A"))) << qPrintable(names.join('\n'));
  EXPECT_TRUE(names.contains(QStringLiteral("reading L to A: 7/16")))
      << qPrintable(names.join('\n'));
}

TEST_F(KeysTest, APlaceOnThePrintIsFoundWhereItLiesAndPressedWithoutAMouse) {
  auto* print = window->findChild<PrintView*>();
  QAccessibleInterface* spoken = QAccessible::queryAccessibleInterface(print);
  const QPoint at = print->mapToGlobal(print->whereIs("A")->toPoint());
  QAccessibleInterface* hole = spoken->childAt(at.x(), at.y());
  ASSERT_NE(hole, nullptr);
  EXPECT_EQ(hole->text(QAccessible::Name), QStringLiteral("hole A"));
  EXPECT_FALSE(hole->state().selected);
  ASSERT_NE(hole->actionInterface(), nullptr);
  hole->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
  EXPECT_EQ(window->desk().selection().places, std::vector<Id>{"A"});
  EXPECT_TRUE(hole->state().selected);
}

TEST_F(KeysTest, TheSecondReadingIsBlindInWordsToo) {
  auto* print = window->findChild<PrintView*>();
  window->work().reread();
  for (int i = 0; i < print->thingCount(); ++i) {
    EXPECT_FALSE(print->thing(i).name.contains(QStringLiteral("7/16")))
        << qPrintable(print->thing(i).name);
  }
}

}  // namespace
}  // namespace inchwright::app
