// Choosing what to stack up: the two ends of a distance, or a gap by its name.

#include <utility>

#include "app/session/activity.h"
#include "core/part/common_axis.h"

namespace inchwright::app {
namespace {

class StackingActivity : public Activity {
 public:
  using Activity::Activity;

  Doing doing() const override { return Doing::stacking; }

  QString prompt() const override {
    if (!gap_.empty())
      return tr("The gap %1; Escape to choose others").arg(QString::fromStdString(gap_));
    if (chosen_.empty()) return tr("Stack along %1: point at one end").arg(wordFor(hands_.axis));
    if (chosen_.size() == 1)
      return tr("Stack along %1: point at the other end").arg(wordFor(hands_.axis));
    return tr("The stack from %1 to %2; Escape to choose others")
        .arg(QString::fromStdString(chosen_[0]), QString::fromStdString(chosen_[1]));
  }

  void point(const Pointed& pointed) override {
    if (!pointed.place.empty()) choose(pointed.place);
  }

  bool enter(const QString& text) override {
    if (hands_.desk.job().gap(text.toStdString()) != nullptr) {
      chosen_.clear();
      gap_ = text.toStdString();
      light();
      return true;
    }
    bool all = !text.isEmpty();
    for (const QString& word : text.split(' ', Qt::SkipEmptyParts)) {
      if (!hands_.isPlace(word)) {
        emit hands_.desk.refused(tr("There is no feature %1").arg(word));
        return false;
      }
      if (!choose(word.toStdString())) return false;
    }
    return all;
  }

  bool back() override {
    if (std::exchange(gap_, {}) != Id()) return true;
    if (chosen_.empty()) return false;
    chosen_.pop_back();
    return true;
  }

  std::vector<Id> chosen() const override { return chosen_; }

  std::optional<Result<Stacked>> stacked() const override {
    const Desk& desk = hands_.desk;
    if (!gap_.empty()) return stackAcross(desk, gap_);
    if (chosen_.size() < 2 || !desk.hasPart()) return std::nullopt;
    return stackBetween(desk, hands_.axis, chosen_[0], chosen_[1]);
  }

 private:
  /// False, with the reason told, when it lies across from the first.
  bool choose(const Id& place) {
    if (chosen_.size() == 2) chosen_.clear();
    gap_.clear();
    if (!chosen_.empty()) {
      const auto axis = axisBetween(hands_.part(), chosen_[0], place, hands_.axis);
      if (!axis.ok()) {
        emit hands_.desk.refused(QString::fromStdString(axis.error().text));
        return false;
      }
      if (place == chosen_[0]) return true;
      hands_.axis = *axis;
    }
    chosen_.push_back(place);
    light();
    return true;
  }

  /// Lights the chain up on the print.
  void light() {
    const auto now = stacked();
    if (!now || !now->ok()) return;
    hands_.showPlaces = now->value().places;
    hands_.showReadings = now->value().readings;
  }

  std::vector<Id> chosen_;
  std::string gap_;
};

}  // namespace

std::unique_ptr<Activity> stacking(Hands& hands) {
  return std::make_unique<StackingActivity>(hands);
}

}  // namespace inchwright::app
