#pragma once

#include <ceres/ceres.h>

#include <cmath>
#include <memory>
#include <numbers>
#include <vector>

#include "tests/support/random_placing.h"

namespace inchwright::test {

/// A random placing put to Ceres Solver: the same equations with derivatives by hand, from the
/// same traced places.
class CeresPlacing {
 public:
  explicit CeresPlacing(const RandomPlacing& placing) : placing_(placing) {
    at_.resize(placing.places.size());
    start();
    for (const RandomPlacing::Reading& reading : placing.readings) {
      ceres::CostFunction* cost = reading.isAngle
                                      ? static_cast<ceres::CostFunction*>(new Ray(reading.value))
                                      : new Distance(reading.value);
      problem_.AddResidualBlock(cost, nullptr, at_[reading.from].data(), at_[reading.to].data());
    }
    for (std::size_t i = 0; i < at_.size(); ++i) {
      if (placing.places[i].isFixed && problem_.HasParameterBlock(at_[i].data())) {
        problem_.SetParameterBlockConstant(at_[i].data());
      }
    }
    options_.linear_solver_type =
        placing.places.size() < 100 ? ceres::DENSE_NORMAL_CHOLESKY : ceres::SPARSE_NORMAL_CHOLESKY;
    options_.logging_type = ceres::SILENT;
    // To the tick, as ours.
    options_.function_tolerance = 1e-24;
    options_.gradient_tolerance = 1e-13;
    options_.parameter_tolerance = 1e-14;
  }

  void start() {
    for (std::size_t i = 0; i < at_.size(); ++i) {
      at_[i] = {placing_.places[i].traced.x, placing_.places[i].traced.y};
    }
  }

  /// The greatest residual, in inches.
  double solve() {
    ceres::Solver::Summary summary;
    ceres::Solve(options_, &problem_, &summary);
    std::vector<double> residuals;
    problem_.Evaluate({}, nullptr, &residuals, nullptr, nullptr);
    double greatest = 0;
    for (const double one : residuals) greatest = std::max(greatest, std::abs(one));
    return greatest;
  }

  PlanePoint at(std::size_t place) const { return {at_[place][0], at_[place][1]}; }

 private:
  class Distance : public ceres::SizedCostFunction<1, 2, 2> {
   public:
    explicit Distance(double value) : value_(value) {}
    bool Evaluate(const double* const* at, double* residual, double** slopes) const override {
      const double dx = at[1][0] - at[0][0], dy = at[1][1] - at[0][1];
      const double length = std::sqrt(dx * dx + dy * dy);
      residual[0] = length - value_;
      if (slopes == nullptr) return true;
      for (const int end : {0, 1}) {
        if (slopes[end] == nullptr) continue;
        slopes[end][0] = (end == 0 ? -dx : dx) / length;
        slopes[end][1] = (end == 0 ? -dy : dy) / length;
      }
      return true;
    }

   private:
    double value_;
  };

  // How far the second lies beside a ray out of the first.
  class Ray : public ceres::SizedCostFunction<1, 2, 2> {
   public:
    explicit Ray(double angle) : c_(std::cos(angle)), s_(std::sin(angle)) {}
    bool Evaluate(const double* const* at, double* residual, double** slopes) const override {
      residual[0] = c_ * (at[1][1] - at[0][1]) - s_ * (at[1][0] - at[0][0]);
      if (slopes == nullptr) return true;
      for (const int end : {0, 1}) {
        if (slopes[end] == nullptr) continue;
        slopes[end][0] = end == 0 ? s_ : -s_;
        slopes[end][1] = end == 0 ? -c_ : c_;
      }
      return true;
    }

   private:
    double c_, s_;
  };

  const RandomPlacing& placing_;
  std::vector<std::array<double, 2>> at_;
  ceres::Problem problem_;
  ceres::Solver::Options options_;
};

}  // namespace inchwright::test
