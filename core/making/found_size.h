#pragma once

#include <optional>
#include <string>

#include "core/measure/limits.h"
#include "core/part/made.h"
#include "core/part/shop_owned.h"

namespace inchwright {

/// What a size may be, as far as measuring says; an end that nothing says is empty.
struct FoundSize {
  std::optional<Length> least;
  std::optional<Length> greatest;

  bool known() const { return least || greatest; }
  bool operator==(const FoundSize&) const = default;
};

/// What stands in for the class and sign of a pin that says none.
struct PinHabit {
  std::string pinClass;         ///< empty: ZZ, the widest
  std::optional<PinSign> sign;  ///< empty: either, so the pin may lie to both sides of its size
};

/// The class and sign of pins that say none, from the shop's own.
PinHabit pinHabit(const Shop& shop);

/// Whether a found size is rather a slip of the pen, of the point or of the unit than what came
/// out: over 1/16 in and over a quarter of the size off. 3.148 found for 5/16 → true.
bool isUnlikely(const FoundSize& found, Length nominal);

/// The size of a place from what was measured there: a diameter ± the instrument's error; a pin
/// that goes in gives the least (its own least possible size), one that does not the greatest.
/// Where a size and pins are given, both hold; where they contradict, all that either allows is
/// left.
///
/// `.2518` by a gauge good to .0003 → .2515 to .2521; a minus pin of class ZZ that goes in, .2500 →
/// at least .2498. Without an error the measured size is taken as it stands.
/// A class that is not known, or a pin beyond the table, is taken as ZZ at its widest.
/// Errors: `outOfRange`.
Result<FoundSize> foundSize(const MadePlace& made, const PinHabit& habit);

/// How what was found lies to what is wanted.
enum class Verdict { in, over, under, offPlace, cannotTell, notMeasured };

std::string_view nameOf(Verdict verdict);  ///< `in`, `off_place`, …

/// `in` where all that may have been found lies within (an end on a limit is in), `over` or `under`
/// where all of it lies beyond one, else `cannotTell`. A limit that is not wanted is empty.
Verdict verdictOf(const FoundSize& found, const FoundSize& wanted);

}  // namespace inchwright
