#pragma once

#include <QString>

#include "core/solution/solution.h"

namespace inchwright::app {

/// A shape for each kind, so that nothing hangs on the colour.
QString markOf(const Doubt& doubt);

/// Red is for what contradicts; what is merely not said yet is graphite.
bool contradicts(const Doubt& doubt);

}  // namespace inchwright::app
