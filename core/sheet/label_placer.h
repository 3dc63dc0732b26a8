#pragma once

#include <string_view>
#include <vector>

#include "core/sheet/paper_cells.h"
#include "core/sheet/paper_mask.h"
#include "core/sheet/sketch.h"

namespace inchwright {

/// Finds room for the names in a picture so that none covers another, a hole or a symbol.
class LabelPlacer {
 public:
  /// Nothing is placed outside `region`.
  explicit LabelPlacer(const PaperBox& region)
      : region_(region), boxesAt_(region), discsAt_(region), mask_(region) {}

  /// Keeps names off a box, or off a disc.
  void keepOff(const PaperBox& box);
  void keepOff(PlanePoint centre, double radius);
  /// A line that names rather do not cross.
  void avoid(PlanePoint from, PlanePoint to);
  /// Whether a box lies in the region and on nothing that names keep off.
  bool isFree(const PaperBox& box) const;

  /// Whether a box lies in the region and on no text or other box.
  bool isClear(const PaperBox& box) const;

  /// Sets a name in the middle of a disc when it fits there and nothing else is in its way.
  bool placeInside(Sketch& sketch, std::string_view name, const Sketch::Look& look,
                   PlanePoint centre, double radius);
  /// Sets a name near a disc, with a leader when it had to go further off. False, and nothing
  /// drawn, when there is no room. Time: as crowded as it is there.
  bool placeAround(Sketch& sketch, std::string_view name, const Sketch::Look& look,
                   PlanePoint centre, double radius);
  /// Sets a name along a line, on the side that `outX`, `outY` point to (a unit vector).
  bool placeAlong(Sketch& sketch, std::string_view name, const Sketch::Look& look, PlanePoint from,
                  PlanePoint to, double outX, double outY);

 private:
  struct Disc {
    PlanePoint centre;
    double radius;
  };
  int crossings(const PaperBox& box) const;
  void set(Sketch& sketch, const TextItem& item);

  PaperBox region_;
  std::vector<PaperBox> boxes_;
  std::vector<Disc> discs_;
  PaperCells boxesAt_;
  PaperCells discsAt_;
  PaperMask mask_;
  std::vector<PaperBox> lines_;
};

}  // namespace inchwright
