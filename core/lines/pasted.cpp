#include "core/lines/pasted.h"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "core/part/edit.h"

namespace inchwright {
namespace {

std::vector<std::string> wordsOf(std::string_view line) {
  constexpr std::string_view kBlank = " \t\r";
  std::vector<std::string> words;
  std::size_t at = line.find_first_not_of(kBlank);
  while (at != std::string_view::npos) {
    const std::size_t end = std::min(line.find_first_of(kBlank, at), line.size());
    words.emplace_back(line.substr(at, end - at));
    at = line.find_first_not_of(kBlank, end);
  }
  return words;
}

/// The side a customary letter stands for.
std::optional<Side> sideLettered(std::string_view id) {
  if (id == "L") return Side::left;
  if (id == "R") return Side::right;
  if (id == "F") return Side::front;
  if (id == "K") return Side::back;
  if (id == "T") return Side::top;
  if (id == "U") return Side::bottom;
  return std::nullopt;
}

bool isPlace(const Part& part, std::string_view id) {
  for (const Feature& feature : part.features) {
    if (isNamedBy(feature, id)) return true;
  }
  return false;
}

/// Whether a word can be the id of a place in a reading: letters first, then digits.
bool looksLikePlace(std::string_view word) {
  std::size_t letters = 0;
  while (letters < word.size() && word[letters] >= 'A' && word[letters] <= 'Z') ++letters;
  return letters > 0 && letters <= 3 &&
         word.find_first_not_of("0123456789", letters) == std::string_view::npos;
}

/// As readings are numbered: `r7`.
bool namesReading(std::string_view word) {
  return word.size() > 1 && word[0] == 'r' &&
         word.find_first_not_of("0123456789", 1) == std::string_view::npos;
}

struct Ends {
  std::string from, to;
  std::optional<Axis> axis;
};

/// The two ends of a line that is a reading: `[r7] [x] FROM TO FIGURE`.
std::optional<Ends> endsOf(std::string_view line) {
  std::vector<std::string> words = wordsOf(line);
  Ends ends;
  for (std::size_t i = 0; i < std::min<std::size_t>(words.size(), 2); ++i) {
    if (const auto axis = axisNamed(words[i])) {
      ends.axis = axis;
      words.erase(words.begin(), words.begin() + static_cast<std::ptrdiff_t>(i) + 1);
      break;
    }
  }
  if (!ends.axis && words.size() > 3 && namesReading(words[0])) words.erase(words.begin());
  if (words.size() < 3 || !looksLikePlace(words[0]) || !looksLikePlace(words[1]))
    return std::nullopt;
  ends.from = words[0];
  ends.to = words[1];
  return ends;
}

Result<Part> withPlace(const Part& part, const std::string& id, Axis axis,
                       const LineContext& context) {
  if (isPlace(part, id)) return part;
  const auto side = sideLettered(id);
  Feature feature;
  feature.id = id;
  if (side && axisAcross(*side) == axis) {
    feature.shape = kind::Edge{axis, side};
  } else {
    feature.face = context.face;
  }
  return addFeature(part, feature);
}

/// The axis an end settles: its own when it is a plane, or when its letter is that of a side.
std::optional<Axis> axisOfEnd(const Part& part, const std::string& id) {
  if (const Feature* feature = part.feature(id)) {
    const auto* edge = feature->as<kind::Edge>();
    return edge ? std::optional(edge->axis) : std::nullopt;
  }
  if (isPlace(part, id)) return std::nullopt;
  const auto side = sideLettered(id);
  return side ? std::optional(axisAcross(*side)) : std::nullopt;
}

Result<Part> withEnds(const Part& part, const Ends& ends, const LineContext& context) {
  Axis axis = context.axis;
  if (ends.axis) {
    axis = *ends.axis;
  } else if (const auto first = axisOfEnd(part, ends.from)) {
    axis = *first;
  } else if (const auto second = axisOfEnd(part, ends.to)) {
    axis = *second;
  }
  const Result<Part> one = withPlace(part, ends.from, axis, context);
  return one ? withPlace(*one, ends.to, axis, context) : one;
}

}  // namespace

Result<Part> applyLines(const Part& part, std::string_view text, const LineContext& context) {
  Part now = part;
  int number = 0;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    const std::string_view line = text.substr(0, end);
    text = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
    ++number;
    const std::size_t begins = line.find_first_not_of(" \t\r");
    if (begins == std::string_view::npos || line[begins] == '#') continue;
    const auto fail = [number](Error error) {
      error.place = "line " + std::to_string(number);
      return error;
    };
    if (const auto ends = endsOf(line)) {
      Result<Part> ready = withEnds(now, *ends, context);
      if (!ready) return fail(ready.error());
      now = std::move(ready).value();
    }
    std::string_view trimmed = line.substr(begins);
    trimmed = trimmed.substr(0, trimmed.find_last_not_of(" \t\r") + 1);
    Result<LineOutcome> outcome = applyLine(now, trimmed, context);
    if (!outcome) return fail(outcome.error());
    now = std::move(outcome).value().part;
  }
  return now;
}

}  // namespace inchwright
