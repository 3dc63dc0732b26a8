#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/part/drilled.h"
#include "core/part/feature.h"

namespace inchwright {

/// A callout as a print letters it, understood: `#7 DRILL 3/4 DEEP, 1/4-20 TAP 1/2 DEEP, 4 HOLES`.
///
/// Figures stand as lettered. A drill by number or letter stands by its size, `#7` as `.2010`.
struct Callout {
  Drilled drilled;
  int alike = 0;        ///< how many the print says there are; 0: it does not say
  bool spaces = false;  ///< it counts the spaces between them: one less than `alike`
  std::optional<Lettered> pitchDiameter;  ///< of the circle they lie on
  std::optional<Lettered> pitch;          ///< from one to the next
  std::optional<Lettered> width;          ///< of a slot
  std::optional<Lettered> length;         ///< of a slot, over all
  std::optional<Lettered> radius;
  std::optional<Lettered> chamfer;  ///< how long, along
  std::optional<LetteredAngle> angle;
  /// What to look at again; it was read even so.
  std::string question;
  /// The whole callout as lettered, where it says more than is held here, such as a drill before
  /// the reamer.
  std::string more;

  bool operator==(const Callout&) const = default;
};

/// Reads the callout of a feature of that kind, in any customary lettering and order of words.
/// `kind` says what bare figures mean: `3/16 x 5/8` of a slot is its width and its length over all,
/// whichever stands first.
///
/// Errors: `badText` with the byte offset in `at`, saying what is missing or not understood.
Result<Callout> readCallout(std::string_view text, FeatureKind kind, Unit unit);

}  // namespace inchwright
