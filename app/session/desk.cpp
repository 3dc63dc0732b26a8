#include "app/session/desk.h"

#include <algorithm>
#include <utility>

#include "core/kit/kit_of_part.h"
#include "core/kit/solved_kit.h"
#include "core/part/edit.h"
#include "core/part/parts_of_job.h"
#include "core/say/kit_words.h"
#include "core/say/part_warnings.h"
#include "core/sheet/lathe_sheet.h"

namespace inchwright::app {
struct Desk::State {
  struct Version {
    Job job;
    QString title;  ///< of the edit that led here
    QString merge;
  };

  /// What follows from the document as it is now; each worked out when first asked for.
  struct Derived {
    bool followed = false;  ///< the kit has taken this document
    std::optional<Setup> defaultSetup;
    std::optional<AsMade> asMade;
    std::optional<std::vector<std::string>> kitDoubts;
    std::optional<Job> inShop;
    bool tableTried = false;
    std::optional<SetupTable> table;
    std::optional<LatheWork> lathe;
    std::optional<Error> tableError;
    std::optional<TapeUpSheet> sheet;
    std::optional<SheetEdition> edition;
  };

  std::vector<Version> versions{Version{}};
  std::size_t now = 0;
  std::size_t saved = 0;  ///< the version the file holds; beyond the end when none does
  QString file;
  int part = 0;
  int setup = 0;
  Face face = Face::top;
  SheetOptions sheet;
  Shop ownShop;
  bool closeness = false;
  Selection selection;
  mutable Derived derived;
  mutable SolvedKit kit;  ///< kept from one document to the next

  const Job& job() const { return versions[now].job; }

  SolvedKit& solvedKit() const {
    if (!std::exchange(derived.followed, true)) kit.follow(job());
    return kit;
  }

  // Undo can take away the part or setup one was looking at.
  void keepWithinJob() {
    const auto parts = static_cast<int>(job().parts.size());
    part = std::clamp(part, 0, std::max(parts - 1, 0));
    const int setups = parts == 0 ? 0 : static_cast<int>(job().parts[part].setups.size());
    setup = std::clamp(setup, 0, std::max(setups - 1, 0));
  }

