#include "core/suspect/lookalike.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/say/doubt_words.h"

namespace inchwright {
namespace {

Lettered read(const std::string& text) {
  const auto figure = readLength(text);
  EXPECT_TRUE(figure.ok()) << text;
  return figure.ok() ? *figure : Lettered{};
}

// In words, as they stand behind a suspect.
std::string why(const Resemblance& found) {
  if (found.reason.isNone()) return "";
  Suspect suspect;
  suspect.reason = found.reason;
  return suspicionText({}, suspect);
}

Resemblance between(const std::string& seen, const std::string& would) {
  return resemblance(read(seen), read(would).value);
}

struct LookalikeRow {
  const char* seen;
  const char* would;
  const char* why;
};

// The pairs that the domain names, and others of their kinds; common practice, no source.
TEST(Lookalike, NamesWhatJoinsTwoFigures) {
  constexpr LookalikeRow kRows[] = {
      {"3/16", "5/16", "looks like 5/16"},        {"5/16", "3/16", "looks like 3/16"},
      {"1 1/16", "1 7/16", "looks like 1 7/16"},  {"13/64", "13/16", "looks like 13/16"},
      {"13/16", "13/64", "looks like 13/64"},     {"15/8", "1 5/8", "looks like 1 5/8"},
      {"1 5/8", "15/8", "looks like 15/8"},       {"1 3/16", "13/16", "looks like 13/16"},
      {"3/8", "1 3/8", "a whole inch dropped"},   {"2 3/8", "1 3/8", "a whole inch added"},
      {"3/8", "3 3/8", "3 whole inches dropped"}, {"1", "2", "a whole inch dropped"},
      {"2", "2 7/16", "the fraction dropped"},    {"5/8", "1 1/4", "half for full"},
      {"1 1/4", "5/8", "full for half"},          {".375", ".735", "figures swapped"},
      {".0625", ".625", "decimal point shifted"}, {".625", ".0625", "decimal point shifted"},
      {"1.375", "1.875", "looks like 1.875"},     {".250", "1.250", "a whole inch dropped"},
      {"12.7 mm", "12.1 mm", "looks like 12.1"},  {"12.7 mm", "127 mm", "decimal point shifted"},
      {"3/32", "5/64", "looks like 5/64"},
  };
  for (const LookalikeRow& row : kRows) {
    const Resemblance found = between(row.seen, row.would);
    EXPECT_EQ(why(found), row.why) << row.seen << " for " << row.would;
    EXPECT_LT(found.cost, 3.5) << row.seen << " for " << row.would;
    EXPECT_GT(found.cost, 0) << row.seen << " for " << row.would;
  }
}

TEST(Lookalike, PutsLikelierSlipsBeforeOthers) {
  EXPECT_LT(between("3/16", "5/16").cost, between("3/16", "11/16").cost);
  EXPECT_LT(between("1 1/16", "1 7/16").cost, between("1 1/16", "1 9/16").cost);
  EXPECT_LT(between("3/8", "1 3/8").cost, between("3/8", "4 3/8").cost);
  EXPECT_LT(between("1.375", "1.875").cost, between("1.375", "1.475").cost);
  EXPECT_LT(between(".375", ".735").cost, between(".375", ".942").cost);
}

struct TakenFor {
  const char* seen;
  const char* would;
};

// Our own judgement of what is likelier: those of a line are alike, and each line comes before the
// next.
TEST(Lookalike, HasAnOrderOfSlips) {
  const std::vector<std::vector<TakenFor>> lines = {
      {{"15/8", "1 5/8"}, {"4.325", "4.825"}},
      {{"3/8", "1 3/8"}},
      {{"1 3/8", "3/8"}, {".375", ".735"}, {"1 3/16", "1 3/64"}, {"1 3/64", "1 3/16"}},
      {{".0625", ".625"}, {".625", ".0625"}},
      {{"120 mm", "12 mm"}, {"12 mm", "120 mm"}},
      {{"2 3/8", "3 3/8"}, {"3 3/8", "2 3/8"}},
      {{"5/8", "1 1/4"}, {"1 1/4", "5/8"}},
      {{"1 3/32", "1 3/64"}, {"1 3/16", "1 3/32"}, {"3/8", "3 3/8"}, {"3 3/8", "3/8"}},
      {{"1 3/8", "1 3/16"}, {"1 5/8", "15/8"}},
      {{"1 9/16", "1 11/16"}, {"1 11/16", "1 9/16"}},
      {{"1 3/4", "1 3/8"}},
      {{"2", "2 7/16"}},
  };
  double before = 0;
  for (const auto& line : lines) {
    const double cost = between(line[0].seen, line[0].would).cost;
    EXPECT_GT(cost, before + 0.05) << line[0].seen << " for " << line[0].would;
    for (const TakenFor& slip : line) {
      EXPECT_DOUBLE_EQ(between(slip.seen, slip.would).cost, cost)
          << slip.seen << " for " << slip.would;
    }
    before = cost;
  }
}

// Likewise, of two digits.
TEST(Lookalike, HasAnOrderOfDigitsThatLookAlike) {
  double before = 0;
  for (const char* pairs : {"38 35 17 68 56", "49", "06 08", "58", "27 09 89", "14 79", "39 23 69",
                            "59", "12 13", "24 47 18 05"}) {
    double cost = 0;
    for (const char* at = pairs; *at != 0; at += at[2] == 0 ? 2 : 3) {
      const std::string one{'4', '.', at[0], '2', '5'}, other{'4', '.', at[1], '2', '5'};
      if (at == pairs) cost = between(one, other).cost;
      EXPECT_DOUBLE_EQ(between(one, other).cost, cost) << one << " for " << other;
      EXPECT_DOUBLE_EQ(between(other, one).cost, cost) << other << " for " << one;
    }
    EXPECT_GT(cost, before + 0.05) << pairs;
    before = cost;
  }
}

TEST(Lookalike, FindsNothingBetweenUnlikeFigures) {
  const Resemblance found = between("2 5/32", "7 49/64");
  EXPECT_EQ(why(found), "");
  EXPECT_EQ(found.cost, kNoResemblance);
  // No fraction of an inch a print would have: dearer than any that is.
  const Lettered seen = read("1 3/16");
  EXPECT_GT(resemblance(seen, Length::ticks(seen.value.ticks() + 12'345)).cost, kNoResemblance);
}

TEST(Lookalike, LettersAsThePrintDoes) {
  constexpr struct {
    const char* seen;
    const char* value;
    const char* text;
  } kRows[] = {
      {"1 3/16", "1 5/16", "1 5/16"}, {"(2)", "2 1/8", "2 1/8"},       {"15/8", "1 5/8", "1 5/8"},
      {".375", "1/2", ".500"},        {"0.375", ".5", "0.500"},        {"1.375", ".5", ".500"},
      {"1.50", "2.125", "2.125"},     {"12.7 mm", "13 mm", "13.0 mm"}, {"3/16", ".17", "0.17"},
  };
  for (const auto& row : kRows) {
    EXPECT_EQ(letteredLike(read(row.seen), read(row.value).value), row.text) << row.seen;
  }
}

TEST(Lookalike, NeighboursOfADecimal) {
  const auto found = decimalNeighbours(read(".375"));
  const auto has = [&](const char* text) {
    return std::find(found.begin(), found.end(), read(text).value) != found.end();
  };
  EXPECT_TRUE(has(".735"));
  EXPECT_TRUE(has(".357"));
  EXPECT_TRUE(has(".875"));
  EXPECT_TRUE(has("3.75"));
  EXPECT_TRUE(has(".0375"));
  EXPECT_FALSE(has(".375"));
  EXPECT_FALSE(has(".886"));
  EXPECT_TRUE(std::is_sorted(found.begin(), found.end()));
  EXPECT_TRUE(decimalNeighbours(read("3/8")).empty());
  // Nothing is lettered that is 0 or less, nor is any figure taken for one.
  EXPECT_TRUE(decimalNeighbours(read(".000")).empty());
  Lettered turned = read(".375");
  turned.value = turned.value.negated();
  EXPECT_TRUE(decimalNeighbours(turned).empty());
  EXPECT_GT(decimalNeighbours(read(".1")).front(), Length());
}

TEST(Lookalike, CountsDecimalPlaces) {
  EXPECT_EQ(decimalCount(read(".375").value, Unit::inch, 3), 375);
  EXPECT_EQ(decimalCount(read("1/64").value, Unit::inch, 6), 15625);
  EXPECT_EQ(decimalCount(read("1/64").value, Unit::inch, 5), std::nullopt);
  EXPECT_EQ(decimalCount(read("1 in").value, Unit::millimetre, 1), 254);
  EXPECT_EQ(decimalCount(read("1 in").value, Unit::millimetre, 0), std::nullopt);
}

}  // namespace
}  // namespace inchwright
