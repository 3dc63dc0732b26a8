// The second, blind reading: each figure is asked again without showing the first. Two that differ
// are settled by a third look at the print: the figure read twice is kept.

#include <algorithm>

#include "app/session/activity.h"
#include "app/session/doubt_edits.h"
#include "core/say/reading_words.h"

namespace inchwright::app {
namespace {

class RereadingActivity : public Activity {
 public:
  explicit RereadingActivity(Hands& hands) : Activity(hands) { goOn(); }

  Doing doing() const override { return Doing::rereading; }

  QString prompt() const override {
    const Reading* reading = current();
    if (reading == nullptr) return endWords();
    const QString ends = QString::fromStdString(endsWords(hands_.part(), *reading));
    if (!second().isEmpty()) {
      return tr("%1: the two readings differ. Look at the print a third time").arg(ends);
    }
    return tr("%1: what does the print say?").arg(ends);
  }

  Echo echo(const QString& text) const override {
    if (text.isEmpty()) return {};
    const Reading* reading = current();
    if (reading == nullptr || reading->kind != ReadingKind::angle) {
      return echoFigure(text, hands_.desk.job().unit);
    }
    const auto angle = readAngle(text.toStdString());
    if (angle.ok()) return {tr("%1 degrees").arg(angle->value.toDegrees()), false, -1, false};
    return {QString::fromStdString(angle.error().text), true,
            static_cast<int>(angle.error().at.value_or(0)), false};
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
      skipped_.push_back(reading->id);
      second_.clear();
      goOn();
      return true;
    }
    const auto now = read(*reading, text);
    if (!now.ok()) {
      emit hands_.desk.refused(QString::fromStdString(now.error().text));
      return false;
    }
    if (same(*now, *reading)) return settle(*reading, text);
    const QString before = second();
    if (before.isEmpty()) {
      second_ = text;
      secondOf_ = *reading;
      return true;
    }
    const auto earlier = read(*reading, before);
    if (earlier.ok() && same(*now, *earlier)) return settle(*now, before);
    second_.clear();
    emit hands_.desk.refused(
        tr("Three readings, three figures. Enlarge the print and begin this one again"));
    return false;
  }

  bool back() override {
    if (second().isEmpty()) return false;
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
  Result<Reading> read(const Reading& reading, const QString& text) const {
    return withFigure(reading, text.toStdString(), hands_.desk.job().unit);
  }

  static bool same(const Reading& a, const Reading& b) {
    if (a.kind == ReadingKind::angle) {
      return a.angle && b.angle && a.angle->value == b.angle->value &&
             a.angle->plusMinus == b.angle->plusMinus && a.angle->reference == b.angle->reference;
    }
    return a.figure.value == b.figure.value && a.figure.tolerance == b.figure.tolerance &&
           a.figure.reference == b.figure.reference;
  }

  /// What is asked; where that was taken away or undone meanwhile, what is open now.
  const Reading* current() const {
    if (const Reading* asked = hands_.part().reading(asked_)) return asked;
    return hands_.part().reading(nextOpen());
  }

  /// The figure that was read otherwise, as long as it is still asked about the same.
  QString second() const {
    const Reading* reading = current();
    return reading != nullptr && secondOf_ == *reading ? second_ : QString();
  }

  /// Nothing is asked any more: how much was not read twice even so.
  QString endWords() const {
    const auto& all = hands_.part().readings;
    const auto open =
        std::count_if(all.begin(), all.end(), [](const Reading& one) { return one.again.empty(); });
    if (all.empty()) return tr("There is no figure to read again");
    if (open == 0) return tr("Every figure has been read twice");
    return tr("The end of the second reading: %1 of %2 figures were passed by and stand read once")
        .arg(open)
        .arg(all.size());
  }

  bool settle(const Reading& kept, const QString& again) {
    Part next = hands_.part();
    const auto found = std::find_if(next.readings.begin(), next.readings.end(),
                                    [&](const Reading& r) { return r.id == kept.id; });
    *found = kept;
    found->again = again.toStdString();
    const QString title =
        tr("Read %1 again").arg(QString::fromStdString(endsWords(hands_.part(), kept)));
    if (!hands_.apply(std::move(next), title)) return false;
    second_.clear();
    goOn();
    return true;
  }

  void goOn() {
    asked_ = nextOpen();
    show();
  }

  /// What the print offered and a key took comes first: nobody has typed it yet.
  Id nextOpen() const {
    Id first;
    for (const Reading& reading : hands_.part().readings) {
      const bool skipped =
          std::find(skipped_.begin(), skipped_.end(), reading.id) != skipped_.end();
      if (!reading.again.empty() || skipped) continue;
      if (first.empty()) first = reading.id;
      if (!reading.offered.empty()) return reading.id;
    }
    return first;
  }

  void show() {
    if (asked_.empty()) return;
    hands_.showPlaces = chosen();
    hands_.showReadings = {asked_};
  }

  Id asked_;
  QString second_;
  std::optional<Reading> secondOf_;  ///< as it stood then
  std::vector<Id> skipped_;
};

}  // namespace

std::unique_ptr<Activity> rereading(Hands& hands) {
  return std::make_unique<RereadingActivity>(hands);
}

}  // namespace inchwright::app
