// Looking: choosing what is on the print; a line of text does what it says. Choosing the two ends
// of a stack is looking with a purpose.

#include <algorithm>

#include "app/session/activity.h"

namespace inchwright::app {
namespace {

class LookingActivity : public Activity {
 public:
  using Activity::Activity;

  Doing doing() const override { return Doing::looking; }

  QString prompt() const override {
    if (!hands_.desk.hasPart()) return tr("Begin with the name of the part");
    const Selection& selection = hands_.desk.selection();
    QStringList names;
    for (const Id& id : selection.places) names << QString::fromStdString(id);
    for (const Id& id : selection.readings) names << QString::fromStdString(id);
    if (names.isEmpty()) return tr("Point at something, or type a line such as L A 3/8");
    return tr("Chosen: %1").arg(names.join(QStringLiteral(", ")));
  }

  void point(const Pointed& pointed) override {
    Selection selection = pointed.extend ? hands_.desk.selection() : Selection{};
    toggle(selection.places, pointed.place);
    if (pointed.place.empty()) toggle(selection.readings, pointed.reading);
    hands_.desk.select(std::move(selection));
  }

  bool enter(const QString& text) override {
    if (text.isEmpty()) return false;
    if (!hands_.desk.hasPart()) return beginPart(text);
    return hands_.apply(applyLine(hands_.part(), text.toStdString(), hands_.context()));
  }

  bool back() override {
    if (hands_.desk.selection().empty()) return false;
    hands_.desk.select({});
    return true;
  }

 private:
  static void toggle(std::vector<Id>& ids, const Id& id) {
    if (id.empty()) return;
    const auto found = std::find(ids.begin(), ids.end(), id);
    if (found == ids.end()) {
      ids.push_back(id);
    } else {
      ids.erase(found);
    }
  }

  bool beginPart(const QString& name) {
    Job job = hands_.desk.job();
    Part part;
    part.name = name.trimmed().toStdString();
    job.parts.push_back(std::move(part));
    hands_.desk.apply(std::move(job), tr("Begin %1").arg(name.trimmed()));
    return true;
  }
};

class StackingActivity : public Activity {
 public:
  using Activity::Activity;

  Doing doing() const override { return Doing::stacking; }

  QString prompt() const override {
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
    bool all = !text.isEmpty();
    for (const QString& word : text.split(' ', Qt::SkipEmptyParts)) {
      if (!hands_.isPlace(word)) {
        emit hands_.desk.refused(tr("There is no feature %1").arg(word));
        return false;
      }
      choose(word.toStdString());
    }
    return all;
  }

  bool back() override {
    if (chosen_.empty()) return false;
    chosen_.pop_back();
    return true;
  }

  std::vector<Id> chosen() const override { return chosen_; }

 private:
  void choose(const Id& place) {
    if (chosen_.size() == 2) chosen_.clear();
    if (!chosen_.empty()) {
      const auto axis = axisBetween(hands_.part(), chosen_[0], place, hands_.axis);
      if (!axis.ok() || place == chosen_[0]) return;
      hands_.axis = *axis;
    }
    chosen_.push_back(place);
  }

  std::vector<Id> chosen_;
};

}  // namespace

std::unique_ptr<Activity> looking(Hands& hands) {
  return std::make_unique<LookingActivity>(hands);
}

std::unique_ptr<Activity> stacking(Hands& hands) {
  return std::make_unique<StackingActivity>(hands);
}

}  // namespace inchwright::app
