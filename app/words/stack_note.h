#pragma once

#include <string>

#include "app/words/streams.h"
#include "core/measure/writing.h"
#include "core/tolerance/stack.h"

namespace inchwright::app {

/// `+`, `-`, or with a fraction for a member that only goes in by a part: `+1/2`.
std::string factorText(const Rational& factor);

/// `title`, the members one a line, then what they come to.
void printStack(const std::string& title, const Stack& stack, const Step& step,
                const Streams& streams);

}  // namespace inchwright::app
