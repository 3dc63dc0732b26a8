#include "app/words/tolerance_job.h"

namespace inchwright::app {

Result<const OpenedJob::Solved*> theOnePart(const OpenedJob& opened) {
  if (opened.solved.size() == 1) return &opened.solved.front();
  std::string names;
  for (const OpenedJob::Solved& one : opened.solved) {
    names += (names.empty() ? "" : ", ") + opened.part(one).name;
  }
  return Error{ErrorCode::badRequest, "say which part: " + names, "--part"};
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

}  // namespace inchwright::app
