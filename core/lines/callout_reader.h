#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/lines/callout.h"
#include "core/lines/callout_items.h"

namespace inchwright {

/// What is cut one after another at one place: a drill, then a reamer or tap.
struct Stage {
  std::optional<Make> make;
  std::optional<Lettered> size;
  std::string thread;
  std::optional<Depth> depth;
};

/// Reads one callout piece by piece: `callout_reader.cpp` the words, `callout_figures.cpp` what
/// each figure is of, `callout_end.cpp` what it comes to and what is missing.
class CalloutReader {
 public:
  CalloutReader(std::string_view text, FeatureKind kind, Unit unit)
      : text_(text), kind_(kind), unit_(unit), items_(calloutItems(text)) {}

  Result<Callout> read() {
    if (text_.size() > kLongest) return refuse("this is longer than a callout", kLongest);
    if (items_.empty()) return refuse("give the size as the print letters it", 0);
    while (next_ < items_.size() && !fault_) readOne();
    if (!fault_) finish();
    if (fault_) return *fault_;
    return std::move(callout_);
  }

 private:
  static Error refuse(std::string what, std::size_t at) {
    return Error{ErrorCode::badText, std::move(what), {}, at};
  }
  void fail(std::string what, std::size_t at) {
    if (!fault_) fault_ = refuse(std::move(what), at);
  }
  /// Two meanings are equally good: nothing else may guess at one.
  void ask(std::string question, std::size_t at) {
    if (!fault_) fault_ = Error{ErrorCode::badRequest, std::move(question), {}, at};
  }
  std::size_t at() const { return next_ < items_.size() ? items_[next_].at : text_.size(); }
  const CalloutItem* peek(std::size_t ahead = 0) const {
    return next_ + ahead < items_.size() ? &items_[next_ + ahead] : nullptr;
  }
  bool isWord(std::size_t index, CalloutWord word) const {
    return index < items_.size() && items_[index].kind == CalloutItemKind::word &&
           items_[index].word == word;
  }
  bool startsFigure(std::size_t index) const {
    return index < items_.size() && (items_[index].kind == CalloutItemKind::number ||
                                     items_[index].kind == CalloutItemKind::symbol);
  }
  std::string_view span(std::size_t from, std::size_t to) const {
    return text_.substr(items_[from].at, items_[to - 1].after - items_[from].at);
  }
  bool isRounded() const { return kind_ == FeatureKind::round || kind_ == FeatureKind::arc; }
  bool drills() const {
    return kind_ == FeatureKind::hole || kind_ == FeatureKind::ring || kind_ == FeatureKind::row;
  }

