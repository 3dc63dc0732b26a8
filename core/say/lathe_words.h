#pragma once

#include <string>
#include <vector>

#include "core/base/english.h"
#include "core/turned/lathe_work.h"

namespace inchwright {

// Sentences about work in the lathe.

/// `Length (Z)` and `Dia (X)`, each with the readout's own letter; `Half dia (X)` where it counts
/// the radius.
std::string lengthHeading(const LatheWork& work);
std::string diaHeading(const LatheWork& work);

/// `held by the left end, Z0 at R; Z counts up towards the chuck`.
std::string heldWords(const LatheWork& work, const Lathe& lathe);

/// What a cut is: `rough`, `part off`; with what it makes: `rough B`.
std::string cutWords(const Cut& cut);

/// What must be known before it is cut, empty when nothing: `only between Z -1.781 and Z -3.438: D4
/// in front of it would be cut away`, `to the drill's point: the bore is blind`.
std::string cutNote(const Cut& cut, const std::string& letter);

/// What a row wants said beside its figures: `half angle 1.193°: the top slide`, `cut in an earlier
/// setup`.
std::string latheNote(const LatheRow& row, const Step& step);

/// `groove G is no smaller than C, by 0.000`.
std::string turnedFaultWords(const TurnedFault& fault, const Step& step);

/// What to mind before anything is turned, a line each: faults of the shape, a tool that would come
/// into the jaws, a zero that nobody set, stretches without a place. Empty where all is well.
std::vector<std::string> latheWarnings(const LatheWork& work);

/// All of a setup for people: heading, rows, cuts, what can't be reached.
std::vector<std::string> latheLines(const LatheWork& work, const Lathe& lathe);

/// As `tablesAsCsv`: `part,setup,unit,step,id,kind,length,dia`.
std::string latheAsCsv(const std::vector<LatheWork>& works);

}  // namespace inchwright