  void forgetTable() {
    derived.tableTried = false;
    derived.table.reset();
    derived.lathe.reset();
    derived.tableError.reset();
    derived.sheet.reset();
    derived.edition.reset();
  }
};

Desk::Desk(QObject* parent) : QObject(parent), state_(std::make_unique<State>()) {}
Desk::~Desk() = default;

const Job& Desk::job() const {
  return state_->job();
}
bool Desk::hasPart() const {
  return !job().parts.empty();
}
const Part& Desk::part() const {
  return job().parts[state_->part];
}
int Desk::partIndex() const {
  return state_->part;
}
int Desk::setupIndex() const {
  return state_->setup;
}

const Solution& Desk::solution() const {
  return state_->solvedKit().solution(static_cast<std::size_t>(state_->part));
}

std::span<const Solution> Desk::solutions() const {
  return state_->solvedKit().solutions();
}

const AsMade* Desk::asMade() const {
  auto& made = state_->derived.asMade;
  if (!made) {
    auto all = inchwright::asMade(jobInShop(), solutions());
    if (!all.ok()) return nullptr;
    made = std::move(all).value();
  }
  return &*made;
}

const std::vector<std::string>& Desk::kitDoubts() const {
  auto& lines = state_->derived.kitDoubts;
  if (!lines) {
    lines.emplace();
    const AsMade* made = hasPart() ? asMade() : nullptr;
    const auto step = readStep(job().machine.step, job().machine.unit);
    if (made != nullptr && step.ok()) {
      const AsMade here = concerning(job(), *made, part().name);
      lines = kitDoubtLines(here, *step);
      for (const GapState& gap : here.gaps) {
        if (gap.fault) lines->push_back(gapWords(gap, *step));
      }
    }
  }
  return *lines;
}

const Setup& Desk::setup() const {
  if (!part().setups.empty()) return part().setups[state_->setup];
  auto& standIn = state_->derived.defaultSetup;
  if (!standIn) standIn = defaultSetup(part(), solution());
  return *standIn;
}

void Desk::workOut() const {
  auto& derived = state_->derived;
  if (isBare() || std::exchange(derived.tableTried, true)) return;
  const auto keep = [&derived](auto made, auto& kept) {
    if (made.ok()) {
      kept = std::move(made).value();
    } else {
      derived.tableError = made.error();
    }
  };
  if (setup().chucked) {
    keep(latheWorkToSuit(jobInShop(), part(), solution(), setup()), derived.lathe);
  } else {
    keep(makeTable(jobInShop(), part(), solution(), setup()), derived.table);
  }
}

const SetupTable* Desk::table() const {
  workOut();
  return state_->derived.table ? &*state_->derived.table : nullptr;
}

const LatheWork* Desk::lathe() const {
  workOut();
  return state_->derived.lathe ? &*state_->derived.lathe : nullptr;
}

std::optional<Step> Desk::step() const {
  if (table() != nullptr) return table()->step;
  return lathe() != nullptr ? std::optional(lathe()->step) : std::nullopt;
}

const std::optional<Error>& Desk::tableError() const {
  workOut();
  return state_->derived.tableError;
}

std::vector<std::string> Desk::warningsAt(const Step& step) const {
  const auto index = static_cast<std::size_t>(state_->part);
  return partWarnings(job(), index, state_->solvedKit().likeOthers(index), step);
}

SheetOptions Desk::optionsFor(const SetupTable& now) const {
  SheetOptions options = state_->sheet;
  options.warnings = warningsAt(now.step);
  const auto work = workAt(jobInShop(), part(), solution(), setup());
  if (!work.ok()) return options;
  auto closeness = closenessOnSheet(*work, now, state_->closeness);
  if (closeness.ok()) options.closeness = std::move(closeness).value();
  return options;
}

const TapeUpSheet* Desk::sheet() const {
  auto& sheet = state_->derived.sheet;
  if (sheet) return &*sheet;
  if (const SetupTable* now = table()) {
    sheet.emplace(jobInShop(), part(), solution(), *now, optionsFor(*now));
  } else if (const LatheWork* work = lathe()) {
    SheetOptions options = state_->sheet;
    options.warnings = warningsAt(work->step);
    sheet.emplace(latheSheet(jobInShop(), part(), solution(), *work, latheFor(job(), {}), options));
  }
  return sheet ? &*sheet : nullptr;
}

PrintedSheet Desk::sheetNow() const {
  if (lathe() != nullptr) return inchwright::sheetNow(*lathe(), latheFor(job(), {}));
  return inchwright::sheetNow(part(), *table(), sheet()->number());
}

const SheetEdition* Desk::edition() const {
  auto& edition = state_->derived.edition;
  if (!isWorkedOut()) return nullptr;
  // Where none was printed there is nothing to compare, and no sheet to be laid out for it.
  if (!edition) edition = part().printed.empty() ? SheetEdition{} : editionOf(part(), sheetNow());
  return &*edition;
}

void Desk::notePrinted(const std::string& when) {
  if (!isWorkedOut()) return;
  endMerge();
  applyPart(withPrinted(part(), sheetNow(), when), tr("Print my sheet"));
}

const Job& Desk::jobInShop() const {
  if (state_->ownShop.saysNothing()) return job();
  auto& inShop = state_->derived.inShop;
  if (!inShop) {
    inShop = job();
    inShop->shop = shopFor(job().shop, state_->ownShop);
  }
  return *inShop;
}

const Shop& Desk::ownShop() const {
  return state_->ownShop;
}

void Desk::setOwnShop(const Shop& shop) {
  if (shop == state_->ownShop) return;
  state_->ownShop = shop;
  state_->forgetTable();
  state_->derived.inShop.reset();
  emit viewChanged();
}

const SheetOptions& Desk::sheetOptions() const {
  return state_->sheet;
}
QString Desk::file() const {
  return state_->file;
}
bool Desk::unsaved() const {
  return state_->now != state_->saved;
}
Face Desk::face() const {
  return state_->face;
}
const Selection& Desk::selection() const {
  return state_->selection;
}

void Desk::take(Job job, const QString& file) {
  state_->versions = {State::Version{std::move(job), {}, {}}};
  state_->now = 0;
  state_->saved = 0;
  state_->file = file;
  state_->part = 0;
  state_->setup = 0;
  state_->face = Face::top;
  state_->selection = {};
  state_->derived = {};
  emit taken();
  emit edited();
  emit selectionChanged();
  emit savedChanged();
}

void Desk::markSaved(const QString& file) {
  state_->file = file;
  state_->saved = state_->now;
  endMerge();
  emit savedChanged();
}

void Desk::apply(Job next, const QString& title, const QString& merge) {
  if (next == job()) return;
  const bool wasUnsaved = unsaved();
  auto& versions = state_->versions;
  // Whoever edits after an undo gives up what was undone.
  if (state_->saved > state_->now) state_->saved = static_cast<std::size_t>(-1);
  versions.resize(state_->now + 1);
  const bool joins =
      !merge.isEmpty() && versions.back().merge == merge && state_->now != state_->saved;
  if (joins) {
    versions.back().job = std::move(next);
  } else {
    versions.push_back({std::move(next), title, merge});
    ++state_->now;
  }
  state_->derived = {};
  state_->keepWithinJob();
  emit edited();
  if (wasUnsaved != unsaved()) emit savedChanged();
}

bool Desk::applyPart(Result<Part> next, const QString& title, const QString& merge) {
  if (!next.ok()) {
    emit refused(QString::fromStdString(next.error().text));
    return false;
  }
  Result<Job> changed =
      withPartEdited(job(), static_cast<std::size_t>(state_->part), *std::move(next));
  if (!changed.ok()) {
    emit refused(QString::fromStdString(changed.error().text));
    return false;
  }
  apply(std::move(changed).value(), title, merge);
  return true;
}

void Desk::endMerge() {
  state_->versions[state_->now].merge.clear();
}

bool Desk::canUndo() const {
  return state_->now > 0;
}
bool Desk::canRedo() const {
  return state_->now + 1 < state_->versions.size();
}
QString Desk::undoTitle() const {
  return canUndo() ? state_->versions[state_->now].title : "";
}
QString Desk::redoTitle() const {
  return canRedo() ? state_->versions[state_->now + 1].title : "";
}

void Desk::undo() {
  if (!canUndo()) return;
  endMerge();
  --state_->now;
  state_->derived = {};
  state_->keepWithinJob();
  emit edited();
  emit savedChanged();
}

void Desk::redo() {
  if (!canRedo()) return;
  ++state_->now;
  state_->derived = {};
  state_->keepWithinJob();
  emit edited();
  emit savedChanged();
}

void Desk::choosePart(int index) {
  if (index == state_->part) return;
  state_->part = index;
  state_->setup = 0;
  state_->face = Face::top;
  state_->selection = {};
  state_->derived = {};
  state_->keepWithinJob();
  emit viewChanged();
  emit selectionChanged();
}

void Desk::chooseSetup(int index) {
  if (index == state_->setup) return;
  state_->setup = index;
  state_->keepWithinJob();
  state_->forgetTable();
  emit viewChanged();
}

void Desk::setSheetOptions(const SheetOptions& options) {
  state_->sheet = options;
  state_->derived.sheet.reset();
  emit viewChanged();
}

bool Desk::showsCloseness() const {
  return state_->closeness;
}

void Desk::showCloseness(bool on) {
  if (std::exchange(state_->closeness, on) == on) return;
  state_->derived.sheet.reset();
  emit viewChanged();
}

void Desk::chooseFace(Face face) {
  if (face == state_->face) return;
  state_->face = face;
  emit viewChanged();
}

void Desk::select(Selection selection) {
  if (selection == state_->selection) return;
  state_->selection = std::move(selection);
  emit selectionChanged();
}

}  // namespace inchwright::app

#include "moc_desk.cpp"
