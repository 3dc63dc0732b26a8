#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/apart.h"
#include "core/measure/angle.h"
#include "core/measure/lettered.h"
#include "core/part/axis.h"
#include "core/part/extra.h"
#include "core/part/feature.h"

namespace inchwright {

enum class ReadingKind {
  along,    ///< from one place to another in the positive direction of an axis
  centres,  ///< the straight distance between two places in a face
  angle,    ///< of the line from → to, or of a line; anticlockwise from the face's own X, or from
            ///< what it is measured `against`
  radius,   ///< of the feature `from`
  diameter,   ///< of the feature `from`
  pcd,        ///< of the ring `from`
  squareOff,  ///< the distance of the place `from` from the line or edge `to`, square to it
};
inline constexpr int kReadingKinds = 7;

/// One dimension of the print as lettered.
struct Reading {
  Id id;
  ReadingKind kind = ReadingKind::along;
  Axis axis = Axis::x;  ///< when `kind` is along
  Id from;
  Id to;  ///< empty for radius, diameter, pcd and for the angle of a line
  /// An angle's: what it is measured from, a line or an edge, or two places (directed).
  std::vector<Id> against;
  /// An angle's: which way the print swings it. Against a line: said or chosen, else the tracing
  /// picks among the rays.
  std::optional<Sense> sense;
  bool reversed = false;  ///< of an angle against a line: from its other end
  /// The figure. For an angle only `text` is set and `angle` holds the value.
  Lettered figure;
  Apart<LetteredAngle> angle;
  std::string view;                ///< the view of the print it stands in, as named there
  std::vector<std::string> place;  ///< where on the print, two traced inches; evidence only
  /// What a rounded decimal stands for, as understood: `9/16` for a `.563`. The figure then has its
  /// value; the text stays as lettered. Empty where the text says it.
  std::string meant;
  std::string again;    ///< what the second, blind reading gave; empty when not yet done
  std::string offered;  ///< the witnesses with which the print itself offered it: `G S`
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
  on,
  wayRound,
  beside,
};
inline constexpr int kUnderstandingKinds = 11;

/// What `equal` compares where it names no axis.
enum class EqualBy { spacing, radius };
/// On which hand of a curve another touches it.
enum class Touch { outside, inside };

/// What the print shows but does not number.
///
/// midway: `of[0]` lies in the middle of `between`. in_line: all of `of` have one coordinate along
/// `axis`. equal: the spaces between consecutive ones of `of` are alike. symmetric: `of` are
/// mirrored about `about`. concentric: all of `of` share their centre, along both axes of the face.
///
/// Without an axis: in line along any straight line; midway along both; mirrored about a line or an
/// edge; equal by spacing (distances one after another) or by radius. on: `of` lie on the carrier
/// `about`. way_round: the three of `of` in turn, as the face is seen. beside: `of` lie on that
/// `side` of the line or edge `about`. tangent: two carriers touch; of two curves `touch` may say
/// how. parallel, square: lines and edges.
struct Understanding {
  UnderstandingKind kind = UnderstandingKind::inLine;
  std::optional<Axis> axis;
  std::vector<Id> of;
  std::vector<Id> between;
  Id about;
  std::optional<EqualBy> by;   ///< equal without an axis
  std::optional<Touch> touch;  ///< tangent of two curves, where it is said
  std::optional<Sense> sense;  ///< way_round
  std::optional<Side> side;    ///< beside: of the two sides of `about`, the one further to it
  bool stated = false;         ///< said by the print; else assumed, and listed as a query
  Extra extra;

  bool operator==(const Understanding&) const = default;
};

std::string_view nameOf(ReadingKind kind);  ///< `along` is absent in the document
std::string_view nameOf(UnderstandingKind kind);
std::string_view nameOf(EqualBy by);
std::string_view nameOf(Touch touch);
std::optional<ReadingKind> readingKindNamed(std::string_view name);
std::optional<UnderstandingKind> understandingKindNamed(std::string_view name);
std::optional<EqualBy> equalByNamed(std::string_view name);
std::optional<Touch> touchNamed(std::string_view name);

}  // namespace inchwright
