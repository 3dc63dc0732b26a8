#include "app/render/render.h"

#include <QBuffer>
#include <QImage>
#include <QMarginsF>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QSizeF>
#include <QSvgGenerator>
#include <algorithm>
#include <set>

#include "app/render/faces.h"

namespace inchwright::app {
namespace {

/// As it may stand in XML: what the format knows no way to write is left out, the rest escaped. The
/// generator writes a title as it is given.
QString xmlText(const QString& text) {
  QString kept;
  for (const QChar one : text) {
    const bool control = one.unicode() < 0x20 || one.unicode() == 0x7F;
    const bool none = one.unicode() == 0xFFFE || one.unicode() == 0xFFFF;
    if (!control && !none) kept += one;
  }
  return kept.toHtmlEscaped();
}

constexpr double kMmPerInch = 25.4;

Error cantWrite(const char* what) {
  return {ErrorCode::fileTrouble, std::string("the ") + what + " can't be written", {}};
}

QPageSize pageSize(const Page& page) {
  return QPageSize(QSizeF(page.width, page.height), QPageSize::Millimeter, QString(),
                   QPageSize::ExactMatch);
}

bool setPage(QPdfWriter& writer, const Page& page) {
  return writer.setPageLayout(
      QPageLayout(pageSize(page), QPageLayout::Portrait, QMarginsF(), QPageLayout::Millimeter));
}

/// Replaces the moment of writing, wherever Qt put it, by a fixed one of the same length, so that
/// the offsets in the file stay right.
void fixDates(QByteArray& pdf) {
  const auto fix = [&](const QByteArray& before, const QByteArray& pattern) {
    for (qsizetype at = pdf.indexOf(before); at >= 0; at = pdf.indexOf(before, at + 1)) {
      const qsizetype start = at + before.size();
      for (qsizetype i = 0; i < pattern.size() && start + i < pdf.size(); ++i) {
        const char was = pdf[start + i];
        if (was >= '0' && was <= '9') pdf[start + i] = pattern[i];
      }
    }
  };
  for (const char* key : {"/CreationDate (D:", "/ModDate (D:"}) fix(key, "20000101000000+00'00'");
  for (const char* key : {"<xmp:CreateDate>", "<xmp:ModifyDate>", "<xmp:MetadataDate>"}) {
    fix(key, "2000-01-01T00:00:00+00:00");
  }
}

/// The process in universal time while it lives. The PDF engine writes the local offset of its
/// dates, whose length, and so every position in the file, would hang on the time zone.
class InUniversalTime {
 public:
  InUniversalTime() : had_(qEnvironmentVariableIsSet("TZ")), was_(qgetenv("TZ")) {
    qputenv("TZ", "UTC");
  }
  ~InUniversalTime() {
    if (had_) {
      qputenv("TZ", was_);
    } else {
      qunsetenv("TZ");
    }
  }
  InUniversalTime(const InUniversalTime&) = delete;
  InUniversalTime& operator=(const InUniversalTime&) = delete;

