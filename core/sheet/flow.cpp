#include "core/sheet/flow.h"

#include <algorithm>
#include <utility>

namespace inchwright {
namespace {

constexpr double kSlack = 1e-6;

/// The pieces from `first` that must stay together, and how high they are.
struct Together {
  std::size_t end = 0;
  double height = 0;
};

Together togetherFrom(const Pieces& pieces, std::size_t first) {
  Together unit{first, 0};
  bool more = true;
  while (more && unit.end < pieces.size()) {
    const Piece& piece = pieces[unit.end++];
    unit.height += piece.height;
    more = piece.keepWithNext || piece.spaceOnly;
  }
  return unit;
}

/// The next stretch from `number` on that holds `height`; when none does, the roomiest of them.
std::size_t roomierStretch(const Stretches& stretches, std::size_t number, double height) {
  constexpr std::size_t kMostAhead = 500;
  std::size_t best = number;
  for (std::size_t i = number; i < number + kMostAhead; ++i) {
    const double room = stretches(i).room();
    if (room > stretches(best).room() + kSlack) best = i;
    if (room + kSlack >= height) break;
  }
  return best;
}

}  // namespace

void Piece::drawOnto(Sketch& onto, double dx, double dy) const {
  onto.add(sketch, dx, dy);
  if (!later) return;
  Sketch more;
  later(more);
  onto.add(std::move(more), dx, dy);
}

Piece space(double height) {
  Piece piece;
  piece.height = height;
  piece.spaceOnly = true;
  return piece;
}

Flowed flow(const Pieces& pieces, const Stretches& stretches) {
  Flowed flowed;
  std::size_t number = 0;
  Stretch stretch = stretches(0);
  double y = stretch.top;
  const auto turn = [&] {
    stretch = stretches(++number);
    y = stretch.top;
  };
  for (std::size_t at = 0; at < pieces.size();) {
    const Together unit = togetherFrom(pieces, at);
    const auto fits = [&] { return y + unit.height <= stretch.bottom + kSlack; };
    const bool empty = std::all_of(pieces.begin() + static_cast<std::ptrdiff_t>(at),
                                   pieces.begin() + static_cast<std::ptrdiff_t>(unit.end),
                                   [](const Piece& piece) { return piece.spaceOnly; });
    if (empty) break;  // nothing but space is left
    if (y > stretch.top && !fits()) turn();
    const std::shared_ptr<const Piece>& heading = pieces[at].heading;
    const double whole = unit.height + (heading ? heading->height : 0);
    if (y == stretch.top && whole > stretch.room() + kSlack) {
      const std::size_t better = roomierStretch(stretches, number, whole);
      while (number < better) turn();
    }
    if (flowed.pages.size() <= stretch.page) flowed.pages.resize(stretch.page + 1);
    std::vector<Laid>& page = flowed.pages[stretch.page];
    for (; at < unit.end; ++at) {
      const Piece& piece = pieces[at];
      if (y == stretch.top && piece.spaceOnly) continue;
      if (y == stretch.top && piece.heading) {
        page.push_back({piece.heading.get(), stretch.left, y});
        y += piece.heading->height;
      }
      page.push_back({&piece, stretch.left, y});
      y += piece.height;
    }
  }
  flowed.last = stretch;
  flowed.end = y;
  return flowed;
}

double heightOf(const Pieces& pieces) {
  double height = 0;
  for (const Piece& piece : pieces) height += piece.height;
  return height;
}

Piece joined(const Pieces& pieces) {
  Piece all;
  for (const Piece& piece : pieces) {
    piece.drawOnto(all.sketch, 0, all.height);
    all.height += piece.height;
  }
  return all;
}

Piece beside(const Piece& left, const Piece& right, double offset) {
  Piece both;
  both.height = std::max(left.height, right.height);
  left.drawOnto(both.sketch, 0, 0);
  right.drawOnto(both.sketch, offset, 0);
  return both;
}

}  // namespace inchwright
