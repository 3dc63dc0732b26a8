#include <nlohmann/json.hpp>
#include <ostream>

#include "app/words/console.h"
#include "app/words/kit_job.h"
#include "app/words/words.h"
#include "core/kit/as_made.h"
#include "core/say/kit_words.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kMadeHelp =
    R"(inchwright made FILE [--unit in|mm] [--step STEP] [--json]

What was measured beside what was wanted, and what goes together as it now is: sizes within
their limits or not, places off by more than their budget, the clearance of every mate and the
worst case of every gap with what was found in place of the print's figures. A figure is taken
with the error of the instrument it was measured with; where a limit lies within that error,
nothing is said.

  --unit in|mm   the unit of the figures, else the machine's
  --step STEP    their step, else the machine's
  --no-shop      takes no notice of the tools (pins) kept for all jobs
  --json         one JSON object

Exit status: 0 all is in, or not measured; 1 something is over, under, off its place, or can't
be told; 2 the words or the file could not be used.
)";

Json verdictsAsJson(const std::vector<Verdict>& verdicts) {
  Json names = Json::array();
  for (const Verdict one : verdicts) names.push_back(nameOf(one));
  return names;
}

Json wantedAsJson(const MadeRow& row, const Step& step) {
  const auto value = [](const std::optional<Coordinate>& at) {
    return at ? std::optional(at->value) : std::nullopt;
  };
  FoundSize size;
  if (row.wantedSize) size = {row.wantedSize->limits.least, row.wantedSize->limits.greatest};
  return Json{{"x", shownOrNull(value(row.wantedX), step)},
              {"x_ticks", ticksOrNull(value(row.wantedX))},
              {"y", shownOrNull(value(row.wantedY), step)},
              {"y_ticks", ticksOrNull(value(row.wantedY))},
              {"size", askedAt(size, step)},
              {"size_ticks", endTicks(size)}};
}

Json foundAsJson(const MadeRow& row, const Step& step) {
  return Json{{"x", shownOrNull(row.foundX, step)},  {"x_ticks", ticksOrNull(row.foundX)},
              {"y", shownOrNull(row.foundY, step)},  {"y_ticks", ticksOrNull(row.foundY)},
              {"size", endsAt(row.foundSize, step)}, {"size_ticks", endTicks(row.foundSize)}};
}

Json asJson(const MateState& mate, const Step& step) {
  Json entry{{"name", mate.name}};
  entry["clearance"] = endsAt(mate.clearance, step);
  entry["clearance_ticks"] = endTicks(mate.clearance);
  entry["drawn"] = endsAt(mate.clearanceAsDrawn, step);
  entry["drawn_ticks"] = endTicks(mate.clearanceAsDrawn);
  entry["wanted"] = askedAt(mate.wanted, step);
  entry["wanted_ticks"] = endTicks(mate.wanted);
  entry["verdict"] = mate.fault ? Json::array() : Json::array({nameOf(mate.verdict)});
  if (mate.fault) entry["error"] = mate.fault->text;
  return entry;
}

Json asJson(const GapState& gap, const Step& step) {
  const auto ends = [](const Span& span) {
    return FoundSize{Length::ticks(span.low), Length::ticks(span.high)};
  };
  Json entry{{"name", gap.name}};
  entry["worst"] = endsAt(ends(gap.asMade), step);
  entry["worst_ticks"] = endTicks(ends(gap.asMade));
  entry["drawn"] = endsAt(ends(gap.asDrawn), step);
  entry["drawn_ticks"] = endTicks(ends(gap.asDrawn));
  entry["wanted"] = askedAt({gap.least, gap.greatest}, step);
  entry["wanted_ticks"] = endTicks({gap.least, gap.greatest});
  entry["keeps"] = gap.keeps;
  if (gap.fault) entry["error"] = gap.fault->text;
  return entry;
}

Json asJson(const AsMade& made, const Step& step) {
  Json whole{{"inchwright", 1},
             {"made", Json::array()},
             {"mates", Json::array()},
             {"gaps", Json::array()}};
  for (const MadeRow& row : made.rows) {
    whole["made"].push_back(Json{{"part", row.part},
                                 {"place", row.place},
                                 {"setup", row.setup},
                                 {"piece", row.piece},
                                 {"wanted", wantedAsJson(row, step)},
                                 {"found", foundAsJson(row, step)},
                                 {"verdict", verdictsAsJson(row.verdicts)}});
  }
  if (!made.nowhere.empty()) whole["nowhere"] = Json::array();
  for (const MadeNowhere& one : made.nowhere) {
    whole["nowhere"].push_back(
        Json{{"part", one.part}, {"place", one.place}, {"setup", one.setup}});
  }
  for (const MateState& mate : made.mates) whole["mates"].push_back(asJson(mate, step));
  for (const GapState& gap : made.gaps) whole["gaps"].push_back(asJson(gap, step));
  return whole;
}

bool isFine(Verdict verdict) {
  return verdict == Verdict::in || verdict == Verdict::notMeasured;
}

bool standsOut(const AsMade& made) {
  if (!made.nowhere.empty()) return true;
  for (const MadeRow& row : made.rows) {
    for (const Verdict one : row.verdicts) {
      if (!isFine(one)) return true;
    }
  }
  for (const MateState& mate : made.mates) {
    if (mate.fault || !isFine(mate.verdict)) return true;
  }
  return false;
}

void print(const AsMade& made, const Step& step, const Streams& streams) {
  for (const std::string& line : madeLines(made, step)) streams.out << oneLine(line) << '\n';
}

int runMade(std::span<const std::string> args, Streams& streams) {
  const Result<Arguments> arguments =
      sortArguments(args, {{"--json"}, kNoShop, {"--unit", true}, {"--step", true}});
  if (!arguments) return refuse(streams, "made", arguments.error());
  const Result<WholeJob> whole = openWholeJob(*arguments);
  if (!whole) return refuse(streams, "made", whole.error());
  const Result<AsMade> made = asMade(whole->opened.job, whole->solutions);
  if (!made) return refuse(streams, "made", made.error(), whole->opened.file);
  if (arguments->has("--json")) {
    streams.out << asJson(*made, whole->step).dump(2, ' ', false, Json::error_handler_t::replace)
                << '\n';
  } else {
    print(*made, whole->step, streams);
    sayWhosePins(whole->opened, streams);
  }
  return standsOut(*made) ? kFindings : kFine;
}

}  // namespace

extern const Word kMadeWord{"made", "what was measured beside what was wanted", kMadeHelp, runMade};

}  // namespace inchwright::app
