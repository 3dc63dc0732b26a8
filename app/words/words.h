#pragma once

#include <span>
#include <string>

#include "app/words/word.h"

namespace inchwright::app {

// One file a word; each is `WORD_word.cpp` and listed in words.cpp.
extern const Word kReadWord;
extern const Word kCheckWord;
extern const Word kTableWord;
extern const Word kSheetWord;
extern const Word kPlanWord;
extern const Word kStackWord;
extern const Word kRangesWord;
extern const Word kBudgetWord;
extern const Word kAdjustWord;
extern const Word kWhyWord;
extern const Word kMadeWord;
extern const Word kMendWord;
extern const Word kDifferenceWord;
extern const Word kOutlineWord;
extern const Word kCurveWord;
extern const Word kOffersWord;

/// The word named, or null: then the argument is a document for the desk.
const Word* wordNamed(std::string_view name);

/// Whether the arguments are for the command line at all: a word, `help`, an option such as
/// `--help` or `--version` first, or what can only be a word mistyped (`chek plate.inchwright`).
/// What is not, opens the desk.
bool areWords(std::span<const std::string> args);

/// Does what the arguments say. Requires: `areWords(args)`. No exception leaves it; the outcome is
/// an exit status.
int runWords(std::span<const std::string> args, Streams& streams);

/// The list of words and how to use them.
void printOverview(std::ostream& out);

}  // namespace inchwright::app
