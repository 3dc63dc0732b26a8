#include "core/place/part_plane.h"

#include <algorithm>
#include <cmath>

#include "core/place/carriers.h"
#include "core/place/plane_rows.h"

namespace inchwright {
namespace {

// How much a row is trusted to place, the least first: what the print's shapes and words say, then
// fractions, then more places, then fewer; what is only assumed, and figures in brackets, last.
int trustOf(const Part& part, const Source& source) {
  constexpr int kSaid = 0, kFraction = 1, kDecimal = 2, kAssumed = 200, kReference = 300;
  if (source.kind == SourceKind::feature) return kSaid;
  if (source.kind == SourceKind::understanding) {
    return part.understood[source.index].stated ? kSaid : kAssumed;
  }
  const Reading& reading = part.readings[source.index];
  if (reading.kind == ReadingKind::angle) {
    if (reading.angle && reading.angle->reference) return kReference;
    return kDecimal + 100 - std::min(placesOfAngle(reading), 99);
  }
  if (reading.figure.reference) return kReference;
  if (reading.figure.lettering == Lettering::fraction) return kFraction;
  return kDecimal + 100 - std::clamp(reading.figure.places, 0, 99);
}

}  // namespace

PartPlane planeOf(const Part& part, const std::array<AxisSystem, 3>& systems,
                  const std::array<std::vector<Position>, 3>& positions, std::array<Axis, 2> axes,
                  const PartPlaneOptions& options) {
  Carriers carriers(part, systems, positions, axes, options.withChains);
  addRowsOf(carriers);
  PartPlane plane = carriers.take();
  std::stable_sort(plane.problem.rows.begin(), plane.problem.rows.end(),
                   [&](std::uint32_t a, std::uint32_t b) {
                     return trustOf(part, plane.sources[a]) < trustOf(part, plane.sources[b]);
                   });
  return plane;
}

}  // namespace inchwright
