#include "core/say/reading_words.h"

#include <algorithm>

#include "core/base/listed.h"
#include "core/say/source_words.h"

namespace inchwright {
namespace {

/// Whether another one runs between the same two along another axis.
bool needsAxis(const Part& part, const Reading& reading) {
  return std::any_of(part.readings.begin(), part.readings.end(), [&](const Reading& other) {
    if (other.kind != ReadingKind::along || other.axis == reading.axis) return false;
    return (other.from == reading.from && other.to == reading.to) ||
           (other.from == reading.to && other.to == reading.from);
  });
}

std::string sizeName(const Reading& reading) {
  switch (reading.kind) {
    case ReadingKind::radius:
      return "the radius of ";
    case ReadingKind::pcd:
      return "the pitch circle of ";
    case ReadingKind::angle:
      return "the angle of ";
    default:
      return "the diameter of ";
  }
}

}  // namespace

std::string endsWords(const Part& part, const Reading& reading) {
  if (reading.to.empty()) return sizeName(reading) + reading.from;
  const bool straight = reading.kind == ReadingKind::centres;
  std::string text = reading.from + (straight ? " straight to " : " to ") + reading.to;
  if (reading.kind == ReadingKind::along && needsAxis(part, reading)) {
    text += " along ";
    text += static_cast<char>(nameOf(reading.axis)[0] - 'a' + 'A');
  }
  return text;
}

std::string readingWords(const Part& part, const Reading& reading) {
  const bool angle = reading.kind == ReadingKind::angle;
  std::string text = angle && reading.angle ? reading.angle->text : reading.figure.text;
  // As lettered it may be a bare number.
  if (angle && text.find_first_not_of("0123456789. ") == std::string::npos) text += "\u00B0";
  text += (reading.to.empty() ? " for " : " from ") + endsWords(part, reading);
  if (!reading.against.empty()) text += " against " + joined(reading.against, "\u2013");
  return text;
}

std::string readingWords(const Part& part, std::string_view id) {
  const Reading* reading = part.reading(id);
  return reading == nullptr ? std::string(id) : readingWords(part, *reading);
}

std::string readingsWords(const Part& part, const std::vector<Id>& ids) {
  std::vector<std::string> words;
  for (const Id& id : ids) words.push_back(readingWords(part, id));
  return listed(words);
}

std::string sourceWords(const Part& part, const Source& source) {
  return source.kind == SourceKind::reading ? readingWords(part, part.readings[source.index])
                                            : labelOf(part, source);
}

std::string sourcesWords(const Part& part, const std::vector<Source>& sources) {
  std::vector<std::string> words;
  for (const Source& source : sources) words.push_back(sourceWords(part, source));
  return listed(words);
}

}  // namespace inchwright
