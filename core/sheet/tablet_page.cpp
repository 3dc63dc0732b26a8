#include "core/sheet/tablet_page.h"

#include "core/sheet/tablet_script.h"

namespace inchwright {
namespace {

std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&#39;";
        break;
      default:
        // A control character has no place on a page.
        out += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
    }
  }
  return out;
}

void addFigure(std::string& out, const std::string& letter, const std::string& figure) {
  if (figure.empty()) return;
  out += "<span class=\"at\"><b>" + escaped(letter) + "</b> " + escaped(figure) + "</span>";
}

void addRow(std::string& out, const TabletRow& row, const TabletStep& step,
            const TabletSetup& setup) {
  const std::string place = escaped(row.place);
  out += "<li><button type=\"button\" class=\"tick\" aria-pressed=\"false\" data-tick=\"" + place +
         "\"><span class=\"box\" aria-hidden=\"true\"></span><span class=\"place\">" + place +
         "</span>";
  addFigure(out, setup.letters[0], row.x);
  addFigure(out, setup.letters[1], row.y);
  if (!row.what.empty()) out += "<span class=\"what\">" + escaped(row.what) + "</span>";
  out += "</button>";
  if (step.measures) {
    out += "<div class=\"found\">";
    for (const char* name : {"x", "y", "size"}) {
      if (setup.turned && std::string_view(name) != "size") continue;
      out += std::string("<label>") + name +
             " <input inputmode=\"decimal\" autocomplete=\"off\" "
             "data-place=\"" +
             place + "\" data-found=\"" + name + "\"></label>";
    }
    out += "</div>";
  }
  out += "</li>\n";
}

void addStep(std::string& out, const TabletStep& step, std::size_t number,
             const TabletSetup& setup) {
  const std::size_t of = setup.steps.size();
  out += "<article class=\"step\">\n<p class=\"count\">" + std::to_string(number) + " of " +
         std::to_string(of) + "</p>\n<h2>" + escaped(step.title);
  if (!step.struckOut.empty()) out += " <s>not " + escaped(step.struckOut) + "</s>";
  out += "</h2>\n";
  if (!step.lines.empty()) {
    out += "<ol class=\"lines\">\n";
    for (const std::string& line : step.lines) out += "<li>" + escaped(line) + "</li>\n";
    out += "</ol>\n";
  }
  if (!step.rows.empty()) {
    out += "<ul class=\"rows\">\n";
    for (const TabletRow& row : step.rows) addRow(out, row, step, setup);
    out += "</ul>\n";
  }
  if (step.measures) {
    out +=
        "<p>What was found, to type in on the desk as one line:</p>\n<textarea class=\"line\" "
        "readonly rows=\"3\" aria-label=\"the line to type in\"></textarea>\n"
        "<button type=\"button\" class=\"copy\">Copy the line</button>\n";
  }
  out += "</article>\n";
}

void addKit(std::string& out, const std::vector<KitLine>& lines) {
  if (lines.empty()) return;
  out += "<div class=\"kit\"><h2>Made so far, and what it goes with</h2><ul>\n";
  for (const KitLine& line : lines) {
    out += line.mind ? "<li class=\"mind\"><b>" : "<li><b>";
    out += escaped(line.place) + "</b> ";
    if (!line.struckOut.empty()) out += "<s>" + escaped(line.struckOut) + "</s> ";
    if (!line.instead.empty()) out += "<b>" + escaped(line.instead) + "</b> ";
    out += escaped(line.words) + "</li>\n";
  }
  out += "</ul></div>\n";
}

void addSetup(std::string& out, const TabletSetup& setup) {
  out += "<section class=\"setup\" data-setup=\"" + escaped(setup.setup) + "\" data-key=\"" +
         escaped(setup.part + "/" + setup.setup) + "\" data-unit=\"" +
         (setup.millimetres ? "mm" : "in") + "\">\n<h1>" + escaped(setup.heading) + "</h1>\n";
  if (setup.draft) {
    out += "<p class=\"draft\">DRAFT: the print is in doubt. Look at the doubts first.</p>\n";
  }
  out += "<p class=\"zero\">" + escaped(setup.zero) + "<br>" + escaped(setup.counts) + ". In " +
         (setup.millimetres ? "millimetres" : "inches") + ".</p>\n";
  addKit(out, setup.kit);
  if (!setup.before.empty()) {
    out += "<div class=\"before\"><h2>Before cutting</h2><ul>\n";
    for (const std::string& line : setup.before) out += "<li>" + escaped(line) + "</li>\n";
    out += "</ul></div>\n<p class=\"still\" hidden>" + std::to_string(setup.before.size()) +
           " to look at before cutting: see the first step</p>\n";
  }
  for (std::size_t i = 0; i < setup.steps.size(); ++i) {
    addStep(out, setup.steps[i], i + 1, setup);
  }
  out += "</section>\n";
}

}  // namespace

std::string tabletPage(const std::string& title, const std::string& edition,
                       const std::string& date, const std::vector<TabletSetup>& setups) {
  const std::string name = escaped(title.empty() ? "At the machine" : title);
  std::string out =
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta name=\"generator\" content=\"Inchwright " INCHWRIGHT_VERSION
      "\">\n"
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
      "'unsafe-inline'; script-src 'unsafe-inline'\">\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>";
  out += name + "</title>\n<style>\n";
  out += tabletStyle();
  out += "</style>\n</head>\n<body data-edition=\"" + escaped(edition + " " + date) + "\">\n";
  out +=
      "<p id=\"unkept\" class=\"draft\" hidden>This browser keeps nothing for a file opened by "
      "hand: ticks and figures are gone when the page is closed.</p>\n";
  out += "<header><p>" + name;
  if (!edition.empty()) out += " · " + escaped(edition);
  out += " · " + escaped(date) + "</p></header>\n<main>\n";
  for (const TabletSetup& setup : setups) addSetup(out, setup);
  out +=
      "</main>\n<nav id=\"walk\" hidden><button type=\"button\" id=\"back\">Back</button><button "
      "type=\"button\" id=\"next\">Next</button></nav>\n"
      "<footer><p>Eye protection on, guards on, work clamped, speeds from the tool's maker; the "
      "spindle stopped to measure. The machine's manual, local rules and qualified practice come "
      "first.</p></footer>\n<script>\n";
  out += tabletScript();
  out += "</script>\n</body>\n</html>\n";
  return out;
}

}  // namespace inchwright
