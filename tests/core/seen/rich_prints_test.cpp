// Whole prints drawn at random, with all that a print may carry: slots, rings and rows of holes,
// rounds and arcs, further views, slanted distances, angles, tolerances and notes. What is offered
// is held against the truth that was drawn.

#include <gtest/gtest.h>

#include <cstdlib>

#include "core/seen/offer.h"
#include "tests/seen/print.h"

namespace inchwright::seen {
namespace {

/// What of a print is not offered as it is drawn. A thing may be missed, never made up.
struct RichPrint {
  const char* seed;
  std::vector<OfferedFeature> missed;  ///< one of each of these kinds
  int readings;                        ///< offered between their ends, at least
  int read;                            ///< and with the figure lettered there first, at least
  int ready;                           ///< and ready, at least
  int noted;                           ///< notes whose size is offered where they point, at least
  DrawnPrint print = {};
  Offers offers = {};
};

class RichPrints : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    const std::string folder = INCHWRIGHT_BINARY_DIR "/prints/rich";
    for (RichPrint& one : prints) {
      const std::string call = std::string(INCHWRIGHT_SOURCE_DIR "/tests/seen/draw_prints ") +
                               folder + " --manner rich --seeds " + one.seed;
      if (std::system(call.c_str()) != 0) continue;
      one.print = readPrint(folder + "/" + one.seed);
      Options options;
      options.unit = one.print.unit();
      auto offers = offer(one.print.picture, one.print.pixelToInches, options);
      if (offers.ok()) one.offers = *std::move(offers);
    }
  }
  void SetUp() override {
    for (const RichPrint& one : prints)
      ASSERT_FALSE(one.offers.features.empty()) << "needs the fonts and python3-pil; see app/setup";
  }

  static std::vector<RichPrint> prints;
};

std::vector<RichPrint> RichPrints::prints{
    {"0006", {}, 14, 14, 8, 5},
    {"0009", {}, 14, 13, 11, 3},
    {"0018", {OfferedFeature::slot}, 13, 13, 11, 5},
    {"0020", {OfferedFeature::hole}, 12, 11, 10, 3},
};

using Truth = nlohmann::json;

PlanePoint pointOf(const Truth& p) {
  return {p[0].get<double>(), p[1].get<double>()};
}
double apart(PlanePoint a, PlanePoint b) {
  return std::hypot(a.x - b.x, a.y - b.y);
}
PlanePoint middleOf(PlanePoint a, PlanePoint b) {
  return {(a.x + b.x) / 2, (a.y + b.y) / 2};
}
/// Of what has two ends in either order.
double apart(PlanePoint a, PlanePoint b, PlanePoint c, PlanePoint d) {
  return std::min(std::max(apart(a, c), apart(b, d)), std::max(apart(a, d), apart(b, c)));
}

bool isOf(const FeatureOffer& o, OfferedFeature kind, const Truth& truth) {
  return o.kind == kind && o.view == (truth.contains("other_view") ? 1 : 0);
}

