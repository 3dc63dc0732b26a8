#include <iostream>
#include <sstream>
#include <string>
#include <vector>

#include "app/base/qt_remarks.h"
#include "app/window/start_desk.h"
#include "app/words/console.h"
#include "app/words/terminal.h"
#include "app/words/words.h"

using namespace inchwright;
using namespace inchwright::app;

int main(int argc, char** argv) {
  const std::vector<std::string> args(argv + (argc > 0 ? 1 : 0), argv + argc);
  quietQt();
  if (asksForPicture(args) || !areWords(args)) return startDesk(argc, argv, args);
  std::ostringstream output;
  Streams streams{output, std::cerr, terminalWantsColour()};
  const int status = runWords(args, streams);
  return deliver(output.str(), status, streams);
}
