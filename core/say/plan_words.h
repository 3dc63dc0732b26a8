#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/english.h"
#include "core/checks/checks.h"
#include "core/measure/writing.h"
#include "core/plan/tools_in_order.h"

namespace inchwright {

// What a plan and the checks say, in UK English (see `inEnglish`). Figures are shown at the step of
// the readout, in its unit.

/// Why a step is as it is, with where the rule comes from.
std::string wordsOf(Rule rule);

/// Of a step what is worth saying behind its tool: `0.2420, 0.3435 deep, 0.4165 to its end`.
std::string wordsOf(const HoleStep& step, const Step& shown);

/// The size that is never to be drilled there, as lettered; with its unit where that is not the
/// readout's. Empty where none is struck out.
std::string struckText(const HoleStep& step, Unit shown);

/// A speed as a guide is said: two figures of what the formula gives, `3200`; one that the machine
/// has as it is.
std::string speedText(const HoleStep& step);
/// Where the speeds in a material are from; empty where none are known.
std::string speedSource(std::string_view material, English english);

/// The pins of the shop that go in and do not, else the limits; empty of a hole without any.
std::string pinWords(const HolePlan& plan, const Step& shown);

/// `with` is the other part's hole, of a hole that is drilled with, from or after one.
std::string wordsOf(HoleNote note, const std::optional<PartPlace>& with = {});

/// Why that kind of work stands where it does.
std::string wordsOf(OrderRule rule);

/// What is lacking, the nearest that is owned with what each changes, and what to buy or bore.
std::string wordsOf(const Lacking& lacking, const Step& shown);

/// What nobody said and what was not looked at for want of it.
std::string wordsOf(Unsaid unsaid);

/// One finding: what meets what, by how much, what to shift.
std::string wordsOf(const Finding& finding, const Step& shown);

}  // namespace inchwright
