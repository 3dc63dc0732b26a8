#include "core/measure/glyphs.h"

#include <gtest/gtest.h>

#include <random>
#include <string>
#include <vector>

namespace inchwright::reading {
namespace {

struct GlyphRow {
  const char* text;
  GlyphKind kind;
  int value = 0;
  int under = 0;
};

void expectGlyphs(const std::vector<GlyphRow>& rows) {
  for (const GlyphRow& row : rows) {
    SCOPED_TRACE(row.text);
    const std::string text(row.text);
    const Glyph glyph = glyphAt(text, 0);
    EXPECT_EQ(glyph.kind, row.kind);
    EXPECT_EQ(glyph.value, row.value);
    EXPECT_EQ(glyph.under, row.under);
    EXPECT_EQ(glyph.length, text.size());
    // The same wherever it stands.
    EXPECT_EQ(glyphAt("7" + text + "7", 1).kind, row.kind);
    EXPECT_EQ(glyphAt("7" + text + "7", 1).length, text.size());
  }
}

// Characters by their numbers in the Unicode charts: Latin-1, Spacing Modifier Letters, General
// Punctuation, Superscripts and Subscripts, Number Forms, Mathematical Operators.
TEST(Glyphs, SignsInEveryFormTheyComeIn) {
  expectGlyphs({
      {".", GlyphKind::point},          {"\u00B7", GlyphKind::point},
      {",", GlyphKind::comma},          {"/", GlyphKind::slash},
      {"\u2044", GlyphKind::slash},     {"\u2215", GlyphKind::slash},
      {"\uFF0F", GlyphKind::slash},     {"\u00F7", GlyphKind::divide},
      {"+", GlyphKind::plus},           {"\uFF0B", GlyphKind::plus},
      {"-", GlyphKind::dash},           {"\u2010", GlyphKind::dash},
      {"\u2013", GlyphKind::dash},      {"\u2015", GlyphKind::dash},
      {"\uFF0D", GlyphKind::dash},      {"\u2212", GlyphKind::minus},
      {"\u00B1", GlyphKind::plusMinus}, {"*", GlyphKind::times},
      {"\u00D7", GlyphKind::times},     {"\u2715", GlyphKind::times},
      {"\u2217", GlyphKind::times},     {"(", GlyphKind::open},
      {")", GlyphKind::close},          {"\"", GlyphKind::inchMark},
      {"\u2033", GlyphKind::inchMark},  {"\u201D", GlyphKind::inchMark},
      {"\u02BA", GlyphKind::inchMark},  {"'", GlyphKind::footMark},
      {"\u2032", GlyphKind::footMark},  {"\u2019", GlyphKind::footMark},
      {"\u00B4", GlyphKind::footMark},  {"\u00B0", GlyphKind::degree},
      {"\u00BA", GlyphKind::degree},    {"\u00D8", GlyphKind::diameter},
      {"\u00F8", GlyphKind::diameter},  {"\u2300", GlyphKind::diameter},
      {"\u2205", GlyphKind::diameter},  {"\u03C6", GlyphKind::diameter},
  });
}

TEST(Glyphs, FractionsOfOneCharacter) {
  expectGlyphs({
      {"\u00BC", GlyphKind::vulgar, 1, 4}, {"\u00BD", GlyphKind::vulgar, 1, 2},
      {"\u00BE", GlyphKind::vulgar, 3, 4}, {"\u2150", GlyphKind::vulgar, 1, 7},
      {"\u2151", GlyphKind::vulgar, 1, 9}, {"\u2152", GlyphKind::vulgar, 1, 10},
      {"\u2153", GlyphKind::vulgar, 1, 3}, {"\u2154", GlyphKind::vulgar, 2, 3},
      {"\u2155", GlyphKind::vulgar, 1, 5}, {"\u2156", GlyphKind::vulgar, 2, 5},
      {"\u2157", GlyphKind::vulgar, 3, 5}, {"\u2158", GlyphKind::vulgar, 4, 5},
      {"\u2159", GlyphKind::vulgar, 1, 6}, {"\u215A", GlyphKind::vulgar, 5, 6},
      {"\u215B", GlyphKind::vulgar, 1, 8}, {"\u215C", GlyphKind::vulgar, 3, 8},
      {"\u215D", GlyphKind::vulgar, 5, 8}, {"\u215E", GlyphKind::vulgar, 7, 8},
      {"\u215F", GlyphKind::vulgar, 1, 0}, {"\u2189", GlyphKind::vulgar, 0, 3},
  });
}

TEST(Glyphs, DigitsOnTheLineAboveAndBelowIt) {
  const char* const kRaised[] = {"\u2070", "\u00B9", "\u00B2", "\u00B3", "\u2074",
                                 "\u2075", "\u2076", "\u2077", "\u2078", "\u2079"};
  const char* const kLowered[] = {"\u2080", "\u2081", "\u2082", "\u2083", "\u2084",
                                  "\u2085", "\u2086", "\u2087", "\u2088", "\u2089"};
  for (int digit = 0; digit < 10; ++digit) {
    expectGlyphs({{std::to_string(digit).c_str(), GlyphKind::digit, digit},
                  {kRaised[digit], GlyphKind::raisedDigit, digit},
                  {kLowered[digit], GlyphKind::loweredDigit, digit}});
  }
}

TEST(Glyphs, LettersInEitherCase) {
  for (char small = 'a'; small <= 'z'; ++small) {
    const std::string capital(1, static_cast<char>(small - 'a' + 'A'));
    EXPECT_EQ(glyphAt(std::string(1, small), 0).value, small);
    EXPECT_FALSE(glyphAt(std::string(1, small), 0).capital);
    EXPECT_EQ(glyphAt(capital, 0).value, small);
    EXPECT_TRUE(glyphAt(capital, 0).capital);
    EXPECT_EQ(glyphAt(capital, 0).kind, GlyphKind::letter);
  }
  // The micro sign and the Greek letter are both the u of um.
  expectGlyphs({{"\u00B5", GlyphKind::letter, 'u'}, {"\u03BC", GlyphKind::letter, 'u'}});
}

TEST(Glyphs, SpacesOfEveryWidth) {
  for (const char* space : {" ", "\t", "\n", "\r", "\u00A0", "\u2000", "\u2003", "\u2009", "\u200A",
                            "\u2028", "\u2029", "\u202F", "\u205F", "\u3000"}) {
    expectGlyphs({{space, GlyphKind::space}});
  }
}

TEST(Glyphs, WhatHasNoPlaceInAFigure) {
  for (const char* stranger : {"#", "=", "[", "_", "~", "\x7F", "\x01", "\u00E9", "\u0416",
                               "\u200B", "\u221A", "\u00AC", "\uFFFD"}) {
    expectGlyphs({{stranger, GlyphKind::unknown}});
  }
  EXPECT_EQ(glyphAt("", 0).kind, GlyphKind::end);
  EXPECT_EQ(glyphAt("1", 1).kind, GlyphKind::end);
  EXPECT_EQ(glyphAt("1", 99).length, 0);
  // A zero byte is no end.
  EXPECT_EQ(glyphAt(std::string_view("\0", 1), 0).kind, GlyphKind::unknown);
}

// Cut off, overlong, stray and four-byte sequences: one byte each, so that a walk goes on.
TEST(Glyphs, BytesThatAreNoUtf8AreUnknownOneByOne) {
  for (const std::string& broken :
       {std::string("\xC2"), std::string("\xE2\x85"), std::string("\x80"), std::string("\xC0\xAF"),
        std::string("\xC1\xBC"), std::string("\xE0\x80\xAF"), std::string("\xE2\x85x"),
        std::string("\xF0\x9F\x94\xA7"), std::string("\xFF"), std::string("\xC2\x20")}) {
    const Glyph glyph = glyphAt(broken, 0);
    EXPECT_EQ(glyph.kind, GlyphKind::unknown);
    EXPECT_EQ(glyph.length, 1);
  }
}

TEST(Glyphs, AnyBytesAreWalkedThroughToTheirEnd) {
  constexpr std::uint64_t kGlyphSeed = 7'311;
  SCOPED_TRACE("seed " + std::to_string(kGlyphSeed));
  std::mt19937_64 random(kGlyphSeed);
  for (int round = 0; round < 20'000; ++round) {
    std::string text(random() % 24, ' ');
    for (char& byte : text) byte = static_cast<char>(random() % 256);
    std::size_t at = 0;
    while (at < text.size()) {
      const Glyph glyph = glyphAt(text, at);
      ASSERT_NE(glyph.kind, GlyphKind::end);
      ASSERT_GE(glyph.length, 1);
      at += glyph.length;
    }
    ASSERT_EQ(at, text.size());
  }
}

}  // namespace
}  // namespace inchwright::reading
