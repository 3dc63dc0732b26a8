// Pages of a kit: what came out wrong, mates, turned stock and parts that look alike.
#include <gtest/gtest.h>

#include "core/sheet/job_pages.h"
#include "core/sheet/kit_block.h"
#include "core/sheet/lathe_sheet.h"
#include "tests/core/kit/kit_job.h"

namespace inchwright {
namespace {

constexpr const char* kWentOver =
    R"({"place": "A", "setup": "1", "size": ".2518", "with": {"name": "gauge", "error": ".0003"}})";

struct KitPaper {
  KitJob kit;
  std::vector<SetupTable> tables;
  JobOnPaper paper;

  explicit KitPaper(const std::string& made = {}, std::optional<WayOut> way = {})
      : kit(made), paper{kit.job, {}, {}} {
    if (way) {
      kit.job.parts[0].mended.push_back({"A", {}, *way, {}, "it is not turned yet", {}, {}});
    }
    tables.reserve(kit.job.parts.size());
    for (std::size_t i = 0; i < kit.job.parts.size(); ++i) {
      const Part& part = kit.job.parts[i];
      PartInJob in{part, kit.solutions[i], {}, {}};
      for (const Setup& setup : part.setups) {
        if (setup.chucked) {
          in.onLathe.push_back(setup.name);
          continue;
        }
        tables.push_back(makeTable(kit.job, part, kit.solutions[i], setup).value());
        in.setups.push_back(
            setupInJob(kit.job, part, kit.solutions[i], setup, tables.back(), {}).value());
      }
      paper.parts.push_back(in);
    }
  }

  std::string plateSheet() const {
    return textOn(
        tapeUpSheet(kit.job, kit.job.parts[0], kit.solutions[0], tables[0], paper.options));
  }
  std::string arborSheet() const {
    const Part& arbor = kit.job.parts[1];
    const auto work = latheWorkToSuit(kit.job, arbor, kit.solutions[1], arbor.setups[0]);
    return textOn(latheSheet(kit.job, arbor, kit.solutions[1], *work, Lathe{}, {}));
  }

