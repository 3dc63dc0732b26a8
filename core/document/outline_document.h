#pragma once

#include <string>

#include "core/document/object_reader.h"
#include "core/document/object_writer.h"
#include "core/part/job.h"

namespace inchwright {

/// `outlines` of a part: `{"face", "follows", "inner", "depth"}`, all but `follows` may be left
/// out. Bare figures are in the job's unit.
void readOutlines(ObjectReader& part, std::vector<GivenOutline>& outlines, Trouble& trouble,
                  Unit unit);
void writeOutline(std::string& out, const GivenOutline& outline);

/// `curves` of a setup: `{"of", "way", "cutter", "cutter_at", "ridge", "count", "overrun"}`; all
/// but `of` may be left out. `overrun` is in degrees, a number or a text.
void readCurves(ObjectReader& setup, std::vector<GivenCurve>& curves, Trouble& trouble, Unit unit);
void writeCurves(ObjectWriter& setup, const std::vector<GivenCurve>& curves);

}  // namespace inchwright
