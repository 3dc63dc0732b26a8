#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace inchwright {

/// What one equation of the plane says. Its quantities, in the order of `Row::of`, are coordinates
/// and radii in inches and directions in radians; a line is (direction t, offset d): its points P
/// have n·P = d for n = (−sin t, cos t), the normal to its left.
enum class RowKind : std::uint8_t {
  distance,   ///< ax ay bx by ra rb v: |AB| = v + signA·ra + signB·rb
  direction,  ///< ax ay bx by t v: the way from A to B is signA·t + v, as a ray; with signB 1 of a
              ///< line's direction t that which is at least 0 and below a half turn
  turn,       ///< ax ay bx by cx cy dx dy v: the way from A to B is that from C to D and v more
  off,        ///< px py t d r v: P lies signA·v + signB·r to the left of the line
  inLine,     ///< ax ay bx by cx cy: B lies on the line through A and C
  spacing,    ///< ax ay bx by cx cy: |AB| = |BC|
  same,       ///< a b v: a = b + v; times `scale`, so that an angle counts as a length
  halved,     ///< ax ay bx by t d: the middle of A and B lies on the line
  across,     ///< ax ay bx by t: the way from A to B is square to the line
};

inline constexpr std::size_t kMostOperands = 9;

/// How many quantities a kind of row takes.
constexpr std::size_t operandsOf(RowKind kind) {
  switch (kind) {
    case RowKind::distance:
      return 7;
    case RowKind::turn:
      return 9;
    case RowKind::same:
      return 3;
    case RowKind::across:
      return 5;
    case RowKind::direction:
    case RowKind::off:
    case RowKind::inLine:
    case RowKind::spacing:
    case RowKind::halved:
      break;
  }
  return 6;
}

/// One equation. Its residual is a length in inches: an angle counts times the distance.
struct Row {
  RowKind kind = RowKind::distance;
  std::array<std::uint32_t, kMostOperands> of{};  ///< quantities
  double signA = 0;
  double signB = 0;
  double scale = 1;

  bool operator==(const Row&) const = default;
};

/// A residual and what it changes by with each operand.
struct RowValue {
  double residual = 0;
  std::array<double, kMostOperands> slope{};
};

/// factor · variable, a term of a quantity.
struct Term {
  std::uint32_t variable = 0;
  double factor = 1;

  bool operator==(const Term&) const = default;
};

/// Equations between points, lines and circles of one face.
///
/// A *variable* is a number that can move: where a loose group lies along an axis, the direction or
/// offset of a line, a radius, or the correction of a figure that is usually held at 0. A
/// *quantity* is constant + Σ factor · variable; quantity 0 is 0. All are doubles: print
/// dimensions stay in ticks where they come from.
///
/// Example: B lies 1 in from A, which is fixed, and shares its Y:
/// quantities ax = 0.5, ay = 0.25, bx = v0, by = 0.25, v = 1; row distance(ax ay bx by 0 0 v).
class Equations {
 public:
  Equations();

  std::uint32_t addVariable() { return variables_++; }
  std::uint32_t addQuantity(double constant, std::span<const Term> terms = {});
  std::uint32_t addRow(const Row& row);

  std::uint32_t variableCount() const { return variables_; }
  const std::vector<Row>& rows() const { return rows_; }
  Row& row(std::uint32_t index) { return rows_[index]; }
  std::span<const Term> termsOf(std::uint32_t quantity) const {
    return std::span(terms_).subspan(firstTerm_[quantity],
                                     firstTerm_[quantity + 1] - firstTerm_[quantity]);
  }
  double valueOf(std::uint32_t quantity, std::span<const double> variables) const {
    double value = constants_[quantity];
    for (const Term& term : termsOf(quantity)) value += term.factor * variables[term.variable];
    return value;
  }

  /// NaN-free for finite variables: where a direction is not defined, since two points lie on each
  /// other, that along X is taken.
  RowValue evaluate(const Row& row, std::span<const double> variables) const;
  /// The slopes that a row would have if it held where the variables are: for a count of what is
  /// free that does not hang on how far off a start is.
  RowValue evaluateAtRest(const Row& row, std::span<const double> variables) const;
  /// The same by variable: visit(variable, slope). A variable may come more than once.
  template <class Visit>
  void forEachSlope(const Row& row, const RowValue& value, Visit visit) const {
    for (std::size_t i = 0; i < operandsOf(row.kind); ++i) {
      for (const Term& term : termsOf(row.of[i])) {
        visit(term.variable, value.slope[i] * term.factor);
      }
    }
  }

 private:
  std::uint32_t variables_ = 0;
  std::vector<double> constants_;
  std::vector<std::uint32_t> firstTerm_;  ///< one more than there are quantities
  std::vector<Term> terms_;
  std::vector<Row> rows_;
};

}  // namespace inchwright
