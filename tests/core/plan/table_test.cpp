#include "core/plan/table.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <random>

#include "tests/core/plan/said.h"

namespace inchwright {
namespace {

using namespace plates;

SetupTable tableOf(const Plate& plate, const Setup& setup, const Job& job = jobWith(),
                   const TableOptions& options = {}) {
  const Result<SetupTable> table = makeTable(job, plate.part, plate.solution, setup, options);
  EXPECT_TRUE(table.ok()) << table.error().text;
  return table.ok() ? *table : SetupTable();
}

const TableRow& row(const SetupTable& table, std::string_view id) {
  for (const TableRow& one : table.rows) {
    if (one.id == id) return one;
  }
  ADD_FAILURE() << "no row " << id;
  static const TableRow kNone;
  return kNone;
}

std::vector<std::string> idsOf(const SetupTable& table) {
  std::vector<std::string> ids;
  for (const TableRow& one : table.rows) ids.push_back(one.id);
  return ids;
}

TEST(Table, ShowsCoordinatesFromZero) {
  Plate plate = block();
  plate.hole("A", 56, 32, "1/4", Make::ream);  // 3/8 and 3/4 from the corner at 32, −16
  const SetupTable table = tableOf(plate, lowerCorner());
  const TableRow& a = row(table, "A");
  EXPECT_EQ(a.x.text, "0.3750");
  EXPECT_EQ(a.y.text, "0.7500");
  EXPECT_EQ(signedText(a.x), "+0.3750");
  EXPECT_EQ(a.xFraction, "3/8");
  EXPECT_EQ(a.yFraction, "3/4");
  EXPECT_EQ(a.x.value.ticks(), 24 * kSixtyFourth);
  EXPECT_TRUE(a.x.exact);
  const SaidTable said = saidOf(plate, lowerCorner());
  EXPECT_TRUE(said.row("A").note.empty()) << said.row("A").note;
  EXPECT_EQ(said.row("A").size, "Ø1/4 ream, through");
  EXPECT_EQ(said.words.zero, "X0 at L · Y0 at F");
  EXPECT_TRUE(table.warnings.empty());
}

TEST(Table, SignsFollowTheReadout) {
  Plate plate = block();
  plate.hole("A", 56, 32, "1/4");
  const SetupTable table = tableOf(plate, lowerCorner(), jobWith(CountsX::left, CountsY::towards));
  EXPECT_EQ(row(table, "A").x.text, "-0.3750");
  EXPECT_EQ(signedText(row(table, "A").y), "-0.7500");
  EXPECT_EQ(row(table, "A").xFraction, "3/8");  // a distance: the sign stands in the figure
}

// The same hole by an independent model: part vector less zero, by the machine's unit vectors.
TEST(Table, AgreesWithAMatrixModelForEveryFaceTurnAndCount) {
  struct View {
    Face face;
    int x[3], y[3];
  };
  constexpr View kViews[] = {
      {Face::top, {1, 0, 0}, {0, 1, 0}},   {Face::bottom, {1, 0, 0}, {0, -1, 0}},
      {Face::front, {1, 0, 0}, {0, 0, 1}}, {Face::back, {-1, 0, 0}, {0, 0, 1}},
      {Face::left, {0, -1, 0}, {0, 0, 1}}, {Face::right, {0, 1, 0}, {0, 0, 1}}};
  constexpr int kCos[] = {1, 0, -1, 0}, kSin[] = {0, 1, 0, -1};
  const int hole[] = {72, 20, 30}, zero[] = {32, -16, 8};  // the block's L, F and U
  for (const View& view : kViews) {
    for (int quarter = 0; quarter < 4; ++quarter) {
      for (int counts = 0; counts < 4; ++counts) {
        const auto axes = axesIn(view.face);
        Plate plate = block();
        plate.hole("A", hole[static_cast<int>(axes[0])], hole[static_cast<int>(axes[1])], "1/4",
                   Make::drill, view.face);
        int flatX = 0, flatY = 0;
        for (int i = 0; i < 3; ++i) {
          flatX += view.x[i] * (hole[i] - zero[i]);
          flatY += view.y[i] * (hole[i] - zero[i]);
        }
        const int x = kCos[quarter] * flatX - kSin[quarter] * flatY;
        const int y = kSin[quarter] * flatX + kCos[quarter] * flatY;
        const int right = counts % 2 ? -1 : 1, away = counts / 2 ? -1 : 1;
        const auto setup =
            setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::y, "F"), zeroAt(Axis::z, "U")}, view.face,
                      90 * quarter);
        const SetupTable table = tableOf(plate, setup,
                                         jobWith(right > 0 ? CountsX::right : CountsX::left,
                                                 away > 0 ? CountsY::away : CountsY::towards));
        EXPECT_EQ(row(table, "A").x.value.ticks(), right * x * kSixtyFourth)
            << nameOf(view.face) << quarter << counts;
        EXPECT_EQ(row(table, "A").y.value.ticks(), away * y * kSixtyFourth)
            << nameOf(view.face) << quarter << counts;
      }
    }
  }
}

