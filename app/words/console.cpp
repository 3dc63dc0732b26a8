#include "app/words/console.h"

#include <algorithm>
#include <ostream>

#include "app/words/word.h"

namespace inchwright::app {

std::string toned(const Streams& streams, Tone tone, std::string_view text) {
  if (!streams.colour) return std::string(text);
  const char* const mark = tone == Tone::heading ? "\x1b[1m"
                           : tone == Tone::doubt ? "\x1b[31m"
                                                 : "\x1b[2m";
  return std::string(mark).append(text).append("\x1b[0m");
}

std::string oneLine(std::string_view text) {
  std::string line(text);
  std::replace_if(
      line.begin(), line.end(),
      [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; }, '?');
  return line;
}

int refuse(const Streams& streams, std::string_view word, const Error& error,
           std::string_view file) {
  std::string line = "inchwright";
  if (!word.empty()) line.append(" ").append(word);
  for (const std::string_view where : {file, std::string_view(error.place)}) {
    if (!where.empty()) line.append(": ").append(where);
  }
  if (error.at) line += ": at character " + std::to_string(*error.at + 1);
  line.append(": ").append(error.text);
  streams.err << oneLine(line) << '\n';
  return kUnusable;
}

std::size_t columnsOf(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0u) != 0x80u;
  }));
}

std::vector<std::string> alignedRows(const std::vector<std::vector<std::string>>& rows,
                                     const std::vector<Justify>& columns) {
  std::vector<std::size_t> width(columns.size(), 0);
  std::vector<bool> used(columns.size(), false);
  for (std::size_t r = 0; r < rows.size(); ++r) {
    for (std::size_t c = 0; c < columns.size(); ++c) {
      width[c] = std::max(width[c], columnsOf(rows[r][c]));
      if (r > 0 && !rows[r][c].empty()) used[c] = true;
    }
  }
  std::vector<std::string> lines;
  for (const std::vector<std::string>& row : rows) {
    std::string line;
    for (std::size_t c = 0; c < columns.size(); ++c) {
      if (!used[c]) continue;
      if (!line.empty()) line += "  ";
      const std::string blanks(width[c] - columnsOf(row[c]), ' ');
      line += columns[c] == Justify::right ? blanks + row[c] : row[c] + blanks;
    }
    line.erase(line.find_last_not_of(' ') + 1);
    lines.push_back(oneLine(line));
  }
  return lines;
}

}  // namespace inchwright::app
