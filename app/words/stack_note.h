#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "app/words/streams.h"
#include "core/measure/writing.h"
#include "core/plan/gap.h"
#include "core/tolerance/simulation.h"
#include "core/tolerance/stack.h"

namespace inchwright::app {

/// `+`, `-`, or with a fraction for a member that only goes in by a part: `+1/2`.
std::string factorText(const Rational& factor);

/// `41 %`; tenths where a share is small enough for them to tell something, `under 0.1 %` below.
std::string percentText(double share);

/// How much a slanted member moves the sum, without its sign: inch an inch, or inch a degree.
double slopeOf(const StackMember& member);
/// Micro-arcseconds as decimal degrees: `55`, `0.5`.
std::string degreesText(std::int64_t microArcseconds);

std::string_view spreadName(Spread spread);  ///< `normal`, `rectangular`, `triangular`
std::optional<Spread> spreadNamed(std::string_view name);

/// `title` and the nominal, then the members one a line.
void printMembers(const std::string& title, const Stack& stack, const Step& step,
                  const Streams& streams);

/// What stacks come to, side by side under their names where there are several; then the limits
/// they have to keep to, and how far one goes beyond them. Requires: at least one, all with the
/// same limits and inflation.
void printOutcome(const std::vector<std::pair<std::string, const GapStack*>>& stacks,
                  const Step& step, const Streams& streams);

/// What so many put together at random came to, with a histogram of at most 16 lines.
void printSimulation(const std::string& title, const Simulation& simulation, const GapStack& sum,
                     const Step& step, const Streams& streams);

}  // namespace inchwright::app
