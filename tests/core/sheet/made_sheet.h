#pragma once

#include <algorithm>
#include <cmath>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "core/measure/writing.h"
#include "core/sheet/content.h"

namespace inchwright {

/// A sheet's content made by hand or at random: no solving goes into it.
struct MadeSheet {
  Job job;
  Part part;
  Solution solution;
  SetupTable table;
  PartPicture picture;
  SheetOptions options;

  std::vector<Page> pages() const {
    return Composition({job, part, solution, table, &picture, options}).pages();
  }
};

inline Coordinate coordinate(std::int64_t ticks, const Step& step) {
  const Shown shown = showAtStep(Rational(ticks), step);
  return {shown.text, Length::ticks(ticks), shown.error, true};
}

inline Coordinate inches(double value, const Step& step) {
  return coordinate(std::llround(value * Length::kTicksPerInch), step);
}

struct MadeHole {
  const char* id;
  double x;
  double y;
  double diameter;
  int group;
  const char* xFraction;
  const char* yFraction;
};

inline std::vector<MakingStep> stepsOf(int group) {
  const MakingStep spot{StepKind::spot, "", {}, "", ""};
  if (group == 0) {
    return {spot,
            {StepKind::drill, "15/64", {}, "through", ""},
            {StepKind::ream, "ream 1/4", {}, "through", ""}};
  }
  if (group == 1) return {spot, {StepKind::drill, "1/8", {}, "through", ""}};
  return {spot,
          {StepKind::drill, "#43", {}, "1/2", ""},
          {StepKind::tap, "tap 4-40 UNC", {}, "3/8", ""}};
}

/// A front plate, 4 by 2 3/4 inches, zero in the middle of its stock and on the front edge.
inline MadeSheet frontPlate() {
  MadeSheet made;
  made.job.title = "Clock plates";
  made.job.print = "sheet 2, second edition";
  made.part.name = "Front plate";
  made.part.material = "brass";
  made.part.quantity = 2;
  made.part.hand = "left";
  Setup setup;
  setup.name = "1";
  made.part.setups = {setup};
  made.options.date = "2026-11-25";

  SetupTable& table = made.table;
  table.part = made.part.name;
  table.setup = "1";
  table.zero = "X0 middle of L\u2013R (stock) \u00B7 Y0 at F";
  const char* sizes[] = {"\u00D81/4 ream, through", "\u00D81/8 drill, through",
                         "4-40 UNC, 3/8 deep"};
  const std::vector<MadeHole> holes{{"A", -1.3125, 0.75, .25, 0, "1 5/16", "3/4"},
                                    {"B", -0.125, 0.75, .25, 0, "1/8", "3/4"},
                                    {"C", 1.1875, 0.75, .25, 0, "1 3/16", "3/4"},
                                    {"D", 0.4375, 2.125, .25, 0, "7/16", "2 1/8"},
                                    {"E", -1.0, 2.0, .25, 0, "1", "2"},
                                    {"F1", -1.75, 0.25, .125, 1, "1 3/4", "1/4"},
                                    {"F2", 1.75, 0.25, .125, 1, "1 3/4", "1/4"},
                                    {"F3", 1.75, 2.5, .125, 1, "1 3/4", "2 1/2"},
                                    {"F4", -1.75, 2.5, .125, 1, "1 3/4", "2 1/2"},
                                    {"G", 0, 1.375, .089, 2, "0", "1 3/8"},
                                    {"H", 0.71875, 1.40625, .089, 2, "23/32", "1 13/32"},
                                    {"J", -0.71875, 1.40625, .089, 2, "23/32", "1 13/32"}};
  for (const MadeHole& hole : holes) {
    TableRow row;
    row.id = row.feature = hole.id;
    row.x = inches(hole.x, table.step);
    row.y = inches(hole.y, table.step);
    row.xFraction = hole.xFraction;
    row.yFraction = hole.yFraction;
    row.size = sizes[hole.group];
    row.steps = stepsOf(hole.group);
    row.group = hole.group;
    table.rows.push_back(row);
    made.picture.circles.push_back({hole.id,
                                    hole.id,
                                    {hole.x * 25.4, hole.y * 25.4},
                                    hole.diameter * 25.4,
                                    0,
                                    hole.group == 2,
                                    false});
  }
  table.rows[3].note = "assumed in line with E";
  table.rows[6].disputed = made.picture.circles[6].disputed = true;
  table.rows[6].note = "the print says 3 1/2 over F1\u2013F2 and 3 7/16 by the chain";
  const auto edge = [&](const char* id, Side side, bool alongX, double at, double left) {
    table.edges.push_back({id, side, alongX, inches(at, table.step),
                           Length::ticks(std::llround(left * Length::kTicksPerInch)), false});
  };
  edge("L", Side::left, true, -2, 1. / 16);
  edge("R", Side::right, true, 2, 1. / 16);
  edge("F", Side::front, false, 0, 0);
  edge("K", Side::back, false, 2.75, 0);
  table.touchOff = {
      {true,
       false,
       "middle of L and R, of the stock",
       {"Touch the left side with the 0.200 finder and set the readout to -2.1625.",
        "Touch the right side: it must show +2.1625. If not, add half the difference."}},
      {false,
       false,
       "at F, the near side",
       {"Touch the near side with the 0.200 finder and set the readout to -0.1000."}}};
  table.checks = {
      {inches(-2, table.step), inches(0, table.step),
       "over the corner of L and F, 1/16 inside the stock"},
      {inches(1.1875, table.step), inches(0.75, table.step), "over the middle of hole C"}};
  table.warnings = {
      "The stock is left long at both ends by 1/16; zero is the middle of the stock and of the "
      "finished part."};

  PartPicture& picture = made.picture;
  const double w = 2 * 25.4;
  const double h = 2.75 * 25.4;
  const double s = 25.4 / 16;
  picture.outline = {{-w, 0}, {w, 0}, {w, h}, {-w, h}};
  picture.stock = {{-w - s, 0}, {w + s, 0}, {w + s, h}, {-w - s, h}};
  picture.edges = {{"L", {-w, 0}, {-w, h}, true, TableSide::left},
                   {"R", {w, 0}, {w, h}, true, TableSide::right},
                   {"F", {-w, 0}, {w, 0}, false, TableSide::near},
                   {"K", {-w, h}, {w, h}, false, TableSide::far}};
  picture.jaw = TableSide::far;
  picture.stop = TableSide::left;
  made.solution.doubts = {
      {DoubtKind::assumed,
       "assumed:D:y",
       "D and E are taken to be in line: the print shows it and does not say so.",
       {},
       false},
      {DoubtKind::clash,
       "clash:x",
       "F1\u2013A\u2013B\u2013C\u2013F2 makes 3 7/16, the print says 3 1/2: r7 may be 1 5/16.",
       {},
       false}};
  return made;
}

/// The plate with nothing left to ask.
inline MadeSheet settledPlate(Paper paper) {
  MadeSheet made = frontPlate();
  made.options.paper = paper;
  made.solution.doubts.clear();
  for (TableRow& row : made.table.rows) {
    row.disputed = false;
    row.note.clear();
  }
  for (PictureCircle& hole : made.picture.circles) hole.disputed = false;
  return made;
}

/// The same sheet on a readout of 0.005 mm.
inline MadeSheet inMillimetres(MadeSheet made) {
  made.table.step = {Length::ticks(500'000), Unit::millimetre};
  const auto again = [&](Coordinate& shown) {
    shown = coordinate(shown.value.ticks(), made.table.step);
  };
  for (TableRow& row : made.table.rows) {
    again(row.x);
    again(row.y);
    row.xFraction.clear();
    row.yFraction.clear();
  }
  for (EdgeRow& edge : made.table.edges) again(edge.value);
  for (CheckPlace& check : made.table.checks) {
    again(check.x);
    again(check.y);
  }
  return made;
}

/// Any sheet: ids and names long and short, one to many rows, both papers and units, near and far.
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
    fillTable(made, rows);
    if (chance(3)) fillCloseness(made);
    fillPicture(made);
    for (int i = between(-2, 5); i > 0; --i) {
      made.solution.doubts.push_back(
          {DoubtKind::question, "q", words(between(1, 90)), {}, chance(3)});
    }
    return made;
  }

  int between(int low, int high) { return std::uniform_int_distribution<int>(low, high)(random_); }
  bool chance(int outOf) { return between(1, outOf) == 1; }

 private:
  void fillCloseness(MadeSheet& made) {
    Closeness& closeness = made.options.closeness.emplace();
    std::int64_t steps = 0;
    for (int i = between(0, 8); i > 0; --i) {
      steps += between(0, 3);
      ClosenessBand band{chance(2), Length::ticks(steps * made.table.step.size.ticks()), {}};
      for (const TableRow& row : made.table.rows) {
        if (chance(3)) band.places.push_back(row.id);
      }
      if (!band.places.empty()) closeness.bands.push_back(band);
    }
    for (const TableRow& row : made.table.rows) {
      if (chance(9)) closeness.aims.push_back({row.id, chance(2), row.x});
    }
    for (int i = between(-1, 2); i > 0; --i)
      closeness.directChecks.push_back(words(between(1, 14)));
    for (int i = between(0, 2); i > 0; --i) closeness.advice.push_back(words(between(1, 30)));
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

  Coordinate figure(const Step& step, double spread) {
    const double unit =
        step.unit == Unit::inch ? Length::kTicksPerInch : Length::kTicksPerMillimetre;
    return coordinate(
        std::llround(std::uniform_real_distribution<>(-spread, spread)(random_) * unit), step);
  }

  void fillTable(MadeSheet& made, int rows) {
    SetupTable& table = made.table;
    table.part = made.part.name;
    table.setup = chance(5) ? words(4) : "1";
    table.turn = 90 * between(0, 3);
    const bool inch = chance(2);
    const std::int64_t steps[] = {1'270'000, 508'000, 254'000, 500'000, 100'000};
    table.step = {Length::ticks(steps[inch ? between(0, 2) : between(3, 4)]),
                  inch ? Unit::inch : Unit::millimetre};
    made.job.unit = table.step.unit;
    table.zero = words(between(0, 12));
    const double spread = chance(5) ? 1500 : inch ? 6 : 150;
    int group = 0;
    std::vector<MakingStep> run = stepsOf(0);
    for (int i = 0; i < rows; ++i) {
      if (chance(6)) {
        ++group;
        run.clear();
        for (int s = between(0, 5); s > 0; --s) {
          run.push_back(
              {static_cast<StepKind>(between(0, 8)), chance(3) ? "" : words(1), {}, "", ""});
        }
      }
      TableRow row;
      row.id = row.feature = id(i);
      row.x = figure(table.step, spread);
      row.y = figure(table.step, spread);
      row.size = words(between(0, 3));
      row.note = chance(5) ? words(between(1, chance(6) ? 120 : 10)) : "";
      if (chance(2)) row.xFraction = std::to_string(between(1, 60)) + " 13/128";
      if (chance(2)) row.yFraction = "3/4";
      row.steps = run;
      row.group = group;
      row.disputed = chance(8);
      table.rows.push_back(row);
    }
    for (int i = between(0, 8); i > 0; --i) {
      EdgeRow edge{
          id(i),    Side::left, chance(2), figure(table.step, spread), Length::ticks(39'687'500),
          chance(6)};
      if (chance(2)) edge.side.reset();
      table.edges.push_back(edge);
    }
    for (int i = between(0, 3); i > 0; --i) {
      TouchOff touch{chance(2), chance(6), words(between(1, 8)), {}};
      for (int s = between(0, 5); s > 0; --s)
        touch.steps.push_back(words(between(1, 15)) + " -0.1000 then +12.3455.");
      table.touchOff.push_back(touch);
    }
    for (int i = between(0, 4); i > 0; --i) {
      table.checks.push_back(
          {figure(table.step, spread), figure(table.step, spread), words(between(1, 12))});
    }
    for (int i = between(-2, 3); i > 0; --i) table.warnings.push_back(words(between(1, 40)));
    for (int i = between(-3, 3); i > 0; --i)
      table.unplaced.push_back({id(i), Axis::y, words(between(0, 9))});
  }

  void fillPicture(MadeSheet& made) {
    PartPicture& picture = made.picture;
    const double w = between(5, 400);
    const double h = between(5, 400);
    const double x = between(-300, 100);
    const double y = between(-300, 100);
    const auto some = [&](double from, double span) {
      return from + span * std::uniform_real_distribution<>(0, 1)(random_);
    };
    picture.outline = {{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}};
    if (chance(2)) picture.stock = {{x - 2, y}, {x + w + 3, y}, {x + w + 3, y + h}, {x - 2, y + h}};
    for (const TableRow& row : made.table.rows) {
      picture.circles.push_back({row.id,
                                 row.id,
                                 {some(x, w), some(y, h)},
                                 some(0, w / 8),
                                 chance(4) ? w / 6 : 0,
                                 chance(3),
                                 row.disputed});
    }
    picture.edges = {{"L", {x, y}, {x, y + h}, true, TableSide::left},
                     {"K", {x, y + h}, {x + w, y + h}, false, TableSide::far},
                     {"inner", {x, y + h / 2}, {x + w, y + h / 2}, false, {}}};
    if (chance(2))
      picture.slots.push_back({"S", {x + w / 3, y + h / 3}, {x + w / 2, y + h / 3}, h / 10});
    if (chance(2)) picture.rounds.push_back({"U", {x, y + h / 2}, w});
    if (chance(2)) picture.marks.push_back({"P", {some(x, w), some(y, h)}});
    if (chance(2)) picture.jaw = static_cast<TableSide>(between(0, 3));
    if (chance(2)) picture.stop = static_cast<TableSide>(between(0, 3));
    if (chance(5)) picture.missing = {TableSide::left, TableSide::near};
    picture.xCountsRight = chance(2);
    picture.yCountsAway = chance(2);
  }

  std::mt19937 random_;
};

}  // namespace inchwright
