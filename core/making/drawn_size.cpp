#include "core/making/drawn_size.h"

#include <algorithm>
#include <string>

#include "core/shop/fits.h"
#include "core/shop/thread_work.h"
#include "core/shop/threads.h"

namespace inchwright {
namespace {

Result<DrawnSize> sized(const Lettered& figure, const std::optional<Tolerance>& tolerance) {
  const auto limits = limitsOf(figure, tolerance);
  if (!limits) return Error{ErrorCode::outOfRange, "the limits of this size can't be held"};
  return DrawnSize{figure.value, *limits};
}

Result<DrawnSize> byLimits(const std::string& limits, const std::optional<Lettered>& diameter) {
  const bool byClass = !limits.empty() && std::isalpha(static_cast<unsigned char>(limits[0])) != 0;
  if (!byClass) {
    const Result<Lettered> figures = readLength(limits, {diameter ? diameter->unit : Unit::inch});
    if (!figures) return figures.error();
    return sized(*figures, figures->tolerance);
  }
  if (!diameter)
    return Error{ErrorCode::badRequest, "a class such as " + limits + " needs a diameter"};
  const Result<Tolerance> tolerance = limitsOfClass(limits, diameter->value);
  if (tolerance) return sized(*diameter, *tolerance);
  const Result<Fit> fit = fitByName(limits, diameter->value);
  if (fit) return sized(*diameter, fit->hole);
  return tolerance.error().code == ErrorCode::notFound ? tolerance.error() : fit.error();
}

Result<DrawnSize> ofThread(const std::string& name) {
  const Result<Thread> thread = threadNamed(name);
  if (!thread) return thread.error();
  return DrawnSize{thread->major, {thread->major, thread->major}};
}

Result<DrawnSize> ofTapped(const std::string& name) {
  const Result<Thread> thread = threadNamed(name);
  if (!thread) return thread.error();
  const std::optional<SizeLimits> limits = tappedLimits(*thread);
  if (!limits) return Error{ErrorCode::outOfRange, "this thread can't be held"};
  return DrawnSize{thread->tapDrillDiameter, *limits};
}

}  // namespace

std::optional<SizeLimits> tappedLimits(const Thread& thread) {
  const auto deep = thread.pitch.times(fullDepthInPitches(thread.series));
  const auto full = deep ? nearestTick(*deep) : std::nullopt;
  if (!full) return std::nullopt;
  const auto least = thread.major.minus(*full);
  const auto greatest = thread.major.minus(Length::ticks(full->ticks() / 2));
  if (!least || !greatest) return std::nullopt;
  return SizeLimits{*least, *greatest};
}

Result<DrawnSize> drawnSize(const Part& part, std::string_view place) {
  const auto found = std::find_if(part.features.begin(), part.features.end(),
                                  [&](const Feature& one) { return isNamedBy(one, place); });
  if (found == part.features.end()) {
    return Error{ErrorCode::notFound,
                 "the part `" + part.name + "` has no place `" + std::string(place) + "`",
                 std::string(place)};
  }
  if (const Drilled* drilled = found->drilled()) {
    if (!drilled->limits.empty()) return byLimits(drilled->limits, drilled->diameter);
    if (!drilled->thread.empty()) return ofTapped(drilled->thread);
  }
  if (const auto* screwed = found->as<kind::Screwed>()) return ofThread(screwed->thread);
  const auto* slot = found->as<kind::Slot>();
  const std::optional<Lettered>& figure = slot ? slot->width : diameterOf(*found);
  if (figure) return sized(*figure, toleranceOf(*figure, part.general));
  return Error{ErrorCode::badRequest,
               "`" + std::string(place) + "` of `" + part.name + "` has no size on the print",
               std::string(place)};
}

std::optional<Error> sideFault(const Job& job, const SizeOrPlace& side, bool hole) {
  const auto* at = std::get_if<PartPlace>(&side);
  const Part* part = at != nullptr ? job.part(at->part) : nullptr;
  if (part == nullptr) return std::nullopt;
  const auto found = std::find_if(part->features.begin(), part->features.end(),
                                  [&](const Feature& one) { return isNamedBy(one, at->place); });
  if (found == part->features.end()) return std::nullopt;
  const bool hollow =
      found->drilled() != nullptr || found->is<kind::Bored>() || found->is<kind::Slot>();
  if (hollow == hole) return std::nullopt;
  const std::string place = "`" + at->place + "` of `" + at->part + "`";
  return Error{ErrorCode::badRequest,
               hole ? place + " is no hole: is it the shaft?"
                    : place + " is a hole: what goes into it is the shaft",
               at->place};
}

}  // namespace inchwright
