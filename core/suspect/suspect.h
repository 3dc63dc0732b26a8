#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/measure/length.h"
#include "core/part/feature.h"

namespace inchwright {

/// What joins one figure with another that it may be taken for.
enum class Likeness {
  none,           ///< nothing but chance
  alike,          ///< lettered they look alike: 3/16 and 5/16
  swapped,        ///< two neighbouring figures changed places: 1 3/16 and 1 13/6
  inchesDropped,  ///< whole inches left out
  inchesAdded,
  halfForFull,
  fullForHalf,
  pointShifted,
  fractionDropped,
  endsSwapped,  ///< the figure is right, from the wrong end
};

/// Why a figure may have been taken for another.
struct Reason {
  Likeness look = Likeness::none;
  int inches = 0;            ///< so many whole inches dropped or added
  std::string looksAs = {};  ///< the lettering that its own looks like, such as `15/8`

  /// Another place where the figure would be right as lettered: measured from or to that one.
  enum class End { none, from, to } wrongEnd = End::none;
  Id rather = {};  ///< that place
  Id than = {};    ///< its own end

  bool isNone() const { return look == Likeness::none && wrongEnd == End::none; }
  bool operator==(const Reason&) const = default;
};

/// A reading that, read otherwise, would close the loops; and why it is suspected.
struct Suspect {
  Id reading;
  Length wouldBe;           ///< what it would have to say; with swapped ends what it says now
  std::string wouldBeText;  ///< lettered as the print would: `1 1/8`
  Reason reason;
  std::optional<Length> traced;  ///< the tracing puts it at about this, unlike what is lettered
  std::vector<Id> together;      ///< only together with these readings does it explain the clash

  double weight = 0;       ///< higher is likelier; comparable within a solution only
  bool closesAll = false;  ///< alone it closes every missing loop of its group
  /// Where many are misread: how many loops that miss are right once it and those of `together` are
  /// read so, and others remain for other readings; else 0.
  int ofMany = 0;

  bool operator==(const Suspect&) const = default;
};

}  // namespace inchwright
