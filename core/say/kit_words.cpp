#include "core/say/kit_words.h"

#include <algorithm>

#include "core/measure/limits.h"
#include "core/say/reading_words.h"

namespace inchwright {
namespace {

std::string shown(Length length, const Step& step) {
  return showAtStep(length.rational(), step).text;
}

/// Clearances are told to a tenth of a thou or to 2 µm: a readout's step would round them away.
Step finer(const Step& step) {
  const std::int64_t fine =
      step.unit == Unit::inch ? Length::kTicksPerInch / 10'000 : Length::kTicksPerMillimetre / 500;
  return {Length::ticks(std::min(step.size.ticks(), fine)), step.unit};
}

std::string signedShown(Length length, const Step& step) {
  const std::string text = shown(length, step);
  return text.starts_with('-') ? text : "+" + text;
}

std::string endsWords(const std::string& least, const std::string& greatest) {
  if (greatest.empty()) return least.empty() ? "not known" : "at least " + least;
  if (least.empty()) return "at most " + greatest;
  return least == greatest ? least : least + " to " + greatest;
}

/// What something may be: outwards, so that nothing is made out to be surer than it is.
std::string ends(const FoundSize& size, const Step& step) {
  const ShownLimits shown =
      showOutwards(size.least.value_or(Length()), size.greatest.value_or(Length()), step);
  return endsWords(size.least ? shown.low.text : "", size.greatest ? shown.high.text : "");
}

/// What something has to be, as given.
std::string asked(const FoundSize& limits, const Step& step) {
  const auto one = [&](const std::optional<Length>& limit) {
    return limit ? shown(*limit, step) : std::string();
  };
  return endsWords(one(limits.least), one(limits.greatest));
}

/// The step at which what was found and what it has to be tell what is said of them.
Step telling(const FoundSize& found, const FoundSize& wanted, const Step& step) {
  if (!found.known()) return step;
  const Length least = found.least ? *found.least : *found.greatest;
  const Length greatest = found.greatest.value_or(least);
  return stepThatTells(least, greatest, wanted.least, wanted.greatest, step);
}

/// What something is to be made to: inwards, at a finer step where there is nothing between.
std::string toMake(const FoundSize& size, const Step& step) {
  if (!size.least || !size.greatest) return asked(size, step);
  const auto limits = showLimitsInwards(*size.least, *size.greatest, step);
  if (limits) return endsWords(limits->low.text, limits->high.text);
  if (step.size.ticks() % 10 != 0) return asked(size, step);
  return toMake(size, {Length::ticks(step.size.ticks() / 10), step.unit});
}

FoundSize sizeOf(const SizeLimits& limits) {
  return {limits.least, limits.greatest};
}

FoundSize sizeOf(const Span& span) {
  return {Length::ticks(span.low), Length::ticks(span.high)};
}

std::string ends(const Span& span, const Step& step) {
  return ends(sizeOf(span), step);
}

std::string placeOf(const std::optional<Length>& x, const std::optional<Length>& y,
                    const Step& step) {
  const auto one = [&](const std::optional<Length>& at) {
    return at ? signedShown(*at, step) : std::string("?");
  };
  return one(x) + ", " + one(y);
}

std::string rowLine(const MadeRow& row, const Step& step) {
  std::string line = row.part + ", " + row.place;
  if (!row.piece.empty()) line += ", piece " + row.piece;
  line += ":";
  if (row.foundSize.known()) {
    const FoundSize wanted = row.wantedSize ? sizeOf(row.wantedSize->limits) : FoundSize{};
    const Step fine = telling(row.foundSize, wanted, step);
    line += " size " + ends(row.foundSize, fine);
    if (row.wantedSize) line += ", wanted " + asked(wanted, fine);
    line += ";";
  }
  if (row.foundX || row.foundY) {
    const auto value = [](const std::optional<Coordinate>& at) {
      return at ? std::optional(at->value) : std::nullopt;
    };
    line += " found at " + placeOf(row.foundX, row.foundY, step) + ", wanted " +
            placeOf(value(row.wantedX), value(row.wantedY), step) + ";";
  }
  for (std::size_t i = 0; i < row.verdicts.size(); ++i) {
    line += (i == 0 ? " " : ", ") + verdictWords(row.verdicts[i]);
  }
  if (row.unlikely) line += "; so far off: is the figure right?";
  return line;
}

std::string mateStateLine(const MateState& mate, const Step& coarse) {
  const Step step = telling(mate.clearance, mate.wanted, coarse);
  std::string line = "Mate " + mate.name + ": ";
  if (mate.fault) return line + mate.fault->text;
  line += "clearance " + ends(mate.clearance, step);
  if (mate.measured) line += " (as drawn " + ends(mate.clearanceAsDrawn, step) + ")";
  line += ", wanted " + asked(mate.wanted, step) + "; ";
  const std::string then = mate.toBeSuited ? "; its shaft is still to be made to suit" : "";
  switch (mate.verdict) {
    case Verdict::in:
      return line + "goes together";
    case Verdict::over:
      return line + "too loose" + then;
    case Verdict::under:
      return line + "too tight" + then;
    case Verdict::notMeasured:
      return line + (mate.tightAsLettered ? "the hole is lettered smaller than what runs in it"
                                          : "hangs on what is made: not measured");
    default:
      return line + "can't tell" + then;
  }
}

std::string gapStateLine(const GapState& gap, const Step& coarse) {
  const Step step = telling(sizeOf(gap.asMade), {gap.least, gap.greatest}, coarse);
  std::string line = "Gap " + gap.name + ": ";
  if (gap.fault) return line + gap.fault->text;
  line += "at worst " + ends(gap.asMade, step);
  if (!(gap.asMade == gap.asDrawn)) line += " (as drawn " + ends(gap.asDrawn, step) + ")";
  if (!gap.least && !gap.greatest) return line;
  line += ", has to be " + asked(FoundSize{gap.least, gap.greatest}, step);
  return line + (gap.keeps ? "; keeps to it" : "; may not keep to it");
}

std::string bushWords(const Bushing& bush, const Step& step) {
  return "bore " + toMake(sizeOf(bush.boreLimits), step) + ", outside " +
         toMake(sizeOf(bush.outsideLimits), step) + " (" + bush.press + ")";
}

std::string towardWords(const Way& way, const Step& step) {
  return signedShown(way.towardX, step) + ", " + signedShown(way.towardY, step);
}

std::string wayLine(const Way& way, const Step& step) {
  const std::string centre = placeOf(way.centreX, way.centreY, step);
  switch (way.way) {
    case WayOut::shaft: {
      const bool none =
          way.shaft->least && way.shaft->greatest && *way.shaft->least > *way.shaft->greatest;
      if (none) return "A shaft to suit (" + way.sizeName + "): none fits all that the hole may be";
      return "A shaft to suit (" + way.sizeName + "): make it " + toMake(*way.shaft, step);
    }
    case WayOut::bush:
      return "A bush: bore true at " + centre + ", " + bushWords(*way.bushing, step) +
             "; press it in, then bore or ream to " + shown(way.bushing->inside, step) +
             ", it closes in; wall left " + shown(way.bushing->wall, step);
    case WayOut::plug:
      return "A plug of the same metal: " + bushWords(*way.bushing, step) + "; then " +
             (way.bushing->cutsJoint ? "bore, not drill, since the joint is cut, " : "make it ") +
             shown(way.bushing->inside, step) + " at " + centre;
    case WayOut::eccentricBush:
      return "An eccentric bush in the hole as it is: " + bushWords(*way.bushing, step) +
             ", throw " + shown(way.bushing->throwBy, step) + " towards " + towardWords(way, step) +
             " on the readout, thin wall " + shown(way.bushing->wall, step) +
             "; keep it from turning; only where the hole can't be bored true";
    case WayOut::openToSize:
      return "Open it to size: ream or bore it out to " + way.sizeName;
    case WayOut::nextSize:
      return "The next size: " + way.sizeName + ", and what goes into it likewise";
    case WayOut::leave:
      break;
  }
  return "Leave it";
}

std::string effectLine(const Part& part, const Effect& effect, const Step& step) {
  const bool reading = effect.of == Effect::Of::reading;
  const std::string what = reading ? readingWords(part, effect.name)
                                   : std::string(nameOf(effect.of)) + " " + effect.name;
  std::string line = "  " + what + ": " + ends(effect.before, step);
  if (!(effect.after == effect.before)) line += ", then " + ends(effect.after, step);
  return line + (effect.holds ? "; holds" : "; does not hold");
}

std::string whyWords(const Mended& chosen) {
  std::string words;
  if (!chosen.reason.empty()) words += ". Why: " + chosen.reason;
  if (!chosen.when.empty()) words += " (" + chosen.when + ")";
  return words;
}

/// That a way out has other figures than when it was chosen.
std::string changedWords(const ChosenFigures& was, const Step& step) {
  std::string then;
  if (was.bore) {
    then = "a bore of " + shown(*was.bore, step);
  } else if (was.least && was.greatest && *was.least != *was.greatest) {
    then = toMake({was.least, was.greatest}, step);
  } else if (was.least) {
    then = shown(*was.least, step);
  }
  if (then.empty())
    return "It was chosen when the hole was otherwise: choose again before it is cut";
  return "It was chosen as " + then +
         " and is another since something else was measured: choose again before it is cut";
}

KitLine cameOutLine(const CameOut& one, const Step& step) {
  KitLine line;
  line.place = one.row.place;
  line.words = rowLine(one.row, step).substr((one.row.part + ", " + one.row.place).size());
  if (line.words.starts_with(": ")) line.words.erase(0, 2);
  line.found = !one.isWrong() && !one.chosen;
  line.mind = one.isWrong() && !one.chosen;
  if (line.mind) line.words += ". No way out is chosen yet";
  if (!one.chosen) return line;
  if (one.isWrong() && one.row.wantedSize && one.chosen->way != WayOut::leave) {
    line.struckOut = asked(sizeOf(one.row.wantedSize->limits), step);
  }
  line.words += ". " + (one.way ? wayLine(*one.way, step) : std::string("Put right otherwise"));
  line.words += whyWords(*one.chosen);
  if (one.changed) {
    line.mind = true;
    line.words += ". " + changedWords(one.chosen->chosen, step);
  }
  return line;
}

KitLine suitsLine(const Suits& one, const Step& step) {
  KitLine line;
  line.place = one.place;
  const std::string other =
      one.otherPart.empty() ? ends(one.other, step) : one.otherPlace + " of " + one.otherPart;
  line.words = (one.isHole ? "takes " : "fits ") + other + " (" + one.mate + "): ";
  const std::string clearance = "clearance wanted " + asked(one.wanted, step);
  if (one.suited) {
    line.words += clearance + "; it is made to suit this hole as found";
  } else if (one.measured) {
    line.words += clearance + ", now " + ends(one.clearance, step);
    const Verdict verdict = verdictOf(one.clearance, one.wanted);
    line.mind = verdict == Verdict::over || verdict == Verdict::under;
    line.words += verdict == Verdict::over    ? ": too loose"
                  : verdict == Verdict::under ? ": too tight"
                                              : "";
  } else if (!one.otherMeasured) {
    line.words += clearance;
  } else if (one.otherUnlikely) {
    line.mind = true;
    line.words += other + " is said to have come out " + ends(one.other, step) +
                  ": is that figure right? Make nothing to suit it before that is settled";
  } else if (!one.canBeHad()) {
    line.mind = true;
    line.words +=
        clearance + "; no size gives it on all that " + other + " may be, " + ends(one.other, step);
  } else {
    line.instead = "make it " + toMake(one.make, step);
    if (one.replaces()) line.struckOut = one.lettered;
    line.words += other + " is " + ends(one.other, step) + "; " + clearance;
    if (one.chosen) line.words += whyWords(*one.chosen);
  }
  return line;
}

}  // namespace

std::string wayWords(WayOut way) {
  switch (way) {
    case WayOut::shaft:
      return "a shaft to suit";
    case WayOut::bush:
      return "a bush";
    case WayOut::plug:
      return "a plug";
    case WayOut::eccentricBush:
      return "an eccentric bush";
    case WayOut::openToSize:
      return "open it to size";
    case WayOut::nextSize:
      return "the next size";
    case WayOut::leave:
      break;
  }
  return "leave it";
}

std::string verdictWords(Verdict verdict) {
  switch (verdict) {
    case Verdict::in:
      return "in";
    case Verdict::over:
      return "over size";
    case Verdict::under:
      return "under size";
    case Verdict::offPlace:
      return "off its place";
    case Verdict::cannotTell:
      return "can't tell: a limit lies within the error";
    case Verdict::notMeasured:
      break;
  }
  return "not measured";
}

namespace {

std::vector<std::string> nowhereLines(const AsMade& made) {
  std::vector<std::string> lines;
  for (const MadeNowhere& one : made.nowhere) {
    lines.push_back(one.part + ": " +
                    (one.setup.empty() ? "what was measured at " + one.place +
                                             " counts for nothing: the part has no such place"
                                       : "where " + one.place +
                                             " was found counts for nothing: the "
                                             "part has no setup " +
                                             one.setup));
  }
  return lines;
}

}  // namespace

std::string mateWords(const MateState& mate, const Step& readout) {
  return mateStateLine(mate, finer(readout));
}

std::string gapWords(const GapState& gap, const Step& readout) {
  return gapStateLine(gap, finer(readout));
}

std::vector<std::string> madeLines(const AsMade& made, const Step& readout) {
  const Step step = finer(readout);
  std::vector<std::string> lines = nowhereLines(made);
  for (const MadeRow& row : made.rows) lines.push_back(rowLine(row, step));
  for (const MateState& mate : made.mates) lines.push_back(mateStateLine(mate, step));
  for (const GapState& gap : made.gaps) lines.push_back(gapStateLine(gap, step));
  if (lines.empty()) lines.push_back("Nothing was measured, and nothing has to go together.");
  return lines;
}

std::vector<std::string> unlikelyLines(const std::vector<MadeRow>& rows, const Step& readout) {
  std::vector<std::string> lines;
  for (const MadeRow& row : rows) {
    if (row.unlikely) lines.push_back(rowLine(row, finer(readout)));
  }
  return lines;
}

std::vector<std::string> kitDoubtLines(const AsMade& made, const Step& readout) {
  const Step step = finer(readout);
  std::vector<std::string> lines = nowhereLines(made);
  for (std::string& line : unlikelyLines(made.rows, readout)) lines.push_back(std::move(line));
  for (const MadeRow& row : made.rows) {
    if (row.open && !row.unlikely)
      lines.push_back(rowLine(row, step) + ". No way out is chosen yet");
  }
  for (const ChangedChoice& one : made.changed) {
    lines.push_back(one.part + ", " + one.place + ": " + wayWords(one.way) + ". " +
                    changedWords(one.was, step));
  }
  for (const MateState& mate : made.mates) {
    const bool open = mate.verdict == Verdict::notMeasured;
    const bool fine =
        mate.verdict == Verdict::in || mate.toBeSuited || (open && !mate.tightAsLettered);
    if (mate.fault || !fine) lines.push_back(mateStateLine(mate, step));
  }
  for (const GapState& gap : made.gaps) {
    if (!gap.fault && !gap.keeps) lines.push_back(gapStateLine(gap, step));
  }
  return lines;
}

std::vector<std::string> waysOutLines(const Part& part, const std::vector<Way>& ways,
                                      const Step& readout) {
  const Step step = finer(readout);
  std::vector<std::string> lines;
  for (const Way& way : ways) {
    lines.push_back(wayLine(way, step));
    for (const Effect& effect : way.effects) lines.push_back(effectLine(part, effect, step));
  }
  return lines;
}

std::vector<KitLine> kitLines(const KitOfPart& kit, const Step& readout) {
  const Step step = finer(readout);
  std::vector<KitLine> lines;
  for (const CameOut& one : kit.cameOut) lines.push_back(cameOutLine(one, step));
  for (const Suits& one : kit.suits) lines.push_back(suitsLine(one, step));
  return lines;
}

std::string notCarriedOver(const Job& job, const Part& part, std::string_view setup) {
  const Part* const base = part.opposite ? job.part(part.opposite->part) : nullptr;
  const Setup* const theirs = base ? base->setup(setup) : nullptr;
  const Setup* const ours = part.setup(setup);
  if (!theirs || !ours || theirs->held == Holding{} || !(ours->held == Holding{})) return {};
  return "the parallels, clamps and pieces of " + base->name + ", setup " + std::string(setup) +
         ", are not carried over to this hand: nothing here is checked against them until this "
         "setup says its own";
}

std::vector<std::string> cameOutLines(const KitOfPart& kit, const Step& readout) {
  const Step step = finer(readout);
  std::vector<std::string> lines;
  for (const CameOut& one : kit.cameOut) {
    if (one.isWrong()) lines.push_back(one.row.place + ": " + cameOutLine(one, step).words);
  }
  return lines;
}

}  // namespace inchwright
