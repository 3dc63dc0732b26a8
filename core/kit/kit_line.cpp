#include "core/kit/kit_line.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "core/kit/kit_cursor.h"
#include "core/kit/kit_edits.h"
#include "core/part/common_axis.h"

namespace inchwright {
namespace {

constexpr std::string_view kBlank = " \t";

/// Takes a figure that may be said once.
Result<Done> takeOnce(KitCursor& cursor, std::optional<Lettered>& figure, const char* what) {
  if (figure) return cursor.refuse(std::string("the ") + what + " is said twice");
  auto read = cursor.takeFigure();
  if (!read) return read.error();
  figure = std::move(read).value();
  return Done{};
}

class MateReader {
 public:
  MateReader(const Job& job, std::string_view line) : job_(job), cursor_(job, line) {}

  Result<Mate> read() {
    cursor_.takeIf("mate");
    auto name = cursor_.takeTitle(job_.mates, "mate");
    if (!name) return name.error();
    mate_.name = std::move(name).value();
    while (!cursor_.atEnd()) {
      if (cursor_.takeSemicolon()) continue;
      if (const Result<Done> done = piece(); !done) return done.error();
    }
    return std::move(mate_);
  }

 private:
  Result<Done> piece() {
    if (cursor_.takeIf("hole")) return side(mate_.hole, "hole", hole_);
    if (cursor_.takeIf("shaft")) return side(mate_.shaft, "shaft", shaft_);
    if (cursor_.takeIf("least")) return takeOnce(cursor_, mate_.least, "least");
    if (cursor_.takeIf("greatest")) return takeOnce(cursor_, mate_.greatest, "greatest");
    if (cursor_.takeIf("fit")) {
      if (!mate_.fit.empty()) return cursor_.refuse("the fit is said twice");
      mate_.fit = std::string(cursor_.takeText());
      return mate_.fit.empty() ? Result<Done>(cursor_.refuse("name the fit, such as RC4 or H7/g6"))
                               : Done{};
    }
    if (cursor_.takeIf("places")) {
      while (!cursor_.atEndOfPiece() && !cursor_.isAtKeyword()) {
        mate_.places.emplace_back(cursor_.takeWord());
      }
      return Done{};
    }
    return cursor_.refuse("`" + std::string(cursor_.peek()) +
                          "`: a mate says hole, shaft, fit, least, greatest or places");
  }

  Result<Done> side(SizeOrPlace& side, const char* what, bool& said) {
    if (std::exchange(said, true)) {
      return cursor_.refuse(std::string("the ") + what + " is said twice");
    }
    auto read = cursor_.takeSide(what);
    if (!read) return read.error();
    side = std::move(read).value();
    return Done{};
  }

  const Job& job_;
  KitCursor cursor_;
  Mate mate_;
  bool hole_ = false;
  bool shaft_ = false;
};

class GapReader {
 public:
  GapReader(const Job& job, std::string_view line) : job_(job), cursor_(job, line) {}

  Result<Gap> read() {
    cursor_.takeIf("gap");
    auto name = cursor_.takeTitle(job_.gaps, "gap");
    if (!name) return name.error();
    gap_.name = std::move(name).value();
    while (!cursor_.atEnd()) {
      if (cursor_.takeSemicolon()) continue;
      if (const Result<Done> done = piece(); !done) return done.error();
    }
    return std::move(gap_);
  }

 private:
  Result<Done> piece() {
    if (cursor_.takeIf("least")) return takeOnce(cursor_, gap_.least, "least");
    if (cursor_.takeIf("greatest")) return takeOnce(cursor_, gap_.greatest, "greatest");
    GapMember member;
    if (cursor_.takeIf("-") || cursor_.takeIf("−")) {
      member.sign = -1;
    } else {
      cursor_.takeIf("+");
    }
    if (const Result<Done> done = thing(member); !done) return done;
    if (cursor_.takeIf("called")) member.name = cursor_.takeName();
    if (!cursor_.atEndOfPiece() && cursor_.peek() != "least" && cursor_.peek() != "greatest") {
      return cursor_.refuse("`" + std::string(cursor_.peek()) +
                            "`: a semicolon stands between the members of a gap");
    }
    gap_.members.push_back(std::move(member));
    return Done{};
  }

