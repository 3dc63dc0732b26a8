#include "core/base/english.h"

#include <array>
#include <cctype>

namespace inchwright {
namespace {

struct Pair {
  std::string_view uk;
  std::string_view us;
};

/// Longest first where one begins with another. Sources: the tables of shop terms of both sides
/// (BS 308 and ASME Y14.38 abbreviations); spelling as in common dictionaries.
constexpr std::array kPhrases{Pair{"drill tapping size for", "tap drill for"},
                              Pair{"tapping size", "tap drill size"},
                              Pair{"anticlockwise", "counterclockwise"},
                              Pair{"millimetres", "millimeters"},
                              Pair{"millimetre", "millimeter"},
                              Pair{"metres", "meters"},
                              Pair{"metre", "meter"},
                              Pair{"centres", "centers"},
                              Pair{"centred", "centered"},
                              Pair{"centre", "center"},
                              Pair{"towards", "toward"},
                              Pair{"colours", "colors"},
                              Pair{"colour", "color"},
                              Pair{"grey", "gray"},
                              Pair{"vices", "vises"},
                              Pair{"vice", "vise"},
                              Pair{"C'BORE", "CBORE"},
                              Pair{"C'SINK", "CSINK"},
                              Pair{"S'FACE", "SFACE"},
                              Pair{"PCD", "bolt circle"}};

bool isLetter(char c) {
  return std::isalpha(static_cast<unsigned char>(c)) != 0;
}

char lower(char c) {
  return static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
}

char upper(char c) {
  return static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
}

/// Whether `text` goes on with `word` at `at`, in any case, and the word ends there.
bool standsAt(std::string_view text, std::size_t at, std::string_view word) {
  if (text.size() - at < word.size()) return false;
  for (std::size_t i = 0; i < word.size(); ++i) {
    if (lower(text[at + i]) != lower(word[i])) return false;
  }
  const std::size_t end = at + word.size();
  return end == text.size() || !(isLetter(text[end]) || text[end] == '_');
}

std::string inCaseOf(std::string_view found, std::string_view us) {
  std::string out(us);
  if (found == "PCD") return out;
  const bool shouted = found.size() > 1 && isLetter(found[1]) && found[1] == upper(found[1]) &&
                       found[0] == upper(found[0]);
  if (shouted) {
    for (char& c : out) c = upper(c);
  } else if (found[0] == upper(found[0])) {
    out[0] = upper(out[0]);
  }
  return out;
}

}  // namespace

std::string inEnglish(std::string_view text, English english,
                      const std::function<bool(std::string_view)>& isName) {
  if (english == English::uk) return std::string(text);
  std::string out;
  out.reserve(text.size());
  bool quoted = false;
  for (std::size_t at = 0; at < text.size();) {
    if (text[at] == '`') quoted = !quoted;
    const bool begins =
        isLetter(text[at]) && (at == 0 || !(isLetter(text[at - 1]) || text[at - 1] == '_'));
    const Pair* found = nullptr;
    if (begins && !quoted) {
      for (const Pair& pair : kPhrases) {
        if (!standsAt(text, at, pair.uk)) continue;
        if (!isName || !isName(text.substr(at, pair.uk.size()))) found = &pair;
        break;
      }
    }
    if (found == nullptr) {
      out += text[at++];
      continue;
    }
    out += inCaseOf(text.substr(at, found->uk.size()), found->us);
    at += found->uk.size();
  }
  return out;
}

}  // namespace inchwright
