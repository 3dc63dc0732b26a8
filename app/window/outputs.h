#pragma once

#include <QString>
#include <QStringList>
#include <functional>
#include <vector>

#include "app/session/desk.h"
#include "app/words/sheet_pages.h"

class QWidget;

namespace inchwright::app {

/// Whether files that are there already may be replaced.
using MayReplace = std::function<bool(const QStringList& there)>;

/// Writes the sheet or the table where the ending says: `.pdf` (all pages), `.svg` and `.png` (one
/// file a page, numbered where there are several), `.html` (for a tablet), `.csv` (the table). All
/// is drawn before the first file is touched; where any of them is there already, `mayReplace` is
/// asked once for all. The names of what was written, none where it may not. The desk notes a sheet
/// as printed, a table not. Errors: `badRequest` for another ending or when there is no sheet yet,
/// `fileTrouble`.
Result<QStringList> exportSheet(Desk& desk, const QString& file, const MayReplace& mayReplace);

/// Writes paper for the whole job, such as its cover or the layout of each face, as a PDF; no sheet
/// is noted as printed by that. Errors: as `planJob`, `pagesOf`; `fileTrouble`.
Result<QStringList> exportPaper(const Desk& desk, const std::vector<PageKind>& kinds,
                                const QString& file, const MayReplace& mayReplace);

/// Whether a file is a sheet that this program drew (see sheet_file.h).
bool isOurSheet(const QString& file);

/// Puts the table, of the mill or the lathe, on the clipboard as tab-separated text and as HTML;
/// how many rows it has. Errors: as exportSheet.
Result<int> copyTable(const Desk& desk);

/// Shows the real pages as the printer will have them, and prints from there; the desk notes that.
void previewPrint(Desk& desk, QWidget* parent);

}  // namespace inchwright::app
