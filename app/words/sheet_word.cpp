#include <algorithm>
#include <filesystem>
#include <ostream>

#include "app/base/headless.h"
#include "app/base/sheet_date.h"
#include "app/render/render.h"
#include "app/words/console.h"
#include "app/words/job_file.h"
#include "app/words/sheet_file.h"
#include "app/words/sheet_pages.h"
#include "app/words/words.h"
#include "core/document/atomic_file.h"
#include "core/measure/lettered.h"
#include "core/sheet/tape_up.h"

namespace inchwright::app {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view kSheetHelp =
    R"(inchwright sheet FILE --out NAME.pdf|.svg|.png|.html [--part P] [--setup S] [--paper a4|letter]
                 [--distance "1.5 m"] [--unit in|mm] [--step STEP] [--english uk|us]
                 [--rounding] [--closeness] [--pages LIST] [--force]

Writes the sheet to tape up at the machine. The ending says what is wanted. A PDF holds all the
pages; pictures (SVG, PNG) of several pages are numbered NAME-1.png, NAME-2.png ... An HTML
page is for a tablet or phone at the machine: one file, no network, one step at a time.

  --out NAME            where to; a file that Inchwright did not make is not replaced
  --part P, --setup S   only those of that name, else all
  --paper a4|letter     the paper (a4)
  --distance D          how far away it is read, such as 1.5 m, 1500 mm or 60 in (1 m): the
                        figures grow with it
  --unit in|mm          the unit of the figures, else the machine's
  --step STEP           the step of the readout, else the machine's
  --english uk|us       British or American words (uk)
  --rounding            shows what rounding to the step cost each figure
  --closeness           adds how close to work at each place so that the print holds
  --pages LIST          what else the paper holds, with commas between (setup): setup;
                        cover, all parts at a glance; stock to cut; tools for the job;
                        layout, each face at full size; first_off, every reading with a
                        line to write on; difference, parts that may be mistaken for
                        one another, drawn over each other
  --no-shop             takes no notice of the tools kept for all jobs
  --force               replaces whatever is there

The date on it is today's, or that of SOURCE_DATE_EPOCH where that is set.

Exit status: 0 fine; 1 written, but the part has a clash or a loose feature (see check);
2 the words or the file could not be used.
)";

constexpr double kPixelsPerMm = 300 / 25.4;

enum class Form { pdf, svg, png, html };

struct Wanted {
  fs::path out;
  Form form = Form::pdf;
  bool force = false;
  bool closeness = false;
  std::vector<PageKind> pages;
  SheetOptions options;
};

Error badOption(std::string_view option, std::string text) {
  return {ErrorCode::badRequest, std::move(text), std::string(option)};
}

Result<Form> formByEnding(const fs::path& out) {
  std::string ending = out.extension().string();
  std::transform(ending.begin(), ending.end(), ending.begin(), [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  });
  if (ending == ".pdf") return Form::pdf;
  if (ending == ".svg") return Form::svg;
  if (ending == ".png") return Form::png;
  if (ending == ".html") return Form::html;
  return badOption("--out", "“" + out.string() + "” must end in .pdf, .svg, .png or .html");
}

/// `1.5 m`, `1500 mm`, `5'`, `60 in`; a bare figure is in metres. Only the size
/// of figures hangs on it.
Result<double> readDistance(const std::string& text) {
  const bool bare = text.find_first_not_of("0123456789., ") == std::string::npos;
  const bool metres = text.size() > 1 && text.back() == 'm' && text[text.size() - 2] != 'm';
  ReadingOptions options;
  options.bareUnit = Unit::millimetre;
  const Result<Lettered> read =
      readLength(std::string_view(text).substr(0, text.size() - (metres ? 1 : 0)), options);
  if (!read) return badOption("--distance", "“" + text + "”: " + read.error().text);
  const double distance = read->value.toMillimetres() * (bare || metres ? 1000 : 1);
  if (distance < kNearestReading || distance > kFarthestReading) {
    return badOption("--distance", "“" + text + "” is not between 0.3 m and 3 m");
  }
  return distance;
}

Result<Wanted> wantedOf(const Arguments& arguments) {
  Wanted wanted;
  const auto out = arguments.value("--out");
  if (!out || out->empty())
    return badOption("--out", "say where to: --out NAME.pdf, .svg, .png or .html");
  wanted.out = *out;
  const Result<Form> form = formByEnding(wanted.out);
  if (!form) return form.error();
  wanted.form = *form;
  wanted.force = arguments.has("--force");
  wanted.options.date = sheetDate();
  wanted.options.isNoted = false;  // the word leaves the document as it is
  wanted.options.showRounding = arguments.has("--rounding");
  wanted.closeness = arguments.has("--closeness");
  Result<std::vector<PageKind>> kinds =
      pageKindsNamed(arguments.value("--pages").value_or("setup"));
  if (!kinds) return kinds.error();
  wanted.pages = std::move(kinds).value();
  const std::string paper = arguments.value("--paper").value_or("a4");
  if (paper != "a4" && paper != "letter") {
    return badOption("--paper", "“" + paper + "” is no paper here; say a4 or letter");
  }
  wanted.options.paper = paper == "a4" ? Paper::a4 : Paper::letter;
  const std::string english = arguments.value("--english").value_or("uk");
  if (english != "uk" && english != "us") {
    return badOption("--english", "“" + english + "” is none of these two: uk, us");
  }
  wanted.options.english = english == "uk" ? English::uk : English::us;
  if (const auto distance = arguments.value("--distance")) {
    const Result<double> millimetres = readDistance(*distance);
    if (!millimetres) return millimetres.error();
    wanted.options.readingDistance = *millimetres;
  }
  return wanted;
}

