#include "core/sheet/rows_block.h"

#include <algorithm>
#include <memory>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "core/base/ascii.h"
#include "core/measure/writing.h"
#include "core/say/making_words.h"
#include "core/say/plan_words.h"
#include "core/sheet/id_setting.h"
#include "core/sheet/paragraph.h"
#include "core/sheet/row_plan.h"
#include "core/sheet/symbols.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

constexpr std::size_t kMostLinesInRow = 5;
constexpr std::size_t kMostHeadingLines = 2;

/// Rows in a block of three to five, with a gap after each, so that the eye keeps its place.
std::vector<std::size_t> chunksOf(std::size_t count) {
  if (count <= 5) return {count};
  const std::size_t chunks = (count + 3) / 4;
  std::vector<std::size_t> sizes(chunks, count / chunks);
  for (std::size_t i = 0; i < count % chunks; ++i) ++sizes[i];
  return sizes;
}

/// `SPOT`, `DRILL 15/64`, `REAM 1/4`: the work in capitals, the tool as it is called; `INCOMPLETE:`
/// before a run that is not whole.
std::string runInWords(const TableRow& row, Unit unit) {
  std::string words;
  for (const HoleStep* step : fittingsOf(*row.plan)) {
    const std::string tool = toolText(*step, unit);
    std::string verb = verbText(*step);
    std::transform(verb.begin(), verb.end(), verb.begin(), upperAscii);
    words += (words.empty() ? "" : " \u00B7 ") + verb + (tool.empty() ? "" : " ") + tool;
  }
  std::string lacking = incompleteWords(*row.plan);
  std::transform(lacking.begin(), lacking.end(), lacking.begin(), upperAscii);
  return lacking + (words.empty() ? "PLACES" : words);
}

/// The rows of one group, and what they share.
struct Group {
  std::vector<const TableRow*> rows;
  std::string size;  ///< when all rows have the same; else it stands in each row
};

std::vector<Group> groupsOf(const SheetContent& content) {
  std::vector<Group> groups;
  const std::vector<TableRow>& rows = content.table.rows;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const std::string& size = content.words.rows[i].size;
    if (groups.empty() || groups.back().rows.front()->group != rows[i].group) {
      groups.push_back({{}, size});
    }
    Group& group = groups.back();
    group.rows.push_back(&rows[i]);
    if (group.size != size) group.size.clear();
  }
  return groups;
}

class RowSetter {
 public:
  RowSetter(const SheetContent& content, RowPlan plan, double width)
      : content_(content), style_(content.style), plan_(std::move(plan)), width_(width) {}

  Piece heading(const Group& group, bool continued) const;
  /// The setter is kept by what it has yet to draw.
  static Pieces row(const std::shared_ptr<const RowSetter>& setter, const TableRow& row,
                    const Group& group, std::shared_ptr<const Piece> again);

 private:
  /// The baselines of a row; those of the fractions only where they stand beside the figures.
  struct Baselines {
    double x = 0;
    double y = 0;
    double xFraction = 0;
    double yFraction = 0;
  };
  Baselines baselines() const;
  double figuresHeight(const TableRow& row) const;
  double box() const { return std::min(6.2 * style_.hand, plan_.figureHeight); }
  double firstBaseline() const { return plan_.figureHeight * 1.03 + 1.5 * style_.hand; }
  double ticksTop(double baseline) const { return baseline - (plan_.figureHeight + box()) / 2; }
  std::vector<Run> words(const TableRow& row, bool named, bool ownSize) const;
  std::string smallPrint(const TableRow& row, bool ownSize) const;
  void setFigure(const std::string& figure, bool ofX, double baseline, Sketch& sketch) const;
  void setFractions(const TableRow& row, double first, double second, Sketch& sketch) const;
  void setElsewhere(const TableRow& row, Sketch& sketch) const;
  void setFigures(const TableRow& row, Sketch& sketch) const;
  void target(const TableRow& row, double height, Sketch& sketch) const;
  void draw(const TableRow& row, const std::vector<Run>& words, double height, bool last,
            Sketch& sketch) const;
  void addRest(const std::vector<LaidLine>& lines, const std::shared_ptr<const Piece>& again,
               Pieces& pieces) const;
  double wordsWidth() const { return width_ - notesLeft(); }
  double notesLeft() const { return plan_.xPoint - plan_.before; }
  double tickCentre(std::size_t i) const {
    return plan_.ticks + plan_.tickPitch * (static_cast<double>(i) + 0.5);
  }

