#include "app/words/making_json.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "core/say/milled_words.h"
#include "core/say/plan_words.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

void put(Json& entry, const std::string& name, const std::optional<Length>& length,
         const Step& step) {
  entry[name] = lengthAt(length, step);
  entry[name + "_ticks"] = ticksAt(length);
}

Json stepAsJson(const HoleStep& made, const Step& step) {
  Json entry{{"op", nameOf(made.op)}, {"tool", made.tool}};
  put(entry, "size", made.size, step);
  put(entry, "full_depth", made.fullDepth, step);
  put(entry, "point_depth", made.pointDepth, step);
  entry["rule"] = nameOf(made.rule);
  entry["why"] = wordsOf(made.rule);
  entry["speed"] = made.speed ? Json(*made.speed) : Json();
  entry["not"] = made.struckOut.empty() ? Json() : Json(made.struckOut);
  entry["percent"] = made.percent ? Json(std::round(*made.percent / 10.0) / 10) : Json();
  put(entry, "dial", made.dial, step);
  entry["measure"] = made.measure;
  put(entry, "may_cut_over", made.cutsOver, step);
  return entry;
}

}  // namespace

Json lengthAt(const std::optional<Length>& length, const Step& step) {
  return length ? Json(showAtStep(length->rational(), step).text) : Json();
}

Json ticksAt(const std::optional<Length>& length) {
  return length ? Json(length->ticks()) : Json();
}

Json findingsAsJson(const std::vector<Finding>& findings, const Step& step) {
  Json list = Json::array();
  for (const Finding& finding : findings) {
    Json entry{{"code", nameOf(finding.code)},
               {"places", finding.places},
               {"text", wordsOf(finding, step)}};
    put(entry, "by", finding.by, step);
    if (!finding.setup.empty()) entry["setup"] = finding.setup;
    list.push_back(std::move(entry));
  }
  return list;
}

Json holeAsJson(const PlannedHole& hole, const Step& step) {
  Json entry{{"id", hole.id}, {"steps", Json::array()}};
  for (const HoleStep& one : hole.plan->steps) entry["steps"].push_back(stepAsJson(one, step));
  if (hole.plan->limits) {
    const SizeLimits& limits = *hole.plan->limits;
    entry["limits"] = {lengthAt(limits.least, step), lengthAt(limits.greatest, step)};
    entry["limits_ticks"] = {limits.least.ticks(), limits.greatest.ticks()};
  }
  if (const auto& pins = hole.plan->pins) {
    put(entry, "go", pins->go, step);
    put(entry, "no_go", pins->noGo, step);
  }
  entry["notes"] = Json::array();
  for (const HoleNote note : hole.plan->notes)
    entry["notes"].push_back(wordsOf(note, hole.plan->with));
  entry["locate"] = nameOf(hole.drilled->locate);
  if (hole.drilled->mate) {
    entry["mate"] = {{"part", hole.drilled->mate->part}, {"place", hole.drilled->mate->place}};
  }
  return entry;
}

Json slotAsJson(const PlannedSlot& slot, const Step& step) {
  const SlotPlan& plan = *slot.plan;
  Json entry{
      {"id", slot.id}, {"kind", slot.shape.isPocket ? "pocket" : "slot"}, {"tool", plan.tool}};
  put(entry, "size", plan.size, step);
  entry["plunges"] = plan.plunges;
  entry["drilled_first"] = plan.first ? Json(plan.first->drill.name) : Json();
  entry["opens_sides"] = plan.opensSides;
  entry["speed"] = plan.speed ? Json(*plan.speed) : Json();
  entry["passes"] = Json::array();
  entry["passes_ticks"] = Json::array();
  for (const Length pass : plan.passes) {
    entry["passes"].push_back(lengthAt(pass, step));
    entry["passes_ticks"].push_back(pass.ticks());
  }
  return entry;
}

Json milledAsJson(const MilledCut& cut, const Step& step) {
  const auto put2 = [](Json& entry, const std::string& name, const CutterStands& at) {
    entry[name] = {at.x.text, at.y.text};
    entry[name + "_ticks"] = {at.x.value.ticks(), at.y.value.ticks()};
  };
  Json entry{{"id", cut.id}, {"kind", cut.isPocket ? "pocket" : "slot"}, {"tool", cut.tool}};
  put(entry, "cutter", cut.cutter, step);
  entry["passes"] = Json::array();
  entry["passes_ticks"] = Json::array();
  for (const Length pass : cut.passes) {
    entry["passes"].push_back(lengthAt(pass, step));
    entry["passes_ticks"].push_back(pass.ticks());
  }
  if (cut.drillFirst) {
    entry["drill"] = cut.drill;
    put2(entry, "drill_at", *cut.drillFirst);
  }
  entry["runs"] = Json::array();
  for (const CutterRun& run : cut.runs) {
    Json one{{"what", whatWords(run.what)}};
    put2(one, "from", run.from);
    put2(one, "to", run.to);
    entry["runs"].push_back(std::move(one));
  }
  if (cut.about) {
    Json about{{"degrees", cut.about->degrees}, {"spindle", Json::array()}};
    put2(about, "centre", cut.about->centre);
    for (const Length off : cut.about->spindle) about["spindle"].push_back(lengthAt(off, step));
    entry["about"] = std::move(about);
  }
  entry["disputed"] = cut.disputed;
  entry["words"] = milledWords(cut, step);
  return entry;
}

Json otherwiseAsJson(const std::vector<PutInOtherwise>& all, const Step& step) {
  Json list = Json::array();
  for (const PutInOtherwise& one : all) {
    const bool ends = one.how == PutInOtherwise::How::endForEnd;
    Json entry{{"how", ends ? "end_for_end" : "turned_over"},
               {"pieces", one.pieces},
               {"at_stop", nameOf(one.atStop)},
               {"at_jaw", nameOf(one.atJaw)}};
    put(entry, "left_at_stop", one.leftAtStop, step);
    put(entry, "left_at_jaw", one.leftAtJaw, step);
    entry["rows"] = Json::array();
    for (const PutInOtherwise::Row& row : one.rows) {
      entry["rows"].push_back({{"id", row.id},
                               {"x", row.x.text},
                               {"y", row.y.text},
                               {"x_ticks", row.x.value.ticks()},
                               {"y_ticks", row.y.value.ticks()}});
    }
    list.push_back(std::move(entry));
  }
  return list;
}

Json piecesAsJson(const std::vector<PieceLeft>& pieces, const Step& step) {
  Json list = Json::array();
  for (const PieceLeft& piece : pieces) {
    Json left = Json::object();
    for (std::size_t i = 0; i < piece.left.size(); ++i) {
      if (piece.left[i]) put(left, std::string(nameOf(static_cast<Side>(i))), piece.left[i], step);
    }
    list.push_back({{"name", piece.name}, {"cleans_up", piece.cleansUp}, {"left", left}});
  }
  return list;
}

}  // namespace inchwright::app
