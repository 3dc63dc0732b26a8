#include "core/sheet/bounds.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <numbers>
#include <string_view>

#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

PaperBox around(std::initializer_list<PlanePoint> points) {
  PaperBox box{points.begin()->x, points.begin()->y, points.begin()->x, points.begin()->y};
  for (const PlanePoint& point : points) {
    box.left = std::min(box.left, point.x);
    box.right = std::max(box.right, point.x);
    box.top = std::min(box.top, point.y);
    box.bottom = std::max(box.bottom, point.y);
  }
  return box;
}

PaperBox boundsOf(const PolylineItem& line) {
  if (line.points.empty()) return {};
  PaperBox box = around({line.points.front()});
  for (const PlanePoint& point : line.points) {
    box = around({{box.left, box.top}, {box.right, box.bottom}, point});
  }
  return box.grownBy(line.stroked ? line.stroke.width / 2 : 0);
}

PaperBox boundsOf(const CircleItem& circle) {
  const PaperBox point{circle.centre.x, circle.centre.y, circle.centre.x, circle.centre.y};
  return point.grownBy(circle.radius + (circle.stroked ? circle.stroke.width / 2 : 0));
}

}  // namespace

TextReach reachOf(std::string_view text) {
  TextReach reach{1.03, 0.03};
  for (const char character : text) {
    const bool plain = (character >= '0' && character <= '9') ||
                       (character >= 'A' && character <= 'Z' && character != 'Q') ||
                       character == ' ' || character == '.' || character == '+' || character == '-';
    if (plain) continue;
    if (static_cast<unsigned char>(character) >= 0x80) return {1.3, 0.36};
    reach = {1.12, 0.36};
  }
  return reach;
}

PaperBox boundsOf(const TextItem& text) {
  const double width = textWidth(text.text, text.height, text.face);
  const double start = text.align == TextAlign::left     ? 0
                       : text.align == TextAlign::centre ? -width / 2
                                                         : -width;
  const TextReach reach = reachOf(text.text);
  const double angle = text.turn * std::numbers::pi / 180;
  const double cosine = std::cos(angle);
  const double sine = std::sin(angle);
  // Along the text and up from its baseline, turned anticlockwise on paper whose y goes down.
  const auto corner = [&](double along, double up) {
    return PlanePoint{text.at.x + along * cosine - up * sine,
                      text.at.y - along * sine - up * cosine};
  };
  const double above = reach.above * text.height;
  const double below = -reach.below * text.height;
  return around({corner(start, above), corner(start + width, above), corner(start, below),
                 corner(start + width, below)});
}

PaperBox boundsOf(const DrawItem& item) {
  return std::visit([](const auto& one) { return boundsOf(one); }, item);
}

}  // namespace inchwright
