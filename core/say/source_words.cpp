#include "core/say/source_words.h"

#include <algorithm>
#include <cmath>

#include "core/base/listed.h"

namespace inchwright {

std::string labelOf(const Part& part, const Source& source) {
  if (source.kind == SourceKind::reading) return part.readings[source.index].id;
  if (source.kind == SourceKind::feature) {
    const Feature& feature = part.features[source.index];
    return std::string(nameOf(feature.kind())) + " " + feature.id;
  }
  const Understanding& what = part.understood[source.index];
  switch (what.kind) {
    case UnderstandingKind::inLine:
      return joined(what.of, ", ") + " in line";
    case UnderstandingKind::midway:
      return joined(what.of, ", ") + " midway " + joined(what.between, "–");
    case UnderstandingKind::symmetric:
      return joined(what.of, ", ") + " symmetric about " + what.about;
    case UnderstandingKind::equal:
      return joined(what.of, ", ") + " equally spaced";
    case UnderstandingKind::concentric:
    case UnderstandingKind::tangent:
    case UnderstandingKind::parallel:
    case UnderstandingKind::square:
    case UnderstandingKind::on:
    case UnderstandingKind::wayRound:
    case UnderstandingKind::beside:
      break;
  }
  return joined(what.of, ", ") + " " + std::string(nameOf(what.kind));
}

std::vector<std::string> labelsOf(const Part& part, const std::vector<Source>& sources) {
  std::vector<std::string> labels;
  for (const Source& source : sources) labels.push_back(labelOf(part, source));
  return labels;
}

std::string crookedText(const CrookedPicture& crooked) {
  if (crooked.mirrored) {
    return "by its points the print comes mirrored: one of them lies elsewhere, or across and up "
           "are exchanged";
  }
  const auto tenths = static_cast<long>(std::lround(std::min(crooked.stretch, 1e6) * 10));
  return "by its points the print leans by " + std::to_string(std::lround(crooked.lean)) +
         "° and is " + std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) +
         " times as long one way as the other: one of them lies elsewhere";
}

}  // namespace inchwright
