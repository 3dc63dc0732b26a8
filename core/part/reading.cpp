#include "core/part/reading.h"

#include "core/part/name_table.h"

namespace inchwright {
namespace {

constexpr NameTable<6> kReadingKindNames{"along", "centres", "angle", "radius", "diameter", "pcd"};
constexpr NameTable<8> kUnderstandingKindNames{"in_line",    "midway",  "symmetric", "equal",
                                               "concentric", "tangent", "parallel",  "square"};

}  // namespace

std::string_view nameOf(ReadingKind kind) {
  return nameIn(kReadingKindNames, kind);
}

std::string_view nameOf(UnderstandingKind kind) {
  return nameIn(kUnderstandingKindNames, kind);
}

std::optional<ReadingKind> readingKindNamed(std::string_view name) {
  return valueNamed<ReadingKind>(kReadingKindNames, name);
}

std::optional<UnderstandingKind> understandingKindNamed(std::string_view name) {
  return valueNamed<UnderstandingKind>(kUnderstandingKindNames, name);
}

}  // namespace inchwright
