#pragma once

#include <gtest/gtest.h>

#include <QPdfDocument>
#include <algorithm>
#include <iostream>
#include <set>
#include <string>
#include <vector>

#include "core/solution/solution.h"
#include "tests/app/journey/hand.h"

namespace inchwright::app {

/// What stands on a print beside a place, and what a hand types for it.
struct PrintedNote {
  std::string_view printed;
  std::string typed;
};

/// The way from the picture of a print to its sheet on paper, by a hand that counts.
class Journey : public testing::Test {
 protected:
  const Part& part() { return hand.window->desk().part(); }

  /// Every place lies where the same print read elsewhere puts it, seen from these sides.
  int expectPlacedAs(const Solution& wanted, const Id& left, const Id& front, const Id& bottom) {
    auto solved = solve(part());
    EXPECT_TRUE(solved.ok());
    int compared = 0;
    for (const Axis axis : kAxes) {
      const Id& from = axis == Axis::x ? left : axis == Axis::y ? front : bottom;
      for (const Id& place : wanted.positions.along(axis).places) {
        const auto expected = wanted.between(from, place, axis);
        if (!expected) continue;
        const auto got = solved->between(from, place, axis);
        EXPECT_TRUE(got.has_value()) << place << " along " << nameOf(axis);
        if (got) {
          EXPECT_EQ(*got, *expected) << place << " along " << nameOf(axis);
        }
        ++compared;
      }
    }
    EXPECT_TRUE(solved->clashes.empty());
    return compared;
  }

  /// Ctrl+E, and Enter on the name that is offered; the figures are in the file.
  void printToPdf(std::size_t rows) {
    hand.inDialog([&] { hand.key(Qt::Key_E, Qt::ControlModifier); },
                  [&] { hand.key(Qt::Key_Return); });
    QString name = QString::fromStdString(part().name);
    if (part().setups.size() > 1) {
      name += QStringLiteral(", setup ") + QString::fromStdString(hand.window->desk().setup().name);
    }
    const QString file = hand.homeFile(name + QStringLiteral(".pdf"));
    QPdfDocument pdf;
    ASSERT_EQ(pdf.load(file), QPdfDocument::Error::None) << file.toStdString();
    QString text;
    for (int page = 0; page < pdf.pageCount(); ++page) text += pdf.getAllText(page).text();
    const SetupTable* table = hand.window->desk().table();
    ASSERT_NE(table, nullptr);
    EXPECT_GE(table->rows.size(), rows);
    for (const TableRow& row : table->rows) {
      EXPECT_TRUE(text.contains(QString::fromStdString(row.x.text))) << row.id;
      EXPECT_TRUE(text.contains(QString::fromStdString(row.y.text))) << row.id;
    }
  }

  /// What is lettered has to be typed once, or what says the same in fewer characters; beside that
  /// one and a half actions a reading, one a feature, and twenty for all else.
  static int limitFor(const Part& print, const std::vector<PrintedNote>& callouts) {
    std::size_t characters = 0;
    for (const Reading& reading : print.readings) {
      characters += static_cast<std::size_t>(QString::fromStdString(reading.figure.text).size());
    }
    for (const PrintedNote& one : callouts) {
      characters += std::min(one.printed.size(), one.typed.size());
    }
    return static_cast<int>(characters + 3 * print.readings.size() / 2 + print.features.size()) +
           20;
  }

  void expectWithin(int limit) {
    std::cout << "journey: " << hand.clicks << " clicks, " << hand.typed << " characters, "
              << hand.keys - hand.typed << " other keys, " << hand.count() << " in all; limit "
              << limit << '\n';
    EXPECT_LE(hand.count(), limit);
  }

  /// The corners of the print and its two overall figures, the first of them at zero: each next
  /// click takes what was typed of the one before, and Enter squares the picture up.
  void squareUp(const std::array<QPointF, 4>& corners, const char* wide, const char* deep) {
    hand.waitForPicture();
    hand.click(corners[0]);
    hand.click(corners[1]);
    hand.type(QString::fromUtf8(wide));
    hand.click(corners[2]);
    hand.type(QString::fromUtf8(deep));
    hand.click(corners[3]);
    hand.line("");
    hand.waitForPicture();
    EXPECT_EQ(hand.window->work().doing(), Doing::tracing);
    // Nobody answers the next question as fast as a second press would.
    QTest::qWait(400);
    hand.line("");
  }

  Hand hand;
};

}  // namespace inchwright::app
