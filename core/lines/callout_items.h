#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace inchwright {

/// What the words of a callout mean, whatever way they are lettered: `C'BORE`, `CBORE`, `C/BORE`.
enum class CalloutWord {
  drill,
  ream,
  bore,
  tap,
  counterbore,
  countersink,
  spotface,
  deep,
  through,
  count,   ///< HOLES, PLACES, OFF: the whole number before it says how many
  spaces,  ///< how many spaces
  wide,
  longAll,
  centres,  ///< CRS, BETWEEN CENTRES, PITCH, APART
  pitchCircle,
  radius,
  on,
  number,  ///< No., #
  letter,
  chamfer,
  degrees,
  unit,  ///< in, mm
  diameter,
  clearance,  ///< CLEARANCE, CLEAR: the screw goes through
  forWhat,    ///< FOR: what is named behind it goes in, and is not cut
  assembly,   ///< ON ASSEMBLY, IN POSITION
  filler,     ///< AND, THE, EQ SP, TYP, SLOT …: nothing hangs on it here
  unknown,
};

enum class CalloutItemKind { number, word, times, symbol, dash, separator, angleMark };

/// A piece of a callout: a number as it stands (`1/4`, `.375`), a word, a `x`, a `Ø` or `±`.
struct CalloutItem {
  CalloutItemKind kind = CalloutItemKind::separator;
  CalloutWord word = CalloutWord::unknown;
  std::size_t at = 0;     ///< its first byte
  std::size_t after = 0;  ///< the byte behind it
  bool gapBefore = false;
  bool whole = false;  ///< a number without point or stroke
};

/// The pieces of a callout, in order. Never fails: what nobody knows is an unknown word.
std::vector<CalloutItem> calloutItems(std::string_view text);

/// The plain spelling of what an unknown word is probably a slip for: `REEM` → `REAM`, `DRIIL` →
/// `DRILL`; empty where nothing is near. Only ever suggested.
std::string_view calloutWordMeantBy(std::string_view raw);

/// Whether the word only says how a slot ends, or by what it is cut: `BOTH ENDS ROUND`, `END MILL`.
bool tellsOfSlotEnds(std::string_view word);

/// Whether the word says that a slot is meant: `SLOT`, `SLOTS`, `KEYWAY`.
bool namesSlot(std::string_view word);

/// Whether a line speaks of a slot, rather than of two figures that nobody explains: `x 1/4 by 1`,
/// `3/16 WIDE x 5/8`, but not `1/4 1/2`.
bool tellsOfSlot(std::string_view line);

}  // namespace inchwright
