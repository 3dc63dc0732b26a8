#pragma once

#include <nlohmann/json_fwd.hpp>

#include "core/checks/put_in_otherwise.h"
#include "core/checks/whole_part.h"
#include "core/measure/writing.h"
#include "core/plan/milled_cuts.h"

namespace inchwright::app {

// Pieces of JSON of what is planned and found before cutting.

/// A length at the step, or null.
nlohmann::ordered_json lengthAt(const std::optional<Length>& length, const Step& step);
/// Its ticks, or null.
nlohmann::ordered_json ticksAt(const std::optional<Length>& length);

/// `{"code", "places", "text", "by", "by_ticks"}` each.
nlohmann::ordered_json findingsAsJson(const std::vector<Finding>& findings, const Step& step);

/// `{"id", "steps": […], …}`.
nlohmann::ordered_json holeAsJson(const PlannedHole& hole, const Step& step);

/// `{"id", "tool", "size", "plunges", "opens_sides", "passes", …}`. Requires: it has a plan.
nlohmann::ordered_json slotAsJson(const PlannedSlot& slot, const Step& step);
/// Where the cutter's centre goes in a slot or pocket.
nlohmann::ordered_json milledAsJson(const MilledCut& cut, const Step& step);

/// `{"name", "cleans_up", "left": {side: length, side_ticks}}` each.
/// What the readout shows of pieces put in end for end or turned over.
nlohmann::ordered_json otherwiseAsJson(const std::vector<PutInOtherwise>& all, const Step& step);
nlohmann::ordered_json piecesAsJson(const std::vector<PieceLeft>& pieces, const Step& step);

}  // namespace inchwright::app
