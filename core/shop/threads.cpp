#include "core/shop/threads.h"

#include <algorithm>
#include <array>

#include "core/base/listed.h"
#include "core/shop/thread_name.h"
#include "core/shop/thread_rows.h"

namespace inchwright {
namespace {

std::string fullName(const ThreadRow& row) {
  const std::string_view series = nameOf(row.series);
  return series.empty() ? row.size : std::string(row.size) + " " + std::string(series);
}

std::vector<Thread> buildThreads() {
  std::vector<Thread> all;
  for (const ThreadRow& row : threadRows()) {
    Thread thread;
    thread.name = fullName(row);
    thread.series = row.series;
    thread.major = row.major;
    thread.pitch =
        row.perInch > 0 ? *Rational::of(Length::kTicksPerInch, row.perInch) : row.pitch.rational();
    thread.perInch = row.perInch;
    thread.tapDrill = row.tapDrill;
    thread.tapDrillDiameter = row.tapDrillDiameter;
    thread.otherTapDrills = row.otherTapDrills;
    thread.source = row.sourceKeys;
    all.push_back(std::move(thread));
  }
  return all;
}

bool isUnified(const Thread& thread) {
  return thread.series == ThreadSeries::unc || thread.series == ThreadSeries::unf;
}

// A bare number is a British Association size or a gauge number where the series says so.
bool sameSize(const Thread& thread, const ThreadName& name) {
  if (thread.series == ThreadSeries::ba) {
    return name.gauge && thread.name == std::to_string(*name.gauge) + " BA";
  }
  if (thread.series == ThreadSeries::metric) return name.metric && thread.major == name.size;
  if (name.metric) return false;
  if (thread.name.front() == '#') {
    const std::string number = thread.name.substr(1, thread.name.find('-') - 1);
    return (name.gauge && number == std::to_string(*name.gauge)) ||
           (!name.gaugeMarked && !name.fraction && thread.major == name.size);
  }
  return !name.gaugeMarked && thread.major == name.size;
}

bool samePitch(const Thread& thread, const ThreadName& name) {
  if (name.pitch) return thread.pitch == name.pitch->rational();
  if (name.perInch) return thread.perInch == *name.perInch;
  return true;
}

std::string namesOf(const std::vector<const Thread*>& found) {
  std::vector<std::string> names;
  for (const Thread* thread : found) names.push_back(thread->name);
  return joined(names, ", ");
}

Error lacking(std::string_view text, const ThreadName& name) {
  std::vector<const Thread*> near;
  for (const Thread& thread : threads()) {
    if (sameSize(thread, name)) near.push_back(&thread);
  }
  std::string message = "the table of threads has no " + std::string(text);
  if (!near.empty()) message += "; of that size it has " + namesOf(near);
  return {ErrorCode::notFound, message, {}, {}};
}

}  // namespace

const std::vector<Thread>& threads() {
  static const std::vector<Thread> all = buildThreads();
  return all;
}

std::string_view nameOf(ThreadSeries series) {
  constexpr std::array<std::string_view, 8> kNames{"UNC", "UNF", "BA",    "BSW",
                                                   "BSF", "ME",  "brass", ""};
  return kNames[static_cast<std::size_t>(series)];
}

std::string_view sourceOf(ThreadSeries series) {
  switch (series) {
    case ThreadSeries::unc:
    case ThreadSeries::unf:
      return "ASME B1.1 sizes; tap drills from two trade charts (S1 S2) and Machinery's Handbook "
             "31st ed. (S3)";
    case ThreadSeries::ba:
      return "BS 93: pitch 0.9^k mm, diameter 6 p^1.2; tap drills from thread notes (S4 to S8)";
    case ThreadSeries::bsw:
    case ThreadSeries::bsf:
      return "BS 84 sizes; tap drills from model engineers' tables (S5) and a public chart (S9 "
             "S10)";
    case ThreadSeries::me:
      return "model engineers' custom, from their thread lists (S5 S6 S11)";
    case ThreadSeries::brass:
      return "custom of 26 to the inch, from thread lists (S5 S11)";
    case ThreadSeries::metric:
      break;
  }
  return "ISO 261 coarse pitches, from two metric thread lists (S12 S13)";
}

Result<Thread> threadNamed(std::string_view text) {
  const Result<ThreadName> name = readThreadName(text);
  if (!name) return name.error();
  std::vector<const Thread*> found;
  for (const Thread& thread : threads()) {
    const bool wanted =
        name->series ? thread.series == *name->series : (thread.series != ThreadSeries::ba);
    if (wanted && sameSize(thread, *name) && samePitch(thread, *name)) found.push_back(&thread);
  }
  if (found.empty()) return lacking(text, *name);
  if (!name->series) {
    // A bare inch name customarily means the unified thread.
    const auto unified = std::find_if(found.begin(), found.end(),
                                      [](const Thread* thread) { return isUnified(*thread); });
    if (unified != found.end()) return **unified;
  }
  if (found.size() > 1) {
    return Error{ErrorCode::badText,
                 std::string(text) + " may be any of " + namesOf(found) + "; say which",
                 {},
                 {}};
  }
  return *found.front();
}

}  // namespace inchwright
