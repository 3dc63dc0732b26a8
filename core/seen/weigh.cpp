#include "core/seen/weigh.h"

#include <cmath>

#include "core/measure/angle.h"

namespace inchwright::seen {
namespace {

constexpr double kAstray = 0.02;  // share of distances that say nothing
constexpr double kPlain = 0.6;    // mean odds of plain glyphs
constexpr double kCrowded = 1.0;  // what it costs that something may have been left out
constexpr double kUnsure = 0.15;
constexpr double kClear = 1.0;   // a plain figure is 2.7 times as likely as any other
constexpr double kAlike = 0.3;   // what is less likely by its glyphs than so is another figure
constexpr double kTorn = 0.6;    // and within so much either may be lettered
constexpr double kAgrees = 1.6;  // standard deviations
constexpr double kFarOff = 8;    // likewise: no slip of the pen is meant
constexpr double kRival = 6.0;   // a candidate 400 times less likely is none beside the first
constexpr std::int64_t kWidestTolerance = Length::kTicksPerInch / 16;
constexpr double kTooUnlikely = -2.9;  // mean logarithm: odds of a 20th

struct Weight {
  Candidate candidate;
  const Reads* reads;
  double glyphs;  // logarithm, with how far off it stands
  double sum;     // with the distance and habit
  double mean;    // logarithm of a glyph
  double far;
  bool beside;
};

double habit(const std::string& text, Unit unit) {
  // Coarse fractions are commoner.
  const std::size_t slash = text.find('/');
  if (unit == Unit::millimetre || slash == std::string::npos) return 0;
  const int d = std::atoi(text.c_str() + slash + 1);
  return d == 64 ? -1.3 : d == 32 ? -0.6 : d == 16 ? -0.15 : 0;
}

bool value(const std::string& text, bool angle, Unit unit, Candidate& out, double& natural) {
  const bool degrees = text.find("°") != std::string::npos;
  if (angle != degrees) return false;
  if (angle) {
    const Result<LetteredAngle> read = readAngle(text);
    if (!read) return false;
    out.ticks = read->value.microArcseconds();
    natural = read->value.toDegrees();
    return natural > 0;
  }
  const Result<Lettered> read = readLength(text, {unit});
  if (!read || read->value.ticks() <= 0) return false;
  out.ticks = read->value.ticks();
  natural = read->value.toInches();
  return true;
}

std::vector<Weight> weights(const std::vector<NearFigure>& near, const Drawn& drawn, bool angle,
                            Unit unit, const std::vector<Length>& closing) {
  std::vector<Weight> all;
  for (const NearFigure& n : near) {
    for (const FigureRead& r : n.reads->reads) {
      if (r.mean() < kTooUnlikely) continue;
      Weight w{{r.text, 0, std::exp(r.mean()), 0, false},
               n.reads,
               r.odds - 4 * n.far - (n.reads->crowded ? kCrowded : 0),
               0,
               r.mean(),
               n.far,
               n.beside};
      double natural = 0;
      if (!value(r.text, angle, unit, w.candidate, natural)) continue;
      const double off = (drawn.distance - natural) / drawn.sigma;
      w.candidate.scale = std::abs(off);
      w.candidate.closes = std::any_of(closing.begin(), closing.end(),
                                       [&](Length l) { return l.ticks() == w.candidate.ticks; });
      const double agrees =
          std::log((1 - kAstray) * std::exp(-0.5 * std::min(off * off, 200.0)) + kAstray * 0.02);
      w.sum = w.glyphs + agrees + 0.5 * habit(r.text, unit) + (w.candidate.closes ? 2 : 0);
      const auto had = std::find_if(all.begin(), all.end(),
                                    [&](const Weight& o) { return o.candidate.text == r.text; });
      if (had == all.end()) {
        all.push_back(w);
      } else if (had->sum < w.sum) {
        *had = w;
      }
    }
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Weight& a, const Weight& b) { return a.sum > b.sum; });
  return all;
}

/// Whether one reads only a piece of the lettering that the other reads.
bool partOf(const Weight& piece, const Weight& whole) {
  const Box both = around(piece.reads->box, whole.reads->box);
  return piece.reads->crowded && piece.reads->turned == whole.reads->turned &&
         both == whole.reads->box && piece.reads->box != both;
}

/// Whether the last decimal may be no digit: a bracket or a stroke beside a figure looks like a 1,
/// and so far behind the point the drawn distance can't tell. Tolerances of .001 are common.
bool mayEndInAStroke(const std::string& text) {
  bool later = false;
  for (std::size_t point = text.find('.'); point != std::string::npos;
       point = text.find('.', point + 1)) {
    const std::size_t past = std::min(text.find_first_not_of("0123456789", point + 1), text.size());
    if (text[past - 1] == '1' && !(later && past - point == 4)) return true;
    later = true;
  }
  return false;
}

/// Whether a last digit may be lost: decimals of an inch are lettered in three places, and where
/// one stands under a line, two are left.
bool mayLackADigit(const std::string& text, Unit unit) {
  const std::size_t point = text.find('.');
  if (unit != Unit::inch || point == std::string::npos) return false;
  return std::min(text.find_first_not_of("0123456789", point + 1), text.size()) - point < 4;
}

/// Whether a stroke may have been read with a tolerance, as `±11/64` of `±1/64`: so wide a one is
/// lettered nowhere.
bool mayBeTooWide(const std::string& text, Unit unit) {
  if (text.find("±") == std::string::npos) return false;
  const Result<Lettered> read = readLength(text, {unit});
  return !read || (read->tolerance && read->tolerance->upper.ticks() > kWidestTolerance);
}

std::string digitsOf(const std::string& text) {
  std::string out;
  std::copy_if(text.begin(), text.end(), std::back_inserter(out),
               [](char c) { return c >= '0' && c <= '9'; });
  return out;
}

/// Whether one is only another way to part the marks that the other reads (`21 5/16` for
/// `2 15/16`, `34` for `3/4`), or reads a piece of them, and is far from what is drawn while the
/// other agrees with it. Neither is what a slip of the pen makes of a figure.
bool partsOtherwise(const Weight& o, const Weight& w) {
  if (w.candidate.scale > kAgrees || o.candidate.scale < kFarOff) return false;
  if (o.reads->turned != w.reads->turned) return false;
  const Box both = around(o.reads->box, w.reads->box);
  if (both == w.reads->box && o.reads->box != both) return true;
  return o.glyphs < w.glyphs + kClear / 2 &&
         digitsOf(o.candidate.text) == digitsOf(w.candidate.text);
}

bool clearOf(const Weight& w, const std::vector<Weight>& all, Unit unit) {
  return !w.reads->crowded && !w.beside && w.mean > std::log(kPlain) &&
         !mayEndInAStroke(w.candidate.text) && !mayLackADigit(w.candidate.text, unit) &&
         !mayBeTooWide(w.candidate.text, unit) &&
         std::all_of(all.begin(), all.end(), [&](const Weight& o) {
           return &o == &w || o.candidate.ticks == w.candidate.ticks || partOf(o, w) ||
                  partsOtherwise(o, w) || w.glyphs >= o.glyphs + kClear;
         });
}

}  // namespace

