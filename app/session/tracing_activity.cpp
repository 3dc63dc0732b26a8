// Tracing: a click puts a feature on the print, the strip names and sizes it.

#include <algorithm>
#include <array>
#include <cmath>

#include "app/session/activity.h"
#include "core/part/edit.h"

namespace inchwright::app {
namespace {

/// A traced position as the document keeps it: inches to a thousandth, which is finer than anyone
/// can point.
std::string tracedText(double inches) {
  return QString::number(std::round(inches * 1000) / 1000, 'f', 3).toStdString();
}

class TracingActivity : public Activity {
 public:
  TracingActivity(Hands& hands, FeatureKind kind) : Activity(hands), kind_(kind) {}

  Doing doing() const override { return Doing::tracing; }

  QString prompt() const override {
    const QString what = wordFor(kind_);
    if (points_.size() < pointsWanted() && !points_.empty()) {
      return tr("%1: point at the next point of it").arg(what);
    }
    if (points_.empty())
      return tr("%1: point at it on the print, or type its name and size").arg(what);
    return tr("%1: its name and size").arg(what);
  }

  QString offer() const override {
    if (points_.size() < pointsWanted()) return {};
    if (kind_ == FeatureKind::edge) return edgeOffer();
    const QString id = QString::fromStdString(nextFeatureId(hands_.part()));
    return lastSize_.isEmpty() ? id : id + QStringLiteral(" ") + lastSize_;
  }

  Echo echo(const QString& text) const override {
    if (text.isEmpty()) return {};
    Echo echo;
    const auto feature =
        readFeatureLine(hands_.part(), kind_, text.toStdString(), hands_.context());
    if (!feature.ok()) {
      const Echo line = echoLine(hands_, text);
      if (!line.refused) return line;
      echo.text = QString::fromStdString(feature.error().text);
      echo.refused = true;
      echo.at = static_cast<int>(feature.error().at.value_or(0));
      return echo;
    }
    echo.text = wordFor(kind_) + QStringLiteral(" ") + QString::fromStdString(feature->id);
    for (const auto* size : {&feature->diameter, &feature->width, &feature->radius}) {
      if (!*size) continue;
      const Echo figure = echoFigure(QString::fromStdString((*size)->text), hands_.desk.job().unit);
      echo.text += QStringLiteral(": ") + figure.text;
      echo.doubtful = echo.doubtful || figure.doubtful;
    }
    if (feature->make == Make::tap) {
      echo.text += QStringLiteral(": ") + QString::fromStdString(feature->thread);
    }
    return echo;
  }

  void point(const Pointed& pointed) override {
    if (points_.size() == pointsWanted()) points_.pop_back();
    points_.push_back(pointed.at);
  }

  bool enter(const QString& typed) override {
    const QString text = typed.isEmpty() ? offer() : typed;
    if (text.isEmpty()) return false;
    auto feature = readFeatureLine(hands_.part(), kind_, text.toStdString(), hands_.context());
    if (!feature.ok()) {
      // A whole line, such as `L A 3/8`, is welcome at any time.
      if (hands_.desk.hasPart()) {
        const auto line = applyLine(hands_.part(), text.toStdString(), hands_.context());
        if (line.ok()) return hands_.apply(line);
      }
      emit hands_.desk.refused(QString::fromStdString(feature.error().text));
      return false;
    }
    trace(*feature);
    Part next = hands_.part();
    next.features.push_back(*feature);
    const QString id = QString::fromStdString(feature->id);
    if (!hands_.apply(std::move(next), tr("Trace %1 %2").arg(wordFor(kind_), id))) return false;
    remember(text, id);
    points_.clear();
    return true;
  }

  bool back() override {
    if (points_.empty()) return false;
    points_.pop_back();
    return true;
  }

  std::optional<QPointF> pending() const override {
    if (points_.empty()) return std::nullopt;
    return points_.back();
  }

  FeatureKind kind() const { return kind_; }

 private:
  std::size_t pointsWanted() const {
    return kind_ == FeatureKind::line ? 2 : kind_ == FeatureKind::arc ? 3 : 1;
  }

  void trace(Feature& feature) const {
    const auto axes = axesIn(feature.face);
    for (const QPointF& at : points_) {
      if (feature.kind == FeatureKind::edge) {
        feature.traced = {tracedText(*feature.axis == axes[0] ? at.x() : at.y())};
        return;
      }
      feature.traced.push_back(tracedText(at.x()));
      feature.traced.push_back(tracedText(at.y()));
    }
  }

  /// The size is likely to come again; the name is not.
  void remember(const QString& text, const QString& id) {
    if (kind_ != FeatureKind::hole) return;
    lastSize_ = text.startsWith(id + QStringLiteral(" ")) ? text.mid(id.size() + 1)
                : text == id                              ? QString()
                                                          : text;
  }

  struct SideName {
    Side side;
    const char* id;
  };

  /// The four sides of the view, as they are customarily met: left, right, then the other two.
  std::array<SideName, 4> sides() const {
    switch (hands_.desk.face()) {
      case Face::top:
      case Face::bottom:
        break;
      case Face::front:
      case Face::back:
        return {{{Side::left, "L"}, {Side::right, "R"}, {Side::bottom, "U"}, {Side::top, "T"}}};
      case Face::left:
      case Face::right:
        return {{{Side::front, "F"}, {Side::back, "K"}, {Side::bottom, "U"}, {Side::top, "T"}}};
    }
    return {{{Side::left, "L"}, {Side::right, "R"}, {Side::front, "F"}, {Side::back, "K"}}};
  }

  QString edgeOffer() const {
    for (const SideName& one : sides()) {
      const auto& features = hands_.part().features;
      const bool there = std::any_of(features.begin(), features.end(), [&](const Feature& f) {
        return f.id == one.id || (f.kind == FeatureKind::edge && f.side == one.side);
      });
      if (!there) {
        return QString::fromLatin1(one.id) + QStringLiteral(" ") +
               QString::fromStdString(std::string(nameOf(one.side)));
      }
    }
    return QString::fromStdString(nextFeatureId(hands_.part())) + QStringLiteral(" ") +
           QString::fromStdString(std::string(nameOf(hands_.axis)));
  }

  FeatureKind kind_;
  std::vector<QPointF> points_;
  QString lastSize_;
};

}  // namespace

std::unique_ptr<Activity> tracing(Hands& hands, FeatureKind kind) {
  return std::make_unique<TracingActivity>(hands, kind);
}

}  // namespace inchwright::app
