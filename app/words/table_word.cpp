#include <algorithm>
#include <nlohmann/json.hpp>
#include <ostream>

#include "app/words/console.h"
#include "app/words/job_file.h"
#include "app/words/lathe_json.h"
#include "app/words/making_json.h"
#include "app/words/table_text.h"
#include "app/words/words.h"
#include "core/say/figure_words.h"
#include "core/say/lathe_words.h"
#include "core/say/making_words.h"
#include "core/say/plan_words.h"
#include "core/say/setup_words.h"
#include "core/say/table_csv.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kTableHelp =
    R"(inchwright table FILE [--part P] [--setup S] [--as text|csv|json] [--unit in|mm] [--step STEP]

The coordinates of every hole from the setup's zero, as the readout will show them, in the
order of cutting. A part without a setup is taken top up, with zero at its left and front edges.

  --part P, --setup S   only those of that name
  --as text|csv|json    how to print it (text); --json is the same as --as json
  --unit in|mm          the unit of the figures, else the machine's
  --step STEP           the step of the readout, else the machine's: 0.0005, 0.005 ...
  --no-shop             takes no notice of the tools kept for all jobs

  inchwright table plate.inchwright --unit mm --step 0.005 --as csv > plate.csv

Exit status: 0 fine; 1 printed, but the part has a clash or a loose feature (see check);
2 the words or the file could not be used.
)";

enum class As { text, csv, json };

Result<As> wantedForm(const Arguments& arguments) {
  const std::string as =
      arguments.value("--as").value_or(arguments.has("--json") ? "json" : "text");
  if (arguments.has("--json") && as != "json") {
    return Error{ErrorCode::badRequest, "--json and --as " + as + " can't both be had", "--as"};
  }
  if (as == "text") return As::text;
  if (as == "csv") return As::csv;
  if (as == "json") return As::json;
  return Error{ErrorCode::badRequest, "“" + as + "” is no form; say text, csv or json", "--as"};
}

Json asJson(const TableRow& row, const SetupWords::Row& words, const Step& shown) {
  Json entry;
  entry["id"] = row.id;
  entry["kind"] = nameOf(row.kind);
  entry["x"] = row.x.text;
  entry["y"] = row.y.text;
  entry["x_ticks"] = row.x.value.ticks();
  entry["y_ticks"] = row.y.value.ticks();
  entry["exact"] = row.x.exact && row.y.exact;
  entry["size"] = words.size;
  entry["note"] = words.note;
  entry["feature"] = row.feature;
  entry["x_print"] = row.xFraction;
  entry["y_print"] = row.yFraction;
  entry["x_rounding_ticks"] = row.x.rounding.ticks();
  entry["y_rounding_ticks"] = row.y.rounding.ticks();
  entry["disputed"] = row.disputed;
  entry["by_coordinates"] = goesByCoordinates(*row.plan);
  entry["steps"] = Json::array();
  for (const HoleStep* step : fittingsOf(*row.plan)) {
    entry["steps"].push_back(Json{{"kind", nameOf(step->op)},
                                  {"tool", step->tool},
                                  {"diameter_ticks", step->size.value_or(Length()).ticks()},
                                  {"depth", depthText(*step, shown)},
                                  {"not", step->struckOut.empty() ? Json() : Json(step->struckOut)},
                                  {"rule", wordsOf(step->rule)}});
  }
  return entry;
}

Json edgesAsJson(const SetupTable& table) {
  Json edges = Json::array();
  for (const EdgeRow& edge : table.edges) {
    Json entry;
    entry["id"] = edge.id;
    if (edge.side) entry["side"] = nameOf(*edge.side);
    entry["axis"] = edge.axis == MachineAxis::x ? "x" : "y";
    entry["value"] = edge.value.text;
    entry["value_ticks"] = edge.value.value.ticks();
    entry["exact"] = edge.value.exact;
    const Length stock = edge.stock ? edge.stock->value : Length();
    entry["stock_left"] = atStep(stock, table.step);
    entry["stock_left_ticks"] = stock.ticks();
    entry["disputed"] = edge.disputed;
    edges.push_back(std::move(entry));
  }
  return edges;
}

