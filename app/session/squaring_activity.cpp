// Squaring a picture up: point at places that are known, say where they are, then Enter.

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "app/picture/squared_picture.h"
#include "app/session/activity.h"
#include "app/session/four_sides.h"
#include "app/session/picture_edits.h"
#include "core/base/checked.h"
#include "core/geometry/homography.h"
#include "core/measure/writing.h"
#include "core/say/source_words.h"

namespace inchwright::app {
namespace {

/// Bare figures of the document are inches here; others carry their unit.
Lettered inOwnUnit(Lettered figure, Unit bare) {
  figure.text = QString::fromStdString(figure.text).trimmed().toStdString();
  if (bare == Unit::inch || figure.unit == Unit::inch) return figure;
  auto named = readLength(writeDecimal(figure.value, Unit::millimetre) + " mm");
  return named.ok() ? *std::move(named) : figure;
}

class SquaringActivity : public Activity {
 public:
  explicit SquaringActivity(Hands& hands) : Activity(hands) { hands_.overall = {}; }

  Doing doing() const override { return Doing::squaring; }

  QString prompt() const override {
    if (pending_ && points_.size() == 3 && !fourthCorner().isEmpty()) {
      return tr(
          "The fourth corner: Enter takes it and squares the picture up, unless you type "
          "another place");
    }
    if (pending_ && points_.empty()) {
      const QString asked = tr("Where on the print is this point? Across and up, such as 3 7/8, 0");
      const QString traced = tracedExample();
      return traced.isEmpty() ? asked : asked + tr("; or what is traced there: %1").arg(traced);
    }
    if (pending_) {
      return tr(
          "How far straight from the last point, such as 3 7/8? Or its place, across and "
          "up: 3 7/8, 0");
    }
    switch (points_.size()) {
      case 0:
        return tracedExample().isEmpty()
                   ? tr("Square up: point at a corner or centre whose place you know")
                   : tr("Square up: point at a place you know, or at one that is traced already, "
                        "such as %1")
                         .arg(tracedExample());
      case 1:
        return needed() > 2 ? tr("%1. Point at a second known place").arg(askewWords())
                            : tr("Point at a second known place; a photo needs four");
      default:
        if (points_.size() < needed()) {
          return tr("%1 places known of %2: %3. Point at another")
              .arg(points_.size())
              .arg(needed())
              .arg(askewWords());
        }
        return tr("%1 places known. Point at another, or press Enter to square up by these")
            .arg(points_.size());
    }
  }

  QString offer() const override {
    if (!pending_) return {};
    // Of a further picture nobody begins at the corner as a matter of course.
    if (points_.empty()) return tracedExample().isEmpty() ? QStringLiteral("0, 0") : QString();
    return points_.size() == 3 ? fourthCorner() : QString();
  }

  Echo echo(const QString& text) const override {
    if (text.isEmpty()) return soFar();
    const auto two = placeNamed(text);
    if (!two.ok()) {
      return {QString::fromStdString(two.error().text), true,
              static_cast<int>(two.error().at.value_or(0)), false};
    }
    return {tr("across %1, up %2")
                .arg(QString::fromStdString(two->first.text).trimmed(),
                     QString::fromStdString(two->second.text).trimmed()),
            false, -1, false};
  }

  void point(const Pointed& pointed) override {
    reach_ = pointed.reach;
    pending_ = upright(pointed.at);
  }

  bool clickTakes(const QString& typed, const Pointed& pointed) const override {
    if (!pending_ || (typed.isEmpty() && offer().isEmpty())) return false;
    const QPointF by = upright(pointed.at) - *pending_;
    return std::hypot(by.x(), by.y()) > std::max(reach_, pointed.reach);
  }

  bool goOn(const QString& text) override { return take(text.isEmpty() ? offer() : text); }

  bool enter(const QString& typed) override {
    if (!pending_ && typed.isEmpty() && points_.size() >= 2) {
      if (points_.size() >= needed()) return finish();
      emit hands_.desk.refused(askewWords());
      return false;
    }
    const bool last = pending_ && typed.isEmpty() && points_.size() == 3;
    if (!take(typed.isEmpty() ? offer() : typed)) return false;
    return !last || finish();
  }

  bool back() override {
    if (pending_) {
      pending_.reset();
    } else if (!points_.empty()) {
      points_.pop_back();
    } else {
      return false;
    }
    return true;
  }

  bool over() const override { return over_; }
  std::optional<FeatureKind> next() const override {
    return fourSides(hands_) ? std::optional(FeatureKind::edge) : std::nullopt;
  }
  std::optional<QPointF> pending() const override {
    return pending_ ? std::optional(turnedBy(*pending_, turned())) : std::nullopt;
  }

