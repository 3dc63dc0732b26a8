#pragma once

#include <string>

#include "core/document/object_reader.h"
#include "core/part/made.h"
#include "core/part/mate.h"
#include "core/part/printed.h"

namespace inchwright {

// What was made and measured, what goes together, ways out that were chosen, and sheets
// that were printed. Bare figures are
// in `unit`, the job's.

/// An entry of a part's `made`.
MadePlace readMade(const JsonValue& value, const Where& where, Trouble& trouble, Unit unit);
void writeMade(std::string& out, const MadePlace& made);

/// An entry of a part's `mended`.
Mended readMended(const JsonValue& value, const Where& where, Trouble& trouble, Unit unit);
void writeMended(std::string& out, const Mended& mended);

/// An entry of a part's `printed`.
PrintedSheet readPrinted(const JsonValue& value, const Where& where, Trouble& trouble);
void writePrinted(std::string& out, const PrintedSheet& printed);

/// An entry of the job's `mates`.
Mate readMate(const JsonValue& value, const Where& where, Trouble& trouble, Unit unit);
void writeMate(std::string& out, const Mate& mate);

/// A member that is a size as text or `{"part", "place"}`; left as it was when absent.
void readSizeOrPlace(ObjectReader& object, std::string_view name, std::optional<SizeOrPlace>& out,
                     Unit unit);
void writeSizeOrPlace(std::string& out, const SizeOrPlace& side);

}  // namespace inchwright
