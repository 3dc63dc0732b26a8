// Accepting a doubt: why it may stand is asked for and kept.

#include <algorithm>

#include "app/session/activity.h"
#include "core/part/edit.h"

namespace inchwright::app {
namespace {

class AcceptingActivity : public Activity {
 public:
  AcceptingActivity(Hands& hands, std::vector<AcceptedDoubt> doubts, QString words)
      : Activity(hands),
        part_(hands.desk.partIndex()),
        doubts_(std::move(doubts)),
        words_(std::move(words)) {}

  Doing doing() const override { return Doing::accepting; }
  QString prompt() const override {
    return tr("Why may it stand, in a word or two? %1").arg(words_);
  }
  Echo echo(const QString& text) const override {
    if (text.isEmpty()) return {};
    return {tr("kept as the reason: %1").arg(text), false, -1, false};
  }
  void point(const Pointed&) override {}
  bool over() const override { return over_; }
  bool back() override { return false; }

  bool enter(const QString& text) override {
    if (text.isEmpty()) {
      // Enter alone was meant for something else.
      emit hands_.desk.refused(tr("say why, or leave it with Escape"));
      return false;
    }
    // What was asked about may be settled or undone by now, or another part lie here.
    std::vector<AcceptedDoubt> doubts = doubts_;
    std::erase_if(doubts, [this](const AcceptedDoubt& one) { return !stillStands(one); });
    if (doubts.empty()) {
      emit hands_.desk.refused(tr("that doubt no longer stands here; leave it with Escape"));
      return false;
    }
    Part next = hands_.part();
    for (AcceptedDoubt& doubt : doubts) {
      doubt.reason = text.toStdString();
      next = withAccepted(next, doubt);
    }
    const QString title = doubts.size() == 1
                              ? tr("Accept a doubt: %1").arg(text)
                              : tr("Accept %1 doubts: %2").arg(doubts.size()).arg(text);
    over_ = hands_.apply(std::move(next), title);
    return over_;
  }

 private:
  bool stillStands(const AcceptedDoubt& one) const {
    if (hands_.desk.partIndex() != part_) return false;
    const std::vector<Doubt>& all = hands_.desk.solution().doubts;
    return std::any_of(all.begin(), all.end(), [&](const Doubt& doubt) {
      return !doubt.accepted && one.covers(doubt.key.text(), doubt.about);
    });
  }

  int part_;
  std::vector<AcceptedDoubt> doubts_;
  QString words_;
  bool over_ = false;
};

}  // namespace

std::unique_ptr<Activity> accepting(Hands& hands, std::vector<AcceptedDoubt> doubts,
                                    const QString& words) {
  return std::make_unique<AcceptingActivity>(hands, std::move(doubts), words);
}

}  // namespace inchwright::app
