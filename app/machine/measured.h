#pragma once

#include <QString>

#include "core/plan/table.h"

namespace inchwright::app {

/// Whether a measured figure is the wanted one but for its sign, as when the key for the sign was
/// missed: `-0.3752` where `+0.3750` is wanted.
bool isSignSlip(Length measured, Length wanted);

/// By how much a measured figure differs from the wanted one, as the readout shows it: `+0.0002`;
/// empty where it does not.
QString differenceText(Length measured, const Coordinate& wanted, const Step& step);

}  // namespace inchwright::app
