#include "app/session/side_words.h"

#include <QCoreApplication>

namespace inchwright::app {

QString wordFor(Side side) {
  const auto tr = [](const char* text) { return QCoreApplication::translate("Sides", text); };
  switch (side) {
    case Side::top:
      return tr("top");
    case Side::bottom:
      return tr("bottom");
    case Side::left:
      return tr("left");
    case Side::right:
      return tr("right");
    case Side::front:
      return tr("front");
    case Side::back:
      return tr("back");
  }
  return {};
}

}  // namespace inchwright::app
