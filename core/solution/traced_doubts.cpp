#include <algorithm>
#include <cmath>
#include <unordered_map>

#include "core/measure/writing.h"
#include "core/solution/doubts.h"

namespace inchwright {
namespace {

/// A traced place is good to about 1/64 in; three deviations of the difference of two.
constexpr double kTracingError = 3 * 1.4142 / 64;
/// A copy is stretched by a little, once squared up.
constexpr double kStretch = 0.02;
/// From here on two traced places lie the other way round.
constexpr double kTurned = 0.06;

class TracedLengths {
 public:
  explicit TracedLengths(const Part& part) {
    for (const Feature& feature : part.features) {
      if (!feature.traced.empty()) features_.emplace(feature.id, &feature);
    }
  }

  /// From the one end to the other in inches as drawn; empty when one of them is not traced or the
  /// two stand in different views.
  std::optional<double> of(const Reading& reading) const {
    const auto from = features_.find(reading.from);
    const auto to = features_.find(reading.to);
    if (from == features_.end() || to == features_.end()) return std::nullopt;
    const auto view = [](const Feature& one) {
      return one.is(FeatureKind::edge) ? Face::top : one.face;
    };
    const auto start = tracedAlong(*from->second, reading.axis);
    const auto end = tracedAlong(*to->second, reading.axis);
    if (!start || !end || view(*from->second) != view(*to->second)) return std::nullopt;
    return *end - *start;
  }

 private:
  std::unordered_map<std::string_view, const Feature*> features_;
};

bool agrees(const Reading& reading, double drawn) {
  const double lettered = reading.figure.value.toInches();
  return std::abs(drawn - lettered) <= kTracingError + kStretch * lettered;
}

}  // namespace

void addTracedDoubts(const Part& part, const Solution& solution, std::vector<Doubt>& doubts) {
  const TracedLengths traced(part);
  std::array<int, 3> agreeing{}, all{};
  for (const Reading& reading : part.readings) {
    const auto drawn = reading.kind == ReadingKind::along ? traced.of(reading) : std::nullopt;
    if (!drawn) continue;
    ++all[static_cast<std::size_t>(reading.axis)];
    agreeing[static_cast<std::size_t>(reading.axis)] += agrees(reading, *drawn) ? 1 : 0;
  }
  for (std::uint32_t i = 0; i < part.readings.size(); ++i) {
    const Reading& reading = part.readings[i];
    const auto status = solution.status.find(reading.id);
    if (status == solution.status.end() || status->second != ReadingStatus::alone) continue;
    const auto drawn = traced.of(reading);
    if (!drawn || agrees(reading, *drawn)) continue;
    const auto axis = static_cast<std::size_t>(reading.axis);
    const bool isTurned = *drawn < -kTurned && reading.figure.value.ticks() > 0;
    const bool toScale = agreeing[axis] >= 2 && 2 * agreeing[axis] > all[axis];
    if (!isTurned && !toScale) continue;
    Doubt doubt{{isTurned ? DoubtTopic::swappedEnds : DoubtTopic::offTrace,
                 {},
                 reading.axis,
                 {reading.id}}};
    doubt.source = Source{SourceKind::reading, i};
    doubt.nearby = {reading.from, reading.to};
    doubt.drawn = Length::ticks(std::llround(std::abs(*drawn) * 64) * (Length::kTicksPerInch / 64));
    doubt.about = reading.figure.text + ", " + writePlain(*doubt.drawn, Unit::inch);
    doubts.push_back(std::move(doubt));
  }
}

}  // namespace inchwright