  std::vector<QPointF> marks() const override {
    std::vector<QPointF> marks;
    for (const SquaringPoint& one : points_) {
      marks.push_back(turnedBy(asTaken(one), turned()));
    }
    return marks;
  }

 private:
  using TwoLengths = std::pair<Lettered, Lettered>;

  const Picture* picture() const {
    return hands_.desk.hasPart()
               ? pictureUnder(hands_.desk.job(), hands_.part(), hands_.desk.face())
               : nullptr;
  }
  int turned() const { return picture() == nullptr ? 0 : picture()->turn; }
  /// Where a place of the picture lies that is turned to be looked at, once it stands upright.
  QPointF upright(QPointF shown) const { return turnedBy(shown, (360 - turned()) % 360); }

  /// Where a place or two edges that are traced already lie on the print, as `A` or `L, F`; another
  /// picture of the print is squared up by them.
  std::optional<QPointF> tracedAt(const QString& text) const {
    const PictureView* view =
        picture() == nullptr ? nullptr : viewOf(hands_.part(), hands_.desk.face());
    if (view == nullptr) return std::nullopt;
    const QStringList names = text.split(QLatin1Char(','));
    const auto axes = axesIn(hands_.desk.face());
    std::array<std::optional<double>, 2> at;
    for (std::size_t i = 0; i < 2; ++i) {
      const QString& name = names.size() == 2 ? names[static_cast<qsizetype>(i)] : names[0];
      const Feature* feature = hands_.part().feature(name.trimmed().toStdString());
      const bool here =
          feature != nullptr && (feature->is<kind::Edge>() || feature->face == hands_.desk.face());
      if (here) at[i] = tracedAlong(*feature, axes[i]);
    }
    if (names.size() > 2 || !at[0] || !at[1]) return std::nullopt;
    return onPrint(asViewed({*at[0], *at[1]}, hands_.desk.face()), *view);
  }

  /// Of what could be named so: `A`, else `L, F`; empty where nothing is.
  QString tracedExample() const {
    QString edges[2];
    const auto axes = axesIn(hands_.desk.face());
    for (const Feature& feature : hands_.part().features) {
      const QString name = QString::fromStdString(feature.id);
      if (!feature.is<kind::Edge>() && tracedAt(name)) return name;
      for (std::size_t i = 0; i < 2; ++i) {
        if (edges[i].isEmpty() && feature.is<kind::Edge>() && tracedAlong(feature, axes[i])) {
          edges[i] = name;
        }
      }
    }
    const QString both = edges[0] + QStringLiteral(", ") + edges[1];
    return tracedAt(both) ? both : QString();
  }

  static QString written(Length x, Length y) {
    const auto inches = [](Length length) {
      const std::string fraction = writeFraction(length);
      return QString::fromStdString(fraction.empty() ? writeDecimal(length, Unit::inch) : fraction);
    };
    return inches(x) + QStringLiteral(", ") + inches(y);
  }

  bool take(const QString& text) {
    if (!pending_) {
      emit hands_.desk.refused(tr("Point at the place on the picture first"));
      return false;
    }
    const Unit unit = hands_.desk.job().unit;
    auto two = placeNamed(text);
    if (!two.ok()) {
      emit hands_.desk.refused(QString::fromStdString(two.error().text));
      return false;
    }
    if (auto way = wayNamed(text)) hands_.overall[way->sideways ? 0 : 1] = std::move(way->figure);
    points_.push_back({pending_->x() * kAsTakenPixelsPerInch,
                       -pending_->y() * kAsTakenPixelsPerInch, inOwnUnit(two->first, unit),
                       inOwnUnit(two->second, unit)});
    pending_.reset();
    return true;
  }

  /// One length alone is how far it lies straight from the last point, the way it was pointed at.
  struct Way {
    Lettered figure;
    bool sideways;
    bool forwards;
  };
  std::optional<Way> wayNamed(const QString& text) const {
    if (points_.empty() || !pending_ || text.contains(QLatin1Char(','))) return std::nullopt;
    // `3 7/8` could be two lengths as well; behind the first point it is one. Nobody writes `0 3/4`
    // for three quarters.
    if (text.trimmed().startsWith(QLatin1String("0 "))) return std::nullopt;
    auto far = readLength(text.toStdString(), {hands_.desk.job().unit});
    if (!far.ok()) return std::nullopt;
    // As one looks at it, which a photo taken sideways is turned for.
    const QPointF way = turnedBy(*pending_ - asTaken(points_.back()), turned());
    const bool sideways = std::abs(way.x()) > std::abs(way.y());
    return Way{*std::move(far), sideways, sideways ? way.x() > 0 : way.y() > 0};
  }

