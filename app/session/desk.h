#pragma once

#include <QObject>
#include <QString>
#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/kit/as_made.h"
#include "core/part/job.h"
#include "core/plan/table.h"
#include "core/say/edition_words.h"
#include "core/sheet/tape_up.h"
#include "core/solution/solution.h"
#include "core/turned/lathe_work.h"

namespace inchwright::app {

/// What is pointed at: places and readings of the current part, in the order they were chosen.
struct Selection {
  std::vector<Id> places;
  std::vector<Id> readings;

  bool empty() const { return places.empty() && readings.empty(); }
  bool operator==(const Selection&) const = default;
};

/// The document on the desk and everything that follows from it.
///
/// The document is a value; an edit makes a new one; undo swaps them (without limit, across
/// everything). Solution, table and pages are pure functions of it, worked out when first asked for
/// after an edit and kept until the next. Widgets only read from here and call the edits; none of
/// them knows another.
class Desk : public QObject {
  Q_OBJECT

 public:
  explicit Desk(QObject* parent = nullptr);
  ~Desk() override;

  const Job& job() const;
  bool hasPart() const;  ///< a job with no part is an empty desk
  /// Nothing is traced on it: no part, or one without a feature.
  bool isBare() const { return !hasPart() || part().features.empty(); }
  /// Requires hasPart() for these.
  const Part& part() const;
  int partIndex() const;
  const Solution& solution() const;
  /// Of all parts, in their order; what did not change since is not worked again. Valid until the
  /// next edit.
  std::span<const Solution> solutions() const;
  /// What was measured in the whole job and whether it goes together; null where that can't be
  /// worked out.
  const AsMade* asMade() const;
  /// What stands in the way of the current part going together with the others, a line each; it
  /// makes no sheet a draft, since each part for itself may be as its print wants it.
  const std::vector<std::string>& kitDoubts() const;
  /// Which edition my sheet is, and in what it differs from the one last printed; null where it is
  /// not worked out.
  const SheetEdition* edition() const;
  /// Notes in the document that my sheet was printed as it is now.
  void notePrinted(const std::string& when);
  int setupIndex() const;
  /// The current setup, or the default one of a part that names none.
  const Setup& setup() const;
  /// Empty, with `tableError()` saying why, while the zero is not placed; and of a part without a
  /// feature, of which there is nothing to say.
  const SetupTable* table() const;
  const std::optional<Error>& tableError() const;
  /// The work of a setup of the lathe, which has no table; null for others, and with `tableError()`
  /// as above.
  const LatheWork* lathe() const;
  /// Whether the setup is worked out, in the mill or the lathe.
  bool isWorkedOut() const { return table() != nullptr || lathe() != nullptr; }
  /// Of the figures on my sheet; empty where the setup is not worked out.
  std::optional<Step> step() const;
  /// The pages of my sheet, each drawn when it is asked for; null where it is not worked out.
  const TapeUpSheet* sheet() const;
  const SheetOptions& sheetOptions() const;

  /// The tools their user owns, for jobs that do not carry their own. No part of the document.
  const Shop& ownShop() const;
  void setOwnShop(const Shop& shop);

  /// Replaces the whole document (open, new, recover): clears undo and selection.
  void take(Job job, const QString& file);
  QString file() const;  ///< empty: never saved
  bool unsaved() const;
  void markSaved(const QString& file);

  /// One step of undo. Consecutive edits with the same non-empty `merge` become one (a drag).
  void apply(Job next, const QString& title, const QString& merge = {});
  /// The usual form: a pure edit of the current part. A refused edit changes nothing and is
  /// reported through `refused`; returns whether it was applied.
  bool applyPart(Result<Part> next, const QString& title, const QString& merge = {});
  /// Ends merging, so that the next edit is a step of its own (the mouse was released).
  void endMerge();

  bool canUndo() const;
  bool canRedo() const;
  QString undoTitle() const;
  QString redoTitle() const;
  void undo();
  void redo();

  void choosePart(int index);
  void chooseSetup(int index);
  void setSheetOptions(const SheetOptions& options);
  /// Whether my sheet also says how close to work at each place.
  bool showsCloseness() const;
  void showCloseness(bool on);
  /// The face whose view is being traced and read.
  Face face() const;
  void chooseFace(Face face);
  const Selection& selection() const;
  void select(Selection selection);

 signals:
  void taken();        ///< another document lies on the desk; `edited` follows
  void edited();       ///< the document changed: everything that follows from it may have
  void viewChanged();  ///< another part, setup, face or paper; the document is the same
  void selectionChanged();
  void savedChanged();               ///< file() or unsaved() changed
  void refused(const QString& why);  ///< one line for the strip

 private:
  /// The job with the tools that stand behind it.
  const Job& jobInShop() const;
  void workOut() const;
  PrintedSheet sheetNow() const;
  SheetOptions optionsFor(const SetupTable& now) const;
  std::vector<std::string> warningsAt(const Step& step) const;

  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace inchwright::app
