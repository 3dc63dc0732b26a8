#pragma once

#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

namespace inchwright::seen {

/// A net of one hidden layer on bytes: inputs 0 … 255, weights -127 … 127 with a scale for each
/// unit, sums in whole numbers, so that every machine comes to the same.
class Net {
 public:
  /// Takes a net from the front of `bytes`: three little-endian 32-bit counts (inputs, hidden
  /// units, outputs), then for each layer the scales and offsets of its units as 32-bit floats and
  /// its weights, unit by unit, as signed bytes. An empty net where they are too few.
  static Net taken(std::string_view& bytes);

  int inputs() const { return inputs_; }
  int outputs() const { return outputs_; }
  /// The outputs before any squashing. Requires: as many bytes as `inputs()`.
  std::vector<float> answer(std::span<const std::uint8_t> input) const;

 private:
  int inputs_ = 0, hidden_ = 0, outputs_ = 0;
  std::vector<float> scale1_, offset1_, scale2_, offset2_;
  std::vector<std::int8_t> weight1_, weight2_;
};

/// The nets that tell the ends of dimension lines and the characters, trained on drawn prints.
struct Nets {
  Net ends;    ///< a patch (ends.h) to: a line runs on to the left, to the right
  Net glyphs;  ///< a glyph (glyph.h) to its kind
};

/// From a file's bytes, as `tests/seen/train` writes it.
Nets netsFrom(std::string_view bytes);
/// Those built in.
const Nets& builtInNets();

}  // namespace inchwright::seen
