#pragma once

#include <cstdint>
#include <string>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/measure/length.h"

namespace inchwright {

/// The step of a readout or of a table: the smallest change it shows.
struct Step {
  Length size = Length::ticks(1'270'000);  ///< 0.0005 in; always greater than 0
  Unit unit = Unit::inch;

  bool operator==(const Step&) const = default;
};

/// Reads a step such as `0.0005`, `0.005 mm`. Errors: `badText` when it is not a length above 0.
/// A bare figure is in `unit`, and the step is shown in `unit` whatever the text's own unit.
Result<Step> readStep(std::string_view text, Unit unit);

/// A value rounded to a step, ready to show. Rounded once, ties away from zero.
struct Shown {
  std::string text;  ///< sign only when negative, leading zero, every place the step needs
  Length value;      ///< what the text says, exactly
  /// text's value − the exact one: what rounding cost. Rounded to the tick.
  Length error;
};

/// Requires: |ticks| below 2^62, which every solver result keeps to.
Shown showAtStep(const Rational& ticks, const Step& step);

/// As `1 3/16`, `15/16`, `2`, `-3/8`: in lowest terms, denominators up to 128 (powers of two).
/// Empty when the length is no such fraction of an inch.
std::string writeFraction(Length length);
/// Decimal inches (or millimetres), exactly when `exactly` at most twelve places are needed and
/// without trailing zeros: `1.1875`. Every tick count has a finite decimal in mm; in inches one
/// that has none within 12 places is rounded there.
std::string writeDecimal(Length length, Unit unit);
/// The figure a person would write in the unit: the fraction when there is one, else the decimal.
std::string writePlain(Length length, Unit unit);

}  // namespace inchwright
