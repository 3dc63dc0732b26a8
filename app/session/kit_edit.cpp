#include "app/session/kit_edit.h"

#include <algorithm>

#include "app/session/activity.h"
#include "app/session/desk.h"
#include "core/kit/as_made.h"
#include "core/kit/kit_line.h"
#include "core/kit/solved_kit.h"
#include "core/say/kit_words.h"

namespace inchwright::app {
namespace {

QString named(const std::string& text) {
  return QString::fromStdString(text);
}

Step stepOf(const Job& job) {
  const auto step = readStep(job.machine.step, job.machine.unit);
  return step.ok() ? *step : Step{Length::ticks(Length::kTicksPerInch / 2000), Unit::inch};
}

struct Said {
  QString text;
  bool doubtful = false;
};

Said ofMate(const Job& job, const std::string& name) {
  for (const MateState& mate : mateStates(job)) {
    if (mate.name != name) continue;
    const bool fine = !mate.fault && !mate.tightAsLettered &&
                      (mate.verdict == Verdict::in || mate.verdict == Verdict::notMeasured);
    return {named(mateWords(mate, stepOf(job))), !fine};
  }
  return {};
}

Said ofGap(const Job& job, const std::string& name, std::span<const Solution> solutions) {
  const Gap* gap = job.gap(name);
  if (gap == nullptr) return {};
  const GapState state = gapState(job, *gap, solutions);
  return {named(gapWords(state, stepOf(job))), state.fault.has_value() || !state.keeps};
}

Said ofOtherHand(const Job& job, const std::string& name) {
  const Part* part = job.part(name);
  if (part == nullptr || !part->opposite) return {};
  Said said{tr("%1: the other hand of %2, %3")
                .arg(named(name), named(part->opposite->part),
                     part->opposite->across == Axis::x ? tr("left and right change places")
                                                       : tr("front and back change places"))};
  if (sameTurnedOver(job, *part)) {
    said.text += QStringLiteral(". ") + tr("It is the same part turned over: make two of that one");
    said.doubtful = true;
  }
  return said;
}

QString titleOf(const KitLineOutcome& outcome) {
  const QString name = named(outcome.name);
  if (outcome.thing == KitThing::otherHand) return tr("Begin %1").arg(name);
  if (outcome.thing == KitThing::mate) {
    return outcome.removed ? tr("Take the mate %1 away").arg(name) : tr("The mate %1").arg(name);
  }
  return outcome.removed ? tr("Take the gap %1 away").arg(name) : tr("The gap %1").arg(name);
}

}  // namespace

std::optional<Result<KitEdit>> kitEditOf(const Desk& desk, const QString& typed) {
  const std::string line = typed.toStdString();
  if (!isKitLine(line) || !desk.hasPart()) return std::nullopt;
  // Someone may have called a hole so.
  if (desk.part().feature(line.substr(0, line.find(' '))) != nullptr) return std::nullopt;
  auto outcome = applyKitLine(desk.job(), line);
  if (!outcome.ok()) return Result<KitEdit>(outcome.error());
  KitEdit edit;
  edit.title = titleOf(*outcome);
  Said said{edit.title};
  if (!outcome->removed) {
    said = outcome->thing == KitThing::mate  ? ofMate(outcome->job, outcome->name)
           : outcome->thing == KitThing::gap ? ofGap(outcome->job, outcome->name, desk.solutions())
                                             : ofOtherHand(outcome->job, outcome->name);
  }
  edit.said = said.text;
  edit.doubtful = said.doubtful;
  edit.job = std::move(outcome->job);
  return Result<KitEdit>(std::move(edit));
}

Echo echoOf(const Result<KitEdit>& edit) {
  Echo echo;
  if (edit.ok()) {
    echo.text = edit->said;
    echo.doubtful = edit->doubtful;
    return echo;
  }
  echo.text = QString::fromStdString(edit.error().text);
  echo.refused = true;
  echo.at = static_cast<int>(edit.error().at.value_or(0));
  return echo;
}

bool applyKit(Desk& desk, const Result<KitEdit>& edit) {
  if (!edit.ok()) {
    emit desk.refused(QString::fromStdString(edit.error().text));
    return false;
  }
  const std::string onDesk = desk.part().name;
  desk.endMerge();
  desk.apply(edit->job, edit->title);
  // A part begun before it does not take its place on the desk.
  const auto& parts = desk.job().parts;
  const auto still =
      std::find_if(parts.begin(), parts.end(), [&](const Part& one) { return one.name == onDesk; });
  if (still != parts.end()) desk.choosePart(static_cast<int>(still - parts.begin()));
  return true;
}

QString mateNow(const Desk& desk, const std::string& mate) {
  return ofMate(desk.job(), mate).text;
}

QString gapNow(const Desk& desk, const std::string& gap) {
  return ofGap(desk.job(), gap, desk.solutions()).text;
}

}  // namespace inchwright::app
