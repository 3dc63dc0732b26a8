#include "core/sheet/plain_pages.h"

#include <algorithm>

#include "core/sheet/paragraph.h"
#include "core/sheet/style.h"

namespace inchwright {
namespace {

constexpr double kTitleHeight = 6.5;
constexpr double kBody = 2.8;
constexpr double kSmall = 2.1;
constexpr double kFootHeight = 9;

std::string underTitle(const JobOnPaper& job) {
  std::string words;
  const auto also = [&](const std::string& label, const std::string& text) {
    if (!text.empty()) words += (words.empty() ? "" : " \u00B7 ") + label + text;
  };
  also("", job.job.title);
  also("print ", job.job.print);
  also("", job.options.date);
  return words;
}

}  // namespace

PageSize uprightSize(Paper paper) {
  return paper == Paper::a4 ? PageSize{210, 297} : PageSize{215.9, 279.4};
}

double plainWidth(const JobOnPaper& job) {
  return uprightSize(job.options.paper).width - 2 * kPlainMargin;
}

Step readoutStep(const JobOnPaper& job) {
  const Unit unit = job.job.machine.unit;
  const Result<Step> step = readStep(job.job.machine.step, unit);
  return step ? *step : *readStep(unit == Unit::inch ? "0.0005" : kMillimetreStep, unit);
}

double plainBottom(const JobOnPaper& job) {
  return uprightSize(job.options.paper).height - kPlainMargin - kFootHeight;
}

double drawPlainFrame(const JobOnPaper& job, const std::string& title, std::size_t page,
                      std::size_t pages, Sketch& sketch) {
  const double width = plainWidth(job);
  const LaidLine name = stacked(layText(title, {kTitleHeight, Typeface::bold}, width));
  sketch.add(name.sketch, kPlainMargin, kPlainMargin - 2);
  const LaidLine under = stacked(layText(underTitle(job), {kBody}, width));
  const double top = kPlainMargin - 2 + name.height;
  sketch.add(under.sketch, kPlainMargin, top);

  const double foot = plainBottom(job) + 1;
  sketch.line({kPlainMargin, foot}, {kPlainMargin + width, foot}, {Ink::black, kThin, {}});
  const LaidLine caution = stacked(
      layText("Eye protection on, guards on, work clamped. The machine's manual, local rules and "
              "qualified practice come first.",
              {kSmall}, width - 26));
  sketch.add(caution.sketch, kPlainMargin, foot + 0.6);
  sketch.text(kPlainMargin + width, foot + 0.6 + kSmall * kAboveBaseline,
              "page " + std::to_string(page) + " of " + std::to_string(pages),
              {kSmall, Typeface::bold, TextAlign::right});
  return top + under.height + 2.5;
}

std::vector<Page> plainPages(const JobOnPaper& job, const std::string& title,
                             const Pieces& pieces) {
  const PageSize size = uprightSize(job.options.paper);
  Sketch measured;
  const double top = drawPlainFrame(job, title, 1, 1, measured);
  const Flowed flowed = flow(pieces, [&](std::size_t page) {
    return Stretch{page, kPlainMargin, top, plainBottom(job)};
  });
  std::vector<Page> all;
  const std::size_t count = std::max<std::size_t>(1, flowed.pages.size());
  for (std::size_t i = 0; i < count; ++i) {
    Sketch sketch;
    drawPlainFrame(job, title, i + 1, count, sketch);
    if (i < flowed.pages.size()) {
      for (const Laid& laid : flowed.pages[i]) laid.piece->drawOnto(sketch, laid.left, laid.top);
    }
    all.push_back(sketch.onPage(size.width, size.height));
  }
  return all;
}

Piece plainHeading(const std::string& words, double width) {
  const LaidLine lines = stacked(layText(words, {3.6, Typeface::bold}, width));
  Piece piece;
  piece.keepWithNext = true;
  piece.sketch.line({0, 0.4}, {width, 0.4}, {Ink::black, kMedium, {}});
  piece.sketch.add(lines.sketch, 0, 0.8);
  piece.height = lines.height + 1.2;
  return piece;
}

Pieces plainText(const std::string& words, double width, bool bold) {
  Pieces pieces;
  for (const LaidLine& line :
       layText(words, {kBody, bold ? Typeface::bold : Typeface::regular}, width)) {
    Piece& piece = pieces.emplace_back();
    piece.sketch.add(line.sketch, 0, 0);
    piece.height = line.height;
  }
  return pieces;
}

Piece plainRow(const std::vector<PlainCell>& cells, double width) {
  Piece piece;
  for (const PlainCell& cell : cells) {
    const Sketch::Look look{kBody, cell.bold ? Typeface::bold : Typeface::regular};
    const LaidLine lines = stacked(layText(cell.text, look, cell.width));
    piece.sketch.add(lines.sketch, cell.left, 0.5);
    piece.height = std::max(piece.height, lines.height);
  }
  piece.height += 1.2;
  piece.sketch.line({0, piece.height - 0.2}, {width, piece.height - 0.2},
                    {Ink::black, kHairline, {}});
  return piece;
}

}  // namespace inchwright
