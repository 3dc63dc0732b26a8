#pragma once

#include <algorithm>
#include <charconv>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "app/words/words.h"
#include "tests/support/private_home.h"
#include "tests/support/scratch.h"

namespace inchwright::app {

/// What a call of the program came to, run in this process, where no tools are kept for all jobs
/// but what a test keeps.
struct Spoken {
  int status = 0;
  std::string out;
  std::string err;

  nlohmann::json json() const { return nlohmann::json::parse(out); }
};

inline Spoken say(const std::vector<std::string>& args, bool colour = false) {
  usePrivateHome();
  std::ostringstream out;
  std::ostringstream err;
  Streams streams{out, err, colour};
  const int status = runWords(args, streams);
  return {status, out.str(), err.str()};
}

inline std::string sample(const std::string& name) {
  return std::string(INCHWRIGHT_SOURCE_DIR "/samples/") + name + ".inchwright";
}

using test::Scratch;

/// A plate of which every figure was worked out by hand: 2 1/16 by the chain, 2 by the overall.
inline const char* const kClashingPlate = R"({
  "inchwright": 1,
  "job": {"title": "Trial plate", "unit": "in"},
  "machine": {"unit": "in", "step": "0.0005", "finder": "0.200"},
  "parts": [{
    "name": "Plate",
    "features": [
      {"id": "L", "kind": "edge", "axis": "x", "side": "left"},
      {"id": "R", "kind": "edge", "axis": "x", "side": "right"},
      {"id": "F", "kind": "edge", "axis": "y", "side": "front"},
      {"id": "A", "kind": "hole", "diameter": "1/4", "make": "ream"},
      {"id": "B", "kind": "hole", "diameter": "3/16"},
      {"id": "C", "kind": "hole", "diameter": "1/8"}
    ],
    "readings": [
      {"id": "r1", "axis": "x", "from": "L", "to": "A", "text": "3/8"},
      {"id": "r2", "axis": "x", "from": "A", "to": "B", "text": "1 3/16"},
      {"id": "r3", "axis": "x", "from": "B", "to": "R", "text": "7/16"},
      {"id": "r4", "axis": "x", "from": "L", "to": "R", "text": "2 1/16"},
      {"id": "r5", "axis": "y", "from": "F", "to": "A", "text": "3/4"},
      {"id": "r6", "axis": "y", "from": "F", "to": "B", "text": "3/4"},
      {"id": "r7", "axis": "x", "from": "A", "to": "C", "text": "1/3"}
    ]
  }]
})";

/// The same without the clash and the loose hole.
inline std::string soundPlate() {
  nlohmann::ordered_json plate = nlohmann::ordered_json::parse(kClashingPlate);
  nlohmann::ordered_json& part = plate["parts"][0];
  part["readings"][3]["text"] = "2";
  part["readings"].push_back(
      {{"id", "r8"}, {"axis", "y"}, {"from", "F"}, {"to", "C"}, {"text", "1/4"}});
  part["setups"] = {{{"name", "1"},
                     {"face", "top"},
                     {"zero", {{"x", {{"middle", {"L", "R"}}}}, {"y", {{"at", "A"}}}}}},
                    {{"name", "turned"},
                     {"face", "top"},
                     {"turn", 90},
                     {"zero", {{"x", {{"at", "L"}}}, {"y", {{"at", "F"}}}}}}};
  return plate.dump();
}

/// A figure with a point in whatever locale; -1 where there is none.
inline double figureAt(std::string_view text) {
  double value = -1;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

}  // namespace inchwright::app
