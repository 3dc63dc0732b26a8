#pragma once

#include <QPointF>
#include <optional>

#include "app/session/desk.h"
#include "core/sheet/draw_list.h"

namespace inchwright::app {

/// A parallel or the fixed jaw that was taken hold of in the picture on my sheet. A parallel goes
/// to and from its jaw in steps of 1/32 in or half a millimetre; the jaw to the side of the work
/// that the pointer is nearest to. Each move is an edit, so that the checks run as it lies; all of
/// one drag are one step of undo.
class HeldDrag {
 public:
  /// Empty for what can't be dragged.
  static std::optional<HeldDrag> of(const Desk& desk, const PaperTarget& target);

  /// The pointer has come to `at` on the page, having been taken hold of at `from`; millimetres.
  void to(Desk& desk, const Page& page, QPointF from, QPointF at) const;
  /// The step is done.
  static void end(Desk& desk) { desk.endMerge(); }

 private:
  void layParallel(Desk& desk, QPointF moved) const;
  void layJaw(Desk& desk, const Page& page, QPointF at) const;

  PaperTarget target_;
  Length gap_;  ///< of the parallel when it was taken hold of
};

}  // namespace inchwright::app
