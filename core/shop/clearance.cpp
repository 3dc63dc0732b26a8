#include "core/shop/clearance.h"

#include "core/base/ascii.h"
#include "core/shop/clearance_rows.h"

namespace inchwright {
namespace {

ClearanceStandard standardFor(const Thread& screw, std::string_view fit) {
  if (screw.series == ThreadSeries::metric) return ClearanceStandard::iso;
  if (screw.series == ThreadSeries::ba) return ClearanceStandard::ba;
  const bool chart = fit == "shop close" || fit == "free";
  return chart ? ClearanceStandard::shopChart : ClearanceStandard::asme;
}

// Small letters, one blank between words.
std::string clearanceName(std::string_view text) {
  std::string name;
  for (const char c : text) {
    const char small = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    if (c != ' ') {
      name += small;
    } else if (!name.empty() && name.back() != ' ') {
      name += ' ';
    }
  }
  if (!name.empty() && name.back() == ' ') name.pop_back();
  return name;
}

// What a fit is called in its table.
std::string_view nameInTable(ClearanceStandard standard, std::string_view fit) {
  if (standard == ClearanceStandard::shopChart && fit == "shop close") return "close";
  if (standard == ClearanceStandard::iso) {
    if (fit == "close") return "fine";
    if (fit == "normal") return "medium";
    if (fit == "loose") return "coarse";
  }
  return fit;
}

bool isClearanceName(std::string_view fit) {
  for (const std::string_view known :
       {"close", "normal", "loose", "free", "shop close", "fine", "medium", "coarse", "clear"}) {
    if (fit == known) return true;
  }
  return false;
}

std::string_view fitsFor(const Thread& screw) {
  if (screw.series == ThreadSeries::metric) return "fine, medium and coarse, from M1.6 to M16";
  if (screw.series == ThreadSeries::ba) return "clear, from 0 BA to 10 BA";
  return "close, normal and loose, from #0 to 1 in but for #12 and 9/16, and shop close and free "
         "up "
         "to 1/2 in";
}

bool isFor(const ClearanceRow& row, const Thread& screw) {
  const std::string_view name = row.thread;
  return name.empty() ? row.major == screw.major : name == screw.name;
}

std::string sourceOf(const ClearanceRow& row) {
  const std::string keys = row.sourceKeys;
  switch (row.standard) {
    case ClearanceStandard::asme:
      return keys == "from memory"
                 ? "ASME B18.2.8, from memory"
                 : "ASME B18.2.8 in Machinery's Handbook, 31st ed. (" + keys + ")";
    case ClearanceStandard::shopChart:
      return "customary US shop chart (" + keys + ")";
    case ClearanceStandard::iso:
      return "ISO 273 (" + keys + ")";
    case ClearanceStandard::ba:
      break;
  }
  return "British Association custom (" + keys + ")";
}

}  // namespace

Length ClearanceHole::clearance() const {
  return Length::ticks(hole.ticks() - screw.major.ticks());
}

Result<ClearanceHole> clearanceHole(std::string_view fit, std::string_view screw) {
  const Result<Thread> thread = threadNamed(screw);
  if (!thread) return thread.error();
  const std::string name = clearanceName(fit);
  const std::string there = "; for " + thread->name + " there is " + std::string(fitsFor(*thread));
  if (!isClearanceName(name)) {
    return Error{ErrorCode::badText,
                 "`" + std::string(fit) + "` is no clearance known here" + there, ""};
  }
  const ClearanceStandard standard = standardFor(*thread, name);
  for (const ClearanceRow& row : clearanceRows()) {
    if (row.standard != standard || !isFor(row, *thread)) continue;
    if (nameInTable(standard, name) != row.fit) continue;
    return ClearanceHole{name, *thread, row.drill, row.hole, sourceOf(row)};
  }
  return Error{ErrorCode::notFound, "the tables have no " + name + " hole for this screw" + there,
               ""};
}

}  // namespace inchwright
