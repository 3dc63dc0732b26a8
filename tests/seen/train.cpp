// train OUT FOLDER...: trains the nets on the prints drawn into the folders and writes them.

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>

#include "tests/seen/examples.h"

using namespace inchwright::seen;

int main(int count, char** words) {
  if (count < 3) return 2;
  std::vector<std::string> stems;
  for (int i = 2; i < count; ++i) {
    for (const auto& entry : std::filesystem::directory_iterator(words[i])) {
      if (entry.path().extension() == ".pgm")
        stems.push_back((entry.path().parent_path() / entry.path().stem()).string());
    }
  }
  std::sort(stems.begin(), stems.end());
  ExamplesOfPrints all, kept;
  std::uint32_t seed = 0;
  for (const std::string& stem : stems) {
    ++seed;
    addExamples(readPrint(stem), seed, seed % 12 == 0 ? kept : all);
  }
  std::printf("%zu prints, %zu ends (%zu without a place), %zu glyphs\n", stems.size(),
              all.ends.count(), all.endsMissed, all.glyphs.count());
  const std::string ends = trained(all.ends, {64, 16, 1}),
                    glyphs = trained(all.glyphs, {72, 16, 2});
  std::printf("of examples kept back, right: ends %.4f of %zu, glyphs %.4f of %zu\n",
              agreement(ends, kept.ends), kept.ends.count(), agreement(glyphs, kept.glyphs),
              kept.glyphs.count());
  std::ofstream out(words[1], std::ios::binary);
  out << ends << glyphs;
  std::printf("%zu bytes\n", ends.size() + glyphs.size());
  return out.good() ? 0 : 1;
}