  const SheetContent& content_;
  const Style& style_;
  RowPlan plan_;
  double width_;
};

Piece RowSetter::heading(const Group& group, bool continued) const {
  const TableRow& first = *group.rows.front();
  const Sketch::Look plain{style_.body(), Typeface::regular};
  LaidLine words;
  // A run of many or long names is set as small as the other words rather than fill the page.
  for (const double height : {style_.tool(), style_.body()}) {
    std::vector<Run> runs{{runInWords(first, content_.table.step.unit), {height, Typeface::bold}}};
    if (!group.size.empty()) runs.push_back({group.size, plain});
    const std::string notes = runNotes(*first.plan, content_.table.step.unit);
    if (!notes.empty()) runs.push_back({group.size.empty() ? notes : "\u00B7 " + notes, plain});
    if (continued) runs.push_back({"(continued)", plain});
    const std::vector<LaidLine> lines = layParagraph(runs, width_);
    words = stacked(lines);
    if (lines.size() <= kMostHeadingLines) break;
  }

  Piece piece;
  piece.keepWithNext = true;
  piece.sketch.line({0, 0.5}, {width_, 0.5}, {Ink::black, kHeavy, {}});
  piece.sketch.add(words.sketch, 0, 0.6);
  const double baseline = words.height + 0.6 + style_.title() * 1.05;
  const Sketch::Look column{style_.title(), Typeface::bold};
  if (!isStacked(plan_.shape)) {
    const double sign = signWidth(plan_.figureHeight, kFigureFace);
    piece.sketch.text(plan_.xPoint - plan_.before + sign, baseline, "X", column);
    piece.sketch.text(plan_.yPoint - plan_.before + sign, baseline, "Y", column);
  }
  const Sketch::Look label{tickLabelHeight(style_), Typeface::bold, TextAlign::centre};
  const std::vector<const HoleStep*> steps = tickedSteps(*first.plan);
  for (std::size_t i = 0; i < steps.size(); ++i) {
    piece.sketch.text(tickCentre(i), baseline, tickLabel(steps[i]->op, content_.options.english),
                      label);
  }
  if (steps.empty()) piece.sketch.text(tickCentre(0), baseline, "DONE", label);
  piece.height = baseline + 1.0;
  piece.sketch.line({0, piece.height}, {width_, piece.height}, {Ink::black, kThin, {}});
  return piece;
}

std::string RowSetter::smallPrint(const TableRow& row, bool ownSize) const {
  std::string words;
  const auto also = [&](const std::string& text) {
    if (!text.empty()) words += (words.empty() ? "" : " \u00B7 ") + text;
  };
  if (hasFractionsBelow(plan_.shape)) {
    if (!row.xFraction.empty()) also("X " + row.xFraction);
    if (!row.yFraction.empty()) also("Y " + row.yFraction);
  }
  const SetupWords::Row& said = content_.words.rows[&row - content_.table.rows.data()];
  if (ownSize) also(said.size);
  also(keptTo(*row.plan, content_.table.step));
  also(said.note);
  if (content_.options.showRounding) {
    const Unit unit = content_.table.step.unit;
    also("rounded by X " + writeDecimal(row.x.rounding, unit) + ", Y " +
         writeDecimal(row.y.rounding, unit));
  }
  return words;
}

