#pragma once

#include <initializer_list>
#include <nlohmann/json.hpp>
#include <string>
#include <utility>

namespace inchwright::app {

/// A rail of four edges in a chain, .500 ±.002, 1.000 ±.002 and .500 ±.001, with its overall in
/// brackets, and a gap to a bought block. Zero of setup 1 is on L.
inline nlohmann::ordered_json rail() {
  return nlohmann::ordered_json::parse(R"json({
    "inchwright": 1,
    "job": {"title": "Trial rail", "unit": "in"},
    "machine": {"unit": "in", "step": "0.0005"},
    "parts": [{
      "name": "Rail",
      "features": [
        {"id": "L", "kind": "edge", "axis": "x", "side": "left"},
        {"id": "A", "kind": "edge", "axis": "x"},
        {"id": "B", "kind": "edge", "axis": "x"},
        {"id": "R", "kind": "edge", "axis": "x", "side": "right"}
      ],
      "readings": [
        {"id": "r1", "axis": "x", "from": "L", "to": "A", "text": ".500 ±.002"},
        {"id": "r2", "axis": "x", "from": "A", "to": "B", "text": "1.000 ±.002"},
        {"id": "r3", "axis": "x", "from": "B", "to": "R", "text": ".500 ±.001"},
        {"id": "r4", "axis": "x", "from": "L", "to": "R", "text": "(2)"}
      ],
      "setups": [{"name": "1", "face": "top", "zero": {"x": {"at": "L"}}}]
}],
    "gaps": [
      {"name": "play", "least": ".001", "greatest": ".004", "members": [
        {"part": "Rail", "axis": "x", "from": "A", "to": "B", "sign": "+"},
        {"name": "block", "length": ".998 ±.001", "sign": "-"}]},
      {"name": "lost", "members": [
        {"part": "Rail", "axis": "x", "from": "A", "to": "Q", "sign": "+"}]}
    ]
})json");
}

/// The rail with some readings lettered otherwise.
inline nlohmann::ordered_json railWith(
    std::initializer_list<std::pair<std::size_t, const char*>> texts) {
  nlohmann::ordered_json job = rail();
  for (const auto& [reading, text] : texts) job["parts"][0]["readings"][reading]["text"] = text;
  return job;
}

}  // namespace inchwright::app
