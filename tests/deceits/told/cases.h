#pragma once

#include <gtest/gtest.h>

#include <fstream>
#include <set>
#include <string>
#include <vector>

#include "tests/app/words/spoken.h"
#include "tests/deceits/told/changed.h"

namespace inchwright::app {

/// Sound document | what is changed in it | what is asked | what must be said.
struct Deceit {
  std::string line;
  std::string document;  ///< `-`: none is opened
  std::string changes;
  std::vector<std::string> asked;
  std::string said;
};

// Words between blanks, or in double quotes.
inline std::vector<std::string> wordsIn(const std::string& text) {
  std::vector<std::string> words(1);
  bool quoted = false, open = false;
  for (const char c : text) {
    if (c == '"') {
      quoted = !quoted;
      open = true;
    } else if (c != ' ' || quoted) {
      words.back() += c;
      open = true;
    } else if (open) {
      words.emplace_back();
      open = false;
    }
  }
  return words;
}

/// The lines of a table with so many cells each; blank ones and those with # say nothing.
inline std::vector<Deceit> linesOfTable(const std::string& name, std::size_t cells) {
  std::vector<Deceit> all;
  std::ifstream in(INCHWRIGHT_SOURCE_DIR "/tests/deceits/told/" + name);
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] == '#') continue;
    const std::vector<std::string> found = test::split(line, " | ");
    if (found.size() != cells) {
      ADD_FAILURE() << "not " << cells << " cells: " << line;
      continue;
    }
    all.push_back({line, found[0], found[1], wordsIn(found[2]), cells > 3 ? found[3] : ""});
  }
  return all;
}

inline std::vector<Deceit> allDeceits() {
  return linesOfTable("cases.txt", 4);
}

/// The sound documents of a table, in order.
inline std::vector<std::string> documentsNamedIn(const std::string& table, std::size_t cells) {
  std::set<std::string> names;
  for (const Deceit& one : linesOfTable(table, cells)) {
    if (one.document != "-") names.insert(one.document);
  }
  return {names.begin(), names.end()};
}

inline test::Json soundDocument(const std::string& name) {
  const std::string own = INCHWRIGHT_SOURCE_DIR "/tests/deceits/told/" + name + ".inchwright";
  return test::Json::parse(Scratch::read(std::ifstream(own).good() ? own : sample(name)));
}

/// The document of a deceit with what is changed in it; empty where none is opened.
inline std::string changedDocument(const Deceit& one) {
  if (one.document == "-") return "";
  test::Changed changed(soundDocument(one.document));
  if (one.changes != "-") {
    for (const std::string& change : test::split(one.changes, " ; ")) changed.change(change);
  }
  return changed.text();
}

}  // namespace inchwright::app
