#include "core/shop/drills.h"

#include <algorithm>
#include <array>
#include <cctype>

#include "core/base/ascii.h"
#include "core/shop/sizes.h"

namespace inchwright {
namespace {

// Ten-thousandths of an inch, #1 to #80 (ASME B94.11M).
constexpr std::array<int, 80> kNumber{
    2280, 2210, 2130, 2090, 2055, 2040, 2010, 1990, 1960, 1935, 1910, 1890, 1850, 1820, 1800, 1770,
    1730, 1695, 1660, 1610, 1590, 1570, 1540, 1520, 1495, 1470, 1440, 1405, 1360, 1285, 1200, 1160,
    1130, 1110, 1100, 1065, 1040, 1015, 995,  980,  960,  935,  890,  860,  820,  810,  785,  760,
    730,  700,  670,  635,  595,  550,  520,  465,  430,  420,  410,  400,  390,  380,  370,  360,
    350,  330,  320,  310,  292,  280,  260,  250,  240,  225,  210,  200,  180,  160,  145,  135,
};

// Ten-thousandths of an inch, A to Z (ASME B94.11M).
constexpr std::array<int, 26> kLetter{
    2340, 2380, 2420, 2460, 2500, 2570, 2610, 2660, 2720, 2770, 2810, 2900, 2950,
    3020, 3160, 3230, 3320, 3390, 3480, 3580, 3680, 3770, 3860, 3970, 4040, 4130,
};

constexpr int kFractions = 64;  // 1/64 to 1 in

// Tenths of a millimetre (BS 328): by 0.1 from 0.5 to 10, then by 0.5 to 13.
constexpr int kMetricFirst = 5, kMetricCoarse = 100, kMetricCoarseStep = 5, kMetricLast = 130;

std::string fractionName(int sixtyFourthsCount) {
  int over = sixtyFourthsCount, under = 64;
  while (over % 2 == 0 && under > 1) {
    over /= 2;
    under /= 2;
  }
  if (under == 1) return std::to_string(over);
  return std::to_string(over) + "/" + std::to_string(under);
}

std::string metricName(int tenths) {
  std::string name = std::to_string(tenths / 10);
  if (tenths % 10 != 0) name += "." + std::to_string(tenths % 10);
  return name + " mm";
}

std::vector<Drill> buildDrills() {
  std::vector<Drill> all;
  for (int n = 1; n <= kFractions; ++n) {
    all.push_back({fractionName(n), sixtyFourths(n), DrillSeries::fraction});
  }
  for (std::size_t i = 0; i < kNumber.size(); ++i) {
    all.push_back({"#" + std::to_string(i + 1), tenThousandths(kNumber[i]), DrillSeries::number});
  }
  for (std::size_t i = 0; i < kLetter.size(); ++i) {
    all.push_back({std::string(1, static_cast<char>('A' + i)), tenThousandths(kLetter[i]),
                   DrillSeries::letter});
  }
  for (int t = kMetricFirst; t <= kMetricLast; t += t < kMetricCoarse ? 1 : kMetricCoarseStep) {
    all.push_back({metricName(t), microns(t * 100), DrillSeries::metric});
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Drill& a, const Drill& b) { return a.diameter < b.diameter; });
  return all;
}

// Spaces fall away and letters become capitals, so `5.1 mm` is `5.1mm` and `f` is `F`; but `1 1/32`
// is no 11/32.
std::string plainName(std::string_view name) {
  std::string plain;
  bool spaced = false;
  for (const char c : name) {
    if (c == ' ') {
      spaced = true;
      continue;
    }
    if (spaced && isDigit(c) && !plain.empty() && isDigit(plain.back())) plain += ' ';
    spaced = false;
    plain += static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  }
  return plain;
}

}  // namespace

bool DrillSets::has(DrillSeries series) const {
  switch (series) {
    case DrillSeries::fraction:
      return fraction;
    case DrillSeries::number:
      return number;
    case DrillSeries::letter:
      return letter;
    case DrillSeries::metric:
      break;
  }
  return metric;
}

DrillSets DrillSets::customaryFor(Unit unit) {
  const bool inch = unit == Unit::inch;
  return {inch, inch, inch, !inch};
}

const std::vector<Drill>& drills() {
  static const std::vector<Drill> all = buildDrills();
  return all;
}

std::string_view sourceOf(DrillSeries series) {
  switch (series) {
    case DrillSeries::fraction:
      return "n/64 in, computed";
    case DrillSeries::number:
    case DrillSeries::letter:
      return "ASME B94.11M twist drill sizes; full list compared with two partial public lists";
    case DrillSeries::metric:
      break;
  }
  return "BS 328 series, as listed in an encyclopaedia article on drill sizes";
}

const Drill* drillAtOrBelow(Length diameter, const DrillSets& sets) {
  const Drill* best = nullptr;
  for (const Drill& drill : drills()) {
    if (drill.diameter > diameter) break;
    if (!sets.has(drill.series)) continue;
    if (!best || drill.diameter > best->diameter) best = &drill;
  }
  return best;
}

const Drill* drillOfSize(Length diameter, const DrillSets& sets) {
  const Drill* drill = drillAtOrBelow(diameter, sets);
  return drill && drill->diameter == diameter ? drill : nullptr;
}

const Drill* drillNamed(std::string_view name) {
  const std::string wanted = plainName(name);
  for (const Drill& drill : drills()) {
    if (plainName(drill.name) == wanted) return &drill;
  }
  return nullptr;
}

}  // namespace inchwright
