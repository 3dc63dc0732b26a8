#include "core/shop/fits.h"

#include "core/base/ascii.h"
#include "core/measure/writing.h"
#include "core/shop/fit_rows.h"

namespace inchwright {
namespace {

Length hundredthsOfInch(int count) {
  return Length::ticks(count * (Length::kTicksPerInch / 100));
}
Length hundredthsOfThou(int count) {
  return Length::ticks(count * (Length::kTicksPerInch / 100'000));
}

Error noFit(std::string_view name) {
  return {ErrorCode::badText,
          "`" + std::string(name) +
              "` is no fit known here: ISO 286 as hole/shaft such as `H7/g6`, or ANSI B4.1 as RC1 "
              "to RC9, LC1 to LC11, LT1 to LT6, LN1 to LN3, FN1 to FN5",
          ""};
}

// The name with capitals and without blanks, when it is made like those of ANSI B4.1.
std::string inchFitName(std::string_view text) {
  std::string name;
  for (const char c : text) {
    if (c == ' ') continue;
    name += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  }
  const bool made = name.size() >= 3 && !isDigit(name[0]) && !isDigit(name[1]) && isDigit(name[2]);
  return made ? name : "";
}

std::string sourceOfRow(std::string_view keys) {
  if (keys == "S14") return "ANSI B4.1-1967 in Machinery's Handbook, 31st ed. (S14)";
  if (keys == "S15") return "ANSI B4.1-1967 in Machinery's Handbook, 27th ed. (S15)";
  if (keys == "S16") return "ANSI B4.1-1967 in a table of fits (S16)";
  if (keys == "memory") return "ANSI B4.1-1967, from memory";
  return "ANSI B4.1-1967, put together from the grades of S14";
}

Fit fitOfRow(const InchFitRow& row, Length size) {
  Fit fit;
  fit.name = row.fit;
  fit.size = size;
  fit.hole = {hundredthsOfThou(row.holeUpper), Length()};
  fit.shaft = {hundredthsOfThou(row.shaftUpper), hundredthsOfThou(row.shaftLower)};
  fit.source = sourceOfRow(row.sourceKeys);
  return fit;
}

Result<Fit> inchFit(std::string_view text, const std::string& name, Length size) {
  int least = 0;
  int most = 0;
  for (const InchFitRow& row : inchFitRows()) {
    if (name != row.fit) continue;
    if (size > hundredthsOfInch(row.over) && size <= hundredthsOfInch(row.upTo)) {
      return fitOfRow(row, size);
    }
    if (most == 0) least = row.over;
    most = row.upTo;
  }
  if (most == 0) return noFit(text);
  return Error{ErrorCode::notFound,
               name + " is known here for sizes over " +
                   writeDecimal(hundredthsOfInch(least), Unit::inch) + " up to " +
                   writeDecimal(hundredthsOfInch(most), Unit::inch) + " in; this is " +
                   writeDecimal(size, Unit::inch) + " in",
               ""};
}

}  // namespace

Length Fit::leastClearance() const {
  return Length::ticks(hole.lower.ticks() - shaft.upper.ticks());
}

Length Fit::greatestClearance() const {
  return Length::ticks(hole.upper.ticks() - shaft.lower.ticks());
}

Result<Fit> fitByName(std::string_view name, Length size) {
  if (const std::string inch = inchFitName(name); !inch.empty()) return inchFit(name, inch, size);
  const std::size_t stroke = name.find('/');
  if (stroke == std::string_view::npos) return noFit(name);
  const std::string_view holeClass = name.substr(0, stroke);
  const std::string_view shaftClass = name.substr(stroke + 1);
  const auto isCapital = [](std::string_view text) {
    return !text.empty() && text[0] >= 'A' && text[0] <= 'Z';
  };
  if (!isCapital(holeClass) || isCapital(shaftClass)) return noFit(name);
  const Result<Tolerance> hole = limitsOfClass(holeClass, size);
  if (!hole) return hole.error();
  const Result<Tolerance> shaft = limitsOfClass(shaftClass, size);
  if (!shaft) return shaft.error();
  const bool memory = isIsoFromMemory(holeClass, size) || isIsoFromMemory(shaftClass, size);
  return Fit{std::string(name), size, *hole, *shaft,
             memory ? "ISO 286-1, in part from memory"
                    : "ISO 286-1/-2, agreeing with JIS B 0401:1999 (S56 to S58)"};
}

}  // namespace inchwright
