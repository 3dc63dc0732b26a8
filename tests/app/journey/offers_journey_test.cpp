// From a print that is squared up to all its places and readings, confirmed as the print offers
// them by somebody who reads it: every click, key and character counted, beside what the same takes
// without offers. And a hand that presses nothing but Enter, which may get nothing wrong in.

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <iostream>
#include <set>

#include "app/session/picture_edits.h"
#include "core/document/document.h"
#include "core/part/edit.h"
#include "tests/app/journey/hand.h"
#include "tests/seen/print.h"

namespace inchwright::app {
namespace {

using seen::FeatureOffer;
using seen::OfferedFeature;
using seen::OfferedReading;
using seen::Put;
using seen::ReadingOffer;

constexpr double kThere = 0.06;  // inches, within which somebody sees that two things are one
const char* const kReadingKinds[] = {"x", "y", "centres", "angle"};

/// What is drawn and lettered on a print.
struct Truth {
  struct Place {
    OfferedFeature kind = OfferedFeature::hole;
    bool alongX = false;
    PlanePoint at;
  };
  struct Figure {
    std::string kind;
    PlanePoint from;
    PlanePoint to;
    std::string text;
    std::int64_t ticks = 0;
  };

  std::vector<Place> places;
  std::vector<Figure> figures;
  Face face = Face::top;

  /// A click and Enter a place; two clicks, the figure and Enter a reading.
  int actionsByHand() const {
    int all = 2 * static_cast<int>(places.size());
    for (const Figure& one : figures) all += 3 + static_cast<int>(typed(one).size());
    return all;
  }

  static QString typed(const Figure& one) { return QString::fromStdString(one.text); }

  bool isDrawn(const FeatureOffer& f) const {
    if (f.kind != OfferedFeature::ring) return drawn(f) != nullptr;
    return f.count == std::count_if(places.begin(), places.end(), [&](const Place& one) {
             return isOn(one, f.at, f.drawnRadius);
           });
  }

  /// Whether one is a hole on a pitch circle.
  static bool isOn(const Place& one, PlanePoint middle, double radius) {
    return one.kind == OfferedFeature::hole &&
           std::abs(std::hypot(one.at.x - middle.x, one.at.y - middle.y) - radius) < kThere;
  }

  const Place* drawn(const FeatureOffer& f) const {
    for (const Place& one : places) {
      if (one.kind != f.kind) continue;
      const bool edge = one.kind == OfferedFeature::edge;
      const double dx = one.at.x - f.at.x, dy = one.at.y - f.at.y;
      if (edge && one.alongX != f.alongX) continue;
      if (edge ? std::abs(f.alongX ? dx : dy) < kThere : std::hypot(dx, dy) < kThere) return &one;
    }
    return nullptr;
  }

  const Figure* lettered(const ReadingOffer& r) const {
    const Figure* found = nullptr;
    for (const Figure& one : figures) {
      if (one.kind != kReadingKinds[static_cast<int>(r.kind)]) continue;
      const bool x = one.kind == "x", y = one.kind == "y";
      const auto off = [&](PlanePoint a, PlanePoint b) {
        return x ? std::abs(a.x - b.x) : y ? std::abs(a.y - b.y) : std::hypot(a.x - b.x, a.y - b.y);
      };
      if (off(one.from, r.from) > kThere || off(one.to, r.to) > kThere) continue;
      // Of two between the same lines, the one that stands there.
      const auto aside = [&](const Figure& f) {
        return x ? std::abs(f.from.y - r.from.y) : y ? std::abs(f.from.x - r.from.x) : 0;
      };
      if (found == nullptr || aside(one) < aside(*found)) found = &one;
    }
    return found;
  }
};

/// Somebody who goes through the offers and reads the print.
class Reader {
 public:
  Reader(Hand& hand, const Truth& truth) : hand_(hand), truth_(truth) {
    for (const Reading& one : hand.window->desk().part().readings) before_.insert(one.id);
  }

  int enters = 0, choices = 0, typed = 0, dropped = 0, named = 0, pointed = 0, byHand = 0;

