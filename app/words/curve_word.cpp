#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <ostream>
#include <tuple>

#include "app/words/console.h"
#include "app/words/job_file.h"
#include "app/words/words.h"
#include "core/plan/curve_cuts.h"
#include "core/say/curve_words.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kCurveHelp =
    R"(inchwright curve FILE [--part P] [--setup S] [--of ID] [--way W] [--cutter D] [--ridge H] [--json]

How the rounds and arcs of the outline are cut: on a rotary table (where the spindle stands and
what the dial shows from touching point to touching point), by points to go down at, or with
filing buttons.

  --part P, --setup S   only those of that name
  --of ID               that round or arc, whatever the setup says; else what it lists, else all
  --way W               rotary, points or filing_buttons
  --cutter D            the cutter's diameter
  --ridge H             points no further apart than leaves this much between them
  --unit in|mm          the unit of the figures, else the machine's
  --step STEP           their step, else the machine's
  --json                one JSON object instead of lines

Exit status: 0 fine; 1 something asked for can't be had so; 2 the words or the file could not be
used.
)";

std::string readoutOf(Length length, const Step& step) {
  return showAtStep(length.rational(), step).text;
}

void put(Json& entry, const char* name, const std::optional<Length>& length, const Step& step) {
  entry[name] = length ? Json(readoutOf(*length, step)) : Json();
  entry[std::string(name) + "_ticks"] = length ? Json(length->ticks()) : Json();
}

/// A dial stays under a full turn; a nought is written without a sign.
double degrees(double value) {
  return std::round(value * 1e6) / 1e6 + 0.0;
}

Json asJson(const CurveFinding& finding) {
  return Json{{"code", nameOf(finding.trouble)}, {"places", {finding.of}}};
}

struct Cuts {
  std::string part;
  std::string setup;
  Step step;
  CurveCuts cuts;
};

Json asJson(const Cuts& all, const CurveCut& cut) {
  Json entry{{"part", all.part}, {"setup", all.setup}, {"of", cut.of}, {"way", nameOf(cut.way)}};
  put(entry, "radius", cut.radius, all.step);
  entry["side"] = cut.isInside ? "inside" : "outside";
  entry["centre"] = {cut.x.text, cut.y.text};
  entry["centre_ticks"] = {cut.x.value.ticks(), cut.y.value.ticks()};
  put(entry, "spindle", cut.spindle, all.step);
  entry["start_deg"] = cut.dial ? Json(degrees(cut.dial->start)) : Json();
  entry["end_deg"] = cut.dial ? Json(degrees(cut.dial->end)) : Json();
  entry["table_turns"] =
      cut.dial ? Json(cut.dial->isTurnedClockwise ? "clockwise" : "anticlockwise") : Json();
  put(entry, "pin", cut.pin, all.step);
  entry["points"] = entry["points_ticks"] = Json::array();
  for (const CurveCut::At& at : cut.points) {
    entry["points"].push_back({at.x.text, at.y.text});
    entry["points_ticks"].push_back({at.x.value.ticks(), at.y.value.ticks()});
  }
  put(entry, "ridge", cut.ridge, all.step);
  entry["buttons"] = Json();
  if (cut.buttons) {
    entry["buttons"] = Json::object();
    put(entry["buttons"], "outside", cut.buttons->outside, all.step);
    put(entry["buttons"], "bore", cut.buttons->bore, all.step);
    entry["buttons"]["count"] = cut.buttons->count;
  }
  entry["findings"] = Json::array();
  for (const CurveFinding& finding : all.cuts.findings) {
    if (finding.of == cut.of) entry["findings"].push_back(asJson(finding));
  }
  return entry;
}

