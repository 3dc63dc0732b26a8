#include "core/place/plane_rows.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

namespace inchwright {
namespace {

constexpr double kPi = std::numbers::pi;
// What is understood without a figure may miss by as much as a fraction is rounded.
constexpr double kUnderstoodWithin = 1.0 / 128;

Row distanceRow(const PlacedPoint& a, const PlacedPoint& b, std::uint32_t value) {
  return {RowKind::distance, {a.x, a.y, b.x, b.y, 0, 0, value}};
}

// The sides of a line on which something may lie: both, but of an outer side only the inner one.
// First the one that the tracing shows.
std::vector<double> sidesOf(Carriers& carriers, const Id& carrier, const PlacedPoint& point,
                            const PlacedLine& line) {
  const Feature* feature = carriers.ownerOf(carrier);
  const auto* edge = feature != nullptr ? feature->as<kind::Edge>() : nullptr;
  if (edge != nullptr && edge->side) {
    // The left of an edge across the first axis, which runs up, is towards lower values.
    const bool isUp = carriers.isFirstAxis(edge->axis);
    return {1.0 * (isUp ? 1 : -1) * outward(*edge->side)};
  }
  const auto& problem = carriers.problem();
  const double t = problem.equations.valueOf(line.direction, problem.start);
  const double d = problem.equations.valueOf(line.offset, problem.start);
  const double x = point.traced ? point.traced->x : 0, y = point.traced ? point.traced->y : 0;
  const bool isLeft = std::cos(t) * y - std::sin(t) * x - d >= 0;
  return isLeft ? std::vector<double>{1, -1} : std::vector<double>{-1, 1};
}

void addSquareOff(Carriers& carriers, const Reading& reading, Source source) {
  const auto from = carriers.point(reading.from);
  const auto to = carriers.line(reading.to);
  if (!from || !to) return;
  const PlacedPoint point = carriers.problem().points[*from];
  const PlacedLine line = carriers.problem().lines[*to];
  const std::uint32_t value = carriers.figure(source.index, reading.figure.value.toInches());
  std::vector<Row> rows;
  for (const double side : sidesOf(carriers, reading.to, point, line)) {
    rows.push_back({RowKind::off, {point.x, point.y, line.direction, line.offset, 0, value}, side});
  }
  carriers.add(rows[0], {rows.begin() + 1, rows.end()}, source, agreesWithin(reading));
}

void addCentres(Carriers& carriers, const Reading& reading, Source source) {
  const auto from = carriers.point(reading.from), to = carriers.point(reading.to);
  if (!from || !to) return;
  const std::uint32_t value = carriers.figure(source.index, reading.figure.value.toInches());
  const auto& points = carriers.problem().points;
  carriers.add(distanceRow(points[*from], points[*to], value), {}, source, agreesWithin(reading));
}

// Of two places: a ray. `hand` turns over what is lettered on a face seen from behind.
void addAngleOfPlaces(Carriers& carriers, const Reading& reading, Source source) {
  const auto from = carriers.point(reading.from), to = carriers.point(reading.to);
  if (!from || !to) return;
  const PlacedPoint a = carriers.problem().points[*from], b = carriers.problem().points[*to];
  const double angle = reading.angle->value.toRadians();
  const Feature* owner = carriers.ownerOf(reading.from);
  const int hand = owner != nullptr ? carriers.handOf(*owner) : 1;
  const int swing = reading.sense == Sense::clockwise ? -1 : 1;
  const double within = agreesWithin(reading);
  if (reading.against.size() == 2) {
    const auto c = carriers.point(reading.against[0]), d = carriers.point(reading.against[1]);
    if (!c || !d) return;
    const PlacedPoint p = carriers.problem().points[*c], q = carriers.problem().points[*d];
    const std::uint32_t value = carriers.figure(source.index, hand * swing * angle, hand * swing);
    carriers.add({RowKind::turn, {a.x, a.y, b.x, b.y, p.x, p.y, q.x, q.y, value}}, {}, source,
                 within);
    return;
  }
  if (reading.against.empty()) {
    const double base = owner != nullptr ? carriers.ownXOf(*owner) : 0;
    const std::uint32_t value =
        carriers.figure(source.index, base + hand * swing * angle, hand * swing);
    carriers.add({RowKind::direction, {a.x, a.y, b.x, b.y, 0, value}}, {}, source, within);
    return;
  }
  const auto base = carriers.line(reading.against[0]);
  if (!base) return;
  const PlacedLine line = carriers.problem().lines[*base];
  std::vector<Row> rays;
  for (const bool reversed : {false, true}) {
    for (const int way : {1, -1}) {
      if (reading.sense && (way != swing || reversed != reading.reversed)) continue;
      const double turn = hand * way * angle + (reversed ? kPi : 0);
      Row row{RowKind::direction,
              {a.x, a.y, b.x, b.y, line.direction, carriers.figure(source.index, turn, hand * way)},
              1};
      row.signB = 1;  // the line's own direction is that upwards or, level, to the right
      rays.push_back(row);
    }
  }
  carriers.nearestFirst(rays);
  carriers.add(rays[0], {rays.begin() + 1, rays.end()}, source, within);
}

// Of a line against the way from one place to another: a ray, or the one half a turn on.
void addAngleToPlaces(Carriers& carriers, const Reading& reading, Source source,
                      const PlacedLine& line) {
  const auto c = carriers.point(reading.against[0]), d = carriers.point(reading.against[1]);
  if (!c || !d) return;
  const PlacedPoint p = carriers.problem().points[*c], q = carriers.problem().points[*d];
  const int turn = -carriers.handOf(*carriers.ownerOf(reading.from)) *
                   (reading.sense == Sense::clockwise ? -1 : 1);
  std::vector<Row> rays;
  for (const int halfTurns : {0, 1}) {
    const double back = turn * reading.angle->value.toRadians() + halfTurns * kPi;
    Row row{RowKind::direction,
            {p.x, p.y, q.x, q.y, line.direction, carriers.figure(source.index, back, turn)},
            1};
    rays.push_back(row);
  }
  carriers.nearestFirst(rays);
  carriers.add(rays[0], {rays[1]}, source, agreesWithin(reading));
}

// Of a line, which has no direction: the same half turn on.
void addAngleOfLine(Carriers& carriers, const Reading& reading, Source source) {
  const auto own = carriers.line(reading.from);
  const Feature* owner = carriers.ownerOf(reading.from);
  if (!own || owner == nullptr) return;
  const PlacedLine line = carriers.problem().lines[*own];
  const int hand = carriers.handOf(*owner);
  const int swing = reading.sense == Sense::clockwise ? -1 : 1;
  const double angle = reading.angle->value.toRadians();
  std::uint32_t base = 0;
  double from = carriers.ownXOf(*owner);
  std::vector<int> ways{swing};
  if (!reading.against.empty()) {
    if (reading.against.size() == 2) return addAngleToPlaces(carriers, reading, source, line);
    from = 0;
    const auto other = carriers.line(reading.against[0]);
    if (!other) return;
    base = carriers.problem().lines[*other].direction;
    if (!reading.sense) ways.push_back(-swing);
  }
  std::vector<Row> rows;
  for (const int way : ways) {
    for (const int halfTurns : {0, -1, 1}) {
      const std::uint32_t value =
          carriers.figure(source.index, from + hand * way * angle + halfTurns * kPi, hand * way);
      rows.push_back({RowKind::same, {line.direction, base, value}});
    }
  }
  carriers.nearestFirst(rows);
  carriers.add(rows[0], {rows.begin() + 1, rows.end()}, source, agreesWithin(reading));
}

void addReading(Carriers& carriers, std::uint32_t index) {
  const Reading& reading = carriers.part().readings[index];
  const Source source{SourceKind::reading, index};
  switch (reading.kind) {
    case ReadingKind::centres:
      return addCentres(carriers, reading, source);
    case ReadingKind::squareOff:
      return addSquareOff(carriers, reading, source);
    case ReadingKind::angle:
      if (!reading.angle) return;
      return reading.to.empty() ? addAngleOfLine(carriers, reading, source)
                                : addAngleOfPlaces(carriers, reading, source);
    default:
      return;
  }
}

void addTangent(Carriers& carriers, const Understanding& what, const Id& one, const Id& other,
                Source source) {
  const auto a = carriers.circle(one), b = carriers.circle(other);
  if (a && b) {
    const Row outside{RowKind::distance, {a->x, a->y, b->x, b->y, a->radius, b->radius, 0}, 1, 1};
    Row wider = outside, narrower = outside;
    wider.signB = -1;
    narrower.signA = -1;
    std::vector<Row> rows;
    if (what.touch != Touch::inside) rows.push_back(outside);
    if (what.touch != Touch::outside) rows.insert(rows.end(), {wider, narrower});
    carriers.nearestFirst(rows);
    carriers.add(rows[0], {rows.begin() + 1, rows.end()}, source, kUnderstoodWithin);
    return;
  }
  const auto line = carriers.line(a ? other : one);
  const auto& circle = a ? a : b;
  if (!circle || !line) return;
  const PlacedLine straight = carriers.problem().lines[*line];
  const Feature* owner = carriers.ownerOf(a ? one : other);
  // The centre of an arc may lie beyond an outer side: a hollow.
  const bool isArc = owner != nullptr && owner->is<kind::Arc>();
  PlacedPoint centre{circle->x, circle->y, {}};
  if (const auto known = carriers.pointAt(circle->x, circle->y)) {
    centre.traced = carriers.problem().points[*known].traced;
  }
  std::vector<double> sides = sidesOf(carriers, a ? other : one, centre, straight);
  if (isArc && sides.size() == 1) sides.push_back(-sides[0]);
  std::vector<Row> rows;
  for (const double side : sides) {
    Row row{RowKind::off,
            {circle->x, circle->y, straight.direction, straight.offset, circle->radius, 0}};
    row.signB = side;
    rows.push_back(row);
  }
  carriers.add(rows[0], {rows.begin() + 1, rows.end()}, source, kUnderstoodWithin);
}

void addOn(Carriers& carriers, const Id& place, const Id& carrier, Source source) {
  const auto found = carriers.point(place);
  if (!found) return;
  const PlacedPoint point = carriers.problem().points[*found];
  if (const auto line = carriers.line(carrier)) {
    // On an edge a place lies by the chains.
    if (carriers.ownerOf(carrier)->is<kind::Edge>()) return;
    const PlacedLine straight = carriers.problem().lines[*line];
    carriers.add({RowKind::off, {point.x, point.y, straight.direction, straight.offset, 0, 0}}, {},
                 source, kUnderstoodWithin);
  } else if (const auto circle = carriers.circle(carrier)) {
    Row row{RowKind::distance, {circle->x, circle->y, point.x, point.y, circle->radius, 0, 0}, 1};
    carriers.add(row, {}, source, kUnderstoodWithin);
  }
}

// Parallel, or square, to one of several half turns on.
void addParallel(Carriers& carriers, const Id& one, const Id& other, double apart, Source source) {
  const auto a = carriers.line(one), b = carriers.line(other);
  if (!a || !b) return;
  const PlacedLine first = carriers.problem().lines[*a], second = carriers.problem().lines[*b];
  std::vector<Row> rows;
  for (const double turn : {apart, apart - kPi, apart + kPi}) {
    rows.push_back({RowKind::same, {second.direction, first.direction, carriers.constant(turn)}});
  }
  carriers.nearestFirst(rows);
  carriers.add(rows[0], {rows.begin() + 1, rows.end()}, source, kUnderstoodWithin);
}

std::vector<PlacedPoint> pointsOf(Carriers& carriers, const std::vector<Id>& ids) {
  std::vector<PlacedPoint> points;
  for (const Id& id : ids) {
    const auto found = carriers.point(id);
    if (found) points.push_back(carriers.problem().points[*found]);
  }
  return points.size() == ids.size() ? points : std::vector<PlacedPoint>{};
}

// The two that are traced furthest apart hold the line; the others lie on it.
void addInLine(Carriers& carriers, const Understanding& what, Source source) {
  const std::vector<PlacedPoint> all = pointsOf(carriers, what.of);
  if (all.size() < 3) return;
  std::size_t first = 0, last = all.size() - 1;
  double apart = 0;
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (std::size_t j = i + 1; j < all.size(); ++j) {
      const auto &one = all[i].traced, &other = all[j].traced;
      if (!one || !other) continue;
      const double length = std::hypot(one->x - other->x, one->y - other->y);
      if (length <= apart) continue;
      apart = length;
      first = i;
      last = j;
    }
  }
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (i == first || i == last) continue;
    carriers.add({RowKind::inLine,
                  {all[first].x, all[first].y, all[i].x, all[i].y, all[last].x, all[last].y}},
                 {}, source, kUnderstoodWithin);
  }
}

