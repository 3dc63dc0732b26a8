#include <gtest/gtest.h>

#include <string>

#include "core/document/document.h"
#include "tests/core/document/document_text.h"

namespace inchwright {
namespace {

struct BadRow {
  const char* find;         ///< in the front plate
  const char* replacement;  ///< what breaks it
  const char* place;
  const char* says;  ///< words the reason or advice must hold
};

void expectBad(const BadRow& row, ErrorCode code = ErrorCode::badDocument) {
  SCOPED_TRACE(row.replacement);
  const Result<Job> job = readDocument(with(frontPlateText(), row.find, row.replacement));
  ASSERT_FALSE(job.ok());
  EXPECT_EQ(job.error().code, code);
  EXPECT_EQ(job.error().place, row.place) << job.error().text;
  EXPECT_NE(job.error().text.find(row.says), std::string::npos) << job.error().text;
  EXPECT_EQ(job.error().text.find('\n'), std::string::npos);
}

constexpr const char* kVersion = R"("inchwright": 1,)";

TEST(BadDocument, Version) {
  const BadRow rows[] = {
      {kVersion, "", "", "`inchwright`"},
      {kVersion, R"("inchwright": "1",)", "/inchwright", "number"},
      {kVersion, R"("inchwright": 0,)", "/inchwright", "1"},
      {kVersion, R"("inchwright": -1,)", "/inchwright", "1"},
      {kVersion, R"("inchwright": 1.0,)", "/inchwright", "1"},
      {kVersion, R"("inchwright": 1.5,)", "/inchwright", "1"},
      {kVersion, R"("inchwright": null,)", "/inchwright", "1"},
      {kVersion, R"("Inchwright": 1,)", "", "`inchwright`"},
  };
  for (const BadRow& row : rows) expectBad(row);
  expectBad({kVersion, R"("inchwright": 2,)", "/inchwright", "format 2"}, ErrorCode::newerFormat);
  expectBad({kVersion, R"("inchwright": 99999999999999999999,)", "/inchwright", "newer"},
            ErrorCode::newerFormat);
}

// A list is no part, whatever words are in it.
TEST(BadDocument, APartThatIsNone) {
  for (const char* entry : {R"(["opposite_of", "Plate"])", R"("opposite_of")", "3", "null"}) {
    SCOPED_TRACE(entry);
    const Result<Job> job =
        readDocument(std::string(R"({"inchwright": 1, "parts": [)") + entry + "]}");
    ASSERT_FALSE(job.ok());
    EXPECT_EQ(job.error().place, "/parts/0");
    EXPECT_EQ(job.error().text.find("an object is wanted here, not "), 0u);
  }
}

// A newer format may mean anything by its other members.
TEST(BadDocument, ANewerOneIsNotLookedAtAnyFurther) {
  const Result<Job> job = readDocument(R"({"parts": 7, "job": {"unit": "rod"}, "inchwright": 3})");
  ASSERT_FALSE(job.ok());
  EXPECT_EQ(job.error().code, ErrorCode::newerFormat);
}

TEST(BadDocument, WholeAndHeading) {
  const BadRow rows[] = {
      {"\"parts\"", "\"Parts\"", "", "`parts`"},
      {"\"job\": {", "\"job\": null, \"was\": {", "/job", "not null"},
      {"\"unit\": \"in\", \"notes\"", "\"unit\": \"inch\", \"notes\"", "/job/unit", "`in`, `mm`"},
      {"\"unit\": \"in\", \"notes\"", "\"unit\": 1, \"notes\"", "/job/unit", "a string"},
      {"\"Clock plates\"", "[\"Clock plates\"]", "/job/title", "a list"},
      {"\"notes\": \"\"", "\"notes\": null", "/job/notes", "null"},
      {"\"machine\": {\"unit\": \"in\"", "\"machine\": {\"unit\": \"IN\"", "/machine/unit", "`mm`"},
      {"\"0.0005\"", "\"0\"", "/machine/step", ""},
      {"\"0.0005\"", "\"coarse\"", "/machine/step", ""},
      {"\"0.0005\"", "0.0005", "/machine/step", "a string"},
      {"\"x_counts\": \"right\"", "\"x_counts\": \"up\"", "/machine/x_counts", "`right`, `left`"},
      {"\"away\"", "\"right\"", "/machine/y_counts", "`away`, `towards`"},
      {"\"0.200\"", "\"-0.2\"", "/machine/finder", "greater"},
      {"\"0.200\"", "\"round\"", "/machine/finder", ""},
  };
  for (const BadRow& row : rows) expectBad(row);
}

TEST(BadDocument, Part) {
  const BadRow rows[] = {
      {"\"name\": \"Front plate\",", "", "/parts/0", "`name`"},
      {"\"name\": \"Front plate\"", "\"name\": \"\"", "/parts/0/name", "name"},
      {"\"quantity\": 1", "\"quantity\": 0", "/parts/0/quantity", "1 or more"},
      {"\"quantity\": 1", "\"quantity\": -2", "/parts/0/quantity", "1 or more"},
      {"\"quantity\": 1", "\"quantity\": 1.0", "/parts/0/quantity", "whole number"},
      {"\"quantity\": 1", "\"quantity\": 1e3", "/parts/0/quantity", "whole number"},
      {"\"quantity\": 1", "\"quantity\": \"1\"", "/parts/0/quantity", "not a string"},
      {"\"quantity\": 1", "\"quantity\": 99999999999", "/parts/0/quantity", "whole number"},
      {"\"quantity\": 1", "\"quantity\": 1234567890123456789012345678901234567890123456789",
       "/parts/0/quantity", "not 1234567890123456789012345678901234567890…"},
      {"\"brass\"", "7", "/parts/0/material", "not a number"},
      {"\"material\": \"brass\"", "\"hand\": \"other\"", "/parts/0/hand", "`right`"},
      {"\"general\": {", "\"general\": [], \"was\": {", "/parts/0/general", "an object"},
      {"\"fractions\": \"1/64\"", "\"fractions\": \"1/0\"", "/parts/0/general/fractions", ""},
      {"\"two_places\": \"0.010\"", "\"two_places\": 0.010", "/parts/0/general/two_places",
       "a string"},
      {"\"angles\": \"1/2\"", "\"angles\": \"wide\"", "/parts/0/general/angles", ""},
      {"\"features\": [", "\"features\": {}, \"was\": [", "/parts/0/features", "a list"},
      {"\"setups\": [", "\"accepted\": [1], \"setups\": [", "/parts/0/accepted/0",
       "a string is wanted here, or an object"},
      {"\"parts\": [", "\"parts\": [7,", "/parts/0", "an object"},
      {"\"parts\": [", "\"parts\": [{\"name\": \"Front plate\"},", "/parts/1/name", "twice"},
  };
  for (const BadRow& row : rows) expectBad(row);
}

TEST(BadDocument, Features) {
  const BadRow rows[] = {
      {"{\"id\": \"L\", \"kind\": \"edge\"", "{\"kind\": \"edge\"", "/parts/0/features/0", "`id`"},
      {"\"id\": \"L\"", "\"id\": 7", "/parts/0/features/0/id", "a string"},
      {"\"id\": \"L\"", "\"id\": \"\"", "/parts/0/features/0/id", "1 to 64"},
      {"\"id\": \"R\"", "\"id\": \"L\"", "/parts/0/features/1/id", "`L` is there twice"},
      {"\"kind\": \"edge\", ", "", "/parts/0/features/0", "`kind`"},
      {"\"kind\": \"edge\"", "\"kind\": \"Edge\"", "/parts/0/features/0/kind", "`slot`, `ring`"},
      {"\"axis\": \"x\", \"side\": \"left\"", "\"side\": \"left\"", "/parts/0/features/0",
       "`axis`"},
      {"\"axis\": \"x\", \"side\": \"left\"", "\"axis\": \"X\"", "/parts/0/features/0/axis", "`z`"},
      {"\"side\": \"left\"", "\"side\": \"front\"", "/parts/0/features/0/side", "across y"},
      {"\"side\": \"left\"", "\"side\": \"west\"", "/parts/0/features/0/side", "`bottom`"},
      {"\"face\": \"top\"", "\"face\": \"upper\"", "/parts/0/features/4/face", "`top`"},
      {"\"diameter\": \"1/4\"", "\"diameter\": 0.25", "/parts/0/features/4/diameter", "a string"},
      {"\"diameter\": \"1/4\"", "\"diameter\": \"1/\"", "/parts/0/features/4/diameter", ""},
      {"\"diameter\": \"1/4\"", "\"diameter\": \"\"", "/parts/0/features/4/diameter", ""},
      {"\"diameter\": \"1/4\"", "\"diameter\": \"R 1/8\"", "/parts/0/features/4/diameter",
       "radius"},
      {"\"diameter\": \"1/4\"", "\"diameter\": \"0\"", "/parts/0/features/4/diameter", "greater"},
      {"\"make\": \"ream\"", "\"make\": \"mill\"", "/parts/0/features/4/make", "`ream`"},
      {"\"depth\": \"through\"", "\"depth\": \"deep\"", "/parts/0/features/4/depth", ""},
      {"\"depth\": \"through\"", "\"depth\": true", "/parts/0/features/4/depth", "a string"},
      {"\"depth\": \"1/2\"", "\"depth\": \"-1/2\"", "/parts/0/features/5/depth", ""},
      {"[\"0.41\", \"0.77\"]", "[\"0.41\"]", "/parts/0/features/4/traced", "two values"},
      {"[\"0.41\", \"0.77\"]", "[0.41, 0.77]", "/parts/0/features/4/traced/0", "a string"},
      {"[\"0.41\", \"0.77\"]", "[\"0.41\", \"3/4\"]", "/parts/0/features/4/traced/1", "decimal"},
      {"[\"0.41\", \"0.77\"]", "\"0.41\"", "/parts/0/features/4/traced", "a list"},
      {"\"kind\": \"hole\"", "\"kind\": \"ring\"", "/parts/0/features/4", "`holes`"},
      {"\"kind\": \"hole\"", "\"kind\": \"ring\", \"holes\": 1001", "/parts/0/features/4/holes",
       "1000"},
      {"\"kind\": \"hole\"", "\"kind\": \"row\", \"axis\": \"x\", \"spaces\": 0",
       "/parts/0/features/4/spaces", "1000"},
      {"\"kind\": \"hole\"", "\"kind\": \"row\", \"axis\": \"x\", \"spaces\": 2147483647",
       "/parts/0/features/4/spaces", "1000"},
      {"\"kind\": \"hole\"", "\"kind\": \"row\", \"axis\": \"x\", \"holes\": 5, \"spaces\": 4",
       "/parts/0/features/4/spaces", "not both"},
      {"\"kind\": \"hole\"", "\"kind\": \"row\", \"holes\": 5", "/parts/0/features/4", "`axis`"},
      {"\"kind\": \"hole\"", "\"kind\": \"slot\", \"axis\": \"z\"", "/parts/0/features/4/axis",
       "top face"},
      {"\"kind\": \"hole\"", "\"kind\": \"hole\", \"locate\": \"mates\"",
       "/parts/0/features/4/locate", "`mate`"},
      {"\"kind\": \"hole\"", "\"kind\": \"ring\", \"holes\": 2, \"sense\": \"left\"",
       "/parts/0/features/4/sense", "`clockwise`"},
      {"\"kind\": \"hole\"", "\"kind\": \"ring\", \"holes\": 2, \"first_angle\": \"1/\"",
       "/parts/0/features/4/first_angle", ""},
      {"\"kind\": \"hole\"", "\"kind\": \"round\", \"about\": \"Q\"", "/parts/0/features/4/about",
       "no `Q`"},
      {"\"kind\": \"hole\"", "\"kind\": \"round\", \"corner\": [\"L\", \"B\"]",
       "/parts/0/features/4/corner/1", "two edges"},
  };
  for (const BadRow& row : rows) expectBad(row);
}

TEST(BadDocument, Readings) {
  const BadRow rows[] = {
      {"{\"id\": \"r1\", ", "{", "/parts/0/readings/0", "`id`"},
      {"\"id\": \"r2\"", "\"id\": \"r1\"", "/parts/0/readings/1/id", "twice"},
      {"\"axis\": \"x\", \"from\": \"L\", \"to\": \"A\"", "\"from\": \"L\", \"to\": \"A\"",
       "/parts/0/readings/0", "`axis`"},
      {"\"axis\": \"x\", \"from\": \"L\"", "\"axis\": \"w\", \"from\": \"L\"",
       "/parts/0/readings/0/axis", "`x`, `y`, `z`"},
      {"\"from\": \"L\", \"to\": \"A\"", "\"to\": \"A\"", "/parts/0/readings/0", "`from`"},
      {"\"from\": \"L\", \"to\": \"A\"", "\"from\": \"L\"", "/parts/0/readings/0/to", "missing"},
      {"\"from\": \"L\", \"to\": \"A\"", "\"from\": \"L\", \"to\": \"a\"", "/parts/0/readings/0/to",
       "no `a`"},
      {"\"from\": \"L\", \"to\": \"A\"", "\"from\": \"F\", \"to\": \"A\"",
       "/parts/0/readings/0/from", "along x"},
      {"\"from\": \"L\", \"to\": \"A\"", "\"from\": \"A\", \"to\": \"A\"", "/parts/0/readings/0/to",
       "twice"},
      {", \"text\": \"3/8\"", "", "/parts/0/readings/0", "`text`"},
      {"\"text\": \"3/8\"", "\"text\": 0.375", "/parts/0/readings/0/text", "a string"},
      {"\"text\": \"3/8\"", "\"text\": \"-3/8\"", "/parts/0/readings/0/text", "swap the ends"},
      {"\"text\": \"3/8\"", "\"text\": \"3/8 furlongs\"", "/parts/0/readings/0/text", ""},
      {"\"text\": \"(2)\"", "\"text\": \"(2\"", "/parts/0/readings/3/text", ""},
      {"\"text\": \"1 1/2 ±0.005\"", "\"text\": \"1 1/2 ±\"", "/parts/0/readings/4/text", ""},
      {"\"kind\": \"centres\"", "\"kind\": \"center\"", "/parts/0/readings/5/kind", "`centres`"},
      {"\"text\": \"5/8\"", "\"text\": \"0\"", "/parts/0/readings/5/text", "greater"},
      {"\"text\": \"55\"", "\"text\": \"1 in\"", "/parts/0/readings/6/text", ""},
      {"\"kind\": \"angle\", \"from\": \"A\"", "\"kind\": \"angle\", \"from\": \"L\"",
       "/parts/0/readings/6/from", "no point"},
      {"\"kind\": \"angle\", \"from\": \"A\", \"to\": \"C\"", "\"kind\": \"pcd\", \"from\": \"A\"",
       "/parts/0/readings/6/from", "no pcd"},
      {"\"text\": \"3/8\"", "\"text\": \"3/8\", \"place\": [\"1\"]", "/parts/0/readings/0/place",
       "two values"},
  };
  for (const BadRow& row : rows) expectBad(row);
}

TEST(BadDocument, UnderstandingsAndSetups) {
  const BadRow rows[] = {
      {"\"kind\": \"midway\"", "\"kind\": \"middle\"", "/parts/0/understood/0/kind", "`midway`"},
      {"\"kind\": \"midway\", ", "", "/parts/0/understood/0", "`kind`"},
      {"\"of\": \"A\"", "\"of\": 1", "/parts/0/understood/0/of", "a list"},
      {"\"of\": \"A\"", "\"of\": [\"A\", \"B\"]", "/parts/0/understood/0/of", "one `of`"},
      {"\"of\": \"A\"", "\"of\": \"Q\"", "/parts/0/understood/0/of/0", "no `Q`"},
      {"[\"F\", \"K\"]", "[\"F\"]", "/parts/0/understood/0/between", "two `between`"},
      {"[\"F\", \"K\"]", "[\"F\", \"R\"]", "/parts/0/understood/0/between/1", "along y"},
      {"\"stated\": true", "\"stated\": \"yes\"", "/parts/0/understood/0/stated", "true or false"},
      {"[\"A\", \"B\"]", "[\"A\"]", "/parts/0/understood/1/of", "two or more"},
      {"\"kind\": \"in_line\"", "\"kind\": \"equal\"", "/parts/0/understood/1/of", "three"},
      {"\"kind\": \"in_line\"", "\"kind\": \"symmetric\"", "/parts/0/understood/1/about",
       "`about`"},
      {"\"name\": \"1\", ", "", "/parts/0/setups/0", "`name`"},
      {"\"turn\": 0", "\"turn\": 45", "/parts/0/setups/0/turn", "270"},
      {"\"turn\": 0", "\"turn\": \"90\"", "/parts/0/setups/0/turn", "whole number"},
      {"\"turn\": 0", "\"turn\": 90.0", "/parts/0/setups/0/turn", "whole number"},
      {"\"face\": \"top\", \"turn\"", "\"face\": \"front\", \"turn\"", "/parts/0/setups/0/zero/y",
       "x and z"},
      {"\"middle\": [\"L\", \"R\"]", "\"middle\": [\"L\"]", "/parts/0/setups/0/zero/x/middle",
       "two places"},
      {"\"middle\": [\"L\", \"R\"]", "\"middle\": [\"L\", \"K\"]",
       "/parts/0/setups/0/zero/x/middle/1", "along x"},
      {"\"middle\": [\"L\", \"R\"]", "\"middle\": \"L\"", "/parts/0/setups/0/zero/x/middle",
       "a list"},
      {"\"of\": \"stock\"", "\"of\": \"blank\"", "/parts/0/setups/0/zero/x/of", "`finished`"},
      {"\"of\": \"stock\"", "\"at\": \"L\"", "/parts/0/setups/0/zero/x", "say which"},
      {"{\"at\": \"F\"}", "{\"at\": \"Q\"}", "/parts/0/setups/0/zero/y/at", "no `Q`"},
      {"{\"at\": \"F\"}", "{\"at\": \"F\", \"offset\": \"wide\"}",
       "/parts/0/setups/0/zero/y/offset", ""},
      {"{\"at\": \"F\"}", "{}", "/parts/0/setups/0/zero/y", "say which"},
      {"{\"at\": \"F\"}", "\"F\"", "/parts/0/setups/0/zero/y", "an object"},
      {"\"left\": \"1/16\"", "\"left\": \"-1/16\"", "/parts/0/setups/0/stock/left", "0 or more"},
      {"\"left\": \"1/16\"", "\"left\": 0.06", "/parts/0/setups/0/stock/left", "a string"},
      {"\"turn\": 0", "\"turn\": 0, \"jaw\": \"top\"", "/parts/0/setups/0/jaw", "no jaw"},
      {"\"turn\": 0", "\"turn\": 0, \"stop\": \"end\"", "/parts/0/setups/0/stop", "`left`"},
      {"\"turn\": 0", "\"turn\": 0, \"checks\": [\"Q\"]", "/parts/0/setups/0/checks/0", "no `Q`"},
  };
  for (const BadRow& row : rows) expectBad(row);
}

TEST(BadDocument, NamesThatAreThereTwice) {
  expectBad({"\"quantity\": 1", "\"quantity\": 1, \"quantity\": 2", "/parts/0/quantity", "twice"});
  expectBad(
      {"\"to\": \"A\"", "\"to\": \"A\", \"\\u0074o\": \"B\"", "/parts/0/readings/0/to", "twice"});
}

TEST(BadDocument, ABadFigureSaysWhereInItTheFaultLies) {
  const Result<Job> job =
      readDocument(with(frontPlateText(), "\"text\": \"3/8\"", "\"text\": \"3/8 furlongs\""));
  ASSERT_FALSE(job.ok());
  EXPECT_EQ(job.error().at, readLength("3/8 furlongs").error().at);
  EXPECT_EQ(job.error().text, readLength("3/8 furlongs").error().text);
}

}  // namespace
}  // namespace inchwright
