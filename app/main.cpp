#include <iostream>
#include <sstream>
#include <string>
#include <vector>

#include "app/words/console.h"
#include "app/words/terminal.h"
#include "app/words/words.h"

using namespace inchwright;
using namespace inchwright::app;

int main(int argc, char** argv) {
  const std::vector<std::string> args(argv + (argc > 0 ? 1 : 0), argv + argc);
  std::ostringstream output;
  Streams streams{output, std::cerr, terminalWantsColour()};
  if (areWords(args)) {
    const int status = runWords(args, streams);
    return deliver(output.str(), status, streams);
  }
  return refuse(streams, {},
                {ErrorCode::badRequest,
                 "there is no desk yet; inchwright --help lists the words for the command line",
                 args.empty() ? std::string() : args.front()});
}
