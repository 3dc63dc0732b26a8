#pragma once

#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <limits>
#include <random>
#include <string>
#include <utility>
#include <vector>

namespace inchwright::test {

/// A print of holes along X as it is lettered, and beside it what each reading allows, in thou, by
/// what was lettered and not by what was read of it.
struct LetteredPrint {
  struct Limits {
    std::string id;  ///< empty for two holes in line
    std::uint32_t from = 0;
    std::uint32_t to = 0;
    std::int64_t low = 0;
    std::int64_t high = 0;
    bool toleranced = false;
  };

  std::string text;
  std::uint32_t holes = 0;
  std::vector<Limits> limits;  ///< what is in line, then the readings in order; no references

  static std::string nameOf(std::uint32_t hole) { return "H" + std::to_string(100 + hole); }
};

/// Writes one. Every reading allows the true positions, whichever way its limits are lettered: as
/// much either side, unequal, to one side only, as two limits, basic, or by the title block.
class LetteredPrintWriter {
 public:
  LetteredPrintWriter(std::mt19937_64& random, std::uint32_t holes) : random_(random) {
    print_.holes = holes;
    for (std::uint32_t i = 0; i < holes; ++i) {
      print_.text += "hole " + LetteredPrint::nameOf(i) + " 1/8\n";
      truth_.push_back(static_cast<std::int64_t>(100 * i + random_() % 90));
    }
    std::shuffle(truth_.begin(), truth_.end(), random_);
  }

  std::int64_t upTo(std::int64_t most) {
    return static_cast<std::int64_t>(random_() % static_cast<std::uint64_t>(most + 1));
  }

  void inLine(std::uint32_t a, std::uint32_t b) {
    truth_[b] = truth_[a];
    print_.text += "in_line x " + name(a) + " " + name(b) + "\n";
    print_.limits.push_back({"", a, b, 0, 0, false});
  }

  /// `off`: how far the lettering is from the truth.
  void read(std::uint32_t a, std::uint32_t b, std::int64_t off = 0) {
    if (truth_[a] > truth_[b]) std::swap(a, b);
    const std::int64_t length = truth_[b] - truth_[a] + off;
    if (length <= 0) return;
    const std::int64_t under = 1 + upTo(8);
    const std::int64_t over = 1 + upTo(8);
    switch (random_() % 8) {
      case 0:
        return letter(a, b, length, length, fixed(length) + " BSC", false);
      case 1:
        return letter(a, b, length - 5, length + 5, fixed(length), true);
      case 2:
        return letter(a, b, length - under, length, fixed(length) + " +.000 -" + fixed(under));
      case 3:
        return letter(a, b, length, length + over, fixed(length) + " +" + fixed(over) + " -.000");
      case 4:
        return letter(a, b, length - under, length + over,
                      fixed(length - under) + "/" + fixed(length + over));
      case 5:
        print_.text += "q" + std::to_string(print_.limits.size()) + " x " + name(a) + " " +
                       name(b) + " (" + fixed(length + 40) + ")\n";
        [[fallthrough]];
      case 6:
        return letter(a, b, length - over, length + over, fixed(length) + " ±" + fixed(over));
      default:
        return letter(a, b, length - under, length + over,
                      fixed(length) + " +" + fixed(over) + " -" + fixed(under));
    }
  }

  const LetteredPrint& print() const { return print_; }

 private:
  static std::string name(std::uint32_t hole) { return LetteredPrint::nameOf(hole); }

  static std::string fixed(std::int64_t thou) {
    char text[32];
    std::snprintf(text, sizeof text, "%d.%03d", static_cast<int>(thou / 1'000),
                  static_cast<int>(thou % 1'000));
    return text;
  }

  void letter(std::uint32_t a, std::uint32_t b, std::int64_t low, std::int64_t high,
              const std::string& text, bool toleranced = true) {
    const std::string id = "r" + std::to_string(100 + print_.limits.size());
    print_.text += id + " x " + name(a) + " " + name(b) + " " + text + "\n";
    print_.limits.push_back({id, a, b, low, high, toleranced});
  }

  std::mt19937_64& random_;
  LetteredPrint print_;
  std::vector<std::int64_t> truth_;
};

/// Two heaps of holes that nothing joins, each joined within itself with some readings more than it
/// needs; now and then holes in line.
inline LetteredPrintWriter letteredAtRandom(std::mt19937_64& random, std::uint32_t most) {
  const auto holes = static_cast<std::uint32_t>(2 + random() % (most - 1));
  LetteredPrintWriter writer(random, holes);
  const auto first = static_cast<std::uint32_t>(1 + random() % holes);
  const auto sameHeap = [&](std::uint32_t i) {
    return i < first ? static_cast<std::uint32_t>(random() % i)
                     : first + static_cast<std::uint32_t>(random() % (i - first));
  };
  std::vector<std::uint32_t> joined;
  for (std::uint32_t i = 1; i < holes; ++i) {
    if (i == first) continue;
    if (random() % 5 == 0) {
      writer.inLine(sameHeap(i), i);
    } else {
      joined.push_back(i);
    }
  }
  for (const std::uint32_t i : joined) {
    const std::uint32_t other = sameHeap(i);
    writer.read(other, i);
    if (random() % 2 == 0) writer.read(sameHeap(i), i);
    if (random() % 6 == 0) writer.read(other, i);
  }
  return writer;
}

}  // namespace inchwright::test