void addEqual(Carriers& carriers, const Understanding& what, Source source) {
  if (what.by == EqualBy::radius) {
    for (std::size_t i = 1; i < what.of.size(); ++i) {
      const auto a = carriers.circle(what.of[i - 1]), b = carriers.circle(what.of[i]);
      if (a && b) {
        carriers.add({RowKind::same, {b->radius, a->radius, 0}}, {}, source, kUnderstoodWithin);
      }
    }
    return;
  }
  const std::vector<PlacedPoint> all = pointsOf(carriers, what.of);
  for (std::size_t i = 2; i < all.size(); ++i) {
    carriers.add({RowKind::spacing,
                  {all[i - 2].x, all[i - 2].y, all[i - 1].x, all[i - 1].y, all[i].x, all[i].y}},
                 {}, source, kUnderstoodWithin);
  }
}

void addMirrored(Carriers& carriers, const Understanding& what, Source source) {
  const std::vector<PlacedPoint> all = pointsOf(carriers, what.of);
  const Feature* about = carriers.ownerOf(what.about);
  if (all.size() < 2 || about == nullptr || !about->is<kind::Line>()) return;
  const auto found = carriers.line(what.about);
  if (!found) return;
  const PlacedLine line = carriers.problem().lines[*found];
  const PlacedPoint &a = all[0], &b = all[1];
  carriers.add({RowKind::halved, {a.x, a.y, b.x, b.y, line.direction, line.offset}}, {}, source,
               kUnderstoodWithin);
  carriers.add({RowKind::across, {a.x, a.y, b.x, b.y, line.direction}}, {}, source,
               kUnderstoodWithin);
}

