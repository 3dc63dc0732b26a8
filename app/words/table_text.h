#pragma once

#include <string>
#include <vector>

#include "app/words/streams.h"
#include "core/plan/table.h"

namespace inchwright::app {

/// One table for people: the heading, how to find zero, and aligned rows with signed figures and
/// the print's own fractions beside them.
void printTableText(const SetupTable& table, const Streams& streams);

/// Tables as comma-separated values (RFC 4180: CRLF at line ends, quotes doubled): one heading
/// line, then one line a row, with the part, setup, unit and step on each.
std::string tablesAsCsv(const std::vector<SetupTable>& tables);

/// One operation: `drill 15/64`.
std::string stepWords(const MakingStep& step);
/// The operations at a hole in order: `spot, drill 15/64, ream 1/4`.
std::string stepsText(const TableRow& row);

std::string_view nameOf(StepKind kind);
/// The size of a step in its own unit: `0.0005`.
std::string stepText(const Step& step);

}  // namespace inchwright::app
