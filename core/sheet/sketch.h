#pragma once

#include <string_view>
#include <utility>
#include <vector>

#include "core/sheet/bounds.h"
#include "core/sheet/draw_list.h"

namespace inchwright {

/// Gathers draw items about an origin of its own, to be moved into place later.
class Sketch {
 public:
  /// The look of a text. `height` is that of its figures, mm.
  struct Look {
    double height = 3;
    Typeface face = Typeface::regular;
    TextAlign align = TextAlign::left;
    Ink ink = Ink::black;
    double turn = 0;
  };

  /// One line of text on the baseline at x, y. Control characters become spaces; empty text is
  /// left out.
  void text(double x, double y, std::string_view words, const Look& look);
  /// A coordinate: as `text`, with the short hyphen of the face drawn out to a full minus, so that
  /// the signs can be told apart from afar and the text still be found by searching for `-0.5`.
  void figure(double x, double y, std::string_view figure, const Look& look);
  void line(PlanePoint from, PlanePoint to, const Stroke& stroke);
  void polyline(std::vector<PlanePoint> points, const Stroke& stroke, bool closed = false);
  void box(const PaperBox& box, const Stroke& stroke);
  void fill(std::vector<PlanePoint> points, Ink ink = Ink::black);
  void fill(const PaperBox& box, Ink ink = Ink::black);
  void circle(PlanePoint centre, double radius, const Stroke& stroke);
  /// A disc without an outline.
  void disc(PlanePoint centre, double radius, Ink ink);
  void add(DrawItem item);
  void add(const Sketch& other, double dx, double dy);
  void add(Sketch&& other, double dx, double dy);
  void target(PaperTarget target);

  const std::vector<PaperTarget>& targets() const { return targets_; }
  const std::vector<DrawItem>& items() const { return items_; }
  bool empty() const { return items_.empty(); }
  /// What was gathered, as a page of that size; the sketch is then empty.
  Page onPage(double width, double height);

 private:
  std::vector<DrawItem> items_;
  std::vector<PaperTarget> targets_;
};

/// How far a coordinate's figures stand right of where its sign begins: a sign's width.
double signWidth(double height, Typeface face);
/// The width of a coordinate from the left of its sign column to its last figure, whether it has a
/// sign or not.
double figureWidth(std::string_view figure, double height, Typeface face);

}  // namespace inchwright
