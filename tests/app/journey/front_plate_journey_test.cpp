// A stranger's way from the picture of the front plate to its printed sheet, every click and key of
// it counted; and the same job from the keyboard alone.

#include <gtest/gtest.h>

#include <QFile>
#include <QPdfDocument>
#include <iostream>
#include <set>

#include "core/document/document.h"
#include "core/solution/solution.h"
#include "tests/app/journey/hand.h"

namespace inchwright::app {
namespace {

Job sample() {
  auto job = loadDocument(INCHWRIGHT_SOURCE_DIR "/samples/front_plate.inchwright");
  EXPECT_TRUE(job.ok());
  return std::move(job).value();
}

/// Where the sample's print shows a place, as an eye finds it there: inches on the sheet of paper,
/// from the lower left corner of the plan.
class Sheet {
 public:
  explicit Sheet(const Part& part) : solution_(*solve(part)) {}

  QPointF top(const Id& id) const { return {along("L", id, Axis::x), along("F", id, Axis::y)}; }
  QPointF front(const Id& id) const {
    return kFront + QPointF(along("L", id, Axis::x), along("U", id, Axis::z));
  }
  double along(const char* from, const Id& to, Axis axis) const {
    const auto ticks = solution_.between(from, to, axis);
    EXPECT_TRUE(ticks.has_value()) << to;
    return ticks ? ticks->toDouble() / static_cast<double>(Length::kTicksPerInch) : 0;
  }
  const Solution& solution() const { return solution_; }

  /// The lower left corner of the elevation: pixel 475, 1846.8 of the print.
  static constexpr QPointF kFront{0, -2.02};

 private:
  Solution solution_;
};

/// The scan: 190 pixels an inch, with the plan's corner at this pixel.
constexpr QPointF kCorner{475, 1463};
constexpr double kPixelsPerInch = 190;

/// As taken, a picture lies at 100 pixels an inch, its top left corner at zero.
QPointF asTaken(QPointF sheet) {
  const QPointF pixel(kCorner.x() + kPixelsPerInch * sheet.x(),
                      kCorner.y() - kPixelsPerInch * sheet.y());
  return {pixel.x() / 100, -pixel.y() / 100};
}

class FrontPlateJourney : public testing::Test {
 protected:
  FrontPlateJourney() : wanted(sample()), sheet(wanted.parts[0]) {}

  const Part& part() { return hand.window->desk().part(); }

  void expectPlacedAsTheSample() {
    auto solved = solve(part());
    ASSERT_TRUE(solved.ok());
    for (const Feature& feature : wanted.parts[0].features) {
      ASSERT_NE(part().feature(feature.id), nullptr) << feature.id;
    }
    int compared = 0;
    for (const Axis axis : kAxes) {
      for (const Id& place : sheet.solution().positions.along(axis).places) {
        const char* from = axis == Axis::x ? "L" : axis == Axis::y ? "F" : "U";
        const auto expected = sheet.solution().between(from, place, axis);
        if (!expected) continue;
        const auto got = solved->between(from, place, axis);
        ASSERT_TRUE(got.has_value()) << place << " along " << nameOf(axis);
        EXPECT_EQ(*got, *expected) << place << " along " << nameOf(axis);
        ++compared;
      }
    }
    EXPECT_GE(compared, 48);
    EXPECT_TRUE(solved->clashes.empty());
  }

  /// Ctrl+E, and Enter on the name that is offered; the figures are in the file.
  void printToPdf() {
    hand.inDialog([&] { hand.key(Qt::Key_E, Qt::ControlModifier); },
                  [&] { hand.key(Qt::Key_Return); });
    const QString file =
        hand.homeFile(QString::fromStdString(part().name) + QStringLiteral(".pdf"));
    QPdfDocument pdf;
    ASSERT_EQ(pdf.load(file), QPdfDocument::Error::None) << file.toStdString();
    QString text;
    for (int page = 0; page < pdf.pageCount(); ++page) text += pdf.getAllText(page).text();
    const SetupTable* table = hand.window->desk().table();
    ASSERT_NE(table, nullptr);
    EXPECT_GE(table->rows.size(), 18u);
    for (const TableRow& row : table->rows) {
      EXPECT_TRUE(text.contains(QString::fromStdString(row.x.text))) << row.id;
      EXPECT_TRUE(text.contains(QString::fromStdString(row.y.text))) << row.id;
    }
  }

