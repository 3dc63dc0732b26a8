#include "core/seen/net.h"

#include <algorithm>
#include <bit>

#include "core/seen/built_in_nets.h"

namespace inchwright::seen {
namespace {

constexpr std::uint32_t kMostUnits = 4096;

std::uint32_t word(std::string_view& bytes) {
  std::uint32_t v = 0;
  if (bytes.size() < 4) return 0;
  for (int i = 3; i >= 0; --i) v = v << 8 | static_cast<std::uint8_t>(bytes[i]);
  bytes.remove_prefix(4);
  return v;
}

std::vector<float> floats(std::string_view& bytes, int count) {
  std::vector<float> out(static_cast<std::size_t>(count));
  for (float& v : out) v = std::bit_cast<float>(word(bytes));
  return out;
}

std::vector<std::int8_t> weights(std::string_view& bytes, int count) {
  std::vector<std::int8_t> out(static_cast<std::size_t>(count));
  std::copy_n(bytes.begin(), out.size(), out.begin());
  bytes.remove_prefix(out.size());
  return out;
}

}  // namespace

Net Net::taken(std::string_view& bytes) {
  if (bytes.size() < 12) bytes = {};
  const std::uint32_t in = word(bytes), hidden = word(bytes), out = word(bytes);
  if (std::max({in, hidden, out}) > kMostUnits ||
      bytes.size() < std::size_t{hidden} * (in + 8) + std::size_t{out} * (hidden + 8)) {
    bytes = {};
    return {};
  }
  Net net;
  net.inputs_ = static_cast<int>(in);
  net.hidden_ = static_cast<int>(hidden);
  net.outputs_ = static_cast<int>(out);
  net.scale1_ = floats(bytes, net.hidden_);
  net.offset1_ = floats(bytes, net.hidden_);
  net.weight1_ = weights(bytes, net.hidden_ * net.inputs_);
  net.scale2_ = floats(bytes, net.outputs_);
  net.offset2_ = floats(bytes, net.outputs_);
  net.weight2_ = weights(bytes, net.outputs_ * net.hidden_);
  return net;
}

std::vector<float> Net::answer(std::span<const std::uint8_t> input) const {
  std::vector<float> middle(static_cast<std::size_t>(hidden_));
  for (int h = 0; h < hidden_; ++h) {
    const std::int8_t* w = weight1_.data() + static_cast<std::size_t>(h) * inputs_;
    std::int32_t sum = 0;
    for (int i = 0; i < inputs_; ++i) sum += std::int32_t{w[i]} * input[i];
    middle[h] = std::max(0.0F, static_cast<float>(sum) * scale1_[h] + offset1_[h]);
  }
  std::vector<float> out(static_cast<std::size_t>(outputs_));
  for (int o = 0; o < outputs_; ++o) {
    const std::int8_t* w = weight2_.data() + static_cast<std::size_t>(o) * hidden_;
    float sum = 0;
    for (int h = 0; h < hidden_; ++h) sum += static_cast<float>(w[h]) * middle[h];
    out[o] = sum * scale2_[o] + offset2_[o];
  }
  return out;
}

Nets netsFrom(std::string_view bytes) {
  Nets nets;
  nets.ends = Net::taken(bytes);
  nets.glyphs = Net::taken(bytes);
  return nets;
}

const Nets& builtInNets() {
  static const Nets nets =
      netsFrom({reinterpret_cast<const char*>(kBuiltInNets), kBuiltInNetsSize});
  return nets;
}

}  // namespace inchwright::seen
