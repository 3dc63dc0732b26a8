#include "core/plan/machine_axes.h"

#include <gtest/gtest.h>

#include <string>

#include "tests/core/plan/plates.h"

namespace inchwright {
namespace {

using Vector = std::array<int, 3>;

Vector vectorOf(SignedAxis axis) {
  Vector v{0, 0, 0};
  v[static_cast<std::size_t>(axis.axis)] = axis.sign;
  return v;
}

Vector cross(const Vector& a, const Vector& b) {
  return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

int dot(const Vector& a, const Vector& b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

Vector outwardOf(Side side) {
  Vector v{0, 0, 0};
  v[static_cast<std::size_t>(axisAcross(side))] = outward(side);
  return v;
}

struct AxesRow {
  Face face;
  int turn;
  const char* x;
  const char* y;
};

std::string written(SignedAxis axis) {
  return (axis.sign > 0 ? "+" : "-") + std::string(nameOf(axis.axis));
}

// Written out by hand from the document's contract: the unturned faces as they stand there, each
// quarter turn anticlockwise taking what was right to away, and what was away to the left.
constexpr AxesRow kByHand[] = {
    {Face::top, 0, "+x", "+y"},      {Face::top, 90, "-y", "+x"},
    {Face::top, 180, "-x", "-y"},    {Face::top, 270, "+y", "-x"},
    {Face::bottom, 0, "+x", "-y"},   {Face::bottom, 90, "+y", "+x"},
    {Face::bottom, 180, "-x", "+y"}, {Face::bottom, 270, "-y", "-x"},
    {Face::front, 0, "+x", "+z"},    {Face::front, 90, "-z", "+x"},
    {Face::front, 180, "-x", "-z"},  {Face::front, 270, "+z", "-x"},
    {Face::back, 0, "-x", "+z"},     {Face::back, 90, "-z", "-x"},
    {Face::back, 180, "+x", "-z"},   {Face::back, 270, "+z", "+x"},
    {Face::left, 0, "-y", "+z"},     {Face::left, 90, "-z", "-y"},
    {Face::left, 180, "+y", "-z"},   {Face::left, 270, "+z", "+y"},
    {Face::right, 0, "+y", "+z"},    {Face::right, 90, "-z", "+y"},
    {Face::right, 180, "-y", "-z"},  {Face::right, 270, "+z", "-y"},
};

TEST(MachineAxes, AreAsWrittenByHand) {
  for (const AxesRow& row : kByHand) {
    const MachineAxes axes = machineAxes(row.face, row.turn);
    EXPECT_EQ(written(axes.x), row.x) << nameOf(row.face) << ' ' << row.turn;
    EXPECT_EQ(written(axes.y), row.y) << nameOf(row.face) << ' ' << row.turn;
  }
}

TEST(MachineAxes, NeverMirrorThePart) {
  for (const Face face : kSides) {
    for (int turn = 0; turn < 360; turn += 90) {
      const MachineAxes axes = machineAxes(face, turn);
      const Vector x = vectorOf(axes.x), y = vectorOf(axes.y), z = vectorOf(axes.z);
      EXPECT_EQ(dot(cross(x, y), z), 1) << nameOf(face) << ' ' << turn;
      EXPECT_EQ(z, outwardOf(face)) << nameOf(face) << ' ' << turn << ": the face is not up";
    }
  }
}

// The model: a corner of the part is turned with whole-number cosines, apart from the code's way
// of renaming axes.
TEST(MachineAxes, TurnLikeARotationMatrix) {
  constexpr int kCos[] = {1, 0, -1, 0}, kSin[] = {0, 1, 0, -1};
  const Vector corner{3, 5, 7};
  for (const Face face : kSides) {
    const MachineAxes flat = machineAxes(face, 0);
    const int x = dot(vectorOf(flat.x), corner), y = dot(vectorOf(flat.y), corner);
    for (int quarter = 0; quarter < 4; ++quarter) {
      const MachineAxes turned = machineAxes(face, 90 * quarter);
      EXPECT_EQ(dot(vectorOf(turned.x), corner), kCos[quarter] * x - kSin[quarter] * y);
      EXPECT_EQ(dot(vectorOf(turned.y), corner), kSin[quarter] * x + kCos[quarter] * y);
      EXPECT_EQ(turned.z, flat.z);
    }
  }
}

TEST(MachineAxes, TakeAnyWholeTurn) {
  EXPECT_EQ(machineAxes(Face::top, 360), machineAxes(Face::top, 0));
  EXPECT_EQ(machineAxes(Face::left, -90), machineAxes(Face::left, 270));
  EXPECT_EQ(machineAxes(Face::front, 450), machineAxes(Face::front, 90));
}

TEST(TableSides, FollowTheTurn) {
  const auto side = [](Side of, Face up, int turn) {
    const auto found = tableSideOf(of, machineAxes(up, turn));
    return found ? std::string(nameOf(*found)) : std::string("none");
  };
  EXPECT_EQ(side(Side::left, Face::top, 0), "left");
  EXPECT_EQ(side(Side::left, Face::top, 90), "near");
  EXPECT_EQ(side(Side::left, Face::top, 180), "right");
  EXPECT_EQ(side(Side::left, Face::top, 270), "far");
  EXPECT_EQ(side(Side::back, Face::top, 0), "far");
  EXPECT_EQ(side(Side::back, Face::bottom, 0), "near");
  EXPECT_EQ(side(Side::top, Face::front, 0), "far");
  EXPECT_EQ(side(Side::right, Face::back, 0), "left");
  EXPECT_EQ(side(Side::back, Face::left, 0), "left");
  EXPECT_EQ(side(Side::top, Face::top, 0), "none");
  EXPECT_EQ(side(Side::bottom, Face::top, 90), "none");
}

TEST(TableSides, AreFourDifferentOnesForEverySetup) {
  for (const Face face : kSides) {
    for (int turn = 0; turn < 360; turn += 90) {
      int seen = 0;
      for (const Side side : kSides) {
        if (const auto at = tableSideOf(side, machineAxes(face, turn)))
          seen |= 1 << static_cast<int>(*at);
      }
      EXPECT_EQ(seen, 15) << nameOf(face) << ' ' << turn;
    }
  }
}

}  // namespace
}  // namespace inchwright
