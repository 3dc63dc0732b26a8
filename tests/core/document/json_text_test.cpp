#include "core/document/json_text.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <random>
#include <string>

#include "core/document/document.h"
#include "core/document/json_string.h"
#include "tests/core/document/document_text.h"

namespace inchwright {
namespace {

std::string oneLineOf(std::string_view text) {
  const Result<JsonText> parsed = JsonText::parse(text);
  EXPECT_TRUE(parsed.ok()) << text << ": " << parsed.error().text;
  return parsed.ok() ? parsed->root().oneLine() : "";
}

TEST(JsonText, KeepsNumbersToTheLetter) {
  for (const char* number :
       {"0", "-0", "1.10", "1e400", "1E+5", "-0.0e-0", "123456789012345678901234567890",
        "0.1000000000000000055511151231257827"}) {
    EXPECT_EQ(oneLineOf(number), number);
    EXPECT_EQ(oneLineOf("[" + std::string(number) + "]"), "[" + std::string(number) + "]");
  }
}

TEST(JsonText, WritesOnOneLine) {
  const std::pair<const char*, const char*> rows[] = {
      {" null ", "null"},
      {"true", "true"},
      {"\tfalse\r\n", "false"},
      {"[]", "[]"},
      {"{}", "{}"},
      {"[ ]", "[]"},
      {"[1,2 ,3]", "[1, 2, 3]"},
      {"{\"a\":1,\"b\":[{}]}", "{\"a\": 1, \"b\": [{}]}"},
      {"\"\\u0041\\u00e9\\u20ac\\ud83d\\ude00\"", "\"Aé€😀\""},
      {"\"\\ud800\\udc00\\udbff\\udfff\"", "\"\xF0\x90\x80\x80\xF4\x8F\xBF\xBF\""},
      {"\"\\u007f\\u0080\\u07ff\\u0800\"", "\"\x7F\xC2\x80\xDF\xBF\xE0\xA0\x80\""},
      {"\"\\\"\\\\\\/\\b\\f\\n\\r\\t\\u0000\\u001f\"",
       "\"\\\"\\\\/\\b\\f\\n\\r\\t\\u0000\\u001f\""},
      {"{\"\\u0061\": 1}", "{\"a\": 1}"},
      {"\xEF\xBB\xBF[1]", "[1]"},
  };
  for (const auto& [text, expected] : rows) EXPECT_EQ(oneLineOf(text), expected) << text;
}

TEST(JsonText, GivesMembersAndItemsInOrder) {
  const std::string text = R"({"z": [1, [2, 3], "x"], "a": {"b": {}}, "": null})";
  const Result<JsonText> parsed = JsonText::parse(text);
  ASSERT_TRUE(parsed.ok());
  const auto members = parsed->root().members();
  ASSERT_EQ(members.size(), 3U);
  EXPECT_EQ(members[0].name, "z");
  EXPECT_EQ(members[1].name, "a");
  EXPECT_EQ(members[2].name, "");
  const auto items = members[0].value.items();
  ASSERT_EQ(items.size(), 3U);
  EXPECT_EQ(items[1].raw(), "[2, 3]");
  EXPECT_EQ(items[2].string(), "x");
  EXPECT_EQ(members[2].value.kind(), JsonKind::null);
}

struct BadJson {
  std::string text;
  const char* place;
};

TEST(JsonText, RefusesWithLineAndColumn) {
  const BadJson rows[] = {
      {"", "line 1, column 1"},
      {"   ", "line 1, column 4"},
      {"\xEF\xBB\xBF", "line 1, column 2"},
      {"{", "line 1, column 2"},
      {"[", "line 1, column 2"},
      {"[1", "line 1, column 3"},
      {"[1,", "line 1, column 4"},
      {"[1,]", "line 1, column 4"},
      {"[,1]", "line 1, column 2"},
      {"[1 2]", "line 1, column 4"},
      {"[1}", "line 1, column 3"},
      {"{]", "line 1, column 2"},
      {"{\"a\"}", "line 1, column 5"},
      {"{\"a\":}", "line 1, column 6"},
      {"{\"a\":1,}", "line 1, column 8"},
      {"{\"a\":1 \"b\":2}", "line 1, column 8"},
      {"{a:1}", "line 1, column 2"},
      {"{1:1}", "line 1, column 2"},
      {"{'a':1}", "line 1, column 2"},
      {"{}\n{}", "line 2, column 1"},
      {"[1]]", "line 1, column 4"},
      {"// a\n1", "line 1, column 1"},
      {"[1] x", "line 1, column 5"},
      {"nul", "line 1, column 1"},
      {"True", "line 1, column 1"},
      {"NaN", "line 1, column 1"},
      {"[Infinity]", "line 1, column 2"},
      {"-Infinity", "line 1, column 1"},
      {"-", "line 1, column 1"},
      {"+1", "line 1, column 1"},
      {".5", "line 1, column 1"},
      {"5.", "line 1, column 2"},
      {"[01]", "line 1, column 2"},
      {"1e", "line 1, column 3"},
      {"1e+", "line 1, column 4"},
      {"0x10", "line 1, column 2"},
      {"\"", "line 1, column 1"},
      {"[\"abc", "line 1, column 2"},
      {"\"a\nb\"", "line 1, column 3"},
      {std::string("\"a\0b\"", 5), "line 1, column 3"},
      {"\"\\x\"", "line 1, column 2"},
      {"\"\\", "line 1, column 2"},
      {"\"\\u12\"", "line 1, column 2"},
      {"\"\\u12g4\"", "line 1, column 2"},
      {"\"\\u+123\"", "line 1, column 2"},
      {"\"\\ud800\"", "line 1, column 2"},
      {"\"\\udc00\"", "line 1, column 2"},
      {"\"\\ud800\\u0041\"", "line 1, column 2"},
      {"\"é\xE9\"", "line 1, column 3"},
      {"\"\xC0\x80\"", "line 1, column 2"},
      {"\"\xED\xA0\x80\"", "line 1, column 2"},
      {"\"\xF4\x90\x80\x80\"", "line 1, column 2"},
      {"\"\xE2\x82", "line 1, column 2"},
      {"[\n  1,\n  é\n]", "line 3, column 3"},
      {std::string("\0", 1), "line 1, column 1"},
  };
  for (const BadJson& row : rows) {
    SCOPED_TRACE(row.text);
    const Result<JsonText> parsed = JsonText::parse(row.text);
    ASSERT_FALSE(parsed.ok());
    EXPECT_EQ(parsed.error().code, ErrorCode::badDocument);
    EXPECT_EQ(parsed.error().place, row.place);
    EXPECT_TRUE(parsed.error().at.has_value());
    EXPECT_FALSE(parsed.error().text.empty());
  }
}

TEST(JsonText, RefusesNamesThatAreThereTwice) {
  const std::pair<std::string, const char*> rows[] = {
      {R"({"a": 1, "a": 2})", "/a"},
      {R"({"a": 1, "\u0061": 2})", "/a"},
      {R"([0, [], {"b": {"x/y~": 1, "x/y~": 1}}])", "/2/b/x~1y~0"},
      {R"({"p": [{"q": 1}, {"q": 1, "r": [{}, {"q": 1, "q": 2}]}]})", "/p/1/r/1/q"},
  };
  for (const auto& [text, place] : rows) {
    const Result<JsonText> parsed = JsonText::parse(text);
    ASSERT_FALSE(parsed.ok()) << text;
    EXPECT_EQ(parsed.error().place, place);
  }
  std::string many = "{";
  for (int i = 0; i < 100; ++i) many += "\"k" + std::to_string(i) + "\": 1, ";
  EXPECT_TRUE(JsonText::parse(many + "\"last\": 1}").ok());
  EXPECT_EQ(JsonText::parse(many + "\"k42\": 1}").error().place, "/k42");
}

TEST(JsonText, RefusesWhatIsTooDeepWithoutCrashing) {
  const auto nested = [](int levels) {
    return std::string(static_cast<std::size_t>(levels), '[') +
           std::string(static_cast<std::size_t>(levels), ']');
  };
  EXPECT_EQ(oneLineOf(nested(kDeepestDocument)), nested(kDeepestDocument));
  for (int levels : {kDeepestDocument + 1, 100, 1'000'000}) {
    const Result<JsonText> parsed = JsonText::parse(nested(levels));
    ASSERT_FALSE(parsed.ok());
    EXPECT_EQ(parsed.error().code, ErrorCode::tooLarge);
    EXPECT_EQ(parsed.error().place, "line 1, column 65");
  }
}

TEST(JsonText, RefusesMoreValuesThanItHolds) {
  std::string text = "[0";
  for (int i = 0; i < 10'000'000; ++i) text += ",0";
  const Result<JsonText> parsed = JsonText::parse(text + "]");
  ASSERT_FALSE(parsed.ok());
  EXPECT_EQ(parsed.error().code, ErrorCode::tooLarge);
}

// A JSON library of its own making and ours must agree on what is JSON: on the sample document with
// one to three bytes changed, thousands of times.
TEST(JsonText, AgreesWithAnotherReader) {
  constexpr unsigned kSeed = 20261125;
  SCOPED_TRACE("seed " + std::to_string(kSeed));
  std::mt19937 random(kSeed);
  const std::string text = R"({"a": [1, -2.5e+3, "x\u00e9\n", {"b": null}], "c": {"d": true}, )"
                           R"("é": "\ud83d\ude00", "f": [[], {}, 0.1, "\\", false]})";
  const std::string alphabet = "{}[]\",:\\u0123456789eE+-. \n\ttfn\x01\x7f\xC3\xA9\xED\xF4\xFF";
  int accepted = 0;
  for (int round = 0; round < 60'000; ++round) {
    std::string changed = text;
    for (auto i = random() % 3 + 1; i > 0; --i) {
      const std::size_t at = random() % changed.size();
      const char byte = alphabet[random() % alphabet.size()];
      switch (random() % 3) {
        case 0:
          changed[at] = byte;
          break;
        case 1:
          changed.insert(changed.begin() + static_cast<std::ptrdiff_t>(at), byte);
          break;
        default:
          changed.erase(at, 1);
      }
    }
    const Result<JsonText> parsed = JsonText::parse(changed);
    const bool twice = !parsed.ok() && parsed.error().place.starts_with('/');
    if (twice) continue;
    const auto other = nlohmann::ordered_json::parse(changed, nullptr, false);
    ASSERT_EQ(parsed.ok(), !other.is_discarded()) << changed;
    if (!parsed.ok()) continue;
    ++accepted;
    ASSERT_EQ(nlohmann::ordered_json::parse(parsed->root().oneLine()), other) << changed;
  }
  EXPECT_GT(accepted, 3'000);
}

TEST(JsonString, ReplacesWhatIsNoUtf8) {
  std::string out;
  appendQuoted(out,
               "a\xFF"
               "b\xC3");
  EXPECT_EQ(out,
            "\"a\xEF\xBF\xBD"
            "b\xEF\xBF\xBD\"");
}

TEST(JsonString, KnowsTheLengthOfACharacter) {
  const std::pair<std::string, std::size_t> rows[] = {
      {"a", 1},
      {"\xC2\x80", 2},
      {"\xDF\xBF", 2},
      {"\xE0\xA0\x80", 3},
      {"\xEF\xBF\xBF", 3},
      {"\xF0\x90\x80\x80", 4},
      {"\xF4\x8F\xBF\xBF", 4},
      {"\x80", 0},
      {"\xC1\xBF", 0},
      {"\xE0\x9F\xBF", 0},
      {"\xED\xBF\xBF", 0},
      {"\xF0\x8F\xBF\xBF", 0},
      {"\xF4\x90\x80\x80", 0},
      {"\xF5\x80\x80\x80", 0},
      {"\xE2\x82", 0},
      {"\xC3", 0},
  };
  for (const auto& [text, length] : rows) EXPECT_EQ(utf8LengthAt(text, 0), length) << text;
}

}  // namespace
}  // namespace inchwright
