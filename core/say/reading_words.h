#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/chain/network.h"

namespace inchwright {

/// A reading by what it runs between: `L to A`, `A straight to C`, `the radius of M`; with its axis
/// where the part has another between the same two. Nobody finds `r5` on a print.
std::string endsWords(const Part& part, const Reading& reading);

/// A reading by its figure and its ends: `3/8 from L to A`, `R 3/8 for the radius of M`.
std::string readingWords(const Part& part, const Reading& reading);
/// The same by the id of a reading; what is none stays as it is, as `A midway F–K`.
std::string readingWords(const Part& part, std::string_view id);
/// `3/8 from L to A, 1/2 from A to B and 1 from B to R`.
std::string readingsWords(const Part& part, const std::vector<Id>& ids);

/// A source of a loop's step: a reading as above, else its label.
std::string sourceWords(const Part& part, const Source& source);
std::string sourcesWords(const Part& part, const std::vector<Source>& sources);

}  // namespace inchwright
