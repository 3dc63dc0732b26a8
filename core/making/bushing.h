#pragma once

#include <optional>
#include <string>

#include "core/base/result.h"
#include "core/making/found_size.h"
#include "core/measure/limits.h"

namespace inchwright {

/// A round hole that came out over its size or off its place, as far as it was measured.
struct WrongHole {
  SizeLimits wanted;  ///< its diameter
  Length nominal;     ///< as lettered
  Length found;       ///< the greatest it may be
  Length offX;        ///< found centre less wanted centre; along any two square axes
  Length offY;
  Unit unit = Unit::inch;  ///< of the job: which round sizes and which press fits are taken

  /// How far the centre is off, up to the next whole tick.
  Length off() const;
};

/// A bush, or a plug, and the hole for it. Diameters; all to the tick.
struct Bushing {
  Length bore;  ///< of the hole for it: a whole number of 64ths of an inch or half millimetres
  SizeLimits boreLimits;  ///< as the press fit gives them
  Length outside;         ///< the middle of `outsideLimits`
  SizeLimits outsideLimits;
  Length inside;      ///< the size wanted, reached after pressing: a bush closes in
  Length wall;        ///< thinnest wall, (outside − inside) / 2 less the throw
  Length throwBy;     ///< how far the inside lies off the outside; 0 unless eccentric
  std::string press;  ///< the fit by its name: `LN2`, `H7/p6`
  /// Of a plug: the wanted hole cuts the joint between plug and part, so that a drill would run
  /// off.
  bool cutsJoint = false;

  bool operator==(const Bushing&) const = default;
};

/// The least wall a bush is given: 1/32 in, or 0.8 mm. Common practice, no source.
Length leastBushWall(Unit unit);

/// A bush about the wanted centre: the hole for it is bored true there, so it takes in all of the
/// hole as found: at least the found size and twice what it is off.
/// A hole of 1/4 found .262 and .004 off → bore 21/64 or more, by LN2 (above 19 in: refused).
/// Errors: `notFound` where no press fit is known for the size; `outOfRange`.
Result<Bushing> bushOnWantedCentre(const WrongHole& hole);

/// A bush whose inside is off its outside by what the hole is off; it is pressed into the hole as
/// found, trued to a round size about its own centre. Errors: as above.
Result<Bushing> eccentricBush(const WrongHole& hole);

/// A plug in the hole as found, trued likewise, and the wanted hole bored through it.
Result<Bushing> plugFor(const WrongHole& hole);

}  // namespace inchwright
