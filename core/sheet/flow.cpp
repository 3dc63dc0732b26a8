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

/// The next frame from `number` on that holds `height`; when none does, the roomiest of them.
std::size_t roomierFrame(const Frames& frames, std::size_t number, double height) {
  constexpr std::size_t kMostAhead = 500;
  std::size_t best = number;
  for (std::size_t i = number; i < number + kMostAhead; ++i) {
    const double room = frames(i).room();
    if (room > frames(best).room() + kSlack) best = i;
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

Piece gap(double height) {
  Piece piece;
  piece.height = height;
  piece.spaceOnly = true;
  return piece;
}

Flowed flow(const Pieces& pieces, const Frames& frames) {
  Flowed flowed;
  std::size_t number = 0;
  Frame frame = frames(0);
  double y = frame.top;
  const auto turn = [&] {
    frame = frames(++number);
    y = frame.top;
  };
  for (std::size_t at = 0; at < pieces.size();) {
    const Together unit = togetherFrom(pieces, at);
    const auto fits = [&] { return y + unit.height <= frame.bottom + kSlack; };
    const bool empty = std::all_of(pieces.begin() + static_cast<std::ptrdiff_t>(at),
                                   pieces.begin() + static_cast<std::ptrdiff_t>(unit.end),
                                   [](const Piece& piece) { return piece.spaceOnly; });
    if (empty) break;  // nothing but space is left
    if (y > frame.top && !fits()) turn();
    const std::shared_ptr<const Piece>& heading = pieces[at].heading;
    const double whole = unit.height + (heading ? heading->height : 0);
    if (y == frame.top && whole > frame.room() + kSlack) {
      const std::size_t better = roomierFrame(frames, number, whole);
      while (number < better) turn();
    }
    if (flowed.pages.size() <= frame.page) flowed.pages.resize(frame.page + 1);
    std::vector<Laid>& page = flowed.pages[frame.page];
    for (; at < unit.end; ++at) {
      const Piece& piece = pieces[at];
      if (y == frame.top && piece.spaceOnly) continue;
      if (y == frame.top && piece.heading) {
        page.push_back({piece.heading.get(), frame.left, y});
        y += piece.heading->height;
      }
      page.push_back({&piece, frame.left, y});
      y += piece.height;
    }
  }
  flowed.last = frame;
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
