#pragma once

#include <string>
#include <vector>

#include "core/kit/difference.h"

namespace inchwright {

/// What the sheet of a part warns of: parts that it may be mistaken for (`SolvedKit::likeOthers`),
/// and an other hand that is but this part turned over.
std::vector<std::string> partWarnings(const Job& job, std::size_t part,
                                      const std::vector<Difference>& like, const Step& step);

}  // namespace inchwright
