// Looking: choosing what is on the print; a line of text does what it says.

#include <algorithm>

#include "app/session/activity.h"
#include "app/session/chosen_edit.h"
#include "core/say/reading_words.h"

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
    for (const Id& id : selection.readings) {
      names << QString::fromStdString(readingWords(hands_.part(), id));
    }
    if (names.isEmpty()) return tr("Point at something, or type a line such as L A 3/8");
    const QString chosen = names.join(QStringLiteral(", "));
    if (names.size() > 1) return tr("Chosen: %1").arg(chosen);
    if (!selection.readings.empty())
      return tr("Chosen: %1. A figure typed here corrects it").arg(chosen);
    return tr("Chosen: %1. Another size, kind or name typed here changes it").arg(chosen);
  }

  Echo echo(const QString& text) const override {
    if (text.isEmpty()) return {};
    if (!hands_.desk.hasPart()) {
      // A line about a part that is not there yet would become its name.
      const bool line = hands_.line(text).ok();
      return {tr("a part called %1").arg(text), false, -1, line};
    }
    if (const auto edit = editOfChosen(hands_, text)) return edit->echo;
    return Activity::echo(text);
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
    if (auto edit = editOfChosen(hands_, text)) {
      if (!hands_.apply(std::move(edit->part), edit->title)) return false;
      keepChosen();
      return true;
    }
    return hands_.apply(hands_.line(text));
  }

  bool back() override {
    if (hands_.desk.selection().empty()) return false;
    hands_.desk.select({});
    return true;
  }

 private:
  /// What was renamed is no longer there to be chosen.
  void keepChosen() {
    Selection kept = hands_.desk.selection();
    std::erase_if(kept.places,
                  [&](const Id& id) { return !hands_.isPlace(QString::fromStdString(id)); });
    hands_.desk.select(std::move(kept));
  }

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