  /// Every figure is typed as it is lettered; beside that a click, a key and Enter for each reading
  /// and feature, and what squaring up, sides and zero take.
  int aim() const {
    const Part& print = wanted.parts[0];
    std::size_t characters = 0;
    for (const Reading& reading : print.readings) {
      characters += static_cast<std::size_t>(QString::fromStdString(reading.figure.text).size());
    }
    for (const char* size : {"17/64", "1/4 ream", "3/16", "3 on 2 1/4 from 90 drill 1/8",
                             "8-32 tap", "4 holes pitch 5/8 3/32", "1/8 deep 3/4"}) {
      characters += std::string_view(size).size();
    }
    return static_cast<int>(characters + 3 * print.readings.size() + 3 * print.features.size()) +
           45;
  }

  Job wanted;
  Sheet sheet;
  Hand hand;
};

class ByMouse : public FrontPlateJourney {
 protected:
  void square() {
    hand.drop(QStringLiteral(INCHWRIGHT_SOURCE_DIR "/samples/prints/front_plate.png"));
    hand.waitForPicture();
    hand.click(asTaken({0, 0}));
    hand.line("");
    hand.click(asTaken({3.875, 0}));
    hand.line("3 7/8");
    hand.click(asTaken({3.875, 6.25}));
    hand.line("6 1/4");
    hand.click(asTaken({0, 6.25}));
    hand.line("");
    hand.line("");
    hand.waitForPicture();
    // It lies where it lay; all of it in sight is larger.
    hand.key(Qt::Key_0, Qt::ControlModifier);
  }

  void hole(const char* id, const char* text = "") {
    hand.click(sheet.top(id));
    hand.line(text);
  }

  void traceTop() {
    hand.key(Qt::Key_1, Qt::AltModifier);
    hand.line("");
    hand.key(Qt::Key_2, Qt::AltModifier);
    hole("A", "17/64");
    for (const char* id : {"B", "C", "D"}) hole(id);
    hole("E", "1/4 ream");
    for (const char* id : {"G", "H"}) hole(id);
    hole("J", "3/16");
    hand.key(Qt::Key_4, Qt::AltModifier);
    hand.click(sheet.top("M"));
    hand.click(sheet.top("M"));  // the first was not where it should be
    hand.line("3 on 2 1/4 from 90 drill 1/8");
    hand.key(Qt::Key_2, Qt::AltModifier);
    hole("N", "8-32 tap");
    for (const char* id : {"P", "Q"}) hole(id);
    hand.key(Qt::Key_5, Qt::AltModifier);
    hand.click(sheet.top("S1"));
    hand.click(sheet.top("S4"));
    hand.line("4 holes pitch 5/8 3/32");
  }

  /// Where a hand takes hold of a place of the plan: edges away from what crosses them.
  QPointF hold(const Id& id) {
    if (id == "L" || id == "R") return {sheet.along("L", id, Axis::x), 3.4};
    if (id == "F" || id == "K") return {2.6, sheet.along("F", id, Axis::y)};
    return sheet.top(id);
  }

  /// What the print letters between two places along an axis, whichever of them comes first.
  std::string lettered(const Id& a, const Id& b, Axis axis) {
    for (const Reading& one : wanted.parts[0].readings) {
      const bool these = (one.from == a && one.to == b) || (one.from == b && one.to == a);
      if (these && one.axis == axis && read.insert(one.id).second) return one.figure.text;
    }
    ADD_FAILURE() << "the print letters nothing from " << a << " to " << b;
    return {};
  }

