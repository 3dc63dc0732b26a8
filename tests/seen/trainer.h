#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace inchwright::seen {

/// Examples for a net: bytes in, one wanted output each (or several, for `independent`).
struct Examples {
  int inputs = 0;
  int outputs = 0;
  bool independent = false;  ///< each output by itself, else one of them all
  std::vector<std::uint8_t> input;
  std::vector<std::uint8_t> wanted;  ///< `outputs` bytes an example, 0 or 1

  std::size_t count() const {
    return outputs > 0 ? wanted.size() / static_cast<std::size_t>(outputs) : 0;
  }
};

struct Training {
  int hidden = 48;
  int rounds = 20;
  std::uint32_t seed = 1;
};

/// A net trained on examples, as the bytes that `Net::taken` reads. On one machine and one build
/// the same bytes for the same examples.
std::string trained(const Examples& examples, const Training& training);

/// How the answers of a net agree with the examples: share of those right.
double agreement(const std::string& net, const Examples& examples);

}  // namespace inchwright::seen
