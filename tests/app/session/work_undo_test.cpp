// Each kind of edit the hands make is one step that undo takes back to the byte and redo does
// again; a refused one leaves everything as it was.

#include <QStringList>
#include <functional>

#include "app/session/picture_edits.h"
#include "core/document/document.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class WorkUndo : public PlateOnDesk {
 protected:
  WorkUndo() {
    QObject::connect(&desk, &Desk::refused, &desk, [this](const QString& why) { refused << why; });
  }
  void SetUp() override {
    PlateOnDesk::SetUp();
    work.look();
    Job job = jobOfPlate(
        "edge L left\nedge R right\nedge F front\nedge K back\nhole A 1/4\nhole B 1/4\n"
        "L A 3/8\nA B 1 3/16\nL R 2\n");
    job = *layPicture(job, 0, Face::top, "print", "bytes");
    const Lettered none = *readLength("0"), one = *readLength("1");
    put(*setPicturePoints(job, "print", {{0, 0, none, none}, {100, 0, one, none}}));
  }
  void click(double x, double y, const char* place = "") {
    work.point({QPointF(x, y), place, {}, false, 0.03});
  }
  void enter(const char* text) { EXPECT_TRUE(work.enter(text)) << text; }

  QStringList refused;
};

TEST_F(WorkUndo, EachEditIsOneStepBackAndForth) {
  struct Case {
    const char* title;  ///< as the menu of undo says it
    std::function<void()> edit;
  };
  const auto chosen = [this](Selection what, const char* text) {
    work.look();
    desk.select(std::move(what));
    enter(text);
  };
  const Case cases[] = {
      {"Trace hole C",
       [&] {
         work.trace(FeatureKind::hole);
         click(1, 1);
         enter("1/8 drill");
       }},
      {"Trace hole C to D",
       [&] {
         work.trace(FeatureKind::hole);
         click(1, 1);
         click(1.5, 1);
         enter("1/8 drill");
       }},
      {"Trace row of holes C",
       [&] {
         work.trace(FeatureKind::row);
         click(0.2, 1);
         click(1.4, 1);
         enter("3 holes 1/8");
       }},
      {"Trace line C",
       [&] {
         work.trace(FeatureKind::line);
         click(0, 1);
         click(1, 2);
         enter("");
       }},
      {"Trace arc C",
       [&] {
         work.trace(FeatureKind::arc);
         click(1, 0);
         click(0, 1);
         click(-1, 0);
         enter("C");
       }},
      {"Trace point C",
       [&] {
         work.trace(FeatureKind::point);
         click(0.5, 1);
         enter("");
       }},
      {"Read 5/8 from A to R",
       [&] {
         work.read();
         click(0, 0, "A");
         click(0, 0, "R");
         enter("5/8");
       }},
      {"Read L to A again",
       [&] {
         work.reread();
         enter("3/8");
       }},
      {"Zero at A",
       [&] {
         work.zero();
         click(0, 0, "A");
         enter("");
       }},
      {"Place the view of a face",
       [&] {
         work.turnPicture();
         click(0.5, 0.5);
       }},
      {nullptr,
       [&] {
         work.relate(UnderstandingKind::inLine);
         enter("A B");
       }},
      {nullptr,
       [&] {
         chosen({{"A"}, {}}, "3/16 ream");
       }},
      {nullptr,
       [&] {
         chosen({{"A"}, {}}, "Z9");
       }},
      {nullptr,
       [&] {
         chosen({{}, {desk.part().readings[0].id}}, "7/16");
       }},
      {nullptr,
       [&] {
         work.look();
         enter("hole Q 1/2");
       }},
      {nullptr,
       [&] {
         work.look();
         enter("delete B");
       }},
      {nullptr,
       [&] {
         work.look();
         enter("stock left 1/16");
       }},
      {nullptr,
       [&] {
         work.look();
         enter("rename A W");
       }},
  };
  for (std::size_t i = 0; i < std::size(cases); ++i) {
    SCOPED_TRACE(i);
    SetUp();
    const std::string before = writeDocument(desk.job());
    cases[i].edit();
    const std::string after = writeDocument(desk.job());
    EXPECT_NE(after, before) << refused.join(' ').toStdString();
    ASSERT_TRUE(desk.canUndo());
    if (cases[i].title != nullptr) {
      EXPECT_EQ(desk.undoTitle().toStdString(), cases[i].title);
    }
    EXPECT_FALSE(desk.undoTitle().isEmpty());
    const QString title = desk.undoTitle();
    desk.undo();
    EXPECT_FALSE(desk.canUndo());
    EXPECT_EQ(writeDocument(desk.job()), before);
    EXPECT_EQ(desk.redoTitle(), title);
    desk.redo();
    EXPECT_EQ(writeDocument(desk.job()), after);
  }
}

