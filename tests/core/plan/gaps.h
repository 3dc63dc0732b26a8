#pragma once

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

#include "core/plan/gap.h"
#include "tests/support/part_text.h"
#include "tests/support/ticks.h"

namespace inchwright::gaps {

inline Lettered lettered(const std::string& text) {
  const auto read = readLength(text);
  EXPECT_TRUE(read.ok()) << text;
  return *read;
}

inline GapMember distance(const std::string& part, Axis axis, const Id& from, const Id& to,
                          int sign) {
  GapMember member;
  member.part = part;
  member.axis = axis;
  member.from = from;
  member.to = to;
  member.sign = sign;
  return member;
}

inline GapMember length(const std::string& text, int sign, const std::string& part = "") {
  GapMember member;
  member.length = lettered(text);
  member.sign = sign;
  member.part = part;
  return member;
}

inline GapMember fitted(const std::string& fit, const std::string& size) {
  GapMember member;
  member.fit = fit;
  member.size = lettered(size);
  return member;
}

inline GapMember measured(const std::string& hole, const std::string& shaft) {
  GapMember member;
  member.hole = lettered(hole);
  member.shaft = lettered(shaft);
  return member;
}

inline GapMember screwed(const std::string& screw, const std::string& fit) {
  GapMember member;
  member.screw = screw;
  member.fit = fit;
  return member;
}

inline Gap gapOf(std::vector<GapMember> members) {
  Gap gap;
  gap.name = "play";
  gap.members = std::move(members);
  return gap;
}

// A frame 2 in wide inside, and an arbor of 1 31/32 over its shoulders in two steps.
inline Job frameAndArbor() {
  Job job;
  Part frame = test::partFrom(R"(
    edge L x left
    edge P x
    edge Q x
    edge R x right
    r1 x L P 1/8
    r2 x P Q 2.000 +.004 -.000
    r3 x Q R 1/8
  )");
  frame.name = "Frame";
  Part arbor = test::partFrom(R"(
    edge S x left
    edge M x
    edge E x right
    r1 x S M 1.000 ±.002
    r2 x M E .968 ±.001
  )");
  arbor.name = "Arbor";
  arbor.general.fractions = lettered("1/128");
  job.parts = {frame, arbor};
  return job;
}

}  // namespace inchwright::gaps
