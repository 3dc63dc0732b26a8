#include "app/picture/pdf_pages.h"

#include <QCoreApplication>
#include <QPluginLoader>
#include <QStringList>

namespace inchwright::app {

PdfPages* pdfPages() {
  const QString program = QCoreApplication::applicationDirPath();
  QStringList folders{program, program + QStringLiteral("/../lib/inchwright")};
  folders += QCoreApplication::libraryPaths();
  for (const QString& folder : folders) {
    // Qt keeps what was loaded once, and gives it again.
    QPluginLoader loader(folder + QStringLiteral("/inchwright_pdf"));
    if (auto* pages = qobject_cast<PdfPages*>(loader.instance())) return pages;
  }
  return nullptr;
}

}  // namespace inchwright::app
