// The way to paper from a photo taken askew, of a print with rounds, a slot, a row, a ring, centre
// distances and an angle.

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QImage>
#include <QPainter>
#include <QPainterPath>
#include <QTemporaryDir>
#include <QTransform>
#include <cmath>

#include "core/lines/lines.h"
#include "tests/app/journey/journey.h"

namespace inchwright::app {
namespace {

constexpr QSizeF kPlate{5, 3};  // inches

/// The cock of a wall clock's hammer, as whoever drew it had it in mind.
constexpr const char* kLines[] = {"edge L left",
                                  "edge R right",
                                  "edge F front",
                                  "edge K back",
                                  "hole A 1/4 ream",
                                  "hole B 1/4 ream",
                                  "hole C 3/16",
                                  "hole D 8-32 tap",
                                  "slot E x 3/16 by 5/8",
                                  "row G x 3 holes pitch 1/2 1/8",
                                  "ring H 4 on 1 from 45 drill 3/32",
                                  "round J R 3/8",
                                  "round M R 3/8",
                                  "round N R 3/8",
                                  "round P R 3/8",
                                  "L R (5)",
                                  "F K 3",
                                  "L A 1",
                                  "x A B 2 1/4",
                                  "centres B C 1 3/8 CRS",
                                  "centres C A 1 1/8 CRS",
                                  "F A 1 1/2",
                                  "angle B D 60 deg",
                                  "x E R 3/4",
                                  "F E 1/2",
                                  "F D 2 3/4",
                                  "x L G1 1/2",
                                  "F G1 3/8",
                                  "in line y A B stated",
                                  "concentric B H stated"};

/// Where each is drawn, inches from the lower left corner.
const std::map<std::string, QPointF> kDrawn{
    {"A", {1, 1.5}},       {"B", {3.25, 1.5}},    {"C", {1.9861, 2.0415}}, {"D", {3.9717, 2.75}},
    {"E", {4.25, 0.5}},    {"G1", {0.5, 0.375}},  {"H", {3.25, 1.5}},      {"J", {0.375, 0.375}},
    {"M", {4.625, 0.375}}, {"N", {4.625, 2.625}}, {"P", {0.375, 2.625}}};

/// Sheet inches to pixels of a photo of twelve megapixels, taken from one side.
QTransform camera() {
  const QPolygonF paper{
      {{0, 0}, {kPlate.width(), 0}, {kPlate.width(), kPlate.height()}, {0, kPlate.height()}}};
  const QPolygonF seen{{{560, 2520}, {3490, 2410}, {3350, 640}, {700, 560}}};
  QTransform map;
  EXPECT_TRUE(QTransform::quadToQuad(paper, seen, map));
  return map;
}

void paintPhoto(const QString& file) {
  QImage photo(4000, 3000, QImage::Format_RGB32);
  photo.fill(QColor(231, 226, 214));
  QPainter painter(&photo);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setTransform(camera());
  QPen ink(QColor(40, 38, 36), 0.02);
  painter.setPen(ink);
  painter.drawRoundedRect(QRectF(QPointF(0, 0), kPlate), 0.375, 0.375);
  const auto circle = [&](QPointF at, double diameter) {
    painter.drawEllipse(at, diameter / 2, diameter / 2);
  };
  circle(kDrawn.at("A"), 0.25);
  circle(kDrawn.at("B"), 0.25);
  circle(kDrawn.at("C"), 0.1875);
  circle(kDrawn.at("D"), 0.164);
  // Centres are marked, as on every print.
  painter.setPen(QPen(ink.color(), 0.008));
  const auto mark = [&](QPointF at) {
    painter.drawLine(at - QPointF(0.22, 0), at + QPointF(0.22, 0));
    painter.drawLine(at - QPointF(0, 0.22), at + QPointF(0, 0.22));
  };
  for (const char* id : {"A", "B", "C", "D", "E", "G1"}) mark(kDrawn.at(id));
  painter.setPen(ink);
  painter.drawRoundedRect(QRectF(kDrawn.at("E") - QPointF(0.3125, 0.09375), QSizeF(0.625, 0.1875)),
                          0.09375, 0.09375);
  for (int i = 0; i < 3; ++i) circle(kDrawn.at("G1") + QPointF(0.5 * i, 0), 0.125);
  for (int i = 0; i < 4; ++i) {
    const double turn = (45 + 90 * i) * M_PI / 180;
    circle(kDrawn.at("H") + 0.5 * QPointF(std::cos(turn), std::sin(turn)), 0.09375);
  }
  painter.end();
  EXPECT_TRUE(photo.save(file, "JPEG", 90));
}

class PhotoJourney : public Journey {
 protected:
  void SetUp() override {
    wanted.name = "Hammer cock";
    for (const char* line : kLines) {
      auto outcome = applyLine(wanted, line, {});
      ASSERT_TRUE(outcome.ok()) << line << ": " << outcome.error().text;
      wanted = std::move(outcome->part);
    }
  }

  QPointF asTaken(QPointF sheet) {
    const QPointF pixel = camera().map(sheet);
    return {pixel.x() / kAsTakenPixelsPerInch, -pixel.y() / kAsTakenPixelsPerInch};
  }

  void holes(std::initializer_list<const char*> ids, std::string_view printed,
             std::string typed = {}) {
    for (const char* id : ids) hand.click(kDrawn.at(id));
    if (typed.empty()) typed = printed;
    hand.type(QString::fromStdString(typed));
    notes.push_back({printed, std::move(typed)});
  }

