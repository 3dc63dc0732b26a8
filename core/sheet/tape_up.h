#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/base/english.h"
#include "core/base/result.h"
#include "core/part/job.h"
#include "core/plan/closeness.h"
#include "core/plan/table.h"
#include "core/sheet/draw_list.h"
#include "core/sheet/style.h"
#include "core/solution/solution.h"

namespace inchwright {

enum class Paper { a4, letter };

struct SheetOptions {
  Paper paper = Paper::a4;
  /// How far away the sheet is read, mm. Figures are 8 mm high at 1 m and grow in proportion.
  /// Held to kNearestReading and kFarthestReading.
  double readingDistance = 1000;
  std::string date;  ///< as it is to stand on the sheet, `2026-11-25`; empty leaves it blank
  /// Whether whoever writes it out notes its edition in the document. Two sheets that nobody noted
  /// are never named as if they were one edition.
  bool isNoted = true;
  English english = English::uk;  ///< of our own words; names and notes stay as they were given
  bool showRounding = false;      ///< what rounding to the step cost, beside each figure
  /// Dimensions to be measured directly on the part, each one line; the block is left out when
  /// there are none.
  std::vector<std::string> directChecks;
  /// What else to mind that the part's own setup can't tell, such as a similar part it may be
  /// mistaken for.
  std::vector<std::string> warnings;
  /// How close to work, as a block of its own; its direct checks join those above.
  std::optional<Closeness> closeness;
};

/// The sheet of one setup, in millimetres. Laid out at once; a page is drawn when it is
/// first asked for and kept, since a screen shows one or two of many. The same input gives the same
/// items. Figures are never shrunk to fit; there are more pages instead.
class TapeUpSheet {
 public:
  /// The part, solution, job and table outlive the sheet.
  TapeUpSheet(const Job& job, const Part& part, const Solution& solution, const SetupTable& table,
              const SheetOptions& options);
  /// Pages that were laid out already, such as a lathe setup's. Requires: there is one.
  explicit TapeUpSheet(std::vector<Page> pages);
  ~TapeUpSheet();
  TapeUpSheet(TapeUpSheet&&) noexcept;
  TapeUpSheet& operator=(TapeUpSheet&&) noexcept;

  /// Of the sheet; empty of pages that were laid out elsewhere.
  std::string number() const;
  std::size_t pageCount() const;
  double width() const;  ///< of every page, mm
  double height() const;
  /// Requires `index` < pageCount().
  const Page& page(std::size_t index) const;
  const std::vector<Page>& pages() const;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

/// All its pages.
std::vector<Page> tapeUpSheet(const Job& job, const Part& part, const Solution& solution,
                              const SetupTable& table, const SheetOptions& options);

/// The pages as text, one item a line, for tests and for eyes.
std::string drawListText(const std::vector<Page>& pages);

}  // namespace inchwright
