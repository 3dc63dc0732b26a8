#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/sheet/sketch.h"

namespace inchwright {

/// A stretch of text in one look, part of a paragraph.
struct Run {
  std::string text;
  Sketch::Look look;
  bool figure = false;  ///< a coordinate, whose sign is to stand out
};

/// One laid line of a paragraph: its items stand from the top left corner at 0, 0.
struct LaidLine {
  Sketch sketch;
  double height = 0;
  double baseline = 0;  ///< of its first line, from the top
};

/// Lays runs of text into lines no wider than `width`, each as high as what is in it needs.
std::vector<LaidLine> layParagraph(const std::vector<Run>& runs, double width);
/// The same for one look.
std::vector<LaidLine> layText(std::string_view text, const Sketch::Look& look, double width);

/// How high the lines of `layParagraph` would be, without setting them.
std::vector<double> lineHeights(const std::vector<Run>& runs, double width);

/// Splits an instruction so that its figures with a sign stand out: `set X -0.1000` gives
/// `set X` in `plain` and `-0.1000` in `strong`. One in brackets is an aside and does not.
std::vector<Run> emphasiseFigures(std::string_view text, const Sketch::Look& plain,
                                  const Sketch::Look& strong);

/// The lines below each other in one sketch, and how high they are together.
LaidLine stacked(const std::vector<LaidLine>& lines);

}  // namespace inchwright
