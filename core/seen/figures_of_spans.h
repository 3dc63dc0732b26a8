#pragma once

#include <map>
#include <memory>
#include <vector>

#include "core/seen/figure.h"
#include "core/seen/lettering.h"

namespace inchwright::seen {

/// A place where lettering stands, read once however many lines ask for it.
struct Reads {
  Box box;
  bool turned = false;  ///< read from the right of the sheet
  /// Other lettering stands so near in the row that it may belong to the figure, such as its
  /// tolerance.
  bool crowded = false;
  std::vector<FigureRead> reads;
};

/// What stands near a line, and how far from where its figure should be.
struct NearFigure {
  const Reads* reads = nullptr;
  double far = 0;  ///< inches of the sheet, weighted
  /// It stands beyond both ends of the line, or across one: it may be a neighbour's.
  bool beside = false;
};

/// The blocks of a print's lettering as they are asked for by dimension lines.
class FigureShelf {
 public:
  /// `whole` is the lettering as it stands, `bare` that without long lines and dashes.
  FigureShelf(const Lettering& whole, const Lettering& bare, double inch, Unit unit,
              const Net& net);

  /// What may be the figure of a line that runs from `from` to `to` along a row (or a column,
  /// when `plumb`) at `across`, pixels. `inside`: its heads are drawn between its ends.
  std::vector<NearFigure> near(bool plumb, double from, double to, double across, bool inside);
  /// What may be lettered round a place, nearest first.
  std::vector<NearFigure> round(double x, double y, double reach);

 private:
  struct Place {
    const Lettering* from;
    Block block;
    std::vector<int> heads;  ///< parts beside it that are the line's own, ascending
  };
  /// The line that a figure is sought for.
  struct Along {
    bool plumb;
    double from, to, across;
    bool inside;
  };
  const Reads& read(const std::vector<int>& places, bool turned);
  /// Whether other lettering than `known` (ascending) stands near a box in its row.
  bool crowds(const Lettering& from, const std::vector<int>& known, const Box& box,
              bool turned) const;
  /// Whether a line that was taken out crosses the row just behind a box: it may have taken a last
  /// digit or a ± with it.
  bool lineBehind(const Box& box, bool turned) const;
  /// Adds what of a block lies along a line as a place of its own, where the block goes on beyond
  /// it: neighbours' figures may stand so near that they are one block, and so may its heads.
  void addPartAlong(const Lettering& lettering, const Block& block, const Along& line);
  /// Whether a part is a head with a piece of its line: it reaches in from an end along the line.
  bool isHead(const Lettering& lettering, int part, const Along& line) const;

  const Lettering& whole_;
  const Lettering& bare_;
  double inch_;
  Unit unit_;
  const Net& net_;
  std::vector<Place> places_;
  std::map<std::pair<const Lettering*, std::vector<int>>, int> known_;
  std::map<std::pair<std::vector<int>, bool>, std::unique_ptr<Reads>> read_;
};

}  // namespace inchwright::seen
