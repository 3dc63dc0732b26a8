#include "core/seen/net.h"

#include <gtest/gtest.h>

#include <chrono>
#include <random>

#include "core/seen/ends.h"
#include "core/seen/glyph.h"
#include "tests/seen/trainer.h"

namespace inchwright::seen {
namespace {

TEST(Net, TooFewBytesGiveAnEmptyOne) {
  for (const std::string& bytes :
       {std::string(), std::string("abc"), std::string("\x02\0\0\0\x02\0\0\0\x02\0\0\0xyz", 15),
        std::string(12, '\xff')}) {
    std::string_view rest = bytes;
    EXPECT_EQ(Net::taken(rest).outputs(), 0);
    EXPECT_TRUE(rest.empty());
  }
}

TEST(Net, AnswersByHand) {
  // One input, one hidden unit: 0.5 · (2 · input) + 1; one output: 0.25 · 4 · hidden − 1.
  std::string bytes("\1\0\0\0\1\0\0\0\1\0\0\0", 12);
  const auto put = [&](float f) { bytes.append(reinterpret_cast<const char*>(&f), 4); };
  put(0.5F), put(1), bytes.push_back(2);
  put(0.25F), put(-1), bytes.push_back(4);
  std::string_view rest = bytes;
  const Net net = Net::taken(rest);
  EXPECT_TRUE(rest.empty());
  const std::uint8_t three = 3;
  EXPECT_EQ(net.answer({&three, 1}), std::vector<float>{3});
}

TEST(Net, BuiltInOnesFitAndAreSmall) {
  const Nets& nets = builtInNets();
  EXPECT_EQ(nets.ends.inputs(), kPatchWide * kPatchHigh);
  EXPECT_EQ(nets.ends.outputs(), 2);
  EXPECT_EQ(nets.glyphs.inputs(), kGlyphSide * kGlyphSide);
  EXPECT_EQ(nets.glyphs.outputs(), static_cast<int>(kGlyphKinds.size()));
}

/// Which of three stripes is darkest.
Examples stripes(std::uint32_t seed, int count) {
  std::mt19937 random(seed);
  Examples out;
  out.inputs = 12;
  out.outputs = 3;
  for (int i = 0; i < count; ++i) {
    const auto dark = static_cast<unsigned>(random() % 3);
    for (unsigned k = 0; k < 12; ++k)
      out.input.push_back(static_cast<std::uint8_t>(random() % 120 + (k / 4 == dark ? 130 : 0)));
    for (unsigned k = 0; k < 3; ++k) out.wanted.push_back(k == dark);
  }
  return out;
}

TEST(Training, LearnsAndComesOutTheSameToTheByte) {
  const Examples examples = stripes(1, 600);
  const std::string net = trained(examples, {8, 120, 5});
  EXPECT_EQ(net, trained(examples, {8, 120, 5}));
  EXPECT_NE(net, trained(examples, {8, 120, 6}));
  EXPECT_GT(agreement(net, stripes(2, 400)), 0.98);
  EXPECT_EQ(net.size(), 12U + 8 * (12 + 8) + 3 * (8 + 8));
}

}  // namespace
}  // namespace inchwright::seen