  /// A chain: its first place, then each next one with the figure that stands there.
  void chain(Axis axis, Id from, std::initializer_list<const char*> places) {
    hand.click(hold(from), Qt::ShiftModifier);
    for (const char* id : places) {
      hand.click(hold(id));
      hand.line(lettered(from, id, axis).c_str());
      from = id;
    }
  }

  void readTop() {
    hand.key(Qt::Key_F6);
    chain(Axis::x, "L", {"A", "B", "R"});
    chain(Axis::x, "L", {"R"});
    chain(Axis::x, "J", {"G", "H"});
    chain(Axis::x, "N", {"J", "P"});
    chain(Axis::x, "Q", {"R"});
    chain(Axis::x, "L", {"S1"});
    chain(Axis::y, "F", {"A", "C", "K"});
    chain(Axis::y, "F", {"E", "G", "H", "J", "K"});
    chain(Axis::y, "F", {"K"});
    chain(Axis::y, "H", {"Q"});
    chain(Axis::y, "F", {"S1"});
  }

  void understand() {
    const auto with = Qt::AltModifier | Qt::ShiftModifier;
    hand.key(Qt::Key_I, with);
    hand.line("s");
    hand.line("");
    hand.line("");
    hand.key(Qt::Key_X, Qt::AltModifier);
    for (int i = 0; i < 3; ++i) hand.line("");
    hand.key(Qt::Key_M, with);
    hand.line("");
    hand.key(Qt::Key_C, with);
    hand.line("");
  }

  void zeroTop() {
    hand.key(Qt::Key_F7);
    hand.click(hold("L"));
    hand.click(hold("R"));
    hand.line("");
    hand.click(hold("F"));
    hand.line("");
  }

  QPointF onFront(QPointF sheetPlace) {
    for (const PictureView& view : part().views) {
      if (view.face == Face::front) return sheetPlace - offsetOf(view);
    }
    return sheetPlace;
  }
  QPointF holdFront(const Id& id) {
    if (id == "L" || id == "R")
      return onFront(Sheet::kFront + QPointF(sheet.along("L", id, Axis::x), 0.24));
    if (id == "U" || id == "T")
      return onFront(Sheet::kFront + QPointF(2.6, sheet.along("U", id, Axis::z)));
    return onFront(sheet.front(id));
  }

  void frontFace() {
    hand.key(Qt::Key_3, Qt::ControlModifier | Qt::AltModifier);
    hand.click(Sheet::kFront);
    hand.key(Qt::Key_1, Qt::AltModifier);
    for (const char* id : {"U", "T"}) {
      hand.click(holdFront(id));
      hand.line("");
    }
    hand.key(Qt::Key_2, Qt::AltModifier);
    hand.click(holdFront("V"));
    hand.line("1/8 deep 3/4");
    hand.key(Qt::Key_F6);
    const std::pair<const char*, const char*> steps[] = {
        {"L", "V"}, {"V", "R"}, {"U", "V"}, {"U", "T"}};
    for (const auto& [from, to] : steps) {
      if (std::string(from) != "V") hand.click(holdFront(from), Qt::ShiftModifier);
      hand.click(holdFront(to));
      hand.line(lettered(from, to, std::string(from) == "U" ? Axis::z : Axis::x).c_str());
    }
    hand.key(Qt::Key_F7);
    for (const char* id : {"L", "U"}) {
      hand.click(holdFront(id));
      hand.line("");
    }
    hand.line("stock left 1/32");
  }

