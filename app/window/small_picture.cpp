#include "app/window/small_picture.h"

#include <QFileInfo>
#include <QImageReader>
#include <QPainter>
#include <algorithm>

#include "app/base/look.h"
#include "app/machine/place_picture.h"
#include "app/picture/picture_decoder.h"
#include "core/document/atomic_file.h"
#include "core/document/document.h"
#include "core/plan/table.h"
#include "core/solution/solution.h"
#include "core/turned/turned_shape.h"

namespace inchwright::app {
namespace {

constexpr qint64 kMostOfPage = 20'000'000;  // bytes
constexpr qint64 kMostOfJob = 2'000'000;

QPixmap pictureOf(const QString& file, const QSize& size, qreal density) {
  QImageReader reader(file);
  reader.setAutoTransform(true);
  const QSize whole = reader.size();
  const QSize wanted = size * density;
  // Many kinds are decoded small at once.
  if (whole.isValid()) reader.setScaledSize(whole.scaled(wanted, Qt::KeepAspectRatio));
  const QImage image = reader.read();
  return image.isNull() ? QPixmap() : QPixmap::fromImage(image);
}

QPixmap pageOf(const QString& file, const QSize& size, qreal density) {
  const auto bytes = readWholeFile(file.toStdString(), static_cast<std::size_t>(kMostOfPage));
  if (!bytes.ok()) return {};
  const auto page =
      decodePicture(QByteArray::fromRawData(bytes->data(), static_cast<qsizetype>(bytes->size())));
  if (!page.ok()) return {};
  return QPixmap::fromImage(
      page->scaled(size * density, Qt::KeepAspectRatio, Qt::SmoothTransformation));
}

/// A turned part from the side, its centre line level: what is placed of it and has a diameter.
void paintTurned(QPainter& painter, const QRectF& box, const TurnedShape& shape) {
  constexpr double kRim = 8;
  QRectF all;
  const auto quad = [](const TurnedStretch& one) {
    const double left = one.left->toDouble() / Length::kTicksPerInch;
    const double right = one.right->toDouble() / Length::kTicksPerInch;
    const double first = one.atLeft->toInches() / 2, second = one.atRight->toInches() / 2;
    return QPolygonF({{left, -first}, {right, -second}, {right, second}, {left, first}});
  };
  std::vector<std::pair<QPolygonF, bool>> quads;  // those inside last
  for (const bool inner : {false, true}) {
    for (const TurnedStretch& one : shape.stretches) {
      if (one.inner != inner || !one.left || !one.right || !one.atLeft || !one.atRight) continue;
      quads.emplace_back(quad(one), inner);
      all = all.united(quads.back().first.boundingRect());
    }
  }
  if (all.isEmpty()) return;
  const double scale =
      std::min((box.width() - 2 * kRim) / all.width(), (box.height() - 2 * kRim) / all.height());
  const auto move = QTransform::fromTranslate(box.center().x(), box.center().y())
                        .scale(scale, scale)
                        .translate(-all.center().x(), -all.center().y());
  for (const auto& [outline, inner] : quads) {
    const Look& look = Look::now();
    painter.setPen(QPen(look.pencil, 1, inner ? Qt::DashLine : Qt::SolidLine));
    painter.setBrush(inner ? QBrush(Qt::NoBrush) : QBrush(look.print));
    painter.drawPolygon(move.map(outline));
  }
}

}  // namespace

QPixmap drawingOf(const Job& job, const Part& part, const Solution& solution, const QSize& size,
                  qreal density) {
  QPixmap drawing(size * density);
  drawing.setDevicePixelRatio(density);
  drawing.fill(Look::now().print);
  if (part.features.empty()) return drawing;
  QPainter painter(&drawing);
  painter.setRenderHint(QPainter::Antialiasing);
  if (part.turned) {
    paintTurned(painter, QRectF(QPointF(), size), turnedShape(part, solution));
    return drawing;
  }
  const Setup setup = part.setups.empty() ? defaultSetup(part, solution) : part.setups.front();
  const auto work = workAt(job, part, solution, setup);
  if (!work.ok()) return drawing;
  paintPlacePicture(painter, QRectF(QPointF(), size), *work, {});
  return drawing;
}

QPixmap smallPicture(const QString& file, const QSize& size, qreal density) {
  const QFileInfo info(file);
  if (!info.isFile()) return {};
  const QString ending = info.suffix().toLower();
  if (ending == QStringLiteral("inchwright")) {
    if (info.size() > kMostOfJob) return {};
    const auto job = loadDocument(file.toStdString());
    if (!job.ok() || job->parts.empty()) return {};
    const Part& part = job->parts.front();
    const auto solution = solve(part);
    return solution.ok() ? drawingOf(*job, part, *solution, size, density) : QPixmap();
  }
  if (!looksLikePicture(file)) return {};
  QPixmap picture = ending == QStringLiteral("pdf") ? pageOf(file, size, density)
                                                    : pictureOf(file, size, density);
  picture.setDevicePixelRatio(density);
  return picture;
}

}  // namespace inchwright::app
