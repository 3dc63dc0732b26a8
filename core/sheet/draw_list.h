#pragma once

#include <string>
#include <variant>
#include <vector>

#include "core/geometry/point.h"

namespace inchwright {

// All points are on paper: millimetres from the top left corner, x to the right, y DOWN.

enum class Ink {
  black,
  grey,  ///< secondary; never carries meaning alone
  red,   ///< doubt: always with a word or shape beside it
  blue,  ///< what is mine: always with a word or shape beside it
  white,
  pale,  ///< a light fill behind text
};

struct Stroke {
  Ink ink = Ink::black;
  double width = 0.25;       ///< mm
  std::vector<double> dash;  ///< mm on, mm off; empty is solid

  bool operator==(const Stroke&) const = default;
};

/// An open or closed run of straight lines.
struct PolylineItem {
  std::vector<PlanePoint> points;
  bool closed = false;
  Stroke stroke;
  bool stroked = true;
  bool filled = false;
  Ink fill = Ink::white;

  bool operator==(const PolylineItem&) const = default;
};

/// A circle, or an arc of one when `sweep` is not 360: from `start`, anticlockwise as seen,
/// degrees.
struct CircleItem {
  PlanePoint centre;
  double radius = 1;
  double start = 0;
  double sweep = 360;
  Stroke stroke;
  bool stroked = true;
  bool filled = false;
  Ink fill = Ink::white;

  bool operator==(const CircleItem&) const = default;
};

enum class TextAlign { left, centre, right };
enum class Typeface { regular, bold, mono, monoBold };

/// One line of text. `at` is on the baseline. `height` is that of a figure (digit) in mm, which is
/// what a reading distance asks for; painters scale the font so that digits have that height.
struct TextItem {
  PlanePoint at;
  std::string text;  ///< UTF-8
  double height = 2.5;
  TextAlign align = TextAlign::left;
  Typeface face = Typeface::regular;
  Ink ink = Ink::black;
  double turn = 0;  ///< degrees anticlockwise about `at`

  bool operator==(const TextItem&) const = default;
};

using DrawItem = std::variant<PolylineItem, CircleItem, TextItem>;

/// What of a place can be pointed at: where it is pictured, its row, or one of its coordinates; or
/// what holds the work, to be dragged.
enum class TargetKind {
  pictured,
  row,
  figureX,
  figureY,
  // What holds the work, and what is to be kept clear of.
  parallel,
  fixedJaw,
  movingJaw,
  stop,
  clamp,
  clearOf
};

/// A place of the part that can be pointed at. Where it is pictured, a circle about `from` when it
/// has a radius, else the line (or the one point) from `from` to `to`; of a row or a coordinate the
/// box from its upper left corner to its lower right one. What holds the work is a box likewise and
/// of no place.
struct PaperTarget {
  std::string place;  ///< its id
  PlanePoint from;
  PlanePoint to;
  double radius = 0;  ///< mm
  TargetKind kind = TargetKind::pictured;
  std::size_t which = 0;  ///< of the setup's parallels, clamps or clear_of
  /// Of a parallel: the way away from its jaw, as long as 1 mm of the work is on paper; of a clamp
  /// or what is to be kept clear of the way along the first axis of the face, and along the second.
  /// Else 0, 0.
  PlanePoint away = {};
  PlanePoint up = {};

  bool operator==(const PaperTarget&) const = default;
};

/// One side of paper, painted in the order of its items.
struct Page {
  double width = 210;   ///< mm
  double height = 297;  ///< mm
  std::vector<DrawItem> items;
  std::vector<PaperTarget> targets = {};  ///< nothing of them is seen

  bool operator==(const Page&) const = default;
};

}  // namespace inchwright