void RowSetter::setFigure(const std::string& figure, bool ofX, double baseline,
                          Sketch& sketch) const {
  const std::string_view text = figure;
  const std::size_t point = std::min(text.find('.'), text.size());
  const double whole = figureWidth(text.substr(0, point), plan_.figureHeight, kFigureFace);
  sketch.figure((ofX ? plan_.xPoint : plan_.yPoint) - whole, baseline, text,
                {plan_.figureHeight, kFigureFace});
}

void RowSetter::setFractions(const TableRow& row, double first, double second,
                             Sketch& sketch) const {
  const Sketch::Look look{fractionHeight(style_)};
  if (!row.xFraction.empty()) sketch.text(plan_.fractions, first, "X " + row.xFraction, look);
  if (!row.yFraction.empty()) sketch.text(plan_.fractions, second, "Y " + row.yFraction, look);
}

RowSetter::Baselines RowSetter::baselines() const {
  const double first = firstBaseline();
  if (isStacked(plan_.shape)) {
    const double second = first + plan_.figureHeight * 1.38;
    return {first, second, first, second};
  }
  if (plan_.shape != RowShape::fractionsBeside) return {first, first, first, first};
  // The two lines fill the height of the figures.
  const double upper = first - plan_.figureHeight + fractionHeight(style_) * 1.03;
  return {first, first, upper, std::max(first, upper + fractionHeight(style_) * 1.6)};
}

/// As high as the figures and fractions reach.
double RowSetter::figuresHeight(const TableRow& row) const {
  const Baselines lines = baselines();
  const double height = lines.y + 0.6;
  if (hasFractionsBelow(plan_.shape) || row.yFraction.empty()) return height;
  return std::max(height, lines.yFraction + fractionHeight(style_) * 0.4);
}

/// A box where the figures would stand, with what is to be expected small in brackets.
void RowSetter::setElsewhere(const TableRow& row, Sketch& sketch) const {
  const PaperBox box{notesLeft(), 1.0, plan_.ticks - 1.5, figuresHeight(row)};
  sketch.box(box, {Ink::black, kMedium, {}});
  const std::string title = "NOT BY COORDINATES";
  const std::string expected = "(about X " + signedText(row.x) + "  Y " + signedText(row.y) + ")";
  const double room = box.width() - 2;
  const double most = std::min(style_.body(), box.height() * 0.30);
  const auto fitted = [&](const std::string& text, Typeface face) {
    const double wide = textWidth(text, most, face);
    return wide > room ? most * room / wide : most;
  };
  const Sketch::Look bold{fitted(title, Typeface::bold), Typeface::bold, TextAlign::centre};
  const Sketch::Look small{fitted(expected, Typeface::regular), Typeface::regular,
                           TextAlign::centre};
  const double middle = (box.left + box.right) / 2,
               spare = box.height() - bold.height - small.height;
  sketch.text(middle, box.top + spare / 3 + bold.height, title, bold);
  sketch.text(middle, box.bottom - spare / 3, expected, small);
}

void RowSetter::setFigures(const TableRow& row, Sketch& sketch) const {
  if (!goesByCoordinates(*row.plan)) return setElsewhere(row, sketch);
  const Baselines lines = baselines();
  setFigure(signedText(row.x), true, lines.x, sketch);
  if (!hasFractionsBelow(plan_.shape)) {
    setFractions(row, lines.xFraction, lines.yFraction, sketch);
  }
  if (isStacked(plan_.shape)) {
    const double left = plan_.idLeft + plan_.idWidth + plan_.figureHeight * 0.45;
    sketch.text(left, lines.x, "X", {plan_.letter, Typeface::bold});
    sketch.text(left, lines.y, "Y", {plan_.letter, Typeface::bold});
  }
  setFigure(signedText(row.y), false, lines.y, sketch);
}

