#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/part/axis.h"
#include "core/part/reading.h"

namespace inchwright {

/// What a doubt is about, most pressing first.
enum class DoubtTopic {
  clash,         ///< readings that do not add up
  crossedSides,  ///< an outer side lies on the wrong hand of the one opposite
  sameSide,      ///< two edges that both say that they are one outer side
  outside,       ///< a place beyond the outer sides
  breaksEdge,    ///< a hole that runs over an outer side
  holesMeet,     ///< two holes of one face that run into each other
  noSetup,       ///< a hole on a face that no setup has up
  swappedEnds,   ///< traced the other way round than it is read
  wrongWay,      ///< places that lie the other way round, or on the other side, than is said
  offTrace,      ///< traced at quite another length, and nothing else checks it
  oddSizes,      ///< the sizes of one feature, or of the title block, contradict one another
  misspelt,      ///< a member of the document that is not known, and nearly one that is
  millimetres,   ///< a whole fraction of an inch if it were in millimetres
  rounded,       ///< misses by what rounding takes, and comes out as fractions
  loose,         ///< nothing says where it lies
  assumed,       ///< an understanding that the print does not state
  notPlaced,     ///< kept, but it does not place anything
  question,      ///< the figure itself is odd
  size,          ///< a reading and a feature give two sizes
  readTwice,     ///< read twice, and not alike
  misfit,        ///< misses by less than rounding takes, and no fractions fit: a remark
  alone,         ///< nothing checks it: a remark
};

/// Names a doubt from one run to the next: what it is about, and whose. Its text stands in
/// documents: `loose:C:y`, `clash:x:r1+r4`, `outside:x:A`.
struct DoubtKey {
  DoubtTopic topic = DoubtTopic::question;
  std::optional<UnderstandingKind> kind = {};  ///< of what is assumed, or kept without placing
  std::optional<Axis> axis = {};
  std::vector<Id> readings = {};
  std::vector<Id> places = {};
  std::string setup = {};  ///< its name, where a setup is in question

  std::string text() const;
  /// Empty when the text is none that `text()` gives.
  static std::optional<DoubtKey> read(std::string_view text);

  bool operator==(const DoubtKey&) const = default;
};

std::string_view nameOf(DoubtTopic topic);

}  // namespace inchwright
