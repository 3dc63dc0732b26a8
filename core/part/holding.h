#pragma once

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/measure/lettered.h"
#include "core/part/axis.h"
#include "core/part/extra.h"

namespace inchwright {

enum class Jaw { fixed, moving };
std::string_view nameOf(Jaw jaw);  ///< `fixed`, `moving`
std::optional<Jaw> jawNamed(std::string_view name);

/// A parallel under the work in the vice.
struct LaidParallel {
  Jaw jaw = Jaw::fixed;
  std::optional<Lettered> thick;  ///< square to the jaw
  std::optional<Lettered> tall;   ///< what the work stands up by
  std::optional<Lettered> gap;    ///< from that jaw to it; empty: it stands against the jaw
  /// Along the jaw, from the side at the stop, else from the left end of the work as it lies;
  /// empty: the whole length.
  std::optional<Lettered> from;
  std::optional<Lettered> to;
  Extra extra;

  bool operator==(const LaidParallel&) const = default;
};

/// Something that stands on the table in the way: a clamp, or what a tool must keep clear of. Low
/// and high along the face's axes, from the outer sides at the lower ends, in the positive
/// direction; without an axis it runs on for ever along it.
struct Obstacle {
  using Span = std::pair<Lettered, Lettered>;
  std::array<std::optional<Span>, 3> along;  ///< by Axis
  std::optional<Lettered> tall;
  Extra extra;

  bool operator==(const Obstacle&) const = default;
};

/// One piece of stock as measured along the part's axes.
struct StockPiece {
  std::string name;
  std::array<std::optional<Lettered>, 3> size;  ///< by Axis
  Extra extra;

  bool operator==(const StockPiece&) const = default;
};

/// How the work is held in a setup, beyond its jaw and stop. Bare figures are in the job's unit.
struct Holding {
  /// Empty: nobody said what the work stands on. An empty list: on the vice's bed.
  std::optional<std::vector<LaidParallel>> parallels;
  std::vector<Obstacle> clamps;
  std::vector<Obstacle> clearOf;
  std::array<std::optional<Lettered>, 6> overhang;  ///< by Side: how far it stands out of the jaws
  std::vector<StockPiece> pieces;
  Extra overhangExtra;

  bool operator==(const Holding&) const = default;
};

}  // namespace inchwright
