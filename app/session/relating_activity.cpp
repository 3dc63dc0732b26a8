// What the print shows but does not number, and where zero is: point at features, then Enter.

#include <QStringList>
#include <algorithm>

#include "app/session/activity.h"
#include "app/session/plausible.h"
#include "app/session/suggestions.h"
#include "core/part/common_axis.h"

namespace inchwright::app {
namespace {

QString listed(const std::vector<Id>& ids) {
  QStringList names;
  for (const Id& id : ids) names << QString::fromStdString(id);
  return names.join(QStringLiteral(" "));
}

/// Collects features, by clicks or by their ids, for an activity that needs several.
class CollectingActivity : public Activity {
 public:
  using Activity::Activity;

  void point(const Pointed& pointed) override {
    if (pointed.place.empty()) return;
    const auto found = std::find(chosen_.begin(), chosen_.end(), pointed.place);
    if (found == chosen_.end()) {
      chosen_.push_back(pointed.place);
    } else {
      chosen_.erase(found);
    }
  }

  bool back() override {
    if (chosen_.empty()) return false;
    chosen_.pop_back();
    return true;
  }

  std::vector<Id> chosen() const override { return chosen_; }

 protected:
  /// Takes leading ids of features out of the text; what is left are words.
  QStringList takeIds(const QString& text) {
    QStringList words = text.split(' ', Qt::SkipEmptyParts);
    while (!words.isEmpty() && hands_.isPlace(words.front())) {
      const Id id = words.takeFirst().toStdString();
      if (std::find(chosen_.begin(), chosen_.end(), id) == chosen_.end()) chosen_.push_back(id);
    }
    return words;
  }

  bool applyText(const QString& line) {
    if (!hands_.apply(hands_.line(line))) return false;
    chosen_.clear();
    return true;
  }

  std::vector<Id> chosen_;
};

class RelatingActivity : public CollectingActivity {
 public:
  RelatingActivity(Hands& hands, UnderstandingKind kind) : CollectingActivity(hands), kind_(kind) {}

  Doing doing() const override { return Doing::relating; }

  QString prompt() const override {
    const QString what = wordFor(kind_), axis = wordFor(hands_.axis);
    const QString so = listed(chosen_);
    switch (kind_) {
      case UnderstandingKind::midway:
        if (chosen_.empty()) return tr("Midway along %1: point at the one in the middle").arg(axis);
        if (chosen_.size() < 3)
          return tr("Midway along %1: %2 lies between which two?").arg(axis, so);
        break;
      case UnderstandingKind::symmetric:
        if (chosen_.size() < 2)
          return tr("Symmetric along %1: point at the two that mirror").arg(axis);
        if (chosen_.size() == 2) return tr("Symmetric along %1: about what?").arg(axis);
        break;
      default:
        if (chosen_.size() >= 2) break;
        if (!isAlong()) return tr("%1: point at the features").arg(what);
        return tr("%1 along %2: point at the features").arg(what, axis);
    }
    const QString said = isAlong() ? tr("%1 along %2: %3").arg(what, axis, completeWords())
                                   : tr("%1: %2").arg(what, so);
    const QString against = objection();
    return said +
           (against.isEmpty() ? QStringLiteral(". ") : QStringLiteral("; ") + against + ". ") +
           (hands_.stated
                ? tr("Enter takes it as stated on the print, as the last one; type the names "
                     "where it is not")
                : tr("Enter takes it; type s if the print states it"));
  }

  QString offer() const override {
    const std::vector<Id> ids = chosen_.empty() ? likely() : chosen_;
    if (ids.empty() || !enough(ids)) return {};
    return listed(ids) + (hands_.stated ? QStringLiteral(" stated") : QString());
  }

  Echo echo(const QString& text) const override {
    if (text.isEmpty()) return {};
    RelatingActivity tried(hands_, kind_);
    tried.chosen_ = chosen_;
    const QStringList words = tried.takeText(text);
    if (!tried.complete()) return {listed(tried.chosen_), false, -1, false};
    return echoLine(hands_, tried.line(words));
  }

