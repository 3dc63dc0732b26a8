#pragma once

#include <QByteArray>
#include <QImage>
#include <QString>
#include <QtPlugin>

namespace inchwright::app {

/// Reads PDF files. What does that lies in a module of its own, `inchwright_pdf`, which is loaded
/// when a PDF is first met: with it each start would take a tenth longer.
class PdfPages {
 public:
  struct Drawn {
    QImage image;     ///< null when `trouble` says why
    QString trouble;  ///< in the words of the core
  };

  virtual ~PdfPages() = default;

  /// Empty when the file has this page, counted from 1; else why it can't be read.
  virtual QString check(const QByteArray& bytes, int page) = 0;
  /// That page at `dots` an inch, or as near as `mostPixels` allow. Transparent where it is bare.
  virtual Drawn draw(const QByteArray& bytes, int page, double dots, double mostPixels) = 0;
};

/// The module, looked for beside the program, in `../lib/inchwright` from there, and where Qt looks
/// for plugins; null when it is nowhere. To be called from any thread.
PdfPages* pdfPages();

}  // namespace inchwright::app

Q_DECLARE_INTERFACE(inchwright::app::PdfPages, "inchwright.PdfPages/1")