// A hundredth of the sheet's inch is what a scan strays by. Where a round runs into its sides
// nobody can see to less than a good pixel, nor how far a slot's sides go.
TEST_F(RichPrints, EachThingIsOfferedWhereItIsDrawn) {
  for (const RichPrint& one : prints) {
    const double near = 0.02 / one.print.scale();
    std::vector<OfferedFeature> missed;
    std::string which;
    for (const Truth& truth : one.print.truth["features"]) {
      const std::string name = truth["kind"];
      const auto offered = [&](OfferedFeature kind, auto&& fits) {
        const auto count =
            std::count_if(one.offers.features.begin(), one.offers.features.end(),
                          [&](const FeatureOffer& o) { return isOf(o, kind, truth) && fits(o); });
        EXPECT_LE(count, 1) << one.seed << truth;
        if (count == 0) missed.push_back(kind), which += truth.dump();
      };
      const auto atOf = [&](double radius) {
        return [&, radius](const FeatureOffer& o) {
          return apart(o.at, pointOf(truth["at"])) < near &&
                 std::abs(o.drawnRadius - radius) < 0.03 / one.print.scale();
        };
      };
      if (name == "hole") {
        offered(OfferedFeature::hole, atOf(truth["d"].get<double>() / 2));
      } else if (name == "round") {
        offered(OfferedFeature::round, atOf(truth["r"]));
      } else if (name == "arc") {
        offered(OfferedFeature::arc, [&](const FeatureOffer& o) {
          return atOf(truth["r"])(o) &&
                 apart(o.from, o.to, pointOf(truth["from"]), pointOf(truth["to"])) < 3 * near;
        });
      } else if (name == "ring") {
        offered(OfferedFeature::ring, [&](const FeatureOffer& o) {
          return atOf(truth["d"].get<double>() / 2)(o) && o.count == truth["count"];
        });
      } else if (name == "row") {
        const PlanePoint from = pointOf(truth["from"]), to = pointOf(truth["to"]);
        offered(OfferedFeature::row, [&](const FeatureOffer& o) {
          return apart(o.from, o.to, from, to) < near && apart(o.at, middleOf(from, to)) < near &&
                 o.count == truth["count"] && o.alongX == (from.y == to.y);
        });
      } else if (name == "slot") {
        const PlanePoint from = pointOf(truth["from"]), to = pointOf(truth["to"]);
        offered(OfferedFeature::slot, [&](const FeatureOffer& o) {
          return apart(o.from, o.to, from, to) < 2 * near &&
                 apart(o.at, middleOf(from, to)) < near &&
                 std::abs(o.drawnRadius - truth["width"].get<double>() / 2) < near;
        });
      } else if (name == "edge") {
        // Its ends lie within it, or on it where a corner is rounded or cut.
        const bool plumb = truth["axis"] == "x";
        const PlanePoint a = pointOf(truth["from"]), b = pointOf(truth["to"]);
        const auto along = [&](PlanePoint p) { return plumb ? p.y : p.x; };
        const double low = std::min(along(a), along(b)), high = std::max(along(a), along(b));
        offered(OfferedFeature::edge, [&](const FeatureOffer& o) {
          return o.alongX == plumb && std::abs(plumb ? o.at.x - a.x : o.at.y - a.y) < near &&
                 std::abs(low - along(o.from)) < (high - low) / 3 &&
                 std::abs(high - along(o.to)) < (high - low) / 3 &&
                 along(o.from) > low - 2 * near && along(o.to) < high + 2 * near;
        });
      }
    }
    EXPECT_EQ(missed, one.missed) << one.seed << which;
    std::size_t drawn = 0;
    for (const Truth& truth : one.print.truth["features"]) drawn += truth.contains("kind");
    EXPECT_EQ(one.offers.features.size(), drawn - one.missed.size())
        << one.seed << ": nothing else is offered";
  }
}

// What is drawn whole may be taken by one Enter; an edge where a dimension ends on it, a row where
// its holes have none of their own and a note says its size.
TEST_F(RichPrints, WhatIsDrawnWholeIsReady) {
  for (const RichPrint& one : prints) {
    const double near = 0.02 / one.print.scale();
    const auto hasDimension = [&](const FeatureOffer& o) {
      const auto& all = one.print.truth["readings"];
      return std::any_of(all.begin(), all.end(), [&](const Truth& r) {
        if (r["kind"] != (o.alongX ? "x" : "y") || r.contains("other_view") != (o.view == 1))
          return false;
        const int axis = o.alongX ? 0 : 1;
        const double at = o.alongX ? o.at.x : o.at.y;
        return std::abs(r["from"][axis].get<double>() - at) < near ||
               std::abs(r["to"][axis].get<double>() - at) < near;
      });
    };
    for (const FeatureOffer& o : one.offers.features) {
      const auto at = [&] {
        return std::string(one.seed) + " kind " + std::to_string(static_cast<int>(o.kind)) +
               " at " + std::to_string(o.at.x) + " " + std::to_string(o.at.y);
      };
      if (o.kind == OfferedFeature::edge) {
        EXPECT_EQ(o.ready, hasDimension(o)) << at();
      } else if (o.kind == OfferedFeature::row) {
        EXPECT_TRUE(!o.ready || !o.size.empty()) << at();
      } else {
        EXPECT_TRUE(o.ready) << at();
      }
      EXPECT_GT(o.sure, 0.75) << at();
      EXPECT_LE(o.sure, 1) << at();
    }
  }
}

