#include "core/part/edit.h"

#include <algorithm>
#include <utility>

#include "core/part/check.h"
#include "core/part/doubt_key.h"
#include "core/part/feature_members.h"
#include "core/part/mentions.h"

namespace inchwright {
namespace {

Error noSuch(const std::string& what, std::string_view name) {
  return Error{ErrorCode::notFound, "there is no " + what + " `" + std::string(name) + "`",
               std::string(name)};
}

Result<Part> checked(Part part) {
  if (const Result<Done> sound = checkPart(part); !sound) return sound.error();
  return part;
}

Result<Job> checked(Job job) {
  if (const Result<Done> sound = checkJob(job); !sound) return sound.error();
  return job;
}

/// Where in a list the entry with this id or name stands; the list's end when nowhere.
template <class List, class Member>
std::ptrdiff_t placeIn(const List& list, Member member, std::string_view name) {
  const auto found = std::find_if(list.begin(), list.end(),
                                  [&](const auto& entry) { return entry.*member == name; });
  return found - list.begin();
}

template <class List>
bool isEnd(const List& list, std::ptrdiff_t place) {
  return place == static_cast<std::ptrdiff_t>(list.size());
}

/// One added entry, one replaced and one removed look alike for every list of a part or job.
template <class Whole, class Entry>
Result<Whole> added(Whole whole, std::vector<Entry> Whole::*list, const Entry& entry) {
  (whole.*list).push_back(entry);
  return checked(std::move(whole));
}

template <class Whole, class Entry>
Result<Whole> replaced(Whole whole, std::vector<Entry> Whole::*list, std::ptrdiff_t place,
                       const Entry& entry) {
  (whole.*list)[static_cast<std::size_t>(place)] = entry;
  return checked(std::move(whole));
}

template <class Whole, class Entry>
Result<Whole> removed(Whole whole, std::vector<Entry> Whole::*list, std::ptrdiff_t place) {
  (whole.*list).erase((whole.*list).begin() + place);
  return checked(std::move(whole));
}

void renameInKey(const Feature& feature, std::string& text, std::string_view newId) {
  std::optional<DoubtKey> key = DoubtKey::read(text);
  if (!key) return;
  for (Id& place : key->places) place = renamedPlace(feature, place, newId);
  // Of holes that meet either may be told first: it goes by their names.
  if (key->topic == DoubtTopic::holesMeet) std::sort(key->places.begin(), key->places.end());
  text = key->text();
}

void renameMentions(Part& part, const Feature& old, std::string_view newId) {
  forEachMention(part, [&](const std::string&, Id& id) { id = renamedPlace(old, id, newId); });
  for (AcceptedDoubt& one : part.accepted) renameInKey(old, one.key, newId);
  for (MadePlace& made : part.made) made.place = renamedPlace(old, made.place, newId);
  for (Mended& mended : part.mended) mended.place = renamedPlace(old, mended.place, newId);
}

/// Whether an understanding still says something true when one of its `of` is left out.
bool outlives(const Understanding& understanding) {
  return understanding.kind == UnderstandingKind::inLine ||
         understanding.kind == UnderstandingKind::concentric ||
         understanding.kind == UnderstandingKind::parallel ||
         understanding.kind == UnderstandingKind::on ||
         understanding.kind == UnderstandingKind::beside;
}

/// Takes a feature's places out of all that names them.
class Remover {
 public:
  Remover(Part& part, const Feature& feature) : part_(part), feature_(feature) {}

  void run() {
    for (Feature& other : part_.features) cleanFeature(other);
    std::erase_if(part_.readings, [this](const Reading& one) {
      return isGone(one.from) || isGone(one.to) || anyGone(one.against);
    });
    for (Understanding& one : part_.understood) {
      if (outlives(one)) dropFrom(one.of);
    }
    std::erase_if(part_.understood, [this](const Understanding& one) { return isSpent(one); });
    for (Setup& setup : part_.setups) {
      std::erase_if(setup.zero, [this](const ZeroAlong& zero) {
        return isGone(zero.at) || anyGone(zero.middle);
      });
      dropFrom(setup.checks);
      std::erase_if(setup.curves, [this](const GivenCurve& curve) { return isGone(curve.of); });
    }
    std::erase_if(part_.outlines,
                  [this](const GivenOutline& outline) { return anyGone(outline.follows); });
    std::erase_if(part_.made, [this](const MadePlace& made) { return isGone(made.place); });
  }

