#pragma once

#include <cstdint>
#include <optional>

#include "core/measure/figures.h"
#include "core/measure/length.h"

namespace inchwright::reading {

/// What a unit word stands for.
struct UnitMeaning {
  std::int64_t ticks = 0;
  Unit family = Unit::inch;
  bool covers = false;  ///< at the end of a sum, stands for all its bare terms: in, mm, cm
  int placesShift = 0;  ///< decimal places it adds in its family's own unit
};

/// Empty for the units of an angle.
std::optional<UnitMeaning> meaningOf(UnitWord word);

/// How figures without a unit are to be taken in one text.
struct Bare {
  UnitMeaning unit;      ///< what they are in
  bool covered = false;  ///< by the unit at the end of the text, not by the print's own
  Unit print = Unit::inch;
};

/// How the terms of a figure are written; of several the coarsest counts.
struct Style {
  bool fraction = false;
  bool decimal = false;
  int places = 0;

  void merge(const Style& other);
};

/// The value of a term or sum on the way: a number still without unit (`bare`), or ticks.
struct Quantity {
  Rational number;
  bool bare = true;
  bool count = false;       ///< a whole number that may say how many times
  bool multiplied = false;  ///< holds a product, as `3 x 9/16`
  /// Of what is not bare: the unit it was written in; ticks 0 when several.
  UnitMeaning unit;
  Style style;
  std::size_t at = 0;
};

/// Reads a sum of products: the nominal of a figure, up to the end, a closing bracket, a tolerance
/// or a word. Spacing tells what a sign means: spaces on both sides add or subtract, none joins a
/// fraction to its whole (see figures.h), a space only before it begins a tolerance.
bool readSum(Cursor& cursor, const Bare& bare, Quantity& sum);

/// The same in ticks. Refuses a fraction that a metric unit further on would cover.
bool toTicks(Cursor& cursor, const Bare& bare, Quantity& quantity);

/// Reads a figure with its unit, feet and inches included, without sign.
bool readMeasure(Cursor& cursor, Quantity& quantity);

/// Whether the sign at the cursor begins a tolerance rather than a further term.
bool toleranceAhead(const Cursor& cursor);

}  // namespace inchwright::reading
