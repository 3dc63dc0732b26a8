#include "core/sheet/lathe_sheet.h"

#include <algorithm>

#include "core/base/english.h"
#include "core/say/edition_words.h"
#include "core/say/figure_words.h"
#include "core/say/lathe_words.h"
#include "core/sheet/flow.h"
#include "core/sheet/half_section.h"
#include "core/sheet/head_room.h"
#include "core/sheet/id_setting.h"
#include "core/sheet/kit_block.h"
#include "core/sheet/paragraph.h"
#include "core/sheet/style.h"
#include "core/sheet/symbols.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

constexpr double kMarginAround = 9.5;
constexpr double kBar = 11;

/// How a row's name, length and diameter stand. Read from far away they take a line each.
enum class Shape { oneLine, diameterBelow, belowEachOther };

struct Columns {
  Shape shape = Shape::oneLine;
  double length = 0;  ///< right ends of the figures
  double dia = 0;
  double tick = 0;  ///< left of the box
};

struct CutColumns {
  double words = 0;   ///< left of what is cut
  double length = 0;  ///< right ends of the figures
  double dia = 0;
  bool isBelow = false;  ///< the figures stand below the words
};

class LatheComposer {
 public:
  LatheComposer(const Job& job, const Part& part, const Solution& solution, const LatheWork& work,
                const Lathe& lathe, const SheetOptions& options)
      : job_(job),
        part_(part),
        solution_(solution),
        work_(work),
        lathe_(lathe),
        options_(options),
        style_(options.readingDistance),
        edition_(editionOf(part, sheetNow(work, lathe))) {
    const bool a4 = options.paper == Paper::a4;
    width_ = a4 ? 210 : 215.9;
    height_ = a4 ? 297 : 279.4;
    inner_ = width_ - 2 * kMarginAround;
  }

  std::vector<Page> take() {
    const Piece foot = footPiece();
    const double bottom = height_ - kMarginAround - foot.height;
    Pieces pieces;
    const Setup* named = part_.setup(work_.setup);
    const Setup setup = named ? *named : defaultSetup(part_, solution_);
    Piece picture = halfSectionPiece(work_, setup, inner_, 78);
    if (picture.height > 0) pieces.push_back(std::move(picture));
    addWarnings(pieces);
    addKit(pieces);
    addRows(pieces);
    addCuts(pieces);
    const auto headHeight = [&](std::size_t page, std::size_t of) {
      return headPiece(page, of).height;
    };
    const auto lay = [&](HeadRoom& heads) {
      return flow(pieces, [&](std::size_t page) {
        return Stretch{page, kMarginAround, kMarginAround + heads.on(page) + 2, bottom - 1};
      });
    };
    const Flowed flowed =
        layNumbered(headHeight, lay, [](const Flowed& laid) { return laid.pages.size(); });
    std::vector<Page> pages;
    for (std::size_t i = 0; i < flowed.pages.size(); ++i) {
      Sketch sketch;
      headPiece(i + 1, flowed.pages.size()).drawOnto(sketch, kMarginAround, kMarginAround);
      for (const Laid& laid : flowed.pages[i]) laid.piece->drawOnto(sketch, laid.left, laid.top);
      foot.drawOnto(sketch, kMarginAround, bottom);
      pages.push_back(sketch.onPage(width_, height_));
    }
    return pages;
  }

 private:
  std::string said(const std::string& words) const { return inEnglish(words, options_.english); }

  Piece textPiece(const std::vector<Run>& runs) const {
    const LaidLine lines = stacked(layParagraph(runs, inner_));
    Piece piece;
    piece.sketch = lines.sketch;
    piece.height = lines.height;
    return piece;
  }