 private:
  bool had_;
  QByteArray was_;
};

/// The style sheet that carries the faces a page uses.
QByteArray faceStyle(const Page& page) {
  std::set<Typeface> used;
  for (const DrawItem& item : page.items) {
    if (const auto* text = std::get_if<TextItem>(&item)) used.insert(text->face);
  }
  QByteArray style = "<style type=\"text/css\">\n";
  for (const Typeface face : used) {
    style += "@font-face{font-family:'" + faceFamily(face).toUtf8() +
             "';src:url(data:font/otf;base64," + faceFile(face).toBase64() +
             ") format('opentype');font-weight:" + (faceFont(face).bold() ? "700" : "400") + ";}\n";
  }
  return style + "</style>\n";
}

}  // namespace

Result<QByteArray> renderPdf(const std::vector<Page>& pages, const QString& title) {
  if (pages.empty()) return Error{ErrorCode::badRequest, "there is no page to print", {}};
  if (const Result<Done> faces = loadFaces(); !faces.ok()) return faces.error();
  QByteArray bytes;
  QBuffer buffer(&bytes);
  if (!buffer.open(QIODevice::WriteOnly)) return cantWrite("PDF");
  {
    const InUniversalTime universal;
    QPdfWriter writer(&buffer);
    writer.setTitle(title);
    writer.setCreator(QStringLiteral("Inchwright " INCHWRIGHT_VERSION));
    writer.setResolution(1200);
    if (!setPage(writer, pages.front())) return cantWrite("PDF");
    QPainter painter;
    if (!painter.begin(&writer)) return cantWrite("PDF");
    const double scale = writer.resolution() / kMmPerInch;
    for (std::size_t i = 0; i < pages.size(); ++i) {
      if (i > 0 && (!setPage(writer, pages[i]) || !writer.newPage())) return cantWrite("PDF");
      painter.resetTransform();
      painter.scale(scale, scale);
      paintPage(painter, pages[i]);
    }
    if (!painter.end()) return cantWrite("PDF");
  }
  fixDates(bytes);
  return bytes;
}

Result<QByteArray> renderSvg(const Page& page, const QString& title) {
  if (const Result<Done> faces = loadFaces(); !faces.ok()) return faces.error();
  constexpr double kUnitsPerMm = 10;
  QByteArray bytes;
  QBuffer buffer(&bytes);
  if (!buffer.open(QIODevice::WriteOnly)) return cantWrite("SVG");
  {
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setTitle(xmlText(title));
    generator.setDescription(QStringLiteral("Inchwright " INCHWRIGHT_VERSION));
    generator.setResolution(qRound(kUnitsPerMm * kMmPerInch));
    generator.setSize(QSizeF(page.width * kUnitsPerMm, page.height * kUnitsPerMm).toSize());
    generator.setViewBox(QRectF(0, 0, page.width * kUnitsPerMm, page.height * kUnitsPerMm));
    QPainter painter;
    if (!painter.begin(&generator)) return cantWrite("SVG");
    painter.scale(kUnitsPerMm, kUnitsPerMm);
    painter.fillRect(QRectF(0, 0, page.width, page.height), Qt::white);
    paintPage(painter, page);
    if (!painter.end()) return cantWrite("SVG");
  }
  const qsizetype open = bytes.indexOf("<svg");
  const qsizetype inside = bytes.indexOf('>', open) + 1;
  if (open < 0 || inside <= 0) return cantWrite("SVG");
  bytes.insert(inside, "\n" + faceStyle(page));
  return bytes;
}

Result<QByteArray> renderPng(const Page& page, double pixelsPerMm) {
  if (const Result<Done> faces = loadFaces(); !faces.ok()) return faces.error();
  constexpr double kMostPixels = 20000;
  const double width = page.width * pixelsPerMm;
  const double height = page.height * pixelsPerMm;
  if (!(std::min(width, height) >= 1 && std::max(width, height) <= kMostPixels)) {
    return Error{ErrorCode::badRequest, "a picture is 1 to 20 000 pixels wide and high", {}};
  }
  QImage image(QSizeF(width, height).toSize(), QImage::Format_RGB32);
  if (image.isNull()) return cantWrite("PNG");
  image.fill(Qt::white);
  image.setText(QStringLiteral("Software"), QStringLiteral("Inchwright " INCHWRIGHT_VERSION));
  image.setDotsPerMeterX(qRound(pixelsPerMm * 1000));
  image.setDotsPerMeterY(qRound(pixelsPerMm * 1000));
  {
    QPainter painter(&image);
    painter.scale(pixelsPerMm, pixelsPerMm);
    paintPage(painter, page);
  }
  QByteArray bytes;
  QBuffer buffer(&bytes);
  if (!buffer.open(QIODevice::WriteOnly) || !image.save(&buffer, "PNG")) return cantWrite("PNG");
  return bytes;
}

}  // namespace inchwright::app
