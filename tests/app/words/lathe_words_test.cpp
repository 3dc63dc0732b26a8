// Setups of the lathe on the command line.

#include <gtest/gtest.h>

#include "tests/app/words/spoken.h"
#include "tests/core/kit/kit_job.h"

namespace inchwright::app {
namespace {

/// An arbor turned from both ends: 1/2 for 1/2 in, 3/4 for 1/4 in, a taper, 3/8 for 1 in.
constexpr const char* kArbor = R"({
  "inchwright": 1, "job": {"title": "Arbor", "unit": "in"},
  "machine": {"unit": "in", "step": "0.0005"},
  "lathe": {"unit": "in", "step": "0.001", "carriage_counts": "left", "cross_counts": "COUNTS", "carriage_letter": "Z", "cross_letter": "X"},
  "parts": [{"name": "Arbor", "shape": "turned", "features": [
    {"id": "L", "kind": "edge", "axis": "x", "side": "left"},
    {"id": "S", "kind": "edge", "axis": "x"}, {"id": "T", "kind": "edge", "axis": "x"},
    {"id": "R", "kind": "edge", "axis": "x", "side": "right"},
    {"id": "A", "kind": "outside", "between": ["L", "S"], "diameter": "1/2"},
    {"id": "B", "kind": "outside", "between": ["S", "T"], "diameter": "3/4"},
    {"id": "C", "kind": "taper", "between": ["T", "R"], "large": "1/2", "angle": "20", "large_at": "T"},
    {"id": "H", "kind": "hole", "face": "top", "diameter": "1/16", "depth": "through"}],
   "readings": [
    {"id": "r1", "axis": "x", "from": "L", "to": "S", "text": "1/2"},
    {"id": "r2", "axis": "x", "from": "S", "to": "T", "text": "1/4"},
    {"id": "r3", "axis": "x", "from": "T", "to": "R", "text": "1"},
    {"id": "r4", "axis": "x", "from": "L", "to": "H", "text": "5/8"},
    {"id": "r5", "axis": "y", "from": "CL", "to": "H", "text": "0"}],
   "setups": [
    {"name": "1", "kind": "lathe", "held": "left", "stands_out": "1 3/8", "zero": {"x": {"at": "R"}}},
    {"name": "2", "kind": "lathe", "held": "right", "zero": {"x": {"at": "L"}}},
    {"name": "3", "face": "top", "zero": {"x": {"at": "L"}, "y": {"at": "CL"}}}]}]
})";

std::string arbor(const char* counts = "diameter") {
  std::string text = kArbor;
  text.replace(text.find("COUNTS"), 6, counts);
  return text;
}

TEST(LatheTable, GivesLengthAndDiaByContract) {
  const Scratch scratch;
  const std::string file = scratch.write("arbor.inchwright", arbor());
  const Spoken spoken = say({"table", file, "--setup", "1", "--json"});
  EXPECT_EQ(spoken.status, 0) << spoken.err << spoken.out;
  const auto rows = spoken.json()["sheets"][0]["rows"];
  ASSERT_EQ(rows.size(), 2u) << rows;
  EXPECT_EQ(rows[0]["id"], "B");
  EXPECT_EQ(rows[0]["kind"], "outside");
  EXPECT_EQ(rows[0]["length"], "1.250");
  EXPECT_EQ(rows[0]["length_ticks"], 3'175'000'000);
  EXPECT_EQ(rows[0]["dia"], "0.750");
  EXPECT_EQ(rows[1]["id"], "C");
  EXPECT_EQ(rows[1]["top_slide"], 10.0);
  // The other end, from its own zero: longer towards the chuck again.
  const auto second = say({"table", file, "--setup", "2", "--json"}).json()["sheets"][0]["rows"];
  EXPECT_EQ(second[0]["id"], "A");
  EXPECT_EQ(second[0]["length"], "0.500");
  const auto radius = scratch.write("radius.inchwright", arbor("radius"));
  EXPECT_EQ(say({"table", radius, "--setup", "1", "--json"}).json()["sheets"][0]["rows"][0]["dia"],
            "0.375");
}

TEST(LatheTable, GivesWhatThreadsGroovesAndKnurlsWantByName) {
  std::string text = arbor();
  const std::string taper = text.substr(text.find("{\"id\": \"C\""));
  text.replace(text.find("{\"id\": \"C\""), taper.find('}') + 1,
               R"({"id": "C", "kind": "screwed", "between": ["T", "R"], "thread": "1/4-20 UNC",
                  "hand": "left", "runout": "1/16"},
    {"id": "G", "kind": "groove", "between": ["L", "S"], "diameter": "3/8"},
    {"id": "K", "kind": "knurl", "between": ["S", "T"], "pattern": "straight", "pitch": ".04"})");
  const Scratch scratch;
  const std::string file = scratch.write("arbor.inchwright", text);
  const auto rowOf = [&](const char* setup, const char* id) {
    const Spoken spoken = say({"table", file, "--setup", setup, "--json"});
    const auto told = spoken.json();
    for (const auto& row : told["sheets"][0]["rows"]) {
      if (row["id"] == id) return row;
    }
    ADD_FAILURE() << id << ": " << spoken.err << spoken.out;
    return std::decay_t<decltype(told)>();
  };
  const auto thread = rowOf("1", "C")["thread"];
  EXPECT_EQ(thread["per_inch"], 20);
  EXPECT_EQ(thread["pitch"], "0.050");
  EXPECT_EQ(thread["pitch_ticks"], 127'000'000);
  EXPECT_EQ(thread["hand"], "left");
  EXPECT_EQ(thread["runout"], "1/16");
  EXPECT_GT(thread["depth_ticks"], 0);
  EXPECT_EQ(rowOf("1", "K")["knurl"], "straight, pitch .04");
  EXPECT_EQ(rowOf("2", "G")["width"], "0.500");
}

