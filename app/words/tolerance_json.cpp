#include "app/words/tolerance_json.h"

#include <nlohmann/json.hpp>

namespace inchwright::app {

nlohmann::ordered_json spanAt(const Span& span, const Step& step) {
  return {atStep(span.low, step), atStep(span.high, step)};
}

nlohmann::ordered_json ticksOf(const Span& span) {
  return {span.low, span.high};
}

nlohmann::ordered_json unassuredAsJson(const std::vector<Unassured>& found, const Step& step) {
  nlohmann::ordered_json list = nlohmann::ordered_json::array();
  for (const Unassured& one : found) {
    list.push_back({{"reading", one.reading},
                    {"allowed", spanAt(one.allowed, step)},
                    {"allowed_ticks", ticksOf(one.allowed)},
                    {"others", spanAt(one.others, step)},
                    {"others_ticks", ticksOf(one.others)},
                    {"low_by", one.lowBy},
                    {"high_by", one.highBy},
                    {"text", unassuredText(one, step)}});
  }
  return list;
}

}  // namespace inchwright::app
