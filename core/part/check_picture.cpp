#include <cmath>
#include <set>
#include <string_view>

#include "core/part/check.h"
#include "core/part/plain_decimal.h"

namespace inchwright {
namespace {

constexpr const char* kQuarterTurns = "a picture is turned by 0, 90, 180 or 270";

bool isTone(const PictureTone& tone) {
  const auto within = [](int value, int low) { return value >= low && value <= 100; };
  return within(tone.brightness, -100) && within(tone.contrast, -100) && within(tone.fade, 0);
}

Fault checkPicture(const Picture& picture, const Pointer& pointer) {
  if (picture.name.empty()) return faultAt(pointer / "name", "every picture has a name");
  if (picture.file.empty() == picture.data.empty()) {
    return faultAt(pointer, "a picture is linked by `file` or kept in `data`, one of them");
  }
  if (!isTone(picture.tone)) {
    return faultAt(pointer, "brightness and contrast go from -100 to 100, fade from 0 to 100");
  }
  if (picture.page < 1) return faultAt(pointer / "page", "pages are counted from 1");
  if (!isQuarterTurn(picture.turn)) return faultAt(pointer / "turn", kQuarterTurns);
  for (std::size_t i = 0; i < picture.points.size(); ++i) {
    const SquaringPoint& point = picture.points[i];
    if (!std::isfinite(point.pixelX) || !std::isfinite(point.pixelY)) {
      return faultAt(pointer / "points" / i / "pixel", "no such pixel");
    }
  }
  return std::nullopt;
}

Fault checkView(const PictureView& view, const std::set<std::string_view>& pictures,
                const Pointer& pointer) {
  if (pictures.count(view.picture) == 0) {
    return faultAt(pointer / "picture", "there is no picture `" + view.picture + "`");
  }
  const bool plain = view.at.empty() ||
                     (view.at.size() == 2 && plainDecimal(view.at[0]) && plainDecimal(view.at[1]));
  if (!plain) return faultAt(pointer / "at", "give two plain decimals, in inches");
  if (!isQuarterTurn(view.turn)) return faultAt(pointer / "turn", kQuarterTurns);
  return std::nullopt;
}

}  // namespace

Fault checkPictures(const Job& job) {
  std::set<std::string_view> names;
  for (std::size_t i = 0; i < job.pictures.size(); ++i) {
    const Pointer pointer = Pointer() / "pictures" / i;
    if (Fault fault = checkPicture(job.pictures[i], pointer)) return fault;
    if (!names.insert(job.pictures[i].name).second) {
      return faultAt(pointer / "name", "the picture `" + job.pictures[i].name + "` is there twice");
    }
  }
  for (std::size_t p = 0; p < job.parts.size(); ++p) {
    const auto& views = job.parts[p].views;
    for (std::size_t i = 0; i < views.size(); ++i) {
      const Pointer pointer = Pointer() / "parts" / p / "views" / i;
      if (Fault fault = checkView(views[i], names, pointer)) return fault;
    }
  }
  return std::nullopt;
}

}  // namespace inchwright
