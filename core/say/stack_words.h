#pragma once

#include <string>

#include "core/tolerance/stack.h"

namespace inchwright {

/// What a member of a stack is called: `r2`, `row D`, `fit H7/g6 on 1/4`, `1/4-20 UNC in normal
/// hole 9/32`, `measured`; of one from zero its place.
std::string memberName(const StackMember& member);

/// Where the walk over it begins: a place, or `zero`.
std::string beginsAt(const StackMember& member);

}  // namespace inchwright
