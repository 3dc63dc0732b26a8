#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <vector>

#include "app/words/job_file.h"
#include "core/making/found_size.h"

namespace inchwright::app {

// What the words about the whole kit share.

/// The document with every part solved, whatever `--part` names.
struct WholeJob {
  OpenedJob opened;
  std::vector<Solution> solutions;  ///< by part
  Step step;                        ///< the machine's, or what `--unit` and `--step` say
};

/// Errors: as `openJobInShop`, `namedUnit` and `readStep`.
Result<WholeJob> openWholeJob(const Arguments& arguments);

/// At the step; null where there is nothing.
nlohmann::ordered_json shownOrNull(const std::optional<Length>& length, const Step& step);
nlohmann::ordered_json ticksOrNull(const std::optional<Length>& length);
/// What something may be, `["0.2500", null]`: outwards. What it has to be, to the nearest; what it
/// is to be made to, inwards.
nlohmann::ordered_json endsAt(const FoundSize& size, const Step& step);
nlohmann::ordered_json askedAt(const FoundSize& size, const Step& step);
nlohmann::ordered_json limitsAt(const FoundSize& size, const Step& step);
nlohmann::ordered_json endTicks(const FoundSize& size);

}  // namespace inchwright::app
