#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/part/job.h"
#include "core/part/place_index.h"
#include "core/part/pointer.h"

namespace inchwright {

/// The most places the parts of a job may have together; beyond it they are refused as `tooLarge`,
/// since a few bytes of a document can ask for a thousand.
inline constexpr std::size_t kMostPlaces = 2'000'000;

std::size_t placeCount(const Part& part);

/// A fault found in a part, or none.
using Fault = std::optional<Error>;

inline Fault faultAt(const Pointer& pointer, std::string text) {
  return Error{ErrorCode::badDocument, std::move(text), pointer.text()};
}

// The pieces of `checkPart`, each for one member. `pointer` is where that member stands in the
// part, such as `/features/3`.
Fault checkFeature(const Feature& feature, const PlaceIndex& index, const Pointer& pointer);
Fault checkReading(const Reading& reading, const PlaceIndex& index, const Pointer& pointer);
Fault checkUnderstanding(const Understanding& understanding, const PlaceIndex& index,
                         const Pointer& pointer);
/// Pictures named and named once, and every view of one that is there. `pointer`s are from the
/// document's root.
Fault checkPictures(const Job& job);
/// What a setup says of how the work is held. `pointer` is that of the setup.
Fault checkHolding(const Holding& held, Face face, const Pointer& pointer);
/// Turned features and setups of the lathe stand in a turned part only.
Fault checkTurnedOnly(const Part& part);
/// The job's lathe, its mates; `pointer`s are from the document's root.
Fault checkLathe(const Job& job);
Fault checkMates(const Job& job);
Fault checkOutlines(const Part& part, const PlaceIndex& index);
/// `setupPointer` is where the setup stands.
Fault checkCurves(const Setup& setup, const PlaceIndex& index, const Pointer& setupPointer);
Fault checkSetup(const Setup& setup, const PlaceIndex& index, const Pointer& pointer);

/// How many of `of` an understanding of its kind names at least.
std::size_t leastNamed(const Understanding& understanding);

Fault checkKnown(const Id& id, const PlaceIndex& index, const Pointer& pointer);
/// All known, and none named twice.
Fault checkAllKnown(const std::vector<Id>& ids, const PlaceIndex& index, const Pointer& pointer);
/// Whether they are points, all of one face: with two axes each.
Fault checkPoints(const std::vector<Id>& ids, const PlaceIndex& index, const Pointer& pointer);
/// Whether `id` is a line or an edge, and of the face of the place `beside`.
Fault checkStraight(const Id& id, const Id& beside, const PlaceIndex& index,
                    const Pointer& pointer);
/// Whether a feature is round in its face: a hole, slot, ring, row, round or arc.
bool isCurve(const Feature& feature);
/// Whether it has a radius or diameter: those, and what is turned, bored or grooved.
bool hasRadius(const Feature& feature);

/// Whether `id` names a place with a position along `axis`.
Fault checkPlace(const Id& id, Axis axis, const PlaceIndex& index, const Pointer& pointer);

/// Everything a document requires beyond its parts: sizes of the machine, parts named and named
/// once, `checkPart` for each. The place of the error is a JSON pointer from the document's root.
Result<Done> checkJob(const Job& job);

}  // namespace inchwright
