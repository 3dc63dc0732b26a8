#pragma once

#include <cstddef>

namespace inchwright::seen {

/// The bytes of resources/glyphs/nets, which the build puts into the program.
extern const unsigned char kBuiltInNets[];
extern const std::size_t kBuiltInNetsSize;

}  // namespace inchwright::seen
