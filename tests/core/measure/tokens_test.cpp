#include "core/measure/tokens.h"

#include <gtest/gtest.h>

#include <memory>
#include <random>
#include <string>
#include <vector>

namespace inchwright::reading {
namespace {

std::string unitText(UnitWord unit) {
  constexpr const char* kUnits[] = {"in", "ft", "mm", "cm", "thou", "um", "deg", "min", "sec"};
  return kUnits[static_cast<std::size_t>(unit)];
}

// A token as text: numbers as their digits and places, signs in letters where they are loose.
std::string textOf(const Token& token) {
  const std::string value = std::to_string(static_cast<long long>(token.value));
  switch (token.kind) {
    case TokenKind::end:
      return "end";
    case TokenKind::number:
      return value +
             (token.hasMark ? (token.comma ? "," : ".") + std::to_string(token.places) : "");
    case TokenKind::vulgar:
      return "v" + value + "/" + std::to_string(token.under);
    case TokenKind::raised:
      return "^" + value;
    case TokenKind::lowered:
      return "_" + value;
    case TokenKind::slash:
      return "/";
    case TokenKind::divide:
      return "divide";
    case TokenKind::times:
      return token.loose ? (token.capital ? "X" : "x") : "*";
    case TokenKind::plus:
      return "+";
    case TokenKind::minus:
      return token.loose ? "minus" : "-";
    case TokenKind::plusMinus:
      return "+-";
    case TokenKind::open:
      return "(";
    case TokenKind::close:
      return ")";
    case TokenKind::unit:
      return unitText(token.unit) + (token.loose ? "" : "!");
    case TokenKind::symbol:
      return token.symbol == SymbolWord::radius ? "radius" : "diameter";
    case TokenKind::remark:
      return token.remark == RemarkWord::reference ? "ref"
             : token.remark == RemarkWord::basic   ? "basic"
                                                   : "typical";
    case TokenKind::also:
      break;
  }
  return "and";
}

// All tokens; `|` joins those that stand against each other.
std::string tokensOf(std::string_view text) {
  const auto tokens = std::make_unique<Tokens>();
  Fault fault;
  if (!tokenize(text, *tokens, fault)) return "at " + std::to_string(fault.at) + ": " + fault.text;
  std::string all;
  for (std::size_t i = 0; i < tokens->count; ++i) {
    if (i > 0) all += tokens->list[i].spaceBefore ? " " : "|";
    all += textOf(tokens->list[i]);
  }
  EXPECT_EQ(tokens->list[tokens->count].kind, TokenKind::end);
  return all;
}

struct TokenRow {
  const char* text;
  const char* tokens;
};

TEST(Tokenize, SplitsWhatPrintsLetter) {
  const TokenRow kRows[] = {
      {"", ""},
      {"  ", ""},
      {"1 3/16", "1 3|/|16"},
      {"1-3/16", "1|-|3|/|16"},
      {"1\u22123/16", "1|minus|3|/|16"},
      {"1.3/16", "13.1|/|16"},
      {".375", "375.3"},
      {"0.375", "375.3"},
      {",375", "375,3"},
      {"1,5mm", "15,1|mm"},
      {"0,125", "125,3"},
      {"10", "10"},
      {"0", "0"},
      {"1\u215C", "1|v3/8"},
      {"\u00B3\u2044\u2081\u2086", "^3|/|_16"},
      {"\u215F\u2088", "v1/0|_8"},
      {"1' 2 3/8\"", "1|ft! 2 3|/|8|in!"},
      {"2''", "2|in!"},
      {"5 THOU", "5 thou"},
      {"12.7 \u00B5m", "127.1 um"},
      {"2.54CM", "254.2|cm"},
      {"3 x 9/16", "3 x 9|/|16"},
      {"3 X 9/16", "3 X 9|/|16"},
      {"3*9/16", "3|*|9|/|16"},
      {"13/16 \u00F7 2", "13|/|16 divide 2"},
      {"1 \u00B1 1/64", "1 +- 1|/|64"},
      {"1 +/- .005", "1 +- 5.3"},
      {"1 +-.005", "1 +-|5.3"},
      {".500 +.002 -.000", "500.3 +|2.3 -|0.3"},
      {"(2 3/8)", "(|2 3|/|8|)"},
      {"R 3/8", "radius 3|/|8"},
      {"R.375", "radius|375.3"},
      {"\u00D81/4", "diameter|1|/|4"},
      {"1/4 DIA.", "1|/|4 diameter"},
      {"2.500 BSC", "2500.3 basic"},
      {"1/2 TYP.", "1|/|2 typical"},
      {"1/2 Ref", "1|/|2 ref"},
      {"1 and 3/16", "1 and 3|/|16"},
      {"22\u00B0 30' 15\"", "22|deg! 30|ft! 15|in!"},
      {"45 deg", "45 deg"},
      {"30 min 5 sec", "30 min 5 sec"},
  };
  for (const TokenRow& row : kRows) EXPECT_EQ(tokensOf(row.text), row.tokens) << row.text;
}

TEST(Tokenize, RefusesInPlace) {
  const TokenRow kRows[] = {
      {"1 3/16 ?", "at 7: this character has no place in a size"},
      {"#7", "at 0: a drill or screw number is no length: type its size"},
      {"1 = 2", "at 2: this sign has no place in a size: type one figure"},
      {"[25.4]", "at 0: square brackets letter the same size in another unit: type one of the two"},
      {"1.", "at 1: no figure follows the point: one may be lost"},
      {"1 . 5", "at 2: a point without figures"},
      {"1.2.3", "at 3: a number has one decimal mark only"},
      {"007", "at 0: 0 before other figures: a point may be missing"},
      {"05", "at 0: 0 before other figures: a point may be missing"},
      {"1,250", "at 1: this comma may divide or only group the figures: write a point, or no mark"},
      {"3 mil", "at 2: a mil is 0.001 in to some and 1 mm to others: write thou or mm"},
      {"3 m", "at 2: metres are not read: write millimetres"},
      {".500 max",
       "at 5: a size with one limit only can't be kept: give both limits, such as .498/.500"},
      {"1 furlong", "at 2: this word has no place in a size: type the figure alone"},
      {"1 millimetrically", "at 2: this word has no place in a size: type the figure alone"},
      {"1\xFF", "at 1: this character has no place in a size"},
      {"1234567890123456789012345", "at 0: this number has more figures than any measure"},
      {".1234567890123456789012345", "at 0: this number has more figures than any measure"},
  };
  for (const TokenRow& row : kRows) EXPECT_EQ(tokensOf(row.text), row.tokens) << row.text;
}

TEST(Tokenize, TakesTextsUpToItsLengthAndNoLonger) {
  EXPECT_EQ(tokensOf(std::string(kLongestText, ' ')), "");
  EXPECT_EQ(tokensOf(std::string(kLongestText + 1, ' ')),
            "at 256: this text is too long for a size");
  // As many tokens as there can be.
  const auto tokens = std::make_unique<Tokens>();
  Fault fault;
  ASSERT_TRUE(tokenize(std::string(kLongestText, '('), *tokens, fault));
  EXPECT_EQ(tokens->count, kLongestText);
  EXPECT_EQ(tokens->list[kLongestText].at, kLongestText);
}

// A fault, or tokens that lie in order within the text with nothing but spaces between them.
TEST(Tokenize, AnyBytesAreTokensInOrderOrOneFault) {
  constexpr std::uint64_t kTokenSeed = 20'261;
  SCOPED_TRACE("seed " + std::to_string(kTokenSeed));
  std::mt19937_64 random(kTokenSeed);
  const std::string kLikely = "0123456789./-+ ()'\"xrdinmRef\xC2\xB1\xE2\x85\x9C";
  const auto tokens = std::make_unique<Tokens>();
  int split = 0;
  for (int round = 0; round < 50'000; ++round) {
    std::string text(random() % 20, ' ');
    for (char& byte : text) {
      byte = random() % 8 == 0 ? static_cast<char>(random() % 256)
                               : kLikely[random() % kLikely.size()];
    }
    Fault fault;
    if (!tokenize(text, *tokens, fault)) {
      ASSERT_NE(fault.text, nullptr);
      ASSERT_LT(fault.at, text.size());
      continue;
    }
    ++split;
    std::size_t at = 0;
    for (std::size_t i = 0; i < tokens->count; ++i) {
      const Token& token = tokens->list[i];
      ASSERT_EQ(token.at > at || (i == 0 && token.at > 0), token.spaceBefore) << text;
      ASSERT_GT(token.past, token.at);
      ASSERT_LE(token.past, text.size());
      at = token.past;
    }
  }
  EXPECT_GT(split, 2'000);
}

}  // namespace
}  // namespace inchwright::reading
