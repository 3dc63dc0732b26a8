#include <gtest/gtest.h>

#include "tests/core/place/mixed_print.h"
#include "tests/core/place/placed_part.h"

namespace inchwright::test {
namespace {

struct Count {
  int placed = 0, wrong = 0, missing = 0, named = 0, unnamed = 0;
};

// A tick or two where a place is held well; each weak one hands its own factor on to what hangs on
// it.
double allowed(const PlacedForTest& part) {
  double most = 1;
  for (const WeakPlace& weak : part.placed.weak) most *= std::max(weak.factor, 1.0);
  return 2.0 / 2'540'000'000.0 * std::min(most, 1000.0);
}

Count run(std::uint64_t seed, bool isTraced) {
  const MixedPrint print = MixedPrintMaker(seed).make(6 + static_cast<int>(seed % 9), isTraced);
  const PlacedForTest part = PlacedForTest::of(print.part);
  Count count;
  for (const MixedPrint::Truth& truth : print.truth) {
    const bool isClear = truth.image == 0 || (isTraced && truth.image > 1.0 / 8);
    const bool isPlaced = part.isPlaced(truth.id, Axis::x) && part.isPlaced(truth.id, Axis::y);
    if (isPlaced) {
      const double off = std::hypot(part.from("L", truth.id, Axis::x) - truth.x,
                                    part.from("F", truth.id, Axis::y) - truth.y);
      ++(off <= allowed(part) ? count.placed : count.wrong);
      if (off > allowed(part)) ADD_FAILURE() << "seed " << seed << " " << truth.id << " " << off;
    } else if (isClear && !truth.hangsOnDoubt) {
      ++count.missing;
      ADD_FAILURE() << "seed " << seed << " " << truth.id << " image " << truth.image;
    }
    if (isClear || truth.hangsOnDoubt) continue;
    const bool isNamed = std::any_of(
        part.placed.answers.begin(), part.placed.answers.end(), [&](const SeveralAnswers& one) {
          return !one.isTaken && one.answers.size() >= 2 &&
                 std::find(one.about.begin(), one.about.end(), truth.id) != one.about.end();
        });
    ++(isNamed && !isPlaced ? count.named : count.unnamed);
    if (!isNamed || isPlaced) ADD_FAILURE() << "seed " << seed << " " << truth.id << " not named";
  }
  return count;
}

TEST(MixedPrints, TracedOnesArePlacedWhereImagesLieClearlyApart) {
  Count all;
  for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
    const Count one = run(seed, true);
    all.placed += one.placed;
    all.named += one.named;
  }
  EXPECT_GT(all.placed, 9000);
  EXPECT_GT(all.named, 0);
}

TEST(MixedPrints, UntracedOnesHaveBothImagesNamedAndNothingMadeUp) {
  Count all;
  for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
    const Count one = run(seed, false);
    all.placed += one.placed;
    all.named += one.named;
  }
  EXPECT_GT(all.named, 1000);
}

}  // namespace
}  // namespace inchwright::test
