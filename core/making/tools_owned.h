#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/part/shop_owned.h"
#include "core/shop/drills.h"
#include "core/shop/threads.h"

namespace inchwright {

/// A drill at hand; `stands` as in the shop.
struct DrillAtHand {
  Drill drill;
  std::optional<Length> stands;

  bool operator==(const DrillAtHand&) const = default;
};

struct TapAtHand {
  Thread thread;
  TapLead lead = TapLead::second;
  std::optional<Length> stands;

  bool operator==(const TapAtHand&) const = default;
};

/// What one hole may be made with: a shop put in order once, so that each choice is a look-up.
///
/// Where the shop says nothing of a kind of tool, all customary sizes are at hand: for inch holes
/// fraction, number and letter drills, for metric ones metric drills, for a tapped hole also the
/// table's own. Where it says something, only that, whatever the unit of the hole.
class ToolsOwned {
 public:
  explicit ToolsOwned(const Shop& shop);

  const Shop& shop() const { return shop_; }

  /// Smallest first, of equal ones in the order of DrillSeries.
  const std::vector<DrillAtHand>& drillsFor(Unit unit) const;
  /// The largest that is at least `low` and at most `high`; null when none is.
  const DrillAtHand* largestDrill(Length low, Length high, Unit unit) const;
  /// The table's own drill of a thread, where it is owned.
  const DrillAtHand* ownDrillOf(const Thread& thread) const;
  /// Smallest first.
  const std::vector<OwnedCutter>& cutters() const { return cutters_; }
  /// The same for work of a unit: where nothing is said, its customary sizes.
  const std::vector<OwnedCutter>& cuttersFor(Unit unit) const {
    return unit == Unit::millimetre ? metricCutters_ : cutters_;
  }

  bool saysReamers() const { return shop_.reamers.has_value(); }
  bool saysTaps() const { return shop_.taps.has_value(); }
  /// The taps of a thread, the shortest lead first; where nothing is said, one of each lead.
  std::vector<TapAtHand> tapsOf(const Thread& thread) const;

  /// What the drill has to leave on the diameter.
  Length leastLeft(ReamedBy by) const;
  Length greatestLeft(ReamedBy by) const;
  /// How far a reamer's end goes below through work: a machine one 1/8 in, a hand one a quarter of
  /// its flutes (unsaid: two diameters, flutes being about eight; from memory).
  static Length reamerBelow(const OwnedReamer& reamer);

  Length marginAround() const;
  Length marginWall() const;
  Length marginBelow() const;

 private:
  Shop shop_;
  std::vector<DrillAtHand> inch_;
  std::vector<DrillAtHand> metric_;
  std::vector<DrillAtHand> tables_;  ///< of every series, where nothing is said
  std::vector<OwnedCutter> cutters_;
  std::vector<OwnedCutter> metricCutters_;
  std::vector<TapAtHand> taps_;
};

/// As people call a size: `1/4`, `0.205`, `6 mm`.
std::string sizeName(Length size, Unit unit);

}  // namespace inchwright
