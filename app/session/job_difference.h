#pragma once

#include <QStringList>

#include "core/part/job.h"

namespace inchwright::app {

/// How a job on the disk differs from the one on the desk, as a colleague would say it, one line
/// for each thing, the figures first: `r3 (A to B) is 1 1/16 there and 1 3/16 here`, `hole D is
/// only there`. At most `most` lines, the last of which then says how many more there are; empty
/// for equal jobs.
QStringList jobDifference(const Job& there, const Job& here, int most = 6);

}  // namespace inchwright::app
