#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/kit/as_made.h"
#include "core/kit/ways_out.h"
#include "core/turned/lathe_work.h"

namespace inchwright {

/// A place of a part that was measured, and the way out chosen where it came out wrong.
struct CameOut {
  MadeRow row;
  std::optional<Mended> chosen;
  std::optional<Way> way;  ///< what was chosen, with its figures
  bool changed = false;    ///< those are others than when it was chosen

  bool isWrong() const { return row.cameOutWrong() || row.has(Verdict::cannotTell); }
  bool operator==(const CameOut&) const = default;
};

/// How a measured place came out, with what was chosen for it.
CameOut cameOut(const Job& job, const Part& part, MadeRow row);

/// One place of a part in a mate, and what size of it suits the other side as that is now.
struct Suits {
  std::string mate;
  Id place;
  bool isHole = false;    ///< the place is the mate's hole, else its shaft
  std::string lettered;   ///< its own size as lettered
  std::string otherPart;  ///< empty where the other side is a size as text
  Id otherPlace;
  FoundSize other;             ///< the other side as it is: found, as put right, or as drawn
  bool otherMeasured = false;  ///< it is not just the print's
  bool otherUnlikely = false;  ///< what it is said to have come out as: nothing is made to suit it
  bool measured = false;       ///< the place itself was
  FoundSize wanted;            ///< the clearance
  FoundSize clearance;         ///< as it is now
  /// Sizes that give the wanted clearance on all that the other side may be; the first above the
  /// second where there are none.
  FoundSize make;
  bool suited = false;  ///< of a hole as found: its shaft is chosen to be made to suit it
  /// It was chosen to make this place to suit: `make` replaces the print's size.
  std::optional<Mended> chosen;

  bool canBeHad() const { return make.least && make.greatest && *make.least <= *make.greatest; }
  /// The print's size no longer counts.
  bool replaces() const { return chosen && !measured && !otherUnlikely && canBeHad(); }
  bool operator==(const Suits&) const = default;
};

/// What the sheet of a part has to say of the rest of the kit.
struct KitOfPart {
  std::vector<CameOut> cameOut;
  std::vector<Suits> suits;

  bool operator==(const KitOfPart&) const = default;
};

/// Whether it was chosen to make the mate's shaft to suit the hole as found, and that is still to
/// be done: its own sheet says the size.
bool isToBeSuited(const Job& job, const Mate& mate);

/// A bush of .3131 to .3135 for a plate whose hole came out .3145 to .3151 and was chosen to be
/// suited, clearance −.0010 to 0 → make it .3151 to .3155.
/// A hole whose way out is a bush or a plug counts as drawn, one of the next size as that size,
/// until it is measured within its limits. Mates that can't be worked out are left out: `asMade`
/// tells them. Errors: as `madeRows`.
Result<KitOfPart> kitOfPart(const Job& job, const Part& part, const Solution& solution);

/// `latheWork` with the sizes that were chosen to suit in place of the print's, which are kept in
/// `struckOut`: the middle of what suits. Rows chosen to suit
/// where no size does are `unsuited`. Errors: as both.
Result<LatheWork> latheWorkToSuit(const Job& job, const Part& part, const Solution& solution,
                                  const Setup& setup, const TableOptions& options = {});

}  // namespace inchwright
