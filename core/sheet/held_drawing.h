#pragma once

#include <optional>

#include "core/checks/drawn_holding.h"
#include "core/sheet/draw_list.h"
#include "core/sheet/label_placer.h"
#include "core/sheet/part_on_paper.h"

namespace inchwright {

/// A thing that holds the work, on paper.
PaperBox onPaper(const HeldThing& thing, const PartOnPaper& frame);

/// What a parallel, a clamp or what is to be kept clear of is taken hold of as; none of a jaw.
std::optional<TargetKind> targetOf(const HeldThing& thing);

/// Draws parallels (hidden below the work: dashed), clamps and what is to be kept clear of, each
/// named where there is room; what a tool comes into is hatched. Jaws and stop are drawn by the
/// picture itself. `hand` scales the names.
void drawHeld(Sketch& sketch, const DrawnHolding& held, const PartOnPaper& frame, double hand,
              LabelPlacer& placer);

/// A mark for what to mind beside a place that takes up a disc on paper, where it is free, else
/// above it on the right.
void markFound(Sketch& sketch, PlanePoint centre, double radius, double hand, LabelPlacer& placer);

}  // namespace inchwright
