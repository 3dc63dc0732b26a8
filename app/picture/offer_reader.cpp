#include "app/picture/offer_reader.h"

#include <utility>

#include "app/picture/picture_decoder.h"
#include "app/picture/squared_picture.h"

namespace inchwright::app {
namespace {

Result<PictureOffers> offersOn(const WantedPicture& wanted, PlanePoint zero,
                               const seen::Options& options) {
  const Result<Homography> map = pixelsToFace(wanted.points, zero);
  if (!map.ok()) return map.error();
  QString trouble;
  const QByteArray bytes = bytesOf(wanted, trouble);
  if (!trouble.isEmpty()) return Error{ErrorCode::fileTrouble, trouble.toStdString(), {}};
  const Result<QImage> image = decodePicture(bytes, wanted.page);
  if (!image.ok()) return image.error();
  if (*options.stop) return Error{ErrorCode::notFound, "stopped", {}};
  const QImage grey = image->convertToFormat(QImage::Format_Grayscale8);
  auto offers = seen::offer({grey.constBits(), grey.width(), grey.height(), grey.bytesPerLine()},
                            *map, options);
  if (!offers.ok()) return offers.error();
  return PictureOffers{std::move(*offers), *map};
}

}  // namespace

OfferReader::OfferReader(QObject* parent) : QObject(parent) {}

OfferReader::~OfferReader() {
  stop();
  if (thread_.joinable()) thread_.join();
}

void OfferReader::stop() {
  if (stop_) *stop_ = true;
  stop_.reset();
}

void OfferReader::read(WantedPicture wanted, PlanePoint zero, Unit unit,
                       std::vector<seen::Confirmed> confirmed) {
  stop();
  stop_ = std::make_shared<std::atomic<bool>>(false);
  seen::Options options;
  options.unit = unit;
  options.confirmed = std::move(confirmed);
  thread_ = std::thread([this, stop = stop_, wanted = std::move(wanted), zero, options,
                         before = std::move(thread_)]() mutable {
    if (before.joinable()) before.join();
    if (*stop) return;
    options.stop = stop.get();
    auto found = offersOn(wanted, zero, options);
    auto offers = found.ok() ? std::make_shared<PictureOffers>(std::move(*found)) : nullptr;
    const QString trouble = found.ok() ? QString() : QString::fromStdString(found.error().text);
    // `this` outlives the thread, which its destructor waits for.
    QMetaObject::invokeMethod(
        this,
        [this, stop, offers, trouble] {
          if (stop != stop_) return;
          stop_.reset();
          emit arrived(offers, trouble);
        },
        Qt::QueuedConnection);
  });
}

}  // namespace inchwright::app

#include "moc_offer_reader.cpp"
