#pragma once

#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "core/measure/lettered.h"
#include "core/part/axis.h"
#include "core/part/extra.h"

namespace inchwright {

/// The bytes of a picture file, as they stand in it. Copies share them, so that the versions of a
/// document do not hold the picture once each; they never change.
class PictureBytes {
 public:
  PictureBytes() = default;
  explicit PictureBytes(std::string bytes)
      : bytes_(bytes.empty() ? nullptr : std::make_shared<const std::string>(std::move(bytes))) {}

  bool empty() const { return bytes_ == nullptr; }
  const std::string& get() const {
    static const std::string none;
    return bytes_ ? *bytes_ : none;
  }
  /// Constant time for copies of one another.
  bool operator==(const PictureBytes& other) const {
    return bytes_ == other.bytes_ || get() == other.get();
  }

 private:
  std::shared_ptr<const std::string> bytes_;
};

/// A point of a picture whose place on the print is known: pixel 118, 902 is `0`, `1 3/16`.
struct SquaringPoint {
  double pixelX = 0;  ///< from the upright picture's top left corner
  double pixelY = 0;  ///< downwards
  Lettered x;         ///< on the print, to the right; bare figures are inches
  Lettered y;         ///< on the print, upwards

  bool operator==(const SquaringPoint&) const = default;
};

/// How a picture is shown: brightness and contrast from -100 to 100, fade from 0 (as it is) to 100
/// (gone).
struct PictureTone {
  int brightness = 0;
  int contrast = 0;
  int fade = 0;

  bool operator==(const PictureTone&) const = default;
};

/// Whether it is 0, 90, 180 or 270: degrees, anticlockwise.
constexpr bool isQuarterTurn(int degrees) {
  return degrees >= 0 && degrees < 360 && degrees % 90 == 0;
}

/// A photo, scan or PDF page of the print. It only says where things are drawn, and never a size.
struct Picture {
  std::string name;
  std::string file;   ///< linked: a path, relative to the document's folder; or else
  PictureBytes data;  ///< kept in the document
  int page = 1;       ///< of a file that has several
  int turn = 0;       ///< by how much it is turned to be looked at as it was taken: isQuarterTurn
  std::vector<SquaringPoint> points;  ///< what it is squared up by; none: as it was taken
  PictureTone tone;
  Extra extra;

  bool operator==(const Picture&) const = default;
};

/// Which picture lies under a face of the part. Of several under one face, such as the halves of a
/// long print, the first lies in front.
struct PictureView {
  Face face = Face::top;
  std::string picture;
  /// Where the face's own zero lies on the squared-up print: two plain decimals, inches; empty for
  /// its zero.
  std::vector<std::string> at;
  /// How far the print draws the view turned from upright, as a view from the side beside a plan
  /// is: isQuarterTurn. A place p of the face is drawn at `at` + p turned so far.
  int turn = 0;
  Extra extra;

  bool operator==(const PictureView&) const = default;
};

}  // namespace inchwright
