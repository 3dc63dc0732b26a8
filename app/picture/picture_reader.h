#pragma once

#include <QObject>
#include <QString>
#include <memory>
#include <optional>
#include <thread>
#include <vector>

#include "app/picture/squared_picture.h"
#include "core/part/picture.h"

namespace inchwright::app {

/// A picture that is wanted: where its bytes are, and the points it is squared up by; without
/// points it comes as it was taken.
struct WantedPicture {
  PictureBytes bytes;
  QString file;  ///< read when `bytes` are empty; empty itself: a link that leads away
  int page = 1;
  std::vector<SquaringPoint> points;
  int turn = 0;  ///< how it is turned to be shown: degrees anticlockwise, a quarter turn

  bool operator==(const WantedPicture&) const = default;
};

/// The bytes of a wanted picture's file; `trouble` says why there are none. From any thread.
QByteArray bytesOf(const WantedPicture& wanted, QString& trouble);

/// Reads pictures and squares them up in the background, one at a time: what is wanted last
/// takes the place of what is under way.
class PictureReader : public QObject {
  Q_OBJECT

 public:
  explicit PictureReader(QObject* parent = nullptr);
  ~PictureReader() override;  ///< stops what is under way and waits for it

  void read(WantedPicture wanted);
  /// Stops what is under way; what it would have brought never comes.
  void stop();
  /// Pictures may be read from now on. Until then nothing runs beside what is painted first.
  void letRead();

  /// Of what is under way, in percent; empty when nothing is.
  std::optional<int> progress() const;
  /// Why what was read last could not be; empty when it could.
  const QString& trouble() const { return trouble_; }

 signals:
  void progressed();  ///< from time to time while something is under way
  /// What was wanted, or null with `trouble()` saying why not.
  void arrived(std::shared_ptr<SquaredPicture> picture);

 private:
  void start();
  void finish(const std::shared_ptr<WorkUnderWay>& work, std::shared_ptr<SquaredPicture> picture,
              const QString& trouble);

  WantedPicture wanted_;
  std::shared_ptr<WorkUnderWay> work_;
  std::thread thread_;
  bool mayRead_ = false;
  QString trouble_;
};

}  // namespace inchwright::app
