#include "core/say/difference_words.h"

#include <algorithm>

#include "core/measure/writing.h"

namespace inchwright {
namespace {

std::string pairWords(const Pair& ids) {
  return ids.a == ids.b ? ids.a : ids.a + " (" + ids.b + ")";
}

std::string saidOr(const std::string& text) {
  return text.empty() ? "not said" : text;
}

std::string movedWords(const Moved& one, const Step& step) {
  std::string line = pairWords(one.ids) + " lies";
  const auto add = [&](const char* axis, const std::optional<Length>& by) {
    if (!by || by->isZero()) return;
    const std::string text = showAtStep(by->rational(), step).text;
    line += axis + (text.starts_with('-') ? text : "+" + text);
  };
  add(" X ", one.dx);
  add(" Y ", one.dy);
  return line + " from there";
}

}  // namespace

std::vector<std::string> differenceLines(const Difference& found, const Step& step) {
  std::vector<std::string> lines;
  const auto inBoth = [&found](const auto& one) {
    return one.member + " " + saidOr(one.a) + " in " + found.a + ", " + saidOr(one.b) + " in " +
           found.b;
  };
  for (const ChangedOfPart& one : found.ofParts) lines.push_back(inBoth(one));
  for (const Moved& one : found.moved) {
    lines.push_back(movedWords(one, step) + " in " + found.b);
  }
  for (const Changed& one : found.changed) {
    lines.push_back(pairWords(one.ids) + ": " + inBoth(one));
  }
  for (const OnlyIn& one : found.only) lines.push_back(one.id + ": only in " + one.part);
  std::string alike;
  for (const Pair& one : found.alike) alike += (alike.empty() ? "" : ", ") + pairWords(one);
  if (!alike.empty()) lines.push_back("Alike: " + alike);
  if (found.same()) lines.push_back("The two are alike in all that is cut.");
  return lines;
}

std::string mistakenWarning(const Difference& found, const Step& step) {
  constexpr std::size_t kMost = 3;
  if (found.same()) return "the same as " + found.a + " in all that is cut";
  std::vector<std::string> but;
  for (const Changed& one : found.changed) {
    const bool both = !one.a.empty() && !one.b.empty();
    but.push_back(one.ids.b + " " + one.member + " is " + saidOr(one.b) +
                  (both ? ", not " : ", there ") + saidOr(one.a));
  }
  for (const Moved& one : found.moved) but.push_back(movedWords(one, step));
  for (const OnlyIn& one : found.only) {
    but.push_back(one.id + (one.part == found.b ? " is only here" : " is not here"));
  }
  std::string text = "like " + found.a + ", but: ";
  for (std::size_t i = 0; i < std::min(but.size(), kMost); ++i) {
    text += (i == 0 ? "" : "; ") + but[i];
  }
  if (but.size() > kMost) text += "; and " + std::to_string(but.size() - kMost) + " more";
  return text;
}

}  // namespace inchwright
