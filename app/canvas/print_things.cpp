#include "app/canvas/print_things.h"

#include <QCoreApplication>
#include <algorithm>

#include "app/session/activity.h"
#include "core/say/reading_words.h"

namespace inchwright::app {
namespace {

constexpr qreal kLeastBox = 9;  // pixels to each side: what a click may miss by

QString said(const char* text) {
  return QCoreApplication::translate("Desk", text);
}

PrintThing placeThing(const DrawnPlace& place, const PrintLayout& layout, const PrintMap& map,
                      const Work& work) {
  PrintThing thing;
  thing.id = place.id;
  const QString id = QString::fromStdString(place.id);
  thing.name = place.id == place.feature
                   ? said("%1 %2").arg(wordFor(place.kind), id)
                   : said("%1 of %2").arg(id, QString::fromStdString(place.feature));
  thing.status = place.disputed ? said("in dispute")
                 : place.placed ? said("placed")
                                : said("loose");
  if (place.parked) thing.status += said(", not on the print yet");
  const auto& chosen = work.desk().selection().places;
  const auto pointed = work.chosen();
  thing.chosen = std::find(chosen.begin(), chosen.end(), place.id) != chosen.end() ||
                 std::find(pointed.begin(), pointed.end(), place.id) != pointed.end();
  if (thing.chosen) thing.status += said(", chosen");
  const QPointF at = map.toWidget(place.at);
  const qreal reach = std::max(place.radius * map.scale(), kLeastBox);
  thing.box = QRectF(at.x() - reach, at.y() - reach, 2 * reach, 2 * reach);
  if (place.across) {
    const QRectF all = map.toWidget(layout.drawn().bounds);
    thing.box = place.alongViewX
                    ? QRectF(at.x() - kLeastBox, all.top(), 2 * kLeastBox, all.height())
                    : QRectF(all.left(), at.y() - kLeastBox, all.width(), 2 * kLeastBox);
  }
  return thing;
}

PrintThing readingThing(const DimensionLine& line, const QRectF& box, const Work& work) {
  PrintThing thing;
  thing.id = line.reading;
  thing.reading = true;
  const Reading* reading = work.desk().part().reading(line.reading);
  // The second reading is blind for everybody.
  const QString figure = work.doing() == Doing::rereading ? said("not shown") : line.text;
  if (reading != nullptr) {
    const std::string ends = endsWords(work.desk().part(), *reading);
    thing.name = said("reading %1: %2").arg(QString::fromStdString(ends), figure);
  }
  switch (line.standing) {
    case Standing::agrees:
      thing.status = said("agrees");
      break;
    case Standing::alone:
      thing.status = said("nothing checks it");
      break;
    case Standing::doubtful:
      thing.status = said("far from where it was traced");
      break;
    case Standing::clashes:
      thing.status = said("on a chain that does not close");
      break;
  }
  const auto& chosen = work.desk().selection().readings;
  thing.chosen = std::find(chosen.begin(), chosen.end(), line.reading) != chosen.end();
  if (thing.chosen) thing.status += said(", chosen");
  thing.box = box;
  return thing;
}

}  // namespace

int thingCount(const PrintLayout& layout) {
  return static_cast<int>(layout.drawn().places.size() + layout.lines().size());
}

PrintThing thingAt(int index, const PrintLayout& layout, const PrintMap& map, const QRectF& pane,
                   const Work& work) {
  const auto& places = layout.drawn().places;
  const auto number = static_cast<std::size_t>(index);
  if (number < places.size()) return placeThing(places[number], layout, map, work);
  const DimensionLine& line = layout.lines()[number - places.size()];
  return readingThing(line, layout.figureBox(line, map, pane), work);
}

}  // namespace inchwright::app