// What tells one answer from another and makes no row.
void addChoice(Carriers& carriers, const Understanding& what) {
  const Feature* owner = what.of.empty() ? nullptr : carriers.ownerOf(what.of[0]);
  if (owner == nullptr || !carriers.isHere(*owner)) return;
  if (what.kind == UnderstandingKind::wayRound) {
    if (what.of.size() != 3 || !what.sense) return;
    const auto a = carriers.point(what.of[0]), b = carriers.point(what.of[1]),
               c = carriers.point(what.of[2]);
    if (!a || !b || !c) return;
    const int sense = *what.sense == Sense::anticlockwise ? 1 : -1;
    carriers.problem().turnsRound.push_back({{*a, *b, *c}, sense * carriers.handOf(*owner)});
    return;
  }
  const auto line = carriers.line(what.about);
  if (!line || !what.side) return;
  const bool isFirst = carriers.isFirstAxis(axisAcross(*what.side));
  if (!isFirst && !carriers.isSecondAxis(axisAcross(*what.side))) return;
  for (const Id& id : what.of) {
    const auto point = carriers.point(id);
    if (!point) continue;
    const double way = outward(*what.side);
    carriers.problem().liesBeside.push_back({*point, *line, isFirst ? way : 0, isFirst ? 0 : way});
  }
}

