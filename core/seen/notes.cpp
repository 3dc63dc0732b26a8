#include "core/seen/notes.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <span>

#include "core/seen/inked.h"

namespace inchwright::seen {
namespace {

// O is drawn as 0 and I as 1, so they are sought as those.
constexpr std::array<std::string_view, 8> kWords{"DR1LL", "REAM", "D1A", "TAP",
                                                 "DEEP",  "B0RE", "RAD", "PCD"};
constexpr std::array<std::string_view, 2> kCountWords{"H0LES", "PLACES"};
constexpr double kPoint = 0.045;     // inches of the sheet: what is smaller is no letter
constexpr float kPlainR = 0.6F;      // odds of the letter before a radius
constexpr double kPlainWord = -0.9;  // mean logarithm of a letter
constexpr double kLeader = 0.93;     // of a leader's way that is inked
constexpr double kBehindArc = 0.1;   // inches of the sheet behind an arc, where a leader has ended
constexpr double kRunsOn = 0.6;      // of that way: a leader over the arc to something else

std::string spelt(std::string_view word) {
  std::string out(word);
  for (char& c : out) c = c == '0' ? 'O' : c == '1' ? 'I' : c;
  return out;
}

/// Marks in rows, each row from the left. Marks of one row overlap in height.
std::vector<std::vector<Mark>> rowsOf(std::vector<Mark> marks) {
  std::stable_sort(marks.begin(), marks.end(),
                   [](const Mark& a, const Mark& b) { return a.box.h > b.box.h; });
  std::vector<std::vector<Mark>> rows;
  std::vector<Box> spans;
  for (const Mark& m : marks) {
    std::size_t k = 0;
    while (k < rows.size() && (m.box.midY() < spans[k].y - 0.4 * spans[k].h ||
                               m.box.midY() > spans[k].bottom() + 0.4 * spans[k].h))
      ++k;
    if (k == rows.size()) rows.emplace_back(), spans.push_back(m.box);
    rows[k].push_back(m);
  }
  for (auto& row : rows) {
    std::stable_sort(row.begin(), row.end(),
                     [](const Mark& a, const Mark& b) { return a.box.midX() < b.box.midX(); });
  }
  return rows;
}

struct Word {
  std::string_view text;
  std::size_t first = 0;  ///< of the row's marks
  std::size_t past = 0;
  double odds = -100;