void print(const Cuts& all, const Streams& streams) {
  for (const CurveCut& cut : all.cuts.cuts) {
    streams.out << toned(streams, Tone::heading, oneLine(all.part)) << ", setup "
                << oneLine(all.setup) << ": " << oneLine(cut.of) << ", radius "
                << readoutOf(cut.radius, all.step) << (cut.isInside ? " inside" : " outside")
                << ", centre at " << cut.x.text << ", " << cut.y.text << '\n';
    if (cut.dial) {
      streams.out << "  rotary: ";
      if (cut.spindle)
        streams.out << "spindle " << readoutOf(*cut.spindle, all.step)
                    << " off the table's centre; ";
      streams.out << "dial from " << dialText(cut.dial->start) << " to " << dialText(cut.dial->end)
                  << ", table turned "
                  << (cut.dial->isTurnedClockwise ? "clockwise" : "anticlockwise") << '\n';
      if (cut.pin) streams.out << "  on a pin of " << readoutOf(*cut.pin, all.step) << '\n';
    }
    for (const CurveCut::At& at : cut.points) {
      streams.out << "  " << at.x.text << "  " << at.y.text << '\n';
    }
    if (cut.way == CurveWay::points && cut.points.empty()) {
      streams.out << "  no points: nothing says with what cutter (--cutter D)\n";
    }
    if (cut.ridge) streams.out << "  leaves ridges of " << readoutOf(*cut.ridge, all.step) << '\n';
    if (cut.buttons) {
      streams.out << "  two filing buttons of " << readoutOf(cut.buttons->outside, all.step)
                  << " on a pin of " << readoutOf(cut.buttons->bore, all.step) << '\n';
    }
  }
  for (const CurveFinding& finding : all.cuts.findings) {
    streams.out << "  " << toned(streams, Tone::doubt, oneLine(curveFindingWords(finding))) << '\n';
  }
}

/// Curves of one radius, on one pin, by one cutter, over the whole job: one session at the machine.
struct Session {
  Length radius;
  std::optional<Length> pin, cutter;
  std::vector<std::pair<const Cuts*, const CurveCut*>> curves;
};

std::vector<Session> sessionsOf(const std::vector<Cuts>& all) {
  std::vector<Session> sessions;
  for (const Cuts& one : all) {
    for (const CurveCut& cut : one.cuts.cuts) {
      if (!cut.dial) continue;
      const auto isSame = [&](const Session& session) {
        return session.radius == cut.radius && session.pin == cut.pin &&
               session.cutter == cut.cutter;
      };
      auto found = std::find_if(sessions.begin(), sessions.end(), isSame);
      if (found == sessions.end()) {
        found = sessions.insert(found, Session{cut.radius, cut.pin, cut.cutter, {}});
      }
      found->curves.push_back({&one, &cut});
    }
  }
  std::stable_sort(sessions.begin(), sessions.end(), [](const Session& a, const Session& b) {
    return std::tie(a.radius, a.pin, a.cutter) < std::tie(b.radius, b.pin, b.cutter);
  });
  return sessions;
}

Json asJson(const Session& session) {
  const Step& step = session.curves.front().first->step;
  Json entry = Json::object();
  put(entry, "radius", session.radius, step);
  put(entry, "pin", session.pin, step);
  put(entry, "cutter", session.cutter, step);
  entry["curves"] = Json::array();
  for (const auto& [cuts, cut] : session.curves) {
    entry["curves"].push_back(Json{{"part", cuts->part}, {"setup", cuts->setup}, {"of", cut->of}});
  }
  return entry;
}

void print(const Session& session, const Streams& streams) {
  if (session.curves.size() < 2) return;
  const Step& step = session.curves.front().first->step;
  streams.out << "Together on the rotary table: radius " << readoutOf(session.radius, step);
  if (session.pin) streams.out << ", pin " << readoutOf(*session.pin, step);
  if (session.cutter) streams.out << ", cutter " << readoutOf(*session.cutter, step);
  std::string part;
  for (const auto& [cuts, cut] : session.curves) {
    streams.out << (cuts->part == part ? ", " : part.empty() ? ": " : "; ");
    if (cuts->part != part) streams.out << oneLine(cuts->part) << ' ';
    streams.out << oneLine(cut->of);
    part = cuts->part;
  }
  streams.out << '\n';
}

struct Asked {
  std::optional<std::string> of;
  std::optional<CurveWay> way;
  std::optional<Lettered> cutter;
  std::optional<Lettered> ridge;
};

Result<Asked> askedFor(const Arguments& arguments, Unit unit) {
  Asked asked{arguments.value("--of"), {}, {}, {}};
  if (const auto way = arguments.value("--way")) {
    asked.way = curveWayNamed(*way);
    if (!asked.way) {
      return Error{ErrorCode::badRequest,
                   "“" + *way + "” is no way; say rotary, points or filing_buttons", "--way"};
    }
  }
  for (const auto& [name, target] :
       {std::pair("--cutter", &asked.cutter), std::pair("--ridge", &asked.ridge)}) {
    const auto text = arguments.value(name);
    if (!text) continue;
    auto figure = readLength(*text, {unit});
    if (!figure) return Error{ErrorCode::badRequest, figure.error().text, name};
    if (figure->value <= Length()) {
      return Error{ErrorCode::badRequest, "it has to be greater than 0", name};
    }
    *target = *std::move(figure);
  }
  return asked;
}

