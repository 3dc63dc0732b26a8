#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/result.h"
#include "core/part/job.h"

namespace inchwright {

/// A line about the kit, read from the front: words, figures, names of the job's parts. Blanks are
/// skipped, and commas that end a piece.
///
/// Holds a view of the line and the job: both have to outlive it.
class KitCursor {
 public:
  KitCursor(const Job& job, std::string_view line) : job_(job), line_(line) { skip(); }

  bool atEnd() const { return at_ == line_.size(); }
  /// At a semicolon or the end.
  bool atEndOfPiece() const { return atEnd() || line_[at_] == ';'; }
  /// In bytes from the front of the line.
  std::size_t at() const { return at_; }
  std::string_view rest() const { return line_.substr(at_); }
  /// A refusal at this place.
  Error refuse(std::string text) const { return {ErrorCode::badText, std::move(text), {}, at_}; }

  /// The next word, without the comma or semicolon behind it.
  std::string_view peek() const;
  std::string_view takeWord();
  bool takeIf(std::string_view word);
  bool takeSemicolon();
  /// At a word that begins something else: `hole`, `shaft`, `fit`, `least` …
  bool isAtKeyword() const;

  /// The text up to such a word or the end of the piece: `1/4 ±1/64, least .001` → `1/4 ±1/64`.
  std::string_view takeText();
  /// All up to the end of the piece.
  std::string takeName();
  Result<Lettered> takeFigure();
  /// `A of Plate`, or a size. `what`, for the refusal: `hole`, `shaft`.
  Result<SizeOrPlace> takeSide(const char* what);
  /// `A of Plate` as place and part; empty when no part of the job is named so in this piece.
  std::optional<std::pair<std::string, std::string>> takePlaceOf();
  /// The name of a part, whatever it holds; empty when no part is called so.
  std::string takePart() { return take(known(job_.parts, rest(), " \t,;")); }

  /// What stands before the colon: the name of an entry of the list, or a new one.
  template <class Entry>
  Result<std::string> takeTitle(const std::vector<Entry>& list, const std::string& what) {
    std::string_view name = known(list, rest(), ":");
    if (name.empty()) name = rest().substr(0, rest().find(':'));
    if (name.size() == rest().size()) {
      return refuse("give the " + what + " a name, with a colon behind it");
    }
    const std::size_t colon = name.size() + 1;
    std::string taken(trimmed(name));
    forward(colon);
    return taken;
  }

 private:
  /// The longest name of the list with which the text begins, one of `behind` or the end after it.
  template <class Entry>
  static std::string_view known(const std::vector<Entry>& list, std::string_view text,
                                std::string_view behind) {
    std::string_view best;
    for (const Entry& one : list) {
      if (one.name.size() <= best.size() || !text.starts_with(one.name)) continue;
      const std::string_view then = text.substr(one.name.size());
      if (then.empty() || behind.find(then.front()) != behind.npos) best = one.name;
    }
    return best;
  }

  static std::string_view trimmed(std::string_view text);
  std::string take(std::string_view front);
  void forward(std::size_t by);
  void skip();

  const Job& job_;
  std::string_view line_;
  std::size_t at_ = 0;
};

}  // namespace inchwright