Weighed weigh(const std::vector<NearFigure>& near, const Drawn& drawn, bool angle, Unit unit,
              const std::vector<Length>& closing) {
  std::vector<Weight> all = weights(near, drawn, angle, unit, closing);
  Weighed out;
  if (all.empty()) return out;
  const auto plainest = std::max_element(
      all.begin(), all.end(), [](const Weight& a, const Weight& b) { return a.glyphs < b.glyphs; });
  const double likeliest = plainest->glyphs;
  if (clearOf(*plainest, all, unit)) std::rotate(all.begin(), plainest, plainest + 1);
  const Weight first = all.front();
  out.witnesses.plain = clearOf(all.front(), all, unit);
  out.witnesses.unsure = !out.witnesses.plain && first.mean > std::log(kUnsure);
  // Where likelier glyphs speak against the drawing it may be a misprint, which is not put right.
  // Nor does a piece of the lettering speak for the drawing.
  out.witnesses.scale = first.candidate.scale <= kAgrees && !first.reads->crowded &&
                        first.glyphs >= likeliest - kAlike &&
                        std::none_of(all.begin() + 1, all.end(), [&](const Weight& o) {
                          return o.candidate.ticks != first.candidate.ticks &&
                                 o.candidate.scale <= kAgrees && o.glyphs > first.glyphs - kRival;
                        });
  // Of two that are nearly as likely the drawing may choose the one that a misprint is not.
  if (!out.witnesses.plain) {
    out.witnesses.scale =
        out.witnesses.scale && std::none_of(all.begin() + 1, all.end(), [&](const Weight& o) {
          return o.candidate.ticks != first.candidate.ticks && o.candidate.scale > kAgrees &&
                 o.glyphs > first.glyphs - kTorn;
        });
  }
  out.witnesses.closes = first.candidate.closes;
  out.box = first.reads->box;
  out.far = first.far;
  for (std::size_t i = 0; i < all.size() && i < 6; ++i) out.candidates.push_back(all[i].candidate);
  return out;
}

}  // namespace inchwright::seen
