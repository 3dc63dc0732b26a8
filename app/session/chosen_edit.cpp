#include "app/session/chosen_edit.h"

#include "app/session/doubt_edits.h"
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
    edit.echo.text = edit.title;
    if (const auto& size = diameterOf(*changed)) {
      const Echo figure = echoFigure(QString::fromStdString(size->text), hands.desk.job().unit);
      edit.echo.text += QStringLiteral(": ") + figure.text;
      edit.echo.doubtful = figure.doubtful;
    }
    return edit;
  }
  // Whoever begins a line about it does not mean a name.
  if (!isName(text) || hands.isPlace(text) || beginsALine(text.toStdString())) return std::nullopt;
  auto part = renameFeature(hands.part(), before.id, text.toStdString());
  if (!part.ok()) return std::nullopt;
  const QString title = tr("%1 is called %2").arg(id, text);
  return ChosenEdit{*std::move(part), title, Echo{title, false, -1, false}};
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
