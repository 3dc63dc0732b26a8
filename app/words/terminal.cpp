#include "app/words/terminal.h"

#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <cstring>

#ifdef _WIN32
#include <io.h>
#else
#include <unistd.h>
#endif

#include "app/words/console.h"
#include "app/words/word.h"

namespace inchwright::app {

bool terminalWantsColour() {
#ifdef _WIN32
  const bool terminal = _isatty(1) != 0;
#else
  const bool terminal = isatty(STDOUT_FILENO) != 0;
#endif
  const char* const refused = std::getenv("NO_COLOR");
  return terminal && (refused == nullptr || *refused == '\0');
}

int deliver(const std::string& output, int status, const Streams& streams) {
#ifdef SIGPIPE
  std::signal(SIGPIPE, SIG_IGN);
#endif
  errno = 0;
  const bool written = std::fwrite(output.data(), 1, output.size(), stdout) == output.size() &&
                       std::fflush(stdout) == 0;
  if (written || errno == EPIPE) return status;
  return refuse(streams, {}, {ErrorCode::fileTrouble, std::strerror(errno), "standard output"});
}

}  // namespace inchwright::app
