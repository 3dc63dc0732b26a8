#pragma once

#include <string>
#include <vector>

#include "core/base/english.h"
#include "core/plan/table.h"

namespace inchwright {

/// The kind of work as the tool's name says it: `spot`, `drill`, `end mill`, `hand ream`.
std::string verbText(const HoleStep& step);
/// What it is done with: `15/64`, `3/4`; of a bar the size it comes to; empty where the kind says
/// all. On a metric readout sizes in inches say so.
std::string toolText(const HoleStep& step, Unit shown);

/// One operation with what it is done with: `spot`, `drill 15/64`, `end mill 3/4`, `ream 1/4`.
std::string stepWords(const HoleStep& step, Unit shown);

/// `incomplete: ` before the operations of a place where one is missing among them, for want of a
/// tool or of a size, so that nobody reams where nothing was drilled; else empty.
std::string incompleteWords(const HolePlan& plan);

/// The operations at a place in order: `spot, drill 15/64, ream 1/4, deburr`.
std::string stepsWords(const TableRow& row, Unit shown);

/// What all places with that run of tools share: `never drill 1/4 · 69 % of thread · 1200, 600
/// rpm`.
std::string runNotes(const HolePlan& plan, Unit shown);
/// What is kept to at one place: depths of what is not through, each boring cut with a line to
/// write on, passes, the pins that go in and do not. Empty where there is nothing.
std::string keptTo(const HolePlan& plan, const Step& shown);

/// What is to be minded at a place, besides what lacks: `spotted through its mate …`.
std::string notesOf(const HolePlan& plan);

/// How deep to full diameter: `through`, `0.3750`; empty where no depth is kept to.
std::string depthText(const HoleStep& step, const Step& shown);

/// What is made of a feature, as lettered: `Ø1/4 ream, through`; of a hole put right by the next
/// size that, and the print's: `Ø17/64 ream, through, not 1/4`.
std::string sizeWords(const Feature& feature, const HolePlan& plan, Unit shown);
std::string drilledWords(const Drilled& drilled, Unit shown);

/// All that there is to note of a row: how its place is found, what is in doubt, what lacks.
std::string noteWords(const Feature& feature, const TableRow& row, const Step& shown,
                      English english);

}  // namespace inchwright
