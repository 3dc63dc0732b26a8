// What is typed while a print's offers are gone through, and what has been read before them.

#include "app/session/offering.h"
#include "core/lines/lines.h"
#include "tests/support/offers_on_desk.h"

namespace inchwright::app {
namespace {

class OfferingTyped : public testing::Test, protected test::OffersOnDesk {};

TEST_F(OfferingTyped, AWholeLineIsWelcomeAndWhatIsNoneIsRefused) {
  offer(sound());
  for (const char* slip : {"1/", "1 3/16 x", "nothing at all", "L", "-"}) {
    refused.clear();
    EXPECT_FALSE(enter(slip)) << slip;
    EXPECT_FALSE(refused.isEmpty()) << slip;
    EXPECT_TRUE(part().readings.empty()) << slip;
    EXPECT_TRUE(part().features.empty()) << slip;
  }
  EXPECT_TRUE(enter("hole Q 1/4"));
  ASSERT_EQ(part().features.size(), 1u);
  EXPECT_EQ(part().features[0].id, "Q");
  EXPECT_TRUE(part().readings.empty());
  EXPECT_EQ(work.doing(), Doing::offering);
}

// A figure that was read already tells what scale the print is drawn to and is not offered again.
// Only lengths in the plane of the face, between places that were traced, say where they are drawn.
TEST(ConfirmedIn, TellsWhatWasReadWhereItIsDrawn) {
  Part part;
  part.name = "Plate";
  for (const char* line : {"edge L left", "edge F front", "edge T top", "edge U bottom",
                           "hole A 1/4", "hole B 1/4", "x L A 3/8", "y F A 1/2", "z U T 1/4",
                           "centres A B 1", "x A B 3/4", "hole C 1/8", "x B C 1/8"}) {
    auto next = applyLine(part, line, {});
    ASSERT_TRUE(next.ok()) << line << ": " << next.error().text;
    part = std::move(next->part);
  }
  const auto put = [&](const char* id, std::vector<std::string> at) {
    for (Feature& feature : part.features) {
      if (feature.id == id) feature.traced = at;
    }
  };
  put("L", {"0"});
  put("F", {"0.1"});
  put("T", {"0.2"});
  put("U", {"-0.1"});
  put("A", {"0.37", "0.6"});
  put("B", {"1.12", "1.2"});
  const auto confirmed = confirmedIn(part, Face::top);
  ASSERT_EQ(confirmed.size(), 3u);
  struct Case {
    seen::OfferedReading kind;
    double from, to;
    const char* figure;
  };
  using enum seen::OfferedReading;
  const Case wanted[] = {
      {alongX, 0, 0.37, "3/8"}, {alongY, 0.1, 0.6, "1/2"}, {alongX, 0.37, 1.12, "3/4"}};
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_EQ(confirmed[i].kind, wanted[i].kind) << i;
    EXPECT_DOUBLE_EQ(confirmed[i].from, wanted[i].from) << i;
    EXPECT_DOUBLE_EQ(confirmed[i].to, wanted[i].to) << i;
    EXPECT_EQ(confirmed[i].value, readLength(wanted[i].figure)->value) << i;
  }
  // From the front the print shows X and Z.
  const auto front = confirmedIn(part, Face::front);
  ASSERT_EQ(front.size(), 3u);
  EXPECT_EQ(front[1].kind, alongY);
  EXPECT_DOUBLE_EQ(front[1].from, -0.1);
  EXPECT_DOUBLE_EQ(front[1].to, 0.2);
}

}  // namespace
}  // namespace inchwright::app
