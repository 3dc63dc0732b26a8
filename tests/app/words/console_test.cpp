#include "app/words/console.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <stdio_ext.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <sstream>

#include "app/words/terminal.h"
#include "app/words/word.h"
#include "tests/app/words/spoken.h"

namespace inchwright::app {
namespace {

TEST(Console, ColoursOnlyWhereWanted) {
  std::ostringstream out;
  EXPECT_EQ(toned({out, out, false}, Tone::doubt, "x"), "x");
  EXPECT_EQ(toned({out, out, true}, Tone::doubt, "x"), "\x1b[31mx\x1b[0m");
}

/// Standard output leads elsewhere as long as this lives.
class StandardOutput {
 public:
  explicit StandardOutput(int to) {
    std::fflush(stdout);
    before_ = ::dup(STDOUT_FILENO);
    ::dup2(to, STDOUT_FILENO);
    ::close(to);
  }
  ~StandardOutput() {
    __fpurge(stdout);  // what could not be written is not to come out later
    std::clearerr(stdout);
    ::dup2(before_, STDOUT_FILENO);
    ::close(before_);
  }
  StandardOutput(const StandardOutput&) = delete;
  StandardOutput& operator=(const StandardOutput&) = delete;

 private:
  int before_;
};

// Colours are for eyes alone, and for those who want them: https://no-color.org says that the
// variable refuses when it is there and not empty.
TEST(Terminal, GetsColourUnlessItIsRefused) {
  const int terminal = ::posix_openpt(O_RDWR | O_NOCTTY);
  ASSERT_GE(terminal, 0);
  ASSERT_EQ(::grantpt(terminal) + ::unlockpt(terminal), 0);
  const char* const was = std::getenv("NO_COLOR");
  const std::string kept = was == nullptr ? "" : was;
  for (const auto& [refused, wanted] : {std::pair{"", true}, {"1", false}, {"0", false}}) {
    ::setenv("NO_COLOR", refused, 1);
    bool onTerminal = false, inFile = true;
    {
      const StandardOutput out(::open(::ptsname(terminal), O_RDWR | O_NOCTTY));
      onTerminal = terminalWantsColour();
    }
    {
      const StandardOutput out(::open("/dev/null", O_WRONLY));
      inFile = terminalWantsColour();
    }
    EXPECT_EQ(onTerminal, wanted) << "NO_COLOR=" << refused;
    EXPECT_FALSE(inFile) << "NO_COLOR=" << refused;
  }
  ::unsetenv("NO_COLOR");
  bool unsaid = false;
  {
    const StandardOutput out(::open(::ptsname(terminal), O_RDWR | O_NOCTTY));
    unsaid = terminalWantsColour();
  }
  EXPECT_TRUE(unsaid);
  if (was != nullptr) ::setenv("NO_COLOR", kept.c_str(), 1);
  ::close(terminal);
}

// A script that reads the status must not take a table cut short for a whole one.
TEST(Terminal, DeliversAllOrSaysWhyNot) {
  const Scratch scratch;
  const std::string file = scratch.path("out.txt");
  const std::string told = "L  0\n\nR  2 1/16\n";
  for (const int wanted : {kFine, kFindings, kUnusable}) {
    std::ostringstream err;
    int status = -1;
    {
      const StandardOutput out(::open(file.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600));
      status = deliver(told, wanted, {err, err});
    }
    EXPECT_EQ(status, wanted);
    EXPECT_EQ(Scratch::read(file), told);
    EXPECT_EQ(err.str(), "");
  }
  std::ostringstream err;
  int full = -1;
  {
    const StandardOutput out(::open("/dev/full", O_WRONLY));
    full = deliver(told, kFine, {err, err});
  }
  EXPECT_EQ(full, kUnusable);
  EXPECT_EQ(err.str(), "inchwright: standard output: " + std::string(std::strerror(ENOSPC)) + "\n");
  // Who reads has seen enough, as in `inchwright table plate | head -1`.
  std::ostringstream closed;
  int ends[2] = {};
  ASSERT_EQ(::pipe(ends), 0);
  ::close(ends[0]);
  int status = -1;
  {
    const StandardOutput out(ends[1]);
    status = deliver(told, kFindings, {closed, closed});
  }
  EXPECT_EQ(status, kFindings);
  EXPECT_EQ(closed.str(), "");
}

TEST(Console, ADocumentCantSpeakToTheTerminal) {
  EXPECT_EQ(oneLine("a\x1b[2Jb\nc\x7f ⅜"), "a?[2Jb?c? ⅜");
}

TEST(Console, RefusesInOneLineWithWhereAndWhy) {
  std::ostringstream out;
  std::ostringstream err;
  const int status =
      refuse({out, err}, "check", {ErrorCode::badDocument, "no\nsuch thing", "/parts/0", 4}, "a.b");
  EXPECT_EQ(status, kUnusable);
  EXPECT_EQ(err.str(), "inchwright check: a.b: /parts/0: at character 5: no?such thing\n");
  EXPECT_EQ(out.str(), "");
}

TEST(Console, CountsCharactersNotBytes) {
  EXPECT_EQ(columnsOf("1 3/16"), 6u);
  EXPECT_EQ(columnsOf("Ø⅜"), 2u);
  EXPECT_EQ(columnsOf(""), 0u);
}

TEST(Console, AlignsColumnsAndLeavesOutEmptyOnes) {
  const std::vector<std::string> lines =
      alignedRows({{"id", "x", "none", "note"}, {"A", "-1.5", "", "Ø"}, {"B10", "+0.25", "", ""}},
                  {Justify::left, Justify::right, Justify::left, Justify::left});
  EXPECT_EQ(lines, (std::vector<std::string>{"id       x  note", "A     -1.5  Ø", "B10  +0.25"}));
}

}  // namespace
}  // namespace inchwright::app
