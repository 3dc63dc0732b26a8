#include "app/words/tolerance_job.h"

#include "app/words/tolerance_note.h"
#include "core/measure/lettered.h"
#include "core/plan/table.h"

namespace inchwright::app {

Result<const OpenedJob::Solved*> theOnePart(const OpenedJob& opened) {
  if (opened.solved.size() == 1) return &opened.solved.front();
  std::string names;
  for (const OpenedJob::Solved& one : opened.solved) {
    names += (names.empty() ? "" : ", ") + opened.part(one).name;
  }
  return Error{ErrorCode::badRequest, "say which part: " + names, "--part"};
}

Result<Setup> theSetup(const std::optional<std::string>& name, std::string_view option,
                       const Part& part, const Solution& solution) {
  if (part.setups.empty() && !name) return defaultSetup(part, solution);
  if (part.setups.size() == 1 && !name) return part.setups.front();
  std::vector<std::string> names;
  for (const Setup& setup : part.setups) names.push_back(setup.name);
  if (!name) {
    return Error{ErrorCode::badRequest, "say which setup: " + listed(names), std::string(option)};
  }
  if (const Setup* setup = part.setup(*name)) return *setup;
  return Error{ErrorCode::notFound,
               "there is no setup “" + *name + "” here" +
                   (names.empty() ? "" : "; there is " + listed(names)),
               std::string(option)};
}

Result<std::optional<Length>> lengthOption(const Arguments& arguments, std::string_view option,
                                           Unit unit) {
  std::optional<std::string> text = arguments.value(option);
  if (!text) return std::optional<Length>();
  constexpr std::string_view kEitherWay = "±";
  if (text->starts_with(kEitherWay)) text->erase(0, kEitherWay.size());
  const Result<Lettered> read = readLength(*text, {unit});
  if (!read) return Error{read.error().code, read.error().text, std::string(option)};
  if (read->value < Length()) {
    return Error{ErrorCode::badRequest, "“" + *text + "” is below 0", std::string(option)};
  }
  return std::optional<Length>(read->value);
}

Result<std::string> needed(const Arguments& arguments, std::string_view option) {
  const auto value = arguments.value(option);
  if (value && !value->empty()) return *value;
  return Error{ErrorCode::badRequest, "this word needs it; see --help", std::string(option)};
}

Result<Axis> neededAxis(const Arguments& arguments) {
  const Result<std::string> name = needed(arguments, "--axis");
  if (!name) return name.error();
  if (const auto axis = axisNamed(*name)) return *axis;
  return Error{ErrorCode::badRequest, "“" + *name + "” is no axis; say x, y or z", "--axis"};
}

Result<std::optional<Axis>> axisOrCentres(const Arguments& arguments) {
  if (arguments.value("--axis") == kCentres) return std::optional<Axis>();
  const Result<Axis> axis = neededAxis(arguments);
  if (!axis) return axis.error();
  return std::optional(*axis);
}

}  // namespace inchwright::app
