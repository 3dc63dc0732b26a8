#pragma once

#include <string>
#include <string_view>

#include "app/words/arguments.h"
#include "app/words/job_file.h"
#include "core/base/result.h"
#include "core/part/axis.h"

namespace inchwright::app {

/// The part a word works on. Errors: `badRequest` when the document has several and none is named.
Result<const OpenedJob::Solved*> theOnePart(const OpenedJob& opened);

/// The value of an option a word can't do without. Errors: `badRequest`.
Result<std::string> needed(const Arguments& arguments, std::string_view option);

/// The axis that `--axis` names. Errors: `badRequest`.
Result<Axis> neededAxis(const Arguments& arguments);

}  // namespace inchwright::app
