#pragma once

#include <algorithm>
#include <cmath>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "core/measure/writing.h"
#include "core/sheet/content.h"
#include "tests/support/part_text.h"

namespace inchwright {

/// A sheet's content, planned from a part whose places are known.
struct MadeSheet {
  Job job;
  Part part;
  Solution solution;
  SetupTable table;
  DrawnPart picture;
  HeldWork held;
  SheetOptions options;

  /// Makes table and picture of the part's one setup anew.
  void plan(const TableOptions& with = {}) {
    const Result<WorkAt> work = workAt(job, part, solution, part.setups.front(), with);
    ASSERT_TRUE(work.ok()) << work.error().text;
    const Result<SetupTable> made = tableOf(*work);
    ASSERT_TRUE(made.ok()) << made.error().text;
    table = *made;
    picture = drawnPart(*work);
    held = heldWork(*work);
  }

  std::vector<Page> pages() const {
    SheetContent content{job, part, solution, table, &picture, options};
    content.held = &held;
    return Composition(std::move(content)).pages();
  }
};

inline Coordinate coordinate(std::int64_t ticks, const Step& step) {
  return coordinateOf(Rational(ticks), true, step).value();
}

inline Coordinate inches(double value, const Step& step) {
  return coordinate(std::llround(value * Length::kTicksPerInch), step);
}

inline Lettered lettered(std::string_view text, Unit unit = Unit::inch) {
  return readLength(text, {unit}).value();
}

/// A query that says what it says.
inline Doubt asked(const std::string& text) {
  Doubt doubt{{DoubtTopic::question}};
  doubt.questions = {text};
  return doubt;
}

/// A front plate of a clock, 4 by 2 3/4 inches, 1/16 left at both ends, zero in the middle of its
/// stock and on the front edge. Unless settled, one figure is misread and one line assumed.
inline MadeSheet solvedPlate(bool settled) {
  MadeSheet made;
  made.job.title = "Clock plates";
  made.job.print = "sheet 2, second edition";
  made.job.machine.finder = lettered("0.200");
  made.part = test::partFrom(std::string(R"(
    edge L x left
    edge R x right
    edge F y front
    edge K y back
    hole A 1/4
    hole B 1/4
    hole C 1/4
    hole D 1/4
    hole E 1/4
    hole F1 1/8
    hole F2 1/8
    hole F3 1/8
    hole F4 1/8
    hole G .089
    hole H .089
    hole J .089
    r1 x L A 11/16
    r2 x A B 1 3/16
    r3 x B C 1 5/16
    r4 x C R 13/16
    r5 x L R 4
    r6 x L F1 1/4
    r8 x F2 R 1/4
    r9 y F A 3/4
    r10 y F F1 1/4
    r11 y F1 F4 2 1/4
    r12 y F4 K 1/4
    r13 x L D 2 7/16
    r14 y F D 2 1/8
    r15 x L E 1
    r16 x L G 2
    r17 y F G 1 3/8
    r18 x G H 23/32
    r19 x J G 23/32
    r20 y G H 1/32
    in_line y A B C
    in_line y H J
    in_line y F1 F2
    in_line y F3 F4
    in_line x F1 F4
    in_line x F2 F3
  )") + (settled ? "r7 x F1 F2 3 1/2\nin_line y D E\n"
                 : "r7 x F1 F2 3 7/16\nin_line y D E assumed\n"));
  made.part.name = "Front plate";
  made.part.material = "brass";
  made.part.quantity = 2;
  made.part.hand = "left";
  for (Feature& feature : made.part.features) {
    if (feature.id.size() == 1 && feature.id[0] >= 'A' && feature.id[0] <= 'E') {
      feature.drilled()->make = Make::ream;
    }
    if (feature.id == "G" || feature.id == "H" || feature.id == "J") {
      Drilled tapped;
      tapped.make = Make::tap;
      tapped.depth = {false, lettered("3/8")};
      tapped.thread = "4-40 UNC";
      *feature.drilled() = tapped;
    }
  }
  Setup setup;
  setup.name = "1";
  ZeroAlong middle;
  middle.middle = {"L", "R"};
  middle.ofStock = true;
  ZeroAlong front;
  front.axis = Axis::y;
  front.at = "F";
  setup.zero = {middle, front};
  setup.stock[static_cast<std::size_t>(Side::left)] = lettered("1/16");
  setup.stock[static_cast<std::size_t>(Side::right)] = lettered("1/16");
  setup.jaw = Side::back;
  setup.stop = Side::left;
  made.part.setups = {setup};
  made.options.date = "2026-11-25";
  const Result<Solution> solution = solve(made.part);
  EXPECT_TRUE(solution.ok());
  if (solution) made.solution = *solution;
  made.plan();
  return made;
}

