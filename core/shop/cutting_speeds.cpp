#include "core/shop/cutting_speeds.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace inchwright {
namespace {

constexpr std::string_view kTradeTable = "public trade table of drilling speeds";  // S54

// Words of a print and the row that they mean; the first that occurs counts, so the closer names
// stand before the wider ones.
constexpr std::array<std::pair<std::string_view, std::string_view>, 27> kMaterialWords{{
    {"tool steel", "tool steel"},
    {"silver steel", "tool steel"},
    {"drill rod", "tool steel"},
    {"gauge plate", "tool steel"},
    {"stainless", "stainless"},
    {"cast steel", "cast steel"},
    {"cast iron", "cast iron"},
    {"carbon steel", "carbon steel"},
    {"mild steel", "mild steel"},
    {"bronze", "bronze"},
    {"gunmetal", "bronze"},
    {"brass", "brass"},
    {"aluminium", "aluminium"},
    {"aluminum", "aluminium"},
    {"duralumin", "aluminium"},
    {"dural", "aluminium"},
    {"delrin", "plastic"},
    {"acetal", "plastic"},
    {"nylon", "plastic"},
    {"acrylic", "plastic"},
    {"plastic", "plastic"},
    {"free-cutting steel", "mild steel"},
    {"free cutting steel", "mild steel"},
    {"leaded steel", "mild steel"},
    {"crs", "mild steel"},
    {"iron", "cast iron"},
    {"steel", "mild steel"},
}};

std::string smallLetters(std::string_view text) {
  std::string small(text);
  for (char& c : small) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return small;
}

bool standsAsWord(const std::string& text, std::string_view word) {
  const auto isLetter = [](char c) { return c >= 'a' && c <= 'z'; };
  for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
    const std::size_t end = at + word.size();
    if ((at == 0 || !isLetter(text[at - 1])) && (end == text.size() || !isLetter(text[end]))) {
      return true;
    }
  }
  return false;
}

}  // namespace

const std::vector<CuttingSpeed>& cuttingSpeeds() {
  static const std::vector<CuttingSpeed> kRows{
      {"tool steel", 30, kTradeTable},   {"stainless", 30, kTradeTable},
      {"cast steel", 35, kTradeTable},   {"cast iron", 50, kTradeTable},
      {"carbon steel", 60, kTradeTable}, {"mild steel", 70, kTradeTable},
      {"bronze", 100, kTradeTable},      {"brass", 200, kTradeTable},
      {"aluminium", 300, kTradeTable},   {"plastic", 1000, kTradeTable},
  };
  return kRows;
}

std::optional<CuttingSpeed> cuttingSpeedOf(std::string_view material) {
  const std::string small = smallLetters(material);
  for (const auto& [word, row] : kMaterialWords) {
    if (!standsAsWord(small, word)) continue;
    for (const CuttingSpeed& speed : cuttingSpeeds()) {
      if (speed.material == row) return speed;
    }
  }
  return std::nullopt;
}

int revolutionsFor(int feetPerMinute, Length diameter) {
  return static_cast<int>(
      std::lround(12.0 * feetPerMinute / (std::numbers::pi * diameter.toInches())));
}

int nearestSpeed(int guide, const std::vector<int>& speeds) {
  if (speeds.empty()) return guide;
  int best = *std::min_element(speeds.begin(), speeds.end());
  for (const int speed : speeds) {
    if (speed <= guide) best = std::max(best, speed);
  }
  return best;
}

}  // namespace inchwright
