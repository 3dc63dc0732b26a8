#include <nlohmann/json.hpp>
#include <ostream>

#include "app/words/console.h"
#include "app/words/kit_job.h"
#include "app/words/tolerance_job.h"
#include "app/words/way_figures.h"
#include "app/words/words.h"
#include "core/document/json_text.h"
#include "core/kit/as_made.h"
#include "core/kit/ways_out.h"
#include "core/say/kit_words.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kMendHelp =
    R"(inchwright mend FILE --part P --place A [--unit in|mm] [--step STEP] [--json]

The ways out of a hole that came out over its size or off its place, as far as `made` says: a
shaft to suit, a bush, a plug, an eccentric bush, the next size up, or leave it; each with its
figures, and what it does to every reading, mate and gap that the hole has a part in.

  --part P       the part
  --place A      the hole, as measured in the part's `made`
  --unit in|mm   the unit of the figures, else the machine's
  --step STEP    their step, else the machine's
  --no-shop      takes no notice of the tools (pins) kept for all jobs
  --json         one JSON object

A bush is bored or reamed to size after it is pressed in: it closes in. Choosing one is up to
you; write it into `mended` with its reason.

Exit status: 0 fine; 2 the words or the file could not be used.
)";

Json pairAt(const std::optional<Length>& x, const std::optional<Length>& y, const Step& step) {
  return Json::array({shownOrNull(x, step), shownOrNull(y, step)});
}

Json figuresAsJson(const Way& way, const Step& step) {
  Json figures{{"setup", way.setup}};
  const auto put = [&](const char* name, Length length) {
    figures[name] = shownOrNull(length, step);
    figures[std::string(name) + "_ticks"] = length.ticks();
  };
  if (way.centreX || way.centreY) {
    figures["centre"] = pairAt(way.centreX, way.centreY, step);
    figures["centre_ticks"] = Json::array({ticksOrNull(way.centreX), ticksOrNull(way.centreY)});
  }
  if (way.bushing) {
    put("bore", way.bushing->bore);
    put("outside", way.bushing->outside);
    put("inside", way.bushing->inside);
    if (way.way != WayOut::plug) put("wall", way.bushing->wall);
    if (way.way == WayOut::eccentricBush) put("throw", way.bushing->throwBy);
    const auto limits = [](const SizeLimits& one) { return FoundSize{one.least, one.greatest}; };
    figures["bore_limits"] = limitsAt(limits(way.bushing->boreLimits), step);
    figures["bore_limits_ticks"] = endTicks(limits(way.bushing->boreLimits));
    figures["outside_limits"] = limitsAt(limits(way.bushing->outsideLimits), step);
    figures["outside_limits_ticks"] = endTicks(limits(way.bushing->outsideLimits));
    figures["press"] = way.bushing->press;
    if (way.way == WayOut::plug) figures["cuts_joint"] = way.bushing->cutsJoint;
  }
  if (way.shaft) {
    figures["size"] = limitsAt(*way.shaft, step);
    figures["size_ticks"] = endTicks(*way.shaft);
    figures["mate"] = way.sizeName;
  } else if (way.size) {
    put("size", *way.size);
    figures["name"] = way.sizeName;
  }
  figures["toward"] = pairAt(way.towardX, way.towardY, step);
  figures["toward_ticks"] = Json::array({way.towardX.ticks(), way.towardY.ticks()});
  return figures;
}

Json asJson(const Way& way, const Step& step) {
  Json entry{{"way", nameOf(way.way)}, {"figures", figuresAsJson(way, step)}};
  entry["effects"] = Json::array();
  for (const Effect& effect : way.effects) {
    entry["effects"].push_back(Json{{"of", nameOf(effect.of)},
                                    {"name", effect.name},
                                    {"before", endsAt(effect.before, step)},
                                    {"before_ticks", endTicks(effect.before)},
                                    {"after", endsAt(effect.after, step)},
                                    {"after_ticks", endTicks(effect.after)},
                                    {"holds", effect.holds}});
  }
  return entry;
}

int runMend(std::span<const std::string> args, Streams& streams) {
  const auto stop = [&](const Error& error, std::string_view file = {}) {
    return refuse(streams, "mend", error, file);
  };
  const Result<Arguments> arguments = sortArguments(args, {{"--json"},
                                                           kNoShop,
                                                           {"--part", true},
                                                           {"--place", true},
                                                           {"--unit", true},
                                                           {"--step", true}});
  if (!arguments) return stop(arguments.error());
  const Result<std::string> place = needed(*arguments, "--place");
  if (!place) return stop(place.error());
  const Result<WholeJob> whole = openWholeJob(*arguments);
  if (!whole) return stop(whole.error());
  const Job& job = whole->opened.job;
  std::string part = arguments->value("--part").value_or("");
  if (part.empty()) {
    if (job.parts.size() != 1) {
      const Result<std::string> named = needed(*arguments, "--part");
      return stop(named.error());
    }
    part = job.parts[0].name;
  }
  const Result<std::vector<Way>> ways = waysOut(job, whole->solutions, part, *place);
  if (!ways) return stop(ways.error(), whole->opened.file);
  Result<AsMade> made = asMade(job, whole->solutions);
  if (!made) return stop(made.error(), whole->opened.file);
  std::erase_if(made->rows,
                [&](const MadeRow& row) { return row.part != part || row.place != *place; });
  const std::vector<std::string> unlikely = unlikelyLines(made->rows, whole->step);
  if (arguments->has("--json")) {
    Json all{{"inchwright", 1}, {"part", part}, {"place", *place}, {"ways", Json::array()}};
    if (!unlikely.empty()) all["unlikely"] = unlikely;
    for (const Way& way : *ways) all["ways"].push_back(asJson(way, whole->step));
    streams.out << all.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
  } else {
    for (const std::string& line : unlikely) streams.out << oneLine(line) << '\n';
    for (const std::string& line : waysOutLines(*job.part(part), *ways, whole->step)) {
      streams.out << oneLine(line) << '\n';
    }
    sayWhosePins(whole->opened, streams);
  }
  return unlikely.empty() ? kFine : kFindings;
}

}  // namespace

std::string figuresText(const Way& way, const Step& step) {
  // As the document would give them back, else a job with a way chosen differed from its own file.
  return JsonText::parse(figuresAsJson(way, step).dump()).value().root().oneLine();
}

extern const Word kMendWord{"mend", "ways out of a hole that came out wrong", kMendHelp, runMend};

}  // namespace inchwright::app