  bool isPlain() const { return odds >= kPlainWord; }
};

/// The word of some that a row shows best, points between its letters or not.
Word wordIn(const std::vector<Mark>& row, std::span<const std::string_view> words, double inch) {
  std::vector<std::size_t> letters;
  for (std::size_t i = 0; i < row.size(); ++i) {
    if (std::max(row[i].box.w, row[i].box.h) > kPoint * inch) letters.push_back(i);
  }
  Word best;
  for (const std::string_view text : words) {
    for (std::size_t at = 0; at + text.size() <= letters.size(); ++at) {
      double sum = 0;
      for (std::size_t i = 0; i < text.size(); ++i) {
        sum += std::log(std::max(1e-4, double(oddsFor(row[letters[at + i]].odds, text[i]))));
      }
      const double mean = sum / static_cast<double>(text.size());
      if (mean > best.odds) best = {text, letters[at], letters[at + text.size() - 1] + 1, mean};
    }
  }
  return best;
}

/// The number that a note's likeliest figure is; 0 where that is none of one or two digits.
int countOf(const std::vector<FigureRead>& figures) {
  if (figures.empty()) return 0;
  const auto likeliest =
      std::max_element(figures.begin(), figures.end(),
                       [](const FigureRead& a, const FigureRead& b) { return a.odds < b.odds; });
  const int count = std::atoi(likeliest->text.c_str());
  return likeliest->text.size() <= 2 && count > 1 ? count : 0;
}

Box boxOf(const std::vector<Mark>& marks) {
  Box box = marks.front().box;
  for (const Mark& m : marks) box = around(box, m.box);
  return box;
}

/// Leaves out the word that stands before the diameter of a pitch circle.
void dropOn(std::vector<Mark>& marks) {
  if (marks.size() < 3 || kindOf(marks[0].odds) != '0' || kindOf(marks[1].odds) != 'N') return;
  marks.erase(marks.begin(), marks.begin() + 2);
}

void addRows(const Lettering& lettering, const Block& block, std::uint8_t above, double inch,
             Unit unit, const Net& net, std::vector<NoteRow>& out) {
  const Pieces pieces = piecesOf(inkOf(lettering, block.parts, block.box), above, inch);
  if (pieces.glyphs.size() > 60) return;
  for (const auto& row : rowsOf(marksOf(pieces, net))) {
    Word word = wordIn(row, kWords, inch);
    if (!word.isPlain()) word = wordIn(row, kCountWords, inch);
    if (!word.isPlain()) {
      if (oddsFor(row.front().odds, 'R') < kPlainR) continue;
      word = {"R", 0, 1, 0};
    }
    const auto cut = [&](std::size_t from, std::size_t past) {
      return std::vector<Mark>(row.begin() + static_cast<std::ptrdiff_t>(from),
                               row.begin() + static_cast<std::ptrdiff_t>(past));
    };
    std::vector<Mark> before = cut(0, word.first), behind = cut(word.past, row.size());
    if (word.text == "PCD") dropOn(before);
    NoteRow note{boxOf(row), spelt(word.text), {}, 0};
    note.box.x += block.box.x - 1;
    note.box.y += block.box.y - 1;
    const Word counted = wordIn(behind, kCountWords, inch);
    if (counted.isPlain()) {
      behind.resize(counted.first);
      note.count = countOf(readMarks(behind, {}, inch, unit));
      behind.clear();
    }
    for (const auto& marks : {before, behind}) {
      if (marks.empty()) continue;
      const Box own = boxOf(marks);
      std::vector<Box> bars;
      for (const Box& b : pieces.bars) {
        if (b.midX() > own.x && b.midX() < own.right() && b.midY() > own.y &&
            b.midY() < own.bottom())
          bars.push_back(b);
      }
      auto reads = readMarks(marks, bars, inch, unit);
      std::move(reads.begin(), reads.end(), std::back_inserter(note.figures));
    }
    out.push_back(std::move(note));
  }
}

bool same(const Box& a, const Box& b) {
  return std::abs(a.midX() - b.midX()) < 0.25 * std::max(a.w, b.w) &&
         std::abs(a.midY() - b.midY()) < 0.5 * std::max(a.h, b.h);
}

}  // namespace

std::vector<NoteRow> noteRows(const Lettering& lettering, double inch, Unit unit, const Net& net,
                              const Stop& stop) {
  std::vector<NoteRow> out;
  for (const Block& block : lettering.blocks) {
    if (stop.asked()) return {};
    if (block.parts.size() < 3 || block.box.w < 0.25 * inch || block.box.w > 6 * inch) continue;
    std::vector<NoteRow> found;
    for (const std::uint8_t above : kThresholds)
      addRows(lettering, block, above, inch, unit, net, found);
    // One row as the thresholds show it, with the figures of all.
    for (NoteRow& row : found) {
      const auto had = std::find_if(out.begin(), out.end(), [&](const NoteRow& o) {
        return o.word == row.word && same(o.box, row.box);
      });
      if (had == out.end()) {
        out.push_back(std::move(row));
      } else {
        had->figures.insert(had->figures.end(), row.figures.begin(), row.figures.end());
        had->count = std::max(had->count, row.count);
      }
    }
  }
  return out;
}

namespace {

/// What a leader may end at: a circle, or a round, which is an arc on the side of `corner`.
struct Target {
  PlanePoint centre;
  double radius = 0;
  std::optional<PlanePoint> corner = {};

