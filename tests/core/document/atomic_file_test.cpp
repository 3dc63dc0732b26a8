#include "core/document/atomic_file.h"

#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <thread>
#include <vector>

#include "core/document/document.h"
#include "tests/core/document/document_text.h"
#include "tests/support/scratch.h"

namespace inchwright {
namespace {

namespace fs = std::filesystem;

class AtomicFile : public testing::Test {
 protected:
  void put(const fs::path& file, const std::string& content) {
    std::ofstream(file, std::ios::binary) << content;
  }

  std::size_t filesInFolder() const {
    return static_cast<std::size_t>(
        std::distance(fs::directory_iterator(folder_), fs::directory_iterator()));
  }

  test::Scratch scratch_;
  const fs::path folder_ = scratch_.folder();
  const fs::path file_ = folder_ / "plate.inchwright";
};

TEST_F(AtomicFile, MakesAndReplaces) {
  ASSERT_TRUE(replaceFile(file_, "old").ok());
  EXPECT_EQ(readText(file_.string()), "old");
  const std::string large(3'000'000, 'x');
  ASSERT_TRUE(replaceFile(file_, large).ok());
  EXPECT_EQ(readText(file_.string()), large);
  ASSERT_TRUE(replaceFile(file_, "").ok());
  EXPECT_EQ(readText(file_.string()), "");
  EXPECT_EQ(filesInFolder(), 1U);
}

TEST_F(AtomicFile, WorksInTheCurrentFolder) {
  const fs::path before = fs::current_path();
  fs::current_path(folder_);
  EXPECT_TRUE(replaceFile("plate.inchwright", "here").ok());
  fs::current_path(before);
  EXPECT_EQ(readText(file_.string()), "here");
}

TEST_F(AtomicFile, KeepsPermissions) {
  put(file_, "old");
  for (const unsigned mode : {0600U, 0664U, 0640U}) {
    ASSERT_EQ(::chmod(file_.c_str(), mode), 0);
    ASSERT_TRUE(replaceFile(file_, "new").ok());
    struct stat now {};
    ASSERT_EQ(::stat(file_.c_str(), &now), 0);
    EXPECT_EQ(now.st_mode & 07777, mode);
  }
}

TEST_F(AtomicFile, FollowsLinksAndLeavesThem) {
  const fs::path inner = folder_ / "inner";
  fs::create_directory(inner);
  put(inner / "real.inchwright", "old");
  fs::create_symlink("inner/real.inchwright", folder_ / "second");
  fs::create_symlink("second", file_);
  ASSERT_TRUE(replaceFile(file_, "new").ok());
  EXPECT_TRUE(fs::is_symlink(file_));
  EXPECT_TRUE(fs::is_symlink(folder_ / "second"));
  EXPECT_EQ(readText((inner / "real.inchwright").string()), "new");
  fs::create_symlink("inner/fresh", folder_ / "dangling");
  ASSERT_TRUE(replaceFile(folder_ / "dangling", "made").ok());
  EXPECT_EQ(readText((inner / "fresh").string()), "made");
  fs::create_symlink("loop", folder_ / "loop");
  const Result<Done> loop = replaceFile(folder_ / "loop", "x");
  ASSERT_FALSE(loop.ok());
  EXPECT_EQ(loop.error().code, ErrorCode::fileTrouble);
}

TEST_F(AtomicFile, RefusesWhatCannotBeReplaced) {
  fs::create_directory(folder_ / "folder");
  for (const fs::path& file : {folder_ / "folder", folder_ / "missing" / "plate", fs::path(),
                               folder_ / "", fs::path("/dev/null")}) {
    const Result<Done> result = replaceFile(file, "x");
    ASSERT_FALSE(result.ok()) << file;
    EXPECT_EQ(result.error().code, ErrorCode::fileTrouble);
    EXPECT_EQ(result.error().place, file.string());
  }
  EXPECT_EQ(filesInFolder(), 1U);
}

TEST_F(AtomicFile, AWriteProtectedFileStays) {
  put(file_, "old");
  ASSERT_EQ(::chmod(file_.c_str(), 0444), 0);
  ASSERT_EQ(::chmod(folder_.c_str(), 0777), 0);
  // Nothing is write-protected for the superuser, so the child is somebody else.
  constexpr uid_t kNobody = 65534;
  const pid_t child = ::fork();
  if (child == 0) {
    if (::geteuid() == 0 && ::setuid(kNobody) != 0) ::_exit(2);
    ::_exit(replaceFile(file_, "new").ok() ? 1 : 0);
  }
  int status = 0;
  ASSERT_EQ(::waitpid(child, &status, 0), child);
  EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0);
  EXPECT_EQ(readText(file_.string()), "old");
  EXPECT_EQ(filesInFolder(), 1U);
}

TEST_F(AtomicFile, TakesOverWhatAKilledSaveLeft) {
  put(folder_ / ".plate.inchwright.saving", std::string(100'000, 'z'));
  ASSERT_TRUE(replaceFile(file_, "new").ok());
  EXPECT_EQ(readText(file_.string()), "new");
  EXPECT_EQ(filesInFolder(), 1U);
}

TEST_F(AtomicFile, IsNotLedAstrayByWhatLiesInTheWay) {
  put(folder_ / "victim", "mine");
  put(file_, "old");
  const fs::path saving = folder_ / ".plate.inchwright.saving";
  fs::create_symlink("victim", saving);
  EXPECT_FALSE(replaceFile(file_, "new").ok());
  fs::remove(saving);
  fs::create_hard_link(folder_ / "victim", saving);
  EXPECT_FALSE(replaceFile(file_, "new").ok());
  EXPECT_EQ(readText((folder_ / "victim").string()), "mine");
  EXPECT_EQ(readText(file_.string()), "old");
}

TEST_F(AtomicFile, OnlyPlainFilesAreReadAndNobodyIsWaitedFor) {
  const std::filesystem::path pipe = folder_ / "pipe";
  ASSERT_EQ(::mkfifo(pipe.c_str(), 0600), 0);
  for (const std::filesystem::path& file : {pipe, folder_, std::filesystem::path("/dev/zero")}) {
    const Result<std::string> read = readWholeFile(file, 1'000);
    ASSERT_FALSE(read.ok()) << file;
    EXPECT_EQ(read.error().code, ErrorCode::fileTrouble);
  }
  put(file_, std::string(1'001, 'x'));
  EXPECT_EQ(readWholeFile(file_, 1'000).error().code, ErrorCode::tooLarge);
  EXPECT_EQ(readWholeFile(file_, 1'001)->size(), 1'001U);
  put(file_, std::string(3 * 1024 * 1024 + 1, 'x'));
  EXPECT_EQ(readWholeFile(file_, 3 * 1024 * 1024).error().text, "larger than 3 MB: not read");
  put(file_, "");
  EXPECT_EQ(*readWholeFile(file_, 10), "");
}

TEST_F(AtomicFile, AFullDiskIsToldAsSuch) {
  EXPECT_EQ(systemWords(ENOSPC), "the disk is full");
  EXPECT_EQ(systemWords(EDQUOT), "the disk is full");
  EXPECT_EQ(systemWords(EACCES), std::generic_category().message(EACCES));
}

TEST_F(AtomicFile, AFullDiskLeavesTheOldFile) {
  put(file_, "old");
  // A limit on the size of files stands for the disk: both make the write fall short.
  const pid_t child = ::fork();
  if (child == 0) {
    ::signal(SIGXFSZ, SIG_IGN);
    const rlimit limit{1'000, 1'000};
    ::setrlimit(RLIMIT_FSIZE, &limit);
    const Result<Done> result = replaceFile(file_, std::string(2'000, 'x'));
    ::_exit(!result.ok() && result.error().code == ErrorCode::fileTrouble ? 0 : 1);
  }
  int status = 0;
  ASSERT_EQ(::waitpid(child, &status, 0), child);
  EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0);
  EXPECT_EQ(readText(file_.string()), "old");
  EXPECT_EQ(filesInFolder(), 1U);
}

TEST_F(AtomicFile, SaversOfOneFileWaitForEachOther) {
  std::vector<std::thread> savers;
  std::vector<int> failures(4, 0);
  for (std::size_t i = 0; i < failures.size(); ++i) {
    savers.emplace_back([this, i, &failures] {
      const std::string content(10'000 + i, static_cast<char>('a' + i));
      for (int round = 0; round < 25; ++round) {
        if (!replaceFile(file_, content).ok()) ++failures[i];
      }
    });
  }
  for (std::thread& saver : savers) saver.join();
  EXPECT_EQ(failures, std::vector<int>(4, 0));
  const std::string content = readText(file_.string());
  ASSERT_GE(content.size(), 10'000U);
  EXPECT_EQ(content, std::string(content.size(), static_cast<char>('a' + content.size() - 10'000)));
  EXPECT_EQ(filesInFolder(), 1U);
}

// INCHWRIGHT_KILLS makes it longer.
TEST_F(AtomicFile, KillsLoseNothing) {
  const char* const more = std::getenv("INCHWRIGHT_KILLS");
  const int kills = more == nullptr ? 150 : std::atoi(more);
  ASSERT_GT(kills, 0);
  constexpr unsigned kSeed = 20261125;
  SCOPED_TRACE("seed " + std::to_string(kSeed));
  std::mt19937 random(kSeed);
  Result<Job> job = readDocument(frontPlateText());
  ASSERT_TRUE(job.ok());
  ASSERT_TRUE(saveDocument(*job, file_).ok());
  int moved = 0;
  std::string before = readText(file_.string());
  for (int kill = 0; kill < kills; ++kill) {
    const auto pause = std::chrono::microseconds(random() % 6'000);
    int saved[2];
    ASSERT_EQ(::pipe(saved), 0);
    const pid_t child = ::fork();
    ASSERT_GE(child, 0);
    if (child == 0) {
      for (int version = 0;; ++version) {
        job->notes = "kill " + std::to_string(kill) + ", version " + std::to_string(version);
        // A few sizes, so that a mixture of two versions would not be one of them.
        job->jobExtra = {{"padding", '"' + std::string(version % 7 * 20'000, '.') + '"'}};
        if (!saveDocument(*job, file_).ok()) ::_exit(1);
        if (version == 0 && ::write(saved[1], "s", 1) != 1) ::_exit(1);
      }
    }
    ::close(saved[1]);
    // Every second child is let save once first, however busy the machine is; the others are
    // killed whatever they have got to.
    char first = 0;
    if (kill % 2 == 1) {
      EXPECT_EQ(::read(saved[0], &first, 1), 1);
    }
    std::this_thread::sleep_for(pause);
    ASSERT_EQ(::kill(child, SIGKILL), 0);
    int status = 0;
    ASSERT_EQ(::waitpid(child, &status, 0), child);
    ::close(saved[0]);
    ASSERT_TRUE(WIFSIGNALED(status)) << "a save failed";
    const Result<Job> left = loadDocument(file_);
    ASSERT_TRUE(left.ok()) << left.error().place << ": " << left.error().text;
    ASSERT_EQ(left->parts, job->parts);
    const std::string text = readText(file_.string());
    ASSERT_EQ(writeDocument(*left), text);
    moved += text == before ? 0 : 1;
    before = text;
  }
  // Most children got as far as saving something.
  EXPECT_GT(moved, kills / 4);
  EXPECT_LE(filesInFolder(), 2U);
  ASSERT_TRUE(saveDocument(*job, file_).ok());
  EXPECT_EQ(filesInFolder(), 1U);
}

}  // namespace
}  // namespace inchwright
