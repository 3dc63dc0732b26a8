// The second, blind reading: each figure is asked again without showing the first. Two that differ
// are settled by a third look at the print: the figure read twice is kept.

#include <algorithm>

#include "app/session/activity.h"
#include "core/say/reading_words.h"

namespace inchwright::app {
namespace {

class RereadingActivity : public Activity {
 public:
  explicit RereadingActivity(Hands& hands) : Activity(hands) { goOn(); }

  Doing doing() const override { return Doing::rereading; }

  QString prompt() const override {
    const Reading* reading = current();
    if (reading == nullptr) return tr("Every figure has been read twice");
    const QString ends = QString::fromStdString(endsWords(hands_.part(), *reading));
    if (!second_.isEmpty()) {
      return tr("%1: the two readings differ. Look at the print a third time").arg(ends);
    }
    return tr("%1: what does the print say?").arg(ends);
  }

  Echo echo(const QString& text) const override {
    return text.isEmpty() ? Echo{} : echoFigure(text, hands_.desk.job().unit);
  }

  void point(const Pointed& pointed) override {
    // One may choose the figure to read again by pointing at it.
    if (pointed.reading.empty()) return;
    asked_ = pointed.reading;
    second_.clear();
    show();
  }

  bool enter(const QString& text) override {
    const Reading* reading = current();
    if (reading == nullptr) return false;
    if (text.isEmpty()) {
      skipped_.push_back(asked_);
      second_.clear();
      goOn();
      return true;
    }
    const auto figure = readLength(text.toStdString(), {hands_.desk.job().unit});
    if (!figure.ok()) {
      emit hands_.desk.refused(QString::fromStdString(figure.error().text));
      return false;
    }
    if (same(*figure, reading->figure)) return settle(reading->figure, text);
    if (second_.isEmpty()) {
      second_ = text;
      return true;
    }
    const auto before = readLength(second_.toStdString(), {hands_.desk.job().unit});
    if (before.ok() && same(*figure, *before)) return settle(*figure, second_);
    second_.clear();
    emit hands_.desk.refused(
        tr("Three readings, three figures. Enlarge the print and begin this one again"));
    return false;
  }

  bool back() override {
    if (second_.isEmpty()) return false;
    second_.clear();
    return true;
  }

  std::vector<Id> chosen() const override {
    const Reading* reading = current();
    if (reading == nullptr) return {};
    return reading->to.empty() ? std::vector<Id>{reading->from}
                               : std::vector<Id>{reading->from, reading->to};
  }

 private:
  static bool same(const Lettered& a, const Lettered& b) {
    return a.value == b.value && a.tolerance == b.tolerance && a.reference == b.reference;
  }

  const Reading* current() const { return hands_.part().reading(asked_); }

  bool settle(const Lettered& kept, const QString& again) {
    Part next = hands_.part();
    const auto found = std::find_if(next.readings.begin(), next.readings.end(),
                                    [&](const Reading& r) { return r.id == asked_; });
    if (found->figure.text != kept.text) found->offered.clear();
    found->figure = kept;
    found->again = again.toStdString();
    const QString title =
        tr("Read %1 again").arg(QString::fromStdString(endsWords(hands_.part(), *current())));
    if (!hands_.apply(std::move(next), title)) return false;
    second_.clear();
    goOn();
    return true;
  }

  /// What the print offered and a key took comes first: nobody has typed it yet.
  void goOn() {
    asked_.clear();
    for (const Reading& reading : hands_.part().readings) {
      const bool skipped =
          std::find(skipped_.begin(), skipped_.end(), reading.id) != skipped_.end();
      if (!reading.again.empty() || skipped || reading.kind == ReadingKind::angle) continue;
      if (asked_.empty()) asked_ = reading.id;
      if (reading.offered.empty()) continue;
      asked_ = reading.id;
      break;
    }
    show();
  }

  void show() {
    if (asked_.empty()) return;
    hands_.showPlaces = chosen();
    hands_.showReadings = {asked_};
  }

  Id asked_;
  QString second_;
  std::vector<Id> skipped_;
};

}  // namespace

std::unique_ptr<Activity> rereading(Hands& hands) {
  return std::make_unique<RereadingActivity>(hands);
}

}  // namespace inchwright::app
