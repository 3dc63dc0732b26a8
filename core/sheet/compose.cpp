#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

#include "core/sheet/content.h"
#include "core/sheet/flow.h"
#include "core/sheet/head_block.h"
#include "core/sheet/notes_block.h"
#include "core/sheet/picture_block.h"
#include "core/sheet/places_block.h"
#include "core/sheet/rows_block.h"
#include "core/sheet/symbols.h"
#include "core/sheet/zero_block.h"

namespace inchwright {
namespace {

constexpr double kMargin = 9.5;
constexpr double kGutter = 7;
/// A picture beside the rows is of no use when it is narrower than this.
constexpr double kLeastLeft = 88;
/// What stays below a picture, enough for the highest box that is not torn.
constexpr double kLeastBelowPicture = 60;
constexpr std::size_t kMostPages = 9999;

struct Size {
  double width;
  double height;
};

Size sizeOf(Paper paper, bool landscape) {
  const Size upright = paper == Paper::a4 ? Size{210, 297} : Size{215.9, 279.4};
  return landscape ? Size{upright.height, upright.width} : upright;
}

void append(Pieces& pieces, Pieces more) {
  std::move(more.begin(), more.end(), std::back_inserter(pieces));
}

/// The blocks that go beside or behind the rows, in the order of the work. A new block of the
/// sheet is added here.
Pieces supportingPieces(const SheetContent& content, double width) {
  Pieces pieces;
  append(pieces, zeroPieces(content, width));
  append(pieces, warningPieces(content, width));
  append(pieces, checkPieces(content, width));
  append(pieces, queryPieces(content, width));
  append(pieces, edgePieces(content, width));
  append(pieces, directCheckPieces(content, width));
  return pieces;
}

/// Hatching down the left margin of a draft: seen from afar, in nobody's way.
void drawDraftMargin(Sketch& sketch, const Size& size) {
  drawHatchedBox(sketch, {4.2, kMargin, 7.4, size.height - kMargin}, 3, 0.8);
}

/// A candidate for the whole sheet.
struct Layout {
  std::vector<Page> pages;
  double pictureScale = 0;
};

class Composer {
 public:
  Composer(const SheetContent& content, bool landscape)
      : content_(content),
        size_(sizeOf(content.options.paper, landscape)),
        foot_(footPiece(content, size_.width - 2 * kMargin)) {
    bottom_ = size_.height - kMargin + 3 - foot_.height;
  }

  /// Picture and words at the left, rows at the right; empty when the two do not fit side by side.
  std::optional<Layout> sideBySide() const;
  /// One column: head, picture, zero, rows, the rest.
  Layout below() const;

 private:
  double innerWidth() const { return size_.width - 2 * kMargin; }
  std::vector<Page> paginate(const std::vector<std::vector<Sketch>>& streams,
                             double headWidth) const;