/// The row and its two coordinates can be pointed at.
void RowSetter::target(const TableRow& row, double height, Sketch& sketch) const {
  sketch.target({row.id, {0, 0}, {width_, height}, 0, TargetKind::row});
  const Baselines lines = baselines();
  const auto figure = [&](const Coordinate& shown, double point, double baseline, TargetKind kind) {
    const double left = point - plan_.before;
    const double wide = figureWidth(signedText(shown), plan_.figureHeight, kFigureFace);
    sketch.target({row.id,
                   {left, baseline - plan_.figureHeight * 1.1},
                   {left + wide, baseline + plan_.figureHeight * 0.15},
                   0,
                   kind});
  };
  figure(row.x, plan_.xPoint, lines.x, TargetKind::figureX);
  figure(row.y, plan_.yPoint, lines.y, TargetKind::figureY);
}

/// What is said below the figures: the name when it found no room beside them, and the rest.
std::vector<Run> RowSetter::words(const TableRow& row, bool named, bool ownSize) const {
  std::vector<Run> runs;
  if (!named) runs.push_back({row.id, {style_.body(), Typeface::bold}});
  if (row.disputed) runs.push_back({"DISPUTED", {style_.body(), Typeface::bold}});
  runs.push_back({smallPrint(row, ownSize), {style_.body(), Typeface::regular}});
  return runs;
}

void RowSetter::draw(const TableRow& row, const std::vector<Run>& words, double height, bool last,
                     Sketch& sketch) const {
  Piece piece;
  piece.height = figuresHeight(row);
  setFigures(row, piece.sketch);
  target(row, height, piece.sketch);
  const double first = firstBaseline();
  std::ignore = setId(piece, row.id, plan_.idLeft, first, plan_.idWidth, plan_.figureHeight);
  for (std::size_t i = 0; i < std::max<std::size_t>(1, tickedSteps(*row.plan).size()); ++i) {
    drawTickBox(piece.sketch, {tickCentre(i) - box() / 2, ticksTop(first)}, box());
  }
  double y = piece.height;
  const std::vector<LaidLine> lines = layParagraph(words, wordsWidth());
  for (std::size_t i = 0; i < std::min(lines.size(), kMostLinesInRow); ++i) {
    piece.sketch.add(lines[i].sketch, notesLeft(), y);
    y += lines[i].height;
  }
  if (row.disputed) drawTornEdge(piece.sketch, 0, 1.4, height - 0.8);
  if (last) {
    piece.sketch.line({plan_.idLeft, height}, {width_, height}, {Ink::black, kHairline, {}});
  }
  sketch.add(std::move(piece.sketch), 0, 0);
}

Pieces RowSetter::row(const std::shared_ptr<const RowSetter>& setter, const TableRow& row,
                      const Group& group, std::shared_ptr<const Piece> again) {
  const RowPlan& plan = setter->plan_;
  const IdExtent id = idExtent(row.id, setter->firstBaseline(), plan.idWidth, plan.figureHeight);
  const bool named = id.named, ownSize = group.size.empty();
  const std::vector<Run> words = setter->words(row, named, ownSize);
  const std::vector<double> lines = lineHeights(words, setter->wordsWidth());
  Pieces pieces(1);
  Piece& piece = pieces.front();
  piece.heading = again;
  piece.height = std::max(setter->figuresHeight(row), id.height);
  for (std::size_t i = 0; i < std::min(lines.size(), kMostLinesInRow); ++i) {
    piece.height += lines[i];
  }
  piece.height += lines.empty() ? 0.7 * setter->style_.hand : 0.5;
  const bool whole = lines.size() <= kMostLinesInRow;
  piece.later = [setter, &row, named, ownSize, whole, height = piece.height](Sketch& sketch) {
    setter->draw(row, setter->words(row, named, ownSize), height, whole, sketch);
  };
  if (!whole) setter->addRest(layParagraph(words, setter->wordsWidth()), again, pieces);
  return pieces;
}

/// The lines of a row that are too many to stay together.
void RowSetter::addRest(const std::vector<LaidLine>& lines,
                        const std::shared_ptr<const Piece>& again, Pieces& pieces) const {
  for (std::size_t i = kMostLinesInRow; i < lines.size(); ++i) {
    Piece& more = pieces.emplace_back();
    more.heading = again;
    more.sketch.add(lines[i].sketch, notesLeft(), 0);
    more.height = lines[i].height;
  }
  Piece& end = pieces.back();
  end.sketch.line({plan_.idLeft, end.height}, {width_, end.height}, {Ink::black, kHairline, {}});
}

