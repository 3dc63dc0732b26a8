// Reading a chain: point at the first feature, then at each next one and type the figure.

#include <cmath>
#include <tuple>

#include "app/session/activity.h"
#include "core/part/common_axis.h"
#include "core/part/edit.h"

namespace inchwright::app {
namespace {

class ReadingActivity : public Activity {
 public:
  using Activity::Activity;

  Doing doing() const override { return Doing::reading; }

  QString prompt() const override {
    const QString axis = wordFor(hands_.axis);
    if (chosen_.empty()) {
      return tr("Along %1: point at the feature the chain begins at, or type L A 3/8").arg(axis);
    }
    const QString from = QString::fromStdString(chosen_[0]);
    if (chosen_.size() == 1) {
      return tr("From %1 along %2: point at the next feature, or type A 3/8. Shift and a click "
                "begins another chain")
          .arg(from, axis);
    }
    return tr("From %1 to %2 along %3: the figure as lettered, then the next place, or Enter")
        .arg(from, QString::fromStdString(chosen_[1]), axis);
  }

  Echo echo(const QString& text) const override {
    if (text.isEmpty()) return {};
    const auto line = lineFor(text);
    if (!line) return Activity::echo(text);
    if (const QString whole = slantedLine(*line); !whole.isEmpty()) return echoLine(hands_, whole);
    Echo echo = echoFigure(line->figure, hands_.desk.job().unit);
    if (echo.refused) {
      // Ends that were typed stand before the figure.
      const auto before = text.toUtf8().size() - line->figure.toUtf8().size();
      if (echo.at >= 0) echo.at += static_cast<int>(before);
      return echo;
    }
    Reading reading;
    const auto axis = axisFor(*line);
    reading.axis = axis.ok() ? *axis : hands_.axis;
    std::tie(reading.from, reading.to) = hands_.ordered(line->from, line->to, reading.axis);
    reading.figure = *readLength(line->figure.toStdString(), {hands_.desk.job().unit});
    addObjection(hands_, reading, echo);
    if (echo.doubtful) addStraightHint(reading, echo);
    return echo;
  }

  void point(const Pointed& pointed) override {
    if (pointed.place.empty()) return;
    if (pointed.extend) chosen_.clear();
    choose(pointed.place);
  }

  bool clickTakes(const QString& typed, const Pointed& pointed) const override {
    return !typed.isEmpty() && !pointed.place.empty() && lineFor(typed).has_value();
  }

  bool enter(const QString& text) override {
    if (text.isEmpty()) return false;
    if (hands_.isPlace(text)) {
      choose(text.toStdString());
      return true;
    }
    const auto line = lineFor(text);
    if (!line) {
      const auto outcome = hands_.line(text);
      if (!hands_.apply(outcome)) return false;
      if (outcome->did == LineDid::reading) goOnFrom(*outcome->part.reading(outcome->id));
      return true;
    }
    return keep(*line);
  }

  bool back() override {
    if (chosen_.empty()) return false;
    chosen_.pop_back();
    return true;
  }

  std::vector<Id> chosen() const override { return chosen_; }

 private:
  struct Line {
    Id from;
    Id to;
    QString figure;
  };

  /// The chain and the text together: a bare figure where both ends are chosen, or `B 1 3/16` from
  /// the last feature on.
  std::optional<Line> lineFor(const QString& text) const {
    if (chosen_.size() == 2) return Line{chosen_[0], chosen_[1], text};
    if (chosen_.size() != 1) return std::nullopt;
    const QString id = text.section(' ', 0, 0, QString::SectionSkipEmpty);
    const QString figure = text.section(' ', 1, -1, QString::SectionSkipEmpty);
    const QString second = figure.section(' ', 0, 0, QString::SectionSkipEmpty);
    if (figure.isEmpty() || !hands_.isPlace(id) || hands_.isPlace(second)) return std::nullopt;
    return Line{chosen_[0], id.toStdString(), figure};
  }

