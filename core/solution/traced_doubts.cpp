#include <algorithm>
#include <cmath>

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

/// A reading along an axis between two traced features of one view.
struct Drawn {
  std::uint32_t reading = 0;
  double inches = 0;  ///< from the one end to the other, as drawn
};

Face viewOf(const Feature& feature) {
  return feature.is(FeatureKind::edge) ? Face::top : feature.face;
}

std::vector<Drawn> drawnAlong(const Part& part, const AxisNetwork& network) {
  std::vector<std::optional<double>> traced(network.places.size());
  for (std::size_t i = 0; i < traced.size(); ++i) {
    const Feature& owner = part.features[network.owners[i]];
    if (network.places[i] == owner.id) traced[i] = tracedAlong(owner, network.axis);
  }
  const auto view = [&](std::uint32_t node) { return viewOf(part.features[network.owners[node]]); };
  std::vector<Drawn> all;
  for (const AxisLink& link : network.links) {
    if (link.source.kind != SourceKind::reading || !traced[link.from] || !traced[link.to]) continue;
    if (view(link.from) != view(link.to)) continue;
    all.push_back({link.source.index, *traced[link.to] - *traced[link.from]});
  }
  return all;
}

bool agrees(const Reading& reading, double drawn) {
  const double lettered = reading.figure.value.toInches();
  return std::abs(drawn - lettered) <= kTracingError + kStretch * lettered;
}

}  // namespace

void addTracedDoubts(const Part& part, const std::array<AxisSystem, 3>& systems,
                     const Solution& solution, std::vector<Doubt>& doubts) {
  for (const AxisSystem& system : systems) {
    const std::vector<Drawn> all = drawnAlong(part, system.network());
    const auto agreeing =
        static_cast<std::size_t>(std::count_if(all.begin(), all.end(), [&](const Drawn& one) {
          return agrees(part.readings[one.reading], one.inches);
        }));
    const bool toScale = agreeing >= 2 && 2 * agreeing > all.size();
    for (const Drawn& one : all) {
      const Reading& reading = part.readings[one.reading];
      if (solution.status[one.reading] != ReadingStatus::alone) continue;
      if (agrees(reading, one.inches)) continue;
      const bool isTurned = one.inches < -kTurned && reading.figure.value.ticks() > 0;
      if (!isTurned && !toScale) continue;
      Doubt doubt{{isTurned ? DoubtTopic::swappedEnds : DoubtTopic::offTrace,
                   {},
                   reading.axis,
                   {reading.id}}};
      doubt.source = Source{SourceKind::reading, one.reading};
      doubt.nearby = {reading.from, reading.to};
      doubt.drawn =
          Length::ticks(std::llround(std::abs(one.inches) * 64) * (Length::kTicksPerInch / 64));
      doubt.about = reading.figure.text + ", " + writePlain(*doubt.drawn, Unit::inch);
      doubts.push_back(std::move(doubt));
    }
  }
}

}  // namespace inchwright