TEST_F(RichPrints, EachLineIsReadAsItIsLettered) {
  for (const RichPrint& one : prints) {
    int found = 0, read = 0, ready = 0;
    const double near = 0.04 / one.print.scale();
    for (const Truth& truth : one.print.truth["readings"]) {
      const std::string kind = truth["kind"];
      const PlanePoint from = pointOf(truth["from"]), to = pointOf(truth["to"]);
      for (const ReadingOffer& o : one.offers.readings) {
        const char* own[] = {"x", "y", "centres", "angle"};
        if (kind != own[static_cast<int>(o.kind)] || between(o.from, from) > near ||
            apart(o.to, to) > near)
          continue;
        ++found;
        EXPECT_EQ(o.view, truth.contains("other_view") ? 1 : 0) << one.seed << truth;
        EXPECT_GT(o.sure, 0.6) << one.seed << truth;
        EXPECT_LE(o.sure, 1) << one.seed << truth;
        if (o.candidates.empty()) break;
        const bool isRight = o.candidates.front().text == truth["text"];
        EXPECT_TRUE(isRight || !o.witnesses.ready()) << one.seed << truth;
        if (!isRight) break;
        ++read;
        ready += o.witnesses.ready();
        if (kind != "angle") {
          EXPECT_EQ(o.candidates.front().ticks, truth["ticks"].get<std::int64_t>());
        }
        // The cut that is shown goes a fifth of the sheet's inch beyond its figure and both ends.
        const PictureBox &f = o.figure, &c = o.cut;
        const double room = 0.15 * one.print.truth["ppi"].get<double>();
        EXPECT_GT(std::min({f.x - c.x, f.y - c.y, c.x + c.w - f.x - f.w, c.y + c.h - f.y - f.h}),
                  room)
            << one.seed << truth;
        const PlanePoint first = one.print.pixelToInches.map({c.x, c.y}),
                         last = one.print.pixelToInches.map({c.x + c.w, c.y + c.h});
        for (const PlanePoint end : {o.from, o.to}) {
          EXPECT_GT(std::min({end.x - first.x, last.x - end.x, first.y - end.y, end.y - last.y}),
                    0.15 / one.print.scale())
              << one.seed << truth;
        }
        const PlanePoint figure = one.print.pixelToInches.map({f.x + f.w / 2, f.y + f.h / 2});
        EXPECT_LT(apart(figure, pointOf(truth["figure"])),
                  (truth["beside"] ? 0.4 : 0.2) / one.print.scale())
            << one.seed << truth;
        break;
      }
    }
    EXPECT_GE(found, one.readings) << one.seed;
    EXPECT_GE(read, one.read) << one.seed;
    EXPECT_GE(ready, one.ready) << one.seed;
    EXPECT_LE(one.offers.readings.size(), one.print.truth["readings"].size()) << one.seed;
  }
}

// `17/64 REAM 6 HOLES` is said of the hole it points at; of a ring or a row with as many holes it
// is said of that as well.
TEST_F(RichPrints, EachNoteIsSaidOfWhatItPointsAt) {
  for (const RichPrint& one : prints) {
    int noted = 0, sized = 0;
    const double near = 0.02 / one.print.scale();
    for (const char* kind : {"notes", "radii", "ring_notes"}) {
      for (const Truth& note : one.print.truth.value(kind, Truth::array())) {
        const auto said = std::find_if(
            one.offers.features.begin(), one.offers.features.end(), [&](const FeatureOffer& o) {
              const double off = apart(o.at, pointOf(note["at"]));
              // A ring's note points at one of its holes.
              return !o.size.empty() && o.kind != OfferedFeature::row &&
                     (kind == std::string("ring_notes") ? off < 0.5 : off < near);
            });
        if (said == one.offers.features.end()) continue;
        const std::string size = note["size"];
        const bool isRight = said->size == size || said->size == "R" + size;
        noted += isRight;
        EXPECT_TRUE(isRight || !said->sizeWitnesses.ready()) << note;
        if (!said->note.empty() && said->note != "R") {
          EXPECT_NE(note["text"].get<std::string>().find(said->note), std::string::npos) << note;
        }
        EXPECT_TRUE(said->count == 1 || said->count == note["count"]) << note;
        EXPECT_GT(said->noted.w, 0);
      }
    }
    for (const FeatureOffer& o : one.offers.features) {
      sized += o.kind != OfferedFeature::row && o.kind != OfferedFeature::ring && !o.size.empty();
      if (o.kind == OfferedFeature::ring) {
        EXPECT_EQ(o.firstAngle, 90);
      }
    }
    EXPECT_GE(noted, one.noted) << one.seed;
    EXPECT_LE(sized, static_cast<int>(one.print.truth["notes"].size() +
                                      one.print.truth.value("radii", Truth::array()).size() +
                                      one.print.truth.value("ring_notes", Truth::array()).size()));
  }
  const auto& all = prints.back().offers.features;
  const auto ring = std::find_if(
      all.begin(), all.end(), [](const FeatureOffer& o) { return o.kind == OfferedFeature::ring; });
  ASSERT_NE(ring, all.end());
  EXPECT_EQ(ring->size + " " + ring->note + " " + ring->pcd, "9/64 DRILL 51/64");
  EXPECT_EQ(ring->sizeWitnesses.letters() + ", " + ring->pcdWitnesses.letters(), "G S, G S");
}

