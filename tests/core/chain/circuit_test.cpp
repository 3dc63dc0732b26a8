#include "core/chain/circuit.h"

#include <gtest/gtest.h>

#include "core/solution/solution.h"
#include "tests/support/part_text.h"

namespace inchwright {
namespace {

constexpr std::int64_t kSixteenthInch = Length::kTicksPerInch / 16;

/// `r1 + 0 L D4 2 2`: source, sign, ends, step and running sum in sixteenths.
std::vector<std::string> told(const Part& part, const Clash& clash) {
  std::vector<std::string> lines;
  const auto sixteenths = [](const Rational& ticks) {
    const Rational share = *ticks.over(Rational(kSixteenthInch));
    return std::to_string(static_cast<long long>(share.numerator())) +
           (share.isWhole() ? ""
                            : "/" + std::to_string(static_cast<long long>(share.denominator())));
  };
  for (const LoopMember& one : clash.loop) {
    lines.push_back(idOf(part, one.source) + (one.sign < 0 ? " - " : " + ") + one.from + " " +
                    one.to + " " + sixteenths(one.step) + " " + sixteenths(one.running));
  }
  return lines;
}

using Lines = std::vector<std::string>;

TEST(Circuit, ARowThatIsWalkedBackIsOneMember) {
  const Part part = test::partFrom(R"(
edge L x left
row D x 4 9/16
hole A 1/4
r1 x L D4 2
r2 x D1 A 3/8
r3 x L A (3/4)
)");
  const auto solution = solve(part);
  ASSERT_TRUE(solution.ok());
  ASSERT_EQ(solution->clashes.size(), 1U);
  const Clash& clash = solution->clashes[0];
  EXPECT_EQ(told(part, clash),
            (Lines{"r1 + L D4 32 32", "D - D4 D1 -27 5", "r2 + D1 A 6 11", "r3 - A L -12 -1"}));
  EXPECT_EQ(clash.missesBy, Rational(kSixteenthInch));
  EXPECT_EQ(clash.readingIds(part), (std::vector<Id>{"r1", "r2", "r3"}));
}

// The longest closes where none is in brackets, and a midway counts each of its halves.
TEST(Circuit, ClosesWithTheLongestAndCountsHalves) {
  const Part part = test::partFrom(R"(
edge L x left
edge R x right
hole A 1/4
hole B 1/4
r1 x L A 1
r2 x A B 1 1/2
r3 x B R 1
r4 x L R 3 5/8
)");
  const auto chain = solve(part);
  ASSERT_EQ(chain->clashes.size(), 1U);
  EXPECT_EQ(told(part, chain->clashes[0]),
            (Lines{"r1 + L A 16 16", "r2 + A B 24 40", "r3 + B R 16 56", "r4 - R L -58 -2"}));
  EXPECT_EQ(chain->clashes[0].missesBy, Rational(2 * kSixteenthInch));

  const Part halved = test::partFrom(R"(
edge L x left
edge R x right
hole A 1/4
r1 x L R 4
r2 x L A 2 1/16
midway x A L R
)");
  const auto solution = solve(halved);
  ASSERT_EQ(solution->clashes.size(), 1U);
  const Lines lines = told(halved, solution->clashes[0]);
  EXPECT_EQ(lines, (Lines{"r2 + L A 66 66", "A + A R 0 66", "r1 - R L -64 2"}));
  EXPECT_EQ(solution->clashes[0].missesBy, Rational(-2 * kSixteenthInch)) << "over all, not at A";
}

TEST(Circuit, HalfOfTheLastPlace) {
  const std::vector<std::pair<const char*, std::int64_t>> rows{
      {".188", 1'270'000},   {"1.5", 127'000'000}, {".5000", 127'000}, {"12.7 mm", 5'000'000},
      {"12.70 mm", 500'000}, {"3/8", 0},           {"1 3/16", 0}};
  for (const auto& [text, ticks] : rows) {
    EXPECT_EQ(halfLastPlace(*readLength(text)), Rational(ticks)) << text;
  }
}

// .563 for 9/16, eight times: half a thousandth each and half of the overall's.
TEST(Circuit, MayMissByWhatItsDecimalsWereRounded) {
  const Part part = test::partFrom(R"(
edge L x left
edge R x right
hole A 1/4
r1 x L A .563
r2 x A R 1.25
r3 x L R 1 13/16
)");
  const auto network = networkOf(part, Axis::x);
  ASSERT_TRUE(network.ok());
  Circuit circuit;
  for (std::uint32_t link = 0; link < network->links.size(); ++link) {
    circuit.links.push_back({link, Rational(link == 1 ? -1 : 1)});
  }
  EXPECT_EQ(lastPlacesOf(part, *network, circuit), Rational(1'270'000 + 12'700'000));
  EXPECT_EQ(allowanceOf(part, *network, circuit), Rational(0)) << "exact as lettered";
  for (auto& [link, factor] : circuit.links) factor = Rational(-3);
  EXPECT_EQ(lastPlacesOf(part, *network, circuit), Rational(3 * (1'270'000 + 12'700'000)));
}

}  // namespace
}  // namespace inchwright
