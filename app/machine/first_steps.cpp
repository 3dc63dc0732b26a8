#include "app/machine/first_steps.h"

#include <QCoreApplication>

#include "app/base/spoken_english.h"
#include "core/base/english.h"
#include "core/say/milled_words.h"
#include "core/say/setup_words.h"

namespace inchwright::app {
namespace {

FirstStep readoutStep(const Machine& machine) {
  const auto tr = [](const char* text) { return QCoreApplication::translate("FirstSteps", text); };
  FirstStep step;
  step.heading =
      machine.unit == Unit::inch ? tr("Readout in inches") : tr("Readout in millimetres");
  step.lines << tr("It counts in steps of %1.").arg(QString::fromStdString(machine.step))
             << (machine.xCounts == CountsX::right ? tr("X counts up as the tool goes right.")
                                                   : tr("X counts up as the tool goes left."))
             << (machine.yCounts == CountsY::away
                     ? tr("Y counts up as the tool goes away from you.")
                     : tr("Y counts up as the tool comes to you."));
  return step;
}

}  // namespace

std::vector<FirstStep> firstSteps(const Desk& desk) {
  std::vector<FirstStep> steps{readoutStep(desk.job().machine)};
  const SetupWords words = setupWords(desk.part(), *desk.table(), spokenEnglish());
  for (std::size_t i = 0; i < words.touchOff.size(); ++i) {
    FirstStep step;
    const QChar letter = QLatin1Char(desk.table()->touchOff[i].axis.letter());
    step.heading = QCoreApplication::translate("FirstSteps", "%1 zero: %2")
                       .arg(letter)
                       .arg(QString::fromStdString(words.touchOff[i].what));
    for (const std::string& line : words.touchOff[i].steps) {
      step.lines << QString::fromStdString(line);
    }
    steps.push_back(std::move(step));
  }
  return steps;
}

std::vector<FirstStep> milledSteps(const Desk& desk) {
  std::vector<FirstStep> steps;
  const auto isName = [&](std::string_view word) { return desk.part().feature(word) != nullptr; };
  const auto said = [&](const std::string& text) {
    return QString::fromStdString(inEnglish(text, spokenEnglish(), isName));
  };
  for (const MilledCut& cut : desk.table()->milled) {
    FirstStep notes;
    notes.heading = QString::fromStdString(cut.id) + QStringLiteral(": ") + said(cut.tool);
    for (const std::string& line : milledNotes(cut, desk.table()->step)) notes.lines << said(line);
    steps.push_back(std::move(notes));
    for (const CutterRun& run : cut.runs) {
      steps.push_back(
          {QString::fromStdString(cut.id) + QLatin1Char(' ') + said(purposeOf(cut, run)),
           {said(runWords(run))}});
    }
  }
  return steps;
}

}  // namespace inchwright::app
