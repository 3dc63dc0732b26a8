#include "core/place/equations.h"

#include <cmath>
#include <numbers>

namespace inchwright {
namespace {

constexpr double kHalfTurn = std::numbers::pi;

using Operands = std::array<double, kMostOperands>;

// The way between two points: its length and its direction, along X where there is none.
struct Way {
  double length, x, y;
};

Way wayBetween(double ax, double ay, double bx, double by) {
  const double dx = bx - ax;
  const double dy = by - ay;
  // Inches of one print: no square of them leaves the range, and a root is far cheaper than a
  // hypot.
  const double length = std::sqrt(dx * dx + dy * dy);
  if (length == 0) return {0, 1, 0};
  return {length, dx / length, dy / length};
}

RowValue distanceRow(const Row& row, const Operands& v) {
  const Way way = wayBetween(v[0], v[1], v[2], v[3]);
  RowValue out;
  out.residual = way.length - v[6] - row.signA * v[4] - row.signB * v[5];
  out.slope = {-way.x, -way.y, way.x, way.y, -row.signA, -row.signB, -1};
  return out;
}

// A vector d against a direction: how far it points beside it. On the wrong side the residual goes
// on growing, to twice the length where d points straight back, so that a solver turns it round.
struct Beside {
  double residual, byX, byY, byAngle;
};

Beside besideDirection(double dx, double dy, double angle) {
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  const double along = c * dx + s * dy;
  const double across = c * dy - s * dx;
  if (along >= 0) return {across, -s, c, -along};
  const Way way = wayBetween(0, 0, dx, dy);
  const double side = across >= 0 ? 1 : -1;
  return {side * 2 * way.length - across, side * 2 * way.x + s, side * 2 * way.y - c, along};
}

RowValue directionRow(const Row& row, const Operands& v, bool atRest) {
  const double dx = v[2] - v[0];
  const double dy = v[3] - v[1];
  double base = v[4];
  // A line has no direction of its own: it counts upwards or, level, to the right.
  if (row.signB != 0) base -= kHalfTurn * std::floor(base / kHalfTurn + 1e-9);
  const double angle = atRest ? std::atan2(dy, dx) : row.signA * base + v[5];
  const Beside beside = besideDirection(dx, dy, angle);
  RowValue out;
  out.residual = beside.residual;
  out.slope = {-beside.byX,   -beside.byY, beside.byX, beside.byY, row.signA * beside.byAngle,
               beside.byAngle};
  return out;
}

RowValue turnRow(const Operands& v, bool atRest) {
  const double dx = v[2] - v[0];
  const double dy = v[3] - v[1];
  const Way base = wayBetween(v[4], v[5], v[6], v[7]);
  const double from = std::atan2(base.y, base.x);
  const Beside beside = besideDirection(dx, dy, atRest ? std::atan2(dy, dx) : from + v[8]);
  // The direction of C to D turns by (−y, x)/length for a step of D.
  const double byBase = base.length > 0 ? beside.byAngle / base.length : 0;
  RowValue out;
  out.residual = beside.residual;
  out.slope = {-beside.byX,      -beside.byY,      beside.byX,      beside.byY,    byBase * base.y,
               -byBase * base.x, -byBase * base.y, byBase * base.x, beside.byAngle};
  return out;
}

RowValue offRow(const Row& row, const Operands& v) {
  const double c = std::cos(v[2]);
  const double s = std::sin(v[2]);
  RowValue out;
  out.residual = c * v[1] - s * v[0] - v[3] - row.signB * v[4] - row.signA * v[5];
  out.slope = {-s, c, -c * v[0] - s * v[1], -1, -row.signB, -row.signA};
  return out;
}

RowValue inLineRow(const Operands& v) {
  const Way way = wayBetween(v[0], v[1], v[4], v[5]);
  const double px = v[2] - v[0];
  const double py = v[3] - v[1];
  RowValue out;
  out.residual = way.x * py - way.y * px;
  // A step of C turns the line: B's residual falls by how far along B lies.
  const double share = way.length > 0 ? (way.x * px + way.y * py) / way.length : 0;
  const double cx = way.y * share;
  const double cy = -way.x * share;
  out.slope = {way.y - cx, -way.x - cy, -way.y, way.x, cx, cy};
  return out;
}

RowValue spacingRow(const Operands& v) {
  const Way first = wayBetween(v[0], v[1], v[2], v[3]);
  const Way second = wayBetween(v[2], v[3], v[4], v[5]);
  RowValue out;
  out.residual = first.length - second.length;
  out.slope = {-first.x, -first.y, first.x + second.x, first.y + second.y, -second.x, -second.y};
  return out;
}

RowValue halvedRow(const Operands& v) {
  const double c = std::cos(v[4]);
  const double s = std::sin(v[4]);
  const double mx = (v[0] + v[2]) / 2;
  const double my = (v[1] + v[3]) / 2;
  RowValue out;
  out.residual = c * my - s * mx - v[5];
  out.slope = {-s / 2, c / 2, -s / 2, c / 2, -c * mx - s * my, -1};
  return out;
}

RowValue acrossRow(const Operands& v) {
  const double c = std::cos(v[4]);
  const double s = std::sin(v[4]);
  const double dx = v[2] - v[0];
  const double dy = v[3] - v[1];
  RowValue out;
  out.residual = c * dx + s * dy;
  out.slope = {-c, -s, c, s, c * dy - s * dx};
  return out;
}

RowValue valueOfRow(const Row& row, const Operands& v, bool atRest) {
  switch (row.kind) {
    case RowKind::distance:
      return distanceRow(row, v);
    case RowKind::direction:
      return directionRow(row, v, atRest);
    case RowKind::turn:
      return turnRow(v, atRest);
    case RowKind::off:
      return offRow(row, v);
    case RowKind::inLine:
      return inLineRow(v);
    case RowKind::spacing:
      return spacingRow(v);
    case RowKind::same: {
      RowValue out;
      out.residual = row.scale * (v[0] - v[1] - v[2]);
      out.slope = {row.scale, -row.scale, -row.scale};
      return out;
    }
    case RowKind::halved:
      return halvedRow(v);
    case RowKind::across:
      break;
  }
  return acrossRow(v);
}

}  // namespace

Equations::Equations() : firstTerm_{0} {
  addQuantity(0);
}

std::uint32_t Equations::addQuantity(double constant, std::span<const Term> terms) {
  constants_.push_back(constant);
  terms_.insert(terms_.end(), terms.begin(), terms.end());
  firstTerm_.push_back(static_cast<std::uint32_t>(terms_.size()));
  return static_cast<std::uint32_t>(constants_.size() - 1);
}

std::uint32_t Equations::addRow(const Row& row) {
  rows_.push_back(row);
  return static_cast<std::uint32_t>(rows_.size() - 1);
}

RowValue Equations::evaluate(const Row& row, std::span<const double> variables) const {
  Operands values{};
  for (std::size_t i = 0; i < operandsOf(row.kind); ++i) {
    values[i] = valueOf(row.of[i], variables);
  }
  return valueOfRow(row, values, false);
}

RowValue Equations::evaluateAtRest(const Row& row, std::span<const double> variables) const {
  Operands values{};
  for (std::size_t i = 0; i < operandsOf(row.kind); ++i) {
    values[i] = valueOf(row.of[i], variables);
  }
  return valueOfRow(row, values, true);
}

}  // namespace inchwright