  /// Two lengths are a place; one is a way from the last.
  Result<TwoLengths> placeNamed(const QString& text) const {
    const Unit unit = hands_.desk.job().unit;
    if (const auto traced = tracedAt(text)) {
      // A trace is kept in inches, whatever the print's own unit is.
      const std::string x = tracedText(traced->x()), y = tracedText(traced->y());
      return readTwoLengths(x + " in, " + y + " in", unit);
    }
    const auto way = wayNamed(text);
    if (!way) return readTwoLengths(text.toStdString(), unit);
    Length x = points_.back().x.value, y = points_.back().y.value;
    Length& moved = way->sideways ? x : y;
    const auto sum = way->forwards ? addChecked(moved.ticks(), way->figure.value.ticks())
                                   : subtractChecked(moved.ticks(), way->figure.value.ticks());
    if (!sum) return Error{ErrorCode::outOfRange, "that is too far", {}, 0};
    moved = Length::ticks(*sum);
    return readTwoLengths(inUnit(written(x, y), unit).toStdString(), unit);
  }

  /// What was worked out stands in inches; a print in millimetres wants that said.
  static QString inUnit(const QString& inches, Unit unit) {
    if (unit == Unit::inch) return inches;
    QString marked = inches;
    return marked.replace(QLatin1Char(','), QStringLiteral(" in,")) + QStringLiteral(" in");
  }

  /// The fourth corner of the rectangle the first three make; empty when they make none.
  QString fourthCorner() const {
    const auto along = [](const Lettered& a, const Lettered& b) {
      return subtractChecked(a.value.ticks(), b.value.ticks());
    };
    const SquaringPoint &a = points_[0], &b = points_[1], &c = points_[2];
    const auto abX = along(b.x, a.x), abY = along(b.y, a.y);
    const auto bcX = along(c.x, b.x), bcY = along(c.y, b.y);
    if (!abX || !abY || !bcX || !bcY) return {};
    const bool square = (*abX == 0 && *bcY == 0) || (*abY == 0 && *bcX == 0);
    if (!square) return {};
    const auto x = addChecked(a.x.value.ticks(), *bcX), y = addChecked(a.y.value.ticks(), *bcY);
    if (!x || !y) return {};
    return inUnit(written(Length::ticks(*x), Length::ticks(*y)), hands_.desk.job().unit);
  }

  /// How many places this picture needs to be squared up: four of a photo, as its lines tell.
  std::size_t needed() const {
    if (!hands_.askew || hands_.askew->isFlat()) return 2;
    return hands_.askew->runsTogether() ? 4 : 3;
  }

  QString askewWords() const {
    const double degrees = hands_.askew->worst() * 180 / std::numbers::pi;
    return hands_.askew->runsTogether()
               ? tr("its lines run together by %1°, as in a photo: a photo needs four places")
                     .arg(degrees, 0, 'f', 1)
               : tr("its lines are out of square by %1°: it needs three places")
                     .arg(degrees, 0, 'f', 1);
  }

  /// How well the points agree, once there are enough to tell.
  Echo soFar() const {
    if (points_.size() < 2) return {};
    const auto squared = squareUp(knownPoints(points_));
    if (!squared.ok()) return {QString::fromStdString(squared.error().text), true, -1, false};
    if (points_.size() < 5) return {};
    return {tr("the points agree to within %1 in").arg(squared->largestResidual, 0, 'f', 3), false,
            -1, squared->largestResidual > 1.0 / 16};
  }

  /// Why no picture is taken so; empty where one may be. By a wrong place a print is stretched and
  /// leans as none is that was photographed, or comes mirrored.
  QString implausible() const {
    const auto crooked = crookedBy(points_);
    return crooked ? QString::fromStdString(crookedText(*crooked)) : QString();
  }

  bool finish() {
    const Job& job = hands_.desk.job();
    const auto squared = squareUp(knownPoints(points_));
    auto next =
        setPicturePoints(job, picture() == nullptr ? std::string() : picture()->name, points_);
    const Error* refused = !squared.ok() ? &squared.error() : !next.ok() ? &next.error() : nullptr;
    const QString wrong =
        refused != nullptr ? QString::fromStdString(refused->text) : implausible();
    if (!wrong.isEmpty()) {
      emit hands_.desk.refused(wrong);
      return false;
    }
    hands_.squaredBy = points_;
    hands_.desk.endMerge();
    over_ = true;
    hands_.desk.apply(*std::move(next), tr("Square up the picture"));
    return true;
  }

  std::vector<SquaringPoint> points_;
  std::optional<QPointF> pending_;
  double reach_ = 0;  ///< of the click on it
  bool over_ = false;
};

}  // namespace

std::unique_ptr<Activity> squaringUp(Hands& hands) {
  return std::make_unique<SquaringActivity>(hands);
}

}  // namespace inchwright::app