TEST(Table, ACrossHoleComesOutInItsOwnEdge) {
  Plate plate = block();
  plate.hole("A", 56, 32, "1/4").hole("E", 64, 40, "1/8", Make::drill, Face::front);
  EXPECT_EQ(idsOf(tableOf(plate, lowerCorner())), std::vector<std::string>{"A"});
  const SetupTable front =
      tableOf(plate, setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::z, "U")}, Face::front));
  ASSERT_EQ(idsOf(front), std::vector<std::string>{"E"});
  EXPECT_EQ(front.rows[0].x.text, "0.5000");
  EXPECT_EQ(front.rows[0].y.text, "0.5000");
  EXPECT_EQ(zeroLine(front, English::uk), "X0 at L · Y0 at U");
}

// Whatever zero is taken, distances between holes stay, and zero taken back gives the same table.
TEST(Table, ZeroMovedAndMovedBackIsWhereItWas) {
  constexpr unsigned kSeed = 31;
  SCOPED_TRACE(kSeed);
  std::mt19937 random(kSeed);
  for (int round = 0; round < 50; ++round) {
    Plate plate = block();
    for (int i = 0; i < 6; ++i) {
      plate.hole("H" + std::to_string(i), 32 + static_cast<int>(random() % 128),
                 static_cast<int>(random() % 90) - 16, "1/4");
    }
    const SetupTable corner = tableOf(plate, lowerCorner());
    auto there = setupWith({zeroAt(Axis::x, "H3"), zeroMiddle(Axis::y, "F", "K")});
    there.zero[0].offset = figure(std::to_string(1 + random() % 15) + "/16");
    const SetupTable moved = tableOf(plate, there);
    const std::int64_t dx = row(moved, "H0").x.value.ticks() - row(corner, "H0").x.value.ticks();
    const std::int64_t dy = row(moved, "H0").y.value.ticks() - row(corner, "H0").y.value.ticks();
    for (const TableRow& one : corner.rows) {
      EXPECT_EQ(row(moved, one.id).x.value.ticks() - dx, one.x.value.ticks());
      EXPECT_EQ(row(moved, one.id).y.value.ticks() - dy, one.y.value.ticks());
    }
    EXPECT_EQ(tableOf(plate, lowerCorner()), corner);
  }
}

TEST(Table, TurnedHalfRoundEveryFigureChangesItsSignOnly) {
  Plate plate = block();
  plate.hole("A", 57, 33, "1/4").hole("B", 99, 3, "1/4");
  for (const Unit unit : {Unit::inch, Unit::millimetre}) {
    const TableOptions options{unit, unit == Unit::inch ? "0.01" : "0.1"};
    const SetupTable flat = tableOf(plate, lowerCorner(), jobWith(), options);
    auto half = lowerCorner();
    half.turn = 180;
    const SetupTable turned = tableOf(plate, half, jobWith(), options);
    for (const TableRow& one : flat.rows) {
      // Ties are rounded away from zero, so mirrored figures stay mirrored.
      EXPECT_EQ("-" + one.x.text, row(turned, one.id).x.text);
      EXPECT_EQ("-" + one.y.text, row(turned, one.id).y.text);
    }
  }
}

