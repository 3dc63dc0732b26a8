#include "core/seen/offer.h"

#include <gtest/gtest.h>

#include <chrono>
#include <cstdlib>
#include <random>
#include <thread>

#include "tests/seen/print.h"

namespace inchwright::seen {
namespace {

struct Sheet {
  std::vector<std::uint8_t> bytes;
  GreyPicture picture;

  Sheet(int width, int height, std::uint8_t tone)
      : bytes(static_cast<std::size_t>(width) * static_cast<std::size_t>(height), tone) {
    picture = {bytes.data(), width, height, width};
  }
};

const Homography kHundredAnInch({0.01, 0, 0, 0, -0.01, 6, 0, 0, 1});

TEST(Offer, NoPictureAndNoMapAreRefused) {
  EXPECT_EQ(offer({}, Homography()).error().code, ErrorCode::badRequest);
  const Sheet white(40, 30, 255);
  EXPECT_EQ(offer(white.picture, Homography({0, 0, 1, 0, 0, 1, 0, 0, 1})).error().code,
            ErrorCode::badRequest);
}

TEST(Offer, NothingIsReadyOnWhatIsNoPrint) {
  std::mt19937 random(3);
  std::vector<Sheet> sheets;
  for (const int tone : {0, 128, 255}) {
    sheets.emplace_back(1, 1, static_cast<std::uint8_t>(tone));
    sheets.emplace_back(700, 500, static_cast<std::uint8_t>(tone));
    sheets.emplace_back(3000, 2, static_cast<std::uint8_t>(tone));
  }
  Sheet noise(800, 600, 0), coarse(800, 600, 0);
  for (auto& v : noise.bytes) v = static_cast<std::uint8_t>(random());
  for (std::size_t i = 0; i < coarse.bytes.size(); ++i)
    coarse.bytes[i] = (i / 8 + i / 800 / 8 * 31) % 7 < 3 ? 20 : 230;
  noise.picture.data = noise.bytes.data();
  sheets.push_back(std::move(noise));
  sheets.push_back(std::move(coarse));
  for (Sheet& s : sheets) {
    s.picture.data = s.bytes.data();
    const auto offers = offer(s.picture, kHundredAnInch);
    ASSERT_TRUE(offers.ok()) << offers.error().text;
    for (const ReadingOffer& r : offers->readings) EXPECT_FALSE(r.witnesses.ready());
    for (const FeatureOffer& f : offers->features) EXPECT_FALSE(f.sizeWitnesses.ready());
  }
}

TEST(Offer, StopsSoon) {
  std::mt19937 random(4);
  Sheet noise(4000, 3000, 0);
  for (auto& v : noise.bytes) v = static_cast<std::uint8_t>(random());
  std::atomic<bool> stop{false};
  std::chrono::steady_clock::time_point asked;
  std::thread other([&] {
    std::this_thread::sleep_for(std::chrono::milliseconds(150));
    asked = std::chrono::steady_clock::now();
    stop = true;
  });
  Options options;
  options.stop = &stop;
  const auto offers = offer(noise.picture, kHundredAnInch, options);
  const auto ended = std::chrono::steady_clock::now();
  other.join();
  if (offers.ok()) GTEST_SKIP() << "it was done before it could be stopped";
  EXPECT_EQ(offers.error().text, "stopped");
  // Ten times what is promised: a busy machine may not run us for a while.
  EXPECT_LT(std::chrono::duration<double>(ended - asked).count(), 1.0);
}

/// Prints drawn once for all tests here.
const std::vector<DrawnPrint>& drawnPrints() {
  static const std::vector<DrawnPrint> prints = [] {
    const std::string folder = INCHWRIGHT_BINARY_DIR "/prints";
    std::vector<DrawnPrint> out;
    for (const auto& [manner, seeds] :
         {std::pair("scan", "7-8"), std::pair("phone", "9"), std::pair("misprint", "11")}) {
      const std::string call = std::string(INCHWRIGHT_SOURCE_DIR "/tests/seen/draw_prints ") +
                               folder + "/" + manner + " --manner " + manner + " --seeds " + seeds;
      if (std::system(call.c_str()) != 0) return out;
    }
    for (const char* stem : {"/scan/0007", "/scan/0008", "/phone/0009", "/misprint/0011"})
      out.push_back(readPrint(folder + stem));
    return out;
  }();
  return prints;
}

TEST(Offer, ReadsDrawnPrintsAndIsNeverWrongAndReady) {
  int readings = 0, found = 0, ready = 0, holes = 0, ringed = 0;
  ASSERT_FALSE(drawnPrints().empty()) << "needs the fonts and python3-pil; see app/setup";
  for (const DrawnPrint& print : drawnPrints()) {
    Options options;
    options.unit = print.unit();
    const auto offers = offer(print.picture, print.pixelToInches, options);
    ASSERT_TRUE(offers.ok());
    for (const auto& r : print.truth["readings"]) {
      ++readings;
      const int axis = r["kind"] == "x" ? 0 : 1;
      for (const ReadingOffer& o : offers->readings) {
        const double from = axis == 0 ? o.from.x : o.from.y, to = axis == 0 ? o.to.x : o.to.y;
        if ((o.kind == OfferedReading::alongX) != (axis == 0)) continue;
        if (std::abs(from - r["from"][axis].get<double>()) > 0.05 ||
            std::abs(to - r["to"][axis].get<double>()) > 0.05)
          continue;
        if (std::abs((axis == 0 ? o.from.y : o.from.x) - r["from"][1 - axis].get<double>()) > 0.1)
          continue;
        ++found;
        if (!o.witnesses.ready()) continue;
        ++ready;
        EXPECT_EQ(o.candidates.front().ticks, r["ticks"].get<std::int64_t>())
            << print.name << " " << r["text"];
        EXPECT_FALSE(r["misprint"].get<bool>());
      }
    }
    for (const auto& f : print.truth["features"]) {
      if (f["kind"] != "hole") continue;
      ++holes;
      for (const FeatureOffer& o : offers->features) {
        if (o.kind == OfferedFeature::hole &&
            std::hypot(o.at.x - f["at"][0].get<double>(), o.at.y - f["at"][1].get<double>()) <
                1.0 / 64) {
          ++ringed;
          break;
        }
      }
    }
  }
  EXPECT_GT(readings, 20);
  EXPECT_GE(found, readings * 8 / 10);
  EXPECT_GE(ready, readings * 4 / 10);
  EXPECT_GE(ringed, holes * 97 / 100);
}

TEST(Offer, TheSameEachTime) {
  ASSERT_FALSE(drawnPrints().empty());
  const DrawnPrint& print = drawnPrints().front();
  EXPECT_EQ(*offer(print.picture, print.pixelToInches), *offer(print.picture, print.pixelToInches));
}

}  // namespace
}  // namespace inchwright::seen
