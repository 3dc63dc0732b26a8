#include "core/sheet/closeness_block.h"

#include <algorithm>
#include <memory>
#include <string>
#include <utility>

#include "core/sheet/notes_block.h"
#include "core/sheet/paragraph.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

/// So many ids in the widest band of an axis are told shorter, and as safely, by `all others`.
constexpr std::size_t kMostNamed = 6;

std::string placesAlong(const Closeness& closeness, const ClosenessBand& band) {
  std::string text = letterOf(band.axis) + std::string(": ");
  const bool widest =
      std::none_of(closeness.bands.begin(), closeness.bands.end(), [&](const ClosenessBand& other) {
        return other.axis == band.axis && other.plusMinus > band.plusMinus;
      });
  if (widest && band.places.size() > kMostNamed) {
    const bool only = std::none_of(
        closeness.bands.begin(), closeness.bands.end(), [&](const ClosenessBand& other) {
          return other.axis == band.axis && other.plusMinus < band.plusMinus;
        });
    return text + (only ? "all" : "all others");
  }
  for (std::size_t i = 0; i < band.places.size(); ++i) text += (i > 0 ? ", " : "") + band.places[i];
  return text;
}

/// Bands of one size stand on one line.
std::vector<std::pair<std::string, std::string>> linesOf(const Closeness& closeness,
                                                         const Step& step) {
  std::vector<std::pair<std::string, std::string>> lines;
  const Length* size = nullptr;
  for (const ClosenessBand& band : closeness.bands) {
    if (size && *size == band.plusMinus) {
      lines.back().second += " \u00B7 " + placesAlong(closeness, band);
    } else {
      lines.emplace_back("\u00B1" + showAtStep(Rational(band.plusMinus.ticks()), step).text,
                         placesAlong(closeness, band));
    }
    size = &band.plusMinus;
  }
  return lines;
}

std::string aimsOf(const Closeness& closeness) {
  std::string text;
  for (const BetterAim& aim : closeness.aims) {
    text += text.empty() ? "Aim at " : " \u00B7 ";
    text += aim.place + " " + letterOf(aim.axis) + " " + signedText(aim.at);
  }
  return text;
}

}  // namespace

Pieces closenessPieces(const SheetContent& content, double width) {
  if (!content.options.closeness) return {};
  const Closeness& closeness = *content.options.closeness;
  const auto lines = linesOf(closeness, content.table.step);
  if (lines.empty() && closeness.advice.empty()) return {};
  const Sketch::Look strong{content.style.body(), Typeface::bold};
  const Sketch::Look plain{content.style.body(), Typeface::regular};
  Pieces pieces{titlePiece(content, "HOW CLOSE TO WORK, so that the print holds", width)};
  const auto again = std::make_shared<const Piece>(pieces.front());
  double indent = 0;
  for (const auto& [figure, places] : lines) {
    indent = std::max(indent, textWidth(figure, strong.height, strong.face) + plain.height);
  }
  const auto add = [&](const LaidLine& laid, double left, const std::string& figure) {
    Piece piece;
    piece.heading = again;
    if (!figure.empty()) piece.sketch.add(stacked(layText(figure, strong, indent)).sketch, 0, 0);
    piece.sketch.add(laid.sketch, left, 0);
    piece.height = laid.height;
    pieces.push_back(std::move(piece));
  };
  for (const auto& [figure, places] : lines) {
    bool first = true;
    for (const LaidLine& line : layText(places, plain, width - indent)) {
      add(line, indent, first ? figure : "");
      first = false;
    }
  }
  std::vector<std::string> words;
  if (!closeness.aims.empty()) words.push_back(aimsOf(closeness));
  for (const ClosenessAdvice& advice : closeness.advice) {
    words.push_back(adviceWords(advice, content.part, content.table.step));
  }
  for (const std::string& text : words) {
    for (const LaidLine& line : layText(text, plain, width)) add(line, 0, "");
  }
  pieces.push_back(space(2.3));
  return pieces;
}

}  // namespace inchwright
