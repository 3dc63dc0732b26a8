// What the tracing says is understood without a figure, all of it at once.

#include <QStringList>

#include "app/session/activity.h"
#include "app/session/suggestions.h"
#include "core/lines/lines.h"

namespace inchwright::app {
namespace {

class RelatingAllActivity : public Activity {
 public:
  explicit RelatingAllActivity(Hands& hands) : Activity(hands) { gather(); }

  Doing doing() const override { return Doing::relating; }

  QString prompt() const override {
    if (offered_.empty()) return tr("The tracing shows nothing more that has no figure");
    QStringList words;
    for (std::size_t i = 0; i < offered_.size(); ++i) {
      words << tr("%1: %2").arg(i + 1).arg(offered_[i].words);
    }
    return tr("Without a figure: %1. Enter takes them as understood, s as stated on the print; "
              "a number leaves that one out")
        .arg(words.join(QStringLiteral("; ")));
  }

  QString offer() const override {
    return offered_.empty() ? QString() : tr("all %1").arg(offered_.size());
  }

  Echo echo(const QString& text) const override {
    if (text.isEmpty() || text == QLatin1String("s") || numbered(text)) return {};
    return Activity::echo(text);
  }

  void point(const Pointed&) override {}

  bool enter(const QString& text) override {
    if (const auto number = numbered(text)) {
      const auto left = offered_.begin() + static_cast<std::ptrdiff_t>(*number);
      hands_.decline(left->kind, left->ids);
      offered_.erase(left);
      return true;
    }
    const bool stated = text == QLatin1String("s");
    if (!text.isEmpty() && !stated) return hands_.apply(hands_.line(text));
    if (offered_.empty()) return false;
    Part next = hands_.part();
    for (const Offered& one : offered_) {
      auto outcome = applyLine(next, one.line + (stated ? " stated" : ""), hands_.context());
      if (!outcome.ok()) return hands_.apply(outcome);
      next = std::move(outcome->part);
    }
    const QString title = tr("What is understood without a figure: %1").arg(offered_.size());
    return over_ = hands_.apply(std::move(next), title);
  }

  bool back() override { return false; }
  bool over() const override { return over_; }

  std::vector<Id> chosen() const override {
    std::vector<Id> all;
    for (const Offered& one : offered_) all.insert(all.end(), one.ids.begin(), one.ids.end());
    return all;
  }

 private:
  struct Offered {
    UnderstandingKind kind = UnderstandingKind::inLine;
    std::vector<Id> ids;
    std::string line;
    QString words;
  };

  std::optional<std::size_t> numbered(const QString& text) const {
    bool whole = false;
    const int number = text.toInt(&whole);
    const bool one = whole && number >= 1 && number <= static_cast<int>(offered_.size());
    return one ? std::optional(static_cast<std::size_t>(number - 1)) : std::nullopt;
  }

  /// Each is looked for as if those before it were taken: what then hangs together needs no second.
  void gather() {
    if (!hands_.desk.hasPart() || !hands_.drawnToScale()) return;
    Part part = hands_.part();
    const auto axes = axesIn(hands_.desk.face());
    for (const UnderstandingKind kind :
         {UnderstandingKind::inLine, UnderstandingKind::concentric, UnderstandingKind::midway}) {
      for (const Axis axis : {axes[0], axes[1]}) {
        if (kind != UnderstandingKind::concentric || axis == axes[0]) gather(part, kind, axis);
      }
    }
  }

  void gather(Part& part, UnderstandingKind kind, Axis axis) {
    while (true) {
      const auto solution = solve(part);
      if (!solution.ok()) return;
      std::vector<Id> ids =
          suggested(part, *solution, hands_.desk.face(), kind, axis, hands_.declinedHere(kind));
      if (ids.empty()) return;
      Offered one = offeredFor(kind, axis, std::move(ids));
      auto outcome = applyLine(part, one.line, hands_.context());
      if (!outcome.ok()) return;
      part = std::move(outcome->part);
      offered_.push_back(std::move(one));
    }
  }

  static Offered offeredFor(UnderstandingKind kind, Axis axis, std::vector<Id> ids) {
    const bool along = kind != UnderstandingKind::concentric;
    Offered one;
    one.kind = kind;
    one.line = kind == UnderstandingKind::inLine ? "in line" : std::string(nameOf(kind));
    if (along) one.line += " " + std::string(nameOf(axis));
    QStringList names;
    for (const Id& id : ids) {
      one.line += " " + id;
      names << QString::fromStdString(id);
    }
    const QString all = names.join(QLatin1Char(' '));
    one.words = along ? tr("%1 along %2 %3").arg(wordFor(kind), wordFor(axis), all)
                      : tr("%1 %2").arg(wordFor(kind), all);
    one.ids = std::move(ids);
    return one;
  }

  std::vector<Offered> offered_;
  bool over_ = false;
};

}  // namespace

std::unique_ptr<Activity> relatingAll(Hands& hands) {
  return std::make_unique<RelatingAllActivity>(hands);
}

}  // namespace inchwright::app
