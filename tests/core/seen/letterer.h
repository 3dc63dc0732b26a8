#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "tests/core/seen/drawn.h"

namespace inchwright::seen {

/// A pen that letters: capitals of plain strokes, 24 pixels high; `q` is a stacked 1/4.
class Letterer : public Pen {
 public:
  using Pen::Pen;

  void text(const std::string& text, double x, double y) {
    for (const char c : text) {
      if (c == 'q') {
        letter('1', x, y - 8, 1.1);
        letter('4', x, y + 18, 1.1);
        line(x - 2, y + 14, x + 15, y + 14, 3);
        x += 18;
      } else {
        if (c != ' ') letter(c, x, y, 1.5);
        x += c == ' ' ? 6 : c == 'I' || c == '1' ? 18 : 21;
      }
    }
  }

 private:
  using Line = std::vector<std::pair<double, double>>;

  void letter(char c, double x, double y, double size) {
    static const std::map<char, std::vector<Line>> kLetters{
        {'D', {{{0, 0}, {0, 16}, {5, 16}, {8, 14}, {10, 11}, {10, 5}, {8, 2}, {5, 0}, {0, 0}}}},
        {'R',
         {{{0, 16}, {0, 0}, {6, 0}, {9, 1}, {10, 4}, {9, 7}, {6, 8}, {0, 8}}, {{5, 8}, {10, 16}}}},
        {'I', {{{5, 0}, {5, 16}}}},
        {'1', {{{5, 0}, {5, 16}}}},
        {'L', {{{0, 0}, {0, 16}, {9, 16}}}},
        {'E', {{{9, 0}, {0, 0}, {0, 16}, {9, 16}}, {{0, 8}, {7, 8}}}},
        {'A', {{{0, 16}, {5, 0}, {10, 16}}, {{2, 11}, {8, 11}}}},
        {'M', {{{0, 16}, {0, 0}, {5, 10}, {10, 0}, {10, 16}}}},
        {'N', {{{0, 16}, {0, 0}, {10, 16}, {10, 0}}}},
        {'T', {{{0, 0}, {10, 0}}, {{5, 0}, {5, 16}}}},
        {'H', {{{0, 0}, {0, 16}}, {{10, 0}, {10, 16}}, {{0, 8}, {10, 8}}}},
        {'O',
         {{{5, 0},
           {2, 1},
           {0, 5},
           {0, 11},
           {2, 15},
           {5, 16},
           {8, 15},
           {10, 11},
           {10, 5},
           {8, 1},
           {5, 0}}}},
        {'S',
         {{{9, 2},
           {7, 0},
           {3, 0},
           {1, 2},
           {1, 5},
           {3, 7},
           {7, 9},
           {9, 11},
           {9, 14},
           {7, 16},
           {3, 16},
           {1, 14}}}},
        {'4', {{{7, 16}, {7, 0}, {0, 11}, {10, 11}}}},
        {'P', {{{0, 16}, {0, 0}, {6, 0}, {9, 1}, {10, 4}, {9, 7}, {6, 8}, {0, 8}}}},
        {'C',
         {{{9, 3}, {7, 1}, {5, 0}, {2, 1}, {0, 5}, {0, 11}, {2, 15}, {5, 16}, {7, 15}, {9, 13}}}},
    };
    for (const Line& one : kLetters.at(c)) {
      for (std::size_t i = 0; i + 1 < one.size(); ++i)
        line(x + one[i].first * size, y + one[i].second * size, x + one[i + 1].first * size,
             y + one[i + 1].second * size, 3);
    }
  }
};

}  // namespace inchwright::seen
