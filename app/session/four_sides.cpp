#include "app/session/four_sides.h"

#include <algorithm>

#include "app/session/picture_edits.h"
#include "core/part/edit.h"

namespace inchwright::app {
namespace {

/// The figure said of a way, where it is still as long.
std::optional<Lettered> stillSaid(const std::optional<Lettered>& said, Length from, Length to) {
  const bool same = said && to.ticks() - from.ticks() == said->value.ticks();
  return same ? said : std::nullopt;
}

/// A corner said by its place tells the same, where the other side is the zero of what was said,
/// and a reading of the job would read its text so.
std::optional<Lettered> saidAtCorner(const std::vector<SquaringPoint>& points, Unit unit,
                                     Lettered SquaringPoint::*along, Length from, Length to) {
  if (from != Length()) return std::nullopt;
  for (const SquaringPoint& one : points) {
    auto figure = readLength((one.*along).text, {unit});
    if (figure.ok() && figure->value == to) return std::move(figure).value();
  }
  return std::nullopt;
}

/// Requires: both sides are traced.
void addOverall(Part& part, Side from, Side to, const std::optional<Lettered>& figure) {
  if (!figure) return;
  Reading reading;
  reading.id = nextReadingId(part);
  reading.axis = axisAcross(from);
  reading.from = edgeOf(part, from)->id;
  reading.to = edgeOf(part, to)->id;
  reading.figure = *figure;
  part.readings.push_back(std::move(reading));
}

}  // namespace

std::optional<FourSides> fourSides(const Hands& hands) {
  if (!hands.desk.hasPart() || !hands.drawnToScale()) return std::nullopt;
  const Face face = hands.desk.face();
  const PictureView* view = viewOf(hands.part(), face);
  const Picture* picture = pictureUnder(hands.desk.job(), hands.part(), face);
  const bool seenStraight = face == Face::top && view->at.empty() && view->turn == 0;
  const bool fresh = std::none_of(hands.part().features.begin(), hands.part().features.end(),
                                  [](const Feature& feature) { return feature.is<kind::Edge>(); });
  if (!seenStraight || !fresh || picture->points.size() != 4) return std::nullopt;
  std::vector<Length> across, up;
  for (const SquaringPoint& one : picture->points) {
    across.push_back(one.x.value);
    up.push_back(one.y.value);
  }
  for (auto* side : {&across, &up}) {
    std::sort(side->begin(), side->end());
    if ((*side)[0] != (*side)[1] || (*side)[2] != (*side)[3] || (*side)[1] == (*side)[2]) {
      return std::nullopt;
    }
  }
  FourSides sides{QRectF(QPointF(across[0].toInches(), up[0].toInches()),
                         QPointF(across[3].toInches(), up[3].toInches())),
                  {}};
  if (hands.squaredBy == picture->points) {
    const Unit unit = hands.desk.job().unit;
    sides.overall = {stillSaid(hands.overall[0], across[0], across[3]),
                     stillSaid(hands.overall[1], up[0], up[3])};
    if (!sides.overall[0]) {
      sides.overall[0] =
          saidAtCorner(picture->points, unit, &SquaringPoint::x, across[0], across[3]);
    }
    if (!sides.overall[1]) {
      sides.overall[1] = saidAtCorner(picture->points, unit, &SquaringPoint::y, up[0], up[3]);
    }
  }
  return sides;
}

bool traceFourSides(Hands& hands) {
  const auto sides = fourSides(hands);
  if (!sides) return false;
  Part next = hands.part();
  const std::pair<Side, double> all[] = {{Side::left, sides->box.left()},
                                         {Side::right, sides->box.right()},
                                         {Side::front, sides->box.top()},
                                         {Side::back, sides->box.bottom()}};
  for (const auto& [side, at] : all) next.features.push_back(edgeFor(next, side, at));
  addOverall(next, Side::left, Side::right, sides->overall[0]);
  addOverall(next, Side::front, Side::back, sides->overall[1]);
  return hands.apply(std::move(next), tr("Trace the four sides"));
}

std::array<Side, 4> sidesOf(Face face) {
  switch (face) {
    case Face::top:
    case Face::bottom:
      break;
    case Face::front:
    case Face::back:
      return {Side::left, Side::right, Side::bottom, Side::top};
    case Face::left:
    case Face::right:
      return {Side::front, Side::back, Side::bottom, Side::top};
  }
  return {Side::left, Side::right, Side::front, Side::back};
}

const Feature* edgeOf(const Part& part, Side side) {
  for (const Feature& feature : part.features) {
    if (feature.is<kind::Edge>() && sideOf(feature) == side) return &feature;
  }
  return nullptr;
}

Feature edgeFor(const Part& part, Side side, double at) {
  Feature edge;
  edge.shape = kind::Edge{axisAcross(side), side};
  edge.id = nextFeatureId(part, side);
  edge.traced = {tracedText(at)};
  return edge;
}

std::optional<Side> nextSide(const Part& part, Face face) {
  for (const Side side : sidesOf(face)) {
    if (edgeOf(part, side) == nullptr) return side;
  }
  return std::nullopt;
}

}  // namespace inchwright::app
