#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/base/result.h"
#include "core/measure/lettered.h"
#include "core/part/holding.h"

namespace inchwright::app {

/// Parallels as one line to be typed over: `fixed 1/8 x 1 gap 1/4; moving 1/8 x 1 from 0 to 2`
/// (thick x tall; the fixed jaw and against it where nothing is said). `bed`: the work lies on the
/// vice's bed; empty: nobody said what it stands on.
QString parallelsText(const std::optional<std::vector<LaidParallel>>& parallels);

/// Reads such a line; bare figures are in `unit`. What is not changed of `before` keeps all it has.
/// Errors: `badText`, with what can't be read; those of reading a length.
Result<std::optional<std::vector<LaidParallel>>> readParallels(
    const QString& text, const std::optional<std::vector<LaidParallel>>& before, Unit unit);

/// Pieces of stock as measured, as one line: `1 x 4 1/32 y 1.520; 2 x 4.010` (the name, then sizes
/// along the part's axes).
QString piecesText(const std::vector<StockPiece>& pieces);

/// Reads such a line, as above. Errors: `badText` for a piece without a name or a size, and for two
/// of one name; those of reading a length.
Result<std::vector<StockPiece>> readPieces(const QString& text,
                                           const std::vector<StockPiece>& before, Unit unit);

}  // namespace inchwright::app