  /// All words one after another, as they are set.
  static std::string textOn(const std::vector<Page>& pages) {
    std::string all;
    for (const Page& page : pages) {
      for (const DrawItem& item : page.items) {
        if (const auto* text = std::get_if<TextItem>(&item)) all += text->text + " ";
      }
    }
    return all;
  }
};

bool says(const std::string& all, const char* words) {
  return all.find(words) != std::string::npos;
}

TEST(KitPages, BothSheetsNameTheMate) {
  const KitPaper kit;
  EXPECT_TRUE(says(kit.plateSheet(), "takes D of Arbor (arbor in A)")) << kit.plateSheet();
  EXPECT_TRUE(says(kit.arborSheet(), "fits A of Plate (arbor in A)")) << kit.arborSheet();
  EXPECT_FALSE(says(kit.arborSheet(), "make it"));
}

TEST(KitPages, AHoleThatWentOverIsToldOnBothSheets) {
  const KitPaper kit(kWentOver);
  EXPECT_TRUE(says(kit.plateSheet(), "No way out is chosen yet")) << kit.plateSheet();
  EXPECT_TRUE(says(kit.arborSheet(), "make it 0.2505 to 0.2508")) << kit.arborSheet();
}

TEST(KitPages, TheSheetsFollowTheWayOutThatWasChosen) {
  const KitPaper kit(kWentOver, WayOut::shaft);
  for (const char* words : {"make it 0.2505 to 0.2508", "Why: it is not turned yet", ".2490 +.0003",
                            "to suit its mate, not the print's"}) {
    EXPECT_TRUE(says(kit.arborSheet(), words)) << words << kit.arborSheet();
  }
  EXPECT_TRUE(says(kit.plateSheet(), "made to suit this hole as found")) << kit.plateSheet();
  const KitPaper bush(kWentOver, WayOut::bush);
  EXPECT_TRUE(says(bush.plateSheet(), "bush: bore true at")) << bush.plateSheet();
  EXPECT_FALSE(says(bush.arborSheet(), "make it"));
}

// Measuring what came out well leaves the sheet in hand as it is; a way out makes a new one.
TEST(KitPages, TheNumberFollowsWhatIsToBeDone) {
  const auto number = [](const KitPaper& kit) { return kit.paper.parts[0].setups[0].number; };
  const KitPaper none, over(kWentOver), suited(kWentOver, WayOut::shaft),
      well(R"({"place": "C", "setup": "1", "x": "0.5000", "y": "0.3750"})");
  EXPECT_EQ(number(none), number(well));
  EXPECT_NE(number(none), number(over));
  EXPECT_NE(number(over), number(suited));
}

TEST(KitPages, CoverNeverCallsAPartFineWithAHoleThatWentOver) {
  const auto cover = [](const KitPaper& kit) { return KitPaper::textOn(coverPages(kit.paper)); };
  const std::string over = cover(KitPaper(kWentOver));
  EXPECT_TRUE(says(over, "over size. No way out is chosen yet")) << over;
  EXPECT_TRUE(says(over, "May not go together"));
  EXPECT_TRUE(says(over, "Mate arbor in A: "));
  const std::string suited = cover(KitPaper(kWentOver, WayOut::shaft));
  EXPECT_FALSE(says(suited, "Mate arbor in A: ")) << suited;
  EXPECT_TRUE(says(suited, "make it 0.2505 to 0.2508"));
}

TEST(KitPages, StockOfATurnedPartIsRound) {
  KitPaper kit;
  kit.kit.job.parts[1].setups[0].chucked->partOff.emplace();
  kit.kit.job.parts[1].setups[0].chucked->partOff->width = readLength("3/32").value();
  const JobOnPaper arborAlone{kit.kit.job, {kit.paper.parts[1]}, {}};
  const std::string all = KitPaper::textOn(stockPages(arborAlone));
  EXPECT_TRUE(says(all, "1 piece of 1 in and the parting tool's 3/32 in each: 1 3/32 in")) << all;
  EXPECT_TRUE(says(all, "to hold by in the chuck")) << all;
  EXPECT_FALSE(says(all, "vice"));
  EXPECT_FALSE(says(all, "not placed"));
}

// What is in the way can't be turned round without the part's size: said, not dropped in silence.
TEST(KitPages, TheOtherHandSaysThatClampsAreNotCarriedOver) {
  KitPaper kit;
  Job& job = kit.kit.job;
  job.parts[0].setups[0].held.clamps.emplace_back();
  Part other = mirrored(job.parts[0], Axis::x);
  other.name = "Left plate";
  other.opposite = OppositeOf{"Plate", Axis::x};
  const auto solved = solve(other);
  const auto textOf = [&] {
    const auto table = makeTable(job, other, *solved, other.setups[0]);
    return KitPaper::textOn(tapeUpSheet(job, other, *solved, *table, {}));
  };
  EXPECT_TRUE(says(textOf(), "are not carried over")) << textOf();
  other.setups[0].held.clamps.emplace_back();
  EXPECT_FALSE(says(textOf(), "are not carried over"));
  other.setups[0].held = Holding{};
  job.parts[0].setups[0].held = Holding{};
  EXPECT_FALSE(says(textOf(), "are not carried over"));
}

TEST(KitPages, PartsThatLookAlikeAreDrawnOverEachOther) {
  KitPaper kit;
  const std::string none = KitPaper::textOn(*differencePages(kit.paper));
  EXPECT_TRUE(says(none, "No two parts of the job are so alike")) << none;
  Part twin = kit.kit.job.parts[0];
  twin.name = "Other plate";
  twin.features[5].drilled()->diameter = readLength("5/16").value();
  const auto solved = solve(twin);
  PartInJob in{twin, *solved, {}, {}};
  const auto table = makeTable(kit.kit.job, twin, *solved, twin.setups[0]);
  in.setups.push_back(*setupInJob(kit.kit.job, twin, *solved, twin.setups[0], *table, {}));
  kit.paper.parts.push_back(in);
  const std::string all = KitPaper::textOn(*differencePages(kit.paper));
  EXPECT_TRUE(says(all, "Full lines: Plate. Dashed: Other plate.")) << all;
  EXPECT_TRUE(says(all, "diameter .250 +.001 -.000 in Plate, 5/16 in Other plate")) << all;
}

TEST(KitSheet, RowsFollowTheWayOutThatWasChosen) {
  EXPECT_NE(KitPaper().plateSheet().find("REAM 1/4"), std::string::npos);
  const std::string next = KitPaper(kWentOver, WayOut::nextSize).plateSheet();
  EXPECT_NE(next.find("REAM 17/64"), std::string::npos) << next;
  const std::string bushed = KitPaper(kWentOver, WayOut::bush).plateSheet();
  EXPECT_NE(bushed.find("PRESS"), std::string::npos) << bushed;
}

}  // namespace
}  // namespace inchwright
