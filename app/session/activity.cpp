#include "app/session/activity.h"

#include <QCoreApplication>
#include <algorithm>

#include "app/session/offer_walk.h"
#include "app/session/picture_edits.h"
#include "app/session/plausible.h"
#include "app/session/side_words.h"
#include "core/measure/writing.h"
#include "core/part/place_index.h"
#include "core/say/callout_words.h"
#include "core/shop/threads.h"

namespace inchwright::app {
namespace {

QString signedFigure(Length length, Unit unit) {
  const QString figure = QString::fromStdString(writePlain(length.magnitude(), unit));
  return (length.ticks() < 0 ? QStringLiteral("-") : QStringLiteral("+")) + figure;
}

/// A hole that is found through another part's needs that part in the job.
void askForMate(const Job& job, LineOutcome& outcome) {
  const Feature* hole = outcome.part.feature(outcome.id);
  const Drilled* drilled = hole == nullptr ? nullptr : hole->drilled();
  if (drilled == nullptr || !drilled->mate || outcome.feature) return;
  const Part* other = job.part(drilled->mate->part);
  if (other == nullptr) {
    outcome.question = tr("there is no part %1 in this job")
                           .arg(QString::fromStdString(drilled->mate->part))
                           .toStdString();
  } else if (const auto places = PlaceIndex::of(*other);
             places.ok() && !places->find(drilled->mate->place)) {
    outcome.question = tr("%1 has no place %2")
                           .arg(QString::fromStdString(drilled->mate->part),
                                QString::fromStdString(drilled->mate->place))
                           .toStdString();
  }
}

}  // namespace

QString tr(const char* text) {
  return QCoreApplication::translate("Work", text);
}

LineContext Hands::context() const {
  LineContext context;
  context.axis = axis;
  context.unit = desk.job().unit;
  context.face = desk.face();
  context.setup = setupHere();
  return context;
}

std::size_t Hands::setupHere() const {
  const auto& setups = part().setups;
  if (setups.empty()) return 0;
  const auto now = static_cast<std::size_t>(desk.setupIndex());
  if (setups[now].face == desk.face()) return now;
  const auto found = std::find_if(setups.begin(), setups.end(),
                                  [&](const Setup& one) { return one.face == desk.face(); });
  return static_cast<std::size_t>(found - setups.begin());
}

const std::vector<std::vector<Id>>& Hands::declinedHere(UnderstandingKind kind) const {
  static const std::vector<std::vector<Id>> none;
  const auto found = declined.find({part().name, kind});
  return found == declined.end() ? none : found->second;
}

void Hands::decline(UnderstandingKind kind, const std::vector<Id>& ids) {
  declined[{part().name, kind}].push_back(ids);
}

bool Hands::drawnToScale() const {
  if (!desk.hasPart()) return false;
  const Picture* picture = pictureUnder(desk.job(), desk.part(), desk.face());
  return picture != nullptr && picture->points.size() >= 2;
}

bool Hands::offersHere() const {
  return offering && offering->part == desk.partIndex() && offering->face == desk.face() &&
         !OfferWalk(*this).waiting().empty();
}

const Part& Hands::part() const {
  static const Part none;
  return desk.hasPart() ? desk.part() : none;
}

TracingEvidence Hands::evidence() const {
  return TracingEvidence(part(), squaringError);
}

bool Hands::isPlace(const QString& id) const {
  const std::string wanted = id.toStdString();
  return desk.hasPart() && std::any_of(kAxes.begin(), kAxes.end(), [&](Axis along) {
           return desk.solution().position(wanted, along) != nullptr;
         });
}

std::pair<Id, Id> Hands::ordered(const Id& from, const Id& to, Axis along) const {
  if (const auto traced = tracedDistance(part(), from, to, along)) {
    return *traced < 0 ? std::pair(to, from) : std::pair(from, to);
  }
  const auto placed = desk.hasPart() ? desk.solution().between(from, to, along) : std::nullopt;
  return placed && placed->sign() < 0 ? std::pair(to, from) : std::pair(from, to);
}

Result<LineOutcome> Hands::line(const QString& text) const {
  auto outcome = applyLine(part(), text.toStdString(), context());
  if (outcome.ok() && outcome->did == LineDid::feature) askForMate(desk.job(), *outcome);
  if (!outcome.ok() || outcome->did != LineDid::reading) return outcome;
  for (Reading& reading : outcome->part.readings) {
    if (reading.id != outcome->id || reading.kind != ReadingKind::along) continue;
    const Id from = reading.from;
    std::tie(reading.from, reading.to) = ordered(reading.from, reading.to, reading.axis);
    if (reading.from == from) continue;
    outcome->said +=
        tr(", which runs from %1 to %2")
            .arg(QString::fromStdString(reading.from), QString::fromStdString(reading.to))
            .toStdString();
  }
  return outcome;
}

bool Hands::apply(Result<LineOutcome> outcome) {
  if (!outcome.ok()) {
    emit desk.refused(QString::fromStdString(outcome.error().text));
    return false;
  }
  const std::size_t setup = setupHere();
  // A line that is read was checked with all it leads to.
  if (!applyChecked(std::move(outcome->part), QString::fromStdString(outcome->said))) return false;
  // The sheet shows what was just set.
  if (outcome->did == LineDid::setup) desk.chooseSetup(static_cast<int>(setup));
  return true;
}

bool Hands::apply(Part next, const QString& title) {
  const auto checked = checkPart(next);
  if (!checked.ok()) {
    emit desk.refused(QString::fromStdString(checked.error().text));
    return false;
  }
  return applyChecked(std::move(next), title);
}

bool Hands::applyChecked(Part next, const QString& title) {
  desk.endMerge();
  return desk.applyPart(std::move(next), title);
}

bool Activity::clickTakes(const QString&, const Pointed&) const {
  return false;
}

Echo Activity::echo(const QString& text) const {
  if (text.isEmpty()) return {};
  return echoLine(hands_, text);
}

Echo echoFigure(const QString& text, Unit unit) {
  Echo echo;
  const auto figure = readLength(text.toStdString(), {unit});
  if (!figure.ok()) {
    echo.text = QString::fromStdString(figure.error().text);
    echo.refused = true;
    echo.at = static_cast<int>(figure.error().at.value_or(0));
    return echo;
  }
  const Length value = figure->value;
  QStringList forms;
  const std::string fraction = writeFraction(value);
  if (!fraction.empty()) forms << QString::fromStdString(fraction);
  forms << tr("%1 in").arg(QString::fromStdString(writeDecimal(value, Unit::inch)));
  forms << tr("%1 mm").arg(QString::fromStdString(writeDecimal(value, Unit::millimetre)));
  echo.text = forms.join(QStringLiteral(" = "));
  if (figure->tolerance) {
    echo.text += QStringLiteral("   ") + signedFigure(figure->tolerance->upper, figure->unit) +
                 QStringLiteral(" ") + signedFigure(figure->tolerance->lower, figure->unit);
  }
  if (figure->reference) echo.text += QStringLiteral("   ") + tr("(reference)");
  for (const std::string& question : figure->questions) {
    echo.text += QStringLiteral("   ") + QString::fromStdString(question);
    echo.doubtful = true;
  }
  return echo;
}

void addQuestion(const std::string& question, Echo& echo) {
  if (question.empty()) return;
  echo.text += QStringLiteral("   ") + QString::fromStdString(question);
  echo.doubtful = true;
}

void addObjection(const Hands& hands, const Reading& reading, Echo& echo) {
  addObjection(hands.evidence(), hands.drawnToScale(), reading, echo);
  const bool isSize = reading.kind == ReadingKind::radius ||
                      reading.kind == ReadingKind::diameter || reading.kind == ReadingKind::pcd;
  if (isSize && reading.figure.multiplied) addQuestion(kPlacesOrProduct, echo);
  if (reading.kind != ReadingKind::along) return;
  if (reading.figure.symbol != SizeSymbol::none) {
    addQuestion(tr("lettered as the size of something round: is it a distance?").toStdString(),
                echo);
  }
  // Typed twice it would seem to check itself.
  for (const Reading& there : hands.part().readings) {
    const bool same = there.kind == reading.kind && there.axis == reading.axis &&
                      there.id != reading.id &&
                      std::minmax(there.from, there.to) == std::minmax(reading.from, reading.to);
    if (!same) continue;
    const QString text = QString::fromStdString(there.figure.text);
    addQuestion(tr("%1 is read there already: once more only where the print letters it twice")
                    .arg(text)
                    .toStdString(),
                echo);
    return;
  }
}

void addObjection(const TracingEvidence& evidence, bool toScale, const Reading& reading,
                  Echo& echo) {
  const std::string objection = evidence.objection(reading, toScale);
  if (objection.empty()) return;
  echo.text += QStringLiteral("   ") + QString::fromStdString(objection);
  echo.doubtful = true;
}

void addTurned(const Feature& feature, Echo& echo) {
  QStringList said;
  const auto say = [&](const char* what, const auto& figure) {
    if (figure) said << tr(what).arg(QString::fromStdString(figure->text));
  };
  std::string question;
  if (const auto* taper = feature.as<kind::Taper>()) {
    say("large %1", taper->large);
    say("small %1", taper->small);
    say("angle %1", taper->angle);
    say("%1 to the foot", taper->perFoot);
    if (taper->large && taper->small && taper->large->value <= taper->small->value) {
      question = tr("the large end is no larger than the small one").toStdString();
    }
  } else if (const auto* chamfer = feature.as<kind::Chamfer>()) {
    say("%1 long", chamfer->length);
    say("at %1", chamfer->angle);
    if (chamfer->angle && chamfer->angle->value.toDegrees() >= 90) {
      question = tr("a chamfer lies at less than 90°: is it read right?").toStdString();
    }
  } else if (const auto* centre = feature.as<kind::CentreDrill>()) {
    said << QString::fromStdString(centre->size);
    if (centre->size.empty()) question = tr("how large it is is missing, as in #2").toStdString();
  } else if (const auto* screwed = feature.as<kind::Screwed>()) {
    said << QString::fromStdString(screwed->thread);
  }
  said.removeAll(QString());
  if (!said.isEmpty()) echo.text += QStringLiteral(": ") + said.join(QStringLiteral(", "));
  addQuestion(question, echo);
  const auto* screwed = feature.as<kind::Screwed>();
  const std::string thread = screwed             ? screwed->thread
                             : feature.drilled() ? feature.drilled()->thread
                                                 : std::string();
  const auto known = threadNamed(thread);
  if (!thread.empty() && !known.ok()) addQuestion(known.error().text, echo);
}

Echo echoFeature(const Hands& hands, const FeatureLine& line) {
  Echo echo;
  const Feature& feature = line.feature;
  echo.text = wordFor(feature.kind()) + QStringLiteral(" ") + QString::fromStdString(feature.id);
  if (const auto* edge = feature.as<kind::Edge>()) {
    echo.text += edge->side ? QStringLiteral(", ") + tr("the %1 side").arg(wordFor(*edge->side))
                            : tr(", across %1").arg(wordFor(edge->axis));
  }
  if (const auto* ring = feature.as<kind::Ring>(); ring && ring->pitchDiameter) {
    echo.text += tr(", on %1").arg(QString::fromStdString(ring->pitchDiameter->text));
    if (ring->firstAngle) {
      echo.text += tr(" from %1°").arg(ring->firstAngle->value.toDegrees(), 0, 'g', 8);
    }
  }
  if (const auto* row = feature.as<kind::Row>(); row && row->pitch) {
    echo.text += tr(", pitch %1").arg(QString::fromStdString(row->pitch->text));
  }
  const auto* slot = feature.as<kind::Slot>();
  const std::optional<Lettered> width = slot ? slot->width : std::nullopt;
  for (const auto* size : {&diameterOf(feature), &width, &radiusOf(feature)}) {
    if (!*size) continue;
    const Echo figure = echoFigure(QString::fromStdString((*size)->text), hands.desk.job().unit);
    echo.text += QStringLiteral(": ") + figure.text;
    echo.doubtful = echo.doubtful || figure.doubtful;
  }
  const std::string more = calloutWords(line);
  if (!more.empty()) echo.text += QStringLiteral("; ") + QString::fromStdString(more);
  addTurned(feature, echo);
  addQuestion(line.question, echo);
  return echo;
}

Echo echoLine(const Hands& hands, const QString& text) {
  Echo echo;
  const auto outcome = hands.line(text);
  if (outcome.ok() && outcome->feature) return echoFeature(hands, *outcome->feature);
  if (outcome.ok()) {
    echo.text = QString::fromStdString(outcome->said);
    addQuestion(outcome->question, echo);
    const Reading* reading =
        outcome->did == LineDid::reading ? outcome->part.reading(outcome->id) : nullptr;
    if (reading == nullptr) return echo;
    if (reading->angle) {
      echo.text += QStringLiteral("   ") + tr("%1 degrees").arg(reading->angle->value.toDegrees());
    } else {
      const Echo figure =
          echoFigure(QString::fromStdString(reading->figure.text), hands.desk.job().unit);
      echo.text += QStringLiteral("   ") + figure.text;
      echo.doubtful = echo.doubtful || figure.doubtful;
    }
    addObjection(hands, *reading, echo);
    return echo;
  }
  // A bare figure is worth reading to whoever types it, even where nothing asks for one.
  const Echo figure = echoFigure(text, hands.desk.job().unit);
  if (!figure.refused) return figure;
  echo.text = QString::fromStdString(outcome.error().text);
  echo.refused = true;
  echo.at = static_cast<int>(outcome.error().at.value_or(0));
  return echo;
}

QString wordFor(Axis axis) {
  return axis == Axis::x   ? QStringLiteral("X")
         : axis == Axis::y ? QStringLiteral("Y")
                           : QStringLiteral("Z");
}

QString wordFor(FeatureKind kind) {
  switch (kind) {
    case FeatureKind::edge:
      return tr("edge");
    case FeatureKind::hole:
      return tr("hole");
    case FeatureKind::slot:
      return tr("slot");
    case FeatureKind::ring:
      return tr("ring of holes");
    case FeatureKind::row:
      return tr("row of holes");
    case FeatureKind::round:
      return tr("round");
    case FeatureKind::point:
      return tr("point");
    case FeatureKind::line:
      return tr("line");
    case FeatureKind::arc:
      return tr("arc");
    case FeatureKind::outside:
      return tr("outside diameter");
    case FeatureKind::bored:
      return tr("bore");
    case FeatureKind::taper:
      return tr("taper");
    case FeatureKind::groove:
      return tr("groove");
    case FeatureKind::screwed:
      return tr("thread");
    case FeatureKind::knurl:
      return tr("knurl");
    case FeatureKind::chamfer:
      return tr("chamfer");
    case FeatureKind::centreDrill:
      return tr("centre hole");
  }
  return {};
}

QString wordFor(UnderstandingKind kind) {
  switch (kind) {
    case UnderstandingKind::inLine:
      return tr("in line");
    case UnderstandingKind::midway:
      return tr("midway");
    case UnderstandingKind::symmetric:
      return tr("symmetric");
    case UnderstandingKind::equal:
      return tr("equal spaces");
    case UnderstandingKind::concentric:
      return tr("concentric");
    case UnderstandingKind::tangent:
      return tr("tangent");
    case UnderstandingKind::parallel:
      return tr("parallel");
    case UnderstandingKind::square:
      return tr("square");
    case UnderstandingKind::on:
      return tr("on");
    case UnderstandingKind::wayRound:
      return tr("way round");
    case UnderstandingKind::beside:
      return tr("beside");
  }
  return {};
}

}  // namespace inchwright::app