  Result<Done> thing(GapMember& member) {
    if (cursor_.takeIf("length")) {
      if (const auto done = takeOnce(cursor_, member.length, "length"); !done) return done;
      if (!cursor_.takeIf("of")) return Done{};
      member.part = cursor_.takePart();
      return member.part.empty() ? Result<Done>(noSuchPart()) : Done{};
    }
    if (cursor_.takeIf("fit")) {
      member.fit = std::string(cursor_.takeText());
      if (!cursor_.takeIf("at"))
        return cursor_.refuse("say of what size, such as `fit RC4 at 1/4`");
      return takeOnce(cursor_, member.size, "size");
    }
    if (cursor_.peek() == "hole") {
      if (const auto done = side(member.hole, "hole"); !done) return done;
      return side(member.shaft, "shaft");
    }
    if (cursor_.takeIf("screw")) {
      member.screw = std::string(cursor_.takeText());
      if (cursor_.takeIf("fit")) {
        member.fit = std::string(cursor_.takeText());
        return Done{};
      }
      return side(member.hole, "hole");
    }
    return distance(member);
  }

  Result<Done> side(std::optional<SizeOrPlace>& into, const char* what) {
    if (!cursor_.takeIf(what)) {
      return cursor_.refuse(std::string("name the ") + what + " as well, such as `" + what +
                            " A of Plate`");
    }
    auto read = cursor_.takeSide(what);
    if (!read) return read.error();
    into = std::move(read).value();
    return Done{};
  }

  Error noSuchPart() const { return cursor_.refuse("the job has no part of that name here"); }

  /// `x A to B of Plate`, `centres A to B of Plate`.
  Result<Done> distance(GapMember& member) {
    std::optional<Axis> axis;
    const bool ends = cursor_.rest().substr(cursor_.peek().size()).starts_with(" to ");
    if (!ends && (cursor_.takeIf("centres") || cursor_.takeIf("centers"))) {
      member.isStraight = true;
    } else if (const auto named = ends ? std::nullopt : axisNamed(cursor_.peek())) {
      cursor_.takeWord();
      axis = named;
    }
    const KitCursor before = cursor_;
    auto place = cursor_.takePlaceOf();
    const std::size_t to = place ? place->first.find(" to ") : std::string::npos;
    if (to == std::string::npos) {
      return before.refuse(
          "a member of a gap is a distance such as `x A to B of Plate`, or a `length`, a `fit`, a "
          "`hole` and its `shaft`, a `screw`");
    }
    member.part = std::move(place->second);
    member.from = place->first.substr(0, to);
    member.to = place->first.substr(place->first.find_first_not_of(' ', to + 4));
    if (member.isStraight) return Done{};
    return alongAxis(member, axis, before);
  }

  Result<Done> alongAxis(GapMember& member, std::optional<Axis> axis,
                         const KitCursor& before) const {
    const Part& part = *job_.part(member.part);
    if (axis) {
      member.axis = axis;
      const auto shared = axisBetween(part, member.from, member.to, *axis);
      if (!shared) return shared.error();
      return *shared == *axis ? Done{}
                              : Result<Done>(before.refuse("these two can't be measured along " +
                                                           std::string(nameOf(*axis))));
    }
    for (const Axis wanted : kAxes) {
      const auto shared = axisBetween(part, member.from, member.to, wanted);
      if (!shared) return shared.error();
      if (member.axis && *member.axis != *shared) {
        return before.refuse("say along which axis, such as `x " + member.from + " to " +
                             member.to + "`, or `centres`");
      }
      member.axis = *shared;
    }
    return Done{};
  }

