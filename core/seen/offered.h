#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "core/seen/offers.h"

namespace inchwright::seen {

/// How a reading is put before a person.
enum class Put {
  ready,   ///< the figure stands in the strip; Enter takes it
  choice,  ///< up to three figures to choose from; the strip is empty
  asked,   ///< a plain figure that the drawing speaks against: an empty strip and a question
  typed,   ///< the line's ends are set; the figure is typed
};

/// What a person gets for one reading.
struct PutReading {
  Put how = Put::typed;
  std::string strip;                 ///< what stands in it; empty but for `ready`
  std::vector<std::string> choices;  ///< under Alt+1, Alt+2, Alt+3
  std::string asked;                 ///< the plain figure that is asked about
  bool blind = false;                ///< would have been ready, but is typed to keep eyes open

  bool operator==(const PutReading&) const = default;
};

/// What witnesses give a person. Only G and S together fill the strip; every tenth of those is
/// blind. `g` and S give at most three figures, no two of one value.
/// Example: `1 3/16` with G and S → ready, strip `1 3/16`; with G alone → asked.
PutReading putReading(const ReadingOffer& offer, bool blind = false);

/// Enter is deaf for so long after a new one is shown.
inline constexpr std::chrono::milliseconds kDeaf{400};
/// Every so manieth ready one is blind.
inline constexpr int kBlindEvery = 10;

/// The offers of a picture as a person goes through them, one at a time: features first, then the
/// readings lane by lane. A value beside the document; nothing here changes the document. There is
/// no way to take more than one.
class Offered {
 public:
  enum class State : std::uint8_t { open, confirmed, dropped };
  using Time = std::chrono::milliseconds;

  Offered() = default;
  /// The first is shown at `now`.
  Offered(Offers offers, Time now);

  const Offers& offers() const { return offers_; }
  /// The lit one; empty when nothing is open.
  const FeatureOffer* feature() const;
  const ReadingOffer* reading() const;
  /// What the lit reading gives. Requires: reading() is one.
  PutReading put() const;

  /// Whether Enter is heard at a time.
  bool hears(Time now) const { return now - shown_ >= kDeaf; }
  /// Takes the lit feature, or the lit reading as `figure` says: what stood in the strip, was
  /// chosen or typed. False, and nothing changes, when Enter is deaf, nothing is lit, or a reading
  /// has no figure.
  bool confirm(Time now, const std::string& figure = {});
  void drop(Time now);  ///< it does not come back
  void pass(Time now);  ///< on to the next open one; it comes again after the last
  /// Takes the last confirming or dropping back and lights that one again. False when there is
  /// none.
  bool undo(Time now);

  /// How many there are: features, then readings in the order they are gone through.
  std::size_t count() const { return offers_.features.size() + order_.size(); }
  /// The reading of that number. Requires: not below the number of features.
  const ReadingOffer& readingAt(std::size_t one) const;
  bool isOpen(std::size_t one) const { return state_[one] == State::open; }
  /// Which one is lit.
  std::optional<std::size_t> lit() const { return lit_; }
  /// Lights another one, as whoever goes through them in an order of their own does. Does nothing
  /// when that is not open, or lit already.
  void light(std::size_t one, Time now);
  /// Confirms a feature together with the reading that ends at it.
  void confirmAlso(std::size_t one);
  /// Opens one that was confirmed again and lights it, as when a confirmed reading is undone.
  void reopen(std::size_t one, Time now);

  int open() const;
  int confirmed() const;
  /// `offered` of a reading that is confirmed: its witnesses where the figure is the one offered
  /// first, empty where another was typed or chosen.
  static std::string offeredOf(const ReadingOffer& offer, const std::string& figure);

  bool operator==(const Offered&) const = default;

 private:
  void lightNext(std::size_t from, Time now);
  void settle(State state, Time now);

  Offers offers_;
  std::vector<std::size_t> order_;  ///< of the readings
  std::vector<State> state_;        ///< features, then readings in their order
  std::vector<bool> blind_;         ///< of the readings in their order
  std::vector<std::size_t> done_;   ///< what was settled, the last at the end
  std::optional<std::size_t> lit_;
  Time shown_{0};
};

}  // namespace inchwright::seen
