#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/measure/angle.h"
#include "core/measure/lettered.h"
#include "core/part/axis.h"
#include "core/part/extra.h"
#include "core/part/feature.h"

namespace inchwright {

enum class ReadingKind {
  along,     ///< from one place to another in the positive direction of an axis
  centres,   ///< the straight distance between two places in a face
  angle,     ///< of the line from → to, anticlockwise from the face's own X
  radius,    ///< of the feature `from`
  diameter,  ///< of the feature `from`
  pcd,       ///< of the ring `from`
};

/// One dimension of the print as lettered.
struct Reading {
  Id id;
  ReadingKind kind = ReadingKind::along;
  Axis axis = Axis::x;  ///< when `kind` is along
  Id from;
  Id to;  ///< empty for radius, diameter, pcd
  /// The figure. For an angle only `text` is set and `angle` holds the value.
  Lettered figure;
  std::optional<LetteredAngle> angle;
  std::string view;                ///< the view of the print it stands in, as named there
  std::vector<std::string> place;  ///< where on the print, two traced inches; evidence only
  std::string again;               ///< what the second, blind reading gave; empty when not yet done
  Extra extra;

  bool operator==(const Reading&) const = default;
};

enum class UnderstandingKind {
  inLine,
  midway,
  symmetric,
  equal,
  concentric,
  tangent,
  parallel,
  square,
};

/// What the print shows but does not number.
///
/// midway: `of[0]` lies in the middle of `between`. in_line: all of `of` have one coordinate along
/// `axis`. equal: the spaces between consecutive ones of `of` are alike. symmetric: `of` are
/// mirrored about `about`. concentric: all of `of` share their centre, along both axes of the face.
struct Understanding {
  UnderstandingKind kind = UnderstandingKind::inLine;
  std::optional<Axis> axis;
  std::vector<Id> of;
  std::vector<Id> between;
  Id about;
  bool stated = false;  ///< said by the print; else assumed, and listed as a query
  Extra extra;

  bool operator==(const Understanding&) const = default;
};

std::string_view nameOf(ReadingKind kind);  ///< `along` is absent in the document
std::string_view nameOf(UnderstandingKind kind);
std::optional<ReadingKind> readingKindNamed(std::string_view name);
std::optional<UnderstandingKind> understandingKindNamed(std::string_view name);

}  // namespace inchwright
