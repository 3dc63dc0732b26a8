#include "app/words/words.h"

#include <algorithm>
#include <array>
#include <exception>
#include <filesystem>
#include <ostream>
#include <vector>

#include "app/words/console.h"
#include "core/base/near_word.h"

namespace inchwright::app {
namespace {

constexpr std::array kWords{&kReadWord,       &kCheckWord,   &kTableWord,  &kPlanWord,
                            &kSheetWord,      &kStackWord,   &kRangesWord, &kBudgetWord,
                            &kAdjustWord,     &kWhyWord,     &kMadeWord,   &kMendWord,
                            &kDifferenceWord, &kOutlineWord, &kCurveWord,  &kOffersWord};

constexpr std::string_view kHelp = "help";

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

/// What is neither a word nor the name of a file that is there or could be meant: it looks like a
/// word, or there is more behind it than the desk could open.
bool isMistyped(std::span<const std::string> args) {
  const std::string& first = args.front();
  std::error_code fault;
  if (std::filesystem::exists(first, fault)) return false;
  const bool plain = !first.empty() && std::all_of(first.begin(), first.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  });
  return plain || (args.size() > 1 && args[1].substr(0, 1) != "-");
}

int refuseWord(const std::string& name, Streams& streams) {
  std::string text = "there is no such word, and no such file";
  std::vector<std::string_view> known;
  for (const Word* const word : kWords) known.push_back(word->name);
  if (const auto nearest = nearestWord(name, known)) {
    text += "; did you mean " + std::string(*nearest) + "?";
  } else {
    text += "; inchwright --help lists the words";
  }
  return refuse(streams, {}, {ErrorCode::badRequest, std::move(text), name});
}

/// `help`, and `help WORD`.
int runHelp(std::span<const std::string> about, Streams& streams) {
  if (about.empty()) {
    printOverview(streams.out);
    return kFine;
  }
  const Word* const word = wordNamed(about.front());
  if (word == nullptr) return refuseWord(about.front(), streams);
  streams.out << word->help;
  return kFine;
}

}  // namespace

const Word* wordNamed(std::string_view name) {
  const auto found = std::find_if(kWords.begin(), kWords.end(),
                                  [&](const Word* word) { return word->name == name; });
  return found == kWords.end() ? nullptr : *found;
}

bool areWords(std::span<const std::string> args) {
  if (args.empty() || args.front() == "--") return false;
  const std::string& first = args.front();
  return first == kHelp || wordNamed(first) != nullptr || first.substr(0, 1) == "-" ||
         isMistyped(args);
}

int runWords(std::span<const std::string> args, Streams& streams) {
  if (args.front() == kHelp) return runHelp(args.subspan(1), streams);
  const Word* const word = wordNamed(args.front());
  if (word == nullptr && isMistyped(args)) return refuseWord(args.front(), streams);
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
         "inchwright --picture OUT.png [FILE] [--size 1280x720] [--lamplight] [--force]\n"
         "                           draws the desk into a picture, without a display\n"
         "inchwright WORD ...        does one thing without a window:\n";
  for (const Word* word : kWords) {
    std::string name(word->name);
    name.resize(12, ' ');
    out << "  " << name << word->summary << '\n';
  }
  out << "inchwright WORD --help     says what a word takes, as does help WORD; --version names "
         "the\n"
         "                           edition\n"
         "\n"
         "Exit status: 0 fine; 1 done, and there is something to look at (a clash, a loose\n"
         "feature); 2 the words or the file could not be used.\n";
}

}  // namespace inchwright::app
