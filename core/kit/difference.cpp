#include "core/kit/difference.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <unordered_map>

#include "core/part/feature_members.h"
#include "core/plan/table.h"

namespace inchwright {
namespace {

constexpr double kNear = Length::kTicksPerInch / 4.0;

using MemberText = ComparedPart::MemberText;

std::string meaningOf(const Lettered& figure) {
  std::string means = std::to_string(figure.value.ticks()) + ' ' +
                      std::to_string(static_cast<int>(figure.lettering)) + ' ' +
                      std::to_string(figure.places);
  if (figure.tolerance) {
    means += ' ' + std::to_string(figure.tolerance->lower.ticks()) + ' ' +
             std::to_string(figure.tolerance->upper.ticks());
  }
  return means;
}

/// What the document says of a feature's kind, member by member; names of other places are left
/// out, since they may differ without the part differing.
class MemberLister : public NoMembers {
 public:
  std::map<std::string, MemberText> take() { return std::move(texts_); }

  template <class Word>
  void word(std::string_view name, const Word& value) {
    if constexpr (requires { value.has_value(); }) {
      if (value) put(name, nameOf(*value));
    } else {
      put(name, nameOf(value));
    }
  }
  template <class Word>
  void needed(std::string_view name, const Word& value, std::string_view) {
    word(name, value);
  }
  template <class Word>
  void wordUnless(std::string_view name, const Word& value, std::remove_const_t<Word> usual) {
    if (value != usual) word(name, value);
  }
  template <class Flag>
  void flag(std::string_view name, const Flag& on) {
    if (on) put(name, "true");
  }
  void size(std::string_view name, const std::optional<Lettered>& figure, SizeSymbol) {
    if (figure) texts_[std::string(name)] = {figure->text, meaningOf(*figure)};
  }
  void angle(std::string_view name, const std::optional<LetteredAngle>& angle) {
    if (angle) put(name, angle->text);
  }
  void depth(std::string_view name, const Depth& depth) {
    if (depth.through || !depth.length) {
      put(name, "through");
    } else {
      size(name, depth.length, SizeSymbol::none);
    }
  }
  void text(std::string_view name, const std::string& text) { put(name, text); }
  template <class Kind>
  void count(const Kind& kind) {
    put("holes", std::to_string(kind.holes));
  }

 private:
  void put(std::string_view name, std::string_view text) {
    if (!text.empty()) texts_[std::string(name)] = {std::string(text), std::string(text)};
  }

  std::map<std::string, MemberText> texts_;
};

std::vector<ComparedPart::Member> textsOf(const Feature& feature) {
  MemberLister lister;
  visitMembers(feature, lister);
  const auto members = lister.take();
  return {members.begin(), members.end()};
}

std::optional<Length> apart(const std::optional<Rational>& a, const std::optional<Rational>& b) {
  const auto by = a && b ? b->minus(*a) : std::nullopt;
  return by ? nearestTick(*by) : std::nullopt;
}

std::optional<Length> sizeOf(const Feature& feature) {
  const auto* slot = feature.as<kind::Slot>();
  const auto* round = feature.as<kind::Round>();
  const std::optional<Lettered>& figure = slot    ? slot->width
                                          : round ? round->radius
                                                  : diameterOf(feature);
  return figure ? std::optional<Length>(figure->value) : std::nullopt;
}

std::optional<Rational> along(const WorkAt& work, const Feature& feature, Axis axis) {
  const TableAxis* table = work.along(axis);
  const Position* at = work.position(feature.id, axis);
  if (!table || !table->zero || !at) return std::nullopt;
  return at->ticks.minus(table->zero->ticks);
}

}  // namespace

/// Matches the places of two parts and lists in what they differ.
class Comparing {
 public:
  using Spot = ComparedPart::Spot;

  Comparing(const ComparedPart& a, const ComparedPart& b)
      : a_(a), b_(b), takenA_(a.spots_.size()), takenB_(b.spots_.size()) {
    found_.a = a.name_;
    found_.b = b.name_;
  }

  Difference take() {
    matchByName();
    matchByNearness();
    for (const auto& [a, b] : matched_) compare(*a, *b);
    addOnly(a_, takenA_);
    addOnly(b_, takenB_);
    const auto ofParts = [this](const char* member, const std::string& a, const std::string& b) {
      if (a != b) found_.ofParts.push_back({member, a, b});
    };
    ofParts("hand", a_.hand_, b_.hand_);
    ofParts("material", a_.material_, b_.material_);
    return std::move(found_);
  }

 private:
  void match(std::size_t a, std::size_t b) {
    takenA_[a] = takenB_[b] = true;
    matched_.emplace_back(&a_.spots_[a], &b_.spots_[b]);
  }

  void matchByName() {
    std::unordered_map<std::string_view, std::size_t> named;
    for (std::size_t b = 0; b < b_.spots_.size(); ++b) named.emplace(b_.spots_[b].id, b);
    for (std::size_t a = 0; a < a_.spots_.size(); ++a) {
      const auto found = named.find(a_.spots_[a].id);
      if (found == named.end()) continue;
      if (b_.spots_[found->second].kind == a_.spots_[a].kind) match(a, found->second);
    }
  }

