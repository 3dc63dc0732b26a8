#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/measure/length.h"
#include "core/measure/lettered.h"
#include "core/part/axis.h"
#include "core/part/extra.h"

namespace inchwright {

/// The way the carriage goes while its readout goes up: `left`, towards the chuck, or `right`.
enum class CarriageCounts { left, right };

/// What the cross slide's readout shows: the work's diameter or its radius.
enum class CrossCounts { diameter, radius };

/// The corner of a parting tool that was touched off.
enum class ToolCorner { left, right };

/// The lathe the job's turned parts are made on. Bare lengths are in its unit.
struct Lathe {
  Unit unit = Unit::inch;
  std::string step = "0.001";  ///< as lettered; `readStep` gives its value
  CarriageCounts carriageCounts = CarriageCounts::left;
  CrossCounts crossCounts = CrossCounts::diameter;
  std::string carriageLetter = "Z";  ///< as the readout calls them
  std::string crossLetter = "X";
  std::optional<Lettered> roughLeaves;  ///< on the diameter; empty: `customaryRoughLeaves`
  Extra extra;

  bool operator==(const Lathe&) const = default;
};

inline constexpr std::string_view kLatheMillimetreStep = "0.02";

/// What roughing leaves on the diameter: 0.020 in or 0.5 mm. Common practice, no source.
Length customaryRoughLeaves(Unit unit);

/// How a finished part is cut off its bar.
struct PartOff {
  Lettered width;  ///< of the tool
  ToolCorner corner = ToolCorner::left;
  Extra extra;

  bool operator==(const PartOff&) const = default;
};

/// What a setup says that is in the lathe. Whichever end is held, the chuck is at the lathe's left.
struct Chucked {
  Side held = Side::left;             ///< the end that is in the chuck: left or right
  std::optional<Lettered> standsOut;  ///< how far the work stands out of the chuck's jaws
  std::optional<PartOff> partOff;

  bool operator==(const Chucked&) const = default;
};

std::string_view nameOf(CarriageCounts counts);
std::string_view nameOf(CrossCounts counts);
std::string_view nameOf(ToolCorner corner);
std::optional<CarriageCounts> carriageCountsNamed(std::string_view name);
std::optional<CrossCounts> crossCountsNamed(std::string_view name);
std::optional<ToolCorner> toolCornerNamed(std::string_view name);

}  // namespace inchwright