  const Job& job_;
  KitCursor cursor_;
  Gap gap_;
};

std::string sideText(const SizeOrPlace& side) {
  if (const auto* text = std::get_if<Lettered>(&side)) return text->text;
  const PartPlace& at = std::get<PartPlace>(side);
  return at.place + " of " + at.part;
}

std::string memberText(const GapMember& member) {
  std::string text = member.sign < 0 ? " - " : " + ";
  if (member.length) {
    text += "length " + member.length->text + (member.part.empty() ? "" : " of " + member.part);
  } else if (!member.screw.empty()) {
    text += "screw " + member.screw;
    text += member.hole ? " hole " + sideText(*member.hole) : " fit " + member.fit;
  } else if (!member.fit.empty()) {
    text += "fit " + member.fit + " at " + (member.size ? member.size->text : "");
  } else if (member.hole) {
    text += "hole " + sideText(*member.hole) + ", shaft " +
            (member.shaft ? sideText(*member.shaft) : "");
  } else {
    text += member.isStraight ? "centres "
            : member.axis     ? std::string(nameOf(*member.axis)) + " "
                              : "";
    text += member.from + " to " + member.to + " of " + member.part;
  }
  return member.name.empty() ? text : text + " called " + member.name;
}

/// Takes a first word, with the blanks behind it, off a line.
bool takeFirst(std::string_view& line, std::string_view word) {
  const std::size_t begin = std::min(line.find_first_not_of(kBlank), line.size());
  std::string_view text = line.substr(begin);
  if (!text.starts_with(word)) return false;
  text.remove_prefix(word.size());
  if (!text.empty() && kBlank.find(text.front()) == kBlank.npos) return false;
  line = text.substr(std::min(text.find_first_not_of(kBlank), text.size()));
  return true;
}

Result<KitLineOutcome> beginOtherHand(const Job& job, std::string_view line) {
  KitCursor cursor(job, line);
  cursor.takeIf("other");
  cursor.takeIf("hand");
  if (!cursor.takeIf("of")) return cursor.refuse("name the part: `other hand of Right cock …`");
  const std::string of = cursor.takePart();
  if (of.empty()) return cursor.refuse("the job has no part of that name here");
  if (!cursor.takeIf("across")) {
    return cursor.refuse("say what is turned round: `across x` (left becomes right) or `across y`");
  }
  const auto axis = axisNamed(cursor.peek());
  if (!axis || *axis == Axis::z) return cursor.refuse("a part is turned round across x or y");
  cursor.takeWord();
  if (!cursor.takeIf("called")) return cursor.refuse("say what it is called: `called Left cock`");
  const std::string name = cursor.takeName();
  auto edited = withOtherHand(job, of, *axis, name);
  if (!edited) return edited.error();
  return KitLineOutcome{std::move(edited).value(), KitThing::otherHand, name, false};
}

KitLineOutcome outcome(Job job, KitThing thing, std::string name, bool removed) {
  return {std::move(job), thing, std::move(name), removed};
}

}  // namespace

bool isKitLine(std::string_view line) {
  if (takeFirst(line, "other")) return takeFirst(line, "hand");
  if (!takeFirst(line, "change")) takeFirst(line, "delete");
  return (takeFirst(line, "mate") || takeFirst(line, "gap")) && !line.empty();
}

Result<Mate> readMateLine(const Job& job, std::string_view line) {
  return MateReader(job, line).read();
}

Result<Gap> readGapLine(const Job& job, std::string_view line) {
  return GapReader(job, line).read();
}

Result<KitLineOutcome> applyKitLine(const Job& job, std::string_view whole) {
  std::string_view line = whole;
  if (takeFirst(line, "other")) return beginOtherHand(job, whole);
  const bool change = takeFirst(line, "change");
  const bool remove = !change && takeFirst(line, "delete");
  const auto shifted = [&](Error error) {
    // Offsets are those of the line as it was typed.
    if (error.at) *error.at += static_cast<std::size_t>(line.data() - whole.data());
    return error;
  };
  const bool isMate = KitCursor(job, line).peek() == "mate";
  const KitThing thing = isMate ? KitThing::mate : KitThing::gap;
  if (remove) {
    std::string_view name = line;
    takeFirst(name, isMate ? "mate" : "gap");
    auto edited = isMate ? withoutMate(job, name) : withoutGap(job, name);
    if (!edited) return edited.error();
    return outcome(std::move(edited).value(), thing, std::string(name), true);
  }
  const auto keep = [&](auto read, auto edit) -> Result<KitLineOutcome> {
    if (!read) return shifted(read.error());
    std::string name = read->name;
    auto edited = edit(job, change ? name : std::string(), std::move(read).value());
    if (!edited) return edited.error();
    return outcome(std::move(edited).value(), thing, std::move(name), false);
  };
  return isMate ? keep(readMateLine(job, line), withMate) : keep(readGapLine(job, line), withGap);
}

std::string mateLine(const Mate& mate) {
  std::string line = "mate " + mate.name + ":";
  const auto says = [&](const char* word, const std::string& text) {
    if (!text.empty()) line += (line.ends_with(':') ? " " : ", ") + (word + (" " + text));
  };
  says("hole", sideText(mate.hole));
  says("shaft", sideText(mate.shaft));
  says("fit", mate.fit);
  says("least", mate.least ? mate.least->text : "");
  says("greatest", mate.greatest ? mate.greatest->text : "");
  std::string places;
  for (const Id& place : mate.places) places += (places.empty() ? "" : " ") + place;
  says("places", places);
  return line;
}

std::string gapLine(const Gap& gap) {
  std::string line = "gap " + gap.name + ":";
  const auto apart = [&] { return line.ends_with(':') ? "" : ";"; };
  for (const GapMember& member : gap.members) line += apart() + memberText(member);
  if (gap.least) line += apart() + (" least " + gap.least->text);
  if (gap.greatest) line += apart() + (" greatest " + gap.greatest->text);
  return line;
}

}  // namespace inchwright
