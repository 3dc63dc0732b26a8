#include "core/shop/counterbores.h"

#include <optional>

#include "core/measure/lettered.h"
#include "core/shop/drills.h"

namespace inchwright {
namespace {

constexpr SeatOfScrew kSeats[] = {
    {SeatStandard::inchHead, "#0", "#51", "#49", "1/8"},
    {SeatStandard::inchHead, "#1", "#46", "#43", "5/32"},
    {SeatStandard::inchHead, "#2", "3/32", "#36", "3/16"},
    {SeatStandard::inchHead, "#3", "#36", "#31", "7/32"},
    {SeatStandard::inchHead, "#4", "1/8", "#29", "7/32"},
    {SeatStandard::inchHead, "#5", "9/64", "#23", "1/4"},
    {SeatStandard::inchHead, "#6", "#23", "#18", "9/32"},
    {SeatStandard::inchHead, "#8", "#15", "#10", "5/16"},
    {SeatStandard::inchHead, "#10", "#5", "#2", "3/8"},
    {SeatStandard::inchHead, "1/4", "17/64", "9/32", "7/16"},
    {SeatStandard::inchHead, "5/16", "21/64", "11/32", "17/32"},
    {SeatStandard::inchHead, "3/8", "25/64", "13/32", "5/8"},
    {SeatStandard::inchHead, "7/16", "29/64", "15/32", "23/32"},
    {SeatStandard::inchHead, "1/2", "33/64", "17/32", "13/16"},
    {SeatStandard::inchHead, "5/8", "41/64", "21/32", "1"},
    {SeatStandard::inchHead, "3/4", "49/64", "25/32", "1 3/16"},
    {SeatStandard::inchHead, "7/8", "57/64", "29/32", "1 3/8"},
    {SeatStandard::inchHead, "1", "1-1/64", "1-1/32", "1 5/8"},
    {SeatStandard::metricHead, "M1.6", "1.80 mm", "1.95 mm", "3.50 mm"},
    {SeatStandard::metricHead, "M2", "2.20 mm", "2.40 mm", "4.40 mm"},
    {SeatStandard::metricHead, "M2.5", "2.70 mm", "3.00 mm", "5.40 mm"},
    {SeatStandard::metricHead, "M3", "3.40 mm", "3.70 mm", "6.50 mm"},
    {SeatStandard::metricHead, "M4", "4.40 mm", "4.80 mm", "8.25 mm"},
    {SeatStandard::metricHead, "M5", "5.40 mm", "5.80 mm", "9.75 mm"},
    {SeatStandard::metricHead, "M6", "6.40 mm", "6.80 mm", "11.25 mm"},
    {SeatStandard::metricHead, "M8", "8.40 mm", "8.80 mm", "14.25 mm"},
    {SeatStandard::metricHead, "M10", "10.50 mm", "10.80 mm", "17.25 mm"},
    {SeatStandard::metricHead, "M12", "12.50 mm", "12.80 mm", "19.25 mm"},
    {SeatStandard::metricHead, "M14", "14.50 mm", "14.75 mm", "22.25 mm"},
    {SeatStandard::metricHead, "M16", "16.50 mm", "16.75 mm", "25.50 mm"},
    {SeatStandard::metricHead, "M20", "20.50 mm", "20.75 mm", "31.50 mm"},
    {SeatStandard::metricHead, "M24", "24.50 mm", "24.75 mm", "37.50 mm"},
    {SeatStandard::din974, "M3", "", "3.4 mm", "6.5 mm"},
    {SeatStandard::din974, "M4", "", "4.5 mm", "8 mm"},
    {SeatStandard::din974, "M5", "", "5.5 mm", "10 mm"},
    {SeatStandard::din974, "M6", "", "6.6 mm", "11 mm"},
    {SeatStandard::din974, "M8", "", "9 mm", "15 mm"},
    {SeatStandard::din974, "M10", "", "11 mm", "18 mm"},
    {SeatStandard::din974, "M12", "", "13.5 mm", "20 mm"},
    {SeatStandard::din974, "M14", "", "15.5 mm", "24 mm"},
    {SeatStandard::din974, "M16", "", "17.5 mm", "26 mm"},
    {SeatStandard::din974, "M20", "", "22 mm", "33 mm"},
};

std::optional<Length> holeOf(std::string_view drill) {
  if (drill.empty()) return std::nullopt;
  if (const Drill* const named = drillNamed(drill)) return named->diameter;
  const Result<Lettered> size = readLength(drill);
  return size ? std::optional(size->value) : std::nullopt;
}

}  // namespace

std::span<const SeatOfScrew> seatsOfScrews() {
  return kSeats;
}

std::vector<SeatOfScrew> seatsAboutHole(Length diameter) {
  std::vector<SeatOfScrew> found;
  for (const SeatOfScrew& one : kSeats) {
    if (holeOf(one.close) == diameter || holeOf(one.normal) == diameter) found.push_back(one);
  }
  return found;
}

}  // namespace inchwright
