// Accepting a doubt: why it may stand is asked for and kept.

#include "app/session/activity.h"
#include "core/part/edit.h"

namespace inchwright::app {
namespace {

class AcceptingActivity : public Activity {
 public:
  AcceptingActivity(Hands& hands, std::vector<AcceptedDoubt> doubts, QString words)
      : Activity(hands), doubts_(std::move(doubts)), words_(std::move(words)) {}

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
    Part next = hands_.part();
    for (AcceptedDoubt& doubt : doubts_) {
      doubt.reason = text.toStdString();
      next = withAccepted(next, doubt);
    }
    over_ = hands_.apply(std::move(next), tr("Accept a doubt: %1").arg(text));
    return over_;
  }

 private:
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
