#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/measure/angle.h"
#include "core/measure/lettered.h"
#include "core/part/axis.h"
#include "core/part/drilled.h"
#include "core/part/extra.h"
#include "core/part/id.h"

namespace inchwright {

/// An outline of a face as the document gives it: what it follows, anticlockwise as the face is
/// seen. `{"face": "top", "follows": ["F", "E", "K", "L"]}`.
struct GivenOutline {
  Face face = Face::top;
  std::vector<Id> follows;     ///< edges, lines, rounds, arcs; a full circle stands alone
  bool isInner = false;        ///< an opening; with a depth a pocket
  std::optional<Depth> depth;  ///< of an inner one
  Extra extra;

  bool operator==(const GivenOutline&) const = default;
};

/// The three ways of the trade to cut a curve.
enum class CurveWay : std::uint8_t { rotary, points, filingButtons };
/// Where the cutter stands to the rotary table, seen from above.
enum class CutterAt : std::uint8_t { right, away, left, towards };

/// How a round or an arc of the outline is to be cut in a setup.
struct GivenCurve {
  Id of;
  CurveWay way = CurveWay::rotary;
  std::optional<Lettered> cutter;  ///< its diameter
  CutterAt cutterAt = CutterAt::right;
  std::optional<Lettered> ridge;         ///< the greatest that may stay, of `points`
  std::optional<int> count;              ///< or how many points, both ends counted
  std::optional<LetteredAngle> overrun;  ///< degrees beyond an end that lies in the air
  bool overrunIsNumber = false;          ///< written as a bare number
  Extra extra;

  bool operator==(const GivenCurve&) const = default;
};

std::string_view nameOf(CurveWay way);  ///< `rotary`, `points`, `filing_buttons`
std::string_view nameOf(CutterAt at);
std::optional<CurveWay> curveWayNamed(std::string_view name);
std::optional<CutterAt> cutterAtNamed(std::string_view name);

}  // namespace inchwright
