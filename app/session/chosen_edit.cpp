#include "app/session/chosen_edit.h"

#include "app/session/doubt_edits.h"
#include "core/lines/typed_name.h"
#include "core/part/edit.h"
#include "core/say/reading_words.h"

namespace inchwright::app {
namespace {

std::optional<ChosenEdit> readingEdit(const Hands& hands, const Reading& before,
                                      const QString& text) {
  const Unit unit = hands.desk.job().unit;
  const auto reading = withFigure(before, text.toStdString(), unit);
  if (!reading.ok()) return std::nullopt;
  auto part = replaceReading(hands.part(), before.id, *reading);
  if (!part.ok()) return std::nullopt;
  ChosenEdit edit{*std::move(part), {}, {}};
  if (reading->angle) {
    edit.echo.text = tr("%1 degrees").arg(reading->angle->value.toDegrees());
  } else {
    edit.echo = echoFigure(text, unit);
  }
  edit.title =
      tr("Read %1 as %2").arg(QString::fromStdString(readingWords(hands.part(), before)), text);
  edit.echo.text.prepend(tr("%1 was %2, now ")
                             .arg(QString::fromStdString(endsWords(hands.part(), before)),
                                  QString::fromStdString(before.figure.text)));
  addObjection(hands, *reading, edit.echo);
  return edit;
}

/// The feature that the text makes of the chosen one, named and lying as before; empty where it
/// names another, or says nothing of a feature.
std::optional<Feature> changedFeature(const Hands& hands, const Feature& before,
                                      const QString& text) {
  const QString first = text.section(QLatin1Char(' '), 0, 0);
  const auto kind = featureKindNamed(first.toStdString());
  const QString tail = kind ? text.section(QLatin1Char(' '), 1).trimmed() : text;
  LineContext context = hands.context();
  context.face = before.face;
  // In front of what is said stands its own name; a name that was typed would then be left over.
  const QString line = QString::fromStdString(before.id) + QLatin1Char(' ') + tail;
  auto read =
      readFeatureLine(hands.part(), kind.value_or(before.kind()), line.toStdString(), context);
  if (!read.ok() || (tail.isEmpty() && !kind)) return std::nullopt;
  Feature changed = std::move(read->feature);
  changed.traced = before.traced;
  changed.face = before.face;
  changed.extra = before.extra;
  return changed;
}

/// What was said of the hole besides its size, and is said no more.
void addLoss(const Feature& before, const Feature& after, Echo& echo) {
  const Drilled* was = before.drilled();
  const Drilled* is = after.drilled();
  if (was == nullptr || is == nullptr) return;
  QStringList lost;
  const auto lose = [&](bool gone, const QString& what) {
    if (gone) lost << what;
  };
  lose(is->make == Make::drill && was->make != Make::drill,
       QString::fromStdString(std::string(nameOf(was->make))));
  if (is->depth.through && was->depth.length) {
    lost << tr("%1 deep").arg(QString::fromStdString(was->depth.length->text));
  }
  lose(!is->seatDiameter && was->seatDiameter, tr("its seat"));
  lose(is->limits.empty() && !was->limits.empty(), QString::fromStdString(was->limits));
  lose(is->locate == Locate::coordinate && was->locate != Locate::coordinate,
       tr("how its place is found"));
  lose(after.note.empty() && !before.note.empty(), tr("its note"));
  if (lost.isEmpty()) return;
  addQuestion(tr("no longer: %1; type that too where it stays")
                  .arg(lost.join(QStringLiteral(", ")))
                  .toStdString(),
              echo);
}

bool isName(const QString& text) {
  const bool plain = std::all_of(text.begin(), text.end(), [](QChar c) {
    return c.unicode() < 128 && (c.isLetterOrNumber() || c == QLatin1Char('_'));
  });
  return plain && !text.isEmpty() && text[0].isLetter();
}

std::optional<ChosenEdit> featureEdit(const Hands& hands, const Feature& before,
                                      const QString& text) {
  const QString id = QString::fromStdString(before.id);
  if (const auto changed = changedFeature(hands, before, text)) {
    auto part = replaceFeature(hands.part(), before.id, *changed);
    if (!part.ok()) return std::nullopt;
    ChosenEdit edit{*std::move(part), tr("%1 becomes %2").arg(id, text), {}};
    edit.echo = echoFeature(hands, {*changed});
    edit.echo.text.prepend(edit.title + QStringLiteral(": "));
    addLoss(before, *changed, edit.echo);
    return edit;
  }
  // Whoever begins a line about it does not mean a name.
  if (!isName(text) || hands.isPlace(text) || beginsALine(text.toStdString())) return std::nullopt;
  const std::string name = text.toStdString();
  if (!nameFault(name).empty() || hands.part().reading(name) != nullptr) return std::nullopt;
  auto part = renameFeature(hands.part(), before.id, name);
  if (!part.ok()) return std::nullopt;
  const QString title = tr("%1 is called %2").arg(id, text);
  ChosenEdit edit{*std::move(part), title, Echo{title, false, -1, false}};
  addQuestion(nameQuestion(hands.part(), name, before.id), edit.echo);
  return edit;
}

}  // namespace

std::optional<ChosenEdit> editOfChosen(const Hands& hands, const QString& text) {
  const Selection& chosen = hands.desk.selection();
  if (!hands.desk.hasPart() || chosen.places.size() + chosen.readings.size() != 1) {
    return std::nullopt;
  }
  if (!chosen.readings.empty()) {
    const Reading* reading = hands.part().reading(chosen.readings[0]);
    return reading == nullptr ? std::nullopt : readingEdit(hands, *reading, text);
  }
  const Feature* feature = hands.part().feature(chosen.places[0]);
  return feature == nullptr ? std::nullopt : featureEdit(hands, *feature, text);
}

}  // namespace inchwright::app
