#pragma once

#include <QString>

#include "core/part/axis.h"

namespace inchwright::app {

/// `top`, `left` … for people, translated.
QString wordFor(Side side);

}  // namespace inchwright::app
