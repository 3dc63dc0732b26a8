#pragma once

#include <string>

#include "core/kit/ways_out.h"

namespace inchwright::app {

/// The figures of a way out as the word `mend` gives them: a JSON text on one line as the document
/// writes it, to be kept in `mended`.
std::string figuresText(const Way& way, const Step& step);

}  // namespace inchwright::app
