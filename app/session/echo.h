#pragma once

#include <QString>

namespace inchwright::app {

/// What the strip shows below its line while a text is being typed.
struct Echo {
  QString text;  ///< `1 3/16 = 1.1875 in = 30.1625 mm`
  bool refused = false;
  int at = -1;            ///< byte of the fault in the text, when refused
  bool doubtful = false;  ///< read, but the trace or a question speaks against it
};

}  // namespace inchwright::app
