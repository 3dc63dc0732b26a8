#include "tests/seen/examples.h"

#include <cmath>
#include <random>

#include "core/seen/figure.h"
#include "core/seen/looked_at.h"
#include "core/seen/pieces.h"

namespace inchwright::seen {
namespace {

char kindOfCharacter(const std::string& c) {
  if (c == "±") return kPlusMinusGlyph;
  if (c == "Ø") return kDiameterGlyph;
  if (c == "°") return kDegreeGlyph;
  if (c == "O") return '0';
  if (c == "I") return '1';
  return c.size() == 1 && kGlyphKinds.find(c[0]) != std::string_view::npos ? c[0] : '?';
}

struct TrueGlyph {
  char kind;
  double x0, y0, x1, y1;  // pixels of the raster
  bool turned;

  double area() const { return (x1 - x0) * (y1 - y0); }
};

struct Found {
  GlyphPatch patch;
  char kind;
};

/// What a piece is: the glyph it mostly is, or nothing in particular.
char kindOfPiece(const Box& b, const std::vector<TrueGlyph>& glyphs, bool turned, bool& doubtful) {
  char kind = '?';
  double most = 0, others = 0;
  const double own = double(b.w) * b.h;
  for (const TrueGlyph& g : glyphs) {
    const double w = std::min<double>(g.x1, b.right()) - std::max<double>(g.x0, b.x);
    const double h = std::min<double>(g.y1, b.bottom()) - std::max<double>(g.y0, b.y);
    if (w <= 0 || h <= 0) continue;
    const double share = w * h / (own + g.area() - w * h);
    if (share > most) {
      most = share;
      kind = g.turned == turned ? g.kind : '?';
    }
    if (w * h > 0.25 * g.area()) others += 1;
  }
  doubtful = most > 0.3 && most < 0.5;
  return most >= 0.5 && others <= 1 ? kind : '?';
}

void addGlyphs(const LookedAt& seen, const std::vector<TrueGlyph>& glyphs, std::mt19937& random,
               Examples& out) {
  out.inputs = kGlyphSide * kGlyphSide;
  out.outputs = static_cast<int>(kGlyphKinds.size());
  for (const Lettering* from : {&seen.whole, &seen.bare}) {
    for (const Block& block : from->blocks) {
      if (std::max(block.box.w, block.box.h) > 4 * seen.inch) continue;
      for (const bool turned : {false, true}) {
        Grey ink = inkOf(*from, block.parts, block.box);
        const int high = ink.height;
        if (turned) ink = turnedUpright(ink);
        for (const std::uint8_t above : kThresholds) {
          for (const Piece& p : piecesOf(ink, above, seen.inch).glyphs) {
            Box b = p.box;
            if (turned) b = {p.box.y, high - p.box.right(), p.box.h, p.box.w};
            b.x += block.box.x - 1;
            b.y += block.box.y - 1;
            bool doubtful = false;
            const char kind = kindOfPiece(b, glyphs, turned, doubtful);
            // Half of the known ones will do, and a tenth of what is nothing in particular.
            if (doubtful || random() % 20 >= (kind == '?' ? (turned ? 1U : 3U) : 10U)) continue;
            const GlyphPatch patch = patchOf(p.ink);
            out.input.insert(out.input.end(), patch.begin(), patch.end());
            for (const char k : kGlyphKinds) out.wanted.push_back(k == kind);
          }
        }
      }
    }
  }
}

struct TrueEnd {
  double x, y;  // of the view
  bool right;   // its line runs on to the right
  bool found;
};

void addPatch(const Patch& patch, bool left, bool right, Examples& out) {
  out.input.insert(out.input.end(), patch.begin(), patch.end());
  out.wanted.push_back(left);
  out.wanted.push_back(right);
}

Patch mirrored(const Patch& from, bool across, bool along) {
  Patch to;
  for (int y = 0; y < kPatchHigh; ++y) {
    for (int x = 0; x < kPatchWide; ++x) {
      to[y * kPatchWide + x] =
          from[(across ? kPatchHigh - 1 - y : y) * kPatchWide + (along ? kPatchWide - 1 - x : x)];
    }
  }
  return to;
}

void addEnds(const View& view, std::vector<TrueEnd> ends, std::mt19937& random,
             ExamplesOfPrints& all) {
  Examples& out = all.ends;
  out.inputs = kPatchWide * kPatchHigh;
  out.outputs = 2;
  out.independent = true;
  const double inch = view.inch;
  for (const End& place : placesOfEnds(view)) {
    bool left = false, right = false, near = false;
    for (TrueEnd& e : ends) {
      const double dx = std::abs(place.x - e.x), dy = std::abs(place.y - e.y);
      if (dx < 0.03 * inch + 2 && dy < 0.055 * inch + 2) {
        (e.right ? right : left) = true;
        e.found = true;
      } else if (dx < 0.06 * inch + 2 && dy < 0.09 * inch + 2) {
        near = true;
      }
    }
    if (!left && !right && (near || random() % 3 != 0)) continue;
    const Patch patch = patchAt(view, place.x, place.y);
    addPatch(patch, left, right, out);
    addPatch(mirrored(patch, false, true), right, left, out);
    if (!left && !right) continue;
    for (const bool along : {false, true})
      addPatch(mirrored(patch, true, along), along ? right : left, along ? left : right, out);
    // Where two lines share an end is seldom, and no easier to tell.
    for (int k = left && right ? 4 : 1; k > 0; --k) {
      const double slip = 0.012 * inch;
      const double x = place.x + slip * (double(random() % 3) - 1),
                   y = place.y + slip * (double(random() % 3) - 1);
      const Patch beside = patchAt(view, x, y);
      addPatch(beside, left, right, out);
      addPatch(mirrored(beside, true, true), right, left, out);
    }
  }
  for (const TrueEnd& e : ends) all.endsMissed += !e.found;
}

}  // namespace

void addExamples(const DrawnPrint& print, std::uint32_t seed, ExamplesOfPrints& out) {
  std::mt19937 random(seed);
  const auto looked = lookAt(print.picture, print.pixelToInches, print.capitals(), Nets{}, Stop());
  if (!looked) return;
  const LookedAt& seen = *looked;
  const Frame& frame = seen.squared.frame;
  std::vector<TrueGlyph> glyphs;
  for (const auto& g : print.truth["glyphs"]) {
    const PlanePoint low = frame.pixel({g[1], g[2]}), high = frame.pixel({g[3], g[4]});
    glyphs.push_back({kindOfCharacter(g[0]), low.x, high.y, high.x, low.y, g[5]});
  }
  addGlyphs(seen, glyphs, random, out.glyphs);
  std::vector<TrueEnd> level, plumb;
  for (const auto& h : print.truth["heads"]) {
    const PlanePoint p = frame.pixel({h[0], h[1]});
    const double dx = h[2], dy = h[3];
    if (std::abs(dx) > 0.9) level.push_back({p.x, p.y, dx > 0, false});
    if (std::abs(dy) > 0.9) plumb.push_back({p.y, p.x, dy < 0, false});
  }
  addEnds(seen.level, level, random, out);
  addEnds(seen.plumb, plumb, random, out);
}

}  // namespace inchwright::seen
