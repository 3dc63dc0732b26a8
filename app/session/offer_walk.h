#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "app/session/activity.h"

namespace inchwright::app {

/// One end of a dimension that is offered: a place that is traced, or a feature that is offered
/// there and comes with the reading. Neither where nothing lies there.
struct OfferedEnd {
  Id id;
  std::optional<std::size_t> feature;

  bool found() const { return feature || !id.empty(); }
  bool operator==(const OfferedEnd&) const = default;
};

/// In which order the offers of the face are gone through, and where dimensions end. First what is
/// certain and no dimension brings along, and what is not certain but a dimension ends at, and
/// rows, lest their holes be taken one by one; then the dimensions, lane by lane, each with the
/// features at its ends; what is not certain comes last, and rounds, lines and arcs, which lie
/// between sides. What is traced or read already is passed over.
///
/// Looks at the hands it was made from, which have to outlive it; made anew after each edit.
class OfferWalk {
 public:
  /// Requires: something was offered for the part and face that are looked at.
  explicit OfferWalk(const Hands& hands);

  /// What is still to be looked at, in order.
  const std::vector<std::size_t>& waiting() const { return waiting_; }
  /// The next to be looked at after another one, the first again behind the last.
  std::optional<std::size_t> after(std::size_t one) const;

  /// The lower end first, as the dimension is drawn.
  std::pair<OfferedEnd, OfferedEnd> endsOf(const seen::ReadingOffer& offer) const;
  Axis axisOf(const seen::ReadingOffer& offer) const;

  /// A feature with its trace, named as the text says: `A 1/4 ream`; `part` knows the names that
  /// are taken. Errors as of `readFeatureLine`.
  Result<Feature> featureOf(const Part& part, std::size_t one, const std::string& text) const;
  /// Its name, and the size that its note letters; for Enter only where it is certain. Empty where
  /// it takes more than a name.
  std::string textOf(const Part& part, std::size_t one) const;
  bool isCertain(std::size_t one) const { return offering_.certain[one]; }

 private:
  // In which turn an offer comes.
  enum Rank { kBefore, kReadings, kLast };
  struct Turn {
    Rank rank = kBefore;
    std::size_t one = 0;
    auto operator<=>(const Turn&) const = default;
  };

  const seen::FeatureOffer& feature(std::size_t one) const {
    return offering_.offered.offers().features[one];
  }
  bool isFeature(std::size_t one) const { return one < offering_.offered.offers().features.size(); }
  bool comesAlong(std::size_t one) const;
  bool isTraced(const seen::FeatureOffer& offer) const;
  bool isOfTraced(const seen::FeatureOffer& hole) const;
  bool isTracedRow(const Feature& one, const seen::FeatureOffer& row) const;
  Rank rankOf(std::size_t one, bool needed) const;
  Result<std::vector<Id>> cornerOf(const Part& part, const seen::FeatureOffer& round) const;
  bool isRead(const seen::ReadingOffer& offer) const;
  OfferedEnd endAt(const seen::ReadingOffer& offer, PlanePoint at) const;
  std::optional<Side> sideOf(const Part& part, const seen::FeatureOffer& offer) const;
  bool near(const Feature& one, Axis axis, double at) const;

  const Hands& hands_;
  const Offering& offering_;
  std::array<Axis, 2> axes_;
  std::vector<bool> open_;  ///< of the features: neither settled nor traced
  std::vector<Turn> turns_;
  std::vector<std::size_t> waiting_;
};

}  // namespace inchwright::app