  /// How much of a leader from a place to it is drawn, 0 … 1.
  double drawnFrom(PlanePoint from, const Grey& cover, double inch) const {
    const double far = std::hypot(centre.x - from.x, centre.y - from.y);
    if (far < radius + 0.2 * inch) return 0;
    const auto at = [&](double away) {
      const double t = (far - away) / far;
      return PlanePoint{from.x + (centre.x - from.x) * t, from.y + (centre.y - from.y) * t};
    };
    const PlanePoint tip = at(radius);
    if (corner) {
      const bool onArc = (tip.x > centre.x) == (corner->x > centre.x) &&
                         (tip.y > centre.y) == (corner->y > centre.y);
      const double past = std::min(0.03 * inch + 2, 0.5 * radius);
      if (!onArc || inkAlong(cover, at(radius - past),
                             at(std::max(0.0, radius - past - kBehindArc * inch)), 1)
                            .share > kRunsOn)
        return 0;
    }
    return inkAlong(cover, from, tip, 1).share;
  }
};

/// The one of all that a straight line from beside a note leads to.
int pointedAt(const Box& note, const std::vector<Target>& all, const Grey& cover, double inch) {
  int best = -1;
  double most = 0, next = 0;
  for (std::size_t k = 0; k < all.size(); ++k) {
    double own = 0;
    for (const bool right : {false, true}) {
      for (double out = 0.03; out <= 0.36; out += 0.02) {
        for (const double up : {-0.04, -0.02, 0.0, 0.02, 0.04}) {
          const PlanePoint from{right ? note.right() + out * inch : note.x - out * inch,
                                note.midY() + up * inch};
          if (!inkNear(cover, from.x, from.y, 1)) continue;
          own = std::max(own, all[k].drawnFrom(from, cover, inch));
        }
      }
    }
    if (own > most) {
      next = most;
      most = own;
      best = static_cast<int>(k);
    } else {
      next = std::max(next, own);
    }
  }
  return most > kLeader && next < most - 0.08 ? best : -1;
}

/// The row of one of some words below a note's, no further down than `reach` inches of the sheet.
const NoteRow* below(const NoteRow& row, const std::vector<NoteRow>& rows,
                     std::initializer_list<std::string_view> words, double reach) {
  for (const NoteRow& other : rows) {
    const bool under = other.box.y > row.box.midY() && other.box.y < row.box.bottom() + reach &&
                       other.box.x < row.box.right() && other.box.right() > row.box.x;
    if (under && std::find(words.begin(), words.end(), other.word) != words.end()) return &other;
  }
  return nullptr;
}

/// Of how many a note speaks: `4 HOLES` in its own row, behind it or below it.
int countSaid(const NoteRow& row, const std::vector<NoteRow>& rows, double inch) {
  if (row.count > 0) return row.count;
  for (const NoteRow& other : rows) {
    const double behind = other.box.x - row.box.right();
    const bool counts = other.word == "HOLES" || other.word == "PLACES";
    if (counts && std::abs(other.box.midY() - row.box.midY()) < row.box.h / 2.0 && behind > 0 &&
        behind < 0.3 * inch)
      return std::max(1, countOf(other.figures));
  }
  const NoteRow* counted = below(row, rows, {"HOLES", "PLACES"}, 0.25 * inch);
  return std::max(1, counted == nullptr ? 1 : countOf(counted->figures));
}

bool isOfRadius(const NoteRow& row) {
  return row.word == "R" || row.word == "RAD";
}

/// The notes of the rows that are wanted, and which of the targets each points at.
template <class Wanted>
std::vector<Note> notesAt(const std::vector<NoteRow>& rows, const std::vector<Target>& targets,
                          const Grey& cover, double inch, Wanted wanted, const Stop& stop) {
  std::vector<Note> out;
  for (const NoteRow& row : rows) {
    if (stop.asked()) return {};
    if (row.figures.empty() || !wanted(row)) continue;
    const NoteRow* pitch = below(row, rows, {"PCD"}, 0.55 * inch);
    out.push_back({row.word, row.figures, row.box, countSaid(row, rows, inch),
                   pitch == nullptr ? std::vector<FigureRead>() : pitch->figures,
                   pointedAt(row.box, targets, cover, inch)});
  }
  return out;
}

}  // namespace

std::vector<Note> notesOf(const std::vector<NoteRow>& rows, const std::vector<Circle>& circles,
                          const Grey& cover, double inch, const Stop& stop) {
  std::vector<Target> targets;
  for (const Circle& c : circles) targets.push_back({{c.x, c.y}, c.radius});
  return notesAt(
      rows, targets, cover, inch,
      [](const NoteRow& row) {
        return row.word != "HOLES" && row.word != "PLACES" && row.word != "PCD" && !isOfRadius(row);
      },
      stop);
}

std::vector<Note> undisputed(const std::vector<Note>& notes) {
  const auto sayOtherwise = [](const Note& one, const Note& other) {
    return one.of >= 0 && one.of == other.of &&
           (one.word != other.word || one.size.front().text != other.size.front().text);
  };
  std::vector<Note> kept;
  std::copy_if(notes.begin(), notes.end(), std::back_inserter(kept), [&](const Note& one) {
    return std::none_of(notes.begin(), notes.end(),
                        [&](const Note& other) { return sayOtherwise(one, other); });
  });
  return kept;
}

std::vector<Note> radiiOf(const std::vector<NoteRow>& rows, const std::vector<Rounding>& rounds,
                          const Grey& cover, double inch, const Stop& stop) {
  std::vector<Target> targets;
  for (const Rounding& r : rounds) targets.push_back({r.centre, r.radius, r.corner});
  return notesAt(rows, targets, cover, inch, isOfRadius, stop);
}

}  // namespace inchwright::seen