TEST(LatheTable, StandsBesideSetupsOfTheMill) {
  const Scratch scratch;
  const std::string file = scratch.write("arbor.inchwright", arbor());
  const auto sheets = say({"table", file, "--json"}).json()["sheets"];
  ASSERT_EQ(sheets.size(), 3u);
  EXPECT_EQ(sheets[2]["rows"][0]["id"], "H");
  EXPECT_EQ(sheets[2]["rows"][0]["x"], "0.6250");
  EXPECT_EQ(sheets[2]["rows"][0]["y"], "0.0000");
  const std::string words = say({"table", file}).out;
  EXPECT_NE(words.find("held by the left end, Z0 at R; Z counts up towards the chuck"),
            std::string::npos)
      << words;
  EXPECT_NE(words.find("not within reach here: A"), std::string::npos);
  EXPECT_EQ(say({"table", file, "--as", "csv"}).status, 2);
  EXPECT_EQ(say({"table", file, "--as", "csv", "--setup", "1"}).out,
            "part,setup,unit,step,id,kind,length,dia\r\n"
            "\"Arbor\",\"1\",in,0.001,\"B\",outside,1.250,0.750\r\n"
            "\"Arbor\",\"1\",in,0.001,\"C\",taper,1.000,0.500\r\n");
}

TEST(LatheTable, WarnsInCheckAndTable) {
  const Scratch scratch;
  std::string text = arbor();
  EXPECT_EQ(say({"check", scratch.write("sound.inchwright", text)}).status, 0);
  const std::string from = R"("stands_out": "1 3/8")";
  text.replace(text.find(from), from.size(), from + R"(, "part_off": {"width": "1/16"})");
  const std::string file = scratch.write("jaws.inchwright", text);
  const Spoken check = say({"check", file});
  EXPECT_EQ(check.status, 1);
  EXPECT_NE(check.out.find("the parting tool would come 0.438 into the jaws"), std::string::npos)
      << check.out;
  EXPECT_EQ(say({"check", file, "--json"}).json()["lathe"].size(), 1u);
  const Spoken table = say({"table", file, "--setup", "1"});
  EXPECT_EQ(table.status, 1);
  EXPECT_NE(table.out.find("Mind: the parting tool"), std::string::npos);
}

TEST(LatheTable, SpeaksInTheUnitAsked) {
  const Scratch scratch;
  const std::string file = scratch.write("arbor.inchwright", arbor());
  const auto sheet =
      say({"table", file, "--setup", "1", "--unit", "mm", "--json"}).json()["sheets"][0];
  EXPECT_EQ(sheet["step"], "0.02");
  EXPECT_EQ(sheet["rows"][0]["length"], "31.76");  // 31.75 is as near to both: away from 0
  EXPECT_EQ(sheet["rows"][0]["length_ticks"], 3'175'000'000);
}

}  // namespace
}  // namespace inchwright::app
