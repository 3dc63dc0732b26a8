#pragma once

#include <string>
#include <string_view>

#include "core/part/job.h"

namespace inchwright {

/// Why a feature can't be given this name at the strip; empty where it can. A document may hold
/// any. What reads as a figure would be taken for one, `1/4` as well as `l/4`.
///
///     1/4 -> `1/4` reads as a figure, and can't be a name
std::string nameFault(std::string_view name);

/// What to look at again in a name: that another feature's, but for `renamed` itself, differs from
/// it in capitals only. Empty where there is nothing.
std::string nameQuestion(const Part& part, std::string_view name, std::string_view renamed = {});

}  // namespace inchwright
