#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/making/bushing.h"
#include "core/making/drawn_size.h"
#include "core/making/found_size.h"
#include "core/part/job.h"

namespace inchwright {

/// What is known of a hole that was measured; of one whose greatest size nothing says the wanted
/// one is taken.
WrongHole wrongHole(const DrawnSize& drawn, const FoundSize& found, std::optional<Length> offX,
                    std::optional<Length> offY, Unit unit);

/// The next size of a hole or thread that a hole as found can be opened to.
struct NextSize {
  Length size;
  std::string name;   ///< `17/64`, `#10-32 UNF`
  SizeLimits limits;  ///< the print's moved along
  Drilled drilled;    ///< the print's hole in that size
  Unit unit = Unit::inch;

  bool operator==(const NextSize&) const = default;
};

/// The next thread of the series that its tapping drill still cleans up, or the next round size
/// (64ths of an inch, half millimetres). A hole that was opened to such a size already, and lies
/// within its limits and .002 in or .05 mm of it, is of that size. Empty where there is no larger
/// thread.
///
///     1/4 ream, wanted .2500 to .2506, found .2518 -> 17/64; found .2658 -> 17/64 as well
std::optional<NextSize> nextSize(const Drilled& drilled, const WrongHole& hole);

/// The same for a place of a part, where the next size was chosen for it; empty where it was not.
std::optional<NextSize> chosenNextSize(const Part& part, std::string_view place,
                                       const FoundSize& found, Unit unit);
/// Whether a hole as found was opened to it.
bool isOpenedTo(const NextSize& next, const FoundSize& found);

/// What a hole that came out wrong is made into, by the way out that was chosen for it.
struct PutRight {
  WayOut way = WayOut::leave;
  FoundSize found;                 ///< as measured last
  std::optional<NextSize> next;    ///< of `nextSize`
  std::optional<Bushing> bushing;  ///< of a bush, a plug, an eccentric bush

  /// What lines the hole is pressed in before it is made again.
  bool isLined() const { return bushing.has_value(); }
  bool operator==(const PutRight&) const = default;
};

/// The way out that counts for a place: the last one chosen; null for none.
const Mended* chosenWay(const Part& part, std::string_view place);

/// Whether the way out that was chosen has other figures by now, since something else was measured:
/// `was` are those that stood then. Figures that were kept as a readout showed them may differ by a
/// thou.
bool isOtherThanChosen(const ChosenFigures& was, const ChosenFigures& now);

/// The figures of a way out of `hole`. Errors: as `bushOnWantedCentre`; `badRequest` for a next
/// size where there is none.
Result<PutRight> putRight(WayOut way, const Drilled& drilled, const WrongHole& hole,
                          const FoundSize& found);

}  // namespace inchwright
