#include "core/seen/rows.h"

#include <cmath>

#include "core/seen/inked.h"

namespace inchwright::seen {
namespace {

constexpr std::size_t kLeastHoles = 3;
constexpr std::size_t kMostOffered = 400;  // holes: what has more is no print
constexpr double kAlikeRims = 0.08;        // of the radius
constexpr double kRowDrawn = 0.5;          // of the way from rim to rim: a centre line has gaps
constexpr double kOffLine = 0.02;          // inches of the sheet
// By how much spaces may differ that are taken to be even, inches of the face: less than a 64th.
constexpr double kSpacesDiffer = 0.011;

double along(const FeatureOffer& hole, bool alongX) {
  return alongX ? hole.at.x : hole.at.y;
}

bool isOfRing(const FeatureOffer& hole, const std::vector<FeatureOffer>& features, double near) {
  return std::any_of(features.begin(), features.end(), [&](const FeatureOffer& f) {
    const double away = std::hypot(hole.at.x - f.at.x, hole.at.y - f.at.y);
    return f.kind == OfferedFeature::ring && (std::abs(away - f.drawnRadius) < near || away < near);
  });
}

bool isInLine(const FeatureOffer& a, const FeatureOffer& b, bool alongX, double off,
              const Frame& frame) {
  return a.view == b.view && std::abs(along(a, !alongX) - along(b, !alongX)) < off &&
         std::abs(a.drawnRadius - b.drawnRadius) < kAlikeRims * a.drawnRadius + 1 / frame.perInch;
}

/// How much of the line from one rim to the next is drawn.
double lineBetween(const FeatureOffer& a, const FeatureOffer& b, const Grey& cover,
                   const Frame& frame) {
  const PlanePoint from = frame.pixel(a.at), to = frame.pixel(b.at);
  const double apart = std::hypot(to.x - from.x, to.y - from.y);
  const double t = a.drawnRadius * frame.perInch / apart, u = b.drawnRadius * frame.perInch / apart;
  const PlanePoint way{to.x - from.x, to.y - from.y};
  return inkAlong(cover, {from.x + way.x * t, from.y + way.y * t},
                  {to.x - way.x * u, to.y - way.y * u}, 1)
      .share;
}

/// Holes one behind another, from the lower coordinate, as one row; none where they are not even.
void addRow(const std::vector<const FeatureOffer*>& holes, bool alongX, double drawn,
            std::vector<FeatureOffer>& out) {
  if (holes.size() < kLeastHoles) return;
  double least = 1e9, most = 0;
  for (std::size_t i = 1; i < holes.size(); ++i) {
    const double space = along(*holes[i], alongX) - along(*holes[i - 1], alongX);
    least = std::min(least, space);
    most = std::max(most, space);
  }
  if (most - least > kSpacesDiffer) return;
  FeatureOffer row = *holes.front();
  row.kind = OfferedFeature::row;
  row.from = holes.front()->at;
  row.to = holes.back()->at;
  row.at = {(row.from.x + row.to.x) / 2, (row.from.y + row.to.y) / 2};
  row.takeSize({});
  row.count = static_cast<int>(holes.size());
  row.alongX = alongX;
  row.sure = drawn;
  row.ready = true;
  for (const FeatureOffer* hole : holes) {
    row.ready = row.ready && hole->ready;
    if (hole->size.empty() || hole->count != row.count) continue;
    row.takeSize(*hole);
  }
  out.push_back(row);
}

}  // namespace

std::vector<FeatureOffer> rowsOf(const std::vector<FeatureOffer>& features, const Grey& cover,
                                 const Frame& frame, double inch, const Stop& stop) {
  const double off = kOffLine * inch / frame.perInch;
  std::vector<const FeatureOffer*> holes;
  for (const FeatureOffer& f : features) {
    if (f.kind == OfferedFeature::hole && !isOfRing(f, features, 2 * off)) holes.push_back(&f);
  }
  std::vector<FeatureOffer> out;
  if (holes.size() > kMostOffered) return out;
  for (const bool alongX : {true, false}) {
    std::vector<const FeatureOffer*> left = holes;
    std::stable_sort(left.begin(), left.end(), [&](const FeatureOffer* a, const FeatureOffer* b) {
      return along(*a, alongX) < along(*b, alongX);
    });
    while (!left.empty() && !stop.asked()) {
      std::vector<const FeatureOffer*> row, others;
      double drawn = 1;
      for (const FeatureOffer* f : left) {
        const double line = row.empty() ? 1 : lineBetween(*row.back(), *f, cover, frame);
        const bool next =
            row.empty() || (isInLine(*row.front(), *f, alongX, off, frame) && line >= kRowDrawn);
        (next ? row : others).push_back(f);
        if (next) drawn = std::min(drawn, line);
      }
      left = std::move(others);
      addRow(row, alongX, drawn, out);
    }
  }
  return out;
}

void settleRows(const std::vector<ReadingOffer>& readings, double near,
                std::vector<FeatureOffer>& features) {
  const auto isEnd = [&](const FeatureOffer& row, double at) {
    const auto kind = row.alongX ? OfferedReading::alongX : OfferedReading::alongY;
    return std::any_of(readings.begin(), readings.end(), [&](const ReadingOffer& r) {
      if (r.view != row.view || r.kind != kind) return false;
      return std::abs((row.alongX ? r.from.x : r.from.y) - at) < near ||
             std::abs((row.alongX ? r.to.x : r.to.y) - at) < near;
    });
  };
  std::vector<FeatureOffer> out;
  for (FeatureOffer f : features) {
    if (f.kind == OfferedFeature::row) {
      const double from = f.alongX ? f.from.x : f.from.y, to = f.alongX ? f.to.x : f.to.y;
      int inner = 0;
      for (int i = 1; i + 1 < f.count; ++i)
        inner += isEnd(f, from + (to - from) * i / (f.count - 1));
      const bool outer = isEnd(f, from) && isEnd(f, to);
      if (outer && inner == f.count - 2) continue;
      f.ready = f.ready && outer && inner == 0 && f.sizeWitnesses.ready();
    }
    out.push_back(std::move(f));
  }
  features = std::move(out);
}

}  // namespace inchwright::seen
