#pragma once

#include <QObject>
#include <memory>
#include <thread>
#include <vector>

#include "app/picture/picture_reader.h"
#include "core/seen/offer.h"

namespace inchwright::app {

/// What a squared-up picture offers, and the way from its pixels to inches of the face.
struct PictureOffers {
  seen::Offers offers;
  Homography toInches;
};

/// Finds in the background what a picture offers; what is wanted last takes the place of what is
/// under way, and nothing waits for it.
class OfferReader : public QObject {
  Q_OBJECT

 public:
  explicit OfferReader(QObject* parent = nullptr);
  ~OfferReader() override;  ///< stops what is under way and waits for it, a tenth of a second

  /// Requires: the picture's points square it up.
  void read(WantedPicture wanted, PlanePoint zero, Unit unit,
            std::vector<seen::Confirmed> confirmed);
  void stop();
  bool isReading() const { return stop_ != nullptr; }

 signals:
  /// What was wanted; null with what was wrong when it could not be had.
  void arrived(std::shared_ptr<PictureOffers> offers, const QString& trouble);

 private:
  std::shared_ptr<std::atomic<bool>> stop_;  ///< of what is under way
  std::thread thread_;
};

}  // namespace inchwright::app
