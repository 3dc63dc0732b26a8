#pragma once

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <string>
#include <string_view>

namespace inchwright {

inline std::string readText(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  EXPECT_TRUE(in.is_open()) << path;
  return {std::istreambuf_iterator<char>(in), {}};
}

/// The front plate as the document's agreement shows it.
inline std::string frontPlateText() {
  return readText(INCHWRIGHT_SOURCE_DIR "/tests/core/document/front_plate.inchwright");
}

/// `text` with the first `find` replaced. Fails the test when there is none.
inline std::string with(std::string text, std::string_view find, std::string_view replacement) {
  const std::size_t at = text.find(find);
  EXPECT_NE(at, std::string::npos) << "nothing to replace: " << find;
  if (at != std::string::npos) text.replace(at, find.size(), replacement);
  return text;
}

}  // namespace inchwright
