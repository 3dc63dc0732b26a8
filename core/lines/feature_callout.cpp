#include "core/lines/feature_callout.h"

#include <algorithm>
#include <cctype>
#include <utility>

#include "core/lines/callout.h"
#include "core/lines/callout_items.h"

namespace inchwright {
namespace {

Error lacking(std::string what) {
  return Error{ErrorCode::badText, std::move(what), {}, {}};
}

}  // namespace

bool beginsCallout(std::string_view word, std::string_view next) {
  const std::vector<CalloutItem> items = calloutItems(word);
  if (items.empty() || items[0].kind != CalloutItemKind::word) return !items.empty();
  const CalloutWord known = items[0].word;
  if (known == CalloutWord::unknown) return false;
  if (known == CalloutWord::filler) return word.size() > 2;
  const std::vector<CalloutItem> behind = calloutItems(next);
  const bool numbered = !behind.empty() && behind[0].whole;
  if (known == CalloutWord::number) return numbered || word.size() > 2;
  const bool capitals = word.size() <= 2 && std::all_of(word.begin(), word.end(), [](char c) {
                          return std::isupper(static_cast<unsigned char>(c)) != 0;
                        });
  return !capitals || items.size() > 1;
}

Result<FeatureLine> featureFromCallout(Feature feature, std::string_view callout, Axis axis,
                                       Unit unit) {
  auto read = readCallout(callout, feature.kind(), unit);
  if (!read) return read.error();
  Callout said = *std::move(read);
  FeatureLine line{std::move(feature), said.alike, std::move(said.question)};
  Feature& made = line.feature;
  if (Drilled* drilled = made.drilled()) *drilled = std::move(said.drilled);
  if (auto* ring = made.as<kind::Ring>()) {
    if (said.alike == 0) return lacking("how many holes is missing, as in `3 HOLES`");
    ring->holes = said.alike;
    ring->pitchDiameter = std::move(said.pitchDiameter);
    ring->firstAngle = std::move(said.angle);
  } else if (auto* row = made.as<kind::Row>()) {
    if (said.alike == 0) return lacking("how many holes is missing, as in `5 HOLES`");
    row->axis = axis;
    row->holes = said.alike;
    row->countedBySpaces = said.spaces;
    row->pitch = std::move(said.pitch);
  } else if (auto* slot = made.as<kind::Slot>()) {
    slot->axis = axis;
    slot->width = std::move(said.width);
    slot->length = std::move(said.length);
    slot->depth = std::move(said.drilled.depth);
  } else if (auto* round = made.as<kind::Round>()) {
    round->radius = std::move(said.radius);
  } else if (auto* arc = made.as<kind::Arc>()) {
    arc->radius = std::move(said.radius);
  } else if (auto* chamfer = made.as<kind::Chamfer>()) {
    chamfer->length = std::move(said.chamfer);
    chamfer->angle = std::move(said.angle);
  }
  if (!said.more.empty()) made.note = std::move(said.more);
  if (made.is<kind::Ring>() || made.is<kind::Row>()) line.alike = 0;
  return line;
}

}  // namespace inchwright
