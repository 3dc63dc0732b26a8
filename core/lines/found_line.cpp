#include "core/lines/found_line.h"

#include "core/lines/line_words.h"
#include "core/part/edit.h"

namespace inchwright {
namespace {

Error refuseFound(std::string text, std::size_t at, ErrorCode code = ErrorCode::badText) {
  return {code, std::move(text), {}, at};
}

bool isDrivenPlace(const Part& part, std::string_view place) {
  for (const Feature& feature : part.features) {
    if (isNamedBy(feature, place)) return true;
  }
  return false;
}

/// `A x 0.3752 y 0.7498 size 0.2503`, standing `offset` bytes into the tail.
Result<MadePlace> readFoundPlace(const Part& part, const std::string& setup, std::string_view text,
                                 std::size_t offset, Unit unit) {
  LineWords words(text);
  const std::size_t at = offset + words.at();
  const std::string_view place = words.take();
  if (!isDrivenPlace(part, place)) {
    return refuseFound("there is no place `" + std::string(place) + "`", at, ErrorCode::notFound);
  }
  MadePlace made = madeAt(part, place, setup);
  bool any = false;
  while (!words.empty()) {
    const std::size_t wordAt = offset + words.at();
    const std::string_view what = words.take();
    std::optional<Lettered>* into = what == "x"      ? &made.x
                                    : what == "y"    ? &made.y
                                    : what == "size" ? &made.size
                                                     : nullptr;
    if (!into) return refuseFound("`x`, `y` or `size` stands before what was found", wordAt);
    const std::string_view figureText = words.takeUntil({"x", "y", "size"});
    const Result<Lettered> figure = readLength(figureText, {unit});
    if (!figure) {
      const std::size_t inFigure = figureText.empty() ? 0 : figure.error().at.value_or(0);
      const std::size_t base =
          figureText.empty() ? offset + words.at() : offset + words.at(figureText);
      return refuseFound(figure.error().text, base + inFigure);
    }
    *into = *figure;
    any = true;
  }
  if (!any) return refuseFound("say what was found at `" + std::string(place) + "`", at);
  return made;
}

}  // namespace

Result<std::vector<MadePlace>> readFoundLine(const Part& part, std::string_view tail, Unit unit) {
  const std::size_t colon = tail.rfind(": ");
  const std::size_t first = tail.find_first_not_of(' ');
  if (colon == std::string_view::npos || first >= colon) {
    return refuseFound("name the setup and a colon: `found 1: A x 0.3752 size 0.2503`", 0);
  }
  const std::string setup(tail.substr(first, colon - first));
  if (!part.setup(setup) && !(part.setups.empty() && setup == "1")) {
    return refuseFound("there is no setup `" + setup + "`", first, ErrorCode::notFound);
  }
  std::vector<MadePlace> found;
  std::size_t from = colon + 2;
  while (from <= tail.size()) {
    const std::size_t end = std::min(tail.find(';', from), tail.size());
    const std::string_view text = tail.substr(from, end - from);
    if (text.find_first_not_of(' ') != std::string_view::npos) {
      Result<MadePlace> one = readFoundPlace(part, setup, text, from, unit);
      if (!one) return one.error();
      found.push_back(*std::move(one));
    }
    from = end + 1;
  }
  if (found.empty()) return refuseFound("name a place with what was found there", tail.size());
  return found;
}

}  // namespace inchwright
