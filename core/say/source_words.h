#pragma once

#include <string>
#include <vector>

#include "core/chain/network.h"
#include "core/part/crooked_picture.h"

namespace inchwright {

/// The reading's id, or a name such as `A midway F–K` or `ring D`.
std::string labelOf(const Part& part, const Source& source);
std::vector<std::string> labelsOf(const Part& part, const std::vector<Source>& sources);

/// `by its points the print comes mirrored: one of them lies elsewhere, or across and up are
/// exchanged`
std::string crookedText(const CrookedPicture& crooked);

}  // namespace inchwright
