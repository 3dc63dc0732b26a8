#pragma once

#include <QString>
#include <optional>

#include "app/session/echo.h"
#include "core/base/result.h"
#include "core/part/job.h"

namespace inchwright::app {

class Desk;

/// What a line about what goes together does to the job on the desk.
struct KitEdit {
  Job job;
  QString title;  ///< of the step of undo
  QString said;   ///< what comes of it: the clearance as drawn and as made, whether it keeps
  bool doubtful = false;
};

/// Empty where the line is none about the kit (`isKitLine`), or names places of the part instead.
std::optional<Result<KitEdit>> kitEditOf(const Desk& desk, const QString& line);

/// What stands beside the line while it is typed.
Echo echoOf(const Result<KitEdit>& edit);

/// One step of undo; a refusal goes to the strip, and false comes back.
bool applyKit(Desk& desk, const Result<KitEdit>& edit);

/// How a mate or gap of the job stands now, in one line.
QString mateNow(const Desk& desk, const std::string& mate);
QString gapNow(const Desk& desk, const std::string& gap);

}  // namespace inchwright::app
