#include "app/words/kit_job.h"

#include <nlohmann/json.hpp>

#include "core/measure/limits.h"

namespace inchwright::app {

using Json = nlohmann::ordered_json;

namespace {

std::string shown(Length length, const Step& step) {
  return showAtStep(length.rational(), step).text;
}

}  // namespace

Result<WholeJob> openWholeJob(const Arguments& arguments) {
  Arguments all = arguments;
  all.options.erase("--part");
  Result<OpenedJob> opened = openJobInShop(all);
  if (!opened) return opened.error();
  const Result<std::optional<Unit>> unit = namedUnit(arguments);
  if (!unit) return unit.error();
  const Machine& machine = opened->job.machine;
  // A step of the machine's own in another unit would be an odd one there.
  const bool other = *unit && **unit != machine.unit;
  const Unit shownIn = unit->value_or(machine.unit);
  const std::string customary = shownIn == Unit::inch ? "0.0005" : "0.01";
  const Result<Step> step =
      readStep(arguments.value("--step").value_or(other ? customary : machine.step), shownIn);
  if (!step) return Error{step.error().code, step.error().text, "--step", step.error().at};
  WholeJob whole{*std::move(opened), {}, *step};
  for (OpenedJob::Solved& solved : whole.opened.solved) {
    whole.solutions.push_back(solved.solution);
  }
  return whole;
}

Json shownOrNull(const std::optional<Length>& length, const Step& step) {
  return length ? Json(shown(*length, step)) : Json();
}

Json ticksOrNull(const std::optional<Length>& length) {
  return length ? Json(length->ticks()) : Json();
}

Json endsAt(const FoundSize& size, const Step& step) {
  const ShownLimits shown =
      showOutwards(size.least.value_or(Length()), size.greatest.value_or(Length()), step);
  return Json::array(
      {size.least ? Json(shown.low.text) : Json(), size.greatest ? Json(shown.high.text) : Json()});
}

Json askedAt(const FoundSize& size, const Step& step) {
  return Json::array({shownOrNull(size.least, step), shownOrNull(size.greatest, step)});
}

Json limitsAt(const FoundSize& size, const Step& step) {
  if (size.least && size.greatest) {
    const auto limits = showLimitsInwards(*size.least, *size.greatest, step);
    if (limits) return Json::array({limits->low.text, limits->high.text});
  }
  return askedAt(size, step);
}

Json endTicks(const FoundSize& size) {
  return Json::array({ticksOrNull(size.least), ticksOrNull(size.greatest)});
}

}  // namespace inchwright::app