  void readOne();
  /// The longest run of pieces that names a thread, where the shop knows it or it says that it is
  /// one: `1/4-20 UNC-2B`, `No. 8-32`, `2 BA`, `M6 x 1`.
  bool takeThread();
  bool isThread(std::string_view text, std::size_t end) const;
  void passOverClass();
  /// A word that no thread's name holds.
  static bool endsThread(const CalloutItem& item);
  bool holdsTogether(std::size_t end) const;
  /// `4 HOLES`, `4 x 1/8`, `(2) PLACES`: a whole number that says how many.
  bool takeAlike();
  std::size_t figuresAhead() const;
  /// `1 x 1/2 DEEP` is one inch, half an inch deep.
  bool depthFollowsTimes() const;
  /// `1 x 45°` is a chamfer.
  bool angleFollowsTimes() const;
  /// `82°`, `60 DEG`.
  bool takeAngle();
  /// The longest run of pieces that is one length.
  void takeFigure();
  bool belongsToFigure(std::size_t i) const;
  /// `4-1/8 DRILL`: four holes of an eighth, as some lettered it, or one of four and an eighth?
  bool isCountOrSize(std::size_t begin, std::size_t end);
  /// `.2500-.2505`: two figures and a dash between them that nobody explains.
  bool isRange(std::size_t end);
  Stage& stage();
  /// A stage that still waits for its size, or another one behind it.
  Stage& openStage();
  template <class Figure>
  void put(Figure& member, Lettered figure, std::string_view what, std::size_t from) {
    if (member) return fail("the " + std::string(what) + " is given already", from);
    member = std::move(figure);
  }
  void place(Lettered figure, std::size_t from);
  /// Whether the figure there is followed by what says what it is.
  bool isNamed(std::size_t i) const;
  bool makeWord(std::size_t i) const;
  /// What stands behind the figure says how a hole of that size is made: `1/4 DIA DRILL`.
  bool isMade() const;
  /// Whether there is a figure at `i` that is neither a depth nor an angle.
  bool isSizeAt(std::size_t i) const;
  bool isSized() const;
  bool hasSize() const;
  /// What stands behind the figure says what it is: `1 1/16 PCD`, `9/16 CRS`, `3/8 C'BORE`.
  bool nameFollows() const;
  bool seatWord(std::size_t i) const;
  /// Asks about `M6 x 1.25`, no pitch of that thread, and `1/8 x 4`, which counts as often.
  bool isNoDepth(const Lettered& figure, std::size_t from);
  void placeDepth(Lettered figure, std::size_t from);
  void setDepth(std::optional<Depth>& depth, Lettered figure, std::size_t from);
  /// The width is the lesser of two bare figures, whichever stands first.
  void placeInSlot(Lettered figure, std::size_t from);
  /// Between two things a dash means nothing; before a figure alone it would be a minus.
  void takeDash(const CalloutItem& item);
  void takeThrough(std::size_t from);
  void readWord(const CalloutItem& item);
  /// The figure before the word, or else the one to come.
  void takeNamed(std::optional<Lettered>& member, CalloutWord word, std::string_view what);
  void takeMake(Make make);
  void takeTap(std::size_t from);
  void takeSeat(Make make, std::size_t from);
  /// `#7`, `No. 30`, `LETTER F`: stands by its size.
  void takeDrillName(const CalloutItem& item);
  void putDrill(const std::string& name, std::size_t from);
  /// `H7` behind a size, or `F DRILL`.
  void takeUnknown(const CalloutItem& item);
  void finish();
  /// No figure breaks off: `1/`, `3/16 x` and `3/16 by` are refused.
  void checkWhole();
  static std::string missing(CalloutWord word);
  void finishSlot();
  void finishDrilled();
  /// `11/64 CLEARANCE FOR 8-32` is 11/64; without a size it is asked how free it is.
  void finishClearance();
  /// `1/4-20 TAP, #7 DRILL` is tapped. A larger size before the last, or two drills that go to
  /// unlike depths, are asked about: one of them would be lost.
  void inOrderOfWork();
  /// A reamer or tap goes no deeper than its drill, and only the note holds a drill that goes on.
  void checkDepths();
  /// A drill that leaves a thread too little to cut, or too much.
  void checkTapDrill();
  /// `No. 30 (.1285) DRILL` says one size twice; of two sizes each has to say what it is.
  void mergeAlike();

  static constexpr std::size_t kLongest = 200;  // bytes: no callout is longer
  /// Pieces of one figure or thread: `Ø 1 1/4 in +.005 in/-.000 in` has eleven.
  static constexpr std::size_t kWidestSpan = 11;
  static constexpr int kMostAlike = 1000;

  struct Loose {
    Lettered figure;
    std::size_t from;
  };

  std::string_view text_;
  FeatureKind kind_;
  Unit unit_;
  std::vector<CalloutItem> items_;
  std::size_t next_ = 0;
  bool diameterBefore_ = false;        ///< DIA stands before the figure
  bool times_ = false;                 ///< a `x` stands before what comes
  std::optional<CalloutWord> wanted_;  ///< whose figure is still to come
  std::vector<Stage> stages_;
  bool seat_ = false;  ///< figures now speak of the seat
  std::optional<Make> seatMake_;
  std::optional<Depth> slotDepth_;
  bool clears_ = false;       ///< the thread that is named goes through without being cut
  bool for_ = false;          ///< what comes is what the hole is for
  std::vector<Loose> loose_;  ///< figures of which the word behind says what they are
  Callout callout_;
  std::optional<Error> fault_;
};

}  // namespace inchwright
