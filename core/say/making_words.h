#pragma once

#include <string>
#include <vector>

#include "core/base/english.h"
#include "core/plan/table.h"

namespace inchwright {

/// What is fitted, without the kind of work: `15/64`, `to 1.5`, `tapping size for 3 PX`. Empty
/// where the kind says all.
std::string toolText(const MakingStep& step, Unit shown, English english);

/// The tool by itself, as a table names it: `15/64`, `ream 1/4`, `spot`.
std::string toolName(const MakingStep& step, Unit shown, English english);

/// One operation: `drill 15/64`.
std::string stepWords(const MakingStep& step, Unit shown, English english);

/// The operations at a hole in order: `spot, drill 15/64, ream 1/4`.
std::string stepsWords(const TableRow& row, Unit shown, English english);

/// How deep: `through`, `3/8`; empty where no depth is kept to.
std::string depthText(const MakingStep& step, Unit shown);

/// What is made of a feature, as lettered: `Ø1/4 ream, through`.
std::string sizeWords(const Feature& feature, Unit shown, English english);

/// All that there is to note of a row: how its place is found, what is in doubt, what lacks.
std::string noteWords(const Feature& feature, const TableRow& row, English english);

}  // namespace inchwright
