#include "core/kit/difference.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/part/feature_members.h"
#include "core/plan/table.h"

namespace inchwright {
namespace {

constexpr double kNear = Length::kTicksPerInch / 4.0;

/// A member as lettered, and what makes it the same as another: `.250` and `0.250` are alike, and
/// `1/4` is not, since a fraction asks for less.
struct MemberText {
  std::string text;
  std::string means;
};
using MemberTexts = std::map<std::string, MemberText>;

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
  MemberTexts take() { return std::move(texts_); }

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

  MemberTexts texts_;
};

MemberTexts textsOf(const Feature& feature) {
  MemberLister members;
  visitMembers(feature, members);
  return members.take();
}

/// A feature with where it lies from zero, ticks along X and Y of its part's first setup.
struct Spot {
  const Feature* feature = nullptr;
  std::optional<Rational> x;
  std::optional<Rational> y;
  bool edge = false;
  bool taken = false;
};

class Spots {
 public:
  static Result<std::vector<Spot>> of(const Job& job, const Part& part, const Solution& solution) {
    const Setup setup = part.setups.empty() || part.setups[0].chucked ? defaultSetup(part, solution)
                                                                      : part.setups[0];
    const Result<WorkAt> work = workAt(job, part, solution, setup);
    if (!work) return work.error();
    const auto axes = axesIn(setup.face);
    std::vector<Spot> spots;
    for (const Feature& feature : part.features) {
      if (feature == centreLine()) continue;  // every turned part has it
      Spot spot;
      spot.feature = &feature;
      spot.edge = feature.is(FeatureKind::edge);
      spot.x = along(*work, feature, axes[0]);
      spot.y = along(*work, feature, axes[1]);
      spots.push_back(spot);
    }
    return spots;
  }

 private:
  static std::optional<Rational> along(const WorkAt& work, const Feature& feature, Axis axis) {
    const TableAxis* table = work.along(axis);
    const Position* at = work.position(feature.id, axis);
    if (!table || !table->zero || !at) return std::nullopt;
    return at->ticks.minus(table->zero->ticks);
  }
};

std::optional<Length> apart(const std::optional<Rational>& a, const std::optional<Rational>& b) {
  const auto by = a && b ? b->minus(*a) : std::nullopt;
  return by ? nearestTick(*by) : std::nullopt;
}

double distance(const Spot& a, const Spot& b) {
  const auto dx = apart(a.x, b.x), dy = apart(a.y, b.y);
  if (!dx || !dy) return INFINITY;
  return std::hypot(static_cast<double>(dx->ticks()), static_cast<double>(dy->ticks()));
}

bool sameSize(const Feature& a, const Feature& b) {
  const auto size = [](const Feature& one) {
    const auto* slot = one.as<kind::Slot>();
    const auto* round = one.as<kind::Round>();
    const std::optional<Lettered>& figure = slot    ? slot->width
                                            : round ? round->radius
                                                    : diameterOf(one);
    return figure ? std::optional<Length>(figure->value) : std::nullopt;
  };
  return size(a) == size(b);
}

class Comparing {
 public:
  Comparing(const Part& a, std::vector<Spot> spotsA, const Part& b, std::vector<Spot> spotsB)
      : a_(a), b_(b), spotsA_(std::move(spotsA)), spotsB_(std::move(spotsB)) {
    found_.a = a.name;
    found_.b = b.name;
  }

  Difference take() {
    matchByName();
    matchByNearness();
    for (const auto& [a, b] : matched_) compare(*a, *b);
    addOnly(spotsA_, a_.name);
    addOnly(spotsB_, b_.name);
    return std::move(found_);
  }

 private:
  void match(Spot& a, Spot& b) {
    a.taken = b.taken = true;
    matched_.emplace_back(&a, &b);
  }

  void matchByName() {
    for (Spot& a : spotsA_) {
      for (Spot& b : spotsB_) {
        if (b.taken || a.feature->id != b.feature->id) continue;
        if (a.feature->kind() == b.feature->kind()) match(a, b);
        break;
      }
    }
  }

  void matchByNearness() {
    for (Spot& a : spotsA_) {
      if (a.taken || a.edge) continue;
      Spot* nearest = nullptr;
      for (Spot& b : spotsB_) {
        if (b.taken || b.feature->kind() != a.feature->kind()) continue;
        if (!sameSize(*a.feature, *b.feature) || distance(a, b) > kNear) continue;
        if (!nearest || distance(a, b) < distance(a, *nearest)) nearest = &b;
      }
      if (nearest) match(a, *nearest);
    }
  }

  void compare(const Spot& a, const Spot& b) {
    const Pair ids{a.feature->id, b.feature->id};
    Moved moved{ids, apart(a.x, b.x), apart(a.y, b.y)};
    const auto off = [](const std::optional<Length>& by) { return by && !by->isZero(); };
    const bool hasMoved = off(moved.dx) || off(moved.dy);
    if (hasMoved) found_.moved.push_back(moved);
    const bool hasChanged = compareMembers(*a.feature, *b.feature, ids);
    if (!hasMoved && !hasChanged && !a.edge) found_.alike.push_back(ids);
  }

  bool compareMembers(const Feature& a, const Feature& b, const Pair& ids) {
    MemberTexts here = textsOf(a);
    MemberTexts there = textsOf(b);
    for (const auto& [member, text] : there) here.emplace(member, MemberText{});
    bool any = false;
    for (const auto& [member, text] : here) {
      const MemberText& other = there[member];
      if (text.means == other.means) continue;
      found_.changed.push_back({ids, member, text.text, other.text});
      any = true;
    }
    return any;
  }

  void addOnly(const std::vector<Spot>& spots, const std::string& part) {
    for (const Spot& one : spots) {
      if (!one.taken) found_.only.push_back({part, one.feature->id});
    }
  }

  const Part& a_;
  const Part& b_;
  std::vector<Spot> spotsA_;
  std::vector<Spot> spotsB_;
  std::vector<std::pair<const Spot*, const Spot*>> matched_;
  Difference found_;
};

}  // namespace

Result<Difference> differenceOf(const Job& job, const Part& a, const Solution& solutionA,
                                const Part& b, const Solution& solutionB) {
  Result<std::vector<Spot>> spotsA = Spots::of(job, a, solutionA);
  if (!spotsA) return spotsA.error();
  Result<std::vector<Spot>> spotsB = Spots::of(job, b, solutionB);
  if (!spotsB) return spotsB.error();
  Difference found = Comparing(a, *std::move(spotsA), b, *std::move(spotsB)).take();
  for (const auto& [member, of] :
       {std::pair("hand", &Part::hand), std::pair("material", &Part::material)}) {
    if (a.*of != b.*of) found.ofParts.push_back({member, a.*of, b.*of});
  }
  return found;
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

std::vector<Difference> likeOthers(const Job& job, std::span<const Solution> solutions,
                                   std::size_t part) {
  std::vector<Difference> all;
  for (std::size_t i = 0; i < job.parts.size(); ++i) {
    if (i == part || job.parts[i].turned != job.parts[part].turned) continue;
    Result<Difference> found =
        differenceOf(job, job.parts[i], solutions[i], job.parts[part], solutions[part]);
    if (found && easilyMistaken(*found)) all.push_back(*std::move(found));
  }
  return all;
}

}  // namespace inchwright