void addUnderstanding(Carriers& carriers, std::uint32_t index) {
  const Understanding& what = carriers.part().understood[index];
  const Source source{SourceKind::understanding, index};
  switch (what.kind) {
    case UnderstandingKind::tangent:
      return addTangent(carriers, what, what.of[0], what.of[1], source);
    case UnderstandingKind::parallel:
    case UnderstandingKind::square:
      for (std::size_t i = 1; i < what.of.size(); ++i) {
        addParallel(carriers, what.of[0], what.of[i],
                    what.kind == UnderstandingKind::square ? kPi / 2 : 0, source);
      }
      return;
    case UnderstandingKind::on:
      for (const Id& place : what.of) addOn(carriers, place, what.about, source);
      return;
    case UnderstandingKind::inLine:
      return what.axis ? void() : addInLine(carriers, what, source);
    case UnderstandingKind::equal:
      return what.axis ? void() : addEqual(carriers, what, source);
    case UnderstandingKind::symmetric:
      return what.axis ? void() : addMirrored(carriers, what, source);
    case UnderstandingKind::wayRound:
    case UnderstandingKind::beside:
      return addChoice(carriers, what);
    case UnderstandingKind::midway:
    case UnderstandingKind::concentric:
      return;  // exact, along each axis
  }
}

