#pragma once

#include <nlohmann/json_fwd.hpp>
#include <vector>

#include "app/words/tolerance_note.h"
#include "core/tolerance/stack.h"

namespace inchwright::app {

// Pieces of JSON that several of the tolerance words print.

nlohmann::ordered_json spanAt(const Span& span, const Step& step);  ///< `["0.4995", "0.5005"]`
nlohmann::ordered_json ticksOf(const Span& span);
nlohmann::ordered_json unassuredAsJson(const std::vector<Unassured>& found, const Step& step);

}  // namespace inchwright::app