/// The plate with a misread figure.
inline MadeSheet frontPlate() {
  return solvedPlate(false);
}

/// The plate with nothing left to ask.
inline MadeSheet settledPlate(Paper paper) {
  MadeSheet made = solvedPlate(true);
  made.options.paper = paper;
  for (Doubt& doubt : made.solution.doubts) EXPECT_FALSE(doubt.holdsUp()) << doubt.key.text();
  return made;
}

/// The same sheet on a readout of 0.005 mm.
inline MadeSheet inMillimetres(MadeSheet made) {
  made.plan({Unit::millimetre, "0.005"});
  return made;
}

/// Any sheet: ids and names long and short, one to many rows, both papers and units, near and far,
/// places scattered without any print behind them.
class RandomSheets {
 public:
  explicit RandomSheets(unsigned seed) : random_(seed) {}

  MadeSheet next(int rows) {
    MadeSheet made;
    made.job.title = words(between(0, 12));
    made.job.print = words(between(0, 9));
    made.part.name = words(between(1, 9));
    made.part.quantity = between(1, 40);
    made.part.material = words(between(0, 2));
    made.part.hand = chance(3) ? "left" : "";
    made.options.paper = chance(2) ? Paper::a4 : Paper::letter;
    made.options.readingDistance = 600 + 100 * between(0, 14);
    made.options.date = chance(4) ? "" : "2026-11-25";
    made.options.showRounding = chance(4);
    for (int i = between(-3, 4); i > 0; --i)
      made.options.directChecks.push_back(words(between(1, 14)));
    addMachine(made.job.machine);
    made.job.unit = made.job.machine.unit;
    spread_ = chance(5) ? 1500 * kInchOf : 6 * kInchOf;
    addEdges(made);
    for (int row = 0; row < rows; ++row) addHole(made, row);
    addSetup(made);
    for (int i = between(-2, 5); i > 0; --i) {
      made.solution.doubts.push_back(asked(words(between(1, 90))));
      made.solution.doubts.back().accepted = chance(3);
    }
    made.plan();
    if (chance(3)) addCloseness(made);
    return made;
  }

  int between(int low, int high) { return std::uniform_int_distribution<int>(low, high)(random_); }
  bool chance(int outOf) { return between(1, outOf) == 1; }

 private:
  static constexpr double kInchOf = static_cast<double>(Length::kTicksPerInch);

  void addMachine(Machine& machine) {
    static constexpr std::array kInchSteps{"0.0005", "0.0002", "0.0001"};
    static constexpr std::array kMetricSteps{"0.005", "0.001"};
    machine.unit = chance(2) ? Unit::inch : Unit::millimetre;
    machine.step = machine.unit == Unit::inch
                       ? kInchSteps[static_cast<std::size_t>(between(0, 2))]
                       : kMetricSteps[static_cast<std::size_t>(between(0, 1))];
    machine.xCounts = chance(2) ? CountsX::right : CountsX::left;
    machine.yCounts = chance(2) ? CountsY::away : CountsY::towards;
    if (!chance(4)) machine.finder = lettered(chance(2) ? "0.200" : "6 mm");
  }

  void put(MadeSheet& made, const Id& id, Axis axis, double from, double span) {
    const double at = from + span * std::uniform_real_distribution<>(0, 1)(random_);
    Position& position = made.solution.positions.at(id, axis);
    position.ticks = Rational(std::llround(at));
    if (chance(9)) position.how = How::rounded;
    position.disputed = chance(10);
  }

  void addEdge(MadeSheet& made, const Id& id, Axis axis, std::optional<Side> side, double at) {
    Feature edge;
    edge.id = id;
    edge.shape = kind::Edge{axis, side};
    made.part.features.push_back(edge);
    put(made, id, axis, at, 0);
  }

  void addEdges(MadeSheet& made) {
    low_ = -spread_ * std::uniform_real_distribution<>(0.1, 1)(random_);
    span_ = -2 * low_;
    addEdge(made, "L", Axis::x, chance(9) ? std::nullopt : std::optional(Side::left), low_);
    addEdge(made, "R", Axis::x, Side::right, low_ + span_);
    addEdge(made, "F", Axis::y, Side::front, low_);
    if (!chance(5)) addEdge(made, "K", Axis::y, Side::back, low_ + span_);
    if (chance(2)) addEdge(made, "inner", Axis::y, std::nullopt, low_ + span_ / 2);
  }