  Piece headPiece(std::size_t page, std::size_t pages) const {
    Piece name;
    const LaidLine lines = stacked(layText(part_.name, {7.5, Typeface::bold}, inner_ - 45));
    name.sketch.add(lines.sketch, 0, -1);
    name.height = lines.height;
    if (solution_.isDraft()) {
      name.sketch.box({inner_ - 38, 0.6, inner_ - 0.6, 12}, {Ink::black, 1.2, {}});
      name.sketch.text(inner_ - 19.3, 9.4, "DRAFT", {7.5, Typeface::bold, TextAlign::centre});
      name.height = std::max(name.height, 13.5);
    }
    Piece bar;
    bar.height = kBar;
    bar.sketch.fill({0, 0, inner_, kBar});
    const std::string unit = work_.step.unit == Unit::inch ? "INCHES" : said("MILLIMETRES");
    bar.sketch.text(3.5, 8.9, unit, {6.8, Typeface::bold, TextAlign::left, Ink::white});
    bar.sketch.text(inner_ - 3.5, 7.6,
                    (work_.halved ? "counts the radius · step " : "counts the diameter · step ") +
                        stepText(work_.step),
                    {4.2, Typeface::bold, TextAlign::right, Ink::white});
    const Sketch::Look strong{style_.title(), Typeface::bold}, plain{style_.title()};
    std::string held = "in the lathe, " + heldWords(work_, lathe_);
    if (!part_.material.empty()) held += " · " + part_.material;
    if (part_.quantity > 1) held += " · make " + std::to_string(part_.quantity);
    const Sketch::Look small{style_.body()};
    const std::string which = job_.print + (job_.print.empty() ? "" : " · ") + job_.title + " · " +
                              options_.date + " · edition " +
                              editionName(edition_, options_.isNoted) + " · page " +
                              std::to_string(page) + " of " + std::to_string(pages);
    return joined({name, bar, space(0.8),
                   textPiece({{"SETUP " + work_.setup, strong}, {said(held), plain}}),
                   textPiece({{which, small}})});
  }

  Piece footPiece() const {
    const Sketch::Look plain{style_.caution()};
    Piece piece = textPiece(
        {{"Chuck key out before the switch. Eye protection; sleeves and hair tied back; no gloves; "
          "no rag or emery cloth round the work; a handle on every file. Part off close to the "
          "chuck, never on a centre. Stop the work to measure it. The machine's manual, local "
          "rules "
          "and qualified practice come first.",
          plain}});
    piece.sketch.line({0, 0.2}, {inner_, 0.2}, {Ink::black, kThin, {}});
    return piece;
  }

  void addHeading(Pieces& pieces, const std::string& words) const {
    const Piece text = textPiece({{words, {style_.label(), Typeface::bold}}});
    Piece piece;
    piece.sketch.line({0, 0.5}, {inner_, 0.5}, {Ink::black, kHeavy, {}});
    piece.sketch.add(text.sketch, 0, 1.2);
    piece.height = text.height + 1.2;
    piece.keepWithNext = true;
    pieces.push_back(space(2));
    pieces.push_back(std::move(piece));
  }

  void addWarnings(Pieces& pieces) const {
    std::vector<std::string> all;
    if (edition_.isNew()) all.push_back(changedSinceWords(edition_));
    all.insert(all.end(), edition_.changes.begin(), edition_.changes.end());
    const std::vector<std::string> mind = latheWarnings(work_);
    all.insert(all.end(), mind.begin(), mind.end());
    all.insert(all.end(), options_.warnings.begin(), options_.warnings.end());
    for (const std::string& one : all) {
      pieces.push_back(
          textPiece({{"Mind: ", {style_.body(), Typeface::bold}}, {said(one), {style_.body()}}}));
    }
  }

  void addKit(Pieces& pieces) const {
    const Result<KitOfPart> kit = kitOfPart(job_, part_, solution_);
    if (!kit) return;
    Pieces more = kitPieces(kitLines(*kit, work_.step), style_, inner_);
    std::move(more.begin(), more.end(), std::back_inserter(pieces));
  }

  double struckOutHeight() const { return std::min(style_.label(), style_.figure()); }

