#pragma once

#include <memory>
#include <vector>

#include "core/sheet/sketch.h"

namespace inchwright {

/// A part of a block that is never torn between pages. Its items stand from its top left corner.
struct Piece {
  double height = 0;
  Sketch sketch;
  bool keepWithNext = false;  ///< a heading, which must not stand last on a page
  bool spaceOnly = false;     ///< a gap: left out at the top of a page
  /// What is set again above this piece when it begins a page: the heading of its group.
  std::shared_ptr<const Piece> heading;
};

/// Empty paper of a given height.
Piece gap(double height);

/// A block of the sheet: what it is made of, from top to bottom, all for one width.
using Pieces = std::vector<Piece>;

/// Where pieces flow: a column that has the same place on every page but may begin lower on some.
struct Column {
  double left = 0;
  double bottom = 0;
  /// Where the column begins on the first page, second page …; the last one holds for the rest.
  std::vector<double> tops;

  double top(std::size_t page) const { return tops[page < tops.size() ? page : tops.size() - 1]; }
};

/// Sets pieces from the top of the column down, page after page, into one sketch a page. A piece
/// that does not fit goes to the next page; one that is taller than a page stands there alone.
std::vector<Sketch> flow(const Pieces& pieces, const Column& column);

/// The height of all pieces below each other.
double heightOf(const Pieces& pieces);

/// All pieces as one that is not torn.
Piece joined(const Pieces& pieces);

/// `right` beside `left`, `offset` further right, as one piece.
Piece beside(const Piece& left, const Piece& right, double offset);

}  // namespace inchwright
