// What follows the head of a page begins right below it, whatever number the page has: no line is
// kept for figures that never come, and none is missing for those that do.
#include "core/sheet/head_room.h"

#include <gtest/gtest.h>

#include "core/sheet/head_block.h"
#include "tests/core/sheet/block_content.h"
#include "tests/core/sheet/turned_arbor.h"

namespace inchwright {
namespace {

constexpr double kAround = 9.5;
constexpr double kBelowHead = 2;

/// As high as a number and its `of` are long, and 5 more on the first page.
double byLength(std::size_t page, std::size_t pages) {
  return static_cast<double>((std::to_string(page) + std::to_string(pages)).size() +
                             (page == 1 ? 5 : 0));
}

TEST(HeadRoom, GoesByTheFiguresOfANumber) {
  HeadRoom room(byLength, 99);
  EXPECT_EQ(room.on(0), 8) << "the first page";
  for (const std::size_t index : {1u, 5u, 8u}) EXPECT_EQ(room.on(index), 3) << index;
  for (const std::size_t index : {9u, 10u, 98u}) EXPECT_EQ(room.on(index), 4) << index;
  EXPECT_EQ(room.on(99), 5);
}

TEST(HeadRoom, HoldsAsManyPagesAsItsHeadsHaveFiguresFor) {
  HeadRoom room(byLength, 9);
  EXPECT_TRUE(room.holds(1));
  EXPECT_TRUE(room.holds(9));
  EXPECT_FALSE(room.holds(10));
  HeadRoom alike([](std::size_t, std::size_t) { return 30.0; }, 9);
  EXPECT_TRUE(alike.holds(12345)) << "where no head grows there is nothing to lay out anew";
  // One head of all may be the one that grows: the first, a middle one or the last.
  for (const std::size_t grown : {1u, 2u, 10u, 100u}) {
    HeadRoom one([&](std::size_t page,
                     std::size_t pages) { return page == grown && pages > 9 ? 31.0 : 30.0; },
                 9);
    EXPECT_FALSE(one.holds(100)) << grown;
  }
}

TEST(HeadRoom, IsLaidOutAnewOnlyWhereAHeadGrows) {
  const auto layings = [](const HeadRoom::HeightOf& heightOf, std::size_t pages) {
    std::size_t count = 0;
    layNumbered(
        heightOf, [&](HeadRoom&) { return ++count; }, [&](std::size_t) { return pages; });
    return count;
  };
  EXPECT_EQ(layings(byLength, 9), 1u);
  EXPECT_EQ(layings(byLength, 10), 2u);
  EXPECT_EQ(layings(byLength, 99), 2u);
  EXPECT_EQ(layings(byLength, 100), 3u);
  EXPECT_EQ(layings([](std::size_t, std::size_t) { return 30.0; }, 100), 1u);
}

/// The bar with the unit, white on black, is as wide as the head.
PaperBox barOf(const Page& page) {
  for (const DrawItem& item : page.items) {
    const auto* shape = std::get_if<PolylineItem>(&item);
    if (shape && shape->filled && shape->fill == Ink::black && shape->points.size() == 4 &&
        boundsOf(item).width() > 60) {
      return boundsOf(item);
    }
  }
  return {};
}

/// Where the head of a page ends, and the highest of what stands below it in its column; all of the
/// head is on the page.
struct HeadAndNext {
  double end = 0;
  double next = 1e9;
};

HeadAndNext headAndNext(const SheetContent& content, const Page& page, std::size_t number,
                        std::size_t of) {
  const PaperBox bar = barOf(page);
  Sketch head;
  const Piece piece = headPiece(content, bar.width(), number, of);
  piece.drawOnto(head, kAround, kAround);
  HeadAndNext found{kAround + piece.height};
  const std::vector<DrawItem>& own = head.items();
  std::size_t shown = 0;
  for (const DrawItem& item : page.items) {
    if (std::find(own.begin(), own.end(), item) != own.end()) {
      ++shown;
    } else if (boundsOf(item).left < bar.right) {
      found.next = std::min(found.next, boundsOf(item).top);
    }
  }
  EXPECT_EQ(shown, own.size()) << "the head of page " << number;
  return found;
}

/// What follows begins 2 mm below the head, with a rule or a first line of letters.
void expectNextBelowHead(const MadeSheet& made) {
  SheetContent content = contentOf(made);
  const std::vector<Page> pages = made.pages();
  for (std::size_t i = 0; i < pages.size(); ++i) {
    const HeadAndNext found = headAndNext(content, pages[i], i + 1, pages.size());
    EXPECT_GE(found.next, found.end + kBelowHead - kMedium / 2 - kRounding)
        << i + 1 << " of " << pages.size();
    EXPECT_LE(found.next, found.end + kBelowHead + 4) << i + 1 << " of " << pages.size();
  }
}

// Found by looking: a line was kept free for `9999 of 9999`.
TEST(HeadRoom, LeavesNoBlankLineBelowTheHead) {
  MadeSheet made = settledPlate(Paper::a4);
  for (const double distance : {1000.0, 2000.0}) {
    made.options.readingDistance = distance;
    for (std::size_t length = 4; length <= 64; ++length) {
      SCOPED_TRACE(length);
      made.job.title = std::string(length, 'n');
      expectNextBelowHead(made);
    }
  }
}

// The number of page 10 takes a line of its own where that of page 9 does not.
TEST(HeadRoom, HoldsTheHeadsOfMoreThanNinePages) {
  MadeSheet made = settledPlate(Paper::a4);
  made.options.readingDistance = 2000;
  made.options.directChecks.assign(400, "A to C: 2.500");
  ASSERT_GT(made.pages().size(), 9u);
  for (std::size_t length = 15; length <= 30; ++length) {
    SCOPED_TRACE(length);
    made.job.title = std::string(length, 'n');
    expectNextBelowHead(made);
  }
}

/// Texts of a page, two of which cover each other.
std::string covered(const Page& page) {
  std::vector<const TextItem*> texts;
  for (const DrawItem& item : page.items) {
    const auto* text = std::get_if<TextItem>(&item);
    if (!text) continue;
    for (const TextItem* one : texts) {
      if (boundsOf(*one).grownBy(-kRounding).meets(boundsOf(*text))) {
        return one->text + " | " + text->text;
      }
    }
    texts.push_back(text);
  }
  return "";
}

// Page 10 of 12 may take a line more than page 1 of 1.
TEST(HeadRoom, HeadsOfManyLathePagesCoverNothing) {
  Turned one(24);
  SheetOptions options;
  options.readingDistance = 1500;
  options.date = "2026-11-25";
  options.warnings.assign(180, "the back plate's arbor is longer");
  std::size_t most = 0;
  for (std::size_t length = 22; length <= 34; ++length) {
    one.job.title = std::string(length, 'n');
    const std::vector<Page> pages = one.pages(options);
    most = std::max(most, pages.size());
    for (const Page& page : pages) ASSERT_EQ(covered(page), "") << length;
  }
  EXPECT_GT(most, 9u);
}

}  // namespace
}  // namespace inchwright
