#include <array>
#include <optional>

#include "core/base/ascii.h"
#include "core/measure/writing.h"
#include "core/shop/fit_rows.h"
#include "core/shop/fits.h"
#include "core/shop/sizes.h"

namespace inchwright {
namespace {

// Sizes go over one figure and up to and including the next, in millimetres.
constexpr std::array<int, 11> kIsoSizesTo{3, 6, 10, 18, 30, 40, 50, 65, 80, 100, 120};
constexpr int kFinestGrade = 5;
constexpr int kCoarsestGrade = 11;

// Widths of the grades 5 to 11 in micrometres.
constexpr int kGradeWidths[][7] = {
    {4, 6, 10, 14, 25, 40, 60},     {5, 8, 12, 18, 30, 48, 75},     {6, 9, 15, 22, 36, 58, 90},
    {8, 11, 18, 27, 43, 70, 110},   {9, 13, 21, 33, 52, 84, 130},   {11, 16, 25, 39, 62, 100, 160},
    {11, 16, 25, 39, 62, 100, 160}, {13, 19, 30, 46, 74, 120, 190}, {13, 19, 30, 46, 74, 120, 190},
    {15, 22, 35, 54, 87, 140, 220}, {15, 22, 35, 54, 87, 140, 220},
};

// The limit of a shaft that lies next to the basic size, in micrometres: the upper one of c to h,
// the lower one of k to s.
struct LetterRow {
  char letter;
  bool fromMemory;
  std::array<int, 11> deviation;
};
constexpr LetterRow kLetterRows[] = {
    {'c', true, {-60, -70, -80, -95, -110, -120, -130, -140, -150, -170, -180}},
    {'d', true, {-20, -30, -40, -50, -65, -80, -80, -100, -100, -120, -120}},
    {'e', false, {-14, -20, -25, -32, -40, -50, -50, -60, -60, -72, -72}},
    {'f', false, {-6, -10, -13, -16, -20, -25, -25, -30, -30, -36, -36}},
    {'g', false, {-2, -4, -5, -6, -7, -9, -9, -10, -10, -12, -12}},
    {'h', false, {0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0}},
    {'k', false, {0, 1, 1, 1, 2, 2, 2, 2, 2, 3, 3}},
    {'m', false, {2, 4, 6, 7, 8, 9, 9, 11, 11, 13, 13}},
    {'n', false, {4, 8, 10, 12, 15, 17, 17, 20, 20, 23, 23}},
    {'p', false, {6, 12, 15, 18, 22, 26, 26, 32, 32, 37, 37}},
    {'r', true, {10, 15, 19, 23, 28, 34, 34, 41, 43, 51, 54}},
    {'s', false, {14, 19, 23, 28, 35, 43, 43, 53, 59, 71, 79}},
};
constexpr std::size_t kLastSourcedSize = 6;  // up to 50 mm

struct IsoClass {
  std::string letter;  // small; `js` is the only one of two
  bool hole = false;
  int grade = 0;
};

std::optional<IsoClass> isoClassIn(std::string_view name) {
  IsoClass found;
  std::size_t at = 0;
  for (; at < name.size() && !isDigit(name[at]); ++at) {
    const bool capital = name[at] >= 'A' && name[at] <= 'Z';
    if (!capital && !(name[at] >= 'a' && name[at] <= 'z')) return std::nullopt;
    if (at > 0 && capital != found.hole) return std::nullopt;
    found.hole = capital;
    found.letter += static_cast<char>(capital ? name[at] - 'A' + 'a' : name[at]);
  }
  const std::string_view digits = name.substr(at);
  if (found.letter.empty() || found.letter.size() > 2 || digits.empty() || digits.size() > 2) {
    return std::nullopt;
  }
  for (const char c : digits) {
    if (!isDigit(c)) return std::nullopt;
    found.grade = found.grade * 10 + (c - '0');
  }
  return found;
}

Error noSuchClass(std::string_view name, bool hole) {
  return {ErrorCode::notFound,
          std::string(hole ? "holes" : "shafts") + " of ISO 286 are known here as " +
              (hole ? "C D E F G H JS K M N P R S" : "c d e f g h js k m n p r s") +
              " in grades 5 to 11 (K M N P R S from 6 on, K M N up to 8), not as `" +
              std::string(name) + "`",
          ""};
}

std::optional<std::size_t> isoSizeIndex(Length size) {
  if (size.ticks() <= 0) return std::nullopt;
  for (std::size_t i = 0; i < kIsoSizesTo.size(); ++i) {
    if (size <= Length::ticks(kIsoSizesTo[i] * Length::kTicksPerMillimetre)) return i;
  }
  return std::nullopt;
}

Tolerance upwardsFrom(int lower, int width) {
  return {microns(lower + width), microns(lower)};
}

std::optional<Tolerance> shaftLimits(const LetterRow& row, std::size_t size, int grade) {
  const int width = kGradeWidths[size][grade - kFinestGrade];
  const int deviation = row.deviation[size];
  if (row.letter <= 'h') return upwardsFrom(deviation - width, width);
  // Shafts k lie from the basic size up in the coarser grades.
  return upwardsFrom(row.letter == 'k' && grade > 7 ? 0 : deviation, width);
}

std::optional<Tolerance> holeLimits(const LetterRow& row, std::size_t size, int grade) {
  const int width = kGradeWidths[size][grade - kFinestGrade];
  const int deviation = row.deviation[size];
  if (row.letter <= 'h') return upwardsFrom(-deviation, width);
  const bool transition = row.letter <= 'n';
  if (grade == kFinestGrade || (transition && grade > 8)) return std::nullopt;
  // A hole of these classes is to give the same fit with a shaft one grade finer.
  const bool shifted = size > 0 && grade <= (transition ? 8 : 7);
  const int shift = shifted ? width - kGradeWidths[size][grade - kFinestGrade - 1] : 0;
  return upwardsFrom(-deviation + shift - width, width);
}

}  // namespace

bool isIsoFromMemory(std::string_view name, Length size) {
  const auto found = isoClassIn(name);
  const auto index = isoSizeIndex(size);
  if (!found || !index || *index > kLastSourcedSize) return true;
  for (const LetterRow& row : kLetterRows) {
    if (found->letter.size() == 1 && row.letter == found->letter[0]) return row.fromMemory;
  }
  return false;
}

Result<Tolerance> limitsOfClass(std::string_view name, Length size) {
  const auto found = isoClassIn(name);
  if (!found) {
    return Error{ErrorCode::badText,
                 "`" + std::string(name) + "` is no hole or shaft of ISO 286, such as `H7` or `g6`",
                 ""};
  }
  if (found->grade < kFinestGrade || found->grade > kCoarsestGrade) {
    return noSuchClass(name, found->hole);
  }
  const auto index = isoSizeIndex(size);
  if (!index) {
    return Error{ErrorCode::notFound,
                 "fits of ISO 286 are known here for sizes over 0 up to 120 mm; this is " +
                     writeDecimal(size, Unit::millimetre) + " mm",
                 ""};
  }
  if (found->letter == "js") {
    const std::int64_t width = kGradeWidths[*index][found->grade - kFinestGrade];
    return Tolerance::symmetric(Length::ticks(microns(width).ticks() / 2));
  }
  for (const LetterRow& row : kLetterRows) {
    if (found->letter.size() != 1 || row.letter != found->letter[0]) continue;
    const auto limits = found->hole ? holeLimits(row, *index, found->grade)
                                    : shaftLimits(row, *index, found->grade);
    if (limits) return *limits;
  }
  return noSuchClass(name, found->hole);
}

}  // namespace inchwright
