// An accepted doubt is of what was accepted: when a figure changes later, either it says word for
// word what it said then, or it stands again.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "core/document/document.h"
#include "core/measure/lettered.h"
#include "core/part/edit.h"
#include "core/say/doubt_words.h"
#include "core/solution/solution.h"
#include "tests/deceits/told/cases.h"

namespace inchwright::app {
namespace {

constexpr unsigned kSeed = 20'261'129;

/// Up to the suspects, which say what else may be wrong and not what is.
std::string saidOf(const Part& part, const Solution& solution, const Doubt& doubt) {
  const std::string text = doubtText(part, solution, doubt);
  return text.substr(0, text.find("; "));
}

/// How many doubts were accepted and still are.
std::ptrdiff_t standing(const Solution& solution) {
  return std::count_if(solution.doubts.begin(), solution.doubts.end(),
                       [](const Doubt& doubt) { return doubt.accepted; });
}

/// One figure of the part, of a reading or a hole's size, another.
Part oneFigureOther(const Part& part, std::mt19937& random) {
  static const std::vector<std::string> kFigures{"1/16", "7/16", "1 3/8", "2",    "33/32",
                                                 "1/3",  "4/8",  "0.251", "3 1/2"};
  const auto below = [&](std::size_t bound) { return random() % bound; };
  Part other = part;
  const Lettered figure = *readLength(kFigures[below(kFigures.size())]);
  if (!other.readings.empty() && below(4) != 0) {
    Reading& one = other.readings[below(other.readings.size())];
    if (one.kind != ReadingKind::angle) one.figure = figure;
    return other;
  }
  Feature& one = other.features[below(other.features.size())];
  if (Drilled* drilled = one.drilled()) drilled->diameter = figure;
  return other;
}

TEST(Accepted, StandsAgainWhenItIsAboutSomethingElse) {
  std::mt19937 random(kSeed);
  int accepted = 0, held = 0, again = 0, others = 0;
  for (const char* name : {"plate", "milled", "slanted", "front_plate", "click_work", "bracket",
                           "end_shake", "wheel_train"}) {
    const auto job = readDocument(soundDocument(name).dump());
    ASSERT_TRUE(job.ok()) << name;
    for (int round = 0; round < 60; ++round) {
      const Part& sound = job->parts[random() % job->parts.size()];
      const Part spoilt = oneFigureOther(sound, random);
      const auto solution = solve(spoilt);
      if (!solution.ok()) continue;
      std::vector<Doubt> open;
      for (const Doubt& doubt : solution->doubts) {
        if (doubt.holdsUp()) open.push_back(doubt);
      }
      if (open.empty()) continue;
      const Doubt& chosen = open[random() % open.size()];
      AcceptedDoubt one(chosen.key.text());
      one.about = chosen.about;
      const Part let = withAccepted(spoilt, one);
      ++accepted;
      const std::string said = saidOf(spoilt, *solution, chosen);
      // Under other names it is the same doubt; where readings contradict each other, those of
      // places named first are believed.
      const Feature& named = let.features[random() % let.features.size()];
      const auto renamed = renameFeature(let, named.id, "ZZ");
      if (renamed.ok() && solution->clashes.empty()) {
        const auto was = solve(let), now = solve(*renamed);
        ASSERT_TRUE(was.ok() && now.ok());
        EXPECT_EQ(standing(*now), standing(*was))
            << name << ": " << one.key << " of " << one.about << " with " << named.id << " renamed";
        ++others;
      }
      for (int change = 0; change < 8; ++change) {
        const Part later = change == 0 ? let : oneFigureOther(let, random);
        const auto now = solve(later);
        if (!now.ok()) continue;
        bool found = false;
        for (const Doubt& doubt : now->doubts) {
          if (doubt.key.text() != one.key) continue;
          found = true;
          ++(doubt.accepted ? held : again);
          if (!doubt.accepted) continue;
          ASSERT_EQ(saidOf(later, *now, doubt), said)
              << name << ": " << one.key << " " << one.about;
        }
        ASSERT_TRUE(found || change != 0) << one.key;
      }
    }
  }
  EXPECT_GT(accepted, 200);
  EXPECT_GT(others, 200);
  EXPECT_GT(held, 1000);
  EXPECT_GT(again, 20);
}

}  // namespace
}  // namespace inchwright::app
