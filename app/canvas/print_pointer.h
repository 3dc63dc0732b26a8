#pragma once

#include <QPointF>
#include <Qt>
#include <optional>
#include <vector>

#include "app/canvas/print_map.h"

namespace inchwright::app {

/// What a hand means by what it just did on the print.
struct PointerDeed {
  enum class Kind {
    nothing,
    hover,  ///< moved to `at` with no button down
    click,  ///< at `at`
    pan,    ///< the paper goes along by `by`
    drag,   ///< what was grasped goes to `at`
    drop,   ///< and stays there
    zoom,   ///< `map` is to be taken
  };
  Kind kind = Kind::nothing;
  QPointF at = {};
  QPointF by = {};
  PrintMap map = {};
};

/// Tells clicks, drags, pans and pinches apart. A pure state machine, in pixels of the widget: the
/// view tells it what buttons and fingers do, and does what it answers.
///
/// Pressed at 10, 10 and released at 12, 11 is a click there; moved on to 40, 10 it is a drag where
/// something was grasped, and moves the paper where nothing was.
class PrintPointer {
 public:
  /// A button or a finger goes down; `grasps` where a trace lies there that may be moved.
  void press(QPointF at, Qt::MouseButton button, bool grasps);
  PointerDeed move(QPointF at);
  PointerDeed release(QPointF at, Qt::MouseButton button);

  /// Two fingers and more zoom and pan, and put nothing down; `map` as it is now.
  PointerDeed pinch(QPointF one, QPointF other, const PrintMap& map);
  bool pinches() const { return pinch_.has_value(); }
  /// All fingers are off.
  void lift();

 private:
  enum class Held { nothing, undecided, trace, paper };
  /// What two fingers began with.
  struct Pinch {
    PrintMap map;
    qreal apart = 1;
    QPointF middle;
  };

  Held held_ = Held::nothing;
  bool grasps_ = false;
  QPointF pressed_;
  QPointF last_;
  std::optional<Pinch> pinch_;
};

}  // namespace inchwright::app
