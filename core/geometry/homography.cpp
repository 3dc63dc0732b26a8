#include "core/geometry/homography.h"

#include <Eigen/LU>
#include <algorithm>
#include <cmath>

#include "core/base/least_squares.h"

namespace inchwright {
namespace {

/// Below this share of the largest pivot the points lie in a line.
constexpr double kInLine = 1e-7;

using Matrix3 = Eigen::Matrix<double, 3, 3, Eigen::RowMajor>;

Matrix3 asEigen(const std::array<double, 9>& m) {
  return Eigen::Map<const Matrix3>(m.data());
}

Homography fromEigen(const Matrix3& matrix) {
  std::array<double, 9> m{};
  Eigen::Map<Matrix3>(m.data()) = matrix / matrix.cwiseAbs().maxCoeff();
  return Homography(m);
}

/// Moves the points' centroid to the origin and their mean distance to √2, without which the
/// direct solution is badly conditioned.
Matrix3 normaliser(std::span<const KnownPoint> points, PlanePoint KnownPoint::*side) {
  double x = 0, y = 0, distance = 0;
  const auto count = static_cast<double>(points.size());
  for (const KnownPoint& p : points) {
    x += (p.*side).x / count;
    y += (p.*side).y / count;
  }
  for (const KnownPoint& p : points) {
    distance += std::hypot((p.*side).x - x, (p.*side).y - y) / count;
  }
  const double scale = distance > 0 ? std::sqrt(2.0) / distance : 1;
  Matrix3 result;
  result << scale, 0, -scale * x, 0, scale, -scale * y, 0, 0, 1;
  return result;
}

Result<Homography> throughTwo(std::span<const KnownPoint> points) {
  const PlanePoint pixels{points[1].pixel.x - points[0].pixel.x,
                          points[1].pixel.y - points[0].pixel.y};
  const PlanePoint inches{points[1].inches.x - points[0].inches.x,
                          points[1].inches.y - points[0].inches.y};
  const double pixelLength = std::hypot(pixels.x, pixels.y);
  const double inchLength = std::hypot(inches.x, inches.y);
  if (!(pixelLength > 0) || !(inchLength > 0)) {
    return Error{ErrorCode::unsolvable, "the two points coincide; choose two far apart"};
  }
  // A tenth of the distance along each axis is enough to tell two scales; below it, the error of
  // pointing would swamp the second one.
  const bool both = std::abs(pixels.x) > pixelLength / 10 && std::abs(pixels.y) > pixelLength / 10;
  Matrix3 m = Matrix3::Identity();
  if (both && pixels.x * inches.x > 0 && pixels.y * inches.y < 0) {
    m(0, 0) = inches.x / pixels.x;
    m(1, 1) = inches.y / pixels.y;
  } else {
    // One scale and a turn; the picture's y runs down.
    const double scale = inchLength / pixelLength;
    const double turn = std::atan2(inches.y, inches.x) - std::atan2(-pixels.y, pixels.x);
    m(0, 0) = scale * std::cos(turn);
    m(0, 1) = scale * std::sin(turn);
    m(1, 0) = scale * std::sin(turn);
    m(1, 1) = -scale * std::cos(turn);
  }
  m(0, 2) = points[0].inches.x - m(0, 0) * points[0].pixel.x - m(0, 1) * points[0].pixel.y;
  m(1, 2) = points[0].inches.y - m(1, 0) * points[0].pixel.x - m(1, 1) * points[0].pixel.y;
  return fromEigen(m);
}

Result<Homography> throughThree(std::span<const KnownPoint> points) {
  Matrix3 pixels, inches;
  for (int i = 0; i < 3; ++i) {
    pixels.col(i) << points[i].pixel.x, points[i].pixel.y, 1;
    inches.col(i) << points[i].inches.x, points[i].inches.y, 1;
  }
  const double area = std::abs(pixels.determinant());
  const double size = pixels.topRows(2).cwiseAbs().maxCoeff();
  if (!(area > 1e-9 * size * size) || !(std::abs(inches.determinant()) > 0)) {
    return Error{ErrorCode::unsolvable,
                 "the three points lie in a line; choose one well away from the other two"};
  }
  return fromEigen(inches * pixels.inverse());
}

void setRow(LeastSquaresSystem& system, std::size_t row, const std::array<double, 8>& members,
            double right) {
  std::copy(members.begin(), members.end(), &system.at(row, 0));
  system.right[row] = right;
}

Result<Homography> throughMany(std::span<const KnownPoint> points) {
  const Matrix3 pixelNorm = normaliser(points, &KnownPoint::pixel);
  const Matrix3 inchNorm = normaliser(points, &KnownPoint::inches);
  // The middle of the points lies on the near side of the horizon like all of them, so its own
  // entry of the map, the last one, can be held at 1.
  LeastSquaresSystem system(2 * points.size(), 8);
  for (std::size_t i = 0; i < points.size(); ++i) {
    const Eigen::Vector3d p = pixelNorm * Eigen::Vector3d(points[i].pixel.x, points[i].pixel.y, 1);
    const Eigen::Vector3d q = inchNorm * Eigen::Vector3d(points[i].inches.x, points[i].inches.y, 1);
    setRow(system, 2 * i, {p.x(), p.y(), 1, 0, 0, 0, -q.x() * p.x(), -q.x() * p.y()}, q.x());
    setRow(system, 2 * i + 1, {0, 0, 0, p.x(), p.y(), 1, -q.y() * p.x(), -q.y() * p.y()}, q.y());
  }
  const LeastSquaresSolution solved = solveLeastSquares(system, kInLine);
  if (solved.rank < 8) {
    return Error{ErrorCode::unsolvable,
                 "three of the points lie in a line or coincide; choose corners of a rectangle"};
  }
  Matrix3 h;
  const std::vector<double>& v = solved.unknowns;
  h << v[0], v[1], v[2], v[3], v[4], v[5], v[6], v[7], 1;
  return fromEigen(inchNorm.inverse() * h * pixelNorm);
}

/// Gauss–Newton on the residuals in inches, with the largest entry held fixed.
Homography refined(const Homography& start, std::span<const KnownPoint> points) {
  std::array<double, 9> m = start.matrix();
  const Matrix3 pixelNorm = normaliser(points, &KnownPoint::pixel);
  Matrix3 h = asEigen(m) * pixelNorm.inverse();
  h /= h(2, 2);
  for (int round = 0; round < 10; ++round) {
    LeastSquaresSystem system(2 * points.size(), 8);
    for (std::size_t i = 0; i < points.size(); ++i) {
      const Eigen::Vector3d p =
          pixelNorm * Eigen::Vector3d(points[i].pixel.x, points[i].pixel.y, 1);
      const Eigen::Vector3d q = h * p;
      const double x = q.x() / q.z(), y = q.y() / q.z();
      const double u = p.x() / q.z(), v = p.y() / q.z(), w = 1 / q.z();
      setRow(system, 2 * i, {u, v, w, 0, 0, 0, -x * u, -x * v}, points[i].inches.x - x);
      setRow(system, 2 * i + 1, {0, 0, 0, u, v, w, -y * u, -y * v}, points[i].inches.y - y);
    }
    const std::vector<double> step = solveLeastSquares(system, kInLine).unknowns;
    double moved = 0;
    for (int k = 0; k < 8; ++k) {
      h(k / 3, k % 3) += step[k];
      moved = std::hypot(moved, step[k]);
    }
    if (moved < 1e-14 * h.norm()) break;
  }
  return fromEigen(h * pixelNorm);
}

/// Every known point must lie on the same side of the map's horizon, or the picture is torn.
bool keepsTogether(const Homography& map, std::span<const KnownPoint> points) {
  const auto& m = map.matrix();
  const auto side = [&](const KnownPoint& p) {
    return m[6] * p.pixel.x + m[7] * p.pixel.y + m[8] > 0;
  };
  return std::all_of(points.begin(), points.end(),
                     [&](const KnownPoint& p) { return side(p) == side(points.front()); });
}

bool allFinite(std::span<const KnownPoint> points) {
  return std::all_of(points.begin(), points.end(), [](const KnownPoint& p) {
    return std::isfinite(p.pixel.x) && std::isfinite(p.pixel.y) && std::isfinite(p.inches.x) &&
           std::isfinite(p.inches.y);
  });
}

Result<Homography> solveFor(std::span<const KnownPoint> points) {
  if (points.size() == 2) return throughTwo(points);
  if (points.size() == 3) return throughThree(points);
  auto direct = throughMany(points);
  if (!direct.ok() || points.size() == 4) return direct;
  return refined(*direct, points);
}

}  // namespace

PlanePoint Homography::map(PlanePoint p) const {
  const double w = m_[6] * p.x + m_[7] * p.y + m_[8];
  return {(m_[0] * p.x + m_[1] * p.y + m_[2]) / w, (m_[3] * p.x + m_[4] * p.y + m_[5]) / w};
}

Homography Homography::inverse() const {
  return fromEigen(asEigen(m_).inverse());
}

Homography Homography::after(const Homography& before) const {
  return fromEigen(asEigen(m_) * asEigen(before.m_));
}

Result<SquaredUp> squareUp(std::span<const KnownPoint> points) {
  if (points.size() < 2) {
    return Error{ErrorCode::badRequest, "name at least two known points"};
  }
  if (!allFinite(points)) {
    return Error{ErrorCode::badRequest, "a known point is no number; enter it again"};
  }
  const auto map = solveFor(points);
  if (!map.ok()) return map.error();
  if (!keepsTogether(*map, points)) {
    return Error{ErrorCode::unsolvable,
                 "the corners cross over; name them in order round the rectangle"};
  }
  SquaredUp result{*map, {}, 0};
  for (const KnownPoint& p : points) {
    const PlanePoint at = map->map(p.pixel);
    result.residual.push_back(std::hypot(at.x - p.inches.x, at.y - p.inches.y));
  }
  if (points.size() > 4) {
    result.largestResidual = *std::max_element(result.residual.begin(), result.residual.end());
  }
  return result;
}

}  // namespace inchwright
