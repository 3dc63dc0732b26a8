#include "app/session/offering.h"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace inchwright::app {
namespace {

using seen::FeatureOffer;
using seen::OfferedFeature;
using seen::OfferedReading;
using seen::ReadingOffer;

constexpr double kEndsAt = 0.03;     // inches between a dimension's end and what it ends at
constexpr double kSameRim = 0.04;    // of the radius, by which circles of one note may differ
constexpr double kSameRound = 0.15;  // likewise arcs, which show their radius less well
constexpr double kNextRim = 2;       // times as far off as those the next must be

bool endsAlong(const ReadingOffer& r, OfferedReading axis, double at) {
  if (r.kind != axis) return false;
  const bool x = axis == OfferedReading::alongX;
  const double from = x ? r.from.x : r.from.y, to = x ? r.to.x : r.to.y;
  return std::min(std::abs(from - at), std::abs(to - at)) <= kEndsAt;
}

bool endsAt(const std::vector<ReadingOffer>& all, OfferedReading axis, double at) {
  return std::any_of(all.begin(), all.end(),
                     [&](const ReadingOffer& r) { return endsAlong(r, axis, at); });
}

QRectF boxInInches(const Homography& toInches, const seen::PictureBox& box) {
  QRectF out;
  for (const auto& [x, y] :
       {std::pair(box.x, box.y), std::pair(box.x + box.w, box.y), std::pair(box.x, box.y + box.h),
        std::pair(box.x + box.w, box.y + box.h)}) {
    const PlanePoint at = toInches.map({x, y});
    if (out.isNull()) out = QRectF(at.x, at.y, 1e-9, 1e-9);
    out = out.united(QRectF(at.x, at.y, 1e-9, 1e-9));
  }
  return out;
}

bool isNoted(const FeatureOffer& f) {
  const bool hole = f.kind == OfferedFeature::hole, round = f.kind == OfferedFeature::round;
  return (hole || round) && !f.size.empty() && f.sizeWitnesses.ready();
}

/// What ends there ends at the hole then, and says nothing of a line that may be dashed.
bool isInLineWithHole(const std::vector<FeatureOffer>& all, const FeatureOffer& edge) {
  return std::any_of(all.begin(), all.end(), [&](const FeatureOffer& f) {
    const double away = edge.alongX ? f.at.x - edge.at.x : f.at.y - edge.at.y;
    return f.kind == OfferedFeature::hole && std::abs(away) <= kEndsAt;
  });
}

/// Whether a slanted or curved side begins and ends at edges that are plain by themselves.
bool isBetweenEdges(const std::vector<FeatureOffer>& all, const FeatureOffer& side) {
  const auto atEdge = [&](PlanePoint end) {
    return std::any_of(all.begin(), all.end(), [&](const FeatureOffer& f) {
      const double off = f.alongX ? f.at.x - end.x : f.at.y - end.y;
      return f.kind == OfferedFeature::edge && f.ready && std::abs(off) <= kEndsAt;
    });
  };
  return atEdge(side.from) && atEdge(side.to);
}

bool isAtHole(const std::vector<FeatureOffer>& all, const FeatureOffer& slot) {
  return std::any_of(all.begin(), all.end(), [&](const FeatureOffer& f) {
    return f.kind == OfferedFeature::hole &&
           std::hypot(f.at.x - slot.at.x, f.at.y - slot.at.y) <= kEndsAt;
  });
}

/// `17/64 DRILL 4 HOLES` points at one of four: the others are those whose rims are drawn as large,
/// where as many stand well apart from all the rest.
void shareSize(std::vector<FeatureOffer>& all, std::size_t noted) {
  const FeatureOffer note = all[noted];
  std::vector<std::pair<double, std::size_t>> others;
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (i == noted || all[i].kind != note.kind) continue;
    others.emplace_back(std::abs(all[i].drawnRadius / note.drawnRadius - 1), i);
  }
  const auto count = static_cast<std::size_t>(note.count) - 1;
  if (others.size() < count) return;
  std::sort(others.begin(), others.end());
  const double most = others[count - 1].first;
  const double same = note.kind == OfferedFeature::hole ? kSameRim : kSameRound;
  if (most > same) return;
  if (others.size() > count && others[count].first < std::max(same / 2, kNextRim * most)) {
    return;
  }
  others.resize(count);
  if (std::any_of(others.begin(), others.end(),
                  [&](const auto& one) { return !all[one.second].size.empty(); })) {
    return;
  }
  for (const auto& [off, i] : others) all[i].takeSize(note);
}

}  // namespace

QRectF Offering::inches(const seen::PictureBox& box) const {
  return boxInInches(toInches, box);
}

