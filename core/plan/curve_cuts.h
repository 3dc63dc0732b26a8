#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/place/curve.h"
#include "core/place/part_outline.h"
#include "core/plan/work_at.h"

namespace inchwright {

/// How one round or arc of an outline is cut in a setup, as the readout and the dial show it.
struct CurveCut {
  Id of;
  CurveWay way = CurveWay::rotary;
  Length radius;
  bool isInside = false;         ///< the metal lies outside its circle
  std::optional<Length> cutter;  ///< its diameter
  CutterAt cutterAt = CutterAt::right;
  Coordinate x, y;  ///< its centre
  // rotary, where a cutter is given that fits
  std::optional<Length> spindle;  ///< from the table's centre
  std::optional<DialReadings> dial;
  std::optional<Length> pin;  ///< the bore of the hole at the centre, for the pin it turns on
  // points
  struct At {
    Coordinate x, y;

    bool operator==(const At&) const = default;
  };
  std::vector<At> points;
  std::optional<Length> ridge;
  // filing_buttons: a pair, one each side
  struct Buttons {
    Length outside;
    Length bore;
    int count = 2;

    bool operator==(const Buttons&) const = default;
  };
  std::optional<Buttons> buttons;

  bool operator==(const CurveCut&) const = default;
};

enum class CurveTrouble : std::uint8_t {
  notClosed,     ///< the outline about it does not close there: it has no ends
  overrun,       ///< asked for at an end that runs into the metal: left out
  tooFarApart,   ///< points between which a ridge stands that no cutter reached
  noHole,        ///< filing buttons without a hole at the centre, or for a hollow
  cutterTooBig,  ///< for a hollow
};
std::string_view nameOf(CurveTrouble trouble);  ///< `overrun`, `too_far_apart`, …

struct CurveFinding {
  CurveTrouble trouble = CurveTrouble::overrun;
  Id of;

  bool operator==(const CurveFinding&) const = default;
};

struct CurveCuts {
  std::vector<CurveCut> cuts;
  std::vector<CurveFinding> findings;

  bool operator==(const CurveCuts&) const = default;
};

/// The ridge that points are spaced for when nobody says.
inline constexpr double kCustomaryRidge = 0.002;

/// Cuts as asked, in that order. What is asked of no round or arc of the outlines is refused.
/// Errors: `notFound`, `outOfRange`, and `unsolvable` where zero or the centre is not placed.
Result<CurveCuts> curveCuts(const WorkAt& work, const FaceOutlines& outlines,
                            const std::vector<GivenCurve>& asked);

/// What a setup asks to be cut, as far as it can be told; where zero or an outline is missing each
/// is a finding.
CurveCuts curvesAt(const WorkAt& work);

/// The rounds and arcs that the outlines of a face follow, each once.
std::vector<Id> curvesOf(const FaceOutlines& outlines);

}  // namespace inchwright
