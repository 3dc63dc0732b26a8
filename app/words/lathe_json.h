#pragma once

#include <nlohmann/json_fwd.hpp>

#include "core/turned/lathe_work.h"

namespace inchwright::app {

/// A setup of the lathe as an entry of `sheets`, with `length`, `dia` and their ticks in its rows.
nlohmann::ordered_json latheAsJson(const LatheWork& work, const Lathe& lathe);
/// Its `cuts`, in order.
nlohmann::ordered_json cutsAsJson(const LatheWork& work);

}  // namespace inchwright::app
