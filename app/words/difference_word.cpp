#include <nlohmann/json.hpp>
#include <ostream>

#include "app/words/console.h"
#include "app/words/kit_job.h"
#include "app/words/tolerance_job.h"
#include "app/words/words.h"
#include "core/kit/difference.h"
#include "core/say/difference_words.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kDifferenceHelp =
    R"(inchwright difference FILE --part A --part B [--unit in|mm] [--step STEP] [--json]

In what two similar parts differ, from the zero of each part's first setup: what is alike, what
only one has, what has moved and by how much, and which sizes are others. Places are matched by
their ids, else by kind, size and nearness (1/4 in).

  --part A --part B   the two parts; of a document with two they need not be named
  --unit in|mm        the unit of the figures, else the machine's
  --step STEP         their step, else the machine's
  --no-shop           takes no notice of the tools kept for all jobs
  --json              one JSON object

Exit status: 0 whether they differ or not; 2 the words or the file could not be used.
)";

Json asJson(const Pair& ids) {
  return Json::array({ids.a, ids.b});
}

Json asJson(const Difference& found, const Step& step) {
  Json entry{{"parts", Json::array({found.a, found.b})}};
  entry["alike"] = Json::array();
  for (const Pair& one : found.alike) entry["alike"].push_back(asJson(one));
  entry["only"] = Json::array();
  for (const OnlyIn& one : found.only) {
    entry["only"].push_back(Json{{"part", one.part}, {"id", one.id}});
  }
  entry["moved"] = Json::array();
  for (const Moved& one : found.moved) {
    entry["moved"].push_back(Json{{"ids", asJson(one.ids)},
                                  {"dx", shownOrNull(one.dx, step)},
                                  {"dx_ticks", ticksOrNull(one.dx)},
                                  {"dy", shownOrNull(one.dy, step)},
                                  {"dy_ticks", ticksOrNull(one.dy)}});
  }
  entry["changed"] = Json::array();
  for (const Changed& one : found.changed) {
    entry["changed"].push_back(
        Json{{"ids", asJson(one.ids)}, {"member", one.member}, {"a", one.a}, {"b", one.b}});
  }
  entry["of_parts"] = Json::array();
  for (const ChangedOfPart& one : found.ofParts) {
    entry["of_parts"].push_back(Json{{"member", one.member}, {"a", one.a}, {"b", one.b}});
  }
  return Json{{"inchwright", 1}, {"difference", std::move(entry)}};
}

Error notTwoParts(std::string text) {
  return {ErrorCode::badRequest, std::move(text), "--part"};
}

/// The two parts by their place in the job.
Result<std::pair<std::size_t, std::size_t>> theTwo(const Arguments& arguments, const Job& job) {
  const std::vector<std::string> named = arguments.values("--part");
  if (named.empty() && job.parts.size() == 2) return std::pair<std::size_t, std::size_t>(0, 1);
  if (named.size() != 2) return notTwoParts("say which two parts: --part A --part B");
  std::vector<std::size_t> found;
  for (const std::string& name : named) {
    const Part* part = job.part(name);
    if (!part) return notTwoParts("there is no part `" + name + "`");
    found.push_back(static_cast<std::size_t>(part - job.parts.data()));
  }
  return std::pair(found[0], found[1]);
}

int runDifference(std::span<const std::string> args, Streams& streams) {
  const auto stop = [&](const Error& error, std::string_view file = {}) {
    return refuse(streams, "difference", error, file);
  };
  const Result<Arguments> arguments = sortArguments(
      args, {{"--json"}, kNoShop, {"--part", true, true}, {"--unit", true}, {"--step", true}});
  if (!arguments) return stop(arguments.error());
  const Result<WholeJob> whole = openWholeJob(*arguments);
  if (!whole) return stop(whole.error());
  const Job& job = whole->opened.job;
  const auto two = theTwo(*arguments, job);
  if (!two) return stop(two.error(), whole->opened.file);
  const auto [a, b] = *two;
  const Result<Difference> found =
      differenceOf(job, job.parts[a], whole->solutions[a], job.parts[b], whole->solutions[b]);
  if (!found) return stop(found.error(), whole->opened.file);
  if (arguments->has("--json")) {
    streams.out << asJson(*found, whole->step).dump(2, ' ', false, Json::error_handler_t::replace)
                << '\n';
  } else {
    for (const std::string& line : differenceLines(*found, whole->step)) {
      streams.out << oneLine(line) << '\n';
    }
  }
  return kFine;
}

}  // namespace

extern const Word kDifferenceWord{"difference", "in what two similar parts differ", kDifferenceHelp,
                                  runDifference};

}  // namespace inchwright::app
