#include "app/canvas/whereabouts.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "app/session/desk.h"
#include "app/session/picture_edits.h"

namespace inchwright::app {
namespace {

/// What is looked up again and again about one place.
struct Sought {
  const Part& part;
  const Solution& solution;
  const DrawnFace& drawn;
  const DrawnPlace& place;
  std::array<Axis, 2> axes;

  QPointF inView(double first, double second) const {
    return asViewed({first, second}, drawn.face);
  }

  bool isPlaced(const Id& id, Axis axis) const {
    const Position* at = solution.position(id, axis);
    return at != nullptr && at->group == 0;
  }

  double inches(const Id& id, Axis axis) const {
    return solution.position(id, axis)->ticks.toDouble() /
           static_cast<double>(Length::kTicksPerInch);
  }

  /// A place that is drawn and placed along an axis, to draw others from: it keeps what is drawn
  /// over a picture on the picture.
  const DrawnPlace* from(Axis axis) const {
    const bool first = axis == axes[0];
    for (const DrawnPlace& one : drawn.places) {
      const bool along = !one.across || *one.across == axis;
      if (along && !one.parked && !one.isAxis && isPlaced(one.id, axis) &&
          (!one.across || one.alongViewX == first)) {
        return &one;
      }
    }
    return nullptr;
  }

  /// Where a coordinate of the part is drawn along one axis of the view.
  std::optional<double> drawnAt(double inches, Axis axis) const {
    const DrawnPlace* base = from(axis);
    if (base == nullptr) return std::nullopt;
    const double off = inches - this->inches(base->id, axis);
    return axis == axes[0] ? base->at.x() + inView(off, 0).x() : base->at.y() + inView(0, off).y();
  }

  /// Where the outer side at the lower end lies, 0 where there is none: answers count from there.
  double lowEnd(Axis axis) const {
    for (const Feature& feature : part.features) {
      const auto* edge = feature.as<kind::Edge>();
      if (edge != nullptr && edge->axis == axis && edge->side && outward(*edge->side) < 0 &&
          isPlaced(feature.id, axis)) {
        return inches(feature.id, axis);
      }
    }
    return 0;
  }
};

void addSpots(const Sought& sought, Whereabouts& out) {
  const auto& all = sought.solution.beyond.answers;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const SeveralAnswers& one = all[i];
    if (one.place != sought.place.id || one.axes != sought.axes || one.answers.size() < 2) continue;
    for (const auto& answer : one.answers) {
      const auto x = sought.drawnAt(sought.lowEnd(one.axes[0]) + answer[0].toInches(), one.axes[0]);
      const auto y = sought.drawnAt(sought.lowEnd(one.axes[1]) + answer[1].toInches(), one.axes[1]);
      if (!x || !y) return;
      out.spots.emplace_back(*x, *y);
    }
    out.radius = sought.place.radius;
    out.answers = i;
    return;
  }
}

/// The direction lettered by an angle, as its face is seen; empty for one from another line.
std::optional<QPointF> directionOf(const Reading& angle) {
  if (!angle.against.empty() || !angle.angle) return std::nullopt;
  const double turn = angle.angle->value.toRadians();
  const bool clockwise = angle.sense == Sense::clockwise;
  return QPointF(std::cos(turn), clockwise ? -std::sin(turn) : std::sin(turn));
}

/// What each centre distance and angle from a placed place leaves: a ring, a straight way.
void addFromPlaced(const Sought& sought, Whereabouts& out) {
  for (const Reading& one : sought.part.readings) {
    const bool isFrom = one.from == sought.place.id;
    if (!isFrom && one.to != sought.place.id) continue;
    const DrawnPlace* about = sought.drawn.find(isFrom ? one.to : one.from);
    if (about == nullptr || about->parked || about->across ||
        !sought.isPlaced(about->id, sought.axes[0]) ||
        !sought.isPlaced(about->id, sought.axes[1])) {
      continue;
    }
    if (one.kind == ReadingKind::centres) {
      out.rings.push_back({about->at, one.figure.value.toInches()});
    } else if (one.kind == ReadingKind::angle) {
      if (const auto way = directionOf(one)) {
        out.ways.emplace_back(about->at, about->at + *way);
      }
    }
  }
}

/// How far along each axis the place lies from another that moves with it; empty where it does not.
std::optional<QPointF> offsetFrom(const Sought& sought, const Id& other) {
  double off[2] = {0, 0};
  for (std::size_t i = 0; i < 2; ++i) {
    const Position* here = sought.solution.position(sought.place.id, sought.axes[i]);
    const Position* there = sought.solution.position(other, sought.axes[i]);
    if (here == nullptr || there == nullptr || here->group != there->group) return std::nullopt;
    off[i] = sought.inches(sought.place.id, sought.axes[i]) - sought.inches(other, sought.axes[i]);
  }
  return sought.inView(off[0], off[1]);
}

/// What is chained from a place that is half held is held as that is, so far from it.
void addFromThoseItHangsOn(const Sought& sought, Whereabouts& out) {
  for (const DrawnPlace& other : sought.drawn.places) {
    if (other.across || other.isAxis || other.id == sought.place.id) continue;
    const auto off = offsetFrom(sought, other.id);
    if (!off) continue;
    const Sought theirs{sought.part, sought.solution, sought.drawn, other, sought.axes};
    addSpots(theirs, out);
    if (out.isEmpty()) addFromPlaced(theirs, out);
    if (out.isEmpty()) continue;
    for (QLineF& way : out.ways) way.translate(*off);
    for (Whereabouts::Ring& ring : out.rings) ring.middle += *off;
    for (QPointF& spot : out.spots) spot += *off;
    out.radius = sought.place.radius;
    return;
  }
}

bool isLoose(const Sought& sought) {
  return !sought.isPlaced(sought.place.id, sought.axes[0]) ||
         !sought.isPlaced(sought.place.id, sought.axes[1]);
}

void addAlongAxis(const Sought& sought, Whereabouts& out) {
  const bool first = sought.isPlaced(sought.place.id, sought.axes[0]);
  const bool second = sought.isPlaced(sought.place.id, sought.axes[1]);
  if (first == second) return;
  const Axis known = sought.axes[first ? 0 : 1];
  const auto at = sought.drawnAt(sought.inches(sought.place.id, known), known);
  if (!at) return;
  out.ways.push_back(first ? QLineF(*at, 0, *at, 1) : QLineF(0, *at, 1, *at));
}

qreal spotRadius(const Whereabouts& all, const PrintMap& map) {
  constexpr qreal kLeast = 9;  // pixels: it can be hit
  return std::max(all.radius * map.scale(), kLeast);
}

}  // namespace

