// What is answered to documents made at random, word for word. To renew it after a wanted change,
// run this test with INCHWRIGHT_RENEW_GOLDEN=1, read what differs, and commit it.
#include <gtest/gtest.h>

#include <functional>

#include "tests/deceits/told/generated_lines.h"
#include "tests/deceits/told/transcripts.h"

namespace inchwright::app {
namespace {

struct Kind {
  std::string name;
  std::function<test::Json(unsigned seed)> make;
  std::vector<Texts> calls;
};

/// A kind, and which five of its seeds.
class GeneratedOf : public Transcripts,
                    public testing::WithParamInterface<std::tuple<std::size_t, unsigned>> {};

const std::vector<Kind>& kinds() {
  using test::Generated, test::GeneratedLines;
  static const std::vector<Kind> kAll{
      {"plate",
       [](unsigned seed) { return Generated(seed).plate(); },
       {{"check"},
        {"plan"},
        {"table"},
        {"made"},
        {"mend", "--part", "Plate", "--place", "A"},
        {"mend", "--part", "Plate", "--place", "B"}}},
      {"slanted",
       [](unsigned seed) { return Generated(seed).slanted(); },
       {{"check"}, {"table"}, {"why", "--place", "P", "--setup", "1"}, {"budget"}}},
      {"chains",
       [](unsigned seed) { return Generated(seed).chains(); },
       {{"check"},
        {"ranges", "--from", "L", "--axis", "x"},
        {"budget"},
        {"adjust", "--axis", "x"},
        {"stack", "--from", "A", "--to", "H", "--axis", "x", "--runs", "300"}}},
      {"shaft", [](unsigned seed) { return Generated(seed).shaft(); }, {{"check"}, {"table"}}},
      {"lines",
       [](unsigned seed) { return GeneratedLines(seed).make(); },
       {{"check"}, {"outline"}, {"table"}}}};
  return kAll;
}

TEST_P(GeneratedOf, FiveSeeds) {
  const auto& [which, block] = GetParam();
  const Kind& kind = kinds()[which];
  std::string text;
  for (unsigned seed = 5 * block + 1; seed <= 5 * block + 5; ++seed) {
    const std::string document = kind.make(seed).dump();
    text += "# seed " + std::to_string(seed) + "\n" + transcript(document, kind.calls);
  }
  expectKept("generated_" + kind.name + "_" + std::to_string(block), text);
}

INSTANTIATE_TEST_SUITE_P(
    Told, GeneratedOf, testing::Combine(testing::Range<std::size_t>(0, 5), testing::Range(0u, 6u)),
    [](const auto& one) {
      return kinds()[std::get<0>(one.param)].name + std::to_string(std::get<1>(one.param));
    });

}  // namespace
}  // namespace inchwright::app
