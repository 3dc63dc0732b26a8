#include "core/sheet/tablet_page.h"

#include <gtest/gtest.h>

namespace inchwright {
namespace {

TabletSetup oneSetup() {
  TabletSetup setup;
  setup.part = "Plate";
  setup.setup = "1";
  setup.heading = "Plate, setup 1";
  setup.zero = "X0 at L · Y0 at F";
  setup.counts = "X counts up to the right";
  setup.steps = {{"Find zero", {"Touch the left side: set X -0.1000"}, "", {}, false},
                 {"Fit drill C", {}, "1/4", {{"A", "+0.3750", "+0.7500", "0.5315 deep"}}, false},
                 {"Measure", {}, "", {{"A", "+0.3750", "+0.7500", ""}}, true}};
  return setup;
}

std::size_t countOf(const std::string& text, const std::string& what) {
  std::size_t count = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) {
    ++count;
  }
  return count;
}

TEST(TabletPage, HoldsEverySetupAndStep) {
  const std::string page =
      tabletPage("Clock", "sheet 2", "29 November 2026", {oneSetup(), oneSetup()});
  EXPECT_EQ(countOf(page, "<section class=\"setup\""), 2u);
  EXPECT_EQ(countOf(page, "<article class=\"step\">"), 6u);
  EXPECT_NE(page.find("+0.3750"), std::string::npos);
  EXPECT_NE(page.find("<s>not 1/4</s>"), std::string::npos);
  EXPECT_NE(page.find("<title>Clock</title>"), std::string::npos);
  EXPECT_EQ(countOf(page, "data-found=\"size\""), 2u);
}

TEST(TabletPage, HasTheCutsOfTheLathe) {
  LatheWork work;
  work.part = "Arbor";
  work.setup = "1";
  work.step = *readStep("0.001", Unit::inch);
  work.carriageLetter = "Z";
  work.crossLetter = "X";
  const auto figure = [](const char* text) {
    return LatheFigure{text, readLength(text)->value, true};
  };
  LatheRow row;
  row.id = "B";
  row.length = figure("0.500");
  row.dia = figure("0.375");
  row.limits = SizeLimits{readLength(".3745")->value, readLength(".375")->value};
  work.rows = {row};
  Cut face, finish;
  face.of = {"R"};
  face.length = figure("0.000");
  finish.op = CutOp::finish;
  finish.of = {"B"};
  finish.length = row.length;
  finish.dia = row.dia;
  work.cuts = {face, finish};
  const TabletSetup setup = tabletSetup(work, Lathe{}, false, English::uk);
  ASSERT_EQ(setup.steps.size(), 3u);
  EXPECT_EQ(setup.steps[0].title, "Face R");
  EXPECT_EQ(setup.steps[1].rows[0],
            (TabletRow{"B", "0.500", "0.375", "measure Ø 0.3745 to 0.3750"}));
  EXPECT_TRUE(setup.steps[2].measures);
  const std::string page = tabletPage("", "", "today", {setup});
  EXPECT_NE(page.find("<b>Z</b> 0.500</span><span class=\"at\"><b>X</b> 0.375</span>"),
            std::string::npos);
  EXPECT_EQ(countOf(page, "data-found=\"size\""), 1u);
  EXPECT_EQ(countOf(page, "data-found=\"x\""), 0u);
}

TEST(TabletPage, TellsWhatWasMadeSoFar) {
  TabletSetup setup = oneSetup();
  setup.kit = {
      {"P", ".3131/.3135", "make it 0.3151 to 0.3155", "to suit A of <Plate>", true, false}};
  const std::string page = tabletPage("Clock", "", "today", {setup});
  EXPECT_NE(page.find("<li class=\"mind\"><b>P</b> <s>.3131/.3135</s> "
                      "<b>make it 0.3151 to 0.3155</b> to suit A of &lt;Plate&gt;</li>"),
            std::string::npos);
  EXPECT_EQ(tabletPage("Clock", "", "today", {oneSetup()}).find("Made so far"), std::string::npos);
}

TEST(TabletPage, FetchesNothing) {
  const std::string page = tabletPage("Clock", "", "today", {oneSetup()});
  for (const char* outside : {"http://", "https://", "src=", "@import", "url(", "fetch(", "XMLHttp",
                              "<link", "import "}) {
    EXPECT_EQ(page.find(outside), std::string::npos) << outside;
  }
  EXPECT_NE(page.find("default-src 'none'"), std::string::npos);
}

TEST(TabletPage, NamesOfADocumentStayText) {
  TabletSetup setup = oneSetup();
  setup.heading = "<script>alert(1)</script>";
  setup.steps[1].rows[0].place = "\" onclick=\"x";
  setup.steps[0].lines = {"</script><b>&amp;'\x01"};
  const std::string page = tabletPage("</title><img src=x>", "", "today", {setup});
  EXPECT_EQ(page.find("<script>alert"), std::string::npos);
  EXPECT_EQ(page.find("<img"), std::string::npos);
  EXPECT_EQ(page.find("\" onclick=\"x"), std::string::npos);
  EXPECT_NE(page.find("&lt;/script&gt;&lt;b&gt;&amp;amp;&#39; "), std::string::npos);
  EXPECT_EQ(countOf(page, "</script>"), 1u);
}

TEST(TabletPage, SaysDraftAndWhatToPutRight) {
  TabletSetup setup = oneSetup();
  setup.draft = true;
  setup.before = {"A: ream 1/4 runs into the parallel"};
  const std::string page = tabletPage("", "", "today", {setup});
  EXPECT_NE(page.find("DRAFT"), std::string::npos);
  EXPECT_NE(page.find("runs into the parallel"), std::string::npos);
  setup.draft = false;
  EXPECT_EQ(tabletPage("", "", "today", {setup}).find("DRAFT"), std::string::npos);
}

}  // namespace
}  // namespace inchwright
