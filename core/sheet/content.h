#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/checks/drawn_holding.h"
#include "core/part/job.h"
#include "core/plan/drawn_part.h"
#include "core/plan/table.h"
#include "core/say/edition_words.h"
#include "core/say/kit_words.h"
#include "core/say/setup_words.h"
#include "core/sheet/row_extents.h"
#include "core/sheet/style.h"
#include "core/sheet/tape_up.h"
#include "core/solution/solution.h"

namespace inchwright {

/// Everything the blocks of a sheet draw on. Holds references only: the owner outlives it.
struct SheetContent {
  const Job& job;
  const Part& part;
  const Solution& solution;
  const SetupTable& table;
  const DrawnPart* picture = nullptr;  ///< null when there is none to draw
  const SheetOptions& options;
  Style style{options.readingDistance};
  std::string number = {};  ///< of the sheet (`sheetNumber`); a Composition fills it in
  SetupWords words = {};    ///< and this: what is said of the table, in the sheet's English
  std::vector<std::string> doubts = {};  ///< and this: of each doubt of the solution, likewise
  RowExtents rows = {};                  ///< and this
  std::vector<KitLine> kit = {};         ///< and this: what is said of the rest of the kit
  const HeldWork* held = nullptr;  ///< how the work is held and what was found; null as `picture`
  SheetEdition edition = {};       ///< and this: against the one last printed
};

/// The sheet of one setup with its picture already at hand: what `TapeUpSheet` does after it has
/// pictured the part. Laid out at once; each page is drawn by itself.
class Composition {
 public:
  explicit Composition(SheetContent content);
  ~Composition();
  Composition(Composition&&) noexcept;
  Composition& operator=(Composition&&) noexcept;

  const std::string& number() const;  ///< of the sheet
  const SheetEdition& edition() const;
  std::size_t pageCount() const;
  double width() const;  ///< of every page, mm
  double height() const;
  /// Requires `index` < pageCount().
  Page page(std::size_t index) const;
  std::vector<Page> pages() const;

 private:
  struct Laying;
  std::unique_ptr<const Laying> laying_;
};

}  // namespace inchwright
