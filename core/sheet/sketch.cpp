#include "core/sheet/sketch.h"

#include <string>
#include <utility>

#include "core/sheet/font_tables.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

/// The hyphen and the plus of the faces as drawn, in 1/2000 em: measured from their outlines.
struct SignShape {
  double hyphenRight;
  double middle;  // above the baseline
  double thickness;
  double plusWidth;
};

SignShape signShape(Typeface face) {
  if (face == Typeface::bold) return {752, 512, 224, 940};
  return {700, 522, 156, 900};
}

void move(PolylineItem& item, double dx, double dy) {
  for (PlanePoint& point : item.points) point = {point.x + dx, point.y + dy};
}

void move(CircleItem& item, double dx, double dy) {
  item.centre = {item.centre.x + dx, item.centre.y + dy};
}

void move(TextItem& item, double dx, double dy) {
  item.at = {item.at.x + dx, item.at.y + dy};
}

bool hasSign(std::string_view figure) {
  return !figure.empty() && (figure.front() == '+' || figure.front() == '-');
}

}  // namespace

void Sketch::text(double x, double y, std::string_view words, const Look& look) {
  if (words.empty()) return;
  TextItem item{{x, y},    std::string(words), look.height, look.align,
                look.face, look.ink,           look.turn};
  for (char& character : item.text) {
    if (static_cast<unsigned char>(character) < ' ' || character == '\x7f') character = ' ';
  }
  // U+FFFE and U+FFFF are no characters, and XML has no way to write them.
  for (std::size_t at = 0; (at = item.text.find("\xEF\xBF", at)) != std::string::npos; ++at) {
    if (at + 2 < item.text.size() && static_cast<unsigned char>(item.text[at + 2]) >= 0xBE) {
      item.text.replace(at, 3, 1, ' ');
    }
  }
  items_.push_back(std::move(item));
}

void Sketch::figure(double x, double y, std::string_view figure, const Look& look) {
  const double unit = look.height / kFigureHeight;
  const bool minus = !figure.empty() && figure.front() == '-';
  const double digits = x + signWidth(look.height, look.face);
  const double sign = hasSign(figure) ? textWidth(figure.substr(0, 1), look.height, look.face) : 0;
  text(digits - sign, y, figure, look);
  if (!minus) return;
  const SignShape shape = signShape(look.face);
  const double right = digits - sign + shape.hyphenRight * unit;
  const double middle = y - shape.middle * unit;
  line({right - shape.plusWidth * unit, middle}, {right, middle},
       {look.ink, shape.thickness * unit, {}});
}

void Sketch::line(PlanePoint from, PlanePoint to, const Stroke& stroke) {
  polyline({from, to}, stroke);
}

void Sketch::polyline(std::vector<PlanePoint> points, const Stroke& stroke, bool closed) {
  PolylineItem item;
  item.points = std::move(points);
  item.closed = closed;
  item.stroke = stroke;
  items_.push_back(std::move(item));
}

void Sketch::box(const PaperBox& box, const Stroke& stroke) {
  polyline(
      {{box.left, box.top}, {box.right, box.top}, {box.right, box.bottom}, {box.left, box.bottom}},
      stroke, true);
}

void Sketch::fill(std::vector<PlanePoint> points, Ink ink) {
  PolylineItem item;
  item.points = std::move(points);
  item.closed = true;
  item.stroked = false;
  item.filled = true;
  item.fill = ink;
  items_.push_back(std::move(item));
}

void Sketch::fill(const PaperBox& box, Ink ink) {
  fill({{box.left, box.top}, {box.right, box.top}, {box.right, box.bottom}, {box.left, box.bottom}},
       ink);
}

void Sketch::circle(PlanePoint centre, double radius, const Stroke& stroke) {
  CircleItem item;
  item.centre = centre;
  item.radius = radius;
  item.stroke = stroke;
  items_.push_back(std::move(item));
}

void Sketch::disc(PlanePoint centre, double radius, Ink ink) {
  CircleItem item;
  item.centre = centre;
  item.radius = radius;
  item.stroked = false;
  item.filled = true;
  item.fill = ink;
  items_.push_back(std::move(item));
}

void Sketch::add(DrawItem item) {
  items_.push_back(std::move(item));
}

void Sketch::add(const Sketch& other, double dx, double dy) {
  add(Sketch(other), dx, dy);
}

void Sketch::add(Sketch&& other, double dx, double dy) {
  for (DrawItem& item : other.items_) {
    std::visit([&](auto& one) { move(one, dx, dy); }, item);
    items_.push_back(std::move(item));
  }
  for (PaperTarget& target : other.targets_) {
    target.from = {target.from.x + dx, target.from.y + dy};
    target.to = {target.to.x + dx, target.to.y + dy};
    targets_.push_back(std::move(target));
  }
  other = {};
}

Page Sketch::onPage(double width, double height) {
  return {width, height, std::exchange(items_, {}), std::exchange(targets_, {})};
}

void Sketch::target(PaperTarget target) {
  targets_.push_back(std::move(target));
}

double signWidth(double height, Typeface face) {
  return textWidth("+", height, face);
}

double figureWidth(std::string_view figure, double height, Typeface face) {
  if (hasSign(figure)) figure.remove_prefix(1);
  return signWidth(height, face) + textWidth(figure, height, face);
}

}  // namespace inchwright
