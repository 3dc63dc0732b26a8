// Saying where a face is drawn on a picture that is already squared up under another face.

#include <algorithm>
#include <array>

#include "app/session/activity.h"
#include "app/session/four_sides.h"
#include "app/session/picture_edits.h"

namespace inchwright::app {
namespace {

class ViewActivity : public Activity {
 public:
  explicit ViewActivity(Hands& hands) : Activity(hands) {
    if (const PictureView* own = viewOf(hands.part(), hands.desk.face())) {
      shown_ = *own;
      again_ = true;
    } else {
      shown_ = *squaredViews(hands.desk.job(), hands.part()).front();
    }
  }

  Doing doing() const override { return Doing::placingView; }

  QString prompt() const override {
    const auto sides = lowSides();
    const QString asked =
        again_
            ? tr("The %1 face, turned: point at the corner of its %2 and %3 sides; Escape leaves "
                 "it as it was. ")
            : tr("The %1 face: where is it on this print? Point at the corner of its %2 and %3 "
                 "sides, which are traced there; Escape when it has a sheet of its own. ");
    const QString turn = tr("Ctrl+Shift+R turns it by a quarter");
    const bool isMore = pictures().size() > 1 && !again_;
    return asked.arg(QString::fromStdString(std::string(nameOf(hands_.desk.face()))),
                     QString::fromStdString(std::string(nameOf(sides[0]))),
                     QString::fromStdString(std::string(nameOf(sides[1])))) +
           (isMore ? turn + tr(", Tab shows the next picture") : turn);
  }

  void point(const Pointed& pointed) override {
    Job next = hands_.desk.job();
    Part& part = next.parts[static_cast<std::size_t>(hands_.desk.partIndex())];
    PictureView placed = shown_;
    placed.face = hands_.desk.face();
    const QPointF at = onPrint(pointed.at - cornerOf(part), shown_);
    placed.at = {tracedText(at.x()), tracedText(at.y())};
    if (again_) {
      for (PictureView& view : part.views) {
        if (&view == viewOf(part, placed.face)) view = placed;
      }
    } else {
      placed.extra = {};
      part.views.push_back(std::move(placed));
    }
    for (const Side side : lowSides()) {
      if (edgeOf(part, side) == nullptr) part.features.push_back(edgeFor(part, side, 0));
    }
    over_ = true;
    hands_.desk.endMerge();
    hands_.desk.apply(std::move(next), tr("Place the view of a face"));
  }

  /// On to the next picture that this face may be drawn on.
  bool pass() override {
    const auto views = pictures();
    if (again_ || views.size() < 2) return false;
    const auto now = std::find_if(views.begin(), views.end(), [&](const PictureView* view) {
      return view->picture == shown_.picture;
    });
    const auto next = now == views.end() || now + 1 == views.end() ? views.begin() : now + 1;
    shown_ = **next;
    return true;
  }

  bool turn() override {
    shown_.turn = (shown_.turn + 270) % 360;
    return true;
  }

  std::optional<PictureView> viewShown() const override { return shown_; }

  bool enter(const QString& text) override {
    if (text.isEmpty()) {
      emit hands_.desk.refused(prompt());
      return false;
    }
    return hands_.apply(applyLine(hands_.part(), text.toStdString(), hands_.context()));
  }

  bool back() override { return false; }
  bool over() const override { return over_; }
  std::optional<FeatureKind> next() const override {
    return again_ ? std::nullopt : std::optional(FeatureKind::edge);
  }

 private:
  std::vector<const PictureView*> pictures() const {
    return squaredViews(hands_.desk.job(), hands_.part());
  }

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

  PictureView shown_;   ///< how the picture is shown meanwhile
  bool again_ = false;  ///< the view had its place before
  bool over_ = false;
};

}  // namespace

std::unique_ptr<Activity> placingView(Hands& hands) {
  return std::make_unique<ViewActivity>(hands);
}

}  // namespace inchwright::app