bool anyStep(const SetupTable& table, bool (*wanted)(const HoleStep&)) {
  return std::any_of(table.rows.begin(), table.rows.end(), [&](const TableRow& row) {
    return std::any_of(row.plan->steps.begin(), row.plan->steps.end(), wanted);
  });
}

/// One box for the edges of all holes, and where the speeds are from.
Pieces afterRows(const SheetContent& content, double width) {
  Pieces pieces;
  const Style& style = content.style;
  if (anyStep(content.table, [](const HoleStep& step) { return step.op == Op::deburr; })) {
    Piece& piece = pieces.emplace_back();
    const double box = 6.2 * style.hand;
    drawTickBox(piece.sketch, {2.4, 0.6}, box);
    const LaidLine words = stacked(
        layText("BREAK THE EDGES of all holes, both sides, when no tool raises another burr",
                {style.body(), Typeface::bold}, width - box - 6));
    piece.sketch.add(words.sketch, box + 5, 0.6 + std::max(0.0, (box - words.height) / 2));
    piece.height = std::max(box, words.height) + 1.8;
  }
  const std::string speeds = speedSource(content.part.material, content.options.english);
  const bool said =
      anyStep(content.table, [](const HoleStep& step) { return step.speed.has_value(); });
  if (speeds.empty() || !said) return pieces;
  const LaidLine words = stacked(layText(speeds, {style.body(), Typeface::regular}, width));
  Piece& piece = pieces.emplace_back();
  piece.sketch = words.sketch;
  piece.height = words.height + 1.2;
  return pieces;
}

/// The first shape that fits; when none does, the narrowest with figures as small as they must be.
RowPlan fittingPlan(const SheetContent& content, double width) {
  RowPlan plan;
  for (const RowShape shape : {RowShape::fractionsBeside, RowShape::fractionsBelow,
                               RowShape::stacked, RowShape::stackedBare}) {
    plan = planRows(content, shape, content.style.figure());
    if (plan.width <= width) return plan;
  }
  for (double height = content.style.figure() * 0.9; plan.width > width && height > 0.5;
       height *= 0.9) {
    plan = planRows(content, RowShape::stackedBare, height);
  }
  return plan;
}

}  // namespace

double rowsWidth(const SheetContent& content, RowShape shape) {
  return planRows(content, shape, content.style.figure()).width;
}

Pieces rowsPieces(const SheetContent& content, double width) {
  const RowPlan plan = fittingPlan(content, width);
  const auto setter = std::make_shared<const RowSetter>(content, plan, width);
  Pieces pieces;
  if (plan.figureHeight < content.style.figure()) {
    const LaidLine words = stacked(layText(
        "Figures smaller than the reading distance asks for: they are too long for this paper.",
        {content.style.body(), Typeface::bold}, width));
    Piece piece;
    piece.sketch = words.sketch;
    piece.height = words.height;
    pieces.push_back(std::move(piece));
  }
  for (const Group& group : groupsOf(content)) {
    pieces.push_back(setter->heading(group, false));
    const auto again = std::make_shared<const Piece>(setter->heading(group, true));
    std::size_t at = 0;
    for (const std::size_t size : chunksOf(group.rows.size())) {
      if (at > 0) pieces.push_back(space(2.4 * content.style.hand));
      for (const std::size_t end = at + size; at < end; ++at) {
        for (Piece& piece : RowSetter::row(setter, *group.rows[at], group, again)) {
          pieces.push_back(std::move(piece));
        }
      }
    }
    pieces.push_back(space(2.6 * content.style.hand));
  }
  for (Piece& piece : afterRows(content, width)) pieces.push_back(std::move(piece));
  return pieces;
}

}  // namespace inchwright
