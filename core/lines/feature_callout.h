#pragma once

#include <string_view>

#include "core/lines/lines.h"

namespace inchwright {

/// Whether a word begins a callout rather than being a feature's name: `C'BORE`, `No.`, `DRILL`.
/// Two capitals such as `CB` are a name.
bool beginsCallout(std::string_view word, std::string_view next);

/// Fills in a feature of the given kind from its callout. A ring or row needs to be told how many;
/// `axis` is the one along which a slot or row runs.
/// Errors: those of `readCallout`.
Result<FeatureLine> featureFromCallout(Feature feature, std::string_view callout, Axis axis,
                                       Unit unit);

}  // namespace inchwright
