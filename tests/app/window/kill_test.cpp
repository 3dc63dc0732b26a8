// A kill in the middle of the work: what is found afterwards. Whole processes with a real window,
// killed by SIGKILL at moments drawn by a seed.

#include <gtest/gtest.h>
#include <poll.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QDir>
#include <QTemporaryDir>
#include <chrono>
#include <random>
#include <sstream>
#include <string>
#include <vector>

#include "core/document/document.h"

namespace inchwright::app {
namespace {

using Moment = std::chrono::steady_clock::time_point;
using std::chrono::milliseconds;

constexpr milliseconds kPatience{60'000};  // for a start on a busy machine
constexpr milliseconds kMostLost{1000};

struct DeskEdit {
  std::string id;
  Moment at;
};

std::vector<char*> pointersInto(std::vector<std::string>& words) {
  std::vector<char*> pointers;
  for (std::string& word : words) pointers.push_back(word.data());
  pointers.push_back(nullptr);
  return pointers;
}

/// One process at work, with what it says read as it comes.
class DeskAtWork {
 public:
  DeskAtWork(const std::string& home, const std::string& file, int seed, bool saving = false) {
    std::vector<std::string> words{DESK_AT_WORK, "--desk-at-work", file, std::to_string(seed)};
    if (saving) words.push_back("saving");
    std::vector<std::string> surroundings{"QT_QPA_PLATFORM=offscreen", "XDG_DATA_HOME=" + home,
                                          "XDG_CONFIG_HOME=" + home};
    for (char** one = environ; *one != nullptr; ++one) {
      const std::string kept = *one;
      if (kept.rfind("XDG_", 0) != 0 && kept.rfind("QT_", 0) != 0) surroundings.push_back(kept);
    }
    const std::vector<char*> args = pointersInto(words), with = pointersInto(surroundings);
    int ends[2];
    if (pipe(ends) != 0) return;
    pid_ = fork();
    if (pid_ == 0) {
      dup2(ends[1], STDOUT_FILENO);
      close(ends[0]);
      close(ends[1]);
      execve(args[0], args.data(), with.data());
      _exit(127);
    }
    close(ends[1]);
    from_ = ends[0];
  }
  ~DeskAtWork() {
    kill();
    close(from_);
  }
  DeskAtWork(const DeskAtWork&) = delete;
  DeskAtWork& operator=(const DeskAtWork&) = delete;

  /// Reads until so many edits were made; false when the process ends before or takes for ever.
  bool untilEdits(std::size_t count) {
    const Moment end = std::chrono::steady_clock::now() + kPatience;
    while (edits.size() < count && std::chrono::steady_clock::now() < end) {
      if (!readOn(milliseconds(200))) return false;
    }
    return edits.size() >= count;
  }
  void workFor(milliseconds time) {
    const Moment end = std::chrono::steady_clock::now() + time;
    for (;;) {
      const auto left =
          std::chrono::duration_cast<milliseconds>(end - std::chrono::steady_clock::now());
      if (left.count() <= 0 || !readOn(left)) return;
    }
  }
  /// Ends it, with no warning unless by another signal; returns when that was.
  Moment kill(int signal = SIGKILL) {
    const Moment at = std::chrono::steady_clock::now();
    if (pid_ <= 0) return at;
    ::kill(pid_, signal);
    waitpid(pid_, nullptr, 0);
    pid_ = 0;
    while (readOn(milliseconds(1000))) {
    }
    return at;
  }

  std::vector<std::string> had;
  std::vector<DeskEdit> edits;
  std::string told, asked;

 private:
  /// False at the end of what it says.
  bool readOn(milliseconds wait) {
    pollfd waiting{from_, POLLIN, 0};
    if (poll(&waiting, 1, static_cast<int>(wait.count())) <= 0) return true;
    char bytes[4096];
    const auto got = read(from_, bytes, sizeof bytes);
    if (got <= 0) return false;
    said_.append(bytes, static_cast<std::size_t>(got));
    for (auto end = said_.find('\n'); end != std::string::npos; end = said_.find('\n')) {
      take(said_.substr(0, end));
      said_.erase(0, end + 1);
    }
    return true;
  }
  void take(const std::string& line) {
    std::istringstream words(line);
    std::string what, word;
    words >> what;
    if (what == "had") {
      while (words >> word) had.push_back(word);
    } else if (what == "edit") {
      long long nanoseconds = 0;
      words >> word >> nanoseconds;
      edits.push_back({word, Moment(std::chrono::nanoseconds(nanoseconds))});
    } else if (what == "asked") {
      asked += line + "\n";
    } else {
      told += line + "\n";
    }
  }

  pid_t pid_ = 0;
  int from_ = -1;
  std::string said_;
};

class KillTest : public testing::Test {
 protected:
  void SetUp() override {
    ASSERT_TRUE(home.isValid());
    file = home.filePath(QStringLiteral("plate.inchwright")).toStdString();
    Job job;
    job.parts.emplace_back();
    job.parts[0].name = "Plate";
    ASSERT_TRUE(saveDocument(job, file).ok());
  }

  QTemporaryDir home;
  std::string file;
};

TEST_F(KillTest, LosesTheLastSecondAtMost) {
  constexpr int kSeed = 20261125;
  SCOPED_TRACE(kSeed);
  std::mt19937 random(kSeed);
  std::vector<std::string> made;  // before the last kill
  std::size_t sure = 0;           // so many of these more than a second before it
  for (int round = 0; round < 6; ++round) {
    SCOPED_TRACE(round);
    DeskAtWork desk(home.path().toStdString(), file, static_cast<int>(random() % 1000),
                    round % 3 == 2);
    ASSERT_TRUE(desk.untilEdits(1)) << desk.told;
    EXPECT_EQ(desk.told, "");
    ASSERT_LE(desk.had.size(), made.size());
    for (std::size_t i = 0; i < desk.had.size(); ++i) EXPECT_EQ(desk.had[i], made[i]);
    EXPECT_GE(desk.had.size(), sure) << "of " << made.size();
    desk.workFor(milliseconds(200 + random() % 2600));
    const Moment killed = desk.kill();
    made = desk.had;
    sure = made.size();
    for (const DeskEdit& edit : desk.edits) {
      made.push_back(edit.id);
      if (edit.at + kMostLost < killed) sure = made.size();
    }
  }
  // At the end there was something to lose, and something that had to be found.
  EXPECT_GT(sure, 10u);
}

TEST_F(KillTest, TheKilledLeaveNoPileOfLocks) {
  for (int round = 0; round < 4; ++round) {
    DeskAtWork desk(home.path().toStdString(), file, round);
    ASSERT_TRUE(desk.untilEdits(1)) << desk.told;
    for (const char* folder : {"/inchwright/journal", "/inchwright/open"}) {
      const QDir place(home.path() + QLatin1String(folder));
      EXPECT_LE(place.entryList({QStringLiteral("*.lock")}, QDir::Files).size(), 2) << folder;
    }
    desk.kill();
  }
}

TEST_F(KillTest, ASecondWindowOnAFileIsToldAndOneAfterAKillIsNot) {
  const std::string at = home.path().toStdString();
  {
    DeskAtWork first(at, file, 1);
    ASSERT_TRUE(first.untilEdits(1));
    DeskAtWork second(at, file, 2);
    ASSERT_TRUE(second.untilEdits(1));
    EXPECT_EQ(first.told, "");
    EXPECT_NE(second.asked.find("open in another window"), std::string::npos) << second.asked;
  }
  DeskAtWork third(at, file, 3);
  ASSERT_TRUE(third.untilEdits(1));
  EXPECT_EQ(third.asked.find("open in another window"), std::string::npos) << third.asked;
}

TEST_F(KillTest, WhoeverIsToldToEndLosesNothing) {
  std::vector<std::string> made;
  for (const int signal : {SIGTERM, SIGHUP, SIGINT, SIGTERM}) {
    SCOPED_TRACE(signal);
    DeskAtWork desk(home.path().toStdString(), file, signal);
    ASSERT_TRUE(desk.untilEdits(1)) << desk.told;
    EXPECT_EQ(desk.had, made);
    ASSERT_TRUE(desk.untilEdits(3 + static_cast<std::size_t>(signal) % 3));
    desk.kill(signal);
    made = desk.had;
    for (const DeskEdit& edit : desk.edits) made.push_back(edit.id);
  }
}

}  // namespace
}  // namespace inchwright::app
