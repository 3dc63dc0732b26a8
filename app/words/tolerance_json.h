#pragma once

#include <nlohmann/json_fwd.hpp>
#include <vector>

#include "app/words/tolerance_note.h"
#include "core/plan/gap.h"
#include "core/tolerance/simulation.h"
#include "core/tolerance/stack.h"

namespace inchwright::app {

// Pieces of JSON that several of the tolerance words print.

nlohmann::ordered_json spanAt(const Span& span, const Step& step);  ///< `["0.4995", "0.5005"]`
nlohmann::ordered_json ticksOf(const Span& span);

/// A stack with the keys that the contract names, `*_ticks` beside them.
nlohmann::ordered_json stackAsJson(const Stack& stack, const Step& step);
/// `required` and `keeps`; nothing when no limits are set.
nlohmann::ordered_json limitsAsJson(const GapStack& sum, const Step& step);
nlohmann::ordered_json simulationAsJson(const Simulation& simulation, const Step& step);

nlohmann::ordered_json unassuredAsJson(const Part& part, const std::vector<Unassured>& found,
                                       const Step& step);

}  // namespace inchwright::app
