#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/part/job.h"

namespace inchwright::app {

// What the tracing says about a figure. Evidence only: nothing is measured from a picture, but it
// can offer what is likely and cast doubt on what is not.

/// The traced distance between two places along an axis, in inches, signed; empty when either is
/// not traced.
std::optional<double> tracedDistance(const Part& part, std::string_view from, std::string_view to,
                                     Axis axis);

/// Whether the tracing is to scale along an axis: at least two readings there, and most of them,
/// agree with their traced distance. On blank paper features are put down roughly, and it is not.
bool tracedToScale(const Part& part, Axis axis);

/// The likeliest figure for a traced distance, as a print in `unit` would letter it: the fraction
/// with the smallest denominator (up to 64) within the error of tracing, or half millimetres.
/// Empty below 1/64 in.
std::string likelyFigure(double inches, Unit unit);

/// How far a figure may lie from its traced distance before the tracing can't explain it: three
/// standard deviations of two ends traced to 1/64 in, and 1 % for the picture's own scale. Inches.
double tracingBound(double inches);

/// What to say when a figure and its traced distance don't go together: `the tracing says about
/// 1 1/8`. Empty when they do, or nothing is known.
std::string tracingObjection(const Part& part, const Reading& reading);

}  // namespace inchwright::app
