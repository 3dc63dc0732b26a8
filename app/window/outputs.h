#pragma once

#include <QString>
#include <QStringList>
#include <functional>

#include "app/session/desk.h"

class QWidget;

namespace inchwright::app {

/// Writes the sheet or the table where the ending says: `.pdf` (all pages), `.svg` and `.png` (one
/// file a page, numbered where there are several), `.csv` (the table). All is drawn before the
/// first file is touched; where any of them is there already, `mayReplace` is asked once for all.
/// The names of what was written, none where it may not. The desk notes a sheet as printed, a table
/// not. Errors: `badRequest` for another ending or
/// when there is no sheet yet, `fileTrouble`.
Result<QStringList> exportSheet(Desk& desk, const QString& file,
                                const std::function<bool(const QStringList& there)>& mayReplace);

/// Whether a file is a sheet that this program drew (see sheet_file.h).
bool isOurSheet(const QString& file);

/// Puts the table, of the mill or the lathe, on the clipboard as tab-separated text and as HTML;
/// how many rows it has. Errors: as exportSheet.
Result<int> copyTable(const Desk& desk);

/// The table as it goes onto the clipboard.
QString tableAsTsv(const Part& part, const SetupTable& table);
QString tableAsHtml(const Part& part, const SetupTable& table);

/// Shows the real pages as the printer will have them, and prints from there; the desk notes that.
void previewPrint(Desk& desk, QWidget* parent);

}  // namespace inchwright::app
