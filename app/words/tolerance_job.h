#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "app/words/arguments.h"
#include "app/words/job_file.h"
#include "core/base/result.h"
#include "core/measure/length.h"
#include "core/part/axis.h"

namespace inchwright::app {

/// The part a word works on. Errors: `badRequest` when the document has several and none is named.
Result<const OpenedJob::Solved*> theOnePart(const OpenedJob& opened);

/// The value of an option a word can't do without. Errors: `badRequest`.
Result<std::string> needed(const Arguments& arguments, std::string_view option);

/// The setup of that name; without a name the only one there is, or the default one of a part that
/// has none. Errors: `notFound`; `badRequest` when there are several and none is named. `option` is
/// the place of the error.
Result<Setup> theSetup(const std::optional<std::string>& name, std::string_view option,
                       const Part& part, const Solution& solution);

/// A length above or at 0 that an option gives, bare figures in the job's unit; empty without it.
/// Errors: those of reading it, `badRequest` below 0.
Result<std::optional<Length>> lengthOption(const Arguments& arguments, std::string_view option,
                                           Unit unit);

/// What `--axis centres` says: straight from place to place.
inline constexpr std::string_view kCentres = "centres";

/// The axis that `--axis` names; empty for `centres`. Errors: `badRequest`.
Result<std::optional<Axis>> axisOrCentres(const Arguments& arguments);

/// The axis that `--axis` names. Errors: `badRequest`.
Result<Axis> neededAxis(const Arguments& arguments);

}  // namespace inchwright::app
