#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "app/words/streams.h"
#include "core/base/listed.h"
#include "core/measure/writing.h"
#include "core/tolerance/ranges.h"

namespace inchwright::app {

/// Ticks as the readout shows them, and the same always with a sign.
std::string atStep(std::int64_t ticks, const Step& step);
std::string withSign(std::int64_t ticks, const Step& step);

/// A span's ends as the readout shows them, rounded outwards; the same as signed deviations from
/// `nominal`.
std::array<std::string, 2> outwardsAt(const Span& span, const Step& step);
std::array<std::string, 2> straysAt(const Span& span, std::int64_t nominal, const Step& step);

/// `r4 allows 2.9000 to 3.1000, but r1, r2 and r3 can make it 3.3000: 0.2000 too much`
std::string unassuredText(const Part& part, const Unassured& one, const Step& step);

/// The lines of `unassuredText` under a heading; nothing when there are none. Where the search was
/// cut short, that is said first.
void printUnassured(const Part& part, const UnassuredReadings& all, const Step& step,
                    const Streams& streams);

/// `r1, r2 and r4 can't all hold within their tolerances`; the same as a doubt.
std::string contradictionText(const Part& part, const std::vector<Source>& readings);
void printContradiction(const Part& part, const std::vector<Source>& readings,
                        const Streams& streams);

}  // namespace inchwright::app
