#pragma once

#include <QPointF>
#include <QString>
#include <optional>

#include "app/session/desk.h"
#include "core/sheet/draw_list.h"

namespace inchwright::app {

/// What holds the work, or is to be kept clear of, taken hold of in the picture on my sheet. A
/// parallel goes to and from its jaw in steps of 1/32 in or half a millimetre, a clamp and what is
/// to be kept clear of along both axes; a jaw or the stop goes to the side of the work that the
/// pointer is nearest to. Each move is an edit, so that the checks run as it lies; all of
/// one drag are one step of undo.
class HeldDrag {
 public:
  /// Empty for what can't be dragged.
  static std::optional<HeldDrag> of(const Desk& desk, const PaperTarget& target);

  /// What is said of it under the pointer.
  static QString tip(const PaperTarget& target);

  /// The pointer has come to `at` on the page, having been taken hold of at `from`; millimetres.
  void to(Desk& desk, const Page& page, QPointF from, QPointF at) const;
  /// The step is done.
  static void end(Desk& desk) { desk.endMerge(); }

 private:
  void layParallel(Desk& desk, QPointF moved) const;
  void laySide(Desk& desk, const Page& page, QPointF at) const;
  void layObstacle(Desk& desk, QPointF moved) const;

  PaperTarget target_;
  Length gap_;         ///< of the parallel when it was taken hold of
  Obstacle obstacle_;  ///< the clamp, or what is to be kept clear of, then
};

}  // namespace inchwright::app
