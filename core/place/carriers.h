#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string_view>
#include <vector>

#include "core/place/part_plane.h"

namespace inchwright {

/// A plane while it is put together: places, lines and circles of a part as quantities, made when
/// they are first asked for.
class Carriers {
 public:
  Carriers(const Part& part, const std::array<AxisSystem, 3>& systems,
           const std::array<std::vector<Position>, 3>& positions, std::array<Axis, 2> axes,
           bool withChains);

  const Part& part() const { return part_; }
  PlaneProblem& problem() { return plane_.problem; }

  /// Whether a feature lies in this plane's faces.
  bool isHere(const Feature& feature) const;
  const Feature* ownerOf(std::string_view place) const;
  /// +1, or −1 where the face of a place is seen from behind the plane.
  int handOf(const Feature& feature) const;
  /// The direction of the own X of the face a feature lies in, in radians.
  double ownXOf(const Feature& feature) const;
  bool isFirstAxis(Axis axis) const { return axis == plane_.axes[0]; }
  bool isSecondAxis(Axis axis) const { return axis == plane_.axes[1]; }

  // Each is empty where the id names nothing of the kind here.
  std::optional<std::uint32_t> point(const Id& id);
  std::optional<std::uint32_t> line(const Id& id);
  std::optional<PlacedCircle> circle(const Id& id);

  std::uint32_t constant(double value) { return problem().equations.addQuantity(value); }
  /// A figure in inches or radians, with its correction as a term.
  std::uint32_t figure(std::uint32_t reading, double value, double factor = 1);
  void add(const Row& row, std::vector<Row> others, Source source, double spareWithin);

  /// The point that has these very quantities.
  std::optional<std::uint32_t> pointAt(std::uint32_t x, std::uint32_t y) const;
  /// Ways of meaning a row, the one that the tracing is nearest to first. Requires: not empty.
  void nearestFirst(std::vector<Row>& rows);

  PartPlane take();

 private:
  struct Along {
    double constant = 0;
    std::vector<Term> terms;
  };
  Along along(std::size_t which, std::uint32_t node);
  std::uint32_t variable(VariableKind kind, double start, bool isTraced);
  std::uint32_t quantity(const Along& along);
  std::uint32_t correction(std::uint32_t reading);
  std::optional<std::uint32_t> radius(const Feature& feature, const Id& id);
  void fitTracing(std::size_t which);
  std::optional<double> tracedAt(std::size_t which, const Feature& feature) const;
  std::vector<PlanePoint> tracedLine(const Feature& feature) const;
  void startFromTraces();

  const Part& part_;
  const std::array<AxisSystem, 3>& systems_;
  const std::array<std::vector<Position>, 3>& positions_;
  bool withChains_;
  PartPlane plane_;
  std::map<std::string_view, const Feature*> features_;
  // position = (traced − shift) / scale; empty where nothing tells.
  std::array<std::optional<std::pair<double, double>>, 2> frame_;
};

}  // namespace inchwright
