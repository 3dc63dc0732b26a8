#include "app/pdf/pdf_module.h"

#include <QBuffer>
#include <QPdfDocument>
#include <algorithm>
#include <cmath>

namespace inchwright::app {
namespace {

constexpr double kPointsPerInch = 72;

/// A PDF that is open as long as this is.
class OpenPdf {
 public:
  explicit OpenPdf(const QByteArray& bytes) {
    buffer_.setData(bytes);
    buffer_.open(QIODevice::ReadOnly);
    document_.load(&buffer_);
  }

  QString trouble(int page) const {
    if (document_.status() != QPdfDocument::Status::Ready) {
      return QStringLiteral("this PDF can't be read");
    }
    if (page > document_.pageCount()) {
      return QStringLiteral("the PDF has %1 pages").arg(document_.pageCount());
    }
    return {};
  }

  QImage drawn(int page, double dots, double mostPixels) {
    const QSizeF inches = document_.pagePointSize(page - 1) / kPointsPerInch;
    const double area = std::max(inches.width() * inches.height(), 1e-6);
    const double fine = std::min(dots, std::sqrt(mostPixels / area));
    return document_.render(page - 1, (inches * fine).toSize().expandedTo({2, 2}));
  }

 private:
  QBuffer buffer_;
  QPdfDocument document_;
};

}  // namespace

QString PdfModule::check(const QByteArray& bytes, int page) {
  return OpenPdf(bytes).trouble(page);
}

PdfPages::Drawn PdfModule::draw(const QByteArray& bytes, int page, double dots, double mostPixels) {
  OpenPdf pdf(bytes);
  const QString trouble = pdf.trouble(page);
  if (!trouble.isEmpty()) return {{}, trouble};
  const QImage image = pdf.drawn(page, dots, mostPixels);
  if (image.isNull()) return {{}, QStringLiteral("this page can't be drawn")};
  return {image, {}};
}

}  // namespace inchwright::app

#include "moc_pdf_module.cpp"