  QPointF hold(const Id& id) {
    if (id == "L" || id == "R") return {id == "L" ? 0.0 : kPlate.width(), 1.1};
    if (id == "F") return {2.4, 0};
    return kDrawn.at(id);
  }

  /// The first place, and each next one with what is typed there.
  void chain(const char* from, std::initializer_list<std::pair<const char*, const char*>> next) {
    hand.click(hold(from), Qt::ShiftModifier);
    for (const auto& [id, figure] : next) {
      hand.click(hold(id));
      hand.type(QString::fromUtf8(figure));
    }
  }

  Part wanted;
  std::vector<PrintedNote> notes;
};

TEST_F(PhotoJourney, FromThePhotoToThePrintedSheet) {
  QTemporaryDir folder;
  const QString file = folder.filePath(QStringLiteral("Hammer cock.jpg"));
  paintPhoto(file);
  hand.drop(file);
  squareUp({asTaken({0, 0}), asTaken({5, 0}), asTaken({5, 3}), asTaken({0, 3})}, "(5)", "3");
  holes({"A", "B"}, "REAM 1/4 2 HOLES");
  holes({"C"}, "3/16 DRILL");
  holes({"D"}, "TAP 8-32 UNC", "8-32 tap");
  holes({"E"}, "SLOT 3/16 x 5/8");
  holes({"G1"}, "1/8 DRILL 3 HOLES 1/2", "3 x 1/8 at 1/2 pitch");
  holes({"H"}, "3/32 DRILL 4 HOLES ON 1 P.C.D.", "4 x 3/32 on 1 PCD from 45");
  holes({"J", "M", "N", "P"}, "R 3/8 4 CORNERS", "R 3/8");
  hand.line("");
  hand.key(Qt::Key_F6);
  chain("L", {{"A", "1"}, {"B", "2 1/4"}, {"C", "1 3/8 CRS"}, {"A", "1 1/8 CRS"}, {"F", "1 1/2"}});
  chain("B", {{"D", "60 deg"}});
  chain("R", {{"E", "3/4"}, {"F", "1/2"}, {"D", "2 3/4"}});
  chain("L", {{"G1", "1/2"}, {"F", "3/8"}});
  hand.line("");
  hand.key(Qt::Key_A, Qt::AltModifier | Qt::ShiftModifier);
  hand.line("s");
  hand.key(Qt::Key_F7);
  hand.click(hold("L"));
  hand.click(hold("F"));
  hand.line("");
  printToPdf(8);
  if (const QString pictures = qEnvironmentVariable("INCHWRIGHT_PICTURES"); !pictures.isEmpty()) {
    hand.window->grab().save(pictures + QStringLiteral("/photo_journey.png"));
  }
  for (const Feature& one : wanted.features) {
    const Feature* made = part().feature(one.id);
    ASSERT_NE(made, nullptr) << one.id;
    EXPECT_EQ(made->kind(), one.kind()) << one.id;
  }
  ASSERT_EQ(part().features.size(), wanted.features.size());
  ASSERT_EQ(part().readings.size(), wanted.readings.size());
  const auto solved = solve(wanted);
  ASSERT_TRUE(solved.ok());
  EXPECT_GE(expectPlacedAs(*solved, "L", "F", ""), 20);
  expectWithin(limitFor(wanted, notes));
}

// A click that goes on takes nothing that the tracing speaks against.
TEST_F(PhotoJourney, AClickTakesNoFigureThatTheTracingSpeaksAgainst) {
  QTemporaryDir folder;
  const QString file = folder.filePath(QStringLiteral("print.jpg"));
  paintPhoto(file);
  hand.drop(file);
  squareUp({asTaken({0, 0}), asTaken({5, 0}), asTaken({5, 3}), asTaken({0, 3})}, "5", "3");
  holes({"A", "B"}, "1/4 2 HOLES");
  hand.line("");
  const std::size_t before = part().readings.size();
  hand.key(Qt::Key_F6);
  hand.click(hold("L"));
  hand.click(hold("A"));
  hand.type(QStringLiteral("1 1/2"));
  hand.click(hold("B"));
  EXPECT_EQ(part().readings.size(), before);
  ASSERT_EQ(hand.told.size(), 1);
  EXPECT_TRUE(hand.told[0].contains(QStringLiteral("the tracing says about 1")))
      << qPrintable(hand.told[0]);
  EXPECT_EQ(hand.window->work().chosen(), (std::vector<Id>{"L", "A"}));
  // Enter keeps it, marked; the print may be wrong, or not to scale.
  hand.line("");
  EXPECT_EQ(part().readings.size(), before + 1);
}

TEST_F(PhotoJourney, HowManyThereAreIsHeldAgainstHowManyArePointedAt) {
  QTemporaryDir folder;
  const QString file = folder.filePath(QStringLiteral("print.jpg"));
  paintPhoto(file);
  hand.drop(file);
  squareUp({asTaken({0, 0}), asTaken({5, 0}), asTaken({5, 3}), asTaken({0, 3})}, "5", "3");
  holes({"A", "B", "C"}, "1/4 REAM 2 HOLES");
  hand.click(hold("D"));
  EXPECT_EQ(part().features.size(), 4u);
  ASSERT_EQ(hand.told.size(), 1);
  EXPECT_TRUE(hand.told[0].contains(QStringLiteral("3 places are pointed at")))
      << qPrintable(hand.told[0]);
  // One step back takes the last of them away, and then they agree.
  hand.key(Qt::Key_Escape);
  hand.key(Qt::Key_Escape);
  hand.line("1/4 REAM 2 HOLES");
  EXPECT_EQ(part().features.size(), 6u);
}

}  // namespace
}  // namespace inchwright::app
