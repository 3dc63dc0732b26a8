#pragma once

#include <string>
#include <vector>

#include "core/measure/length.h"
#include "core/seen/figure.h"

namespace inchwright::seen {

/// A number without brackets, symbols or tolerance.
std::vector<FigureRead> readNumber(const std::vector<Mark>& marks, const std::vector<Box>& bars,
                                   double inch, Unit unit);

/// The likelier first, each text once, at most `most`.
void settle(std::vector<FigureRead>& reads, std::size_t most);

}  // namespace inchwright::seen
