#pragma once

#include <QRect>
#include <QRectF>
#include <QRegion>
#include <compare>
#include <cstddef>
#include <tuple>
#include <vector>

namespace inchwright::app {

/// Something that is drawn: where, and a mark that tells what it looks like there.
struct Inked {
  QRect box;
  std::size_t look = 0;

  auto operator<=>(const Inked& other) const {
    return std::tuple(look, box.x(), box.y(), box.width(), box.height()) <=>
           std::tuple(other.look, other.box.x(), other.box.y(), other.box.width(),
                      other.box.height());
  }
  bool operator==(const Inked&) const = default;
};

/// The pixels a box touches: of one from 0.5 to 2.5 across, 0, 1 and 2. As `toAlignedRect` without
/// its four calls of `floor`: a large part is looked through ten thousand times for what changed.
QRect pixelsOf(const QRectF& box);

/// Where two differ; both are put in order.
QRegion changedBetween(std::vector<Inked>& before, std::vector<Inked>& after);

}  // namespace inchwright::app