Json asJson(const Part& part, const SetupTable& table) {
  const SetupWords words = setupWords(part, table);
  Json sheet;
  sheet["part"] = table.part;
  sheet["setup"] = table.setup;
  sheet["unit"] = nameOf(table.step.unit);
  sheet["step"] = stepText(table.step);
  sheet["zero"] = words.zero;
  sheet["face"] = nameOf(table.face);
  sheet["turn"] = table.turn;
  sheet["x_counts"] = table.x.counts > 0 ? "right" : "left";
  sheet["y_counts"] = table.y.counts > 0 ? "away" : "towards";
  sheet["rows"] = Json::array();
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    sheet["rows"].push_back(asJson(table.rows[i], words.rows[i], table.step));
  }
  if (!table.milled.empty()) {
    sheet["milled"] = Json::array();
    for (const MilledCut& cut : table.milled) {
      sheet["milled"].push_back(milledAsJson(cut, table.step));
    }
  }
  sheet["edges"] = edgesAsJson(table);
  sheet["unplaced"] = Json::array();
  for (std::size_t i = 0; i < table.unplaced.size(); ++i) {
    const Loose& loose = table.unplaced[i];
    sheet["unplaced"].push_back(
        Json{{"id", loose.id}, {"axis", nameOf(loose.axis)}, {"advice", words.unplaced[i]}});
  }
  sheet["touch_off"] = Json::array();
  for (std::size_t i = 0; i < table.touchOff.size(); ++i) {
    const SetupWords::Touch& said = words.touchOff[i];
    const char letter = static_cast<char>(table.touchOff[i].axis.letter() - 'X' + 'x');
    sheet["touch_off"].push_back(
        Json{{"axis", std::string(1, letter)}, {"what", said.what}, {"steps", said.steps}});
  }
  sheet["checks"] = Json::array();
  for (std::size_t i = 0; i < table.checks.size(); ++i) {
    const CheckPlace& check = table.checks[i];
    sheet["checks"].push_back(
        Json{{"x", check.x.text}, {"y", check.y.text}, {"look", words.checks[i]}});
  }
  sheet["warnings"] = words.warnings;
  return sheet;
}

Error bothKinds() {
  return {ErrorCode::badRequest,
          "comma-separated values hold tables of the mill or of the lathe, not both: say which "
          "--setup",
          "--as"};
}

Result<Done> printCsv(const std::vector<PlannedSetup>& planned, const OpenedJob& opened,
                      const Streams& streams) {
  std::vector<TableOfPart> tables;
  std::vector<LatheWork> works;
  for (const PlannedSetup& one : planned) {
    if (one.lathe) {
      works.push_back(*one.lathe);
    } else {
      tables.push_back({opened.part(opened.solved[one.solved]), one.table});
    }
  }
  if (!tables.empty() && !works.empty()) return bothKinds();
  streams.out << (works.empty() ? tablesAsCsv(tables) : latheAsCsv(works));
  return Done{};
}

Result<Done> print(const std::vector<PlannedSetup>& planned, const OpenedJob& opened, As as,
                   const Streams& streams) {
  if (as == As::csv) return printCsv(planned, opened, streams);
  Json all{{"inchwright", 1}, {"sheets", Json::array()}};
  for (const PlannedSetup& one : planned) {
    const Part& part = opened.part(opened.solved[one.solved]);
    const Lathe lathe = latheFor(opened.job, one.options);
    if (as == As::json) {
      all["sheets"].push_back(one.lathe ? latheAsJson(*one.lathe, lathe) : asJson(part, one.table));
      continue;
    }
    if (&one != &planned.front()) streams.out << '\n';
    if (!one.lathe) {
      printTableText(part, one.table, streams);
      continue;
    }
    for (const std::string& line : latheLines(*one.lathe, lathe)) {
      streams.out << oneLine(line) << '\n';
    }
  }
  if (as == As::text) {
    sayDrafts(opened, streams);
    sayWhoseTools(opened, streams);
  }
  if (as == As::json) {
    if (!opened.ownTools.empty()) all["own_tools"] = opened.ownTools;
    streams.out << all.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
  }
  return Done{};
}

int runTable(std::span<const std::string> args, Streams& streams) {
  const Result<Arguments> arguments = sortArguments(args, {{"--json"},
                                                           kNoShop,
                                                           {"--part", true},
                                                           {"--setup", true},
                                                           {"--as", true},
                                                           {"--unit", true},
                                                           {"--step", true}});
  if (!arguments) return refuse(streams, "table", arguments.error());
  const Result<As> as = wantedForm(*arguments);
  if (!as) return refuse(streams, "table", as.error());
  const Result<OpenedJob> opened = openJobInShop(*arguments);
  if (!opened) return refuse(streams, "table", opened.error());
  const Result<std::vector<PlannedSetup>> planned = planJob(*arguments, *opened);
  if (!planned) return refuse(streams, "table", planned.error());

  const Result<Done> printed = print(*planned, *opened, *as, streams);
  if (!printed) return refuse(streams, "table", printed.error());
  const bool minded = std::any_of(planned->begin(), planned->end(), [](const PlannedSetup& one) {
    return one.lathe && one.lathe->isFaulty();
  });
  return minded || hasFindings(*opened) ? kFindings : kFine;
}

}  // namespace

extern const Word kTableWord{"table", "coordinates from a setup's zero", kTableHelp, runTable};

}  // namespace inchwright::app