// By id, `r9` before `r10`: of readings of one trust the first ones decide and those to spare only
// check, which must not hang on how the document lists them.
std::vector<std::uint32_t> inOrderOfIds(const std::vector<Reading>& readings) {
  std::vector<std::uint32_t> order(readings.size());
  std::iota(order.begin(), order.end(), 0u);
  std::stable_sort(order.begin(), order.end(), [&](std::uint32_t a, std::uint32_t b) {
    const Id &one = readings[a].id, &other = readings[b].id;
    return one.size() != other.size() ? one.size() < other.size() : one < other;
  });
  return order;
}

}  // namespace

bool speaksOfPlanes(const Part& part) {
  const auto isCurve = [](const Feature& one) {
    return one.is<kind::Line>() || one.is<kind::Arc>();
  };
  const auto isInPlane = [](const Reading& one) {
    return one.kind == ReadingKind::centres || one.kind == ReadingKind::squareOff ||
           one.kind == ReadingKind::angle;
  };
  const auto isOfPlane = [](const Understanding& one) {
    switch (one.kind) {
      case UnderstandingKind::inLine:
      case UnderstandingKind::equal:
      case UnderstandingKind::symmetric:
        return !one.axis;
      case UnderstandingKind::midway:
      case UnderstandingKind::concentric:
        return false;
      default:
        return true;
    }
  };
  return std::any_of(part.features.begin(), part.features.end(), isCurve) ||
         std::any_of(part.readings.begin(), part.readings.end(), isInPlane) ||
         std::any_of(part.understood.begin(), part.understood.end(), isOfPlane);
}

void addRowsOf(Carriers& carriers) {
  const Part& part = carriers.part();
  for (std::uint32_t i = 0; i < part.features.size(); ++i) {
    const Feature& feature = part.features[i];
    if (!carriers.isHere(feature)) continue;
    const std::vector<Id>* through = nullptr;
    if (const auto* line = feature.as<kind::Line>()) through = &line->through;
    if (const auto* arc = feature.as<kind::Arc>()) through = &arc->through;
    if (through == nullptr) continue;
    for (const Id& place : *through) {
      addOn(carriers, place, feature.id, {SourceKind::feature, i});
    }
  }
  for (const std::uint32_t i : inOrderOfIds(part.readings)) addReading(carriers, i);
  for (std::uint32_t i = 0; i < part.understood.size(); ++i) addUnderstanding(carriers, i);
}

int placesOfAngle(const Reading& reading) {
  const std::string& text = reading.angle ? reading.angle->text : reading.figure.text;
  if (text.find('"') != std::string::npos || text.find("″") != std::string::npos) return 4;
  if (text.find('\'') != std::string::npos || text.find("′") != std::string::npos) return 2;
  const std::size_t point = text.find_first_of(".,");
  if (point == std::string::npos) return 0;
  std::size_t end = point + 1;
  while (end < text.size() && text[end] >= '0' && text[end] <= '9') ++end;
  return static_cast<int>(end - point - 1);
}

double agreesWithin(const Reading& reading) {
  // What comes out at the very edge is in: a hair for the doubles.
  constexpr double kHair = 1 + 1e-9;
  if (reading.kind == ReadingKind::angle) {
    const std::string& text = reading.angle ? reading.angle->text : reading.figure.text;
    const bool hasMinutes =
        text.find('\'') != std::string::npos || text.find("′") != std::string::npos;
    const int places = placesOfAngle(reading);
    double degrees = 0.25;
    if (hasMinutes) degrees = 0.5 / 60;
    if (places == 4 && hasMinutes) degrees = 0.5 / 3600;
    if (!hasMinutes && places > 0) degrees = 0.5 * std::pow(10.0, -places);
    // A half degree in decimals is still a half degree.
    if (!hasMinutes && places == 1 && text.find(".5") != std::string::npos) degrees = 0.25;
    return degrees * kPi / 180 * kHair;
  }
  if (reading.figure.lettering == Lettering::fraction) return kHair / 128;
  const double unit = reading.figure.unit == Unit::millimetre ? 1 / 25.4 : 1;
  return 0.5 * std::pow(10.0, -reading.figure.places) * unit * kHair;
}

}  // namespace inchwright
