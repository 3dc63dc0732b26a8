#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/measure/angle.h"
#include "core/measure/lettered.h"
#include "core/part/extra.h"
#include "core/part/made.h"
#include "core/shop/drill_set.h"
#include "core/shop/thread_work.h"

namespace inchwright {

/// How a reamer is driven: it decides how much a drill leaves for it.
enum class ReamedBy { machine, hand };
/// What a boring head's dial counts: the movement of its slide, or what the hole grows by.
enum class DialCounts { slide, diameter };

std::string_view nameOf(ReamedBy by);        ///< `machine`, `hand`
std::string_view nameOf(DialCounts counts);  ///< `slide`, `diameter`
std::optional<ReamedBy> reamedByNamed(std::string_view name);
std::optional<DialCounts> dialCountsNamed(std::string_view name);

// The tools somebody owns. Sizes are as lettered, bare figures in inches, greater than 0. `stands`
// is how far a tool stands out of the spindle as held; empty where nobody said.

struct OwnedDrills {
  DrillSet set;
  std::optional<Lettered> stands;
  Extra extra;

  bool operator==(const OwnedDrills&) const = default;
};

struct OwnedReamer {
  Lettered size;
  ReamedBy by = ReamedBy::machine;
  std::optional<Lettered> length;  ///< of its flutes
  std::optional<Lettered> stands;
  Extra extra;

  bool operator==(const OwnedReamer&) const = default;
};

struct OwnedTap {
  std::string size;  ///< as lettered: `1/4-20 UNC`, `2 BA`
  std::optional<TapLead> lead;
  std::optional<Lettered> stands;
  Extra extra;

  bool operator==(const OwnedTap&) const = default;
};

struct OwnedCutter {
  Lettered size;
  int flutes = 0;                  ///< how many; 0 where nobody said
  std::optional<Lettered> length;  ///< of its flutes
  std::optional<bool> centreCutting;
  std::optional<Lettered> stands;
  Extra extra;

  bool operator==(const OwnedCutter&) const = default;
};

/// A countersink or a counterbore.
struct OwnedSeatTool {
  Lettered size;
  std::optional<Lettered> pilot;
  std::optional<LetteredAngle> angle;
  std::optional<Lettered> stands;
  Extra extra;

  bool operator==(const OwnedSeatTool&) const = default;
};

/// A boring head with its bars: the holes it can go into and bore.
struct OwnedBoring {
  std::optional<Lettered> least;
  std::optional<Lettered> greatest;
  std::optional<DialCounts> dial;
  std::optional<Lettered> division;
  std::optional<Lettered> stands;
  Extra extra;

  bool operator==(const OwnedBoring&) const = default;
};

struct OwnedParallels {
  Lettered thick;
  Lettered tall;
  Extra extra;

  bool operator==(const OwnedParallels&) const = default;
};

/// A set of gauge pins: `0.061 to 0.250`, by 0.001 unless it says `by`.
struct OwnedPins {
  std::vector<std::string> ranges;  ///< as given
  std::vector<Length> sizes;        ///< what they stand for, smallest first
  std::string pinClass = "ZZ";      ///< one that `gaugePinTolerance` knows
  PinSign sign = PinSign::minus;
  Extra extra;

  bool operator==(const OwnedPins&) const = default;
};

struct OwnedVice {
  std::optional<Lettered> jawWidth;
  std::optional<Lettered> jawHeight;  ///< from the vice's bed
  std::optional<Lettered> opens;
  Extra extra;

  bool operator==(const OwnedVice&) const = default;
};

/// The rules of this shop, as far as it has its own: what a drill leaves on the diameter for a
/// reamer, and how much thread a tapped hole has, in whole percents.
struct ReamingRule {
  std::vector<Lettered> machine;  ///< least and greatest; empty: the customary rule
  std::vector<Lettered> hand;
  Extra extra;

  bool operator==(const ReamingRule&) const = default;
};
struct TappingRule {
  int percent = 70;  ///< of thread, wanted where the table's own drill is not owned
  int least = 55;
  int greatest = 80;
  Extra extra;

  bool operator==(const TappingRule&) const = default;
};

/// How far to keep off things; what is unsaid is 1/32 in.
struct Margins {
  std::optional<Lettered> around;  ///< about a tool: parallels, jaws, stop, clamps
  std::optional<Lettered> wall;    ///< left between two holes, and to the outline
  std::optional<Lettered> below;   ///< a drill's point or an end mill below through work
  Extra extra;

  bool operator==(const Margins&) const = default;
};

/// What one shop owns. An empty list means that none is owned; a member that is not there says
/// nothing, and all customary sizes are then taken as owned. The default says nothing at all.
///
///     {"drills": ["number"], "reamers": []}  -> #1 to #80, no reamers, customary taps and the rest
struct Shop {
  // What copies it is compiled once, not anew in every room.
  Shop();
  Shop(const Shop& other);
  Shop(Shop&& other) noexcept;
  Shop& operator=(const Shop& other);
  Shop& operator=(Shop&& other) noexcept;
  ~Shop();

  std::optional<std::vector<OwnedDrills>> drills;
  std::optional<std::vector<OwnedReamer>> reamers;
  std::optional<std::vector<OwnedTap>> taps;
  std::optional<std::vector<OwnedCutter>> cutters;
  std::optional<std::vector<OwnedSeatTool>> countersinks;
  std::optional<std::vector<OwnedSeatTool>> counterbores;
  std::optional<std::vector<OwnedBoring>> boring;
  std::optional<std::vector<OwnedParallels>> parallels;
  std::optional<std::vector<OwnedPins>> pins;
  std::optional<OwnedVice> vice;
  std::optional<ReamingRule> reaming;
  std::optional<TappingRule> tapping;
  std::optional<Margins> margins;
  Extra extra;

  bool saysNothing() const { return *this == Shop{}; }
  bool operator==(const Shop& other) const;
};

/// The shop of a job: the document's member where it has one, else the user's own.
Shop shopFor(const Shop& document, const Shop& user);

/// The sizes that `0.061 to 0.250`, `0.061 to 0.250 by 0.0005` or a single figure stands for; bare
/// figures in inches. Errors: `badText`, `tooLarge` beyond 5000 pins.
Result<std::vector<Length>> pinSizesIn(std::string_view text);

/// Checks what a shop requires: sizes greater than 0, ranges the right way round, threads that can
/// be read. `place` of the error is a JSON pointer within the shop, such as `/taps/2/size`.
Result<Done> checkShop(const Shop& shop);

}  // namespace inchwright
