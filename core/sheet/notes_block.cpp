#include "core/sheet/notes_block.h"

#include <algorithm>
#include <functional>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "core/base/listed.h"
#include "core/say/piece_words.h"
#include "core/say/plan_words.h"
#include "core/sheet/paragraph.h"
#include "core/sheet/symbols.h"

namespace inchwright {
namespace {

using DrawMark = std::function<void(Sketch&, PlanePoint centre, double size)>;

constexpr std::size_t kLinesTogether = 4;

/// Texts below each other, each with a mark at its left, under a title.
Pieces marked(const SheetContent& content, const std::string& title,
              const std::vector<std::string>& texts, const DrawMark& mark, double width) {
  if (texts.empty()) return {};
  const double body = content.style.body();
  const double indent = body * 2;
  Pieces pieces{titlePiece(content, title, width)};
  const auto again = std::make_shared<const Piece>(pieces.front());
  for (const std::string& text : texts) {
    const std::vector<LaidLine> lines = layText(text, {body, Typeface::regular}, width - indent);
    for (std::size_t first = 0; first < lines.size(); first += kLinesTogether) {
      const auto begin = lines.begin() + static_cast<std::ptrdiff_t>(first);
      const auto end = lines.begin() +
                       static_cast<std::ptrdiff_t>(std::min(first + kLinesTogether, lines.size()));
      const LaidLine some = stacked({begin, end});
      Piece piece;
      piece.heading = again;
      piece.sketch.add(some.sketch, indent, 0);
      if (first == 0) mark(piece.sketch, {body * 0.8, body * 0.82}, body * 1.3);
      piece.height = some.height;
      pieces.push_back(std::move(piece));
    }
    pieces.push_back(space(0.5));
  }
  pieces.push_back(space(1.8));
  return pieces;
}

void drawBoxMark(Sketch& sketch, PlanePoint centre, double size) {
  drawTickBox(sketch, {centre.x - size / 2, centre.y - size / 2}, size);
}

std::string notOnSheet(const std::vector<Id>& ids, Axis axis, const std::string& advice) {
  const bool isOne = ids.size() == 1;
  std::string letter(nameOf(axis));
  letter[0] = static_cast<char>(letter[0] - 'a' + 'A');
  return inchwright::listed(ids) + (isOne ? " is" : " are") +
         " not on this sheet: nothing says where " + (isOne ? "it lies" : "they lie") +
         " along the part's " + letter + (advice.empty() ? "." : ". " + advice);
}

/// What nothing places along an axis: several that only lack a distance in one line, else each with
/// what would place it.
void addUnplaced(const SheetContent& content, Axis axis, std::vector<std::string>& texts) {
  std::vector<Id> together;
  std::string advice;
  for (std::size_t i = 0; i < content.table.unplaced.size(); ++i) {
    const Loose& one = content.table.unplaced[i];
    if (one.axis != axis) continue;
    const bool isPlain =
        !one.free && (one.lacks == Loose::Lacks::distance || one.lacks == Loose::Lacks::anything);
    if (isPlain) {
      together.push_back(one.id);
      advice = content.words.unplaced[i];
    } else {
      texts.push_back(notOnSheet({one.id}, axis, content.words.unplaced[i]));
    }
  }
  if (together.empty()) return;
  texts.push_back(notOnSheet(together, axis, together.size() == 1 ? advice : std::string()));
}

bool standsUnderMind(const SheetContent& content, const Doubt& doubt) {
  const auto& all = content.table.unplaced;
  return doubt.key.topic == DoubtTopic::loose && !doubt.key.places.empty() &&
         std::any_of(all.begin(), all.end(), [&](const Loose& one) {
           return one.id == doubt.key.places.front() && one.axis == doubt.key.axis;
         });
}

}  // namespace

Piece titlePiece(const SheetContent& content, const std::string& words, double width) {
  const LaidLine lines = stacked(layText(words, {content.style.body(), Typeface::bold}, width));
  Piece piece;
  piece.keepWithNext = true;
  piece.sketch.line({0, 0.3}, {width, 0.3}, {Ink::black, kMedium, {}});
  piece.sketch.add(lines.sketch, 0, 0.5);
  piece.height = lines.height + 0.7;
  return piece;
}

Pieces warningPieces(const SheetContent& content, double width) {
  std::vector<std::string> texts = content.words.warnings;
  if (content.held) {
    for (const Finding& finding : content.held->findings) {
      texts.push_back(inEnglish(wordsOf(finding, content.table.step), content.options.english));
    }
  }
  for (const Axis axis : kAxes) addUnplaced(content, axis, texts);
  return marked(content, "MIND", texts, drawMindMark, width);
}

Pieces editionPieces(const SheetContent& content, double width) {
  if (!content.edition.isNew()) return {};
  return marked(content, changedSinceWords(content.edition), content.edition.changes, drawMindMark,
                width);
}

Pieces curvePieces(const SheetContent& content, double width) {
  return marked(content, "ROUNDS AND CURVES", content.words.curves, drawBoxMark, width);
}

Pieces stopPieces(const SheetContent& content, double width) {
  if (!content.held) return {};
  std::vector<std::string> texts;
  const auto add = [&](const std::string& text) {
    texts.push_back(inEnglish(text, content.options.english));
  };
  for (const PieceLeft& piece : content.held->pieces) add(pieceWords(piece, content.table.step));
  for (const PutInOtherwise& put : content.held->otherwise) {
    for (const std::string& line : otherwiseWords(put, content.table.step)) add(line);
  }
  return marked(content, "PIECES AT THE STOP", texts, drawBoxMark, width);
}

Pieces directCheckPieces(const SheetContent& content, double width) {
  std::vector<std::string> texts = content.options.directChecks;
  if (content.options.closeness) {
    for (const DirectCheck& check : content.options.closeness->directChecks) {
      texts.push_back(directCheckWords(check, content.part));
    }
  }
  return marked(content, "MEASURE ON THE PART", texts, drawBoxMark, width);
}

Pieces queryPieces(const SheetContent& content, double width) {
  std::vector<std::string> open;
  std::vector<std::string> assumed;
  std::vector<std::string> accepted;
  std::vector<Id> loose;
  std::size_t count = 0;
  for (std::size_t i = 0; i < content.solution.doubts.size(); ++i) {
    const Doubt& doubt = content.solution.doubts[i];
    if (doubt.holdsUp()) ++count;
    // Each once: what would place it was said above.
    if (doubt.holdsUp() && standsUnderMind(content, doubt)) {
      const Id& id = doubt.key.places.front();
      if (std::find(loose.begin(), loose.end(), id) == loose.end()) loose.push_back(id);
      continue;
    }
    std::vector<std::string>& texts = doubt.holdsUp()                          ? open
                                      : doubt.key.topic == DoubtTopic::assumed ? assumed
                                                                               : accepted;
    if (!doubt.holdsUp() && !doubt.accepted) continue;
    texts.push_back(content.doubts[i]);
  }
  if (!loose.empty()) open.push_back("Not placed yet, as under MIND: " + inchwright::listed(loose));
  Pieces pieces = marked(
      content, "OPEN QUERIES: " + std::to_string(count) + " \u00B7 a draft until they are settled",
      open, drawQueryMark, width);
  const DrawMark dash = [](Sketch& sketch, PlanePoint centre, double size) {
    sketch.line({centre.x - size / 3, centre.y}, {centre.x + size / 3, centre.y},
                {Ink::black, kMedium, {}});
  };
  const auto append = [&](const char* title, const std::vector<std::string>& texts) {
    Pieces more = marked(content, title, texts, dash, width);
    std::move(more.begin(), more.end(), std::back_inserter(pieces));
  };
  append("ASSUMED AND ACCEPTED", assumed);
  append("LOOKED AT AND LET STAND", accepted);
  return pieces;
}

}  // namespace inchwright
