// Saying where a face is drawn on a picture that is already squared up under another face.

#include <array>

#include "app/session/activity.h"
#include "app/session/four_sides.h"
#include "app/session/picture_edits.h"

namespace inchwright::app {
namespace {

class ViewActivity : public Activity {
 public:
  using Activity::Activity;

  Doing doing() const override { return Doing::placingView; }

  QString prompt() const override {
    const auto sides = lowSides();
    return tr("The %1 face: where is it on this print? Point at the corner of its %2 and %3 sides, "
              "which are traced there; Escape when it has a sheet of its own")
        .arg(QString::fromStdString(std::string(nameOf(hands_.desk.face()))),
             QString::fromStdString(std::string(nameOf(sides[0]))),
             QString::fromStdString(std::string(nameOf(sides[1]))));
  }

  void point(const Pointed& pointed) override {
    Job next = hands_.desk.job();
    Part& part = next.parts[static_cast<std::size_t>(hands_.desk.partIndex())];
    const PictureView* base = squaredView(next, part);
    if (base == nullptr) return;
    PictureView view;
    view.face = hands_.desk.face();
    view.picture = base->picture;
    const QPointF at = offsetOf(*base) + pointed.at - cornerOf(part);
    view.at = {QString::number(at.x(), 'f', 3).toStdString(),
               QString::number(at.y(), 'f', 3).toStdString()};
    part.views.push_back(std::move(view));
    for (const Side side : lowSides()) {
      if (edgeOf(part, side) == nullptr) part.features.push_back(edgeFor(part, side, 0));
    }
    over_ = true;
    hands_.desk.endMerge();
    hands_.desk.apply(std::move(next), tr("Place the view of a face"));
  }

  bool enter(const QString& text) override {
    if (text.isEmpty()) {
      emit hands_.desk.refused(prompt());
      return false;
    }
    return hands_.apply(applyLine(hands_.part(), text.toStdString(), hands_.context()));
  }

  bool back() override { return false; }
  bool over() const override { return over_; }
  std::optional<FeatureKind> next() const override { return FeatureKind::edge; }

 private:
  std::array<Side, 2> lowSides() const {
    const auto low = [](Axis axis) {
      return axis == Axis::x ? Side::left : axis == Axis::y ? Side::front : Side::bottom;
    };
    const auto axes = axesIn(hands_.desk.face());
    return {low(axes[0]), low(axes[1])};
  }

  /// Where that corner lies in the axes of the face: on sides that were traced on another face, or
  /// else at their zero.
  QPointF cornerOf(const Part& part) const {
    const auto axes = axesIn(hands_.desk.face());
    const auto along = [&](Axis axis, Side side) {
      const Feature* edge = edgeOf(part, side);
      return edge == nullptr ? 0.0 : tracedAlong(*edge, axis).value_or(0);
    };
    const auto sides = lowSides();
    return asViewed({along(axes[0], sides[0]), along(axes[1], sides[1])}, hands_.desk.face());
  }

  bool over_ = false;
};

}  // namespace

std::unique_ptr<Activity> placingView(Hands& hands) {
  return std::make_unique<ViewActivity>(hands);
}

}  // namespace inchwright::app
