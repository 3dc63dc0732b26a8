#include "app/words/lathe_json.h"

#include <nlohmann/json.hpp>

#include "core/say/figure_words.h"
#include "core/say/lathe_words.h"

namespace inchwright::app {

using Json = nlohmann::ordered_json;

namespace {

void put(Json& entry, const std::string& name, const std::optional<LatheFigure>& figure) {
  entry[name] = figure ? Json(figure->text) : Json();
  entry[name + "_ticks"] = figure ? Json(figure->value.ticks()) : Json();
}

Json threadAsJson(const ThreadCut& thread) {
  Json entry = Json::object();
  if (thread.perInch > 0) entry["per_inch"] = thread.perInch;
  put(entry, "pitch", thread.pitch);
  put(entry, "depth", thread.depth);
  entry["hand"] = thread.leftHand ? "left" : "right";
  if (!thread.runout.empty()) entry["runout"] = thread.runout;
  return entry;
}

}  // namespace

Json latheAsJson(const LatheWork& work, const Lathe& lathe) {
  Json sheet{{"part", work.part}, {"setup", work.setup}, {"kind", "lathe"}};
  sheet["unit"] = nameOf(work.step.unit);
  sheet["step"] = stepText(work.step);
  sheet["zero"] = heldWords(work, lathe);
  sheet["held"] = nameOf(work.held);
  sheet["rows"] = Json::array();
  for (const LatheRow& row : work.rows) {
    Json entry{{"id", row.id}, {"kind", nameOf(row.kind)}};
    put(entry, "length", row.length);
    put(entry, "dia", row.dia);
    put(entry, "from", row.from);
    if (!row.behind.empty()) entry["behind"] = row.behind;
    if (row.topSlide) entry["top_slide"] = *row.topSlide;
    if (row.setOver) put(entry, "set_over", row.setOver);
    if (row.thread) entry["thread"] = threadAsJson(*row.thread);
    if (row.width) put(entry, "width", row.width);
    if (!row.knurl.empty()) entry["knurl"] = row.knurl;
    entry["exact"] = row.length.exact && (!row.dia || row.dia->exact);
    entry["cut_here"] = row.cutHere;
    entry["disputed"] = row.disputed;
    entry["note"] = latheNote(row, work.step);
    sheet["rows"].push_back(std::move(entry));
  }
  put(sheet, "whole", work.whole);
  sheet["unplaced"] = work.unplaced;
  sheet["in_the_chuck"] = work.inTheChuck;
  sheet["warnings"] = latheWarnings(work);
  return sheet;
}

Json cutsAsJson(const LatheWork& work) {
  Json cuts = Json::array();
  for (const Cut& cut : work.cuts) {
    Json entry{{"op", nameOf(cut.op)}, {"of", cut.of}};
    put(entry, "length", cut.length);
    put(entry, "dia", cut.dia);
    if (cut.from) put(entry, "from", cut.from);
    if (!cut.behind.empty()) entry["behind"] = cut.behind;
    if (cut.drillTo != DrillTo::fullDiameter) {
      entry["drill_to"] = cut.drillTo == DrillTo::point ? "point" : "through";
    }
    if (cut.topSlide) entry["top_slide"] = *cut.topSlide;
    cuts.push_back(std::move(entry));
  }
  return cuts;
}

}  // namespace inchwright::app