std::vector<BrokenMark> brokenMarks(const Whereabouts& all, const PrintMap& map,
                                    const QRectF& pane) {
  std::vector<BrokenMark> marks;
  for (const QLineF& way : all.ways) {
    const QLineF line(map.toWidget(way.p1()), map.toWidget(way.p2()));
    const qreal reach = pane.width() + pane.height() + QLineF(line.p1(), pane.center()).length();
    const QPointF along = (line.p2() - line.p1()) * (reach / line.length());
    QPainterPath path(line.p1() - along);
    path.lineTo(line.p1() + along);
    marks.push_back({path});
  }
  for (const Whereabouts::Ring& ring : all.rings) {
    QPainterPath path;
    path.addEllipse(map.toWidget(ring.middle), ring.radius * map.scale(),
                    ring.radius * map.scale());
    marks.push_back({path});
  }
  for (std::size_t i = 0; i < all.spots.size(); ++i) {
    const qreal radius = spotRadius(all, map);
    const QPointF at = map.toWidget(all.spots[i]);
    QPainterPath path;
    path.addEllipse(at, radius, radius);
    marks.push_back({path, QStringLiteral("%1 ?").arg(i + 1), at + QPointF(radius + 3, -radius)});
  }
  return marks;
}

std::optional<std::size_t> spotAt(const Whereabouts& all, QPointF at, const PrintMap& map) {
  for (std::size_t i = 0; i < all.spots.size(); ++i) {
    if (QLineF(map.toWidget(all.spots[i]), at).length() <= spotRadius(all, map)) return i;
  }
  return std::nullopt;
}

Whereabouts whereaboutsOf(const Desk& desk, const DrawnFace& drawn) {
  Whereabouts out;
  const Selection& chosen = desk.selection();
  if (!desk.hasPart() || chosen.places.size() != 1) return out;
  const DrawnPlace* place = drawn.find(chosen.places[0]);
  if (place == nullptr) return out;
  const Sought sought{desk.part(), desk.solution(), drawn, *place, axesIn(drawn.face)};
  addSpots(sought, out);
  if (!out.isEmpty() || place->across || !isLoose(sought)) return out;
  addFromPlaced(sought, out);
  addAlongAxis(sought, out);
  if (out.isEmpty()) addFromThoseItHangsOn(sought, out);
  return out;
}

}  // namespace inchwright::app
