#include "app/canvas/pictures_behind.h"

#include <algorithm>
#include <utility>

#include "core/geometry/homography.h"

namespace inchwright::app {

double squaringErrorOf(const SquaredPicture& picture, const WantedPicture& wanted) {
  double error = picture.lean.value_or(0);
  if (!wanted.points.empty()) {
    const auto squared = squareUp(knownPoints(wanted.points));
    if (squared.ok()) error = std::max(error, squared->largestResidual);
  }
  return error;
}

PicturesBehind::PicturesBehind(QObject* parent) : QObject(parent) {
  connect(&reader_, &PictureReader::arrived, this, [this](std::shared_ptr<SquaredPicture> picture) {
    for (const auto& one : behind_) {
      if (!reading_ || one->laid.wanted != *reading_) continue;
      one->trouble = reader_.trouble();
      if (picture) take(*one, picture);
    }
    reading_.reset();
    readNext();
    emit changed();
  });
}

void PicturesBehind::take(One& one, std::shared_ptr<const SquaredPicture> picture) {
  one.picture = std::move(picture);
  one.layer.show(*one.picture);
}

void PicturesBehind::want(const std::vector<LaidPicture>& laid) {
  const bool same = std::equal(laid.begin(), laid.end(), behind_.begin(), behind_.end(),
                               [](const LaidPicture& a, const auto& b) { return a == b->laid; });
  if (same) return;
  const auto before = std::exchange(behind_, {});
  for (const LaidPicture& one : laid) {
    auto next = std::make_unique<One>();
    next->laid = one;
    next->layer.lieAt(one.at);
    next->layer.setTone(one.tone);
    for (const auto& old : before) {
      if (old->laid.wanted == one.wanted && old->picture) take(*next, old->picture);
    }
    if (auto kept = readOf(one.wanted); kept && !next->picture) take(*next, std::move(kept));
    behind_.push_back(std::move(next));
  }
  for (const auto& old : before) {
    if (old->picture) keep(old->laid.wanted, old->picture);
  }
  if (reading_) {
    reader_.stop();
    reading_.reset();
  }
  if (behind_.empty()) kept_.clear();
  readNext();
  emit changed();
}

std::shared_ptr<const SquaredPicture> PicturesBehind::readOf(const WantedPicture& wanted) const {
  const auto found = std::find_if(kept_.begin(), kept_.end(),
                                  [&](const auto& one) { return one.first == wanted; });
  return found == kept_.end() ? nullptr : found->second;
}

void PicturesBehind::keep(const WantedPicture& wanted,
                          std::shared_ptr<const SquaredPicture> picture) {
  constexpr std::size_t kMostKept = 4;
  std::erase_if(kept_, [&](const auto& one) { return one.first == wanted; });
  kept_.emplace_back(wanted, std::move(picture));
  if (kept_.size() > kMostKept) kept_.erase(kept_.begin());
}

void PicturesBehind::readNext() {
  for (const auto& one : behind_) {
    if (one->picture || !one->trouble.isEmpty()) continue;
    reading_ = one->laid.wanted;
    reader_.read(*reading_);
    return;
  }
}

QString PicturesBehind::trouble() const {
  for (const auto& one : behind_) {
    if (!one->trouble.isEmpty()) return one->trouble;
  }
  return {};
}

QRectF PicturesBehind::bounds() const {
  QRectF all;
  for (const auto& one : behind_) all = all.united(one->layer.bounds());
  return all;
}

bool PicturesBehind::paint(QPainter& painter, const PrintMap& map, const QRectF& visible,
                           bool hurried) {
  bool whole = true;
  for (auto one = behind_.rbegin(); one != behind_.rend(); ++one) {
    whole = (*one)->layer.paint(painter, map, visible, hurried) && whole;
  }
  return whole;
}

QRegion PicturesBehind::covered(const PrintMap& map) const {
  QRegion all;
  for (const auto& one : behind_) all += one->layer.covered(map);
  return all;
}

const PictureLayer* PicturesBehind::layerAt(QPointF inches) const {
  for (const auto& one : behind_) {
    if (one->layer.bounds().contains(inches)) return &one->layer;
  }
  return nullptr;
}

double PicturesBehind::squaringError() const {
  double most = 0;
  for (const auto& one : behind_) {
    if (one->picture) most = std::max(most, squaringErrorOf(*one->picture, one->laid.wanted));
  }
  return most;
}

}  // namespace inchwright::app

#include "moc_pictures_behind.cpp"
