// Deceits of a print that offers itself: what is drawn or lettered otherwise than it seems, and a
// hand that presses Enter at whatever stands there. Nothing false may come into the document so;
// what a person takes for a place that is none, or leaves out, must be said.
#include <gtest/gtest.h>

#include "core/say/doubt_words.h"
#include "tests/support/offers_on_desk.h"

namespace inchwright::test {
namespace {

struct Deceit {
  const char* what;
  void (*change)(seen::Offers&);
  /// Typed where a place is not ready, by somebody who believes it; nullptr: Enter alone.
  const char* typed;
  /// What must be said in the end; nullptr: nothing of it came into the document.
  const char* said;
};

void noteOn(seen::Offers& o, const char* size, seen::Witnesses by) {
  o.features[0].size = size;
  o.features[0].sizeWitnesses = by;
  o.features[0].note = "DRILL";
}

seen::ReadingOffer& first(seen::Offers& o) {
  return o.readings[0];
}

/// The dimension to the hole as another figure lettered on it.
void say(seen::Offers& o, const char* text, seen::Witnesses by = kReady) {
  first(o).candidates = {lettered(text)};
  first(o).witnesses = by;
}

const Deceit kDeceits[] = {
    {"a dashed line", [](auto& o) { o.features.push_back(edgeAt(true, 0.8)); }, nullptr, nullptr},
    {"two dashed lines about a dimension's end",
     [](auto& o) {
       o.features.push_back(edgeAt(true, 1.19 - 0.0625));
       o.features.push_back(edgeAt(true, 1.19 + 0.0625));
     },
     nullptr, nullptr},
    {"a dashed line in line with a hole",
     [](auto& o) { o.features.push_back(edgeAt(true, 1.195)); }, nullptr, nullptr},
    {"the counter of an 8 in a note", [](auto& o) { o.features.push_back(holeAt(2.4, 1.7, 0.04)); },
     nullptr, nullptr},
    {"a 0 in line with a hole", [](auto& o) { o.features.push_back(faint(holeAt(2.4, 1, 0.04))); },
     nullptr, nullptr},
    {"a 0 of a figure, where two dimensions end",
     [](auto& o) {
       o.features.push_back(holeAt(1.19, 2, 0.04));
       o.readings.push_back(dimension(true, 0, 1.19, {}, {}));
       o.readings.back().figure = {109, -210, 20, 20};
     },
     nullptr, nullptr},
    {"a slot that is a fraction's bar",
     [](auto& o) {
       o.features.push_back(holeAt(0.6, 0.4, 0.02));
       o.features.back().kind = seen::OfferedFeature::slot;
     },
     nullptr, nullptr},
    {"holes in line that no note calls a row",
     [](auto& o) {
       o.features.push_back(rowAt(1.6, 2.5, 0.5, 4, ""));
       o.features.back().sizeWitnesses = {};
     },
     nullptr, nullptr},
    {"a row of which some holes have dimensions of their own",
     [](auto& o) {
       o.features.push_back(rowAt(1.6, 2.5, 0.5, 4, "1/8"));
       o.features.back().ready = false;
     },
     nullptr, nullptr},
    {"a chamfer or a blot at a corner, which no note gives a radius",
     [](auto& o) {
       o.features.push_back(roundAt({3.003, 2.002}, {2.75, 1.75}, ""));
     },
     nullptr, nullptr},
    {"a radius that may be another's",
     [](auto& o) {
       o.features.push_back(roundAt({3.003, 2.002}, {2.75, 1.75}, "R1/4"));
       o.features.back().sizeWitnesses = kUnsure;
     },
     nullptr, nullptr},
    {"a radius that the arc is not drawn to",
     [](auto& o) {
       o.features.push_back(roundAt({3.003, 2.002}, {2.75, 1.75}, "R1/2"));
       o.features.back().sizeWitnesses = kPlain;
     },
     nullptr, nullptr},
    {"one radius of two corners where three look the same",
     [](auto& o) {
       o.features.push_back(roundAt({3.003, 2.002}, {2.75, 1.75}, "R1/4"));
       o.features.back().count = 2;
       o.features.back().sizeWitnesses = kUnsure;
       o.features.push_back(roundAt({0.004, 2.002}, {0.25, 1.75}, ""));
       o.features.push_back(roundAt({0.004, 0.001}, {0.25, 0.25}, ""));
     },
     nullptr, nullptr},
    {"another line's figure", [](auto& o) { say(o, "1 5/8"); }, nullptr, nullptr},
    {"a misprint", [](auto& o) { say(o, "1 3/8", kPlain); }, nullptr, nullptr},
    {"a figure that may be two",
     [](auto& o) {
       say(o, "1 5/16", kUnsure);
       first(o).candidates.push_back(lettered("1 3/16"));
     },
     nullptr, nullptr},
    {"what does not close",
     [](auto& o) { o.readings.push_back(dimension(true, 1.19, 3, {lettered("1 27/32")})); },
     nullptr, nullptr},
    {"a note's size that may be another", [](auto& o) { noteOn(o, "5/16", kUnsure); }, nullptr,
     nullptr},
    {"a note's size that the circle is not drawn to", [](auto& o) { noteOn(o, "5/16", kPlain); },
     nullptr, nullptr},
    {"two holes of a note where three look the same",
     [](auto& o) {
       noteOn(o, "1/4", kReady);
       o.features[0].count = 2;
       o.features.push_back(holeAt(2.4, 1.7, 0.126));
       o.features.push_back(holeAt(2.4, 0.3, 0.124));
     },
     nullptr, nullptr},
    {"a ring whose note says another circle than is drawn",
     [](auto& o) {
       o.features.push_back(ringAt(2.2, 1, 0.4, "1"));
       o.features.back().pcdWitnesses = kPlain;
     },
     nullptr, nullptr},
    {"a ring that is turned by an angle lettered elsewhere",
     [](auto& o) {
       o.features.push_back(ringAt(2.2, 1, 0.4, "4/5"));
       o.features.back().firstAngle.reset();
     },
     nullptr, nullptr},
    {"a leader that ends at an outline, taken for a slanted side",
     [](auto& o) {
       o.features.push_back(sideBetween({3.003, 1.2}, {4.1, 1.9}));
     },
     nullptr, nullptr},
    // What somebody believes all the same.
    {"a slanted side that nothing says more of",
     [](auto& o) {
       o.features.push_back(sideBetween({2.5, 2.002}, {3.003, 1.75}));
     },
     "A", "B is a line that nothing places"},
    {"a curved side whose radius is not lettered",
     [](auto& o) {
       o.features.push_back(sideBetween({2.5, 2.002}, {3.003, 1.5}, 0.5, {3.003, 2.002}));
     },
     "A", "B: nothing says"},
    {"a dashed line taken for an edge", [](auto& o) { o.features.push_back(edgeAt(true, 0.8)); },
     "S x", "S: nothing says where it lies along X"},
    {"a counter taken for a hole", [](auto& o) { o.features.push_back(holeAt(2.4, 1.7)); }, "B",
     "B: nothing says where it lies along X"},
    {"a row whose spaces are not even, taken for one",
     [](auto& o) {
       o.features.push_back(rowAt(1.6, 2.5, 0.5, 4, "1/8"));
       o.readings.push_back(dimension(true, 1.6, 2.5, {lettered("29/32")}));
       o.readings.push_back(dimension(true, 0, 1.6, {lettered("1 19/32")}));
       o.readings.push_back(dimension(true, 1.6, 1.9, {lettered("5/16")}));
     },
     "", "29/32"},
    {"a hole without a size", [](auto&) {}, nullptr, "A: nothing says how large it is"},
    {"a dimension that is not offered", [](auto& o) { o.readings.erase(o.readings.begin()); }, "A",
     "A: nothing says where it lies along X"},
};

std::string doubtsOf(OffersOnDesk& on) {
  std::string all;
  for (const Doubt& doubt : on.desk.solution().doubts) {
    if (!doubt.accepted) all += doubtText(on.part(), on.desk.solution(), doubt) + "\n";
  }
  return all;
}

/// What the sound plate becomes, or less: nothing else may come of Enter.
void expectNothingFalse(const Part& part, const std::string& sizeNoted = {}) {
  for (const Feature& one : part.features) {
    EXPECT_TRUE(one.id == "L" || one.id == "R" || one.id == "F" || one.id == "K" || one.id == "A")
        << one.id;
    if (one.id == "A") {
      EXPECT_EQ(one.traced, (std::vector<std::string>{"1.190", "1.000"}));
      EXPECT_EQ(diameterOf(one).value_or(Lettered{}).text, sizeNoted);
    }
  }
  for (const Reading& one : part.readings) {
    const std::string& text = one.figure.text;
    EXPECT_TRUE(text == "1 3/16" || text == "3" || text == "1" || text == "2") << text;
    EXPECT_EQ(one.offered, "G S");
  }
}

TEST(OfferedDeceits, AHurriedHandTakesNothingFalse) {
  for (const Deceit& one : kDeceits) {
    SCOPED_TRACE(one.what);
    OffersOnDesk on;
    seen::Offers offers = OffersOnDesk::sound();
    one.change(offers);
    on.offer(offers);
    on.hurry(one.typed);
    const bool noted = offers.features[0].sizeWitnesses.ready();
    if (one.said == nullptr) expectNothingFalse(on.part(), noted ? offers.features[0].size : "");
    if (one.said != nullptr) {
      EXPECT_NE(doubtsOf(on).find(one.said), std::string::npos) << doubtsOf(on);
    }
  }
}

TEST(OfferedDeceits, TheSoundPlateIsTakenWhole) {
  OffersOnDesk on;
  on.offer(OffersOnDesk::sound());
  on.hurry();
  expectNothingFalse(on.part());
  EXPECT_EQ(on.part().features.size(), 5u);
  EXPECT_EQ(on.part().readings.size(), 4u);
  EXPECT_EQ(doubtsOf(on).find("nothing says where"), std::string::npos) << doubtsOf(on);
}

}  // namespace
}  // namespace inchwright::test
