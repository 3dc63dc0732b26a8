#include "app/canvas/print_pointer.h"

#include <gtest/gtest.h>

namespace inchwright::app {
namespace {

using Kind = PointerDeed::Kind;

constexpr QPointF kHere(10, 10);

TEST(PrintPointer, AMoveWithNothingDownHovers) {
  PrintPointer pointer;
  const PointerDeed deed = pointer.move(kHere);
  EXPECT_EQ(deed.kind, Kind::hover);
  EXPECT_EQ(deed.at, kHere);
}

TEST(PrintPointer, APressThatStaysNearIsAClick) {
  for (const bool grasps : {false, true}) {
    PrintPointer pointer;
    pointer.press(kHere, Qt::LeftButton, grasps);
    EXPECT_EQ(pointer.move(kHere + QPointF(2, 3)).kind, Kind::nothing);
    const PointerDeed deed = pointer.release(kHere + QPointF(2, 3), Qt::LeftButton);
    EXPECT_EQ(deed.kind, Kind::click);
    EXPECT_EQ(deed.at, kHere + QPointF(2, 3));
  }
}

TEST(PrintPointer, WhatIsGraspedIsDraggedAndDropped) {
  PrintPointer pointer;
  pointer.press(kHere, Qt::LeftButton, true);
  const PointerDeed deed = pointer.move(kHere + QPointF(30, 0));
  EXPECT_EQ(deed.kind, Kind::drag);
  EXPECT_EQ(deed.at, kHere + QPointF(30, 0));
  // Back where it began it is a drag still.
  EXPECT_EQ(pointer.move(kHere).kind, Kind::drag);
  EXPECT_EQ(pointer.release(kHere, Qt::LeftButton).kind, Kind::drop);
  EXPECT_EQ(pointer.move(kHere).kind, Kind::hover);
}

TEST(PrintPointer, ThePaperGoesAlongByAllThatTheHandMoved) {
  for (const auto button : {Qt::LeftButton, Qt::MiddleButton}) {
    PrintPointer pointer;
    // The middle button moves the paper even where something lies.
    pointer.press(kHere, button, button == Qt::MiddleButton);
    QPointF moved;
    for (const QPointF far : {QPointF(20, 0), QPointF(35, 5), QPointF(40, -7)}) {
      const PointerDeed deed = pointer.move(kHere + far);
      EXPECT_EQ(deed.kind, Kind::pan);
      moved += deed.by;
    }
    EXPECT_EQ(moved, QPointF(40, -7));
    EXPECT_EQ(pointer.release(kHere + QPointF(40, -7), button).kind, Kind::nothing);
  }
}

TEST(PrintPointer, OtherButtonsMeanNothingHere) {
  PrintPointer pointer;
  pointer.press(kHere, Qt::RightButton, true);
  EXPECT_EQ(pointer.release(kHere, Qt::RightButton).kind, Kind::nothing);
}

TEST(PrintPointer, TwoFingersZoomAboutTheMiddleAndClickNothing) {
  PrintPointer pointer;
  const PrintMap map(100, QPointF(0, 0));
  pointer.press(kHere, Qt::LeftButton, false);
  const PointerDeed first = pointer.pinch({100, 100}, {200, 100}, map);
  EXPECT_EQ(first.kind, Kind::zoom);
  EXPECT_EQ(first.map, map);
  const PointerDeed wider = pointer.pinch({50, 120}, {250, 120}, first.map);
  EXPECT_DOUBLE_EQ(wider.map.scale(), 200);
  // What lay between the fingers lies there still.
  const QPointF middle = wider.map.toWidget(map.toInches({150, 100}));
  EXPECT_NEAR(middle.x(), 150, 1e-9);
  EXPECT_NEAR(middle.y(), 120, 1e-9);
  EXPECT_TRUE(pointer.pinches());
  EXPECT_EQ(pointer.release({250, 120}, Qt::LeftButton).kind, Kind::nothing);
  pointer.lift();
  EXPECT_FALSE(pointer.pinches());
}

TEST(PrintPointer, ASecondFingerDropsWhatTheFirstDrags) {
  PrintPointer pointer;
  pointer.press(kHere, Qt::LeftButton, true);
  ASSERT_EQ(pointer.move({60, 10}).kind, Kind::drag);
  EXPECT_EQ(pointer.pinch({60, 10}, {160, 10}, PrintMap()).kind, Kind::drop);
  EXPECT_EQ(pointer.pinch({50, 10}, {170, 10}, PrintMap()).kind, Kind::zoom);
}

}  // namespace
}  // namespace inchwright::app
