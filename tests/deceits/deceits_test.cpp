// What could bring a wrong hole to the machine, each with the word that must be said of it. A new
// one is one line.
#include <gtest/gtest.h>

#include <string>

#include "core/say/doubt_words.h"
#include "tests/support/bare_ids.h"
#include "tests/support/part_text.h"

namespace inchwright {
namespace {

/// A part in short lines (`tests/support/part_text.h`), one behind the other with `;`.
struct Deceit {
  const char* lines;
  const char* said;
};

std::string allSaid(Part part) {
  const auto solution = solve(part);
  if (!solution) return solution.error().text;
  std::string all;
  for (const Doubt& doubt : solution->doubts) {
    if (!doubt.accepted) all += doubtText(part, *solution, doubt) + "\n";
  }
  return all;
}

Part partOf(std::string lines) {
  for (char& c : lines) {
    if (c == ';') c = '\n';
  }
  return test::partFrom(lines);
}

#define PLATE "edge L x left;edge R x right;edge F y front;edge K y back;p x L R 2;q y F K 1 1/2;"

constexpr Deceit kDeceits[] = {
    // Sides in the wrong order, or there twice.
    {"edge L x left;edge R x right;r1 x R L 2", "L and R lie the wrong way round along X, by 2"},
    {"edge F y front;edge K y back;r1 y K F 1 1/2", "lie the wrong way round along Y, by 1 1/2"},
    {"edge U z bottom;edge T z top;r1 z T U 1/4", "lie the wrong way round along Z, by 1/4"},
    {"edge L x left;edge R x right;r1 x L R 0", "lie the wrong way round"},
    {"edge L x left;edge M x left;r1 x L M 1/8", "L and M all say that they are one outer side"},
    {"edge T z top;edge V z top;edge W z top", "T, V and W all say"},
    // Outside the part.
    {PLATE "hole A 1/4;r1 x L A 2 1/2", "A lies outside the part: 1/2 beyond R along X"},
    {PLATE "hole A 1/4;r1 x A L 1/4", "A lies outside the part: 1/4 beyond L along X"},
    {PLATE "hole A 1/4;r1 y F A 1 5/8", "A lies outside the part: 1/8 beyond K along Y"},
    {PLATE "hole A 1/4;r1 y A F 1/64", "A lies outside the part: 1/64 beyond F along Y"},
    {PLATE "edge W x;r1 x L W 2 1/4", "W lies outside the part: 1/4 beyond R"},
    {PLATE "row D x 4 3/4;r1 x L D1 1/4", "D4 lies outside the part: 1/2 beyond R"},
    {PLATE "ring E 4 2.5 0;r1 x L E 1", "E1 lies outside the part: 1/4 beyond R"},
    {PLATE "ring E 4 2.5 0;r1 x L E 1", "E3 lies outside the part: 1/4 beyond L"},
    {PLATE "slot S x 1/4 1 1/2;r1 x L S 1 3/4", "S2 lies outside the part: 3/8 beyond R"},
    {PLATE "hole A 1/4;hole B 1/4;r1 x L B 1;midway x B R A", "A runs over the edge L by 1/8"},
    // Over an edge, or larger than the part.
    {PLATE "hole A 1/4;r1 x L A 1/16", "A runs over the edge L by 1/16"},
    {PLATE "hole A 1/4;r1 x A R 3/32", "A runs over the edge R by 1/32"},
    {PLATE "hole A 1/2;r1 y F A 3/16", "A runs over the edge F by 1/16"},
    {PLATE "hole A 1/2;r1 y A K 1/8", "A runs over the edge K by 1/8"},
    {PLATE "hole A 25;r1 x L A 1", "A is larger than the part along X, by 23"},
    {PLATE "hole A 2", "A is larger than the part along Y, by 1/2"},
    {PLATE "slot S x 1/2 1;r1 x L S 1/2;r2 y F S 1/8", "runs over the edge F by 1/8"},
    // Into one another.
    {PLATE "hole A 1/4;hole B 1/4;r1 x L A 1/2;r2 x L B 5/8;r3 y F A 1/2;r4 y F B 1/2",
     "A and B run into each other by 1/8"},
    {PLATE "hole A 1/4;hole B 1/4;r1 x L A 1/2;r2 x L B 1/2;r3 y F A 1/2;r4 y F B 1/2",
     "A and B run into each other by 1/4"},
    {PLATE "hole A 1/2;hole B 1;r1 x L A 1/2;r2 x A B 3/4;r3 y F A 3/4;in_line y A B;"
           "hole C 1/4;r4 x L C 1 1/2;in_line y A C",
     "B and C run into each other by 3/8"},
    // Millimetres on a print in inches.
    {PLATE "hole A 1/4;r1 x L A 12.7",
     "L to A says 12.7 on a print in inches; is it in millimetres?"},
    {PLATE "hole A 6.35", "A says 6.35 on a print in inches; is it in millimetres?"},
    {PLATE "hole A 1/4;r1 y F A 19.05", "F to A says 19.05 on a print in inches"},
    {PLATE "hole A 1/4;r1 diameter A 3.175", "the diameter of A says 3.175 on a print in inches"},
    // The tracing against a figure that nothing else checks.
    {PLATE "hole G 1/4;traced L 0;traced G 1.16 0.5;r1 x G L 1 5/32", "swap its ends?"},
    {PLATE "hole G 1/4;traced F 0;traced G 1.16 0.5;r1 y G F 1/2", "swap its ends?"},
    {"edge L x left;hole A 1/8;hole B 1/8;hole C 1/8;traced L 0;traced A .5 0;traced B 1 0;"
     "traced C .646 0;r1 x L A 1/2;r2 x L B 1;r3 x L C 1 5/8",
     "L to C says 1 5/8 and is traced at about 41/64"},
    {"edge L x left;hole A 1/8;hole B 1/8;hole C 1/8;traced L 0;traced A .5 0;traced B 1 0;"
     "traced C 2.01 0;r1 x L A 1/2;r2 x L B 1;r3 x L C 3/4",
     "L to C says 3/4 and is traced at about 2 1/64"},
    // Loops that miss, with swapped ends before any look-alike.
    {"edge L x left;edge R x right;hole A 1/8;r1 x L A 3/8;r2 x A R 1 1/2;r3 x L R 2",
     "makes 1 7/8, the print says 2 from L to R: 1/8 too long"},
    {"edge L x left;edge R x right;hole A 1/8;hole B 1/8;traced L 0;traced A .5 0;traced B 1 0;"
     "traced R 1.5;r1 x L A 1/2;r2 x B A 1/2;r3 x B R 1/2;r4 x L R 1 1/2",
     "1/2 from B to A may run from A to B"},
    {"edge L x left;r1 x L L 1", "1 is measured from L to itself"},
    {PLATE "hole A 1/4;r1 x L A 3/4;midway x A L R", "1/2 too long"},
    // Rounded decimals.
    {"edge L x left;hole A 1/8;hole B 1/8;r1 x L A .563;r2 x A B .563;r3 x L B 1.125",
     "rounded, each is a fraction; it closes when .563 from L to A is 9/16"},
    {"edge L x left;hole A 1/8;hole B 1/8;r1 x L A .401;r2 x A B .401;r3 x L B .803",
     "no fractions fit"},
    // Two figures for one thing.
    {PLATE "hole A 1/4;r1 diameter A 5/16", "the print says 5/16 for A, which is entered as 1/4"},
    {PLATE "hole A 1/4;r1 diameter A 4/8", "the print says 4/8 for A, which is entered as 1/4"},
    {PLATE "ring E 6 2 0;r1 pcd E 2 1/4", "the print says 2 1/4 for E, which is entered as 2"},
    {PLATE "hole A 1/4;r1 x L A 3/8;again r1 5/8", "L to A was read as 3/8 and then as 5/8"},
    // Odd figures, what is assumed, what nothing places.
    {PLATE "hole A 1/4;r1 x L A 1/3", "1/3 from L to A: "},
    {PLATE "hole r1 1/3", "r1: "},
    {PLATE "hole A 1/4", "A: nothing says where it lies along X"},
    {PLATE "hole A 1/4;hole B 1/4;in_line y A B assumed", "the print does not say so"},
    {PLATE "ring E 6 2 -;r1 x L E 1", "give the angle of the first hole of ring E"},
    {PLATE "ring E 6 - 0;r1 x L E 1", "give the PCD of ring E"},
    {PLATE "hole A 1/4;r1 x L A 3/8", "nothing checks "},
};

TEST(Deceits, AreTold) {
  for (const Deceit& one : kDeceits) {
    EXPECT_NE(allSaid(partOf(one.lines)).find(one.said), std::string::npos)
        << one.lines << "\nshould say: " << one.said << "\nsays: " << allSaid(partOf(one.lines));
    if (partOf(one.lines).feature("r1") != nullptr) continue;
    EXPECT_EQ(test::lineWithBareId(allSaid(partOf(one.lines))), "") << one.lines;
  }
}

TEST(Deceits, AHoleOnAFaceThatNoSetupHasUp) {
  Part part = partOf(PLATE "hole A 1/4 front");
  part.setups.emplace_back();
  EXPECT_NE(allSaid(part).find("A is on a face that no setup has up"), std::string::npos);
  part.setups.back().face = Face::front;
  EXPECT_EQ(allSaid(part).find("no setup has up"), std::string::npos);
}

// A clash accepted at 1/16 must not hide one of 7/16.
TEST(Deceits, AcceptingIsOfWhatWasAccepted) {
  const std::string lines = "edge L x left;edge R x right;r1 x L R 2;r2 x L R ";
  Part part = partOf(lines + "2 1/16");
  const Solution solution = *solve(part);
  ASSERT_FALSE(solution.doubts.empty());
  AcceptedDoubt accepted(solution.doubts[0].key.text());
  accepted.about = solution.doubts[0].about;
  part.accepted = {accepted};
  EXPECT_TRUE(solve(part)->doubts[0].accepted);
  Part other = partOf(lines + "2 7/16");
  other.accepted = {accepted};
  EXPECT_FALSE(solve(other)->doubts[0].accepted);
  EXPECT_TRUE(solve(other)->isDraft());
}

}  // namespace
}  // namespace inchwright
