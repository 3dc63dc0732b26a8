// A stranger's way from the picture of the front plate to its printed sheet, every click and key of
// it counted; and the same job from the keyboard alone.

#include <gtest/gtest.h>

#include <set>
#include <tuple>

#include "core/document/document.h"
#include "tests/app/journey/journey.h"

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

class FrontPlateJourney : public Journey {
 protected:
  FrontPlateJourney() : wanted(sample()), sheet(wanted.parts[0]) {}

  void expectPlacedAsTheSample() {
    for (const Feature& feature : wanted.parts[0].features) {
      ASSERT_NE(part().feature(feature.id), nullptr) << feature.id;
    }
    EXPECT_GE(expectPlacedAs(sheet.solution(), "L", "F", "U"), 48);
  }

  Job wanted;
  Sheet sheet;
};

class ByMouse : public FrontPlateJourney {
 protected:
  void holes(std::initializer_list<const char*> ids, std::string_view printed,
             std::string typed = {}) {
    for (const char* id : ids) hand.click(sheet.top(id));
    if (typed.empty()) typed = printed;
    hand.type(QString::fromStdString(typed));
    callouts.push_back({printed, std::move(typed)});
  }

  void traceTop() {
    holes({"A", "B", "C", "D"}, "17/64 DRILL 4 HOLES");
    holes({"E", "G", "H"}, "REAM 1/4 3 HOLES");
    holes({"J"}, "3/16 DRILL");
    holes({"M"}, "1/8 DRILL 3 HOLES EQUALLY SPACED ON 2 1/4 P.C.D.",
          "1/8 DRILL 3 HOLES ON 2 1/4 P.C.D. from 90");
    holes({"N", "P", "Q"}, "TAP 8-32 UNC 3 HOLES");
    holes({"S1"}, "3/32 DRILL 4 HOLES 5/8", "4 x 3/32 at 5/8 pitch");
    hand.line("");
  }

  /// Where a hand takes hold of a place of the plan: edges away from what crosses them.
  QPointF hold(const Id& id) {
    if (id == "L" || id == "R") return {sheet.along("L", id, Axis::x), 3.4};
    if (id == "F" || id == "K") return {2.6, sheet.along("F", id, Axis::y)};
    return sheet.top(id);
  }

  /// What the print letters between two places along an axis, whichever of them comes first.
  QString lettered(const Id& a, const Id& b, Axis axis) {
    for (const Reading& one : wanted.parts[0].readings) {
      const bool these = (one.from == a && one.to == b) || (one.from == b && one.to == a);
      if (these && one.axis == axis && read.insert(one.id).second) {
        return QString::fromStdString(one.figure.text);
      }
    }
    ADD_FAILURE() << "the print letters nothing from " << a << " to " << b;
    return {};
  }

  /// A chain: its first place, then each next one with the figure that stands there, which the
  /// click on the one after it takes.
  void chain(Axis axis, Id from, std::initializer_list<const char*> places) {
    hand.click(hold(from), Qt::ShiftModifier);
    for (const char* id : places) {
      hand.click(hold(id));
      hand.type(lettered(from, id, axis));
      from = id;
    }
  }

  void readTop() {
    hand.key(Qt::Key_F6);
    chain(Axis::x, "L", {"A", "B", "R", "Q"});
    chain(Axis::x, "N", {"J", "G", "H"});
    chain(Axis::x, "J", {"P"});
    chain(Axis::x, "L", {"S1"});
    chain(Axis::y, "F", {"A", "C", "K", "J", "H", "G", "E", "F", "S1"});
    chain(Axis::y, "H", {"Q"});
    hand.line("");
  }

  void understand() {
    hand.key(Qt::Key_A, Qt::AltModifier | Qt::ShiftModifier);
    hand.line("s");
  }

  void zeroTop() {
    hand.key(Qt::Key_F7);
    for (const char* id : {"L", "R", "F"}) hand.click(hold(id));
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
    hand.click(holdFront("T"));
    hand.line("");
    hand.click(holdFront("V"));
    callouts.push_back({"1/8 DRILL, 3/4 DEEP", "1/8 DRILL, 3/4 DEEP"});
    hand.line("1/8 DRILL, 3/4 DEEP");
    hand.key(Qt::Key_F6);
    const std::tuple<const char*, const char*, Axis> steps[] = {
        {"L", "V", Axis::x}, {"V", "R", Axis::x}, {"V", "U", Axis::z}, {"U", "T", Axis::z}};
    Id at;
    for (const auto& [from, to, axis] : steps) {
      if (at != from) hand.click(holdFront(from), Qt::ShiftModifier);
      hand.click(holdFront(to));
      hand.type(lettered(from, to, axis));
      at = to;
    }
    hand.line("");
    hand.key(Qt::Key_F7);
    for (const char* id : {"L", "U"}) hand.click(holdFront(id));
    hand.line("");
  }

  std::set<Id> read{"r4", "r13"};  // the overall figures, by which it is squared up
  std::vector<PrintedNote> callouts;
};

TEST_F(ByMouse, FromThePictureToThePrintedSheet) {
  hand.drop(QStringLiteral(INCHWRIGHT_SOURCE_DIR "/samples/prints/front_plate.png"));
  squareUp({asTaken({0, 0}), asTaken({3.875, 0}), asTaken({3.875, 6.25}), asTaken({0, 6.25})},
           "(3 7/8)", "(6 1/4)");
  traceTop();
  readTop();
  understand();
  frontFace();
  hand.key(Qt::Key_1, Qt::ControlModifier | Qt::AltModifier);
  zeroTop();
  printToPdf(18);
  if (const QString folder = qEnvironmentVariable("INCHWRIGHT_PICTURES"); !folder.isEmpty()) {
    hand.window->grab().save(folder + QStringLiteral("/journey.png"));
  }
  expectPlacedAsTheSample();
  // A hand is two pixels off each way, and a line of the print near by draws it over.
  const double bound = 5 / hand.print->map().scale();
  for (const Feature& one : part().features) {
    SCOPED_TRACE(one.id);
    const Feature& same = *wanted.parts[0].feature(one.id);
    EXPECT_EQ(one.traced.size(), same.traced.size());
    for (const Axis axis : kAxes) {
      const auto at = tracedAlong(one, axis), there = tracedAlong(same, axis);
      if (at && there) {
        EXPECT_NEAR(*at, *there, bound) << nameOf(axis);
      }
    }
  }
  ASSERT_EQ(part().readings.size(), wanted.parts[0].readings.size());
  for (const Reading& one : part().readings) {
    const bool same = std::any_of(wanted.parts[0].readings.begin(), wanted.parts[0].readings.end(),
                                  [&](const Reading& as) {
                                    return as.figure == one.figure && as.axis == one.axis &&
                                           as.from == one.from && as.to == one.to;
                                  });
    EXPECT_TRUE(same) << one.from << " to " << one.to << ": " << one.figure.text;
  }
  ASSERT_EQ(part().setups.size(), 2u);
  EXPECT_EQ(part().setups[0].face, Face::front);
  EXPECT_EQ(part().setups[1].face, Face::top);
  expectWithin(limitFor(wanted.parts[0], callouts));
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
  printToPdf(18);
  expectPlacedAsTheSample();
  EXPECT_EQ(hand.clicks, 0);
  std::cout << "journey by keyboard: " << hand.keys << " keys\n";
}

}  // namespace
}  // namespace inchwright::app
