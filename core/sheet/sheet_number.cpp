#include "core/sheet/sheet_number.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <initializer_list>
#include <string_view>

#include "core/say/doubt_words.h"
#include "core/say/figure_words.h"
#include "core/say/making_words.h"
#include "core/say/piece_words.h"
#include "core/say/plan_words.h"

namespace inchwright {
namespace {

/// FNV-1a, 64 bits: http://www.isthe.com/chongo/tech/comp/fnv/
class Mark {
 public:
  void mix(std::string_view text) {
    for (const char character : text) byte(static_cast<unsigned char>(character));
    byte(0xFF);  // no text goes on into the next
  }
  void mix(const std::vector<std::string>& texts) {
    for (const std::string& text : texts) mix(text);
    byte(0xFE);
  }
  void together(std::initializer_list<std::string_view> texts) {
    for (const std::string_view text : texts) mix(text);
    byte(0xFE);
  }
  void mix(const Coordinate& figure) {
    mix(figure.text);
    mix(std::to_string(figure.value.ticks()));
  }
  void mix(PlanePoint point) {
    mix(std::to_string(std::llround(point.x * 1000)));
    mix(std::to_string(std::llround(point.y * 1000)));
  }

  std::string letters() const {
    // No letter that looks like a figure or like another letter.
    constexpr std::string_view kLetters = "ACDEFHJKLMNPQRTUVWXY";
    std::uint64_t left = stirred();
    std::string text;
    for (int i = 0; i < 12; ++i, left /= kLetters.size()) {
      if (i > 0 && i % 4 == 0) text += '-';
      text += kLetters[left % kLetters.size()];
    }
    return text;
  }

 private:
  void byte(unsigned value) { hash_ = (hash_ ^ value) * 1099511628211ULL; }

  /// Every bit of the hash in every bit: the last step of splitmix64.
  std::uint64_t stirred() const {
    std::uint64_t all = hash_;
    all = (all ^ (all >> 30)) * 0xBF58476D1CE4E5B9ULL;
    all = (all ^ (all >> 27)) * 0x94D049BB133111EBULL;
    return all ^ (all >> 31);
  }

