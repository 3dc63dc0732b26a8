#include "core/sheet/flow.h"

#include <algorithm>

namespace inchwright {
namespace {

/// The pieces from `first` that must stay together, and how high they are.
struct Unit {
  std::size_t end = 0;
  double height = 0;
};

Unit unitAt(const Pieces& pieces, std::size_t first) {
  Unit unit{first, 0};
  bool more = true;
  while (more && unit.end < pieces.size()) {
    const Piece& piece = pieces[unit.end++];
    unit.height += piece.height;
    more = piece.keepWithNext || piece.spaceOnly;
  }
  return unit;
}

}  // namespace

Piece gap(double height) {
  Piece piece;
  piece.height = height;
  piece.spaceOnly = true;
  return piece;
}

std::vector<Sketch> flow(const Pieces& pieces, const Column& column) {
  std::vector<Sketch> pages;
  if (pieces.empty()) return pages;
  constexpr double kSlack = 1e-6;
  pages.emplace_back();
  double y = column.top(0);
  bool fresh = true;
  for (std::size_t at = 0; at < pieces.size();) {
    const Unit unit = unitAt(pieces, at);
    if (!fresh && y + unit.height > column.bottom + kSlack) {
      pages.emplace_back();
      y = column.top(pages.size() - 1);
      fresh = true;
    }
    for (; at < unit.end; ++at) {
      const Piece& piece = pieces[at];
      if (fresh && piece.spaceOnly) continue;
      if (fresh && piece.heading && pages.size() > 1) {
        pages.back().add(piece.heading->sketch, column.left, y);
        y += piece.heading->height;
      }
      pages.back().add(piece.sketch, column.left, y);
      y += piece.height;
      fresh = false;
    }
  }
  return pages;
}

double heightOf(const Pieces& pieces) {
  double height = 0;
  for (const Piece& piece : pieces) height += piece.height;
  return height;
}

Piece joined(const Pieces& pieces) {
  Piece all;
  for (const Piece& piece : pieces) {
    all.sketch.add(piece.sketch, 0, all.height);
    all.height += piece.height;
  }
  return all;
}

Piece beside(const Piece& left, const Piece& right, double offset) {
  Piece both;
  both.height = std::max(left.height, right.height);
  both.sketch.add(left.sketch, 0, 0);
  both.sketch.add(right.sketch, offset, 0);
  return both;
}

}  // namespace inchwright
