#pragma once

#include <string>

#include "core/document/object_reader.h"
#include "core/document/object_writer.h"
#include "core/part/holding.h"
#include "core/part/setup.h"

namespace inchwright {

// The members of a setup and of the machine that say how work is held and what room there is.

/// `parallels`, `clamps`, `clear_of`, `overhang`, `pieces` of a setup; bare figures in `unit`.
void readHolding(ObjectReader& setup, Holding& held, Trouble& trouble, Unit unit);
void writeHolding(ObjectWriter& setup, const Holding& held);

/// `travel`, `quill`, `column`, `speeds`, `rotary_counts` of the machine; bare figures in its unit.
void readMachineRoom(ObjectReader& object, Machine& machine, Trouble& trouble);
void writeMachineRoom(ObjectWriter& object, const Machine& machine);

}  // namespace inchwright