/// NAME.png for a single page, NAME-1.png and so on for several.
fs::path numbered(const fs::path& out, std::size_t page, std::size_t pages) {
  if (pages == 1) return out;
  return out.parent_path() /
         fs::path(out.stem().string() + "-" + std::to_string(page + 1) + out.extension().string());
}

std::string_view bytesOf(const QByteArray& bytes) {
  return {bytes.constData(), static_cast<std::size_t>(bytes.size())};
}

/// Draws and writes; all that was asked for is drawn before the first file is
/// touched.
Result<std::vector<fs::path>> write(const std::vector<Page>& pages, const QString& title,
                                    const Wanted& wanted) {
  std::vector<QByteArray> drawn;
  if (wanted.form == Form::pdf) {
    Result<QByteArray> pdf = renderPdf(pages, title);
    if (!pdf) return pdf.error();
    drawn.push_back(std::move(pdf).value());
  } else {
    for (const Page& page : pages) {
      Result<QByteArray> picture =
          wanted.form == Form::svg ? renderSvg(page, title) : renderPng(page, kPixelsPerMm);
      if (!picture) return picture.error();
      drawn.push_back(std::move(picture).value());
    }
  }
  std::vector<fs::path> files;
  for (std::size_t i = 0; i < drawn.size(); ++i) {
    files.push_back(numbered(wanted.out, i, drawn.size()));
    const Result<Done> free = mayReplace(files.back(), wanted.force);
    if (!free) return free.error();
  }
  for (std::size_t i = 0; i < drawn.size(); ++i) {
    const Result<Done> done = replaceFile(files[i], bytesOf(drawn[i]));
    if (!done) return done.error();
  }
  return files;
}

/// The page for a tablet: all setups asked for, one file.
Result<fs::path> writeTablet(const std::string& page, const Wanted& wanted) {
  if (const Result<Done> free = mayReplace(wanted.out, wanted.force); !free) return free.error();
  if (const Result<Done> done = replaceFile(wanted.out, page); !done) return done.error();
  return wanted.out;
}

int runSheet(std::span<const std::string> args, Streams& streams) {
  const Result<Arguments> arguments = sortArguments(args, {{"--out", true},
                                                           kNoShop,
                                                           {"--part", true},
                                                           {"--setup", true},
                                                           {"--paper", true},
                                                           {"--english", true},
                                                           {"--distance", true},
                                                           {"--unit", true},
                                                           {"--step", true},
                                                           {"--rounding"},
                                                           {"--closeness"},
                                                           {"--pages", true},
                                                           {"--force"}});
  if (!arguments) return refuse(streams, "sheet", arguments.error());
  const Result<Wanted> wanted = wantedOf(*arguments);
  if (!wanted) return refuse(streams, "sheet", wanted.error());
  const Result<OpenedJob> opened = openJobInShop(*arguments);
  if (!opened) return refuse(streams, "sheet", opened.error());
  const Result<std::vector<PlannedSetup>> planned = planJob(*arguments, *opened);
  if (!planned) return refuse(streams, "sheet", planned.error());

  const Result<std::vector<SheetOptions>> options =
      optionsOf(*opened, *planned, wanted->options, wanted->closeness);
  if (!options) return refuse(streams, "sheet", options.error(), opened->file);
  if (wanted->form == Form::html) {
    const Result<fs::path> file = writeTablet(tabletOf(*opened, *planned, *options), *wanted);
    if (!file) return refuse(streams, "sheet", file.error());
    streams.out << oneLine(file->string()) << '\n';
    sayWhoseTools(*opened, streams);
    return hasFindings(*opened) ? kFindings : kFine;
  }
  const Result<std::vector<Page>> pages = pagesOf(wanted->pages, *opened, *planned, *options);
  if (!pages) return refuse(streams, "sheet", pages.error(), opened->file);
  headlessApplication();
  const Result<std::vector<fs::path>> files =
      write(*pages, QString::fromStdString(opened->job.title), *wanted);
  if (!files) return refuse(streams, "sheet", files.error());
  for (const fs::path& file : *files) streams.out << oneLine(file.string()) << '\n';
  sayWhoseTools(*opened, streams);
  return hasFindings(*opened) ? kFindings : kFine;
}

}  // namespace

extern const Word kSheetWord{"sheet", "the sheet to tape up at the machine, as PDF, SVG or PNG",
                             kSheetHelp, runSheet};

}  // namespace inchwright::app
