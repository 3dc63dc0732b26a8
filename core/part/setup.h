#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/measure/lettered.h"
#include "core/measure/writing.h"
#include "core/part/axis.h"
#include "core/part/extra.h"
#include "core/part/feature.h"
#include "core/part/holding.h"
#include "core/part/lathe.h"
#include "core/part/outlined.h"

namespace inchwright {

/// Where zero is along one of the part's own axes.
struct ZeroAlong {
  Axis axis = Axis::x;
  std::vector<Id> middle;  ///< two places: zero is half way between them; or else
  Id at;                   ///< the place it is on
  bool ofStock = false;    ///< with `middle`: of the stock as it is, not of the finished part
  std::optional<Lettered> offset;  ///< added in the positive direction of the axis
  Extra extra;

  bool operator==(const ZeroAlong&) const = default;
};

/// One fixing of the part on the machine.
struct Setup {
  // What copies it is compiled once, not anew in every room.
  Setup();
  Setup(const Setup& other);
  Setup(Setup&& other) noexcept;
  Setup& operator=(const Setup& other);
  Setup& operator=(Setup&& other) noexcept;
  ~Setup();

  std::string name;
  Face face = Face::top;  ///< the face that is up
  int turn = 0;           ///< degrees anticlockwise seen from the spindle: 0, 90, 180, 270
  std::vector<ZeroAlong> zero;
  /// Still to come off each side, by Side; empty is 0.
  std::array<std::optional<Lettered>, 6> stock;
  std::optional<Side> jaw;         ///< the side against the fixed jaw
  std::optional<Side> stop;        ///< the side against the stop
  Holding held;                    ///< what it stands on, what is in the way, the pieces of stock
  std::vector<GivenCurve> curves;  ///< how curves of the outline are cut
  std::vector<Id> checks;          ///< places to drive to and look; empty: chosen by the program
  Extra zeroExtra;                 ///< unknown members of `zero` itself
  Extra stockExtra;                ///< unknown members of `stock`
  std::optional<Chucked> chucked;  ///< of the lathe; face and turn then say nothing
  Extra extra;

  const ZeroAlong* zeroAlong(Axis axis) const;
  Length stockOn(Side side) const;
  const std::optional<Lettered>& stockLettered(Side side) const {
    return stock[static_cast<std::size_t>(side)];
  }

  bool operator==(const Setup& other) const;
};

enum class CountsX { right, left };
/// How the head is carried: where a round column has to be turned out of the way or the head moved
/// up, zero must be found again.
enum class Column { knee, round, dovetail };
enum class CountsY { away, towards };

std::string_view nameOf(Unit unit);  ///< `in`, `mm`
std::string_view nameOf(CountsX counts);
std::string_view nameOf(CountsY counts);
std::string_view nameOf(Column column);  ///< `knee`, `round`, `dovetail`
std::optional<Unit> unitNamed(std::string_view name);
std::optional<CountsX> countsXNamed(std::string_view name);
std::optional<CountsY> countsYNamed(std::string_view name);
std::optional<Column> columnNamed(std::string_view name);

/// The step a readout in millimetres has when none is named; in inches it is Machine's default.
inline constexpr std::string_view kMillimetreStep = "0.01";

/// The readout and what hangs on it.
struct Machine {
  Unit unit = Unit::inch;
  std::string step = "0.0005";  ///< as lettered; `readStep` gives its value
  /// The way the tool moves over the work while the readout goes up.
  CountsX xCounts = CountsX::right;
  CountsY yCounts = CountsY::away;
  std::optional<Lettered> finder;  ///< diameter of the edge finder's tip
  /// How closely the machine goes to a coordinate, either way; empty when nobody knows.
  std::optional<Lettered> accuracy;
  std::optional<Lettered> finderError;            ///< how far a zero found may be off, either way
  std::array<std::optional<Lettered>, 3> travel;  ///< of the slides X, Y, Z, end to end
  std::optional<Lettered> quill;                  ///< how far the quill comes down
  std::optional<Column> column;
  std::vector<int> speeds;  ///< of the spindle, revolutions a minute; empty where nobody said
  /// Which way the rotary table turns, seen from above, while its dial goes up.
  std::optional<Sense> rotaryCounts;
  Extra travelExtra;  ///< unknown members of `travel`
  Extra extra;

  bool operator==(const Machine&) const = default;
};

}  // namespace inchwright
