#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/part/job.h"
#include "core/plan/table.h"
#include "core/turned/lathe_work.h"

namespace inchwright {

/// Which edition of a setup's sheet this is, and in what it differs from the last one printed.
struct SheetEdition {
  int number = 1;
  int before = 0;    ///< the edition last printed; 0 where none was
  std::string when;  ///< it was printed
  /// A line each; none where none was printed, or nothing changed since.
  /// `A: X +0.4375, was +0.3750`.
  std::vector<std::string> changes;

  bool isNew() const { return before != 0 && number != before; }
  bool operator==(const SheetEdition&) const = default;
};

/// Whether a sheet of this setup was printed and noted.
bool wasPrinted(const Part& part, std::string_view setup);

/// A sheet as it would be noted if it were printed now; `edition` and `when` are left to whoever
/// prints it. In one English, whichever the sheet speaks.
PrintedSheet sheetNow(const Part& part, const SetupTable& table, const std::string& number = {});
PrintedSheet sheetNow(const LatheWork& work, const Lathe& lathe);

/// What `now` is against the sheet of its setup that was last printed. A number that is not known
/// on both sides says nothing.
SheetEdition editionOf(const Part& part, const PrintedSheet& now);

/// A printed sheet of a setup, against what it would be now.
struct PrintedNow {
  std::string setup;
  SheetEdition edition;

  bool operator==(const PrintedNow&) const = default;
};

/// All printed sheets of a part by their figures, whatever stands beside those; of setups that it
/// still has. One that can't be worked out any more is a new edition that says so.
std::vector<PrintedNow> printedNow(const Job& job, const Part& part, const Solution& solution);

/// For the desk: `my sheet is edition 2 now: edition 1, printed 2026-11-20, is to be taken down`.
std::string newEditionWords(const SheetEdition& edition);

/// What the sheet calls itself: `2`; of one that is not noted in the document, what it is against:
/// `after 1`, the number itself where nothing changed since, `none noted` where none was printed.
std::string editionName(const SheetEdition& edition, bool isNoted);

/// For the sheet itself: `CHANGED SINCE EDITION 1, printed 2026-11-20`.
std::string changedSinceWords(const SheetEdition& edition);

/// The part with this sheet noted as printed, in place of the one of its setup that was before.
Part withPrinted(const Part& part, PrintedSheet now, const std::string& when);

}  // namespace inchwright
