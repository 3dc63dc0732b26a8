#pragma once

#include <QPointF>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>

#include "core/part/job.h"

namespace inchwright::app {

/// The likeliest figure for a traced distance, as a print in `unit` would letter it: the fraction
/// with the smallest denominator (up to 64) within the error of tracing, or half millimetres.
/// Empty below 1/64 in.
std::string likelyFigure(double inches, Unit unit);

/// How far a figure may lie from its traced distance before the tracing can't explain it: three
/// standard deviations of two ends traced to 1/64 in on a picture squared up to `squaringError`,
/// and 1 % for the picture's own scale. Inches.
double tracingBound(double inches, double squaringError = 0);

/// The traced distance between two features along an axis, in inches, signed; empty when either is
/// not traced itself. For one pair; `TracingEvidence` tells it of many.
std::optional<double> tracedDistance(const Part& part, std::string_view from, std::string_view to,
                                     Axis axis);

/// What the tracing says about the figures of a part. Evidence only: nothing is measured from a
/// picture and no figure comes from it, but it casts doubt on what does not go with it.
///
/// Looks into the part it was made from, which has to outlive it unchanged. Made in linear time.
class TracingEvidence {
 public:
  /// `squaringError`: inches that a place may lie from where the picture shows it.
  explicit TracingEvidence(const Part& part, double squaringError = 0);

  /// As `tracedDistance`.
  std::optional<double> distance(std::string_view from, std::string_view to, Axis axis) const;

  /// Whether the tracing is to scale along an axis: at least two readings, and most of them, agree
  /// with their traced distance. On blank paper features are put down roughly, and it is not.
  bool toScale(Axis axis) const { return toScale_[static_cast<std::size_t>(axis)]; }

  /// What to say when a figure and its traced distance don't go together: `the tracing says about
  /// 1 1/8`, `the tracing puts the two in line`; of an angle `the tracing says about 35 degrees`.
  /// Empty when they do, or nothing is known, as where the tracing is neither to scale nor made on
  /// a picture that was squared up (`squared`).
  std::string objection(const Reading& reading, bool squared = false) const;

 private:
  /// The way from one to the other as the face is seen, inches.
  std::optional<QPointF> step(std::string_view from, std::string_view to) const;
  std::string objectionToAngle(const Reading& reading) const;
  /// The feature whose trace is the trace of this place; null when it has none of its own.
  const Feature* tracedAt(std::string_view place) const;

  double squaringError_;
  std::unordered_map<std::string_view, const Feature*> traced_;
  std::array<bool, 3> toScale_{};
};

}  // namespace inchwright::app
