#include "app/canvas/offered_marks.h"

#include <algorithm>

#include "app/base/look.h"

namespace inchwright::app {
namespace {

constexpr QSizeF kCutRoom(420, 220);   // pixels: the largest enlarged cut
constexpr QSizeF kNoteRoom(260, 150);  // and of a note
constexpr int kFromTop = 52;
constexpr int kForCorner = 60;  // below, where the corner box lies

}  // namespace

std::vector<PrintScene::Offered> offeredMarks(const Work& work) {
  std::vector<PrintScene::Offered> out;
  const Offering* offering = work.doing() == Doing::offering ? work.offering() : nullptr;
  if (offering == nullptr) return out;
  const auto line = [](PlanePoint a, PlanePoint b) { return QLineF(a.x, a.y, b.x, b.y); };
  // Those that come with the lit dimension are lit with it.
  std::vector<std::size_t> lit = work.offeredAlongside();
  if (const auto one = offering->offered.lit()) lit.push_back(*one);
  const auto& features = offering->offered.offers().features;
  for (std::size_t i = 0; i < features.size(); ++i) {
    if (!offering->offered.isOpen(i)) continue;
    const seen::FeatureOffer& one = features[i];
    const bool shown = std::find(lit.begin(), lit.end(), i) != lit.end();
    if (one.kind == seen::OfferedFeature::row) {
      out.push_back({line(one.from, one.to), 0, shown});
      continue;
    }
    // An arc's circle may be far larger than it is.
    const bool ring = one.drawnRadius > 0 && one.kind != seen::OfferedFeature::arc;
    out.push_back(
        {ring ? line(one.at, one.at) : line(one.from, one.to), ring ? one.drawnRadius : 0, shown});
  }
  if (const auto* reading = offering->offered.reading()) {
    out.push_back({line(reading->from, reading->to), 0, true});
  }
  return out;
}

void paintOfferedCut(QPainter& painter, const Work& work, const PictureLayer& layer,
                     const PrintMap& map, const QSize& pane) {
  const Offering* offering = work.doing() == Doing::offering ? work.offering() : nullptr;
  if (offering == nullptr) return;
  const seen::FeatureOffer* feature = offering->offered.feature();
  const seen::ReadingOffer* reading = offering->offered.reading();
  if (reading == nullptr && (feature == nullptr || feature->noted.w <= 0)) return;
  QRectF inches = offering->inches(reading != nullptr ? reading->cut : feature->noted);
  const qreal more = 0.06 * std::max(inches.width(), inches.height());
  inches.adjust(-more, -more, more, more);
  // How many holes it speaks of stands below, where y is less, and their circle below that.
  if (reading == nullptr) {
    inches.setTop(inches.top() - (feature->pcd.empty() ? 0.8 : 1.7) * inches.height());
  }
  const QSizeF most(pane.width() * 0.6, pane.height() - kFromTop - kForCorner);
  const QSizeF room = (reading != nullptr ? kCutRoom : kNoteRoom).boundedTo(most);
  const QSize pixels = inches.size().scaled(room, Qt::KeepAspectRatio).toSize();
  const qreal ratio = painter.device()->devicePixelRatioF();
  QImage cut = layer.cut(inches, pixels * ratio);
  if (cut.isNull()) return;
  cut.setDevicePixelRatio(ratio);
  // On the side that the dimension or the place itself is not on.
  const QPointF lit = reading != nullptr ? inches.center() : QPointF(feature->at.x, feature->at.y);
  const bool left = map.toWidget(lit).x() > pane.width() / 2.0;
  const QPoint at(left ? 12 : pane.width() - 12 - pixels.width(), kFromTop);
  painter.drawImage(at, cut);
  painter.setPen(QPen(Look::now().pencil, kFirmLine));
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(QRect(at, pixels).adjusted(0, 0, -1, -1));
}

}  // namespace inchwright::app