  Columns columns() const {
    const double figure = style_.figure();
    const auto wide = [&](const LatheFigure& shown) {
      return figureWidth(shown.text, figure, Typeface::regular);
    };
    const double usual = figure * 5.4;
    double length = usual, dia = 0, struckOut = 0;
    for (const LatheRow& row : work_.rows) {
      length = std::max(length, wide(row.length));
      if (row.dia) dia = std::max(dia, wide(*row.dia));
      if (!row.struckOut) continue;
      const double label = textWidth(row.struckOut->text, struckOutHeight(), Typeface::regular);
      struckOut = std::max(struckOut, figure + label + 1);
    }
    const double ids = std::max(30.0, figure * 3.2);
    const double tick = inner_ - figure - 1;
    const double beside = ids + std::max(usual * 2 + 8, length + dia + 4);
    if (beside + struckOut + 1 <= tick) return {Shape::oneLine, ids + length, beside, tick};
    const double below = ids + std::max(length, dia);
    if (below + 1 <= tick) return {Shape::diameterBelow, below, below, tick};
    return {Shape::belowEachOther, tick - 1, tick - 1, tick};
  }

  void addRows(Pieces& pieces) const {
    if (work_.rows.empty()) return;
    addHeading(pieces, "TURN TO");
    const Columns at = columns();
    if (at.shape != Shape::belowEachOther) {
      Piece headings;
      headings.height = style_.label() * kLineSpacing;
      const double base = style_.label() * kAboveBaseline;
      const Sketch::Look look{style_.label(), Typeface::bold, TextAlign::right};
      headings.sketch.text(at.length, base, lengthHeading(work_), look);
      if (at.shape == Shape::oneLine) headings.sketch.text(at.dia, base, diaHeading(work_), look);
      headings.keepWithNext = true;
      pieces.push_back(std::move(headings));
    }
    for (const LatheRow& row : work_.rows) pieces.push_back(rowPiece(row, at));
  }

  /// Below what the piece holds so far, as many lines as it takes.
  void addNote(Piece& piece, const std::string& note, double left) const {
    if (note.empty()) return;
    const LaidLine lines = stacked(layParagraph({{said(note), {style_.body()}}}, inner_ - left));
    piece.sketch.add(lines.sketch, left, piece.height);
    piece.height += lines.height;
  }

  /// A figure, from the left of its sign so that last figures stand below each other. On a line of
  /// its own it says what it is: its letter as far as it is read, in words where there is room.
  void setFigure(Piece& piece, double right, double base, const std::string& text,
                 const std::string& heading, const std::string& letter) const {
    const double left = right - figureWidth(text, style_.figure(), Typeface::regular);
    piece.sketch.figure(left, base, text, {style_.figure()});
    if (heading.empty()) return;
    piece.sketch.text(0, base, letter, {style_.second(), Typeface::bold});
    const double words = textWidth(letter, style_.second(), Typeface::bold) + 3;
    const double end = words + textWidth(heading, style_.label(), Typeface::regular);
    if (end + 2 <= left) piece.sketch.text(words, base, heading, {style_.label()});
  }

  Piece rowPiece(const LatheRow& row, const Columns& at) const {
    const double figure = style_.figure();
    const double line = figure * 1.62;
    const double base = figure * 1.32;
    const bool alone = at.shape == Shape::belowEachOther;
    Piece piece;
    piece.height = line;
    const double room =
        alone ? at.tick - 1
              : at.length - figureWidth(row.length.text, figure, Typeface::regular) - 2;
    const bool named = setId(piece, row.id, 0, base, room, figure);
    if (alone) piece.height += line;
    setFigure(piece, at.length, piece.height - line + base, row.length.text,
              alone ? lengthHeading(work_) : "", work_.carriageLetter);
    const bool below = at.shape != Shape::oneLine;
    if (row.dia && below) piece.height += line;
    const double last = piece.height - line + base;
    if (row.dia) {
      setFigure(piece, at.dia, last, row.dia->text, below ? diaHeading(work_) : "",
                work_.crossLetter);
    }
    if (row.struckOut) {
      const double small = struckOutHeight();
      const double wide = textWidth(row.struckOut->text, small, Typeface::regular);
      const double left = std::min(at.dia + figure, inner_ - wide - 1);
      piece.sketch.text(left, last, row.struckOut->text, {small});
      piece.sketch.line({left - 1, last - small * 0.42}, {left + wide + 1, last - small * 0.42},
                        {Ink::black, kMedium, {}});
    }
    piece.sketch.box({at.tick, base - figure, at.tick + figure, base}, {Ink::black, kThin, {}});
    std::string note = row.kind == FeatureKind::outside ? "" : std::string(nameOf(row.kind));
    if (const std::string more = latheNote(row, work_.step); !more.empty()) {
      note += (note.empty() ? "" : ": ") + more;
    }
    if (!named) note = row.id + (note.empty() ? "" : " · ") + note;
    addNote(piece, note, 0);
    piece.sketch.line({0, piece.height}, {inner_, piece.height}, {Ink::black, kHairline, {}});
    return piece;
  }

