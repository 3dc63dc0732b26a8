#include "core/part/reading.h"

#include "core/part/name_table.h"

namespace inchwright {
namespace {

constexpr NameTable<kReadingKinds> kReadingKindNames{"along",    "centres", "angle",     "radius",
                                                     "diameter", "pcd",     "square_off"};
constexpr NameTable<kUnderstandingKinds> kUnderstandingKindNames{
    "in_line",  "midway", "symmetric", "equal",     "concentric", "tangent",
    "parallel", "square", "on",        "way_round", "beside"};
constexpr NameTable<2> kEqualByNames{"spacing", "radius"};
constexpr NameTable<2> kTouchNames{"outside", "inside"};

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

std::string_view nameOf(EqualBy by) {
  return nameIn(kEqualByNames, by);
}

std::string_view nameOf(Touch touch) {
  return nameIn(kTouchNames, touch);
}

std::optional<EqualBy> equalByNamed(std::string_view name) {
  return valueNamed<EqualBy>(kEqualByNames, name);
}

std::optional<Touch> touchNamed(std::string_view name) {
  return valueNamed<Touch>(kTouchNames, name);
}

}  // namespace inchwright
