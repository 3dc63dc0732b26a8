#pragma once

#include <QString>

#include "app/session/desk.h"

class QWidget;

namespace inchwright::app {

/// Writes the sheet or the table where the ending says: `.pdf` (all pages), `.svg` and `.png` (one
/// file a page, numbered where there are several), `.csv` (the table). Errors: `badRequest` for
/// another ending or when there is no sheet yet, `fileTrouble`.
Result<Done> exportSheet(const Desk& desk, const QString& file);

/// Puts the table on the clipboard as tab-separated text and as HTML. Errors: as exportSheet.
Result<Done> copyTable(const Desk& desk);

/// The table as it goes onto the clipboard.
QString tableAsTsv(const SetupTable& table);
QString tableAsHtml(const SetupTable& table);

/// Shows the real pages as the printer will have them, and prints from there.
void previewPrint(const Desk& desk, QWidget* parent);

}  // namespace inchwright::app