  bool back() override {
    // Whoever leaves an offer does not want it made again.
    if (chosen_.empty() && !likely().empty()) hands_.decline(kind_, likely());
    return CollectingActivity::back();
  }

  bool enter(const QString& text) override {
    const QStringList words = takeText(text);
    if (!complete()) {
      if (!words.isEmpty()) return applyText(text);
      if (text.isEmpty()) emit hands_.desk.refused(prompt());
      return !text.isEmpty();
    }
    if (!applyText(line(words))) return false;
    hands_.stated = words.contains(QStringLiteral("stated"));
    return true;
  }

 private:
  /// What the tracing says is understood so.
  std::vector<Id> likely() const {
    if (!hands_.desk.hasPart() || !hands_.drawnToScale()) return {};
    return suggested(hands_.part(), hands_.desk.solution(), hands_.desk.face(), kind_, hands_.axis,
                     hands_.declinedHere(kind_));
  }

  /// The places chosen, and which of them is in the middle.
  QString completeWords() const {
    if (kind_ != UnderstandingKind::midway || chosen_.size() != 3) return listed(chosen_);
    return tr("%1 between %2 and %3")
        .arg(listed({chosen_[0]}), listed({chosen_[1]}), listed({chosen_[2]}));
  }

  /// What the tracing says against the order in which they were pointed at; empty where it agrees
  /// or tells nothing.
  QString objection() const {
    std::vector<Id> order = chosen_;
    if (kind_ == UnderstandingKind::midway && order.size() == 3) {
      std::swap(order[0], order[1]);
    } else if (kind_ == UnderstandingKind::symmetric && order.size() == 3) {
      std::swap(order[1], order[2]);
    } else if (kind_ != UnderstandingKind::equal) {
      return {};
    }
    int sense = 0;
    for (std::size_t i = 0; i + 1 < order.size(); ++i) {
      const auto step = tracedDistance(hands_.part(), order[i], order[i + 1], hands_.axis);
      if (!step || *step == 0) return {};
      const int now = *step < 0 ? -1 : 1;
      if (sense != 0 && now != sense) {
        return tr("they are traced in another order than %1").arg(listed(order));
      }
      sense = now;
    }
    return {};
  }

  /// Whether it holds along an axis; the others hold in the plane of the face.
  bool isAlong() const { return kind_ <= UnderstandingKind::equal; }

  bool complete() const { return enough(chosen_); }

  bool enough(const std::vector<Id>& ids) const {
    switch (kind_) {
      case UnderstandingKind::midway:
      case UnderstandingKind::symmetric:
      case UnderstandingKind::equal:
        return ids.size() >= 3;
      default:
        return ids.size() >= 2;
    }
  }

  /// Ids go to those chosen; words stay. What names no places of its own is about what is offered:
  /// Enter alone takes it as it stands, `s` says that the print states it.
  QStringList takeText(const QString& text) {
    const QString offered = offer();
    QStringList words = takeIds(text);
    if (!words.isEmpty() && words.back() == QLatin1String("s"))
      words.back() = QStringLiteral("stated");
    const bool aboutOffer =
        words.isEmpty() ? text.isEmpty() : words == QStringList{QStringLiteral("stated")};
    if (!aboutOffer || offered.isEmpty()) return words;
    const QStringList more = takeIds(offered);
    return words.isEmpty() ? more : words;
  }

  QString line(const QStringList& words) const {
    const bool symmetric = kind_ == UnderstandingKind::symmetric;
    std::vector<Id> of = chosen_;
    QString about;
    if (symmetric) {
      about = QStringLiteral(" about ") + QString::fromStdString(of.back());
      of.pop_back();
    }
    const QString word = kind_ == UnderstandingKind::inLine
                             ? QStringLiteral("in line")
                             : QString::fromStdString(std::string(nameOf(kind_)));
    const QString axis =
        isAlong() ? QString::fromStdString(std::string(nameOf(hands_.axis))) + ' ' : QString();
    return word + ' ' + axis + listed(of) + about + ' ' + words.join(' ');
  }

