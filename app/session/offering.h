#pragma once

#include <QRectF>
#include <optional>
#include <vector>

#include "core/geometry/homography.h"
#include "core/part/feature.h"
#include "core/part/job.h"
#include "core/seen/offer.h"
#include "core/seen/offered.h"

namespace inchwright::app {

/// What the picture under a face offers, beside the document and never in it. Only of faces that
/// are drawn as they are counted, the first axis to the right and the second up.
struct Offering {
  /// An offer that was confirmed, and what it became.
  struct Taken {
    std::size_t one = 0;
    Id id;
  };
  /// What is lettered on the picture and not gone through: that is said, lest the end of the offers
  /// be taken for the end of the print.
  struct PassedBy {
    int angles = 0;
    int onOtherViews = 0;
    bool operator==(const PassedBy&) const = default;
  };

  seen::Offered offered;
  Homography toInches;  ///< from pixels of the picture to inches of the face
  int part = 0;
  Face face = Face::top;
  std::vector<bool> certain = {};  ///< of the features, see `certainOf`
  std::vector<Taken> taken = {};
  PassedBy passedBy = {};

  /// A box of the picture, in inches of the face, y up.
  QRectF inches(const seen::PictureBox& box) const;
};

/// Since when offers are shown, for Enter to be deaf at first.
seen::Offered::Time offeringNow();

/// The kind of feature that is traced for one that is offered.
FeatureKind kindOf(seen::OfferedFeature kind);

/// What of a picture's offers the desk goes through: those of the view that the face's zero is on,
/// with a note's size for as many holes as it speaks of.
seen::Offers offersOfFace(const seen::Offers& all);

/// The dimensions that `offersOfFace` leaves out.
Offering::PassedBy passedBy(const seen::Offers& all);

/// Which features may be taken by Enter alone. What is drawn may be a dashed line or lettering, so
/// it has to be drawn plainly (`ready`), and the print itself has to speak of it: an edge at which
/// a dimension ends, and no hole lies in line with it; a hole that lies in no lettering and whose
/// note says its size, or at which a dimension ends; a round whose note says its radius; a ring
/// whose note says its holes and their circle, one of them drawn square to its middle. Everything
/// else is named by whoever sees it. Example: two dashed lines of a hole from the side, between
/// which a dimension ends → neither.
std::vector<bool> certainOf(const seen::Offers& offers, const Homography& toInches);

/// Along the axes of a face, what has been read already, where it is drawn.
std::vector<seen::Confirmed> confirmedIn(const Part& part, Face face);

}  // namespace inchwright::app