  /// All that is offered, and then by hand what was not. Returns what it took.
  int readAll() {
    const int before = hand_.count();
    hand_.key(Qt::Key_G, Qt::ControlModifier);
    EXPECT_TRUE(QTest::qWaitFor([&] { return work().doing() == Doing::offering; }, 60'000));
    for (int i = 0; i < 400 && work().doing() == Doing::offering; ++i) {
      hand_.reads();
      const auto lit = offered().lit();
      if (offered().feature() != nullptr) {
        answer(*offered().feature());
      } else {
        answer(*offered().reading());
      }
      EXPECT_TRUE(work().doing() != Doing::offering || offered().lit() != lit)
          << work().prompt().toStdString() << ' ' << hand_.told.join(u'|').toStdString();
      if (testing::Test::HasFailure()) break;
    }
    return hand_.count() - before + theRest();
  }

 private:
  Work& work() { return hand_.window->work(); }
  const seen::Offered& offered() { return work().offering()->offered; }

  void answer(const FeatureOffer& f) {
    if (!truth_.isDrawn(f)) return drop();
    if (!work().offer().isEmpty()) return take();
    ++named;
    hand_.line(nameFor(f).c_str());
  }

  std::string nameFor(const FeatureOffer& f) {
    const std::string id = nextFeatureId(hand_.window->desk().part());
    return f.kind == OfferedFeature::edge ? id + (f.alongX ? " x" : " y") : id;
  }

  void answer(const ReadingOffer& r) {
    const Truth::Figure* meant = truth_.lettered(r);
    if (meant == nullptr) return drop();
    if (work().prompt().contains(QStringLiteral("point at the place"))) {
      ++pointed;
      return drop();
    }
    const seen::PutReading put = offered().put();
    if (work().offer() == Truth::typed(*meant)) return take();
    for (std::size_t i = 0; put.how == Put::choice && i < put.choices.size(); ++i) {
      if (put.choices[i] != meant->text) continue;
      ++choices;
      return hand_.key(static_cast<Qt::Key>(Qt::Key_1 + static_cast<int>(i)), Qt::AltModifier);
    }
    EXPECT_TRUE(work().offer().isEmpty())
        << "ready: " << work().offer().toStdString() << ", lettered: " << meant->text;
    ++typed;
    hand_.line(meant->text.c_str());
  }

  void take() {
    ++enters;
    hand_.key(Qt::Key_Return);
  }

  void drop() {
    ++dropped;
    hand_.key(Qt::Key_Escape);
  }

  /// What it takes to put in by hand what is not there yet.
  int theRest() {
    const Part& part = hand_.window->desk().part();
    const auto axes = axesIn(truth_.face);
    Truth rest;
    for (const Truth::Place& one : truth_.places) {
      const bool there =
          std::any_of(part.features.begin(), part.features.end(), [&](const Feature& f) {
            const auto x = tracedAlong(f, axes[0]), y = tracedAlong(f, axes[1]);
            if (const auto* ring = f.as<kind::Ring>()) {
              return ring->pitchDiameter && x && y &&
                     Truth::isOn(one, {*x, *y}, ring->pitchDiameter->value.toInches() / 2);
            }
            if (one.kind == OfferedFeature::edge) {
              const auto& along = one.alongX ? x : y;
              return f.is<kind::Edge>() && along &&
                     std::abs(*along - (one.alongX ? one.at.x : one.at.y)) < kThere;
            }
            return x && y && std::hypot(*x - one.at.x, *y - one.at.y) < kThere;
          });
      if (!there) rest.places.push_back(one);
    }
    std::multiset<std::int64_t> read;
    for (const Reading& one : part.readings) {
      if (!before_.count(one.id)) read.insert(one.figure.value.ticks());
    }
    for (const Truth::Figure& one : truth_.figures) {
      const auto found = read.find(one.ticks);
      if (found == read.end()) {
        rest.figures.push_back(one);
      } else {
        read.erase(found);
      }
    }
    EXPECT_TRUE(read.empty()) << "something is read that is not lettered";
    byHand = rest.actionsByHand();
    return byHand;
  }

  Hand& hand_;
  const Truth& truth_;
  std::set<Id> before_;  // read on another view
};

void tell(const char* print, const Truth& truth, const Reader& reader, int actions) {
  std::cout << print << ": " << truth.places.size() << " places, " << truth.figures.size()
            << " readings: " << actions << " actions where " << truth.actionsByHand()
            << " are needed by hand (Enter " << reader.enters << ", chosen " << reader.choices
            << ", typed " << reader.typed << ", places named " << reader.named << ", dropped "
            << reader.dropped << ", not found and put in by hand " << reader.byHand << ")\n";
}

/// A face of the front plate, as its sample says it; holes of ring and row one by one.
Truth frontPlate(Face face, const std::string& view) {
  const auto sample = loadDocument(INCHWRIGHT_SOURCE_DIR "/samples/front_plate.inchwright");
  EXPECT_TRUE(sample.ok());
  const Part& part = sample->parts[0];
  const auto solved = solve(part);
  EXPECT_TRUE(solved.ok());
  Truth truth;
  truth.face = face;
  const auto axes = axesIn(face);
  const char* const zero[] = {"L", face == Face::top ? "F" : "U"};
  const auto at = [&](const Id& id, int axis) {
    const auto away = solved->between(zero[axis], id, axes[axis]);
    return away ? away->toDouble() / Length::kTicksPerInch : 0;
  };
  for (const Feature& f : part.features) {
    if (const auto* edge = f.as<kind::Edge>()) {
      for (const int axis : {0, 1}) {
        if (edge->axis != axes[axis]) continue;
        const double there = at(f.id, axis);
        truth.places.push_back(
            {OfferedFeature::edge, axis == 0, {axis == 0 ? there : 0, axis == 1 ? there : 0}});
      }
    } else if (f.is<kind::Hole>() && f.face == face) {
      truth.places.push_back({OfferedFeature::hole, false, {at(f.id, 0), at(f.id, 1)}});
    }
  }
  const auto figure = [&](const Id& from, const Id& to, Axis along, const Lettered& lettered) {
    const int axis = along == axes[0] ? 0 : 1;
    const auto end = [&](const Id& id) {
      const double there = at(id, axis);
      return PlanePoint{axis == 0 ? there : 0, axis == 1 ? there : 0};
    };
    truth.figures.push_back(
        {axis == 0 ? "x" : "y", end(from), end(to), lettered.text, lettered.value.ticks()});
  };
  for (const Reading& r : part.readings) {
    if (r.view == view) figure(r.from, r.to, r.axis, r.figure);
  }
  if (face != Face::top) return truth;
  for (const char* id : {"M1", "M2", "M3", "S1", "S2", "S3", "S4"}) {
    truth.places.push_back({OfferedFeature::hole, false, {at(id, 0), at(id, 1)}});
  }
  // The row's pitch, lettered between its first two.
  figure("S1", "S2", Axis::x, *readLength("5/8", {Unit::inch}));
  return truth;
}

/// The scan of the front plate as it was taken: a place of the plan, in inches at 100 pixels each.
QPointF onScan(QPointF plan) {
  return {(475 + 190 * plan.x()) / 100, -(1463 - 190 * plan.y()) / 100};
}

void squareUpFrontPlate(Hand& hand) {
  hand.drop(QStringLiteral(INCHWRIGHT_SOURCE_DIR "/samples/prints/front_plate.png"));
  hand.waitForPicture();
  hand.click(onScan({0, 0}));
  hand.line("");
  hand.click(onScan({3.875, 0}));
  hand.line("3 7/8");
  hand.click(onScan({3.875, 6.25}));
  hand.line("6 1/4");
  hand.click(onScan({0, 6.25}));
  hand.line("");
  hand.waitForPicture();
  ASSERT_TRUE(QTest::qWaitFor([&] { return hand.window->work().offering() != nullptr; }, 60'000));
}

TEST(OffersJourney, AHurriedHandAtTheFrontPlateTakesNothingWrong) {
  const Truth truth = frontPlate(Face::top, {});
  Hand hand;
  squareUpFrontPlate(hand);
  Work& work = hand.window->work();
  // Nothing of it begins by itself, and nothing is in the document: the four sides are asked for.
  EXPECT_EQ(work.doing(), Doing::tracing);
  EXPECT_TRUE(hand.window->desk().part().features.empty());
  const int before = hand.count();
  hand.key(Qt::Key_G, Qt::ControlModifier);
  ASSERT_EQ(work.doing(), Doing::offering);
  // Enter, whatever stands there; what is not ready is dropped.
  int dropped = 0;
  for (int i = 0; i < 400 && work.doing() == Doing::offering; ++i) {
    hand.reads();
    const Part untouched = hand.window->desk().part();
    hand.key(Qt::Key_Return);
    if (!(hand.window->desk().part() == untouched)) continue;
    ++dropped;
    hand.key(Qt::Key_Escape);
  }
  const Part& part = hand.window->desk().part();
  std::set<std::int64_t> lettered;
  for (const Truth::Figure& one : truth.figures) lettered.insert(one.ticks);
  for (const Reading& one : part.readings) {
    EXPECT_EQ(one.offered.rfind("G S", 0), 0u) << one.figure.text;
    EXPECT_TRUE(lettered.count(one.figure.value.ticks()) > 0) << one.figure.text;
  }
  for (const Feature& one : part.features) {
    FeatureOffer as;
    as.kind = one.is<kind::Edge>() ? OfferedFeature::edge : OfferedFeature::hole;
    const auto x = tracedAlong(one, Axis::x), y = tracedAlong(one, Axis::y);
    as.alongX = x.has_value();
    as.at = {x.value_or(0), y.value_or(0)};
    EXPECT_NE(truth.drawn(as), nullptr) << "there is no " << one.id;
  }
  EXPECT_TRUE(hand.window->desk().solution().clashes.empty());
  EXPECT_GE(part.features.size(), 8u);
  EXPECT_GE(part.readings.size(), 18u);
  std::cout << "Enter alone at the front plate: " << part.features.size() << " places and "
            << part.readings.size() << " readings by " << hand.count() - before << " keys; "
            << dropped << " were not ready\n";
}

TEST(OffersJourney, ReadsTheFrontPlate) {
  const Truth truth = frontPlate(Face::top, {});
  Hand hand;
  squareUpFrontPlate(hand);
  Reader reader(hand, truth);
  const int actions = reader.readAll();
  tell("front plate, top", truth, reader, actions);
  EXPECT_LE(actions, 45);
  // The edge seen from the front is another view of the same print.
  const Truth front = frontPlate(Face::front, "front edge");
  hand.key(Qt::Key_3, Qt::ControlModifier | Qt::AltModifier);
  hand.click({0, -2.02});
  Reader more(hand, front);
  const int others = more.readAll();
  tell("front plate, front", front, more, others);
  EXPECT_LT(others, front.actionsByHand());
}

/// The print of a manner and a number, drawn into a folder; without a picture where it can't be.
Truth drawnPrint(const QString& folder, const char* manner, int seed, Job& job) {
  const std::string call = std::string(INCHWRIGHT_SOURCE_DIR "/tests/seen/draw_prints ") +
                           folder.toStdString() + " --manner " + manner + " --seeds " +
                           std::to_string(seed) + " > /dev/null 2>&1";
  if (std::system(call.c_str()) != 0) return {};
  char name[16];
  std::snprintf(name, sizeof name, "%04d", seed);
  const seen::DrawnPrint print = seen::readPrint((folder + u'/').toStdString() + name);
  const QImage image(print.bytes.data(), print.picture.width, print.picture.height,
                     print.picture.width, QImage::Format_Grayscale8);
  image.save(folder + QStringLiteral("/print.png"));
  QFile file(folder + QStringLiteral("/print.png"));
  EXPECT_TRUE(file.open(QIODevice::ReadOnly));
  job.parts.emplace_back();
  job.parts[0].name = "Plate";
  job.unit = print.unit();
  const auto laid = layPicture(job, 0, Face::top, QStringLiteral("print"), file.readAll());
  EXPECT_TRUE(laid.ok());
  std::vector<SquaringPoint> points;
  for (const auto& p : print.truth["points"]) {
    const auto inches = [&](int i) {
      return *readLength(QString::number(p[i].get<double>(), 'f', 6).toStdString(), {Unit::inch});
    };
    points.push_back({p[2], p[3], inches(0), inches(1)});
  }
  job = *setPicturePoints(*laid, "print", points);
  Truth truth;
  const auto point = [](const nlohmann::json& p) { return PlanePoint{p[0], p[1]}; };
  for (const auto& f : print.truth["features"]) {
    if (f["kind"] == "hole") {
      truth.places.push_back({OfferedFeature::hole, false, point(f["at"])});
    } else if (f["kind"] == "edge") {
      truth.places.push_back({OfferedFeature::edge, f["axis"] == "x", point(f["from"])});
    }
  }
  for (const auto& r : print.truth["readings"]) {
    truth.figures.push_back({r["kind"], point(r["from"]), point(r["to"]), r["text"], r["ticks"]});
  }
  return truth;
}

TEST(OffersJourney, ReadsGeneratedPrints) {
  const QString more = qEnvironmentVariable("INCHWRIGHT_PRINTS");  // how many of each manner
  const int prints = more.isEmpty() ? 1 : more.toInt();
  int all = 0, byHand = 0, count = 0;
  for (const char* manner : {"scan", "phone"}) {
    for (int seed = 800'000; seed < 800'000 + prints; ++seed) {
      QTemporaryDir folder;
      Job job;
      const Truth truth = drawnPrint(folder.path(), manner, seed, job);
      if (truth.figures.empty()) GTEST_SKIP() << "the generator of prints needs Python's packages";
      Hand hand;
      hand.window->desk().take(job, {});
      hand.waitForPicture();
      Reader reader(hand, truth);
      const int actions = reader.readAll();
      tell((manner + std::string(" ") + std::to_string(seed)).c_str(), truth, reader, actions);
      EXPECT_LT(actions, truth.actionsByHand());
      all += actions;
      byHand += truth.actionsByHand();
      ++count;
    }
  }
  std::cout << count << " generated prints: " << all / count << " actions each where "
            << byHand / count << " are needed by hand\n";
}

}  // namespace
}  // namespace inchwright::app
