#include "core/turned/lathe_formulas.h"

#include <cmath>
#include <numbers>

namespace inchwright {
namespace {

constexpr double kDegree = std::numbers::pi / 180;
const Error kBeyond{ErrorCode::outOfRange, "the figures are too large to work with"};

}  // namespace

double taperOfAngle(double includedDegrees) {
  return 2 * std::tan(includedDegrees * kDegree / 2);
}

double angleOfTaper(double growth) {
  return 2 * std::atan(growth / 2) / kDegree;
}

Result<Rational> tailstockSetOver(Length large, Length small, Length taperLength,
                                  Length workLength) {
  if (taperLength.ticks() <= 0 || workLength.ticks() <= 0) {
    return Error{ErrorCode::badRequest, "a taper and its work have a length above 0"};
  }
  const auto grows = large.minus(small);
  const auto half = grows ? Rational::of(grows->ticks(), 2) : std::nullopt;
  const auto share = Rational::of(workLength.ticks(), taperLength.ticks());
  const auto over = half ? half->times(*share) : std::nullopt;
  if (!over) return kBeyond;
  return *over;
}

Result<Rational> threadsPerInchOf(const std::vector<WheelPair>& train, Rational leadScrew) {
  Rational threads = leadScrew;
  for (const WheelPair& pair : train) {
    if (pair.driver <= 0 || pair.driven <= 0) {
      return Error{ErrorCode::badRequest, "a change wheel has at least one tooth"};
    }
    const auto next = threads.times(*Rational::of(pair.driven, pair.driver));
    if (!next) return kBeyond;
    threads = *next;
  }
  return threads;
}

Result<Length> threeJawPacking(Length throwBy, Length radius) {
  const double e = static_cast<double>(throwBy.ticks());
  const double r = static_cast<double>(radius.ticks());
  const double under = 4 * r * r - 3 * e * e;
  if (throwBy.ticks() <= 0 || radius.ticks() <= 0 || under < 0) {
    return Error{ErrorCode::badRequest,
                 "no packing under one jaw throws the work so far: at most 1.1547 of its radius"};
  }
  return Length::ticks(std::llround(1.5 * e - r + std::sqrt(under) / 2));
}

}  // namespace inchwright
