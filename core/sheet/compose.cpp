#include <algorithm>
#include <deque>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "core/say/doubt_words.h"
#include "core/sheet/closeness_block.h"
#include "core/sheet/content.h"
#include "core/sheet/flow.h"
#include "core/sheet/head_block.h"
#include "core/sheet/head_room.h"
#include "core/sheet/kit_block.h"
#include "core/sheet/milled_block.h"
#include "core/sheet/notes_block.h"
#include "core/sheet/picture_block.h"
#include "core/sheet/places_block.h"
#include "core/sheet/rows_block.h"
#include "core/sheet/sheet_number.h"
#include "core/sheet/symbols.h"
#include "core/sheet/zero_block.h"

namespace inchwright {

/// Paper, mm.
struct PaperSize {
  double width;
  double height;
};

/// A candidate for the whole sheet.
struct SheetLayout {
  PaperSize size{};
  double headWidth = 0;
  double footTop = 0;
  std::size_t lastRows = 0;  ///< the page on which the rows end
  double pictureScale = 0;
  std::vector<LaidPages> streams = {};  ///< what lies on each page, in the order of painting
  std::deque<Pieces> pieces = {};       ///< what the streams point at
  Piece foot = {};

  std::size_t pages() const {
    std::size_t count = 1;
    for (const LaidPages& stream : streams) count = std::max(count, stream.size());
    return count;
  }
};

namespace {

constexpr double kMargin = 9.5;
constexpr double kGutter = 7;
/// A picture beside the rows is of no use when it is narrower than this.
constexpr double kLeastLeft = 88;
constexpr double kAfterRows = 3;
/// What stays below a picture, enough for the highest box that is not torn.
constexpr double kLeastBelowPicture = 60;
/// The picture gives way down to this share of its column, so that finding zero stays on one page.
constexpr double kLeastPicture = 0.3;
/// A picture is drawn again where it comes out so many times larger.
constexpr double kWorthAgain = 1.3;

PaperSize sizeOf(Paper paper, bool landscape) {
  const PaperSize upright = paper == Paper::a4 ? PaperSize{210, 297} : PaperSize{215.9, 279.4};
  return landscape ? PaperSize{upright.height, upright.width} : upright;
}

void append(Pieces& pieces, Pieces more) {
  std::move(more.begin(), more.end(), std::back_inserter(pieces));
}

/// The blocks that come before the rows, in the order of the work. A new block of the sheet is
/// added here or below.
Pieces leadingPieces(const SheetContent& content, double width) {
  Pieces pieces;
  append(pieces, zeroPieces(content, width));
  append(pieces, editionPieces(content, width));
  append(pieces, warningPieces(content, width));
  append(pieces, kitPieces(content.kit, content.style, width));
  append(pieces, checkPieces(content, width));
  return pieces;
}

/// The blocks that are looked up beside or after the rows.
Pieces trailingPieces(const SheetContent& content, double width) {
  Pieces pieces;
  append(pieces, milledPieces(content, width));
  append(pieces, stopPieces(content, width));
  append(pieces, queryPieces(content, width));
  append(pieces, edgePieces(content, width));
  append(pieces, closenessPieces(content, width));
  append(pieces, curvePieces(content, width));
  append(pieces, directCheckPieces(content, width));
  return pieces;
}

/// Where the head of a page (from 0) ends.
double headEnd(HeadRoom& heads, std::size_t page) {
  return kMargin + 2 + heads.on(page);
}

/// Hatching down the left margin of a draft: seen from afar, in nobody's way.
void drawDraftMargin(Sketch& sketch, const PaperSize& size) {
  drawHatchedBox(sketch, {4.2, kMargin, 7.4, size.height - kMargin}, 3, 0.8);
}

class Composer {
 public:
  Composer(const SheetContent& content, bool landscape)
      : content_(content),
        size_(sizeOf(content.options.paper, landscape)),
        foot_(footPiece(content, size_.width - 2 * kMargin)) {
    bottom_ = size_.height - kMargin + 3 - foot_.height;
  }

  /// Picture and words at the left, rows at the right; empty when the two do not fit side by side.
  std::optional<SheetLayout> sideBySide() const {
    const std::optional<Columns> widths = columns();
    if (!widths) return std::nullopt;
    return layNumbered(
        headHeights(widths->left), [&](HeadRoom& heads) { return laidBeside(*widths, heads); },
        [](const std::optional<SheetLayout>& laid) { return laid ? laid->pages() : 1; });
  }
  /// One column: head, picture, zero, rows, the rest.
  SheetLayout below() const {
    return layNumbered(
        headHeights(innerWidth()), [&](HeadRoom& heads) { return laidBelow(heads); },
        [](const SheetLayout& laid) { return laid.pages(); });
  }

