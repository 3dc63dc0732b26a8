#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <random>
#include <set>
#include <string>

#include "core/document/document.h"
#include "tests/core/document/document_text.h"
#include "tests/support/scratch.h"

namespace inchwright {
namespace {

namespace fs = std::filesystem;

struct BrokenFile {
  const char* name;
  ErrorCode code;
  const char* place;
};

constexpr ErrorCode kBad = ErrorCode::badDocument;

/// Every file of tests/broken and the place where its fault lies.
const BrokenFile kBroken[] = {
    {"empty.inchwright", kBad, "line 1, column 1"},
    {"only_blanks.inchwright", kBad, "line 3, column 1"},
    {"only_mark.inchwright", kBad, "line 1, column 2"},
    {"cut_short.inchwright", kBad, "line 14, column 21"},
    {"trailing_comma.inchwright", kBad, "line 5, column 3"},
    {"comment.inchwright", kBad, "line 2, column 3"},
    {"single_quotes.inchwright", kBad, "line 1, column 2"},
    {"two_documents.inchwright", kBad, "line 2, column 1"},
    {"not_a_number.inchwright", kBad, "line 1, column 33"},
    {"latin1.inchwright", kBad, "line 1, column 38"},
    {"utf16.inchwright", kBad, "line 1, column 1"},
    {"half_surrogate.inchwright", kBad, "line 1, column 36"},
    {"raw_newline.inchwright", kBad, "line 1, column 38"},
    {"picture.inchwright", kBad, "line 1, column 1"},
    {"deep_lists.inchwright", ErrorCode::tooLarge, "line 1, column 91"},
    {"deep_objects.inchwright", ErrorCode::tooLarge, "line 1, column 406"},
    {"only_a_list.inchwright", kBad, ""},
    {"no_version.inchwright", kBad, ""},
    {"newer.inchwright", ErrorCode::newerFormat, "/inchwright"},
    {"no_parts.inchwright", kBad, ""},
    {"name_twice.inchwright", kBad, "/parts/0/quantity"},
    {"id_twice.inchwright", kBad, "/parts/0/features/1/id"},
    {"id_of_a_hole.inchwright", kBad, "/parts/0/features/1/id"},
    {"id_with_newline.inchwright", kBad, "/parts/0/features/0/id"},
    {"dangling_reading.inchwright", kBad, "/parts/0/readings/0/to"},
    {"dangling_zero.inchwright", kBad, "/parts/0/setups/0/zero/x/at"},
    {"dangling_understanding.inchwright", kBad, "/parts/0/understood/0/between/1"},
    {"wrong_unit.inchwright", kBad, "/job/unit"},
    {"figure_as_number.inchwright", kBad, "/parts/0/features/0/diameter"},
    {"figure_unreadable.inchwright", kBad, "/parts/0/readings/0/text"},
    {"figure_too_large.inchwright", kBad, "/parts/0/readings/0/text"},
    {"swapped_ends.inchwright", kBad, "/parts/0/readings/0/text"},
    {"edge_on_wrong_side.inchwright", kBad, "/parts/0/features/0/side"},
    {"row_both_ways.inchwright", kBad, "/parts/0/features/0/spaces"},
    {"ring_of_billions.inchwright", kBad, "/parts/0/features/0/holes"},
    {"zero_off_the_face.inchwright", kBad, "/parts/0/setups/0/zero/z"},
    {"turned_askew.inchwright", kBad, "/parts/0/setups/0/turn"},
};

TEST(BrokenFiles, AreRefusedWhereTheirFaultLies) {
  const fs::path folder(INCHWRIGHT_SOURCE_DIR "/tests/broken");
  std::set<std::string> known;
  for (const BrokenFile& row : kBroken) {
    SCOPED_TRACE(row.name);
    known.insert(row.name);
    const std::string before = readText((folder / row.name).string());
    const Result<Job> job = loadDocument(folder / row.name);
    ASSERT_FALSE(job.ok());
    EXPECT_EQ(job.error().code, row.code);
    EXPECT_EQ(job.error().place, row.place) << job.error().text;
    EXPECT_GT(job.error().text.size(), 10U);
    EXPECT_EQ(readText((folder / row.name).string()), before);
  }
  for (const auto& entry : fs::directory_iterator(folder)) {
    EXPECT_TRUE(known.contains(entry.path().filename().string())) << entry.path();
  }
}

TEST(HostileText, CutShortAtEveryByteIsRefused) {
  std::string text = frontPlateText();
  while (text.back() == '\n') text.pop_back();
  for (std::size_t length = 0; length < text.size(); ++length) {
    const Result<Job> job = readDocument(std::string_view(text).substr(0, length));
    ASSERT_FALSE(job.ok()) << length;
    ASSERT_TRUE(job.error().place.starts_with("line ")) << length << job.error().place;
  }
  EXPECT_TRUE(readDocument(text).ok());
}

TEST(HostileText, ChangedBytesAreReadOrRefusedButNeverMisread) {
  constexpr unsigned kSeed = 20261125;
  SCOPED_TRACE("seed " + std::to_string(kSeed));
  std::mt19937 random(kSeed);
  const std::string text = frontPlateText();
  int taken = 0;
  for (int round = 0; round < 20'000; ++round) {
    std::string changed = text;
    for (auto i = random() % 4 + 1; i > 0; --i) {
      changed[random() % changed.size()] = static_cast<char>(random() % 256);
    }
    const Result<Job> job = readDocument(changed);
    if (!job) {
      ASSERT_FALSE(job.error().text.empty());
      continue;
    }
    ++taken;
    const Result<Job> back = readDocument(writeDocument(*job));
    ASSERT_TRUE(back.ok()) << back.error().place << changed;
    ASSERT_EQ(*back, *job) << changed;
  }
  EXPECT_GT(taken, 100);
}

TEST(HostileText, SwappedTokensAreReadOrRefused) {
  constexpr unsigned kSeed = 20261126;
  SCOPED_TRACE("seed " + std::to_string(kSeed));
  std::mt19937 random(kSeed);
  const std::string text = frontPlateText();
  std::vector<std::pair<std::size_t, std::size_t>> tokens;
  for (std::size_t at = text.find('"'); at != std::string::npos; at = text.find('"', at)) {
    const std::size_t end = text.find('"', at + 1) + 1;
    tokens.emplace_back(at, end - at);
    at = end;
  }
  for (int round = 0; round < 5'000; ++round) {
    const auto [at, length] = tokens[random() % tokens.size()];
    const auto [from, size] = tokens[random() % tokens.size()];
    std::string changed = text;
    changed.replace(at, length, text, from, size);
    const Result<Job> job = readDocument(changed);
    if (!job) continue;
    const Result<Job> back = readDocument(writeDocument(*job));
    ASSERT_TRUE(back.ok()) << back.error().place << changed;
    ASSERT_EQ(*back, *job) << changed;
  }
}

class HostileFile : public testing::Test {
 protected:
  test::Scratch scratch_;
  const fs::path folder_ = scratch_.folder();
};

TEST_F(HostileFile, TwoHundredMegabytesAreRefusedUnread) {
  const fs::path file = folder_ / "large.inchwright";
  std::ofstream(file) << "{";
  fs::resize_file(file, 200u * 1024 * 1024);
  const Result<Job> job = loadDocument(file);
  ASSERT_FALSE(job.ok());
  EXPECT_EQ(job.error().code, ErrorCode::tooLarge);
  EXPECT_EQ(job.error().place, file.string());
  EXPECT_EQ(fs::file_size(file), 200u * 1024 * 1024);
}

TEST_F(HostileFile, WhatIsNoPlainFileIsRefused) {
  for (const fs::path& file : {folder_, folder_ / "missing", fs::path("/dev/zero"), fs::path()}) {
    const Result<Job> job = loadDocument(file);
    ASSERT_FALSE(job.ok()) << file;
    EXPECT_EQ(job.error().code, ErrorCode::fileTrouble);
    EXPECT_EQ(job.error().place, file.string());
  }
}

}  // namespace
}  // namespace inchwright
