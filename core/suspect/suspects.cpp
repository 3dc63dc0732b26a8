#include "core/suspect/suspects.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "core/suspect/correction_cost.h"
#include "core/suspect/explanation.h"
#include "core/suspect/lookalike.h"
#include "core/suspect/many_misread.h"

namespace inchwright {
namespace {

using Suspects = std::vector<Suspect>;

constexpr std::size_t kMostSuspects = 12;
/// Set against suspicions that close every loop; keeps those that do not below them.
constexpr double kClosesOneOnly = 20.0;

double sumOfLogs(double a, double b) {
  const double high = std::max(a, b);
  return high + std::log1p(std::exp(std::min(a, b) - high));
}

/// All clashes of one axis against one block that misses.
class BlockRanking {
 public:
  BlockRanking(const Part& part, const AxisNetwork& network, const ConditionSpace& space,
               const MissingBlock& block)
      : part_(part),
        network_(network),
        tracing_(part, network, space, block),
        costs_(part, network, space, tracing_),
        explanations_(explain(part, network, space, block, tracing_)) {
    if (explanations_.empty()) many_ = explainMany(part, space, block, costs_);
    for (const std::uint32_t link : block.readings) {
      linkOf_[network.links[link].source.index] = link;
    }
    gather();
  }

  /// Appends to the list of each clash.
  void rank(const std::vector<const Clash*>& clashes, const std::vector<Suspects*>& lists);

 private:
  struct Opinion {
    Correction correction;
    double weight;         ///< log of the share of all explanations that need it
    std::size_t clearest;  ///< the likeliest explanation that needs it
  };

  void gather();
  std::vector<std::uint32_t> readingsOf(const Clash& clash) const;
  std::vector<std::uint32_t> likeliest() const;
  std::map<std::size_t, std::uint32_t> headsOf(const std::vector<const Clash*>& clashes) const;
  std::vector<std::uint32_t> unheard(const std::vector<const Clash*>& clashes) const;
  void list(const Clash& clash, std::optional<std::uint32_t> head,
            const std::vector<std::uint32_t>& partners, Suspects& list) const;
  void listOfMany(const Clash& clash, std::optional<std::uint32_t> head, Suspects& list);
  Suspect onItsOwn(const Correction& correction);
  Suspect suspectOf(const Opinion& opinion) const;
  Suspect figureOnly(const Correction& correction) const;
  std::optional<Length> tracedFigure(const Correction& correction) const;