  const SheetContent& content_;
  Size size_;
  Piece foot_;
  double bottom_ = 0;
};

std::vector<Page> Composer::paginate(const std::vector<std::vector<Sketch>>& streams,
                                     double headWidth) const {
  std::size_t count = 1;
  for (const std::vector<Sketch>& stream : streams) count = std::max(count, stream.size());
  std::vector<Page> pages(count);
  for (std::size_t i = 0; i < count; ++i) {
    Sketch sketch;
    if (content_.solution.isDraft()) drawDraftMargin(sketch, size_);
    sketch.add(headPiece(content_, headWidth, i + 1, count).sketch, kMargin, kMargin);
    for (const std::vector<Sketch>& stream : streams) {
      if (i < stream.size()) sketch.add(stream[i], 0, 0);
    }
    sketch.add(foot_.sketch, kMargin, bottom_);
    pages[i] = {size_.width, size_.height, sketch.items()};
  }
  return pages;
}

std::optional<Layout> Composer::sideBySide() const {
  double left = 0;
  double right = 0;
  for (const RowShape shape : {RowShape::fractionsBeside, RowShape::fractionsBelow}) {
    right = rowsWidth(content_, shape);
    left = innerWidth() - kGutter - right;
    if (left >= kLeastLeft) break;
  }
  if (left < kLeastLeft) return std::nullopt;
  // What is more than the picture needs goes to the pencil.
  const double most = innerWidth() * 0.44;
  if (left > most) {
    right += left - most;
    left = most;
  }
  const double head = kMargin + headPiece(content_, left, kMostPages, kMostPages).height + 2;
  if (bottom_ - head < 90) return std::nullopt;
  const Pieces zero = zeroPieces(content_, left);
  const double full = bottom_ - head;
  // The picture leaves room for finding zero when it stays of use itself.
  const double spare = full - heightOf(zero) - 1;
  const double mostPicture =
      spare > full * 0.5 ? spare : std::min(full * 0.6, full - kLeastBelowPicture);
  const Piece picture = picturePiece(content_, left, mostPicture);
  if (head + picture.height > bottom_ - 1) return std::nullopt;

  const double rowsLeft = kMargin + left + kGutter;
  const double bottom = bottom_ - 1;
  const Flowed rows = flow(rowsPieces(content_, right), [&](std::size_t page) {
    return Frame{page, rowsLeft, kMargin, bottom};
  });
  const std::size_t lastRows = rows.last.page;
  std::vector<Sketch> pictures(lastRows + 1);
  for (Sketch& sketch : pictures) sketch.add(picture.sketch, kMargin, head);
  // Words go below the picture, and beside it once there are no more rows.
  const Flowed words = flow(supportingPieces(content_, left), [&](std::size_t number) {
    if (number < lastRows) return Frame{number, kMargin, head + picture.height, bottom};
    const std::size_t page = lastRows + (number - lastRows) / 2;
    const bool below = page == lastRows;
    if ((number - lastRows) % 2 == 0) {
      return Frame{page, kMargin, below ? head + picture.height : head, bottom};
    }
    return Frame{page, rowsLeft, below ? rows.end : kMargin, bottom};
  });
  Layout layout;
  layout.pages = paginate({pictures, words.pages, rows.pages}, left);
  layout.pictureScale = pictureScale(content_, left, mostPicture);
  return layout;
}

Layout Composer::below() const {
  const double width = innerWidth();
  const double head = kMargin + headPiece(content_, width, kMostPages, kMostPages).height + 2;
  const double full = bottom_ - head;
  const double mostPicture = std::min(full * 0.42, 110.0);
  const Piece picture = picturePiece(content_, width, mostPicture);
  Pieces pieces;
  if (picture.height > 0) pieces.push_back(picture);
  const Pieces zero = zeroPieces(content_, width);
  append(pieces, zero);
  append(pieces, warningPieces(content_, width));
  append(pieces, rowsPieces(content_, width));
  append(pieces, checkPieces(content_, width));
  append(pieces, queryPieces(content_, width));
  append(pieces, edgePieces(content_, width));
  append(pieces, directCheckPieces(content_, width));
  const Flowed flowed = flow(pieces, [&](std::size_t page) {
    return Frame{page, kMargin, head, bottom_ - 1};
  });
  Layout layout;
  layout.pages = paginate({flowed.pages}, width);
  layout.pictureScale = pictureScale(content_, width, mostPicture);
  return layout;
}

}  // namespace

std::vector<Page> composeSheet(const SheetContent& content) {
  std::optional<Layout> beside = Composer(content, true).sideBySide();
  Layout upright = Composer(content, false).below();
  if (!beside) return std::move(upright.pages);
  // The fewest pages; at a tie the picture beside the rows, unless a long part would be tiny there.
  const bool fewer = upright.pages.size() < beside->pages.size();
  const bool larger = upright.pages.size() == beside->pages.size() &&
                      upright.pictureScale > 1.6 * beside->pictureScale;
  return std::move(fewer || larger ? upright.pages : beside->pages);
}

}  // namespace inchwright
