#include "core/sheet/job_pages.h"

#include <algorithm>
#include <map>
#include <memory>
#include <tuple>

#include "core/measure/limits.h"
#include "core/plan/tools_in_order.h"
#include "core/say/doubt_words.h"
#include "core/say/figure_words.h"
#include "core/say/kit_words.h"
#include "core/say/making_words.h"
#include "core/say/setup_words.h"
#include "core/sheet/content.h"
#include "core/sheet/plain_pages.h"
#include "core/sheet/sheet_number.h"
#include "core/turned/turned_shape.h"

namespace inchwright {
namespace {

void join(Pieces& pieces, Pieces more) {
  std::move(more.begin(), more.end(), std::back_inserter(pieces));
}

std::string counted(std::size_t count, const char* one, const char* many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string partLine(const Part& part) {
  std::string words = part.name + " \u00B7 make " + std::to_string(part.quantity);
  if (!part.material.empty()) words += " in " + part.material;
  if (!part.hand.empty()) words += " \u00B7 " + part.hand + " hand";
  return words;
}

std::size_t openQueries(const PartInJob& in) {
  return static_cast<std::size_t>(
      std::count_if(in.solution.doubts.begin(), in.solution.doubts.end(),
                    [](const Doubt& doubt) { return doubt.holdsUp(); }));
}

/// Said over the figures of a part whose print is still in doubt.
void addDraft(const PartInJob& in, Pieces& pieces, double width) {
  const std::size_t open = openQueries(in);
  if (open == 0) return;
  join(pieces, plainText("DRAFT: " + counted(open, "query", "queries") +
                             " open, and what is settled may change these figures. The cover page "
                             "lists them.",
                         width, true));
}

/// Rows below a heading that is set again on the next page.
class Table {
 public:
  Table(Pieces& pieces, const std::vector<PlainCell>& heading, double width)
      : pieces_(pieces), width_(width) {
    std::vector<PlainCell> bold = heading;
    for (PlainCell& cell : bold) cell.bold = true;
    Piece piece = plainRow(bold, width);
    piece.keepWithNext = true;
    again_ = std::make_shared<const Piece>(piece);
    pieces_.push_back(std::move(piece));
  }

  void row(const std::vector<PlainCell>& cells) {
    Piece piece = plainRow(cells, width_);
    piece.heading = again_;
    pieces_.push_back(std::move(piece));
  }

 private:
  Pieces& pieces_;
  double width_;
  std::shared_ptr<const Piece> again_;
};

/// The finished size along an axis, between its outermost sides; empty where one is not placed.
std::optional<Length> finishedAlong(const PartInJob& in, Axis axis) {
  std::optional<Rational> low, high;
  for (const Feature& feature : in.part.features) {
    const std::optional<Side> side = outerSideOf(feature, axis);
    const Position* at = side ? placedPosition(in.solution, feature.id, axis) : nullptr;
    if (!at) continue;
    if (outward(*side) < 0 && (!low || at->ticks < *low)) low = at->ticks;
    if (outward(*side) > 0 && (!high || *high < at->ticks)) high = at->ticks;
  }
  const std::optional<Rational> size = low && high ? high->minus(*low) : std::nullopt;
  return size ? nearestTick(*size) : std::nullopt;
}

/// The most that any setup leaves on a side.
Length leftOn(const PartInJob& in, Side side) {
  Length most;
  for (const SetupInJob& one : in.setups) most = std::max(most, one.setup.stockOn(side));
  return most;
}

std::string lengthWords(Length length, Unit unit) {
  return writePlain(length, unit) + (unit == Unit::inch ? " in" : " mm");
}

/// What to cut along one axis.
struct CutAlong {
  std::optional<Length> finished;
  Length left;
  std::optional<Length> total() const { return finished ? finished->plus(left) : std::nullopt; }
};

CutAlong cutAlong(const PartInJob& in, Axis axis) {
  CutAlong cut;
  cut.finished = finishedAlong(in, axis);
  for (const Side side : kSides) {
    if (axisAcross(side) != axis) continue;
    cut.left = cut.left.plus(leftOn(in, side)).value_or(cut.left);
  }
  return cut;
}

/// The bar that all pieces take, the longest way of each along it.
std::string barWords(const PartInJob& in, Unit unit) {
  Length longest;
  for (const Axis axis : kAxes) {
    const std::optional<Length> total = cutAlong(in, axis).total();
    if (total && *total > longest) longest = *total;
  }
  const std::optional<Length> each = longest.plus(customaryKerf());
  const std::optional<Rational> bar =
      each ? each->rational().times(Rational(in.part.quantity)) : std::nullopt;
  if (longest.isZero() || !bar) return {};
  return counted(static_cast<std::size_t>(in.part.quantity), "piece", "pieces") + " of " +
         lengthWords(longest, unit) + " and a saw's kerf of " + lengthWords(customaryKerf(), unit) +
         " each: " + lengthWords(nearestTick(*bar).value_or(Length()), unit) +
         " of bar, and what the vice holds of the last one.";
}

/// Least and greatest to a tenth of a thou or a thousandth of a millimetre, inwards; exactly where
/// that is too coarse to say them, and nothing for a figure without limits of its own.
std::pair<std::string, std::string> limitsInWords(const Lettered& figure, const General& general) {
  const std::optional<Tolerance> tolerance = toleranceOf(figure, general);
  const std::optional<SizeLimits> limits = limitsOf(figure, tolerance);
  if (!tolerance || !limits) return {};
  const Result<Step> step = readStep(figure.unit == Unit::inch ? "0.0001" : "0.001", figure.unit);
  const Result<ShownLimits> shown = showLimitsInwards(limits->least, limits->greatest, *step);
  if (shown) return {shown->low.text, shown->high.text};
  return {writeDecimal(limits->least, figure.unit), writeDecimal(limits->greatest, figure.unit)};
}

std::vector<std::string> cameOutWrong(const JobOnPaper& job, const PartInJob& in) {
  const Result<KitOfPart> kit = kitOfPart(job.job, in.part, in.solution);
  if (!kit) return {kit.error().text};
  return cameOutLines(*kit, readoutStep(job));
}

/// What may not go together, under a heading of its own.
void addKitDoubts(const JobOnPaper& job, Pieces& pieces) {
  if (job.parts.size() != job.job.parts.size()) return;
  std::vector<Solution> solutions;
  for (const PartInJob& in : job.parts) solutions.push_back(in.solution);
  const Result<AsMade> made = asMade(job.job, solutions);
  std::vector<std::string> lines;
  if (made) {
    lines = kitDoubtLines(*made, readoutStep(job));
  } else {
    lines.push_back(made.error().text);
  }
  if (lines.empty()) return;
  const double width = plainWidth(job);
  pieces.push_back(plainHeading("May not go together", width));
  for (const std::string& line : lines) join(pieces, plainText("! " + line, width, true));
}

/// The widest that a turned part is, and what a parting tool takes behind it.
struct TurnedStock {
  std::optional<Length> length;
  std::optional<Length> diameter;
  std::optional<Length> partedBy;
};

TurnedStock turnedStock(const PartInJob& in) {
  TurnedStock stock;
  const TurnedShape shape = turnedShape(in.part, in.solution);
  if (shape.leftEnd && shape.rightEnd) {
    const auto whole = shape.rightEnd->minus(*shape.leftEnd);
    if (whole) stock.length = nearestTick(*whole);
  }
  for (const TurnedStretch& one : shape.stretches) {
    if (one.inner || !one.atLeft || !one.atRight) continue;
    const Length widest = std::max(*one.atLeft, *one.atRight);
    if (!stock.diameter || widest > *stock.diameter) stock.diameter = widest;
  }
  for (const Setup& setup : in.part.setups) {
    if (!setup.chucked || !setup.chucked->partOff) continue;
    const Length width = setup.chucked->partOff->width.value;
    stock.partedBy = std::max(stock.partedBy.value_or(width), width);
  }
  return stock;
}

/// Bar for all pieces, and what the chuck holds of it.
std::string roundBarWords(const TurnedStock& stock, int quantity, Unit unit) {
  const Length between = stock.partedBy.value_or(customaryKerf());
  const auto each = stock.length ? stock.length->plus(between) : std::nullopt;
  const auto bar = each ? each->times(quantity) : std::nullopt;
  if (!bar) return {};
  std::string words = counted(static_cast<std::size_t>(quantity), "piece", "pieces") + " of " +
                      lengthWords(*stock.length, unit) + " and " +
                      (stock.partedBy ? "the parting tool's " : "a saw's kerf of ") +
                      lengthWords(between, unit) + " each: " + lengthWords(*bar, unit) +
                      " of bar, what is faced off each, and a length to hold by in the chuck";
  // Common practice, no source: held by at least its own diameter.
  if (stock.diameter) words += ", at least its diameter, " + lengthWords(*stock.diameter, unit);
  return words + ": ____________";
}

void addRoundStock(const JobOnPaper& job, const PartInJob& in, Pieces& pieces) {
  const double width = plainWidth(job);
  const Unit unit = job.job.unit;
  const TurnedStock stock = turnedStock(in);
  Table table(pieces, {{"", 0, 28}, {"finished", 30, width - 30}}, width);
  const auto said = [&](const std::optional<Length>& length) {
    return length ? lengthWords(*length, unit) : std::string("not placed");
  };
  table.row({{"length", 0, 28, true}, {said(stock.length), 30, width - 30, true}});
  table.row({{"largest \u00D8", 0, 28, true}, {said(stock.diameter), 30, width - 30, true}});
  pieces.push_back(space(1));
  join(pieces, plainText(roundBarWords(stock, in.part.quantity, unit), width));
}

struct JobTool {
  std::size_t times = 0;
  std::vector<std::string> where;
};

}  // namespace

Length customaryKerf() {
  return Length::ticks(Length::kTicksPerInch / 16);
}

Result<SetupInJob> setupInJob(const Job& job, const Part& part, const Solution& solution,
                              const Setup& setup, const SetupTable& table,
                              const SheetOptions& options) {
  const Result<WorkAt> work = workAt(job, part, solution, setup);
  if (!work) return work.error();
  SetupInJob one{setup, table, drawnPart(*work), {}, 0};
  const HeldWork held = heldWork(*work);
  SheetContent content{job, part, solution, table, &one.drawn, options};
  content.held = &held;
  const Composition sheet(std::move(content));
  one.number = sheet.number();
  one.pages = sheet.pageCount();
  return one;
}

std::vector<Page> coverPages(const JobOnPaper& job) {
  const double width = plainWidth(job);
  Pieces pieces;
  for (const PartInJob& in : job.parts) {
    pieces.push_back(plainHeading(partLine(in.part), width));
    Table table(pieces,
                {{"setup", 0, 24},
                 {"face up", 26, 24},
                 {"zero", 52, 66},
                 {"sheet", 120, 44},
                 {"pages", 166, width - 166}},
                width);
    for (const SetupInJob& one : in.setups) {
      std::string up(nameOf(one.setup.face));
      if (one.setup.turn != 0) up += ", " + std::to_string(one.setup.turn) + "\u00B0";
      table.row({{one.setup.name, 0, 24, true},
                 {up, 26, 24},
                 {zeroLine(one.table, job.options.english), 52, 66},
                 {one.number, 120, 44},
                 {std::to_string(one.pages), 166, width - 166}});
    }
    for (const std::string& name : in.onLathe) {
      table.row({{name, 0, 24, true}, {"on the lathe", 26, 24}});
    }
    const std::size_t open = openQueries(in);
    pieces.push_back(space(1));
    const std::vector<std::string> wrong = cameOutWrong(job, in);
    if (open == 0 && wrong.empty()) join(pieces, plainText("Nothing is in doubt.", width));
    for (const std::string& one : wrong) join(pieces, plainText("! " + one, width, true));
    if (open > 0) {
      join(pieces, plainText("DRAFT: " + counted(open, "query", "queries") + " open", width, true));
      for (const Doubt& doubt : in.solution.doubts) {
        if (doubt.holdsUp())
          join(pieces, plainText("? " + doubtText(in.part, in.solution, doubt, job.options.english),
                                 width));
      }
    }
    pieces.push_back(space(4));
  }
  addKitDoubts(job, pieces);
  return plainPages(job, "The job at a glance", pieces);
}

std::vector<Page> stockPages(const JobOnPaper& job) {
  const double width = plainWidth(job);
  const Unit unit = job.job.unit;
  Pieces pieces;
  for (const PartInJob& in : job.parts) {
    pieces.push_back(plainHeading(partLine(in.part), width));
    addDraft(in, pieces, width);
    if (in.part.turned) {
      addRoundStock(job, in, pieces);
      pieces.push_back(space(4));
      continue;
    }
    Table table(pieces,
                {{"along", 0, 18},
                 {"finished", 20, 42},
                 {"left to come off", 64, 42},
                 {"cut at least", 108, width - 108}},
                width);
    for (const Axis axis : kAxes) {
      const CutAlong cut = cutAlong(in, axis);
      std::string letter(nameOf(axis));
      letter[0] = static_cast<char>(letter[0] - 'a' + 'A');
      table.row({{letter, 0, 18, true},
                 {cut.finished ? lengthWords(*cut.finished, unit) : "not placed", 20, 42},
                 {cut.left.isZero() ? "nothing" : lengthWords(cut.left, unit), 64, 42},
                 {cut.total() ? lengthWords(*cut.total(), unit) : "", 108, width - 108, true}});
    }
    pieces.push_back(space(1));
    if (const std::string bar = barWords(in, unit); !bar.empty()) {
      join(pieces, plainText(bar, width));
    }
    join(pieces, plainText("To hold by: at least 1/8 in or a third of the height in the vice, the "
                           "larger of the two; more where it is sawn off or faced afterwards: "
                           "____________",
                           width));
    pieces.push_back(space(4));
  }
  return plainPages(job, "Stock to cut", pieces);
}

std::vector<Page> toolPages(const JobOnPaper& job) {
  const double width = plainWidth(job);
  using Key = std::tuple<OrderRule, Length, std::string>;
  std::map<Key, JobTool> uses;
  std::vector<std::string> lacking;
  for (const PartInJob& in : job.parts) {
    for (const SetupInJob& one : in.setups) {
      const std::string where = in.part.name + " " + one.setup.name;
      const SetupWords words = setupWords(in.part, one.table, job.options.english);
      for (std::size_t i = 0; i < one.table.rows.size(); ++i) {
        const TableRow& row = one.table.rows[i];
        for (const HoleStep* step : fittingsOf(*row.plan)) {
          if (step->kind == ToolKind::hand) continue;
          JobTool& use = uses[{orderOf(*step), step->size.value_or(Length()),
                               stepWords(*step, one.table.step.unit)}];
          ++use.times;
          if (use.where.empty() || use.where.back() != where) use.where.push_back(where);
        }
        if (!row.plan->lacking.empty()) {
          lacking.push_back(where + ", " + row.id + ": " + words.rows[i].note);
        }
      }
    }
  }
  Pieces pieces;
  for (const PartInJob& in : job.parts) {
    if (openQueries(in) == 0) continue;
    join(pieces, plainText("DRAFT: " + in.part.name + " is still in doubt; its tools may change.",
                           width, true));
  }
  Table table(pieces, {{"", 0, 6}, {"tool", 8, 70}, {"places", 80, 18}, {"for", 100, width - 100}},
              width);
  for (const auto& [key, use] : uses) {
    std::string where;
    for (const std::string& one : use.where) where += (where.empty() ? "" : " \u00B7 ") + one;
    table.row({{"\u25A1", 0, 6},
               {std::get<2>(key), 8, 70, true},
               {std::to_string(use.times), 80, 18},
               {where, 100, width - 100}});
  }
  if (!lacking.empty()) {
    pieces.push_back(space(4));
    pieces.push_back(plainHeading("Not to be had from what is owned", width));
    for (const std::string& one : lacking) join(pieces, plainText(one, width));
  }
  return plainPages(job, "Tools for the job", pieces);
}

std::vector<Page> firstOffPages(const JobOnPaper& job) {
  const double width = plainWidth(job);
  Pieces pieces;
  for (const PartInJob& in : job.parts) {
    pieces.push_back(plainHeading(in.part.name + " \u00B7 piece ________ \u00B7 measured by "
                                                 "____________ with ____________",
                                  width));
    addDraft(in, pieces, width);
    Table table(pieces,
                {{"", 0, 14},
                 {"from \u2013 to", 16, 40},
                 {"along", 58, 14},
                 {"as lettered", 74, 34},
                 {"least", 110, 18},
                 {"greatest", 130, 18},
                 {"found", 150, width - 150}},
                width);
    const auto add = [&](const std::string& id, const std::string& between,
                         const std::string& along, const Lettered& figure) {
      const auto [least, greatest] = limitsInWords(figure, in.part.general);
      table.row({{id, 0, 14, true},
                 {between, 16, 40},
                 {along, 58, 14},
                 {figure.text, 74, 34},
                 {least, 110, 18},
                 {greatest, 130, 18},
                 {"____________", 150, width - 150}});
    };
    for (const Reading& reading : in.part.readings) {
      std::string between = reading.from;
      if (!reading.to.empty()) between += " \u2013 " + reading.to;
      const bool along = reading.kind == ReadingKind::along;
      if (reading.kind == ReadingKind::angle) continue;
      add(reading.id, between, along ? std::string(nameOf(reading.axis)) : "", reading.figure);
    }
    for (const Feature& feature : in.part.features) {
      const std::optional<Lettered>& diameter = diameterOf(feature);
      if (!diameter) continue;
      add(feature.id, in.part.turned ? "\u00D8" : "each \u00D8", "", *diameter);
    }
    pieces.push_back(space(5));
  }
  return plainPages(job, "First one off", pieces);
}

}  // namespace inchwright