TEST_F(RichPrints, TheLetteringIsAsHighAsItIsLettered) {
  for (const RichPrint& one : prints) {
    const double capitals =
        one.print.truth["style"]["cap"].get<double>() * one.print.truth["ppi"].get<double>();
    EXPECT_NEAR(one.offers.lettering, capitals, 0.04 * capitals) << one.seed;
    EXPECT_FALSE(one.offers.tooCoarse) << one.seed;
  }
}

// The same print a half and a quarter as fine: the places stay, and what is too small to be read
// well is said.
TEST_F(RichPrints, ACoarserPictureShowsTheSamePlaces) {
  const RichPrint& one = prints[2];
  Grey whole(one.print.picture.width, one.print.picture.height);
  whole.at = one.print.bytes;
  const auto holesOf = [](const Offers& offers) {
    std::vector<FeatureOffer> out;
    std::copy_if(offers.features.begin(), offers.features.end(), std::back_inserter(out),
                 [](const FeatureOffer& o) { return o.kind == OfferedFeature::hole && o.ready; });
    return out;
  };
  for (const int by : {2, 4}) {
    const Grey small = shrunk(whole, by);
    const double middle = (by - 1) / 2.0, step = by;
    const auto offers = offer(
        {small.at.data(), small.width, small.height, small.width},
        one.print.pixelToInches.after(Homography({step, 0, middle, 0, step, middle, 0, 0, 1})));
    ASSERT_TRUE(offers.ok());
    EXPECT_NEAR(offers->lettering * by, one.offers.lettering, 0.06 * one.offers.lettering);
    EXPECT_EQ(offers->tooCoarse, by == 4) << offers->lettering;
    for (const FeatureOffer& o : holesOf(*offers)) {
      const auto all = holesOf(one.offers);
      EXPECT_TRUE(std::any_of(all.begin(), all.end(),
                              [&](const FeatureOffer& own) {
                                return apart(own.at, o.at) < 0.01 &&
                                       std::abs(own.drawnRadius - o.drawnRadius) < 0.01;
                              }))
          << by << " " << o.at.x << " " << o.at.y;
    }
    if (by == 2) {
      EXPECT_GE(holesOf(*offers).size() + 2, holesOf(one.offers).size());
    }
  }
}

// On the print 0006 a length of 2 21/32 lies over 5/16, 7/8, 3/8, 5/16 and 25/32, and one of 3/8
// between 1 7/8 from the left and 13/32 from the right. What is confirmed is set down to a pixel
// or two.
TEST_F(RichPrints, WhatIsConfirmedClosesWithALine) {
  const RichPrint& one = prints.front();
  const auto lettersOf = [&](std::vector<Confirmed> confirmed, double from, double to) {
    Options options;
    options.confirmed = std::move(confirmed);
    const auto offers = offer(one.print.picture, one.print.pixelToInches, options);
    for (const ReadingOffer& o : offers->readings) {
      if (o.kind == OfferedReading::alongX && std::abs(o.from.x - from) < 0.01 &&
          std::abs(o.to.x - to) < 0.01)
        return o.witnesses.letters();
    }
    return std::string("none");
  };
  const auto inch = [](int of64) { return Length::ticks(of64 * Length::kTicksPerInch / 64); };
  constexpr auto x = OfferedReading::alongX;
  std::vector<Confirmed> row{{x, 0, 0.3125, inch(20)},
                             {x, 0.317, 1.187, inch(56)},
                             {x, 1.187, 1.568, inch(24)},
                             {x, 1.5625, 1.875, inch(20)},
                             {x, 1.88, 2.656, inch(50)}};
  EXPECT_EQ(lettersOf(row, 0, 2.65625), "G S C");
  row[2].value = inch(25);
  EXPECT_EQ(lettersOf(row, 0, 2.65625), "G S");
  row[2].value = inch(24);
  row[2].kind = OfferedReading::alongY;
  EXPECT_EQ(lettersOf(row, 0, 2.65625), "G S");
  EXPECT_EQ(
      lettersOf({{x, 0, 2.656, inch(170)}, {x, 0, 1.875, inch(120)}, {x, 2.25, 2.656, inch(26)}},
                1.875, 2.25),
      "G S C");
  EXPECT_EQ(
      lettersOf({{x, 0, 2.656, inch(170)}, {x, 0, 1.875, inch(120)}, {x, 2.29, 2.656, inch(26)}},
                1.875, 2.25),
      "G S");
}

}  // namespace
}  // namespace inchwright::seen