  std::set<Id> read;
};

TEST_F(ByMouse, FromThePictureToThePrintedSheet) {
  square();
  traceTop();
  readTop();
  understand();
  frontFace();
  hand.key(Qt::Key_1, Qt::ControlModifier | Qt::AltModifier);
  zeroTop();
  printToPdf();
  if (const QString folder = qEnvironmentVariable("INCHWRIGHT_PICTURES"); !folder.isEmpty()) {
    hand.window->grab().save(folder + QStringLiteral("/journey.png"));
  }
  expectPlacedAsTheSample();
  for (const Feature& one : part().features) {
    SCOPED_TRACE(one.id);
    const Feature& same = *wanted.parts[0].feature(one.id);
    EXPECT_EQ(one.traced.size(), same.traced.size());
    for (const Axis axis : kAxes) {
      const auto at = tracedAlong(one, axis), there = tracedAlong(same, axis);
      if (at && there) {
        EXPECT_NEAR(*at, *there, 0.015) << nameOf(axis);
      }
    }
  }
  ASSERT_EQ(part().readings.size(), wanted.parts[0].readings.size());
  for (std::size_t i = 0; i < part().readings.size(); ++i) {
    EXPECT_EQ(part().readings[i].figure.reference,
              std::count_if(wanted.parts[0].readings.begin(), wanted.parts[0].readings.end(),
                            [&](const Reading& one) {
                              return one.figure.reference && one.from == part().readings[i].from &&
                                     one.to == part().readings[i].to;
                            }) > 0);
  }
  ASSERT_EQ(part().setups.size(), 2u);
  EXPECT_EQ(part().setups[0].face, Face::front);
  EXPECT_EQ(part().setups[1].face, Face::top);
  std::cout << "journey by mouse: " << hand.clicks << " clicks, " << hand.keys << " keys, "
            << hand.count() << " in all; aim " << aim() << '\n';
  EXPECT_LE(hand.count(), aim());
}

TEST_F(FrontPlateJourney, ByTheKeyboardAlone) {
  hand.inDialog([&] { hand.key(Qt::Key_N, Qt::ControlModifier); },
                [&] { hand.key(Qt::Key_B, Qt::AltModifier); });
  for (const char* text :
       {"edge L left", "edge R right", "edge F front", "edge K back", "hole A 17/64",
        "hole B 17/64", "hole C 17/64", "hole D 17/64", "hole E 1/4 ream", "hole G 1/4 ream",
        "hole H 1/4 ream", "hole J 3/16", "hole N 8-32 tap", "hole P 8-32 tap", "hole Q 8-32 tap",
        "ring M 3 on 2 1/4 from 90 drill 1/8", "row S x 4 holes pitch 5/8 3/32"}) {
    hand.line(text);
  }
  hand.key(Qt::Key_F6);
  for (const char* text :
       {"L A 7/16",    "B 3",        "R 7/16",          "L R (3 7/8)", "F A 7/16", "C 5 5/16",
        "K 1/2",       "F E 1 1/4",  "G 1 11/16 ±.002", "H 1 1/16",    "J 29/32",  "K 1 11/32",
        "F K (6 1/4)", "y H Q 7/16", "F S1 9/16",       "x J G 5/8",   "H 13/16",  "N J 11/16",
        "P 11/16",     "Q R 9/16",   "L S1 1"}) {
    hand.line(text);
  }
  for (const char* text : {"midway x E L R stated", "in line x E G stated", "in line y A B stated",
                           "in line x A D stated", "in line x B C stated", "in line y C D stated",
                           "in line y N J P stated", "concentric G M stated"}) {
    hand.line(text);
  }
  hand.key(Qt::Key_Escape);
  hand.key(Qt::Key_Escape);
  hand.key(Qt::Key_3, Qt::ControlModifier | Qt::AltModifier);
  for (const char* text :
       {"edge U bottom", "edge T top", "hole V 1/8 deep 3/4", "L V 1 1/4", "V R 2 5/8", "U V 5/32",
        "U T 5/16", "zero x L", "zero z U", "stock left 1/32"}) {
    hand.line(text);
  }
  hand.key(Qt::Key_1, Qt::ControlModifier | Qt::AltModifier);
  for (const char* text : {"zero x middle L R", "zero y F"}) hand.line(text);
  printToPdf();
  expectPlacedAsTheSample();
  EXPECT_EQ(hand.clicks, 0);
  std::cout << "journey by keyboard: " << hand.keys << " keys\n";
}

}  // namespace
}  // namespace inchwright::app
