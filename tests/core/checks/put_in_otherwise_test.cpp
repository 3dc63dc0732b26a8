#include "core/checks/put_in_otherwise.h"

#include <gtest/gtest.h>

#include "core/checks/drawn_holding.h"
#include "tests/core/checks/held_plate.h"

namespace inchwright::test {
namespace {

using How = PutInOtherwise::How;

/// 3 by 2, a stop on the left, the fixed jaw behind, zero at both; a hole at 1/2, 3/4.
HeldPlate atStop() {
  HeldPlate plate("3", "2", "1/2");
  plate.hole("A", "1/2", "3/4", "1/4");
  plate.setup.stop = Side::left;
  plate.setup.jaw = Side::back;
  for (const auto& [axis, at] : {std::pair{Axis::x, "L"}, {Axis::y, "K"}}) {
    ZeroAlong zero;
    zero.axis = axis;
    zero.at = at;
    plate.setup.zero.push_back(zero);
  }
  return plate;
}

void piece(HeldPlate& plate, const std::string& name, const std::string& x, const std::string& y) {
  StockPiece one;
  one.name = name;
  one.size[0] = lettered(x);
  one.size[1] = lettered(y);
  plate.setup.held.pieces.push_back(one);
}

std::vector<PutInOtherwise> putIn(const HeldPlate& plate) {
  const Solution solution = solved(plate.part);
  const auto work = workAt(plate.job, plate.part, solution, plate.setup);
  if (!work) {
    ADD_FAILURE() << work.error().text;
    return {};
  }
  return heldWork(*work).otherwise;
}

std::string rowOf(const PutInOtherwise& put) {
  return put.rows.at(0).id + " " + put.rows.at(0).x.text + " " + put.rows.at(0).y.text;
}

TEST(PutInOtherwise, CountsFromTheOtherEnds) {
  HeldPlate plate = atStop();
  piece(plate, "1", "3", "2");
  const auto all = putIn(plate);
  ASSERT_EQ(all.size(), 2u);
  EXPECT_EQ(all[0].how, How::endForEnd);
  EXPECT_EQ(all[0].atStop, Side::right);
  EXPECT_EQ(all[0].atJaw, Side::front);
  // 2 1/2 from the right end, 3/4 from the front one, which is at the fixed jaw.
  EXPECT_EQ(rowOf(all[0]), "A 2.5000 -0.7500");
  EXPECT_EQ(all[1].how, How::turnedOver);
  EXPECT_EQ(all[1].atStop, Side::left);
  EXPECT_EQ(rowOf(all[1]), "A 0.5000 -0.7500");
}

// What is left at the other end pushes every place away from the stop; pieces that leave the same
// share their rows, and those that don't clean up have none.
TEST(PutInOtherwise, MindsWhatEachPieceLeaves) {
  HeldPlate plate = atStop();
  piece(plate, "1", "3 1/16", "2");
  piece(plate, "2", "3 1/8", "2 1/32");
  piece(plate, "3", "3.0625", "2");
  piece(plate, "4", "2.99", "2");
  const auto all = putIn(plate);
  ASSERT_EQ(all.size(), 4u);
  EXPECT_EQ(all[0].pieces, (std::vector<std::string>{"1", "3"}));
  EXPECT_EQ(rowOf(all[0]), "A 2.5625 -0.7500");
  EXPECT_EQ(all[0].leftAtStop, inch("1/16"));
  EXPECT_EQ(all[1].pieces, std::vector<std::string>{"2"});
  EXPECT_EQ(rowOf(all[1]), "A 2.6250 -0.7815");
}

// With stock on the side at the stop, which the zero on the finished side counts in.
TEST(PutInOtherwise, KeepsTheStopWhereItIs) {
  HeldPlate plate = atStop();
  plate.setup.stock[static_cast<std::size_t>(Side::left)] = lettered("1/16");
  piece(plate, "1", "3 1/16", "2");
  const auto all = putIn(plate);
  ASSERT_EQ(all.size(), 2u);
  // The stop stands at −1/16; the finished right end lies against it now.
  EXPECT_EQ(rowOf(all[0]), "A 2.4375 -0.7500");
}

// However it is turned on the table, end for end twice is where it was, and the figures are those
// of a setup that says so by itself.
TEST(PutInOtherwise, AgreesWithASetupThatIsTurned) {
  HeldPlate plate = atStop();
  piece(plate, "1", "3", "2");
  const auto all = putIn(plate);
  HeldPlate turned = atStop();
  turned.setup.turn = 180;
  turned.setup.zero[0].at = "R";
  turned.setup.zero[1].at = "F";
  const Solution solution = solved(turned.part);
  const auto work = workAt(turned.job, turned.part, solution, turned.setup);
  ASSERT_TRUE(work);
  const auto x = work->coordinate(*work->along(Axis::x), *work->position("A", Axis::x));
  const auto y = work->coordinate(*work->along(Axis::y), *work->position("A", Axis::y));
  EXPECT_EQ("A " + x->text + " " + y->text, rowOf(all[0]));
}

// Half a coordinate is no row.
TEST(PutInOtherwise, LeavesOutWhatIsPlacedAlongOneAxisAlone) {
  HeldPlate plate = atStop();
  piece(plate, "1", "3", "2");
  for (const Axis axis : {Axis::x, Axis::y}) {
    HeldPlate loose = plate;
    loose.hole("B", "1", "1", "1/8");
    std::erase_if(loose.part.readings,
                  [&](const Reading& one) { return one.to == "B" && one.axis == axis; });
    for (const PutInOtherwise& put : putIn(loose)) {
      ASSERT_EQ(put.rows.size(), 1u);
      EXPECT_EQ(put.rows[0].id, "A");
    }
  }
}

TEST(PutInOtherwise, SaysNothingWithoutAStopOrPieces) {
  HeldPlate plate = atStop();
  EXPECT_TRUE(putIn(plate).empty());
  piece(plate, "1", "3", "2");
  plate.setup.stop.reset();
  EXPECT_TRUE(putIn(plate).empty());
}

}  // namespace
}  // namespace inchwright::test