  std::string lengthOf(const Cut& cut) const {
    return cut.length ? work_.carriageLetter + " " + cut.length->text : "";
  }
  std::string diaOf(const Cut& cut) const {
    return cut.dia ? work_.crossLetter + " " + cut.dia->text : "";
  }

  CutColumns cutColumns() const {
    constexpr double kLeastWords = 60;
    const double height = style_.tool();
    const auto wide = [&](const std::string& text) {
      return textWidth(text, height, Typeface::bold);
    };
    double length = 0, dia = 0;
    for (const Cut& cut : work_.cuts) {
      length = std::max(length, wide(lengthOf(cut)));
      dia = std::max(dia, wide(diaOf(cut)));
    }
    CutColumns at;
    at.words = std::max(9 * style_.hand, wide(std::to_string(work_.cuts.size())) + 2);
    at.dia = std::min(inner_ - 18, inner_ - height - 4);
    at.length = std::min(inner_ - 62, at.dia - dia - 5);
    at.isBelow = at.length - length - 3 - at.words < kLeastWords;
    return at;
  }

  Piece cutPiece(const Cut& cut, int number, const CutColumns& at) const {
    const double height = style_.tool();
    const Sketch::Look plain{height}, right{height, Typeface::bold, TextAlign::right};
    const std::string length = lengthOf(cut), dia = diaOf(cut);
    // Of the figures one may be missing; the words have its room then.
    const double figures = !length.empty() ? at.length - textWidth(length, height, Typeface::bold)
                           : !dia.empty()  ? at.dia - textWidth(dia, height, Typeface::bold)
                                           : inner_ - height - 1;
    const double end = at.isBelow ? inner_ - height - 1 : figures;
    const LaidLine words =
        stacked(layParagraph({{said(cutWords(cut)), plain}}, end - 3 - at.words));
    Piece piece;
    piece.sketch.text(0, height * kAboveBaseline, std::to_string(number), {height, Typeface::bold});
    piece.sketch.add(words.sketch, at.words, 0);
    piece.sketch.box(
        {inner_ - height - 1, height * (kAboveBaseline - 1), inner_ - 1, height * kAboveBaseline},
        {Ink::black, kThin, {}});
    piece.height = words.height;
    const bool below = at.isBelow && !(length + dia).empty();
    const double base = (below ? words.height : 0) + height * kAboveBaseline;
    if (below) piece.height += height * kLineSpacing;
    if (!length.empty()) piece.sketch.text(at.length, base, length, right);
    if (!dia.empty()) piece.sketch.text(at.dia, base, dia, right);
    addNote(piece, cutNote(cut, work_.carriageLetter), at.words);
    return piece;
  }

  void addCuts(Pieces& pieces) const {
    if (work_.cuts.empty()) return;
    addHeading(pieces, "CUTS IN ORDER");
    const CutColumns at = cutColumns();
    int number = 0;
    for (const Cut& cut : work_.cuts) pieces.push_back(cutPiece(cut, ++number, at));
  }

  const Job& job_;
  const Part& part_;
  const Solution& solution_;
  const LatheWork& work_;
  const Lathe& lathe_;
  const SheetOptions& options_;
  Style style_;
  SheetEdition edition_;
  double width_ = 210;
  double height_ = 297;
  double inner_ = 0;
};

}  // namespace

std::vector<Page> latheSheet(const Job& job, const Part& part, const Solution& solution,
                             const LatheWork& work, const Lathe& lathe,
                             const SheetOptions& options) {
  return LatheComposer(job, part, solution, work, lathe, options).take();
}

}  // namespace inchwright