TEST(Table, WarnsOfUnequalStock) {
  auto setup = setupWith({zeroMiddle(Axis::x, "L", "R", true), zeroMiddle(Axis::y, "F", "K")});
  leaveOn(setup, Side::left, "1/16");
  leaveOn(setup, Side::right, "1/8");
  leaveOn(setup, Side::back, "1/16");
  const auto [table, words] = saidOf(block(), setup);
  ASSERT_EQ(words.warnings.size(), 2u);
  EXPECT_EQ(words.warnings[0],
            "the middle of the stock is not the middle of the part along X: 1/32 apart; X0 is the "
            "middle of the stock");
  EXPECT_EQ(words.warnings[1],
            "the middle of the stock is not the middle of the part along Y: 1/32 apart; Y0 is the "
            "middle of the finished part");
  EXPECT_EQ(words.zero, "X0 middle of L–R (stock) · Y0 middle of F–K");
  for (const EdgeRow& edge : table.edges) {
    if (edge.id == "L") {
      EXPECT_EQ(edge.value.text, "-1.0315");  // −1 − 1/32
    }
    if (edge.id == "R") {
      EXPECT_EQ(edge.stock->value.ticks(), 8 * kSixtyFourth);
    }
  }
}

TEST(Table, ListsEveryEdgeOfItsTwoAxes) {
  Plate plate = block();
  plate.edge("S", Axis::x, 64);
  const SetupTable table = tableOf(plate, lowerCorner());
  std::vector<std::string> ids;
  for (const EdgeRow& edge : table.edges) ids.push_back(edge.id + "=" + edge.value.text);
  EXPECT_EQ(ids,
            (std::vector<std::string>{"L=0.0000", "S=0.5000", "R=2.0000", "F=0.0000", "K=1.5000"}));
}

TEST(Table, OrdersByToolsThenTravel) {
  Plate plate = block();
  plate.hole("T1", 40, 0, "", Make::tap);
  plate.last().drilled()->thread = "#8-32";
  plate.hole("A", 150, 60, "1/4", Make::ream).hole("B", 40, 60, "3/16").hole("C", 150, 0, "3/16");
  plate.hole("D", 40, 0, "1/8").hole("E", 100, 30, "1/4", Make::bore);
  const SetupTable table = tableOf(plate, lowerCorner());
  EXPECT_EQ(idsOf(table), (std::vector<std::string>{"D", "B", "C", "E", "A", "T1"}));
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const int expected[] = {0, 1, 1, 2, 3, 4};
    EXPECT_EQ(table.rows[i].group, expected[i]);
  }
}

TEST(Table, DoesNotDependOnTheOrderOfFeatures) {
  constexpr unsigned kSeed = 5;
  SCOPED_TRACE(kSeed);
  std::mt19937 random(kSeed);
  Plate plate = block();
  for (int i = 0; i < 20; ++i) {
    plate.hole("H" + std::to_string(i), 32 + static_cast<int>(random() % 12) * 8,
               static_cast<int>(random() % 9) * 8, i % 3 ? "1/4" : "3/16");
  }
  const SetupTable once = tableOf(plate, lowerCorner());
  for (int round = 0; round < 10; ++round) {
    std::shuffle(plate.part.features.begin(), plate.part.features.end(), random);
    EXPECT_EQ(tableOf(plate, lowerCorner()), once);
  }
}

