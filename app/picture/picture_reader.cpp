#include "app/picture/picture_reader.h"

#include <QFileInfo>
#include <QTimer>
#include <utility>

#include "app/picture/picture_decoder.h"
#include "core/document/atomic_file.h"

namespace inchwright::app {
namespace {

constexpr int kProgressEvery = 100;  // milliseconds

/// Null when it was cancelled, or can't be read, with `trouble` saying why.
std::shared_ptr<SquaredPicture> squaredUp(const WantedPicture& wanted, WorkUnderWay& work,
                                          QString& trouble) {
  const QByteArray bytes = bytesOf(wanted, trouble);
  if (!trouble.isEmpty() || work.cancelled) return nullptr;
  auto image = decodePicture(bytes, wanted.page);
  if (!image.ok()) {
    trouble = QString::fromStdString(image.error().text);
    return nullptr;
  }
  auto squared = squarePicture(std::move(image).value(), wanted.points, work);
  if (!squared) return nullptr;
  return std::make_shared<SquaredPicture>(turnedBy(*std::move(squared), wanted.turn));
}

}  // namespace

QByteArray bytesOf(const WantedPicture& wanted, QString& trouble) {
  if (!wanted.bytes.empty()) {
    const std::string& kept = wanted.bytes.get();
    return QByteArray::fromRawData(kept.data(), static_cast<qsizetype>(kept.size()));
  }
  if (wanted.file.isEmpty()) {
    trouble = QStringLiteral("the link leads away from the document's folder");
    return {};
  }
  auto read = readWholeFile(wanted.file.toStdString(), kLargestPictureFile);
  if (read.ok()) return QByteArray::fromStdString(*read);
  trouble = QFileInfo(wanted.file).fileName() + QStringLiteral(": ") +
            QString::fromStdString(read.error().text);
  return {};
}

PictureReader::PictureReader(QObject* parent) : QObject(parent) {}

PictureReader::~PictureReader() {
  stop();
  if (thread_.joinable()) thread_.join();
}

void PictureReader::read(WantedPicture wanted) {
  stop();
  trouble_.clear();
  wanted_ = std::move(wanted);
  work_ = std::make_shared<WorkUnderWay>();
  if (mayRead_) start();
}

void PictureReader::stop() {
  if (work_) work_->cancelled = true;
  work_.reset();
}

void PictureReader::letRead() {
  if (std::exchange(mayRead_, true)) return;
  if (work_) start();
}

std::optional<int> PictureReader::progress() const {
  return work_ ? std::optional(work_->percent.load()) : std::nullopt;
}

void PictureReader::start() {
  // Nobody waits at the desk for what was stopped, but two pictures are never decoded at once.
  thread_ =
      std::thread([this, work = work_, wanted = wanted_, before = std::move(thread_)]() mutable {
        if (before.joinable()) before.join();
        if (work->cancelled) return;
        QString trouble;
        auto picture = squaredUp(wanted, *work, trouble);
        // `this` outlives the thread, which its destructor waits for.
        QMetaObject::invokeMethod(
            this, [this, work, trouble, picture] { finish(work, picture, trouble); },
            Qt::QueuedConnection);
      });
  auto* beat = new QTimer(this);
  connect(beat, &QTimer::timeout, this, [this, beat, work = work_] {
    if (work_ != work) beat->deleteLater();
    emit progressed();
  });
  beat->start(kProgressEvery);
}

void PictureReader::finish(const std::shared_ptr<WorkUnderWay>& work,
                           std::shared_ptr<SquaredPicture> picture, const QString& trouble) {
  if (work != work_) return;
  work_.reset();
  trouble_ = trouble;
  emit arrived(std::move(picture));
}

}  // namespace inchwright::app

#include "moc_picture_reader.cpp"
