#include "app/session/offer_walk.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "app/session/picture_edits.h"
#include "core/part/edit.h"

namespace inchwright::app {
namespace {

using seen::FeatureOffer;
using seen::OfferedFeature;
using seen::OfferedReading;
using seen::ReadingOffer;

constexpr double kNear = 0.045;       // inches: a dimension's end and what it ends at
constexpr double kAside = 0.005;      // of the distance aside, by which the nearer of two is told
constexpr double kLessLikely = 0.02;  // inches, by which what is not certain counts as farther off

/// What has two ends is traced from the first.
PlanePoint tracedAt(const FeatureOffer& offer) {
  const bool ends = offer.kind == OfferedFeature::row || offer.kind == OfferedFeature::line;
  return ends ? offer.from : offer.at;
}

/// Whether it lies between sides, which are traced before it.
bool isBetweenSides(const FeatureOffer& offer) {
  return offer.kind == OfferedFeature::round || offer.kind == OfferedFeature::line ||
         offer.kind == OfferedFeature::arc;
}

/// The middle of one of a row's holes, the first from its lower end.
PlanePoint holeOf(const FeatureOffer& row, int number) {
  const double t = double(number) / (row.count - 1);
  return {row.from.x + (row.to.x - row.from.x) * t, row.from.y + (row.to.y - row.from.y) * t};
}

}  // namespace

OfferWalk::OfferWalk(const Hands& hands)
    : hands_(hands), offering_(*hands.offering), axes_(axesIn(hands.desk.face())) {
  const seen::Offered& all = offering_.offered;
  const std::size_t features = all.offers().features.size();
  for (std::size_t i = 0; i < features; ++i) {
    open_.push_back(all.isOpen(i) && !isTraced(feature(i)));
  }
  std::set<std::size_t> wanted;  // by a dimension that ends there
  for (std::size_t i = features; i < all.count(); ++i) {
    const ReadingOffer& offer = all.readingAt(i);
    if (!all.isOpen(i) || isRead(offer)) continue;
    const auto [from, to] = endsOf(offer);
    bool waits = false;
    for (const auto& end : {from.feature, to.feature}) {
      if (!end) continue;
      wanted.insert(*end);
      waits = waits || !comesAlong(*end);
    }
    if (!waits) turns_.push_back({kReadings, i});
  }
  for (std::size_t i = 0; i < features; ++i) {
    const bool needed = wanted.count(i) > 0;
    if (!open_[i] || (needed && comesAlong(i))) continue;
    turns_.push_back({rankOf(i, needed), i});
  }
  std::sort(turns_.begin(), turns_.end());
  for (const Turn& turn : turns_) waiting_.push_back(turn.one);
}

OfferWalk::Rank OfferWalk::rankOf(std::size_t one, bool needed) const {
  const OfferedFeature kind = feature(one).kind;
  if (isBetweenSides(feature(one))) return kLast;
  const bool several = kind == OfferedFeature::row || kind == OfferedFeature::ring;
  return several || needed || isCertain(one) ? kBefore : kLast;
}

std::optional<std::size_t> OfferWalk::after(std::size_t one) const {
  if (turns_.empty()) return std::nullopt;
  const auto here =
      std::find_if(turns_.begin(), turns_.end(), [&](const Turn& turn) { return turn.one == one; });
  // What was just settled has no turn any more; it was a reading, or came before them.
  const auto next =
      here != turns_.end()
          ? here + 1
          : std::upper_bound(turns_.begin(), turns_.end(),
                             Turn{isFeature(one) ? rankOf(one, false) : kReadings, one});
  return next == turns_.end() ? turns_.front().one : next->one;
}

/// An edge or a hole whose name is all that is to be said of it.
bool OfferWalk::comesAlong(std::size_t one) const {
  const FeatureOffer& offer = feature(one);
  const bool plain = offer.kind == OfferedFeature::edge ||
                     (offer.kind == OfferedFeature::hole && offer.size.empty());
  return plain && isCertain(one);
}

bool OfferWalk::near(const Feature& one, Axis axis, double at) const {
  const auto traced = tracedAlong(one, axis);
  return traced && std::abs(*traced - at) <= kNear + hands_.squaringError;
}

bool OfferWalk::isTraced(const FeatureOffer& offer) const {
  const auto& all = hands_.part().features;
  if (offer.kind == OfferedFeature::hole && isOfTraced(offer)) return true;
  if (offer.kind == OfferedFeature::row) {
    // Its holes may have been taken one by one.
    return std::any_of(all.begin(), all.end(), [&](const Feature& one) {
      if (one.is<kind::Row>()) return isTracedRow(one, offer);
      for (int i = 0; i < offer.count && one.is<kind::Hole>(); ++i) {
        const PlanePoint at = holeOf(offer, i);
        if (near(one, axes_[0], at.x) && near(one, axes_[1], at.y)) return true;
      }
      return false;
    });
  }
  return std::any_of(all.begin(), all.end(), [&](const Feature& one) {
    if (one.kind() != kindOf(offer.kind)) return false;
    if (offer.kind == OfferedFeature::edge) {
      return near(one, axes_[offer.alongX ? 0 : 1], offer.alongX ? offer.at.x : offer.at.y);
    }
    const PlanePoint at = tracedAt(offer);
    return one.face == hands_.desk.face() && near(one, axes_[0], at.x) && near(one, axes_[1], at.y);
  });
}

/// Whether a row that is traced begins where one is offered.
bool OfferWalk::isTracedRow(const Feature& one, const FeatureOffer& row) const {
  return one.is<kind::Row>() && one.face == hands_.desk.face() &&
         inchwright::axisOf(one) == axes_[row.alongX ? 0 : 1] && near(one, axes_[0], row.from.x) &&
         near(one, axes_[1], row.from.y);
}

/// A ring or row that is traced brings its holes with it.
bool OfferWalk::isOfTraced(const FeatureOffer& hole) const {
  const auto& all = offering_.offered.offers().features;
  const auto& traced = hands_.part().features;
  return std::any_of(all.begin(), all.end(), [&](const FeatureOffer& other) {
    if (other.kind == OfferedFeature::ring) {
      const double away = std::hypot(hole.at.x - other.at.x, hole.at.y - other.at.y);
      return std::abs(away - other.drawnRadius) <= kNear && isTraced(other);
    }
    if (other.kind != OfferedFeature::row) return false;
    bool among = false;
    for (int i = 0; i < other.count; ++i) {
      const PlanePoint at = holeOf(other, i);
      among = among || std::hypot(hole.at.x - at.x, hole.at.y - at.y) <= kNear;
    }
    return among && std::any_of(traced.begin(), traced.end(),
                                [&](const Feature& one) { return isTracedRow(one, other); });
  });
}

/// Read already, and as far as can be seen with the same figure.
bool OfferWalk::isRead(const ReadingOffer& offer) const {
  const auto [from, to] = endsOf(offer);
  if (from.id.empty() || to.id.empty()) return false;
  const bool straight = offer.kind == OfferedReading::centres;
  const auto& all = hands_.part().readings;
  return std::any_of(all.begin(), all.end(), [&, a = from.id, b = to.id](const Reading& one) {
    if (one.kind != (straight ? ReadingKind::centres : ReadingKind::along)) return false;
    if (!straight && one.axis != axisOf(offer)) return false;
    const bool these = (one.from == a && one.to == b) || (one.from == b && one.to == a);
    return these &&
           (offer.candidates.empty() || offer.candidates.front().ticks == one.figure.value.ticks());
  });
}

Axis OfferWalk::axisOf(const ReadingOffer& offer) const {
  return axes_[offer.kind == OfferedReading::alongY ? 1 : 0];
}

std::pair<OfferedEnd, OfferedEnd> OfferWalk::endsOf(const ReadingOffer& offer) const {
  return {endAt(offer, offer.from), endAt(offer, offer.to)};
}

OfferedEnd OfferWalk::endAt(const ReadingOffer& offer, PlanePoint at) const {
  const bool straight = offer.kind == OfferedReading::centres;
  const bool second = offer.kind == OfferedReading::alongY;
  const double along = second ? at.y : at.x, aside = second ? at.x : at.y;
  const double reach = kNear + hands_.squaringError;
  double best = 1e9;
  OfferedEnd found;
  const auto consider = [&](std::optional<double> here, std::optional<double> there, double more,
                            OfferedEnd end) {
    if (!here || std::abs(*here - along) > reach) return;
    if (straight && (!there || std::abs(*there - aside) > reach)) return;
    const double away =
        std::abs(*here - along) + (there ? kAside * std::abs(*there - aside) : 0) + more;
    if (away >= best) return;
    best = away;
    found = std::move(end);
  };
  for (const Feature& one : hands_.part().features) {
    const auto here = tracedAlong(one, axisOf(offer));
    if (one.is<kind::Edge>()) {
      consider(here, std::nullopt, 0, {one.id, std::nullopt});
      continue;
    }
    const auto there = tracedAlong(one, axes_[second ? 0 : 1]);
    if (there && one.face == hands_.desk.face()) consider(here, there, 0, {one.id, std::nullopt});
    for (const FeatureOffer& row : offering_.offered.offers().features) {
      if (row.kind != OfferedFeature::row || !isTracedRow(one, row)) continue;
      // Where another number of holes was typed nobody knows which is which.
      for (int i = 1; i < row.count && innerPlaceCount(one) == row.count; ++i) {
        const PlanePoint p = holeOf(row, i);
        consider(second ? p.y : p.x, second ? p.x : p.y, 0,
                 {one.id + std::to_string(i + 1), std::nullopt});
      }
    }
  }
  for (std::size_t i = 0; i < open_.size(); ++i) {
    if (!open_[i]) continue;
    const FeatureOffer& f = feature(i);
    const double more = isCertain(i) ? 0 : kLessLikely;
    if (f.kind == OfferedFeature::edge) {
      if (f.alongX != second) consider(f.alongX ? f.at.x : f.at.y, std::nullopt, more, {{}, i});
    } else if (f.kind == OfferedFeature::hole) {
      consider(second ? f.at.y : f.at.x, second ? f.at.x : f.at.y, more, {{}, i});
    }
  }
  return found;
}

/// The outermost edge each way is that side of the part, unless one is traced there already.
std::optional<Side> OfferWalk::sideOf(const Part& part, const FeatureOffer& offer) const {
  const auto at = [](const FeatureOffer& f) { return f.alongX ? f.at.x : f.at.y; };
  bool least = true, most = true;
  for (const FeatureOffer& other : offering_.offered.offers().features) {
    if (other.kind != offer.kind || other.alongX != offer.alongX) continue;
    least = least && at(offer) <= at(other);
    most = most && at(offer) >= at(other);
  }
  if (least == most) return std::nullopt;
  for (const Side side :
       {Side::left, Side::right, Side::front, Side::back, Side::bottom, Side::top}) {
    if (axisAcross(side) != axes_[offer.alongX ? 0 : 1]) continue;
    const bool low = side == Side::left || side == Side::front || side == Side::bottom;
    if (low != least) continue;
    const bool there = std::any_of(
        part.features.begin(), part.features.end(),
        [&](const Feature& f) { return f.is<kind::Edge>() && inchwright::sideOf(f) == side; });
    return there ? std::nullopt : std::optional(side);
  }
  return std::nullopt;
}

std::string OfferWalk::textOf(const Part& part, std::size_t one) const {
  const FeatureOffer& offer = feature(one);
  if (offer.kind == OfferedFeature::edge) {
    const auto side = sideOf(part, offer);
    return nextFeatureId(part, side) + " " +
           std::string(side ? nameOf(*side) : nameOf(axes_[offer.alongX ? 0 : 1]));
  }
  const bool row = offer.kind == OfferedFeature::row, round = offer.kind == OfferedFeature::round;
  const bool ring = offer.kind == OfferedFeature::ring;
  if (offer.kind == OfferedFeature::slot) return {};
  const Id id = nextFeatureId(part);
  if (isBetweenSides(offer) && !round) return id;
  if (offer.size.empty()) return row || round || ring ? std::string() : id;
  if (!offer.sizeWitnesses.ready() || (ring && !isCertain(one))) return {};
  if (round) return id + (offer.size.starts_with("R") ? " " : " R") + offer.size;
  const std::string holes = row || ring ? " " + std::to_string(offer.count) + " HOLES" : "";
  const std::string text =
      id + holes + " " + offer.size + (offer.note.empty() ? "" : " " + offer.note);
  if (!ring) return text;
  return text + " ON " + offer.pcd + " P.C.D. from " + std::to_string(*offer.firstAngle);
}

/// The sides that a round lies between, which have to be traced before it.
Result<std::vector<Id>> OfferWalk::cornerOf(const Part& part, const FeatureOffer& round) const {
  std::vector<Id> out;
  for (const int i : {0, 1}) {
    const double at = i == 0 ? round.to.x : round.from.y;
    double best = kNear + hands_.squaringError;
    Id side;
    for (const Feature& one : part.features) {
      const auto traced = one.is<kind::Edge>() && inchwright::axisOf(one) == axes_[i]
                              ? tracedAlong(one, axes_[i])
                              : std::nullopt;
      if (!traced || std::abs(*traced - at) > best) continue;
      best = std::abs(*traced - at);
      side = one.id;
    }
    if (side.empty()) return Error{ErrorCode::notFound, "its two sides come first"};
    out.push_back(side);
  }
  return out;
}

Result<Feature> OfferWalk::featureOf(const Part& part, std::size_t one,
                                     const std::string& text) const {
  const FeatureOffer& offer = feature(one);
  LineContext context = hands_.context();
  if (offer.kind == OfferedFeature::row) context.axis = axes_[offer.alongX ? 0 : 1];
  auto read = readFeatureLine(part, kindOf(offer.kind), text, context);
  if (!read.ok()) return read.error();
  Feature out = std::move(read->feature);
  if (offer.kind == OfferedFeature::edge) {
    out.traced = {tracedText(offer.alongX ? offer.at.x : offer.at.y)};
    return out;
  }
  if (auto* round = out.as<kind::Round>(); round != nullptr && round->about.empty()) {
    auto corner = cornerOf(part, offer);
    if (!corner.ok()) return corner.error();
    round->corner = *std::move(corner);
  }
  if (auto* ring = out.as<kind::Ring>(); ring != nullptr && text == textOf(part, one)) {
    ring->byTrace = {"first_angle"};
  }
  const PlanePoint at = tracedAt(offer);
  out.traced = {tracedText(at.x), tracedText(at.y)};
  if (offer.kind == OfferedFeature::line) {
    for (const double more : {offer.to.x, offer.to.y}) out.traced.push_back(tracedText(more));
  } else if (offer.kind == OfferedFeature::arc) {
    out.traced.push_back(tracedText(offer.drawnRadius));
  }
  return out;
}

}  // namespace inchwright::app