 private:
  bool isGone(const Id& id) const { return isNamedBy(feature_, id); }

  bool anyGone(const std::vector<Id>& ids) const {
    return std::any_of(ids.begin(), ids.end(), [this](const Id& id) { return isGone(id); });
  }

  void dropFrom(std::vector<Id>& ids) const {
    std::erase_if(ids, [this](const Id& id) { return isGone(id); });
  }

  /// Takes the names of what is gone out of a feature's members; of a pair, both.
  struct NameCleaner : NoMembers {
    explicit NameCleaner(const Remover& of) : remover(of) {}
    void id(std::string_view, Id& name) const {
      if (remover.isGone(name)) name.clear();
    }
    void ids(std::string_view, std::vector<Id>& names) const { remover.dropFrom(names); }
    void pair(std::string_view, std::vector<Id>& names) const {
      if (remover.anyGone(names)) names.clear();
    }
    const Remover& remover;
  };

  void cleanFeature(Feature& other) const {
    NameCleaner cleaner(*this);
    visitMembers(other, cleaner);
  }

  bool isSpent(const Understanding& one) const {
    if (outlives(one)) return one.of.size() < leastNamed(one) || isGone(one.about);
    return anyGone(one.of) || anyGone(one.between) || isGone(one.about);
  }

  Part& part_;
  const Feature& feature_;
};

}  // namespace

Part turnedPart(Part part) {
  part.turned = true;
  if (!part.feature(centreLine().id)) part.features.push_back(centreLine());
  return part;
}

Result<Part> addFeature(const Part& part, const Feature& feature) {
  return added(part, &Part::features, feature);
}

Result<Part> replaceFeature(const Part& part, std::string_view id, const Feature& feature) {
  const std::ptrdiff_t place = placeIn(part.features, &Feature::id, id);
  if (isEnd(part.features, place)) return noSuch("feature", id);
  Part edited = part;
  if (feature.id != id) {
    renameMentions(edited, part.features[static_cast<std::size_t>(place)], feature.id);
  }
  return replaced(std::move(edited), &Part::features, place, feature);
}

Result<Part> renameFeature(const Part& part, std::string_view id, std::string_view newId) {
  const Feature* feature = part.feature(id);
  if (feature == nullptr) return noSuch("feature", id);
  Feature edited = *feature;
  edited.id = newId;
  return replaceFeature(part, id, edited);
}

Result<Part> moveTrace(const Part& part, std::string_view id,
                       const std::vector<std::string>& traced) {
  const Feature* feature = part.feature(id);
  if (feature == nullptr) return noSuch("feature", id);
  Feature edited = *feature;
  edited.traced = traced;
  return replaceFeature(part, id, edited);
}

std::vector<std::string> mentionsOf(const Part& part, std::string_view id) {
  std::vector<std::string> mentions;
  const Feature* feature = part.feature(id);
  if (feature == nullptr) return mentions;
  forEachMention(part, [&](const std::string& who, const Id& named) {
    if (!isNamedBy(*feature, named)) return;
    if (mentions.empty() || mentions.back() != who) mentions.push_back(who);
  });
  return mentions;
}

Result<Removal> removeFeature(const Part& part, std::string_view id) {
  const std::ptrdiff_t place = placeIn(part.features, &Feature::id, id);
  if (isEnd(part.features, place)) return noSuch("feature", id);
  Part edited = part;
  edited.features.erase(edited.features.begin() + place);
  Remover(edited, part.features[static_cast<std::size_t>(place)]).run();
  Result<Part> sound = checked(std::move(edited));
  if (!sound) return sound.error();
  return Removal{*std::move(sound), mentionsOf(part, id)};
}

Result<Part> addReading(const Part& part, const Reading& reading) {
  return added(part, &Part::readings, reading);
}

Result<Part> replaceReading(const Part& part, std::string_view id, const Reading& reading) {
  const std::ptrdiff_t place = placeIn(part.readings, &Reading::id, id);
  if (isEnd(part.readings, place)) return noSuch("reading", id);
  return replaced(part, &Part::readings, place, reading);
}

Result<Part> removeReading(const Part& part, std::string_view id) {
  const std::ptrdiff_t place = placeIn(part.readings, &Reading::id, id);
  if (isEnd(part.readings, place)) return noSuch("reading", id);
  return removed(part, &Part::readings, place);
}

Result<Part> addUnderstanding(const Part& part, const Understanding& understanding) {
  return added(part, &Part::understood, understanding);
}

Result<Part> removeUnderstanding(const Part& part, std::size_t index) {
  if (index >= part.understood.size()) return noSuch("understanding", std::to_string(index));
  return removed(part, &Part::understood, static_cast<std::ptrdiff_t>(index));
}

Result<Part> addSetup(const Part& part, const Setup& setup) {
  return added(part, &Part::setups, setup);
}

Result<Part> replaceSetup(const Part& part, std::string_view name, const Setup& setup) {
  const std::ptrdiff_t place = placeIn(part.setups, &Setup::name, name);
  if (isEnd(part.setups, place)) return noSuch("setup", name);
  Part edited = part;
  if (setup.name != name) {
    // What was done and printed in it goes with it.
    for (MadePlace& made : edited.made) {
      if (made.setup == name) made.setup = setup.name;
    }
    for (PrintedSheet& printed : edited.printed) {
      if (printed.setup == name) printed.setup = setup.name;
    }
  }
  return replaced(std::move(edited), &Part::setups, place, setup);
}

Result<Part> removeSetup(const Part& part, std::string_view name) {
  const std::ptrdiff_t place = placeIn(part.setups, &Setup::name, name);
  if (isEnd(part.setups, place)) return noSuch("setup", name);
  return removed(part, &Part::setups, place);
}

Part withAccepted(const Part& part, const AcceptedDoubt& accepted) {
  Part edited = part;
  std::erase_if(edited.accepted, [&](const AcceptedDoubt& one) { return one.key == accepted.key; });
  edited.accepted.push_back(accepted);
  const auto key = DoubtKey::read(accepted.key);
  if (!key || key->topic != DoubtTopic::assumed || key->kind || key->places.size() != 1) {
    return edited;
  }
  for (Feature& feature : edited.features) {
    if (feature.id != key->places.front()) continue;
    if (auto* ring = feature.as<kind::Ring>()) ring->byTrace.clear();
    if (auto* row = feature.as<kind::Row>()) row->byTrace.clear();
  }
  return edited;
}

Part withMade(const Part& part, const MadePlace& made) {
  Part edited = part;
  const auto there = std::find_if(edited.made.begin(), edited.made.end(), [&](const auto& one) {
    return one.place == made.place && one.setup == made.setup && one.piece == made.piece;
  });
  if (there == edited.made.end()) {
    if (!made.empty()) edited.made.push_back(made);
  } else if (made.empty()) {
    edited.made.erase(there);
  } else {
    *there = made;
  }
  return edited;
}

MadePlace madeAt(const Part& part, std::string_view place, std::string_view setup) {
  for (const MadePlace& one : part.made) {
    if (one.place == place && one.setup == setup) return one;
  }
  MadePlace none;
  none.place = place;
  none.setup = setup;
  return none;
}

MadePlace madeOfPiece(const Part& part, std::string_view place, std::string_view setup,
                      std::string_view piece) {
  MadePlace none;
  none.place = place;
  none.setup = setup;
  none.piece = piece;
  for (const MadePlace& one : part.made) {
    if (one.place == place && one.setup == setup && one.piece == piece) return one;
  }
  return none;
}

Part withMended(const Part& part, const Mended& mended) {
  Part edited = part;
  const auto there = std::find_if(
      edited.mended.begin(), edited.mended.end(),
      [&](const Mended& one) { return one.place == mended.place && one.piece == mended.piece; });
  if (there == edited.mended.end()) {
    edited.mended.push_back(mended);
  } else {
    *there = mended;
  }
  return edited;
}

Result<Job> addPart(const Job& job, const Part& part) {
  return added(job, &Job::parts, part);
}

Result<Job> removePart(const Job& job, std::string_view name) {
  const std::ptrdiff_t place = placeIn(job.parts, &Part::name, name);
  if (isEnd(job.parts, place)) return noSuch("part", name);
  return removed(job, &Job::parts, place);
}

}  // namespace inchwright
