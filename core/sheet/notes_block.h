#pragma once

#include "core/sheet/content.h"
#include "core/sheet/flow.h"

namespace inchwright {

/// What to mind before cutting: the table's warnings, and what has no coordinates on this sheet.
Pieces warningPieces(const SheetContent& content, double width);
/// In what the sheet differs from the one last printed; nothing where none was.
Pieces editionPieces(const SheetContent& content, double width);

/// Rounds and arcs to be cut, and how; empty when the setup asks for none.
Pieces curvePieces(const SheetContent& content, double width);
Pieces stopPieces(const SheetContent& content, double width);

/// Dimensions to be measured directly on the part, such as `A to B along X: 1 3/16, 1.1860 to
/// 1.1890`; empty when there are none.
Pieces directCheckPieces(const SheetContent& content, double width);

/// Open queries, and assumptions that were accepted.
Pieces queryPieces(const SheetContent& content, double width);

/// The title of a block, with a rule above it.
Piece titlePiece(const SheetContent& content, const std::string& words, double width);

}  // namespace inchwright