  UnderstandingKind kind_;
};

class ZeroActivity : public CollectingActivity {
 public:
  using CollectingActivity::CollectingActivity;

  Doing doing() const override { return Doing::zeroing; }

  QString prompt() const override {
    if (chosen_.empty()) {
      return tr("Zero: point at an edge or a hole, or at two sides for the middle between them");
    }
    if (chosen_.size() == 1) {
      return tr("Zero at %1: Enter takes it; point at another for the middle").arg(listed(chosen_));
    }
    return tr("Zero in the middle of %1: Enter for the finished part, type stock for the stock")
        .arg(listed(chosen_));
  }

  /// What lies along another axis is another zero.
  bool clickTakes(const QString&, const Pointed& pointed) const override {
    return !chosen_.empty() && !pointed.place.empty() &&
           !axisBetween(hands_.part(), chosen_[0], pointed.place, hands_.axis).ok();
  }

  bool enter(const QString& text) override {
    const QStringList words = takeIds(text);
    if (chosen_.empty()) return applyText(text);
    if (chosen_.size() > 2) {
      emit hands_.desk.refused(tr("Zero is at one feature or in the middle of two"));
      return false;
    }
    if (chosen_.size() == 2) return setMiddle(words);
    if (words.isEmpty()) return setAt();
    // A whole line, such as `zero y F`, is welcome at any time.
    const auto line = hands_.line(text);
    if (line.ok()) return hands_.apply(line);
    emit hands_.desk.refused(tr("%1 says nothing of a zero at %2: Enter alone sets it there, "
                                "another place for the middle")
                                 .arg(words.join(' '), listed(chosen_)));
    return false;
  }

 private:
  bool setMiddle(const QStringList& words) {
    const auto axis = axisBetween(hands_.part(), chosen_[0], chosen_[1], hands_.axis);
    if (!axis.ok()) {
      emit hands_.desk.refused(QString::fromStdString(axis.error().text));
      return false;
    }
    return applyText(QStringLiteral("zero %1 middle %2 %3")
                         .arg(QString::fromStdString(std::string(nameOf(*axis))), listed(chosen_),
                              words.join(' ')));
  }

  /// An edge settles one axis; a hole, both that lie in the face.
  bool setAt() {
    Part next = hands_.part();
    const Id id = chosen_[0];
    const auto axes = axesIn(hands_.desk.face());
    const std::size_t setup = hands_.setupHere();
    bool any = false;
    for (const Axis axis : axes) {
      if (hands_.desk.solution().position(id, axis) == nullptr) continue;
      const std::string line = "zero " + std::string(nameOf(axis)) + " " + id;
      LineContext context = hands_.context();
      context.setup = setup;
      auto outcome = applyLine(next, line, context);
      if (!outcome.ok()) return hands_.apply(outcome);
      next = std::move(outcome->part);
      any = true;
    }
    if (!any) {
      emit hands_.desk.refused(tr("%1 does not lie in this setup's face").arg(listed(chosen_)));
      return false;
    }
    if (!hands_.apply(std::move(next), tr("Zero at %1").arg(listed(chosen_)))) return false;
    hands_.desk.chooseSetup(static_cast<int>(setup));
    chosen_.clear();
    return true;
  }
};

}  // namespace

std::unique_ptr<Activity> relating(Hands& hands, UnderstandingKind kind) {
  return std::make_unique<RelatingActivity>(hands, kind);
}

std::unique_ptr<Activity> settingZero(Hands& hands) {
  return std::make_unique<ZeroActivity>(hands);
}

}  // namespace inchwright::app