 private:
  struct Columns {
    double left = 0;  ///< widths
    double right = 0;
  };
  std::optional<Columns> columns() const;
  std::optional<SheetLayout> laidBeside(const Columns& widths, HeadRoom& heads) const;
  SheetLayout laidBelow(HeadRoom& heads) const;
  SheetLayout blank(double headWidth) const {
    return {size_, headWidth, bottom_, 0, 0, {}, {}, foot_};
  }
  double innerWidth() const { return size_.width - 2 * kMargin; }
  HeadRoom::HeightOf headHeights(double width) const {
    return [this, width](std::size_t page, std::size_t pages) {
      return headPiece(content_, width, page, pages).height;
    };
  }

  const SheetContent& content_;
  PaperSize size_;
  Piece foot_;
  double bottom_ = 0;  ///< where the foot begins
};

std::optional<Composer::Columns> Composer::columns() const {
  Columns columns;
  for (const RowShape shape : {RowShape::fractionsBeside, RowShape::fractionsBelow}) {
    columns.right = rowsWidth(content_, shape);
    columns.left = innerWidth() - kGutter - columns.right;
    if (columns.left >= kLeastLeft) break;
  }
  if (columns.left < kLeastLeft) return std::nullopt;
  // What is more than the picture needs goes to the pencil.
  const double most = innerWidth() * 0.44;
  if (columns.left > most) {
    columns.right += columns.left - most;
    columns.left = most;
  }
  return columns;
}

std::optional<SheetLayout> Composer::laidBeside(const Columns& widths, HeadRoom& heads) const {
  const double left = widths.left;
  const double bottom = bottom_ - 1;
  const double firstTop = headEnd(heads, 0);
  // The picture leaves room for finding zero when it stays of use itself.
  const double full = bottom - firstTop;
  const double spare = full - heightOf(zeroPieces(content_, left));
  const double mostPicture =
      spare > full * kLeastPicture ? spare : std::min(full * 0.6, full - kLeastBelowPicture);
  SheetLayout layout = blank(left);
  const Pieces& picture =
      layout.pieces.emplace_back(Pieces{picturePiece(content_, left, mostPicture)});
  const double pictureHeight = picture.front().height;
  if (firstTop + pictureHeight > bottom) return std::nullopt;

  const double rowsLeft = kMargin + left + kGutter;
  Flowed rows =
      flow(layout.pieces.emplace_back(rowsPieces(content_, widths.right)), [&](std::size_t page) {
        return Stretch{page, rowsLeft, kMargin, bottom};
      });
  const std::size_t lastRows = rows.last.page;
  Pieces& words = layout.pieces.emplace_back(leadingPieces(content_, left));
  append(words, trailingPieces(content_, left));
  // Words go below the picture and on down the left; beside it once there are no more rows.
  Flowed beside = flow(words, [&](std::size_t number) {
    const std::size_t page = number < lastRows ? number : lastRows + (number - lastRows) / 2;
    if (number >= lastRows && (number - lastRows) % 2 == 1) {
      return Stretch{page, rowsLeft, page == lastRows ? rows.end + kAfterRows : kMargin, bottom};
    }
    return Stretch{page, kMargin, headEnd(heads, page) + (page == 0 ? pictureHeight : 0), bottom};
  });
  // The picture again wherever rows stand beside blank paper.
  LaidPages pictures(lastRows + 1);
  for (std::size_t i = 0; i < pictures.size(); ++i) {
    const bool blank = i >= beside.pages.size() || beside.pages[i].empty();
    if (i == 0 || blank) {
      pictures[i].push_back({&picture.front(), kMargin, headEnd(heads, i)});
    }
  }
  layout.lastRows = lastRows;
  layout.pictureScale = pictureScale(content_, left, mostPicture);
  // And a larger one beside words that end on a page of their own.
  const double room = bottom - kMargin;
  const bool isFree = beside.pages.size() > lastRows + 1 &&
                      std::none_of(beside.pages.back().begin(), beside.pages.back().end(),
                                   [&](const Laid& laid) { return laid.left >= rowsLeft; });
  if (isFree && content_.picture &&
      pictureScale(content_, widths.right, room) > kWorthAgain * layout.pictureScale) {
    const Pieces& large =
        layout.pieces.emplace_back(Pieces{picturePiece(content_, widths.right, room)});
    pictures.resize(beside.pages.size());
    pictures.back().push_back({&large.front(), rowsLeft, kMargin});
  }
  layout.streams.push_back(std::move(pictures));
  layout.streams.push_back(std::move(beside.pages));
  layout.streams.push_back(std::move(rows.pages));
  return layout;
}

SheetLayout Composer::laidBelow(HeadRoom& heads) const {
  const double width = innerWidth();
  const double mostPicture = std::min((bottom_ - headEnd(heads, 0)) * 0.42, 110.0);
  const Stretches stretches = [&](std::size_t page) {
    return Stretch{page, kMargin, headEnd(heads, page), bottom_ - 1};
  };
  SheetLayout layout = blank(width);
  Pieces& pieces = layout.pieces.emplace_back();
  if (content_.picture) pieces.push_back(picturePiece(content_, width, mostPicture));
  append(pieces, leadingPieces(content_, width));
  append(pieces, rowsPieces(content_, width));
  layout.lastRows = flow(pieces, stretches).last.page;
  append(pieces, trailingPieces(content_, width));
  layout.pictureScale = pictureScale(content_, width, mostPicture);
  layout.streams.push_back(flow(pieces, stretches).pages);
  return layout;
}

/// The fewest pages; then all rows on the earliest page; then the picture beside the rows, unless
/// a long part would be tiny there.
SheetLayout bestOf(const SheetContent& content) {
  std::optional<SheetLayout> beside = Composer(content, true).sideBySide();
  SheetLayout upright = Composer(content, false).below();
  if (!beside) return upright;
  bool better = upright.pictureScale > 1.6 * beside->pictureScale;
  if (upright.lastRows != beside->lastRows) better = upright.lastRows < beside->lastRows;
  if (upright.pages() != beside->pages()) better = upright.pages() < beside->pages();
  return better ? std::move(upright) : *std::move(beside);
}

SheetContent measured(SheetContent content) {
  content.words = setupWords(content.part, content.table, content.options.english);
  const Result<KitOfPart> kit = kitOfPart(content.job, content.part, content.solution);
  if (kit) content.kit = kitLines(*kit, content.table.step);
  for (const std::string& warning : content.options.warnings) {
    content.words.warnings.push_back(warning);
  }
  std::string lost = notCarriedOver(content.job, content.part, content.table.setup);
  if (!lost.empty()) content.words.warnings.push_back(std::move(lost));
  content.doubts = doubtTexts(content.part, content.solution, content.options.english);
  content.number = sheetNumber(content);
  if (wasPrinted(content.part, content.table.setup)) {
    content.edition =
        editionOf(content.part, sheetNow(content.part, content.table, content.number));
  }
  content.rows = extentsOf(content.table, content.options.english);
  return content;
}

}  // namespace

struct Composition::Laying {
  explicit Laying(SheetContent given)
      : content(measured(std::move(given))), layout(bestOf(content)) {}

