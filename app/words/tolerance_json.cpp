#include "app/words/tolerance_json.h"

#include <nlohmann/json.hpp>

#include "app/words/stack_note.h"
#include "core/say/source_words.h"
#include "core/say/stack_words.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

// A requirement at the step, or null where there is none.
Json limitAt(const std::optional<Length>& limit, const Step& step) {
  return limit ? Json(atStep(limit->ticks(), step)) : Json(nullptr);
}
Json limitTicks(const std::optional<Length>& limit) {
  return limit ? Json(limit->ticks()) : Json(nullptr);
}

}  // namespace

nlohmann::ordered_json spanAt(const Span& span, const Step& step) {
  const auto [low, high] = outwardsAt(span, step);
  return {low, high};
}

nlohmann::ordered_json ticksOf(const Span& span) {
  return {span.low, span.high};
}

nlohmann::ordered_json unassuredAsJson(const Part& part, const std::vector<Unassured>& found,
                                       const Step& step) {
  nlohmann::ordered_json list = nlohmann::ordered_json::array();
  for (const Unassured& one : found) {
    list.push_back({{"reading", one.reading},
                    {"allowed", spanAt(one.allowed, step)},
                    {"allowed_ticks", ticksOf(one.allowed)},
                    {"others", spanAt(one.others, step)},
                    {"others_ticks", ticksOf(one.others)},
                    {"low_by", labelsOf(part, one.lowBy)},
                    {"high_by", labelsOf(part, one.highBy)},
                    {"text", unassuredText(part, one, step)}});
  }
  return list;
}

nlohmann::ordered_json stackAsJson(const Stack& stack, const Step& step) {
  Json entry;
  entry["nominal"] = showAtStep(stack.nominal, step).text;
  entry["nominal_ticks"] = stack.nominal.rounded().value_or(0);
  entry["middle"] = showAtStep(stack.middle, step).text;
  entry["middle_ticks"] = stack.middle.rounded().value_or(0);
  entry["worst"] = spanAt(stack.worst, step);
  entry["worst_ticks"] = ticksOf(stack.worst);
  entry["rss"] = spanAt(stack.rss, step);
  entry["rss_ticks"] = ticksOf(stack.rss);
  entry["inflated"] = spanAt(stack.inflated, step);
  entry["inflated_ticks"] = ticksOf(stack.inflated);
  entry["inflation"] = stack.inflation;
  entry["inflated_held"] = stack.inflatedIsHeld;
  if (stack.secondOrder) {
    entry["second_order"] = outwardsAt({0, *stack.secondOrder}, step)[1];
    entry["second_order_ticks"] = *stack.secondOrder;
  }
  entry["members"] = Json::array();
  for (const StackMember& member : stack.members) {
    const std::int64_t plus = member.high - member.nominal;
    const std::int64_t minus = member.nominal - member.low;
    Json one{{"reading", memberName(member)},
             {"text", member.text},
             {"from", beginsAt(member)},
             {"to", member.to},
             {"sign", member.sign()},
             {"factor", factorText(member.factor)},
             {"nominal", atStep(member.nominal, step)},
             {"nominal_ticks", member.nominal},
             {"plus", outwardsAt({0, plus}, step)[1]},
             {"minus", outwardsAt({0, minus}, step)[1]},
             {"plus_ticks", plus},
             {"minus_ticks", minus},
             {"share", member.share},
             {"worst_share", member.worstShare}};
    if (member.isSlanted) one["factor"] = slopeOf(member);
    if (member.isAngle) {
      for (const char* key : {"nominal", "plus", "minus"}) one.erase(std::string(key) + "_ticks");
      one["nominal"] = degreesText(member.nominal);
      one["plus"] = degreesText(plus);
      one["minus"] = degreesText(minus);
    }
    if (!member.part.empty()) one["part"] = member.part;
    entry["members"].push_back(std::move(one));
  }
  return entry;
}

nlohmann::ordered_json limitsAsJson(const GapStack& sum, const Step& step) {
  if (!sum.least && !sum.greatest) return Json::object();
  Json entry;
  entry["required"] = Json::array({limitAt(sum.least, step), limitAt(sum.greatest, step)});
  entry["required_ticks"] = Json::array({limitTicks(sum.least), limitTicks(sum.greatest)});
  entry["keeps"] = Json{{"worst", sum.keeps(sum.stack.worst)},
                        {"rss", sum.keeps(sum.stack.rss)},
                        {"inflated", sum.keeps(sum.stack.inflated)}};
  return entry;
}

nlohmann::ordered_json simulationAsJson(const Simulation& simulation, const Step& step) {
  Json entry{{"runs", simulation.runs},
             {"seed", simulation.seed},
             {"spread", spreadName(simulation.spread)},
             {"mean", atStep(simulation.mean, step)},
             {"mean_ticks", simulation.mean},
             {"sd_ticks", simulation.deviation}};
  entry["percentiles"] = Json::array();
  for (std::size_t i = 0; i < kPercentiles.size(); ++i) {
    entry["percentiles"].push_back(Json{{"percent", kPercentiles[i]},
                                        {"value", atStep(simulation.percentiles[i], step)},
                                        {"value_ticks", simulation.percentiles[i]}});
  }
  const auto runs = static_cast<double>(simulation.runs);
  entry["below"] = static_cast<double>(simulation.below) / runs;
  entry["above"] = static_cast<double>(simulation.above) / runs;
  entry["out"] = static_cast<double>(simulation.below + simulation.above) / runs;
  entry["histogram"] = Json{{"range", spanAt(simulation.range, step)},
                            {"range_ticks", ticksOf(simulation.range)},
                            {"runs", simulation.bars}};
  return entry;
}

}  // namespace inchwright::app