  std::uint64_t hash_ = 14695981039346656037ULL;
};

void mixHead(const SheetContent& content, Mark& mark) {
  const Part& part = content.part;
  mark.together({content.job.title, content.job.print, part.name, part.material, part.hand,
                 std::to_string(part.quantity), content.table.setup,
                 std::string(nameOf(content.table.face)), std::to_string(content.table.turn),
                 stepText(content.table.step), std::string(nameOf(content.table.step.unit))});
}

void mixTable(const SheetContent& content, const SetupWords& words, Mark& mark) {
  const SetupTable& table = content.table;
  const Unit unit = table.step.unit;
  mark.mix(words.zero);
  mark.mix(countsWords(table, English::uk));
  for (const SetupWords::Touch& touch : words.touchOff) {
    mark.mix(touch.what);
    mark.mix(touch.steps);
  }
  // Rows that are worked together mostly share their plan.
  const SharedPlan* plan = nullptr;
  std::string steps, notes, kept;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const TableRow& row = table.rows[i];
    if (!plan || !row.plan.isOf(*plan)) {
      plan = &row.plan;
      steps = stepsWords(row, unit);
      notes = runNotes(*row.plan, unit);
      kept = keptTo(*row.plan, table.step);
    }
    mark.together({row.id, row.xFraction, row.yFraction, words.rows[i].size, words.rows[i].note,
                   steps, notes, kept});
    mark.mix(row.x);
    mark.mix(row.y);
  }
  for (const EdgeRow& edge : table.edges) {
    mark.together({edge.id, std::string(1, letterOf(edge.axis)),
                   edge.stock ? figureText(*edge.stock, unit) : std::string(),
                   edge.disputed ? "disputed" : ""});
    mark.mix(edge.value);
  }
  for (std::size_t i = 0; i < table.checks.size(); ++i) {
    mark.mix(words.checks[i]);
    mark.mix(table.checks[i].x);
    mark.mix(table.checks[i].y);
  }
  for (const Loose& loose : table.unplaced)
    mark.together({loose.id, std::string(nameOf(loose.axis))});
  mark.mix(words.unplaced);
  mark.mix(words.warnings);
  if (!words.curves.empty()) mark.mix(words.curves);
  if (!words.milled.empty()) mark.mix(words.milled);
  if (!content.held) return;
  for (const Finding& finding : content.held->findings) mark.mix(wordsOf(finding, table.step));
  for (const PieceLeft& piece : content.held->pieces) mark.mix(pieceWords(piece, table.step));
  for (const PutInOtherwise& put : content.held->otherwise) {
    mark.mix(otherwiseWords(put, table.step));
  }
  for (const HeldThing& thing : content.held->drawn.things) {
    mark.mix(thing.low);
    mark.mix(thing.high);
  }
}

void mixRest(const SheetContent& content, const std::vector<std::string>& doubts, Mark& mark) {
  for (std::size_t i = 0; i < doubts.size(); ++i) {
    const Doubt& doubt = content.solution.doubts[i];
    mark.together({doubts[i], doubt.accepted ? "accepted" : "", doubt.holdsUp() ? "open" : ""});
  }
  mark.mix(content.options.directChecks);
  for (const std::string& warning : content.options.warnings) mark.mix(warning);
  for (const KitLine& line : content.kit) {
    // What merely came out well makes no new sheet: the one in hand is still right.
    if (!line.found) mark.together({line.place, line.struckOut, line.instead, line.words});
  }
  mark.mix(content.options.showRounding ? "rounding" : "");
  if (const std::optional<Closeness>& closeness = content.options.closeness) {
    for (const ClosenessBand& band : closeness->bands) {
      mark.together({std::string(1, letterOf(band.axis)), std::to_string(band.plusMinus.ticks())});
      mark.mix(band.places);
    }
    for (const BetterAim& aim : closeness->aims) {
      mark.together({aim.place, std::string(1, letterOf(aim.axis))});
      mark.mix(aim.at);
    }
    for (const DirectCheck& check : closeness->directChecks) {
      mark.mix(directCheckWords(check, content.part));
    }
    for (const ClosenessAdvice& advice : closeness->advice) {
      mark.mix(adviceWords(advice, content.part, content.table.step));
    }
  }
}

void mixPicture(const DrawnPart& picture, Mark& mark) {
  for (const PlanePoint point : picture.outline) mark.mix(point);
  mark.mix("stock");
  for (const PlanePoint point : picture.stock) mark.mix(point);
  for (const DrawnHole& hole : picture.circles) {
    mark.mix(hole.id);
    mark.mix(hole.centre);
    mark.mix(PlanePoint{hole.diameter, hole.seatDiameter});
  }
  for (const DrawnSlot& slot : picture.slots) {
    mark.mix(slot.id);
    mark.mix(PlanePoint{slot.width, 0});
  }
  for (const DrawnMilled& milled : picture.milled) {
    mark.mix(milled.id);
    for (const PlanePoint point : milled.ring) mark.mix(point);
  }
  for (const DrawnRound& round : picture.rounds) mark.mix(PlanePoint{round.radius, 0});
  const auto side = [](std::optional<TableSide> one) {
    return std::string(one ? nameOf(*one) : "");
  };
  mark.together({side(picture.jaw), side(picture.stop)});
  for (const TableSide missing : picture.missing) mark.mix(nameOf(missing));
}

}  // namespace

std::string sheetNumber(const SheetContent& content) {
  Mark mark;
  mixHead(content, mark);
  // In one English, so that the two sheets of one setup bear one number.
  if (content.options.english == English::uk) {
    mixTable(content, content.words, mark);
    mixRest(content, content.doubts, mark);
  } else {
    mixTable(content, setupWords(content.part, content.table), mark);
    mixRest(content, doubtTexts(content.part, content.solution), mark);
  }
  if (content.picture) mixPicture(*content.picture, mark);

  const auto numberIn = [](const auto& list, const std::string& name) {
    const auto same = [&](const auto& one) { return one.name == name; };
    const auto found = std::find_if(list.begin(), list.end(), same);
    return std::to_string(found == list.end() ? 1 : found - list.begin() + 1);
  };
  return numberIn(content.job.parts, content.part.name) + "." +
         numberIn(content.part.setups, content.table.setup) + " " + mark.letters();
}

}  // namespace inchwright
