#include "core/sheet/draw_list.h"

#include <cmath>
#include <cstdint>
#include <string>
#include <string_view>

#include "core/sheet/tape_up.h"

namespace inchwright {
namespace {

/// Two decimals, without regard to the locale; never `-0.00`.
std::string number(double value) {
  const long long hundredths = std::llround(value * 100);
  const long long magnitude = hundredths < 0 ? -hundredths : hundredths;
  std::string text = std::to_string(magnitude / 100) + '.' + std::to_string(magnitude % 100 / 10) +
                     std::to_string(magnitude % 10);
  return hundredths < 0 ? '-' + text : text;
}

std::string point(const PlanePoint& at) {
  return number(at.x) + ',' + number(at.y);
}

std::string_view nameOf(Ink ink) {
  switch (ink) {
    case Ink::black:
      return "black";
    case Ink::grey:
      return "grey";
    case Ink::red:
      return "red";
    case Ink::blue:
      return "blue";
    case Ink::white:
      return "white";
    case Ink::pale:
      break;
  }
  return "pale";
}

std::string_view nameOf(Typeface face) {
  switch (face) {
    case Typeface::regular:
      return "regular";
    case Typeface::bold:
      return "bold";
    case Typeface::mono:
      return "mono";
    case Typeface::monoBold:
      break;
  }
  return "monoBold";
}

std::string_view nameOf(TextAlign align) {
  return align == TextAlign::left ? "left" : align == TextAlign::centre ? "centre" : "right";
}

std::string drawn(bool stroked, const Stroke& stroke, bool filled, Ink fill) {
  std::string text;
  if (stroked) {
    text += " stroke " + number(stroke.width) + ' ' + std::string(nameOf(stroke.ink));
    for (const double dash : stroke.dash) text += ' ' + number(dash);
  }
  if (filled) text += " fill " + std::string(nameOf(fill));
  return text;
}

std::string lineOf(const PolylineItem& item) {
  std::string text = item.closed ? "shape" : "line";
  for (const PlanePoint& at : item.points) text += ' ' + point(at);
  return text + drawn(item.stroked, item.stroke, item.filled, item.fill);
}

std::string lineOf(const CircleItem& item) {
  std::string text = "circle " + point(item.centre) + " radius " + number(item.radius);
  if (item.sweep != 360) text += " from " + number(item.start) + " by " + number(item.sweep);
  return text + drawn(item.stroked, item.stroke, item.filled, item.fill);
}

std::string lineOf(const TextItem& item) {
  std::string text = "text " + point(item.at) + ' ' + number(item.height) + ' ' +
                     std::string(nameOf(item.face)) + ' ' + std::string(nameOf(item.align));
  if (item.ink != Ink::black) text += ' ' + std::string(nameOf(item.ink));
  if (item.turn != 0) text += " turn " + number(item.turn);
  return text + " | " + item.text;
}

}  // namespace

std::string drawListText(const std::vector<Page>& pages) {
  std::string text;
  for (std::size_t i = 0; i < pages.size(); ++i) {
    text += "page " + std::to_string(i + 1) + ' ' + number(pages[i].width) + " x " +
            number(pages[i].height) + '\n';
    for (const DrawItem& item : pages[i].items) {
      text += std::visit([](const auto& one) { return lineOf(one); }, item) + '\n';
    }
  }
  return text;
}

}  // namespace inchwright
