#include <nlohmann/json.hpp>
#include <ostream>

#include "app/words/arguments.h"
#include "app/words/console.h"
#include "app/words/job_file.h"
#include "app/words/words.h"
#include "core/measure/lettered.h"
#include "core/measure/writing.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kReadHelp =
    R"(inchwright read TEXT... [--unit in|mm] [--json]

Says what each TEXT means as a length on a print: the fraction, the decimal and millimetres.
Put a text with blanks in quotes; -- ends the options.

  --unit in|mm   the unit of figures that name none (in)
  --json         one JSON object instead of lines

  inchwright read "1 3/16" 1-3/16 .375 "12.7 mm" "1 3/16 ±1/64" ".4995/.5005"

Exit status: 0 all were read; 2 one was not (the others are printed all the same).
)";

std::string_view wordFor(Lettering lettering) {
  switch (lettering) {
    case Lettering::fraction:
      return "fraction";
    case Lettering::decimal:
      return "decimal";
    case Lettering::millimetres:
      break;
  }
  return "millimetres";
}

std::string_view wordFor(SizeSymbol symbol) {
  return symbol == SizeSymbol::radius ? "radius" : symbol == SizeSymbol::diameter ? "diameter" : "";
}

Json asJson(const std::string& text, const Lettered& figure) {
  Json entry;
  entry["text"] = text;
  entry["fraction"] = writeFraction(figure.value);
  entry["inches"] = writeDecimal(figure.value, Unit::inch);
  entry["mm"] = writeDecimal(figure.value, Unit::millimetre);
  entry["ticks"] = figure.value.ticks();
  entry["plus_ticks"] = nullptr;
  entry["minus_ticks"] = nullptr;
  if (figure.tolerance) {
    entry["plus_ticks"] = figure.tolerance->upper.ticks();
    entry["minus_ticks"] = figure.tolerance->lower.negated().ticks();
  }
  entry["reference"] = figure.reference;
  entry["basic"] = figure.basic;
  entry["exact"] = figure.exact;
  entry["unit"] = figure.unit == Unit::inch ? "in" : "mm";
  entry["lettering"] = wordFor(figure.lettering);
  if (figure.lettering != Lettering::fraction) entry["places"] = figure.places;
  if (figure.symbol != SizeSymbol::none) entry["symbol"] = wordFor(figure.symbol);
  if (!figure.questions.empty()) entry["questions"] = figure.questions;
  return entry;
}

Json asJson(const std::string& text, const Error& error) {
  return Json{{"text", text}, {"error", error.text}, {"at", error.at.value_or(0)}};
}

std::string signedPlain(Length length, Unit unit) {
  return (length.ticks() < 0 ? "-" : "+") + writePlain(length.magnitude(), unit);
}

/// What a person wants to see beside the text, in the order of a shop's talk.
std::vector<std::string> cellsOf(const std::string& text, const Lettered& figure) {
  std::string remarks;
  const auto remark = [&](std::string_view what) {
    remarks.append(remarks.empty() ? "" : ", ").append(what);
  };
  if (figure.symbol != SizeSymbol::none) remark(wordFor(figure.symbol));
  if (figure.tolerance) {
    const Tolerance& tolerance = *figure.tolerance;
    if (tolerance.upper == tolerance.lower.negated()) {
      remark("±" + writePlain(tolerance.upper, figure.unit));
    } else {
      remark(signedPlain(tolerance.upper, figure.unit) + " " +
             signedPlain(tolerance.lower, figure.unit));
    }
  }
  if (figure.reference) remark("reference only");
  if (figure.basic) remark("basic");
  if (!figure.exact) remark("rounded to 10 pm");
  for (const std::string& question : figure.questions) remark(question);
  return {text, writeFraction(figure.value), writeDecimal(figure.value, Unit::inch) + " in",
          writeDecimal(figure.value, Unit::millimetre) + " mm", remarks};
}

int runRead(std::span<const std::string> args, Streams& streams) {
  const Result<Arguments> arguments = sortArguments(args, {{"--json"}, {"--unit", true}});
  if (!arguments) return refuse(streams, "read", arguments.error());
  if (arguments->rest.empty()) {
    return refuse(streams, "read",
                  {ErrorCode::badRequest, "nothing to read; try: inchwright read \"1 3/16\"", {}});
  }
  ReadingOptions options;
  const Result<std::optional<Unit>> unit = namedUnit(*arguments);
  if (!unit) return refuse(streams, "read", unit.error());
  options.bareUnit = unit->value_or(Unit::inch);

  Json entries = Json::array();
  std::vector<std::vector<std::string>> rows{{"", "", "", "", ""}};
  std::optional<Error> refused;
  for (const std::string& text : arguments->rest) {
    const Result<Lettered> figure = readLength(text, options);
    if (figure) {
      entries.push_back(asJson(text, *figure));
      rows.push_back(cellsOf(text, *figure));
    } else {
      entries.push_back(asJson(text, figure.error()));
      rows.push_back({text, "", "", "", "not read: " + figure.error().text});
      if (!refused) {
        refused = figure.error();
        refused->place = "“" + text + "”";
      }
    }
  }
  if (arguments->has("--json")) {
    const Json all{{"inchwright", 1}, {"read", entries}};
    streams.out << all.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
  } else if (arguments->rest.size() > 1 || !refused) {
    const std::vector<std::string> lines = alignedRows(
        rows, {Justify::left, Justify::right, Justify::right, Justify::right, Justify::left});
    for (std::size_t i = 1; i < lines.size(); ++i) streams.out << lines[i] << '\n';
  }
  return refused ? refuse(streams, "read", *refused) : kFine;
}

}  // namespace

extern const Word kReadWord{"read", "what a text means as a length", kReadHelp, runRead};

}  // namespace inchwright::app
