#include "core/shop/drill_set.h"

#include <algorithm>
#include <optional>

#include "core/base/ascii.h"
#include "core/measure/lettered.h"
#include "core/measure/writing.h"
#include "core/shop/sizes.h"

namespace inchwright {
namespace {

const Length kLargestSingleDrill = sixtyFourths(7 * 32);

std::vector<std::string> wordsIn(std::string_view text) {
  std::vector<std::string> words(1);
  for (const char c : text) {
    if (c == ' ' || c == '\t') {
      if (!words.back().empty()) words.emplace_back();
    } else {
      words.back() += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

std::optional<DrillSeries> seriesNamed(std::string_view word) {
  if (word == "fractional" || word == "fraction" || word == "fractions") {
    return DrillSeries::fraction;
  }
  if (word == "number" || word == "numbers" || word == "numbered") return DrillSeries::number;
  if (word == "letter" || word == "letters" || word == "lettered") return DrillSeries::letter;
  if (word == "metric") return DrillSeries::metric;
  return std::nullopt;
}

Error noSet(std::string_view text, const std::string& what) {
  return {ErrorCode::badText,
          "can't read the drills `" + std::string(text) + "`: " + what +
              "; say such as `fractional 1/16 to 1/2`, `number 1 to 60`, `letter`, `metric 1 to 10 "
              "by 0.1`, `#7`, `15/64`",
          "", std::nullopt};
}

/// `1/16 to 1/2 by 1/32` behind the name of a series.
struct Bounds {
  std::string from;
  std::string to;
  std::string by;
};

std::optional<Bounds> boundsIn(const std::vector<std::string>& words) {
  Bounds bounds;
  std::string* into = &bounds.from;
  for (std::size_t i = 1; i < words.size(); ++i) {
    if (words[i] == "to" && into == &bounds.from) {
      into = &bounds.to;
    } else if (words[i] == "by" && into == &bounds.to) {
      into = &bounds.by;
    } else {
      *into += (into->empty() ? "" : " ") + words[i];
    }
  }
  const bool whole = words.size() == 1;
  if (!whole && (bounds.from.empty() || bounds.to.empty())) return std::nullopt;
  if (into == &bounds.by && bounds.by.empty()) return std::nullopt;
  return bounds;
}

std::optional<Length> boundOf(const std::string& text, DrillSeries series) {
  if (series == DrillSeries::number || series == DrillSeries::letter) {
    const bool number = series == DrillSeries::number && !text.empty() && isDigit(text[0]);
    const Drill* drill = drillNamed(number ? "#" + text : text);
    if (!drill || drill->series != series) return std::nullopt;
    return drill->diameter;
  }
  const Unit unit = series == DrillSeries::metric ? Unit::millimetre : Unit::inch;
  const Result<Lettered> figure = readLength(text, {unit});
  if (!figure || figure->value <= Length() || !figure->exact) return std::nullopt;
  return figure->value;
}

Drill drillOfOwnSize(Length size, Unit unit) {
  for (const Drill& drill : drills()) {
    const bool metric = drill.series == DrillSeries::metric;
    if (drill.diameter == size && metric == (unit == Unit::millimetre) &&
        (metric || drill.series == DrillSeries::fraction)) {
      return drill;
    }
  }
  std::string name = writePlain(size, unit);
  if (unit == Unit::millimetre) return {name + " mm", size, DrillSeries::metric};
  return {name, size, DrillSeries::fraction};
}

Result<DrillSet> steppedSet(std::string_view text, DrillSeries series, Length from, Length to,
                            Length by) {
  DrillSet set{std::string(text), {}};
  const Unit unit = series == DrillSeries::metric ? Unit::millimetre : Unit::inch;
  const std::int64_t count = (to.ticks() - from.ticks()) / by.ticks() + 1;
  if (count > static_cast<std::int64_t>(kMostDrillsInSet)) {
    return Error{ErrorCode::tooLarge,
                 "`" + std::string(text) + "` stands for more than " +
                     std::to_string(kMostDrillsInSet) + " drills",
                 ""};
  }
  for (std::int64_t i = 0; i < count; ++i) {
    set.drills.push_back(drillOfOwnSize(Length::ticks(from.ticks() + i * by.ticks()), unit));
  }
  return set;
}

Result<DrillSet> seriesSet(std::string_view text, DrillSeries series,
                           const std::vector<std::string>& words) {
  const std::optional<Bounds> bounds = boundsIn(words);
  if (!bounds) return noSet(text, "a series may have bounds, one `to` the other");
  Length low, high = Length::ticks(INT64_MAX);
  if (!bounds->from.empty()) {
    const std::optional<Length> from = boundOf(bounds->from, series);
    const std::optional<Length> to = boundOf(bounds->to, series);
    if (!from || !to) {
      return noSet(text, "`" + (from ? bounds->to : bounds->from) + "` is no size of it");
    }
    low = std::min(*from, *to);
    high = std::max(*from, *to);
  }
  if (!bounds->by.empty()) {
    const bool stepped = series == DrillSeries::fraction || series == DrillSeries::metric;
    const std::optional<Length> by = stepped ? boundOf(bounds->by, series) : std::nullopt;
    if (!by) return noSet(text, "`by` says a step in inches or millimetres");
    return steppedSet(text, series, low, high, *by);
  }
  DrillSet set{std::string(text), {}};
  for (const Drill& drill : drills()) {
    if (drill.series == series && drill.diameter >= low && drill.diameter <= high) {
      set.drills.push_back(drill);
    }
  }
  if (set.drills.empty()) return noSet(text, "no drill of that series lies between");
  return set;
}

}  // namespace

Result<DrillSet> readDrillSet(std::string_view text) {
  const std::vector<std::string> words = wordsIn(text);
  if (words.empty()) return noSet(text, "it is empty");
  if (const std::optional<DrillSeries> series = seriesNamed(words[0])) {
    return seriesSet(text, *series, words);
  }
  if (const Drill* named = drillNamed(text)) return DrillSet{std::string(text), {*named}};
  const Result<Lettered> figure = readLength(text);
  if (!figure) return noSet(text, figure.error().text);
  if (figure->value <= Length() || !figure->exact) return noSet(text, "a drill has a size");
  if (figure->value > kLargestSingleDrill) {
    return noSet(text,
                 "no twist drill is that large: a number drill is written `#7`, a metric one "
                 "`7 mm`");
  }
  return DrillSet{std::string(text), {drillOfOwnSize(figure->value, figure->unit)}};
}

}  // namespace inchwright
