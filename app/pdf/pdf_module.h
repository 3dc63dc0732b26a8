#pragma once

#include <QObject>

#include "app/picture/pdf_pages.h"

namespace inchwright::app {

/// Reads PDF files by Qt's own reader.
class PdfModule : public QObject, public PdfPages {
  Q_OBJECT
  Q_PLUGIN_METADATA(IID "inchwright.PdfPages/1")
  Q_INTERFACES(inchwright::app::PdfPages)

 public:
  QString check(const QByteArray& bytes, int page) override;
  Drawn draw(const QByteArray& bytes, int page, double dots, double mostPixels) override;
};

}  // namespace inchwright::app
