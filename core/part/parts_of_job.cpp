#include "core/part/parts_of_job.h"

#include <algorithm>
#include <utility>
#include <variant>

#include "core/part/mentions.h"
#include "core/part/place_index.h"

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

/// Calls `meet(name of the part, place, who mentions it)` for each mention in the job of a place of
/// a part by what stands outside that part; the place may be changed there.
template <class JobType, class Meet>
void forEachPlaceNamed(JobType& job, const Meet& meet) {
  const auto ofSide = [&](auto& side, const std::string& who) {
    if (auto* at = std::get_if<PartPlace>(&side)) meet(at->part, at->place, who);
  };
  for (auto& mate : job.mates) {
    const std::string who = "mate " + mate.name;
    ofSide(mate.hole, who);
    ofSide(mate.shaft, who);
    const auto* hole = std::get_if<PartPlace>(&mate.hole);
    for (auto& place : mate.places) {
      if (hole != nullptr) meet(hole->part, place, who);
    }
  }
  for (auto& gap : job.gaps) {
    const std::string who = "gap " + gap.name;
    for (auto& member : gap.members) {
      for (auto* end : {&member.from, &member.to}) {
        if (!member.part.empty() && !end->empty()) meet(member.part, *end, who);
      }
      if (member.hole) ofSide(*member.hole, who);
      if (member.shaft) ofSide(*member.shaft, who);
    }
  }
  for (auto& part : job.parts) {
    for (auto& feature : part.features) {
      auto* drilled = feature.drilled();
      if (drilled == nullptr || !drilled->mate) continue;
      meet(drilled->mate->part, drilled->mate->place, "hole " + feature.id + " of " + part.name);
    }
  }
}

/// A feature that stands where it stood and is called otherwise.
struct Renamed {
  const Feature* was = nullptr;
  Id now;
};

std::optional<Renamed> renamedBetween(const Part& before, const Part& after) {
  std::optional<Renamed> found;
  if (before.features.size() != after.features.size()) return found;
  for (std::size_t i = 0; i < after.features.size(); ++i) {
    const Feature& was = before.features[i];
    const Id& now = after.features[i].id;
    if (was.id == now) continue;
    if (found || before.feature(now) != nullptr || after.feature(was.id) != nullptr) return {};
    found = Renamed{&was, now};
  }
  return found;
}

bool has(const Part* part, const Id& place) {
  if (part == nullptr) return false;
  const Result<PlaceIndex> index = PlaceIndex::of(*part);
  return index && index->find(place).has_value();
}

}  // namespace

Result<Job> withPartEdited(const Job& job, std::size_t at, Part next) {
  const Part& before = job.parts[at];
  std::vector<std::string_view> touched{before.name};
  // The part that is replaced may be long: it is not copied first.
  Job edited(static_cast<const JobWithoutParts&>(job));
  edited.parts.reserve(job.parts.size());
  for (const Part& part : job.parts) edited.parts.push_back(&part == &before ? Part() : part);
  for (Part& other : edited.parts) {
    if (!other.opposite || other.opposite->part != before.name) continue;
    other = followed(other, before, next);
    touched.push_back(other.name);
  }
  edited.parts[at] = std::move(next);
  const std::optional<Renamed> renamed = renamedBetween(before, edited.parts[at]);
  std::optional<Error> fault;
  forEachPlaceNamed(edited, [&](const std::string& name, Id& place, const std::string& who) {
    if (fault || std::find(touched.begin(), touched.end(), name) == touched.end()) return;
    const Part* is = edited.part(name);
    if (!has(job.part(name), place) || has(is, place)) return;
    const Id now = renamed ? renamedPlace(*renamed->was, place, renamed->now) : place;
    if (has(is, now)) {
      place = now;
      return;
    }
    fault = Error{
        ErrorCode::badRequest,
        who + " still names `" + place + "`: take that away first, or let it name another", place};
  });
  if (fault) return *fault;
  return edited;
}

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
