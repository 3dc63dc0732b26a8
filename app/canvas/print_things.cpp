// The print view in words: every place and reading on it, for those who do not see it.

#include <algorithm>

#include "app/canvas/print_painter.h"
#include "app/canvas/print_view.h"
#include "app/session/activity.h"

namespace inchwright::app {
namespace {

constexpr qreal kLeastBox = 9;  // pixels to each side: what a click may miss by

}  // namespace

int PrintView::thingCount() const {
  if (onBarePicture()) return 0;
  return static_cast<int>(drawn().places.size() + dimensions().size());
}

PrintView::Thing PrintView::thing(int index) const {
  const auto& places = drawn().places;
  const auto number = static_cast<std::size_t>(index);
  return number < places.size() ? placeThing(places[number])
                                : readingThing(dimensions()[number - places.size()]);
}

PrintView::Thing PrintView::placeThing(const DrawnPlace& place) const {
  Thing thing;
  thing.id = place.id;
  const QString id = QString::fromStdString(place.id);
  thing.name = place.id == place.feature
                   ? tr("%1 %2").arg(wordFor(place.kind), id)
                   : tr("%1 of %2").arg(id, QString::fromStdString(place.feature));
  thing.status = place.disputed ? tr("in dispute") : place.placed ? tr("placed") : tr("loose");
  if (place.parked) thing.status += tr(", not on the print yet");
  const auto& chosen = work_.desk().selection().places;
  const auto pointed = work_.chosen();
  thing.chosen = std::find(chosen.begin(), chosen.end(), place.id) != chosen.end() ||
                 std::find(pointed.begin(), pointed.end(), place.id) != pointed.end();
  if (thing.chosen) thing.status += tr(", chosen");
  const QPointF at = map_.toWidget(place.at);
  const qreal reach = std::max(place.radius * map_.scale(), kLeastBox);
  thing.box = QRectF(at.x() - reach, at.y() - reach, 2 * reach, 2 * reach);
  if (place.across) {
    const QRectF all = map_.toWidget(drawn().bounds);
    thing.box = place.alongViewX
                    ? QRectF(at.x() - kLeastBox, all.top(), 2 * kLeastBox, all.height())
                    : QRectF(all.left(), at.y() - kLeastBox, all.width(), 2 * kLeastBox);
  }
  return thing;
}

PrintView::Thing PrintView::readingThing(const DimensionLine& line) const {
  Thing thing;
  thing.id = line.reading;
  thing.reading = true;
  const Reading* reading = work_.desk().part().reading(line.reading);
  // The second reading is blind for everybody.
  const QString figure = work_.doing() == Doing::rereading ? tr("not shown") : line.text;
  if (reading != nullptr) {
    thing.name =
        tr("reading %1, %2 to %3: %4")
            .arg(QString::fromStdString(reading->id), QString::fromStdString(reading->from),
                 QString::fromStdString(reading->to), figure);
  }
  switch (line.standing) {
    case Standing::agrees:
      thing.status = tr("agrees");
      break;
    case Standing::alone:
      thing.status = tr("nothing checks it");
      break;
    case Standing::doubtful:
      thing.status = tr("far from where it was traced");
      break;
    case Standing::clashes:
      thing.status = tr("on a chain that does not close");
      break;
  }
  const auto& chosen = work_.desk().selection().readings;
  thing.chosen = std::find(chosen.begin(), chosen.end(), line.reading) != chosen.end();
  if (thing.chosen) thing.status += tr(", chosen");
  thing.box = figureBox(line);
  return thing;
}

void PrintView::pointAt(int index) {
  const Thing what = thing(index);
  Pointed pointed;
  pointed.at = inFace(what.box.center());
  (what.reading ? pointed.reading : pointed.place) = what.id;
  work_.point(pointed);
}

}  // namespace inchwright::app
