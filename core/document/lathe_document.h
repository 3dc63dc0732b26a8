#pragma once

#include <string>

#include "core/document/object_reader.h"
#include "core/document/object_writer.h"
#include "core/part/lathe.h"

namespace inchwright {

/// The document's `lathe`.
Lathe readLathe(ObjectReader& object);
void writeLathe(std::string& out, const Lathe& lathe);

/// `kind`, `held`, `stands_out`, `part_off` of a setup; empty unless it is of the lathe. Bare
/// lengths are in `unit`, the job's.
std::optional<Chucked> readChucked(ObjectReader& setup, Unit unit);
void writeChucked(ObjectWriter& setup, const Chucked& chucked);

}  // namespace inchwright