// What a place that no chain leads to is off by, or one lettered finer than the readout counts, is
// not seen in the figures: nor may it be in the order of the rows, where many ways are as short.
TEST(Table, FiguresThatLookEqualComeInTheSameOrder) {
  constexpr unsigned kSeed = 17;
  SCOPED_TRACE(kSeed);
  std::mt19937 random(kSeed);
  Plate plate = block();
  for (int i = 0; i < 20; ++i) {
    plate.hole("H" + std::to_string(i), 48 + i % 5 * 16, i / 5 * 16, "1/4");
  }
  const std::vector<std::string> once = idsOf(tableOf(plate, lowerCorner()));
  for (int round = 0; round < 20; ++round) {
    Plate strayed = plate;
    for (int i = 0; i < 20; ++i) {
      const Id id = "H" + std::to_string(i);
      for (const Axis axis : {Axis::x, Axis::y}) {
        // Within half a step of .0005 in.
        const Rational stray(static_cast<std::int64_t>(random() % 1'200'001) - 600'000);
        strayed.putTicks(id, axis, *plate.at(id, axis).ticks.plus(stray));
      }
    }
    ASSERT_EQ(idsOf(tableOf(strayed, lowerCorner())), once) << round;
  }
}

TEST(Table, DrivesToTheHolesOfARingAndTheEndsOfASlot) {
  Plate plate = block();
  plate.feature("G", FeatureKind::ring, 96, 32);
  plate.last().as<kind::Ring>()->holes = 2;
  plate.last().drilled()->diameter = figure("1/8");
  plate.put("G1", Axis::x, 112).put("G1", Axis::y, 32);
  plate.putTicks("G2", Axis::x, Rational(3'174'999'999)).put("G2", Axis::y, 32);
  plate.at("G2", Axis::x).how = How::rounded;
  plate.feature("S", FeatureKind::slot, 64, 16);
  plate.last().as<kind::Slot>()->width = figure("1/4");
  plate.last().as<kind::Slot>()->length = figure("1");
  plate.put("S1", Axis::x, 48).put("S1", Axis::y, 16).put("S2", Axis::x, 80).put("S2", Axis::y, 16);
  plate.feature("P", FeatureKind::point, 40, 0);
  const SetupTable table = tableOf(plate, lowerCorner());
  EXPECT_EQ(idsOf(table), (std::vector<std::string>{"P", "G2", "G1", "S1", "S2"}));
  EXPECT_EQ(row(table, "G2").feature, "G");
  EXPECT_FALSE(row(table, "G2").x.exact);
  EXPECT_EQ(row(table, "G2").xFraction, "");
  const SaidTable said = saidOf(plate, lowerCorner());
  EXPECT_EQ(said.row("G2").note, "no exact figure: rounded");
  EXPECT_EQ(said.row("S1").size, "slot 1/4 wide, 1 long, through");
  EXPECT_EQ(row(table, "P").plan->steps.at(0).op, Op::mark);
}

TEST(Table, NotesWhatARowRestsOn) {
  Plate plate = block();
  plate.hole("A", 64, 32, "1/4").hole("B", 96, 32, "1/4").hole("C", 128, 32, "1/4");
  plate.part.features[6].drilled()->locate = Locate::mate;
  plate.part.features[6].note = "with the clutch fitted";
  plate.at("B", Axis::y).disputed = true;
  plate.at("C", Axis::y).assumed = true;
  const SaidTable said = saidOf(plate, lowerCorner());
  EXPECT_EQ(said.row("A").note,
            "spotted through its mate: not by these coordinates; with the clutch fitted");
  EXPECT_TRUE(row(said.table, "B").disputed);
  EXPECT_EQ(said.row("B").note, "a loop it lies on does not close");
  EXPECT_EQ(said.row("C").note, "its place rests on an assumption");
}

TEST(Table, NotesHowAHoleIsLocated) {
  struct Located {
    Locate locate;
    const char* note;
  };
  for (const auto& [locate, note] :
       {Located{Locate::coordinate, ""},
        {Locate::mate, "spotted through its mate: not by these coordinates"},
        {Locate::pair, "clamped to its mate and drilled once by this sheet, through both"},
        {Locate::assembly, "drilled on assembly: not by these coordinates"},
        {Locate::suit, "its size waits for what is measured"}}) {
    Plate plate = block();
    plate.hole("A", 64, 32, "1/4");
    plate.last().drilled()->locate = locate;
    EXPECT_EQ(saidOf(plate, lowerCorner()).row("A").note, note);
  }
}

TEST(Table, SaysWhichWayTheReadoutsCount) {
  const auto counts = [](CountsX x, CountsY y, English english) {
    return countsWords(tableOf(block(), lowerCorner(), jobWith(x, y)), english);
  };
  EXPECT_EQ(counts(CountsX::right, CountsY::away, English::uk),
            "X counts up to the right, Y counts up away from you");
  EXPECT_EQ(counts(CountsX::left, CountsY::away, English::uk),
            "X counts up to the left, Y counts up away from you");
  EXPECT_EQ(counts(CountsX::right, CountsY::towards, English::uk),
            "X counts up to the right, Y counts up towards you");
  EXPECT_EQ(counts(CountsX::left, CountsY::towards, English::us),
            "X counts up to the left, Y counts up toward you");
}

TEST(Table, ADisputedZeroDisputesEveryRow) {
  Plate plate = block();
  plate.hole("A", 64, 32, "1/4");
  plate.at("L", Axis::x).disputed = true;
  const auto [table, words] = saidOf(plate, lowerCorner());
  EXPECT_TRUE(row(table, "A").disputed);
  EXPECT_EQ(words.warnings.at(0), "X0 rests on a figure in dispute, and every X with it");
}

TEST(Table, TellsUnplacedPlaces) {
  Plate plate = block();
  plate.hole("A", 64, 32, "1/4").hole("B", 64, 32, "1/4");
  plate.at("A", Axis::y).group = 2;
  Positions::Along along = plate.solution.positions.along(Axis::x);
  const auto b = std::find(along.places.begin(), along.places.end(), "B");
  along.positions.erase(along.positions.begin() + (b - along.places.begin()));
  along.places.erase(b);
  plate.solution.positions.set(Axis::x, std::move(along));
  plate.solution.loose.push_back({"A", Axis::y, Loose::Lacks::distance, {}, "F"});
  const SetupTable table = tableOf(plate, lowerCorner());
  EXPECT_TRUE(table.rows.empty());
  ASSERT_EQ(table.unplaced.size(), 2u);
  EXPECT_EQ(table.unplaced[0], plate.solution.loose[0]);
  EXPECT_EQ(table.unplaced[1], (Loose{"B", Axis::x, Loose::Lacks::anything}));
}

TEST(Table, TakesACustomaryZeroAndSaysSo) {
  Plate plate = block();
  plate.hole("A", 64, 32, "1/4");
  const auto [table, words] = saidOf(plate, setupWith({}));
  EXPECT_EQ(row(table, "A").x.text, "0.5000");
  EXPECT_EQ(words.warnings.at(0), "the setup gives no X0: it is taken at L");
  const auto standard = defaultSetup(plate.part, plate.solution);
  EXPECT_TRUE(tableOf(plate, standard).warnings.empty());
  EXPECT_EQ(tableOf(plate, standard).rows, table.rows);
}

// Tips from 1/16 to 3/4 in are made; another has its point in the wrong place.
TEST(Table, DoubtsAFinderThatNobodyMakes) {
  Plate plate = block();
  const auto unlikely = [&](const char* tip) {
    Job job = jobWith();
    job.machine.finder = *readLength(tip);
    const auto warnings = tableOf(plate, lowerCorner(), job).warnings;
    return std::count_if(warnings.begin(), warnings.end(), [](const SetupWarning& one) {
      return one.kind == SetupWarning::Kind::finderUnlikely;
    });
  };
  for (const char* tip : {".200", "1/16", "3/4", "4 mm", "10 mm"}) EXPECT_EQ(unlikely(tip), 0);
  for (const char* tip : {"2.00", ".020", "1/17", ".7501", "0.200 mm"}) EXPECT_EQ(unlikely(tip), 1);
}

TEST(Table, SaysWhatIsMisspeltOfTheMachine) {
  Plate plate = block();
  Job job = jobWith();
  job.machine.extra = {{"xcounts", "\"left\"", "x_counts"}, {"colour", "1", ""}};
  const auto warnings = tableOf(plate, lowerCorner(), job).warnings;
  ASSERT_FALSE(warnings.empty());
  EXPECT_EQ(warnings.back().kind, SetupWarning::Kind::misspelt);
  EXPECT_EQ(warnings.back().member, (Misspelt{"xcounts", "x_counts", "machine"}));
}

TEST(Table, AnEmptyPartMakesAnEmptyTable) {
  const Plate plate;
  const SetupTable table = tableOf(plate, defaultSetup(plate.part, plate.solution));
  EXPECT_TRUE(table.rows.empty());
  EXPECT_TRUE(table.checks.empty());
  EXPECT_EQ(table.warnings.size(), 2u);
}

TEST(Table, TakesUnitAndStep) {
  Plate plate = block();
  plate.hole("A", 33, 0, "1/4");
  const Job job = jobWith();
  EXPECT_EQ(row(tableOf(plate, lowerCorner(), job), "A").x.text, "0.0155");
  const SetupTable fine = tableOf(plate, lowerCorner(), job, {std::nullopt, "0.0001"});
  EXPECT_EQ(row(fine, "A").x.text, "0.0156");
  EXPECT_EQ(row(fine, "A").x.rounding.ticks(), 156 * 254'000 - kSixtyFourth);
  const SetupTable metric = tableOf(plate, lowerCorner(), job, {Unit::millimetre, std::nullopt});
  EXPECT_EQ(row(metric, "A").x.text, "0.395");  // 0.396875 at the customary 0.005 mm
  EXPECT_EQ(metric.step.unit, Unit::millimetre);
  EXPECT_FALSE(makeTable(job, plate.part, plate.solution, lowerCorner(), {std::nullopt, "0"}).ok());
  EXPECT_FALSE(makeTable(job, plate.part, plate.solution, lowerCorner(), {std::nullopt, "x"}).ok());
}

TEST(Table, AMetricPrintHasNoFractions) {
  Plate plate = block();
  plate.hole("A", 56, 32, "1/4");
  Job job = jobWith();
  job.unit = Unit::millimetre;
  EXPECT_EQ(row(tableOf(plate, lowerCorner(), job), "A").xFraction, "");
}

TEST(Table, ChoosesPlacesToLookAt) {
  Plate plate = block();
  plate.hole("A", 100, 40, "1/4").hole("B", 150, 70, "1/4").hole("C", 36, 70, "1/4");
  auto setup = lowerCorner();
  leaveOn(setup, Side::right, "1/8");
  const auto [table, words] = saidOf(plate, setup);
  ASSERT_EQ(table.checks.size(), 4u);
  EXPECT_EQ(words.checks[0], "zero: spindle over where L and F cross");
  EXPECT_EQ(table.checks[1].x.text, "2.1250");
  EXPECT_EQ(table.checks[1].y.text, "1.5000");
  EXPECT_EQ(words.checks[1], "spindle over the far right corner of the stock (R, K)");
  EXPECT_EQ(words.checks[2], "over the middle of hole B");
  EXPECT_EQ(words.checks[3], "over the middle of hole C");
  setup.checks = {"C", "K"};
  const SetupTable named = tableOf(plate, setup);
  ASSERT_EQ(named.checks.size(), 2u);
  EXPECT_EQ(named.checks[0].x.text, "0.0625");
  EXPECT_EQ(named.checks[1].y.text, "1.5000");
  setup.checks = {"Z"};
  EXPECT_EQ(makeTable(jobWith(), plate.part, plate.solution, setup).error().code,
            ErrorCode::notFound);
}

TEST(Table, RefusesACoordinateBeyondItsType) {
  Plate plate = block();
  plate.hole("A", 0, 0, "1/4").putTicks("A", Axis::x, *Rational::of(Int128{1} << 63, 1));
  EXPECT_EQ(makeTable(jobWith(), plate.part, plate.solution, lowerCorner()).error().code,
            ErrorCode::outOfRange);
}

}  // namespace
}  // namespace inchwright