  /// Whether the two lie askew of both axes, as far as the tracing tells.
  bool isSlanted(const Id& from, const Id& to) const {
    const TracingEvidence evidence = hands_.evidence();
    for (const Axis axis : axesIn(hands_.desk.face())) {
      const auto apart = evidence.distance(from, to, axis);
      if (!apart || std::abs(*apart) <= tracingBound(*apart, hands_.squaringError)) return false;
    }
    return true;
  }

  /// The whole line of what is lettered as an angle (`55°`), or as a distance from centre to centre
  /// (`1 1/4 CRS`) of two that lie askew; empty of what is lettered along an axis.
  QString slantedLine(const Line& line) const {
    const QString last = line.figure.section(' ', -1).toLower();
    const bool angle = line.figure.contains(QChar(0xb0)) || last.startsWith(QLatin1String("deg"));
    const auto figure = readLength(line.figure.toStdString(), {hands_.desk.job().unit});
    const bool centres = figure.ok() && figure->centres;
    if (!angle && !(centres && isSlanted(line.from, line.to))) return {};
    return QStringLiteral("%1 %2 %3 %4")
        .arg(angle ? QStringLiteral("angle") : QStringLiteral("centres"),
             QString::fromStdString(line.from), QString::fromStdString(line.to), line.figure);
  }

  /// A figure that does not go along the axis may be lettered from centre to centre.
  void addStraightHint(Reading reading, Echo& echo) const {
    if (!isSlanted(reading.from, reading.to)) return;
    reading.kind = ReadingKind::centres;
    if (!hands_.evidence().objection(reading, hands_.drawnToScale()).empty()) return;
    echo.text += QStringLiteral("   ") +
                 tr("straight from one to the other it agrees: if it is lettered so, type crs "
                    "behind it");
  }

  /// Once both ends are chosen the direction is told, and the hand may have changed it.
  Result<Axis> axisFor(const Line& line) const {
    return chosen_.size() == 2 ? axisBetween(hands_.part(), line.from, line.to, hands_.axis)
                               : axisOfReading(hands_.part(), line.from, line.to, hands_.axis);
  }

  void choose(const Id& place) {
    if (chosen_.empty()) {
      chosen_ = {place};
    } else if (place != chosen_[0]) {
      const auto axis = axisOfReading(hands_.part(), chosen_[0], place, hands_.axis);
      if (!axis.ok()) {
        emit hands_.desk.refused(QString::fromStdString(axis.error().text));
        return;
      }
      hands_.axis = *axis;
      chosen_.resize(1);
      chosen_.push_back(place);
    }
  }

  bool keep(const Line& line) {
    if (const QString whole = slantedLine(line); !whole.isEmpty()) {
      if (!hands_.apply(hands_.line(whole))) return false;
      chosen_ = {hands_.fromFirst ? line.from : line.to};
      return true;
    }
    const auto axis = axisFor(line);
    if (!axis.ok()) {
      emit hands_.desk.refused(QString::fromStdString(axis.error().text));
      return false;
    }
    hands_.axis = *axis;
    auto figure = readLength(line.figure.toStdString(), {hands_.desk.job().unit});
    if (!figure.ok()) {
      emit hands_.desk.refused(QString::fromStdString(figure.error().text));
      return false;
    }
    Reading reading;
    reading.id = nextReadingId(hands_.part());
    reading.axis = *axis;
    std::tie(reading.from, reading.to) = hands_.ordered(line.from, line.to, *axis);
    reading.figure = std::move(*figure);
    Part next = hands_.part();
    next.readings.push_back(reading);
    const QString title =
        tr("Read %1 from %2 to %3")
            .arg(line.figure, QString::fromStdString(line.from), QString::fromStdString(line.to));
    if (!hands_.apply(std::move(next), title)) return false;
    chosen_ = {hands_.fromFirst ? line.from : line.to};
    return true;
  }

  void goOnFrom(const Reading& reading) {
    hands_.axis = reading.axis;
    chosen_ = {hands_.fromFirst ? reading.from : reading.to};
  }

  std::vector<Id> chosen_;
};

}  // namespace

std::unique_ptr<Activity> readingChain(Hands& hands) {
  return std::make_unique<ReadingActivity>(hands);
}

}  // namespace inchwright::app
