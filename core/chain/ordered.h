#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/chain/network.h"

namespace inchwright {

/// A network in an order that depends only on what the print says, never on how it was listed:
/// places by id, links by how far they are trusted when readings contradict each other (the shape
/// of features, stated understandings, readings, assumed understandings, reference readings) and
/// then by id, relations likewise.
AxisNetwork inOrder(const Part& part, const AxisNetwork& network);

/// The reading's id, or a name such as `A midway F–K` or `ring D`.
std::string labelOf(const Part& part, const Source& source);

/// The figure of a reading; nothing for other sources.
const Lettered* figureOf(const Part& part, const Source& source);

/// The names put together, as `F, K, A` with a separator of choice.
std::string joined(const std::vector<std::string>& names, const std::string& between);

}  // namespace inchwright
