#include "app/words/words.h"

#include <algorithm>
#include <array>
#include <exception>
#include <ostream>

#include "app/words/console.h"

namespace inchwright::app {
namespace {

constexpr std::array kWords{&kReadWord,  &kCheckWord,      &kTableWord,   &kPlanWord,   &kSheetWord,
                            &kStackWord, &kRangesWord,     &kBudgetWord,  &kAdjustWord, &kMadeWord,
                            &kMendWord,  &kDifferenceWord, &kOutlineWord, &kCurveWord};

bool asksForHelp(std::span<const std::string> args) {
  for (const std::string& arg : args) {
    if (arg == "--") return false;
    if (arg == "--help" || arg == "-h") return true;
  }
  return false;
}

int runOption(std::span<const std::string> args, Streams& streams) {
  const std::string& option = args.front();
  if (option == "--version") {
    streams.out << "inchwright " INCHWRIGHT_VERSION "\n";
    return kFine;
  }
  if (option == "--help" || option == "-h") {
    printOverview(streams.out);
    return kFine;
  }
  return refuse(
      streams, {},
      {ErrorCode::badRequest, "no such option; inchwright --help lists the words", option});
}

}  // namespace

const Word* wordNamed(std::string_view name) {
  const auto found = std::find_if(kWords.begin(), kWords.end(),
                                  [&](const Word* word) { return word->name == name; });
  return found == kWords.end() ? nullptr : *found;
}

bool areWords(std::span<const std::string> args) {
  return !args.empty() && args.front() != "--" &&
         (wordNamed(args.front()) != nullptr || args.front().substr(0, 1) == "-");
}

int runWords(std::span<const std::string> args, Streams& streams) {
  const Word* const word = wordNamed(args.front());
  if (word == nullptr) return runOption(args, streams);
  const std::span<const std::string> rest = args.subspan(1);
  if (asksForHelp(rest)) {
    streams.out << word->help;
    return kFine;
  }
  try {
    return word->run(rest, streams);
  } catch (const std::exception& failure) {
    return refuse(streams, word->name, {ErrorCode::outOfRange, failure.what(), {}});
  }
}

void printOverview(std::ostream& out) {
  out << "inchwright [FILE]          opens the desk, on FILE when one is named\n"
         "inchwright --picture OUT.png [FILE] [--size 1280x720] [--lamplight]\n"
         "                           draws the desk into a picture, without a display\n"
         "inchwright WORD ...        does one thing without a window:\n";
  for (const Word* word : kWords) {
    std::string name(word->name);
    name.resize(12, ' ');
    out << "  " << name << word->summary << '\n';
  }
  out << "inchwright WORD --help     says what a word takes; --version names the edition\n"
         "\n"
         "Exit status: 0 fine; 1 done, and there is something to look at (a clash, a loose\n"
         "feature); 2 the words or the file could not be used.\n";
}

}  // namespace inchwright::app
