// Looking: choosing what is on the print; a line of text does what it says.

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
    if (hands_.desk.isBare()) {
      return tr("Trace a first edge or hole, or type it, such as edge L left");
    }
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

}  // namespace

std::unique_ptr<Activity> looking(Hands& hands) {
  return std::make_unique<LookingActivity>(hands);
}

}  // namespace inchwright::app
