#pragma once

#include <array>
#include <cstdint>

#include "core/seen/net.h"
#include "core/seen/plane.h"

namespace inchwright::seen {

/// Kinds of glyphs told apart, by their index in this list. O stands with the nought and I with
/// the one: on a print they are drawn alike. `?` is whatever is none of them.
inline constexpr std::string_view kGlyphKinds = "0123456789/()RABCDEFGHKLMNPSTUVWXY+-.=#@?";
inline constexpr char kDiameterGlyph = '=';   ///< Ø
inline constexpr char kPlusMinusGlyph = '#';  ///< ±
inline constexpr char kDegreeGlyph = '@';     ///< °
inline constexpr int kGlyphSide = 20;

/// How likely a glyph is each of kGlyphKinds; they add to 1.
using GlyphOdds = std::array<float, kGlyphKinds.size()>;
/// A glyph as the net sees it: its longer side fitted into kGlyphSide less two, in the middle, the
/// darkest pixel 255.
using GlyphPatch = std::array<std::uint8_t, kGlyphSide * kGlyphSide>;

GlyphPatch patchOf(const Grey& glyph);
GlyphOdds oddsOf(const Net& net, const GlyphPatch& patch);
inline float oddsFor(const GlyphOdds& odds, char kind) {
  return odds[kGlyphKinds.find(kind)];
}
/// The likeliest kind.
char kindOf(const GlyphOdds& odds);

}  // namespace inchwright::seen
