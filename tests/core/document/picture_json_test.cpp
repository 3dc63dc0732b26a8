#include "core/document/picture_json.h"

#include <gtest/gtest.h>

#include <random>
#include <string>

#include "core/document/base64.h"
#include "core/document/document.h"

namespace inchwright {
namespace {

struct EncodedRow {
  const char* bytes;
  const char* text;
};

// RFC 4648, section 10.
constexpr EncodedRow kPublished[] = {{"", ""},
                                     {"f", "Zg=="},
                                     {"fo", "Zm8="},
                                     {"foo", "Zm9v"},
                                     {"foob", "Zm9vYg=="},
                                     {"fooba", "Zm9vYmE="},
                                     {"foobar", "Zm9vYmFy"}};

TEST(Base64, ThePublishedVectors) {
  for (const EncodedRow& row : kPublished) {
    std::string text;
    appendBase64(text, row.bytes);
    EXPECT_EQ(text, row.text);
    EXPECT_EQ(fromBase64(row.text), row.bytes);
  }
}

TEST(Base64, WhatIsNone) {
  for (const char* text : {"Z", "Zg", "Zg=", "Zm8",
                           "Zh==", "Zm9=", "Z===", "====", "Zg==Zg==", "Zm 9", "Zm9v\n", "Zm-_"}) {
    EXPECT_EQ(fromBase64(text), std::nullopt) << text;
  }
}

TEST(Base64, AnyBytesComeBack) {
  constexpr unsigned kSeed = 20;
  SCOPED_TRACE(kSeed);
  std::mt19937 random(kSeed);
  for (int i = 0; i < 300; ++i) {
    std::string bytes;
    for (auto n = random() % 100; n > 0; --n) bytes += static_cast<char>(random() % 256);
    std::string text;
    appendBase64(text, bytes);
    EXPECT_EQ(fromBase64(text), bytes);
  }
}

std::string documentWith(const std::string& pictures, const std::string& views = "[]") {
  return R"({"inchwright": 1, "parts": [{"name": "Plate", "views": )" + views +
         R"(}], "pictures": )" + pictures + "}";
}

TEST(PictureJson, ALinkedPictureWithItsPointsIsReadAndWritten) {
  const auto job = readDocument(documentWith(
      R"([{"name": "sheet", "file": "a.png", "page": 2, "later": [1],
           "points": [{"pixel": [12.5, 800], "inches": ["0", "0"]},
                      {"pixel": [1e3, 800.25], "inches": ["3 7/8", "12.7 mm"]}]}])",
      R"([{"face": "front", "picture": "sheet", "at": ["0.5", "-1"]}])"));
  ASSERT_TRUE(job.ok()) << job.error().text << " at " << job.error().place;
  const Picture* picture = job->picture("sheet");
  ASSERT_NE(picture, nullptr);
  EXPECT_EQ(picture->file, "a.png");
  EXPECT_EQ(picture->page, 2);
  ASSERT_EQ(picture->points.size(), 2u);
  EXPECT_EQ(picture->points[0].pixelX, 12.5);
  EXPECT_EQ(picture->points[1].pixelX, 1000);
  EXPECT_EQ(picture->points[1].x.value, Length::ticks(9'842'500'000));
  EXPECT_EQ(picture->points[1].y.value, Length::ticks(1'270'000'000));
  ASSERT_EQ(job->parts[0].views.size(), 1u);
  EXPECT_EQ(job->parts[0].views[0].face, Face::front);
  EXPECT_EQ(readDocument(writeDocument(*job)).value(), *job);
}

TEST(PictureJson, TurnsAndTheOrderOfSeveralUnderOneFaceAreKept) {
  const auto job = readDocument(documentWith(
      R"([{"name": "left", "file": "a.png", "turn": 270}, {"name": "right", "file": "b.png"}])",
      R"([{"face": "top", "picture": "right"}, {"face": "right", "picture": "left", "turn": 90},
          {"face": "top", "picture": "left"}])"));
  ASSERT_TRUE(job.ok()) << job.error().text;
  EXPECT_EQ(job->pictures[0].turn, 270);
  EXPECT_EQ(job->pictures[1].turn, 0);
  ASSERT_EQ(job->parts[0].views.size(), 3u);
  EXPECT_EQ(job->parts[0].views[0].picture, "right");
  EXPECT_EQ(job->parts[0].views[1].turn, 90);
  EXPECT_EQ(readDocument(writeDocument(*job)).value(), *job);
}

TEST(PictureJson, ToneIsKeptAndLeftOutWhereThereIsNone) {
  const auto job = readDocument(documentWith(
      R"([{"name": "sheet", "file": "a.png", "brightness": -20, "contrast": 35, "fade": 60}])"));
  ASSERT_TRUE(job.ok()) << job.error().text;
  EXPECT_EQ(job->pictures[0].tone, (PictureTone{-20, 35, 60}));
  EXPECT_EQ(readDocument(writeDocument(*job)).value(), *job);
  Job plain = *job;
  plain.pictures[0].tone = {};
  for (const char* key : {"brightness", "contrast", "fade"}) {
    EXPECT_EQ(writeDocument(plain).find(key), std::string::npos) << key;
  }
}

TEST(PictureJson, BytesAreKeptAndSharedByCopies) {
  const auto job = readDocument(documentWith(R"([{"name": "sheet", "data": "Zm9vYg=="}])"));
  ASSERT_TRUE(job.ok()) << job.error().text;
  EXPECT_EQ(job->pictures[0].data.get(), "foob");
  const Job copy = *job;
  EXPECT_EQ(&copy.pictures[0].data.get(), &job->pictures[0].data.get());
  EXPECT_NE(PictureBytes("foob"), PictureBytes("fooc"));
}

struct BadPictureRow {
  const char* pictures;
  const char* views;
  const char* place;
};

TEST(PictureJson, WhatIsRefusedAndWhere) {
  constexpr const char* kSheet = R"([{"name": "sheet", "file": "a.png"}])";
  const BadPictureRow rows[] = {
      {R"([{"file": "a.png"}])", "[]", "/pictures/0"},
      {R"([{"name": "", "file": "a.png"}])", "[]", "/pictures/0/name"},
      {R"([{"name": "a"}])", "[]", "/pictures/0"},
      {R"([{"name": "a", "file": "a.png", "data": "Zg=="}])", "[]", "/pictures/0"},
      {R"([{"name": "a", "data": "Zg"}])", "[]", "/pictures/0/data"},
      {R"([{"name": "a", "file": "b", "page": 0}])", "[]", "/pictures/0/page"},
      {R"([{"name": "a", "file": "b"}, {"name": "a", "file": "c"}])", "[]", "/pictures/1/name"},
      {R"([{"name": "a", "file": "b", "points": [{"pixel": [1], "inches": ["0", "0"]}]}])", "[]",
       "/pictures/0/points/0/pixel"},
      {R"([{"name": "a", "file": "b", "points": [{"pixel": [1, "2"], "inches": ["0", "0"]}]}])",
       "[]", "/pictures/0/points/0/pixel"},
      {R"([{"name": "a", "file": "b", "points": [{"pixel": [1, 1e999], "inches": ["0", "0"]}]}])",
       "[]", "/pictures/0/points/0/pixel"},
      {R"([{"name": "a", "file": "b", "points": [{"pixel": [1, 2], "inches": ["0", "x"]}]}])", "[]",
       "/pictures/0/points/0/inches"},
      {R"([{"name": "a", "file": "b", "points": [{"pixel": [1, 2], "inches": ["0"]}]}])", "[]",
       "/pictures/0/points/0/inches"},
      {R"([{"name": "a", "file": "b", "fade": 101}])", "[]", "/pictures/0"},
      {R"([{"name": "a", "file": "b", "fade": -1}])", "[]", "/pictures/0"},
      {R"([{"name": "a", "file": "b", "contrast": -101}])", "[]", "/pictures/0"},
      {R"([{"name": "a", "file": "b", "brightness": "much"}])", "[]", "/pictures/0/brightness"},
      {kSheet, R"([{"face": "top"}])", "/parts/0/views/0"},
      {kSheet, R"([{"face": "top", "picture": "other"}])", "/parts/0/views/0/picture"},
      {kSheet, R"([{"face": "lid", "picture": "sheet"}])", "/parts/0/views/0/face"},
      {kSheet, R"([{"face": "top", "picture": "sheet", "at": ["1"]}])", "/parts/0/views/0/at"},
      {kSheet, R"([{"face": "top", "picture": "sheet", "at": ["1/2", "0"]}])",
       "/parts/0/views/0/at"},
      {kSheet, R"([{"face": "top", "picture": "sheet", "turn": 45}])", "/parts/0/views/0/turn"},
      {kSheet, R"([{"face": "top", "picture": "sheet", "turn": 360}])", "/parts/0/views/0/turn"},
      {kSheet, R"([{"face": "top", "picture": "sheet", "turn": "90"}])", "/parts/0/views/0/turn"},
      {R"([{"name": "a", "file": "b", "turn": -90}])", "[]", "/pictures/0/turn"},
      {R"([{"name": "a", "file": "b", "turn": 90.5}])", "[]", "/pictures/0/turn"},
  };
  for (const BadPictureRow& row : rows) {
    SCOPED_TRACE(std::string(row.pictures) + " " + row.views);
    const auto job = readDocument(documentWith(row.pictures, row.views));
    ASSERT_FALSE(job.ok());
    EXPECT_EQ(job.error().code, ErrorCode::badDocument);
    EXPECT_EQ(job.error().place, row.place) << job.error().text;
  }
}

}  // namespace
}  // namespace inchwright
