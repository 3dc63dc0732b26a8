#pragma once

#include <atomic>

#include "core/base/result.h"
#include "core/seen/net.h"
#include "core/seen/offers.h"
#include "core/seen/squared.h"

namespace inchwright::seen {

/// A reading that has been confirmed, where it is drawn.
struct Confirmed {
  OfferedReading kind = OfferedReading::alongX;  ///< along x or y
  double from = 0;                               ///< inches of the face
  double to = 0;
  Length value;
};

struct Options {
  Unit unit = Unit::inch;  ///< of bare figures on the print
  /// Set from another thread, it ends the work within a tenth of a second.
  const std::atomic<bool>* stop = nullptr;
  std::vector<Confirmed> confirmed;
  /// Height of the capitals in inches of the face, where it is known; 0: found out.
  double capitals = 0;
  const Nets* nets = nullptr;  ///< none: those built in
};

/// What a squared-up picture of a print offers: features and readings, each to be confirmed by a
/// person one at a time. Nothing is measured: a figure is offered only because it is lettered, and
/// the distance on the picture is a witness for or against it.
///
/// The same for the same bytes on every machine. Memory stays below some 400 MB beside the picture.
/// Errors: `badRequest` for a picture without pixels or a map that makes nothing of it; `notFound`
/// with the text `stopped` when stopped.
/// Example: a scan on which `1 3/16` is lettered between two arrows 1.19 in apart gives a
/// ReadingOffer with the candidate `1 3/16` and the witnesses G and S.
Result<Offers> offer(const GreyPicture& picture, const Homography& pixelToInches,
                     const Options& options = {});

}  // namespace inchwright::seen
