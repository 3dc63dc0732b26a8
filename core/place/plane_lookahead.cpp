#include <algorithm>

#include "core/place/plane_placing.h"

namespace inchwright {
namespace {

// Further than this nobody looks: a loop of more places keeps both its answers.
constexpr std::size_t kMostBlocks = 16;
constexpr std::size_t kMostSpares = 256;

constexpr std::uint32_t kNoBlock = 0xffffffff;

}  // namespace

// The blocks not placed yet without which a spare row is not known; none when it hangs on what is
// loose, or on too many.
std::set<std::uint32_t> Placing::stillBehind(std::uint32_t spare) const {
  std::set<std::uint32_t> behind;
  std::vector<std::uint32_t> rows{spare};
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Row& row = out_.equations.rows()[rows[i]];
    for (std::size_t k = 0; k < operandsOf(row.kind); ++k) {
      for (const Term& term : out_.equations.termsOf(row.of[k])) {
        if (out_.isPlaced[term.variable]) continue;
        const std::uint32_t block = blockOf_[term.variable];
        if (block == kNoBlock) return {};
        if (!behind.insert(block).second) continue;
        if (behind.size() > kMostBlocks) return {};
        const auto& more = out_.blocks[block].block.rows;
        rows.insert(rows.end(), more.begin(), more.end());
      }
    }
  }
  return behind;
}

Placing::FurtherOn Placing::furtherOn(std::uint32_t block) const {
  FurtherOn further;
  if (spares_.size() > kMostSpares) return further;
  for (const std::uint32_t spare : spares_) {
    const std::set<std::uint32_t> behind = stillBehind(spare);
    if (behind.size() < 2 || !behind.contains(block)) continue;
    further.spares.push_back(spare);
    further.blocks.insert(behind.begin(), behind.end());
  }
  further.blocks.erase(block);
  return further;
}

// Puts a block where it has to lie, where that is known, until all is put back.
void Placing::placeOnTrial(std::uint32_t block, Against& against) {
  PlacedBlock trial;
  trial.block = out_.blocks[block].block;
  const auto knows = [&](std::uint32_t row) { return isKnown(row, &trial.block); };
  if (!std::all_of(trial.block.rows.begin(), trial.block.rows.end(), knows)) return;
  seeWhatMoves(trial);
  AnswerSearch search = answersOf(out_.equations, problem_.choices, kinds_, trial.block,
                                  out_.variables, [] { return false; });
  if (!search.isComplete) return;
  std::erase_if(search.answers, [&](const Answer& answer) {
    put(trial.block, answer);
    return !isAllowed(trial);
  });
  if (search.answers.empty()) {
    against.emplace(true, block);
    return;
  }
  const auto agrees = [&](const Answer& answer) {
    put(trial.block, answer);
    return agreesWithSpares(trial);
  };
  const auto agreeing = std::count_if(search.answers.begin(), search.answers.end(), agrees);
  if (agreeing > 1) return;
  // Where none agrees any will do: it is known then what speaks against it.
  const auto chosen = std::find_if(search.answers.begin(), search.answers.end(), agrees);
  put(trial.block, chosen == search.answers.end() ? search.answers.front() : *chosen);
  for (const std::uint32_t one : trial.block.variables) out_.isPlaced[one] = true;
}

// What further on can't be so when a block comes out in a given way. All is left as it was.
Placing::Against Placing::speakingAgainst(const PlacedBlock& placed, const Answer& answer,
                                          const FurtherOn& further) {
  std::vector<std::pair<const Block*, Answer>> before{{&placed.block, asItStands(placed.block)}};
  for (const std::uint32_t next : further.blocks) {
    const Block& block = out_.blocks[next].block;
    before.emplace_back(&block, asItStands(block));
  }
  Against against;
  put(placed.block, answer);
  for (const std::uint32_t one : placed.block.variables) out_.isPlaced[one] = true;
  for (const std::uint32_t next : further.blocks) placeOnTrial(next, against);
  for (const std::uint32_t spare : further.spares) {
    if (isKnown(spare) && leastResidual(spare) > allowance(spare)) {
      against.emplace(false, spare);
    }
  }
  for (const auto& [block, stood] : before) {
    put(*block, stood);
    for (const std::uint32_t one : block->variables) out_.isPlaced[one] = false;
  }
  return against;
}

// Readings to spare often close a loop only through places that hang on this one. An answer that
// agrees with all that any other agrees with, and with more than each, is the one.
std::optional<std::size_t> Placing::agreeingFurtherOn(const PlacedBlock& placed) {
  const FurtherOn further = furtherOn(blockOf_[placed.block.variables[0]]);
  if (further.spares.empty()) return std::nullopt;
  std::vector<Against> against;
  for (const Answer& answer : placed.answers) {
    against.push_back(speakingAgainst(placed, answer, further));
  }
  for (std::size_t i = 0; i < against.size(); ++i) {
    const Against& least = against[i];
    const auto isWorse = [&](const Against& other) {
      return &other == &least ||
             (other.size() > least.size() &&
              std::includes(other.begin(), other.end(), least.begin(), least.end()));
    };
    if (std::all_of(against.begin(), against.end(), isWorse)) return i;
  }
  return std::nullopt;
}

}  // namespace inchwright
