// The word that tells what a picture of a print offers.

#include <gtest/gtest.h>
#include <sys/stat.h>

#include <filesystem>
#include <set>

#include "core/document/document.h"
#include "tests/app/words/spoken.h"

namespace inchwright::app {
namespace {

TEST(OffersWord, SaysWhatTheFrontPlatesPrintOffers) {
  const Spoken spoken = say({"offers", sample("front_plate"), "--json"});
  ASSERT_TRUE(spoken.status == 0 || spoken.status == 1) << spoken.err;
  const auto all = spoken.json();
  EXPECT_EQ(all["inchwright"], 1);
  const auto& offers = all["offers"];
  const auto document = nlohmann::json::parse(Scratch::read(sample("front_plate")));
  int traced = 0, ringed = 0;
  for (const auto& f : document["parts"][0]["features"]) {
    if (f["kind"] != "hole" || !f.contains("traced")) continue;
    ++traced;
    for (const auto& o : offers["features"]) {
      if (o["kind"] != "hole") continue;
      EXPECT_TRUE(o.contains("sure") && o.contains("size") && o["at"].size() == 2);
      const double dx =
          figureAt(o["at"][0].get<std::string>()) - figureAt(f["traced"][0].get<std::string>());
      const double dy =
          figureAt(o["at"][1].get<std::string>()) - figureAt(f["traced"][1].get<std::string>());
      if (std::hypot(dx, dy) > 1.0 / 32) continue;
      ++ringed;
      break;
    }
  }
  EXPECT_GE(ringed * 10, traced * 8) << ringed << " of " << traced;
  // What has a direction says it, and what has ends where they lie.
  std::set<std::string> kinds;
  for (const auto& o : offers["features"]) {
    const std::string kind = o["kind"];
    kinds.insert(kind);
    EXPECT_EQ(o.contains("axis"), kind == "edge" || kind == "row") << o.dump();
    EXPECT_EQ(o.contains("ends"), kind != "hole" && kind != "ring") << o.dump();
    if (kind != "edge") continue;
    // Along its axis it stands at one place, but for how crooked the picture is.
    const std::size_t along = o["axis"] == "x" ? 0 : 1;
    const auto figure = [](const nlohmann::json& text) {
      return figureAt(text.get<std::string>());
    };
    EXPECT_NEAR(figure(o["ends"][0][along]), figure(o["at"][along]), 0.005) << o.dump();
    EXPECT_NE(o["ends"][0][1 - along], o["ends"][1][1 - along]) << o.dump();
  }
  EXPECT_TRUE(kinds.count("hole") == 1 && kinds.count("edge") == 1);
  // A size says what it is, exactly, and what bears witness of it; what has none says null.
  for (const auto& o : offers["features"]) {
    EXPECT_EQ(o["size"].is_null(), !o.contains("size_ticks")) << o.dump();
    EXPECT_EQ(o["size"].is_null(), !o.contains("size_witnesses")) << o.dump();
    if (o["size"].is_null()) continue;
    const auto read = readLength(o["size"].get<std::string>());
    ASSERT_TRUE(read.ok()) << o.dump();
    EXPECT_EQ(o["size_ticks"], read->value.ticks()) << o.dump();
    EXPECT_FALSE(o["size_witnesses"].get<std::string>().empty()) << o.dump();
  }
  // In lines: one for each, a reading from and to along its axis.
  const std::string lines = say({"offers", sample("front_plate")}).out;
  EXPECT_EQ(static_cast<std::size_t>(std::count(lines.begin(), lines.end(), '\n')),
            offers["features"].size() + offers["readings"].size() + 2);
  for (const auto& r : offers["readings"]) {
    if (!r.contains("axis")) continue;
    const std::string axis = r["axis"].get<std::string>() + " ";
    EXPECT_NE(lines.find(axis + r["from"].get<std::string>()), std::string::npos) << r.dump();
    EXPECT_NE(lines.find(axis + r["to"].get<std::string>()), std::string::npos) << r.dump();
  }
  // Whatever is ready for Enter is lettered on the print.
  std::set<std::int64_t> lettered;
  const auto job = readDocument(Scratch::read(sample("front_plate")));
  ASSERT_TRUE(job.ok());
  for (const Reading& r : job->parts[0].readings) lettered.insert(r.figure.value.ticks());
  int ready = 0;
  for (const auto& r : offers["readings"]) {
    ASSERT_TRUE(r.contains("witnesses") && r["box"].size() == 4);
    if (r["witnesses"].get<std::string>().rfind("G S", 0) != 0) continue;
    ++ready;
    EXPECT_TRUE(lettered.count(r["candidates"][0]["ticks"].get<std::int64_t>()) > 0) << r.dump();
  }
  EXPECT_GT(ready, 3);
}

TEST(OffersWord, RefusesWhatItCannotUse) {
  const std::string file = sample("front_plate");
  for (const std::vector<std::string>& args :
       std::vector<std::vector<std::string>>{{"offers"},
                                             {"offers", file, "--part", "None"},
                                             {"offers", file, "--picture", "none"},
                                             {"offers", file, "--deep"}}) {
    const Spoken spoken = say(args);
    EXPECT_EQ(spoken.status, 2);
    EXPECT_EQ(std::count(spoken.err.begin(), spoken.err.end(), '\n'), 1) << spoken.err;
  }
  Scratch scratch;
  const auto bare =
      scratch.write("bare.inchwright",
                    R"({"inchwright":1,"job":{"unit":"in"},"parts":[{"name":"P","features":[]}]})");
  EXPECT_NE(say({"offers", bare}).err.find("picture"), std::string::npos);
  const auto loose = scratch.write(
      "loose.inchwright",
      R"({"inchwright":1,"job":{"unit":"in"},"parts":[{"name":"P","features":[]}],"pictures":[{"name":"print","file":"no.png","points":[]}]})");
  EXPECT_NE(say({"offers", loose}).err.find("square"), std::string::npos);
}

// Neither a pipe that nobody writes into nor a device that never ends holds it up.
TEST(OffersWord, ReadsPlainFilesBesideTheDocumentOnly) {
  Scratch scratch;
  ASSERT_EQ(::mkfifo(scratch.path("pipe").c_str(), 0600), 0);
  std::filesystem::create_symlink("/dev/zero", scratch.path("endless"));
  std::filesystem::create_directory(scratch.path("folder"));
  auto document = nlohmann::ordered_json::parse(Scratch::read(sample("front_plate")));
  const std::vector<std::pair<std::string, std::string>> rows = {
      {"pipe", "it is no plain file"},
      {"endless", "it is no plain file"},
      {"folder", "it is no plain file"},
      {"none", "there is no such file"},
      {"/dev/zero", "leads away from the document's folder"},
      {"../front_plate.png", "leads away from the document's folder"},
      {"prints/../../x.png", "leads away from the document's folder"},
  };
  for (const auto& [link, why] : rows) {
    document["pictures"][0]["file"] = link;
    const Spoken spoken = say({"offers", scratch.write("links.inchwright", document.dump())});
    EXPECT_EQ(spoken.status, 2) << link;
    EXPECT_NE(spoken.err.find(why), std::string::npos) << link << ": " << spoken.err;
  }
}

}  // namespace
}  // namespace inchwright::app
