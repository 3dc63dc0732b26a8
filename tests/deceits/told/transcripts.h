#pragma once

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "tests/app/words/spoken.h"
#include "tests/deceits/told/cases.h"

namespace inchwright::app {

using Texts = std::vector<std::string>;

class Transcripts : public testing::Test {
 protected:
  std::string file(const std::string& document) {
    return folder_.write("job.inchwright", document);
  }

  /// What is answered to a call about a document, without the name of the folder it lies in.
  std::string answerTo(const std::string& document, Texts call) {
    const std::string file = this->file(document);
    call.insert(call.begin() + 1, file);
    const Spoken spoken = say(call);
    std::string text = spoken.out + spoken.err;
    for (std::size_t at = text.find(file); at != std::string::npos; at = text.find(file)) {
      text.replace(at, file.size(), "job.inchwright");
    }
    return text + "= " + std::to_string(spoken.status) + "\n";
  }

  std::string transcript(const std::string& document, const std::vector<Texts>& calls) {
    std::string text;
    for (const Texts& call : calls) {
      text += "$";
      for (const std::string& word : call) text += " " + word;
      text += "\n" + answerTo(document, call);
    }
    return text;
  }

  void expectKept(const std::string& name, const std::string& text) {
    const std::string path = INCHWRIGHT_SOURCE_DIR "/tests/golden/told/" + name + ".txt";
    if (std::getenv("INCHWRIGHT_RENEW_GOLDEN") != nullptr) {
      std::ofstream(path, std::ios::binary) << text;
      return;
    }
    ASSERT_TRUE(std::filesystem::exists(path)) << path;
    const std::string kept = Scratch::read(path);
    std::istringstream was(kept), is(text);
    std::string oldLine, newLine;
    for (int line = 1; std::getline(was, oldLine); ++line) {
      std::getline(is, newLine);
      ASSERT_EQ(newLine, oldLine) << path << ":" << line;
    }
    EXPECT_EQ(text, kept);
  }

 private:
  Scratch folder_;
};

}  // namespace inchwright::app
