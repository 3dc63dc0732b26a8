#pragma once

#include <cstddef>
#include <functional>
#include <memory>
#include <vector>

#include "core/sheet/sketch.h"

namespace inchwright {

/// A part of a block that is never torn between pages. Its items stand from its top left corner.
struct Piece {
  double height = 0;
  Sketch sketch;
  /// What else it shows, drawn when its page is; what it refers to outlives the piece.
  std::function<void(Sketch&)> later = {};
  bool keepWithNext = false;  ///< a heading, which must not stand last on a page
  bool spaceOnly = false;     ///< a gap: left out at the top of a page
  /// What is set again above this piece when it begins a page: the heading of its group.
  std::shared_ptr<const Piece> heading;

  /// All it shows, `dx`, `dy` from the origin of `onto`.
  void drawOnto(Sketch& onto, double dx, double dy) const;
};

/// Empty paper of a given height.
Piece space(double height);

/// A block of the sheet: what it is made of, from top to bottom, all for one width.
using Pieces = std::vector<Piece>;

/// A stretch of a page that pieces flow into.
struct Stretch {
  std::size_t page = 0;
  double left = 0;
  double top = 0;
  double bottom = 0;

  double room() const { return bottom - top; }
};

/// The stretches in the order in which they are filled: asked for by number as they are needed.
using Stretches = std::function<Stretch(std::size_t)>;

/// A piece where it lies on a page.
struct Laid {
  const Piece* piece = nullptr;
  double left = 0;
  double top = 0;
};
using LaidPages = std::vector<std::vector<Laid>>;

struct Flowed {
  LaidPages pages;
  Stretch last;    ///< the stretch that holds the last piece
  double end = 0;  ///< where that piece ends, mm down the page
};

/// Sets pieces from the top of each stretch down. A piece that does not fit goes to the next
/// stretch that holds it; one that fits none goes to the roomiest of those that follow. What is
/// laid points at the pieces given and their headings.
Flowed flow(const Pieces& pieces, const Stretches& stretches);

/// The height of all pieces below each other.
double heightOf(const Pieces& pieces);

/// All pieces as one that is not torn.
Piece joined(const Pieces& pieces);

/// `right` beside `left`, `offset` further right, as one piece.
Piece beside(const Piece& left, const Piece& right, double offset);

}  // namespace inchwright