std::vector<GivenCurve> curvesToCut(const Setup& setup, const FaceOutlines& outlines,
                                    const Asked& asked) {
  std::vector<GivenCurve> curves;
  for (const GivenCurve& curve : setup.curves) {
    if (!asked.of || curve.of == *asked.of) curves.push_back(curve);
  }
  if (curves.empty() && asked.of) {
    curves.emplace_back();
    curves.back().of = *asked.of;
  } else if (curves.empty()) {
    for (const Id& id : curvesOf(outlines)) {
      curves.emplace_back();
      curves.back().of = id;
    }
  }
  for (GivenCurve& curve : curves) {
    if (asked.way) curve.way = *asked.way;
    if (asked.cutter) curve.cutter = asked.cutter;
    if (!asked.ridge) continue;
    curve.ridge = asked.ridge;
    curve.count.reset();
  }
  return curves;
}

Result<std::vector<Cuts>> cutAll(const Arguments& arguments, const OpenedJob& opened,
                                 const Asked& asked) {
  const auto planned = planJob(arguments, opened);
  if (!planned) return planned.error();
  std::vector<Cuts> all;
  bool isFollowed = false;
  for (const PlannedSetup& one : *planned) {
    if (one.lathe) continue;
    const OpenedJob::Solved& solved = opened.solved[one.solved];
    const Part& part = opened.part(solved);
    const auto work = workAt(opened.job, part, solved.solution, one.setup, one.options);
    if (!work) return work.error();
    const FaceOutlines outlines =
        outlinesOf(part, solved.solution.positions, solved.solution.beyond, one.setup.face);
    const std::vector<Id> followed = curvesOf(outlines);
    // Asked for by its id, it need not be in every part.
    if (asked.of && std::find(followed.begin(), followed.end(), *asked.of) == followed.end()) {
      continue;
    }
    isFollowed = true;
    auto cuts = curveCuts(*work, outlines, curvesToCut(one.setup, outlines, asked));
    if (!cuts) return cuts.error();
    all.push_back({part.name, one.setup.name, work->step, *std::move(cuts)});
  }
  if (asked.of && !isFollowed) {
    return Error{ErrorCode::notFound, "no outline follows a round or arc “" + *asked.of + "”",
                 "--of"};
  }
  return all;
}

int runCurve(std::span<const std::string> args, Streams& streams) {
  const auto arguments = sortArguments(args, {{"--json"},
                                              {"--part", true},
                                              {"--setup", true},
                                              {"--of", true},
                                              {"--way", true},
                                              {"--cutter", true},
                                              {"--ridge", true},
                                              {"--unit", true},
                                              {"--step", true}});
  if (!arguments) return refuse(streams, "curve", arguments.error());
  const Result<OpenedJob> opened = openJob(*arguments);
  if (!opened) return refuse(streams, "curve", opened.error());
  const auto asked = askedFor(*arguments, opened->job.unit);
  if (!asked) return refuse(streams, "curve", asked.error());
  const auto all = cutAll(*arguments, *opened, *asked);
  if (!all) return refuse(streams, "curve", all.error(), opened->file);
  int status = kFine;
  Json told{{"inchwright", 1}, {"curves", Json::array()}, {"findings", Json::array()}};
  for (const Cuts& one : *all) {
    if (!one.cuts.findings.empty()) status = kFindings;
    if (!arguments->has("--json")) {
      print(one, streams);
      continue;
    }
    for (const CurveCut& cut : one.cuts.cuts) told["curves"].push_back(asJson(one, cut));
    for (const CurveFinding& finding : one.cuts.findings) {
      told["findings"].push_back(asJson(finding));
    }
  }
  told["sessions"] = Json::array();
  for (const Session& session : sessionsOf(*all)) {
    if (arguments->has("--json")) {
      told["sessions"].push_back(asJson(session));
    } else {
      print(session, streams);
    }
  }
  if (!arguments->has("--json")) sayDrafts(*opened, streams);
  const bool none = std::all_of(all->begin(), all->end(), [](const Cuts& one) {
    return one.cuts.cuts.empty() && one.cuts.findings.empty();
  });
  if (none && !arguments->has("--json")) {
    streams.out << "no round or arc is asked to be cut; the setup's `curves` say which and how, or "
                   "--of and --way\n";
  }
  if (arguments->has("--json")) {
    streams.out << told.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
  }
  return status;
}

}  // namespace

extern const Word kCurveWord{"curve", "how rounds and arcs of the outline are cut", kCurveHelp,
                             runCurve};

}  // namespace inchwright::app