  void addHole(MadeSheet& made, int number) {
    Feature hole;
    do {
      hole.id = id(number);
    } while (made.part.feature(hole.id) != nullptr);
    // Runs of alike holes, as on a plate.
    if (chance(6) || number == 0) make_ = between(0, 6);
    Drilled drilled;
    drilled.make = static_cast<Make>(make_);
    static constexpr std::array kSizes{"1/4", "3/16", "6 mm", ".2505 +.0005 -.0000", "1 7/8"};
    if (!chance(9)) drilled.diameter = lettered(kSizes[static_cast<std::size_t>(make_ % 5)]);
    if (drilled.make == Make::tap) drilled.thread = chance(6) ? words(1) : "8-32 UNC";
    if (chance(3)) drilled.depth = {false, lettered("1 13/128")};
    if (chance(3)) drilled.seatDiameter = lettered("7/16");
    if (chance(5)) drilled.locate = static_cast<Locate>(between(0, 4));
    if (!chance(12)) hole.shape = kind::Hole{drilled};
    if (chance(5)) hole.note = words(between(1, chance(6) ? 120 : 10));
    made.part.features.push_back(hole);
    put(made, hole.id, Axis::x, low_, span_);
    put(made, hole.id, Axis::y, low_, span_);
    if (!chance(30)) return;
    made.solution.positions.at(hole.id, Axis::y).group = 1;
    made.solution.loose.push_back({hole.id, Axis::y, Loose::Lacks::distance, {}, "L"});
  }

  void addSetup(MadeSheet& made) {
    Setup setup;
    setup.name = chance(5) ? words(4) : "1";
    setup.turn = 90 * between(0, 3);
    ZeroAlong x, y;
    y.axis = Axis::y;
    if (chance(2)) {
      x.middle = {"L", "R"};
      x.ofStock = chance(2);
    } else {
      x.at = chance(2) ? "L" : "R";
    }
    y.at = "F";
    if (chance(3)) y.offset = lettered("-5/8");
    if (!chance(5)) setup.zero = {x, y};
    for (const Side side : kSides) {
      if (chance(3)) setup.stock[static_cast<std::size_t>(side)] = lettered("1/16");
    }
    if (chance(2)) setup.jaw = kSides[static_cast<std::size_t>(between(2, 5))];
    if (chance(2)) setup.stop = kSides[static_cast<std::size_t>(between(2, 5))];
    made.part.setups = {setup};
  }

  void addCloseness(MadeSheet& made) {
    Closeness& closeness = made.options.closeness.emplace();
    const auto axis = [&] { return chance(2) ? MachineAxis::x : MachineAxis::y; };
    std::int64_t steps = 0;
    for (int i = between(0, 8); i > 0; --i) {
      steps += between(0, 3);
      ClosenessBand band{axis(), Length::ticks(steps * made.table.step.size.ticks()), {}};
      for (const TableRow& row : made.table.rows) {
        if (chance(3)) band.places.push_back(row.id);
      }
      if (!band.places.empty()) closeness.bands.push_back(band);
    }
    for (const TableRow& row : made.table.rows) {
      if (chance(9)) closeness.aims.push_back({row.id, axis(), row.x});
    }
    for (int i = between(-1, 2); i > 0; --i)
      closeness.directChecks.push_back({reading(made.part, between(1, 14)), axis(), {}, {}});
    for (int i = between(0, 2); i > 0; --i) {
      ClosenessAdvice advice;
      advice.axis = axis();
      for (int n = between(1, 9); n > 0; --n) advice.places.push_back(words(1));
      advice.readings = {reading(made.part, between(1, 9)), reading(made.part, 2)};
      advice.eased = chance(2);
      closeness.advice.push_back(std::move(advice));
    }
  }

  /// One more reading of the part, its figure as long as so many words.
  Source reading(Part& part, int count) {
    Reading one;
    one.id = "q" + std::to_string(part.readings.size());
    one.from = words(1);
    one.to = words(1);
    one.figure.text = words(count);
    part.readings.push_back(std::move(one));
    return {SourceKind::reading, static_cast<std::uint32_t>(part.readings.size() - 1)};
  }

  std::string words(int count) {
    static const char* const kSome[] = {
        "plate",   "Front",      "\u00D81/4", "through",          "3/8",
        "bracket", "g\u00E4uge", "over",      "\u201Cedge\u201D", "(2 3/8)"};
    std::string text;
    for (int i = 0; i < count; ++i) {
      std::string word = kSome[between(0, 9)];
      if (chance(40)) word = std::string(static_cast<std::size_t>(between(20, 120)), 'W');
      text += (i > 0 ? " " : "") + word;
    }
    return text;
  }

  std::string id(int number) {
    if (chance(12)) return words(1) + std::to_string(number);
    if (chance(4)) return "D" + std::to_string(number);
    return std::string(1, static_cast<char>('A' + number % 26)) +
           (number < 26 ? "" : std::to_string(number / 26));
  }

  std::mt19937 random_;
  double spread_ = 0;
  double low_ = 0;
  double span_ = 0;
  int make_ = 0;
};

}  // namespace inchwright