  const Part& part_;
  const AxisNetwork& network_;
  Tracing tracing_;
  CorrectionCost costs_;
  std::vector<Explanation> explanations_;
  ManyMisread many_;                               ///< where there are none
  std::map<std::uint32_t, std::uint32_t> linkOf_;  ///< by index into Part::readings
  std::map<std::uint32_t, Opinion> opinions_;      ///< by link
};

// Of each reading the value that most of the likelihood is for.
void BlockRanking::gather() {
  std::map<std::pair<std::uint32_t, std::int64_t>, Opinion> all;
  std::optional<double> total;
  for (std::size_t i = 0; i < explanations_.size(); ++i) {
    const double weight = -explanations_[i].cost;
    total = total ? sumOfLogs(*total, weight) : weight;
    for (const Correction& one : explanations_[i].corrections) {
      const auto at = all.emplace(std::pair(one.link, one.longer), Opinion{one, weight, i});
      if (!at.second) at.first->second.weight = sumOfLogs(at.first->second.weight, weight);
    }
  }
  for (auto& [key, opinion] : all) {
    opinion.weight -= *total;
    const auto at = opinions_.emplace(key.first, opinion);
    if (!at.second && opinion.weight > at.first->second.weight) at.first->second = opinion;
  }
}

std::vector<std::uint32_t> BlockRanking::readingsOf(const Clash& clash) const {
  std::vector<std::uint32_t> links;
  for (const LoopMember& member : clash.loop) {
    if (member.source.kind != SourceKind::reading) continue;
    const auto found = linkOf_.find(member.source.index);
    if (found != linkOf_.end()) links.push_back(found->second);
  }
  return links;
}

// The readings of the likeliest explanation.
std::vector<std::uint32_t> BlockRanking::likeliest() const {
  std::vector<std::uint32_t> links;
  for (const auto& one : many_.longer) links.push_back(one.first);
  if (explanations_.empty()) return links;
  for (const Correction& one : explanations_.front().corrections) links.push_back(one.link);
  return links;
}

// Gives as many misreadings of the likeliest explanation as possible a clash to stand at the head
// of, by augmenting paths.
std::map<std::size_t, std::uint32_t> BlockRanking::headsOf(
    const std::vector<const Clash*>& clashes) const {
  std::map<std::size_t, std::uint32_t> heads;
  std::vector<std::set<std::uint32_t>> on;
  for (const Clash* clash : clashes) {
    const auto links = readingsOf(*clash);
    on.emplace_back(links.begin(), links.end());
  }
  for (const std::uint32_t one : likeliest()) {
    std::set<std::size_t> tried;
    const auto place = [&](const auto& self, std::uint32_t link) -> bool {
      for (std::size_t i = 0; i < clashes.size(); ++i) {
        if (on[i].count(link) == 0 || !tried.insert(i).second) continue;
        const auto held = heads.find(i);
        if (held != heads.end() && !self(self, held->second)) continue;
        heads[i] = link;
        return true;
      }
      return false;
    };
    place(place, one);
  }
  return heads;
}

// What the likeliest explanation needs and no loop that misses shows: two misreadings may cancel in
// the only loops that one of them is on. They are told wherever a partner of theirs is.
std::vector<std::uint32_t> BlockRanking::unheard(const std::vector<const Clash*>& clashes) const {
  std::set<std::uint32_t> heard;
  for (const Clash* clash : clashes) {
    for (const std::uint32_t link : readingsOf(*clash)) heard.insert(link);
  }
  std::vector<std::uint32_t> rest;
  for (const std::uint32_t one : likeliest()) {
    if (heard.count(one) == 0) rest.push_back(one);
  }
  return rest;
}

// What the tracing makes of a reading, where that is another length than it says and about the one
// that it is suspected to be.
std::optional<Length> BlockRanking::tracedFigure(const Correction& correction) const {
  const auto drawn = tracing_.lengthOf(correction.link);
  if (!drawn) return std::nullopt;
  const Lettered& seen = *figureOf(part_, network_.links[correction.link].source);
  const double now = seen.value.toInches();
  const double then = now + Length::ticks(correction.longer).toInches();
  constexpr double kWide = 0.06;
  if (std::abs(*drawn - now) < kWide || std::abs(*drawn - then) > kWide) return std::nullopt;
  const Length step = Length::ticks(seen.unit == Unit::inch ? Length::kTicksPerInch / 32
                                                            : Length::kTicksPerMillimetre / 2);
  const std::int64_t count = std::llround(*drawn / step.toInches());
  return step.times(count).value_or(Length());
}

Suspect BlockRanking::figureOnly(const Correction& correction) const {
  const Source& source = network_.links[correction.link].source;
  const Lettered& seen = *figureOf(part_, source);
  Suspect suspect;
  suspect.reading = part_.readings[source.index].id;
  const Length would = seen.value.plus(Length::ticks(correction.longer)).value_or(seen.value);
  suspect.wouldBe = would.magnitude();
  suspect.wouldBeText = letteredLike(seen, suspect.wouldBe);
  suspect.traced = tracedFigure(correction);
  return suspect;
}

Suspect BlockRanking::suspectOf(const Opinion& opinion) const {
  const Explanation& explanation = explanations_[opinion.clearest];
  Suspect suspect = figureOnly(opinion.correction);
  for (std::size_t i = 0; i < explanation.corrections.size(); ++i) {
    const std::uint32_t link = explanation.corrections[i].link;
    if (link == opinion.correction.link) {
      suspect.reason = explanation.reasons[i];
    } else {
      suspect.together.push_back(part_.readings[network_.links[link].source.index].id);
    }
  }
  suspect.weight = opinion.weight;
  suspect.closesAll = suspect.together.empty();
  return suspect;
}

void BlockRanking::list(const Clash& clash, std::optional<std::uint32_t> head,
                        const std::vector<std::uint32_t>& partners, Suspects& list) const {
  const auto likely = likeliest();
  const std::set<std::uint32_t> best(likely.begin(), likely.end());
  std::vector<const Opinion*> ranked;
  std::vector<std::uint32_t> links = readingsOf(clash);
  links.insert(links.end(), partners.begin(), partners.end());
  for (const std::uint32_t link : links) {
    const auto found = opinions_.find(link);
    if (found != opinions_.end()) ranked.push_back(&found->second);
  }
  const auto key = [&](const Opinion* one) {
    const std::uint32_t link = one->correction.link;
    const int rank = head == link ? 0 : best.count(link) != 0 ? 1 : 2;
    return std::tuple(rank, -one->weight, link);
  };
  std::sort(ranked.begin(), ranked.end(),
            [&](const Opinion* a, const Opinion* b) { return key(a) < key(b); });
  ranked.erase(std::unique(ranked.begin(), ranked.end()), ranked.end());
  if (ranked.size() > kMostSuspects) ranked.resize(kMostSuspects);
  for (const Opinion* one : ranked) list.push_back(suspectOf(*one));
}

Suspect BlockRanking::onItsOwn(const Correction& correction) {
  Suspect suspect = figureOnly(correction);
  suspect.reason = costs_.figure(correction).reason;
  suspect.weight = -costs_.guess(correction) - kClosesOneOnly;
  return suspect;
}

// Where no few misreadings explain the block: those on this loop of the many that do together, then
// what would close this loop alone.
void BlockRanking::listOfMany(const Clash& clash, std::optional<std::uint32_t> head,
                              Suspects& list) {
  std::vector<std::pair<int, Suspect>> ranked;
  std::vector<Id> misread;
  for (const LoopMember& member : clash.loop) {
    if (member.source.kind != SourceKind::reading) continue;
    const auto found = linkOf_.find(member.source.index);
    if (found == linkOf_.end()) continue;
    const std::uint32_t link = found->second;
    if (const auto longer = many_.longer.find(link); longer != many_.longer.end()) {
      Suspect suspect = onItsOwn({link, longer->second});
      suspect.ofMany = many_.closes.at(link);
      misread.push_back(suspect.reading);
      ranked.push_back({head == link ? 0 : 1, std::move(suspect)});
      continue;
    }
    const auto factor = network_.links[link].ticks == 0
                            ? std::nullopt
                            : member.step.over(Rational(network_.links[link].ticks));
    const auto alone = factor ? clash.missesBy.over(*factor) : std::nullopt;
    const auto ticks = alone ? alone->rounded() : std::nullopt;
    if (ticks && costs_.figure({link, *ticks}).possible)
      ranked.push_back({2, onItsOwn({link, *ticks})});
  }
  std::sort(ranked.begin(), ranked.end(), [](const auto& a, const auto& b) {
    return std::tuple(a.first, -a.second.weight, a.second.reading) <
           std::tuple(b.first, -b.second.weight, b.second.reading);
  });
  if (ranked.size() > kMostSuspects) ranked.resize(kMostSuspects);
  for (auto& [rank, suspect] : ranked) {
    if (rank < 2) {
      for (const Id& other : misread) {
        if (other != suspect.reading) suspect.together.push_back(other);
      }
    }
    list.push_back(std::move(suspect));
  }
}

void BlockRanking::rank(const std::vector<const Clash*>& clashes,
                        const std::vector<Suspects*>& lists) {
  const auto heads = headsOf(clashes);
  const auto partners = explanations_.empty() ? std::vector<std::uint32_t>() : unheard(clashes);
  for (std::size_t i = 0; i < clashes.size(); ++i) {
    lists[i]->clear();
    const auto found = heads.find(i);
    const auto head = found == heads.end() ? std::nullopt : std::optional(found->second);
    if (explanations_.empty()) {
      listOfMany(*clashes[i], head, *lists[i]);
    } else {
      list(*clashes[i], head, partners, *lists[i]);
    }
  }
}

}  // namespace

std::vector<std::vector<Suspect>> suspectsOf(const Part& part,
                                             const std::array<AxisSystem, 3>& systems,
                                             std::span<const Clash> clashes) {
  std::vector<Suspects> all(clashes.size());
  for (const AxisSystem& system : systems) {
    const AxisNetwork& network = system.network();
    const auto isHere = [&](const Clash& clash) { return clash.axis == network.axis; };
    if (std::none_of(clashes.begin(), clashes.end(), isHere)) continue;
    const ConditionSpace space(part, system);
    for (const MissingBlock& block : space.blocks()) {
      std::set<std::uint32_t> readings;
      for (const std::uint32_t link : block.readings) {
        readings.insert(network.links[link].source.index);
      }
      std::vector<const Clash*> concerned;
      std::vector<Suspects*> lists;
      for (std::size_t i = 0; i < clashes.size(); ++i) {
        if (!isHere(clashes[i])) continue;
        const auto isMember = [&](const LoopMember& member) {
          return member.source.kind == SourceKind::reading && readings.count(member.source.index);
        };
        if (std::none_of(clashes[i].loop.begin(), clashes[i].loop.end(), isMember)) continue;
        concerned.push_back(&clashes[i]);
        lists.push_back(&all[i]);
      }
      BlockRanking(part, network, space, block).rank(concerned, lists);
    }
  }
  return all;
}

}  // namespace inchwright