  SheetContent content;
  SheetLayout layout;
};

Composition::Composition(SheetContent content)
    : laying_(std::make_unique<const Laying>(std::move(content))) {}
Composition::~Composition() = default;
Composition::Composition(Composition&&) noexcept = default;
Composition& Composition::operator=(Composition&&) noexcept = default;

const std::string& Composition::number() const {
  return laying_->content.number;
}

const SheetEdition& Composition::edition() const {
  return laying_->content.edition;
}

std::size_t Composition::pageCount() const {
  return laying_->layout.pages();
}

double Composition::width() const {
  return laying_->layout.size.width;
}

double Composition::height() const {
  return laying_->layout.size.height;
}

Page Composition::page(std::size_t index) const {
  const auto& [content, layout] = *laying_;
  Sketch sketch;
  if (content.solution.isDraft()) drawDraftMargin(sketch, layout.size);
  headPiece(content, layout.headWidth, index + 1, layout.pages())
      .drawOnto(sketch, kMargin, kMargin);
  for (const LaidPages& stream : layout.streams) {
    if (index >= stream.size()) continue;
    for (const Laid& laid : stream[index]) laid.piece->drawOnto(sketch, laid.left, laid.top);
  }
  layout.foot.drawOnto(sketch, kMargin, layout.footTop);
  return sketch.onPage(layout.size.width, layout.size.height);
}

std::vector<Page> Composition::pages() const {
  std::vector<Page> all;
  for (std::size_t i = 0; i < pageCount(); ++i) all.push_back(page(i));
  return all;
}

}  // namespace inchwright
