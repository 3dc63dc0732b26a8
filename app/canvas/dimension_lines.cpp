#include "app/canvas/dimension_lines.h"

#include <algorithm>
#include <map>
#include <utility>

#include "app/session/picture_edits.h"
#include "core/part/plain_decimal.h"

namespace inchwright::app {
namespace {

Standing standingOf(const TracingEvidence& evidence, ReadingStatus status, const Reading& reading) {
  if (status == ReadingStatus::clashes) return Standing::clashes;
  if (!evidence.objection(reading).empty()) return Standing::doubtful;
  return status == ReadingStatus::alone ? Standing::alone : Standing::agrees;
}

std::optional<QPointF> placeOf(const Reading& reading, Face face) {
  if (reading.place.size() != 2) return std::nullopt;
  const auto x = plainDecimal(reading.place[0]), y = plainDecimal(reading.place[1]);
  if (!x || !y) return std::nullopt;
  return asViewed({*x, *y}, face);
}

/// Levels of one side, each a set of taken spans that do not overlap.
class Levels {
 public:
  int firstWithRoom(double from, double to) {
    // Where the same span was set before, what lies within has not become free.
    std::size_t& level = next_[{from, to}];
    while (level < taken_.size() && !hasRoom(taken_[level], from, to)) ++level;
    if (level == taken_.size()) taken_.emplace_back();
    taken_[level].emplace(from, to);
    return static_cast<int>(level++);
  }

 private:
  static bool hasRoom(const std::map<double, double>& spans, double from, double to) {
    auto next = spans.lower_bound(from);
    if (next != spans.end() && next->first < to) return false;
    return next == spans.begin() || std::prev(next)->second <= from;
  }

  std::vector<std::map<double, double>> taken_;
  std::map<std::pair<double, double>, std::size_t> next_;  ///< the first level to try
};

}  // namespace

std::vector<DimensionLine> dimensionLines(const Part& part, const Solution& solution,
                                          const DrawnFace& drawn, const TracingEvidence& evidence,
                                          double textWidthPerCharacter) {
  std::vector<DimensionLine> lines;
  const auto axes = axesIn(drawn.face);
  for (std::size_t i = 0; i < part.readings.size(); ++i) {
    const Reading& reading = part.readings[i];
    if (reading.kind != ReadingKind::along) continue;
    if (reading.axis != axes[0] && reading.axis != axes[1]) continue;
    const DrawnPlace* from = drawn.find(reading.from);
    const DrawnPlace* to = drawn.find(reading.to);
    if (from == nullptr || to == nullptr) continue;
    DimensionLine line;
    line.reading = reading.id;
    line.text = QString::fromStdString(reading.figure.text);
    line.alongViewX = reading.axis == axes[0];
    line.fromAt = from->at;
    line.toAt = to->at;
    line.from = line.alongViewX ? from->at.x() : from->at.y();
    line.to = line.alongViewX ? to->at.x() : to->at.y();
    if (line.from > line.to) {
      std::swap(line.from, line.to);
      std::swap(line.fromAt, line.toAt);
    }
    line.standing = standingOf(
        evidence, i < solution.status.size() ? solution.status[i] : ReadingStatus::unused, reading);
    line.place = placeOf(reading, drawn.face);
    lines.push_back(std::move(line));
  }
  std::stable_sort(lines.begin(), lines.end(), [](const DimensionLine& a, const DimensionLine& b) {
    return a.to - a.from < b.to - b.from;
  });
  Levels below, beside;
  for (DimensionLine& line : lines) {
    if (line.place) continue;
    const double lettering = textWidthPerCharacter * static_cast<double>(line.text.size() + 2);
    const double room = std::max(line.to - line.from, lettering);
    const double middle = (line.from + line.to) / 2;
    // Chained lines share an end: a hair less, so that they can stand on one level.
    const double half = room / 2 * (1 - 1e-6);
    line.level = (line.alongViewX ? below : beside).firstWithRoom(middle - half, middle + half);
  }
  return lines;
}

}  // namespace inchwright::app