TEST_F(WorkUndo, WhatIsRefusedLeavesAllAsItWas) {
  struct Case {
    std::function<void()> begin;
    std::vector<const char*> lines;
  };
  const Case cases[] = {
      {[&] { work.look(); },
       {"hole A 1/4", "L A three", "rename A B", "delete Q", "L Q 1", "hole 1/4 bad",
        "in line x A"}},
      {[&] {
         work.trace(FeatureKind::hole);
         click(1, 1);
       },
       {"A 1/4", "1/4 bad", "no such thing"}},
      {[&] {
         work.trace(FeatureKind::hole);
         click(1, 1);
         click(1.5, 1);
       },
       {"Q 1/4", "edge S x"}},
      {[&] {
         work.trace(FeatureKind::edge);
         click(1, 1);
       },
       {"S sideways", "L left"}},
      {[&] {
         work.read();
         click(0, 0, "L");
       },
       {"Q 1/4", "A 1/x", "L 3/8"}},
      {[&] {
         work.relate(UnderstandingKind::midway);
         click(0, 0, "A");
       },
       {"", "Q"}},
      {[&] { work.zero(); }, {"", "Q"}},
      {[&] {
         work.squareUp();
         click(1, 1);
       },
       {"x", "1"}},
      {[&] { work.turnPicture(); }, {"", "no such thing"}},
      {[&] { work.accept({AcceptedDoubt("none")}, "it"); }, {"", "because"}},
  };
  for (const Case& one : cases) {
    for (const char* line : one.lines) {
      SCOPED_TRACE(line);
      SetUp();
      one.begin();
      desk.select({{"B"}, {}});
      if (work.doing() == Doing::looking) desk.select({{"A", "B"}, {}});
      const Job before = desk.job();
      const Selection selection = desk.selection();
      const auto doing = work.doing();
      const auto chosen = work.chosen();
      const auto pending = work.pending();
      refused.clear();
      EXPECT_FALSE(work.enter(line));
      EXPECT_EQ(refused.size(), 1) << "the strip says why";
      EXPECT_EQ(desk.job(), before);
      EXPECT_EQ(desk.selection(), selection);
      EXPECT_EQ(work.doing(), doing);
      EXPECT_EQ(work.chosen(), chosen);
      EXPECT_EQ(work.pending(), pending);
      EXPECT_FALSE(desk.canUndo());
    }
  }
}

// A drag that was under way is a step of its own, whatever the hands do next.
TEST_F(WorkUndo, WhatTheHandsDoNeverJoinsADrag) {
  const std::pair<const char*, std::function<void()>> cases[] = {
      {"typed", [&] { enter("hole Q 1/2"); }},
      {"turned",
       [&] {
         desk.chooseFace(Face::top);
         work.turnPicture();
         click(0.5, 0.5);
       }},
      {"kit", [&] { enter("other hand of Plate across x called Left plate"); }}};
  for (const auto& [name, edit] : cases) {
    SCOPED_TRACE(name);
    SetUp();
    const Job before = desk.job();
    for (const char* x : {"0.400", "0.450"}) {
      Part moved = desk.part();
      moved.features[4].traced = {x, "0.500"};
      ASSERT_TRUE(desk.applyPart(moved, "Move A", "move A"));
    }
    const Job dragged = desk.job();
    edit();
    EXPECT_NE(desk.job(), dragged);
    // And what is dragged afterwards joins neither.
    const Job edited = desk.job();
    Part moved = desk.part();
    moved.features[4].traced = {"0.475", "0.500"};
    ASSERT_TRUE(desk.applyPart(moved, "Move A", "move A"));
    for (const Job* each : {&edited, &dragged, &before}) {
      desk.undo();
      EXPECT_EQ(desk.job(), *each);
    }
    EXPECT_FALSE(desk.canUndo());
  }
}

}  // namespace
}  // namespace inchwright::app