  static double distance(const Spot& a, const Spot& b) {
    const auto dx = apart(a.x, b.x), dy = apart(a.y, b.y);
    if (!dx || !dy) return INFINITY;
    return std::hypot(static_cast<double>(dx->ticks()), static_cast<double>(dy->ticks()));
  }

  void matchByNearness() {
    for (std::size_t a = 0; a < a_.spots_.size(); ++a) {
      const Spot& one = a_.spots_[a];
      if (takenA_[a] || one.edge()) continue;
      std::optional<std::size_t> nearest;
      double least = kNear;
      for (std::size_t b = 0; b < b_.spots_.size(); ++b) {
        const Spot& other = b_.spots_[b];
        if (takenB_[b] || other.kind != one.kind || other.size != one.size) continue;
        const double away = distance(one, other);
        if (away > least || (nearest && away >= least)) continue;
        least = away;
        nearest = b;
      }
      if (nearest) match(a, *nearest);
    }
  }

  void compare(const Spot& a, const Spot& b) {
    const Pair ids{a.id, b.id};
    Moved moved{ids, apart(a.x, b.x), apart(a.y, b.y)};
    const auto off = [](const std::optional<Length>& by) { return by && !by->isZero(); };
    const bool hasMoved = off(moved.dx) || off(moved.dy);
    if (hasMoved) found_.moved.push_back(moved);
    const bool hasChanged = compareMembers(a, b, ids);
    if (!hasMoved && !hasChanged && !a.edge()) found_.alike.push_back(ids);
  }

  /// Both lists are in the order of the members' names.
  bool compareMembers(const Spot& a, const Spot& b, const Pair& ids) {
    static const MemberText kNone;
    bool any = false;
    const auto meet = [&](const std::string& member, const MemberText& here,
                          const MemberText& there) {
      if (here.means == there.means) return;
      found_.changed.push_back({ids, member, here.text, there.text});
      any = true;
    };
    auto here = a.members.begin();
    auto there = b.members.begin();
    while (here != a.members.end() || there != b.members.end()) {
      const bool onlyThere =
          here == a.members.end() || (there != b.members.end() && there->first < here->first);
      const bool onlyHere =
          there == b.members.end() || (here != a.members.end() && here->first < there->first);
      meet(onlyThere ? there->first : here->first, onlyThere ? kNone : here->second,
           onlyHere ? kNone : there->second);
      if (!onlyThere) ++here;
      if (!onlyHere) ++there;
    }
    return any;
  }

  void addOnly(const ComparedPart& part, const std::vector<bool>& taken) {
    for (std::size_t i = 0; i < part.spots_.size(); ++i) {
      if (!taken[i]) found_.only.push_back({part.name_, part.spots_[i].id});
    }
  }

  const ComparedPart& a_;
  const ComparedPart& b_;
  std::vector<bool> takenA_;
  std::vector<bool> takenB_;
  std::vector<std::pair<const Spot*, const Spot*>> matched_;
  Difference found_;
};

Result<ComparedPart> ComparedPart::of(const Job& job, const Part& part, const Solution& solution) {
  // Turned stock is compared as it lies on its print, whatever end is held.
  Setup setup = part.setups.empty() ? defaultSetup(part, solution) : part.setups[0];
  if (setup.chucked) setup = Setup{};
  const Result<WorkAt> work = workAt(job, part, solution, setup);
  if (!work) return work.error();
  const auto axes = axesIn(setup.face);
  ComparedPart compared;
  compared.name_ = part.name;
  compared.hand_ = part.hand;
  compared.material_ = part.material;
  for (const Feature& feature : part.features) {
    if (part.turned && feature.id == centreLine().id) continue;  // every turned part has it
    Spot spot{feature.id, feature.kind(), sizeOf(feature), textsOf(feature), {}, {}};
    spot.x = along(*work, feature, axes[0]);
    spot.y = along(*work, feature, axes[1]);
    compared.spots_.push_back(std::move(spot));
  }
  return compared;
}

Difference differenceOf(const ComparedPart& a, const ComparedPart& b) {
  return Comparing(a, b).take();
}

Result<Difference> differenceOf(const Job& job, const Part& a, const Solution& solutionA,
                                const Part& b, const Solution& solutionB) {
  const Result<ComparedPart> first = ComparedPart::of(job, a, solutionA);
  if (!first) return first.error();
  const Result<ComparedPart> second = ComparedPart::of(job, b, solutionB);
  if (!second) return second.error();
  return differenceOf(*first, *second);
}

bool easilyMistaken(const Difference& difference) {
  std::size_t near = difference.alike.size();
  std::vector<Pair> differing;
  for (const Moved& one : difference.moved) differing.push_back(one.ids);
  for (const Changed& one : difference.changed) {
    if (std::find(differing.begin(), differing.end(), one.ids) == differing.end()) {
      differing.push_back(one.ids);
    }
  }
  near += differing.size();
  return near >= 2 && near > 2 * difference.only.size();
}

}  // namespace inchwright
