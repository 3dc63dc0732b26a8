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

struct Columns {
  double length = 0;  ///< right ends of the figures
  double dia = 0;
  double tick = 0;  ///< left of the box
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

  Columns columns() const {
    const double wide = style_.figure() * 5.4;
    const double ids = std::max(30.0, style_.figure() * 3.2);
    return {ids + wide, ids + 2 * wide + 8, inner_ - style_.figure() - 1};
  }

  void addRows(Pieces& pieces) const {
    if (work_.rows.empty()) return;
    addHeading(pieces, "TURN TO");
    const Columns at = columns();
    Piece headings;
    headings.height = style_.label() * kLineSpacing;
    const Sketch::Look look{style_.label(), Typeface::bold, TextAlign::right};
    headings.sketch.text(at.length, style_.label() * kAboveBaseline, lengthHeading(work_), look);
    headings.sketch.text(at.dia, style_.label() * kAboveBaseline, diaHeading(work_), look);
    headings.keepWithNext = true;
    pieces.push_back(std::move(headings));
    for (const LatheRow& row : work_.rows) pieces.push_back(rowPiece(row, at));
  }

  /// Below what the piece holds so far, as many lines as it takes.
  void addNote(Piece& piece, const std::string& note, double left) const {
    if (note.empty()) return;
    const LaidLine lines = stacked(layParagraph({{said(note), {style_.body()}}}, inner_ - left));
    piece.sketch.add(lines.sketch, left, piece.height);
    piece.height += lines.height;
  }

  Piece rowPiece(const LatheRow& row, const Columns& at) const {
    const double figure = style_.figure();
    const double base = figure * 1.32;
    Piece piece;
    piece.height = figure * 1.62;
    // From the left of the sign, so that last figures stand below each other.
    const auto set = [&](double right, const std::string& text) {
      piece.sketch.figure(right - figureWidth(text, figure, Typeface::regular), base, text,
                          {figure});
    };
    const double room = at.length - figureWidth(row.length.text, figure, Typeface::regular) - 2;
    const bool named = setId(piece, row.id, 0, base, room, figure);
    set(at.length, row.length.text);
    if (row.dia) set(at.dia, row.dia->text);
    if (row.struckOut) {
      const double small = style_.label(), left = at.dia + style_.figure();
      const double wide = textWidth(row.struckOut->text, small, Typeface::regular);
      piece.sketch.text(left, base, row.struckOut->text, {small});
      piece.sketch.line({left - 1, base - small * 0.42}, {left + wide + 1, base - small * 0.42},
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

  void addCuts(Pieces& pieces) const {
    if (work_.cuts.empty()) return;
    addHeading(pieces, "CUTS IN ORDER");
    int number = 0;
    for (const Cut& cut : work_.cuts) {
      const double height = style_.tool();
      const double base = height * kAboveBaseline;
      Piece piece;
      piece.height = height * kLineSpacing;
      const Sketch::Look plain{height}, right{height, Typeface::bold, TextAlign::right};
      piece.sketch.text(0, base, std::to_string(++number), {height, Typeface::bold});
      piece.sketch.text(9 * style_.hand, base, said(cutWords(cut)), plain);
      if (cut.length) {
        piece.sketch.text(inner_ - 62, base, work_.carriageLetter + " " + cut.length->text, right);
      }
      if (cut.dia) {
        piece.sketch.text(inner_ - 18, base, work_.crossLetter + " " + cut.dia->text, right);
      }
      piece.sketch.box({inner_ - height - 1, base - height, inner_ - 1, base},
                       {Ink::black, kThin, {}});
      addNote(piece, cutNote(cut, work_.carriageLetter), 9 * style_.hand);
      pieces.push_back(std::move(piece));
    }
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
