#include "core/part/parts_of_job.h"

#include <algorithm>
#include <utility>
#include <variant>

namespace inchwright {
namespace {

Result<std::size_t> indexOf(const Job& job, std::string_view name) {
  for (std::size_t i = 0; i < job.parts.size(); ++i) {
    if (job.parts[i].name == name) return i;
  }
  return Error{ErrorCode::notFound, "the job has no part `" + std::string(name) + "`",
               std::string(name)};
}

Result<Done> checkFree(const Job& job, std::string_view name) {
  if (name.empty()) return Error{ErrorCode::badRequest, "a part needs a name", {}};
  if (job.part(name) != nullptr) {
    return Error{ErrorCode::badRequest,
                 "there is a part `" + std::string(name) + "` already; no two may be called alike",
                 std::string(name)};
  }
  return Done{};
}

/// Calls `meet(name of a part, who mentions it)` for each mention of a part in the job; the name
/// may be changed there.
template <class JobType, class Meet>
void forEachPartNamed(JobType& job, const Meet& meet) {
  const auto ofPlace = [&](auto& side, const std::string& who) {
    if (auto* place = std::get_if<PartPlace>(&side)) meet(place->part, who);
  };
  for (auto& mate : job.mates) {
    ofPlace(mate.hole, "mate " + mate.name);
    ofPlace(mate.shaft, "mate " + mate.name);
  }
  for (auto& gap : job.gaps) {
    for (auto& member : gap.members) {
      if (!member.part.empty()) meet(member.part, "gap " + gap.name);
      if (member.hole) ofPlace(*member.hole, "gap " + gap.name);
      if (member.shaft) ofPlace(*member.shaft, "gap " + gap.name);
    }
  }
  for (auto& part : job.parts) {
    if (part.opposite) meet(part.opposite->part, part.name + ", its other hand");
    for (auto& feature : part.features) {
      auto* drilled = feature.drilled();
      if (drilled == nullptr || !drilled->mate) continue;
      meet(drilled->mate->part, "hole " + feature.id + " of " + part.name);
    }
  }
}

}  // namespace

Result<Job> movePart(const Job& job, std::string_view name, std::size_t to) {
  const Result<std::size_t> from = indexOf(job, name);
  if (!from) return from.error();
  Job edited = job;
  Part moved = std::move(edited.parts[*from]);
  edited.parts.erase(edited.parts.begin() + static_cast<std::ptrdiff_t>(*from));
  const std::size_t at = std::min(to, edited.parts.size());
  edited.parts.insert(edited.parts.begin() + static_cast<std::ptrdiff_t>(at), std::move(moved));
  return edited;
}

Result<Job> copyPart(const Job& job, std::string_view name, std::string_view copy) {
  const Result<std::size_t> from = indexOf(job, name);
  if (!from) return from.error();
  if (const Result<Done> free = checkFree(job, copy); !free) return free.error();
  Job edited = job;
  Part similar = job.parts[*from];
  similar.name = copy;
  similar.made.clear();
  similar.mended.clear();
  similar.printed.clear();
  similar.accepted.clear();
  edited.parts.insert(edited.parts.begin() + static_cast<std::ptrdiff_t>(*from) + 1,
                      std::move(similar));
  return edited;
}

Result<Job> renamePart(const Job& job, std::string_view name, std::string_view newName) {
  const Result<std::size_t> at = indexOf(job, name);
  if (!at) return at.error();
  if (newName == name) return job;
  if (const Result<Done> free = checkFree(job, newName); !free) return free.error();
  Job edited = job;
  edited.parts[*at].name = newName;
  forEachPartNamed(edited, [&](std::string& mentioned, const std::string&) {
    if (mentioned == name) mentioned = newName;
  });
  return edited;
}

std::vector<std::string> mentionsOfPart(const Job& job, std::string_view name) {
  std::vector<std::string> all;
  forEachPartNamed(job, [&](const std::string& mentioned, const std::string& who) {
    if (mentioned == name && std::find(all.begin(), all.end(), who) == all.end()) {
      all.push_back(who);
    }
  });
  return all;
}

}  // namespace inchwright
