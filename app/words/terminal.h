#pragma once

#include <string>

#include "app/words/streams.h"

namespace inchwright::app {

/// Whether standard output is a terminal and NO_COLOR is not set.
bool terminalWantsColour();

/// Writes all of a word's output to standard output. The outcome is the status as it was, also when
/// the reader of a pipe went away (`inchwright table … | head`); but kUnusable, with one line on
/// `streams.err`, when it could not be written for another reason, such as a full disk.
int deliver(const std::string& output, int status, const Streams& streams);

}  // namespace inchwright::app
