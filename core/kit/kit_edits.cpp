#include "core/kit/kit_edits.h"

#include <algorithm>
#include <string>
#include <utility>

#include "core/kit/as_made.h"
#include "core/making/drawn_size.h"
#include "core/part/check.h"
#include "core/part/place_index.h"
#include "core/plan/gap.h"

namespace inchwright {
namespace {

Error wrong(std::string text) {
  return {ErrorCode::badRequest, std::move(text), {}};
}

Error absent(std::string text) {
  return {ErrorCode::notFound, std::move(text), {}};
}

template <class Entry>
typename std::vector<Entry>::iterator entryNamed(std::vector<Entry>& list, std::string_view name) {
  return std::find_if(list.begin(), list.end(), [&](const Entry& one) { return one.name == name; });
}

/// `what`: `mate` or `gap`.
template <class Entry>
Result<Done> checkName(const std::vector<Entry>& list, std::string_view was,
                       const std::string& name, const std::string& what) {
  if (!isSoundId(name)) return wrong("a " + what + " needs a name of 1 to 64 letters");
  for (const Entry& one : list) {
    if (one.name == name && one.name != was) {
      return wrong("there is a " + what + " `" + name + "` already; no two may be called alike");
    }
  }
  return Done{};
}

/// Puts an entry into a list in place of `was`, or at its end.
template <class Entry>
Result<Done> put(std::vector<Entry>& list, std::string_view was, Entry entry,
                 const std::string& what) {
  if (const Result<Done> named = checkName(list, was, entry.name, what); !named) return named;
  if (was.empty()) {
    list.push_back(std::move(entry));
    return Done{};
  }
  const auto found = entryNamed(list, was);
  if (found == list.end()) return absent("there is no " + what + " `" + std::string(was) + "`");
  entry.extra = found->extra;
  *found = std::move(entry);
  return Done{};
}

Result<Done> checkLimits(const std::optional<Lettered>& least,
                         const std::optional<Lettered>& greatest) {
  if (least && greatest && least->value > greatest->value) {
    return wrong("the least, " + least->text + ", is more than the greatest, " + greatest->text);
  }
  return Done{};
}

Result<Done> checkPlace(const Job& job, const PartPlace& at) {
  const Part* part = job.part(at.part);
  if (part == nullptr) return absent("the job has no part `" + at.part + "`");
  const Result<PlaceIndex> index = PlaceIndex::of(*part);
  if (!index) return index.error();
  if (!index->find(at.place)) {
    return absent("the part `" + at.part + "` has no place `" + at.place + "`");
  }
  return Done{};
}

Result<Done> checkSide(const Job& job, const SizeOrPlace& side, bool hole) {
  if (const auto* text = std::get_if<Lettered>(&side)) {
    if (!text->text.empty()) return Done{};
    return wrong(hole ? "say which hole, or its size" : "say which shaft, or its size");
  }
  if (const auto there = checkPlace(job, std::get<PartPlace>(side)); !there) return there;
  const std::optional<Error> fault = sideFault(job, side, hole);
  return fault ? Result<Done>(*fault) : Done{};
}

Result<Done> checkSides(const Job& job, const Mate& mate) {
  if (const Result<Done> hole = checkSide(job, mate.hole, true); !hole) return hole;
  if (const Result<Done> shaft = checkSide(job, mate.shaft, false); !shaft) return shaft;
  const auto* hole = std::get_if<PartPlace>(&mate.hole);
  if (hole == nullptr && !std::holds_alternative<PartPlace>(mate.shaft)) {
    return wrong("two sizes alone are no mate: name a place of a part, such as `A of Plate`");
  }
  if (!mate.places.empty() && hole == nullptr) {
    return wrong("the places that go on together are those of the hole's part: name the hole");
  }
  for (const Id& place : mate.places) {
    const SizeOrPlace one = PartPlace{hole->part, place, {}};
    if (const Result<Done> sound = checkSide(job, one, true); !sound) return sound;
  }
  return Done{};
}

// A fault of a member, with which one it is.
Error ofMember(const Gap& gap, const Error& error) {
  for (std::size_t i = 0; i < gap.members.size(); ++i) {
    if (!(error.place + '/').starts_with(placeOfMember(i) + '/')) continue;
    return {error.code, "member " + std::to_string(i + 1) + ": " + error.text, {}};
  }
  return error;
}

}  // namespace

Result<Job> withMate(const Job& job, std::string_view was, Mate mate) {
  if (const Result<Done> sides = checkSides(job, mate); !sides) return sides.error();
  if (mate.fit.empty() && !mate.least && !mate.greatest) {
    return wrong("say how it has to go together: `fit` and its name, or `least` and `greatest`");
  }
  if (!mate.fit.empty() && (mate.least || mate.greatest)) {
    return wrong("give the fit's name, or `least` and `greatest`, not both");
  }
  if (const Result<Done> limits = checkLimits(mate.least, mate.greatest); !limits) {
    return limits.error();
  }
  if (const auto hole = sizeAsDrawn(job, mate.hole)) {
    if (const auto wanted = wantedClearance(job, mate); !wanted) return wanted.error();
  }
  Job edited = job;
  if (const auto done = put(edited.mates, was, std::move(mate), "mate"); !done) return done.error();
  return edited;
}

Result<Job> withoutMate(const Job& job, std::string_view name) {
  Job edited = job;
  const auto found = entryNamed(edited.mates, name);
  if (found == edited.mates.end()) return absent("there is no mate `" + std::string(name) + "`");
  edited.mates.erase(found);
  return edited;
}

Result<Job> withGap(const Job& job, std::string_view was, Gap gap) {
  if (gap.members.empty()) return wrong("say what the gap is made of, such as `+ A to B of Plate`");
  if (const Result<Done> limits = checkLimits(gap.least, gap.greatest); !limits) {
    return limits.error();
  }
  for (const GapMember& member : gap.members) {
    for (const Id& end : {member.from, member.to}) {
      if (member.part.empty() || end.empty()) continue;
      if (const auto there = checkPlace(job, {member.part, end, {}}); !there) return there.error();
    }
    for (const auto* side : {&member.hole, &member.shaft}) {
      if (!*side) continue;
      const Result<Done> sound = checkSide(job, **side, side == &member.hole);
      if (!sound) return sound.error();
    }
  }
  const Result<GapStack> sum = gapStack(job, gap);
  // What nothing joins yet, the print may still say.
  if (!sum && sum.error().code != ErrorCode::unsolvable) return ofMember(gap, sum.error());
  Job edited = job;
  if (const auto done = put(edited.gaps, was, std::move(gap), "gap"); !done) return done.error();
  return edited;
}

Result<Job> withoutGap(const Job& job, std::string_view name) {
  Job edited = job;
  const auto found = entryNamed(edited.gaps, name);
  if (found == edited.gaps.end()) return absent("there is no gap `" + std::string(name) + "`");
  edited.gaps.erase(found);
  return edited;
}

Result<Job> withOtherHand(const Job& job, std::string_view of, Axis across, std::string_view name) {
  Job edited = job;
  const auto base = entryNamed(edited.parts, of);
  if (base == edited.parts.end()) return absent("the job has no part `" + std::string(of) + "`");
  if (base->opposite) {
    return wrong("`" + std::string(of) + "` is itself the other hand of `" + base->opposite->part +
                 "`");
  }
  if (across == Axis::z) return wrong("a part is turned round across X or Y");
  if (const auto named = checkName(job.parts, {}, std::string(name), "part"); !named) {
    return named.error();
  }
  Part other = mirrored(*base, across);
  other.name = name;
  other.quantity = 1;
  other.opposite = OppositeOf{std::string(of), across};
  edited.parts.insert(base + 1, std::move(other));
  if (const Result<Done> sound = checkJob(edited); !sound) return sound.error();
  return edited;
}

Result<Job> standingAlone(const Job& job, std::string_view name) {
  Job edited = job;
  const auto part = entryNamed(edited.parts, name);
  if (part == edited.parts.end()) return absent("the job has no part `" + std::string(name) + "`");
  if (!part->opposite) return wrong("`" + std::string(name) + "` stands for itself already");
  part->opposite.reset();
  return edited;
}

}  // namespace inchwright