seen::Offered::Time offeringNow() {
  return std::chrono::duration_cast<seen::Offered::Time>(
      std::chrono::steady_clock::now().time_since_epoch());
}

FeatureKind kindOf(OfferedFeature kind) {
  switch (kind) {
    case OfferedFeature::hole:
      return FeatureKind::hole;
    case OfferedFeature::edge:
      return FeatureKind::edge;
    case OfferedFeature::slot:
      return FeatureKind::slot;
    case OfferedFeature::ring:
      return FeatureKind::ring;
    case OfferedFeature::row:
      return FeatureKind::row;
    case OfferedFeature::round:
      return FeatureKind::round;
    case OfferedFeature::line:
      return FeatureKind::line;
    case OfferedFeature::arc:
      return FeatureKind::arc;
  }
  return FeatureKind::point;
}

seen::Offers offersOfFace(const seen::Offers& all) {
  seen::Offers out = all;
  std::erase_if(out.features, [](const FeatureOffer& f) { return f.view != 0; });
  std::erase_if(out.readings, [](const ReadingOffer& r) {
    return r.view != 0 || r.kind == OfferedReading::angle;
  });
  // A circle may look like a slot as long as it is wide.
  std::erase_if(out.features, [&](const FeatureOffer& f) {
    return f.kind == OfferedFeature::slot && isAtHole(all.features, f);
  });
  // Sides come before what is read from them, and rings before the holes that lie on them.
  std::stable_partition(out.features.begin(), out.features.end(),
                        [](const FeatureOffer& f) { return f.kind != OfferedFeature::hole; });
  std::stable_partition(out.features.begin(), out.features.end(),
                        [](const FeatureOffer& f) { return f.kind == OfferedFeature::edge; });
  const std::vector<FeatureOffer> asNoted = out.features;
  for (std::size_t i = 0; i < asNoted.size(); ++i) {
    if (isNoted(asNoted[i]) && asNoted[i].count > 1) shareSize(out.features, i);
  }
  return out;
}

Offering::PassedBy passedBy(const seen::Offers& all) {
  Offering::PassedBy out;
  for (const ReadingOffer& r : all.readings) {
    if (r.view != 0) {
      ++out.onOtherViews;
    } else if (r.kind == OfferedReading::angle) {
      ++out.angles;
    }
  }
  return out;
}

std::vector<bool> certainOf(const seen::Offers& offers, const Homography& toInches) {
  std::vector<QRectF> lettered;
  for (const ReadingOffer& r : offers.readings) {
    if (r.figure.w > 0) lettered.push_back(boxInInches(toInches, r.figure));
  }
  std::vector<bool> out;
  for (const FeatureOffer& f : offers.features) {
    const bool x = endsAt(offers.readings, OfferedReading::alongX, f.at.x);
    const bool y = endsAt(offers.readings, OfferedReading::alongY, f.at.y);
    const bool among = std::any_of(lettered.begin(), lettered.end(),
                                   [&](const QRectF& box) { return box.contains(f.at.x, f.at.y); });
    const bool hole = f.kind == OfferedFeature::hole && (isNoted(f) || x || y);
    const bool row = f.kind == OfferedFeature::row && f.sizeWitnesses.ready();
    const bool ring = f.kind == OfferedFeature::ring && f.sizeWitnesses.ready() &&
                      f.pcdWitnesses.ready() && f.firstAngle;
    const bool round = f.kind == OfferedFeature::round && isNoted(f);
    const bool side = (f.kind == OfferedFeature::line || f.kind == OfferedFeature::arc) &&
                      isBetweenEdges(offers.features, f);
    const bool edge = f.kind == OfferedFeature::edge && (f.alongX ? x : y) &&
                      !isInLineWithHole(offers.features, f);
    out.push_back(f.ready && !among && (hole || edge || row || ring || round || side));
  }
  return out;
}

std::vector<seen::Confirmed> confirmedIn(const Part& part, Face face) {
  const auto axes = axesIn(face);
  std::vector<seen::Confirmed> out;
  for (const Reading& r : part.readings) {
    if (r.kind != ReadingKind::along || (r.axis != axes[0] && r.axis != axes[1])) continue;
    const Feature *from = part.feature(r.from), *to = part.feature(r.to);
    if (from == nullptr || to == nullptr) continue;
    const auto a = tracedAlong(*from, r.axis), b = tracedAlong(*to, r.axis);
    if (!a || !b) continue;
    out.push_back({r.axis == axes[0] ? OfferedReading::alongX : OfferedReading::alongY, *a, *b,
                   r.figure.value});
  }
  return out;
}

}  // namespace inchwright::app
