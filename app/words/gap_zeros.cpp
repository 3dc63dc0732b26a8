#include "app/words/gap_zeros.h"

#include <algorithm>
#include <map>
#include <optional>

#include "app/words/tolerance_note.h"

namespace inchwright::app {
namespace {

Error zeroFault(ErrorCode code, std::string text) {
  return {code, std::move(text), "--from-zero"};
}

struct NamedZeros {
  std::optional<std::string> forAll;
  std::map<std::string, std::string, std::less<>> byPart;

  std::optional<std::string> setupFor(const std::string& part) const {
    const auto found = byPart.find(part);
    return found == byPart.end() ? forAll : found->second;
  }
};

// A piece of text is `PART=SETUP` only where the job has such a part.
Result<NamedZeros> zerosIn(const std::string& text, const Job& job) {
  NamedZeros zeros;
  for (std::size_t start = 0; start <= text.size();) {
    const std::size_t comma = std::min(text.find(',', start), text.size());
    const std::string piece = text.substr(start, comma - start);
    start = comma + 1;
    const std::size_t equals = piece.find('=');
    const std::string part = piece.substr(0, equals);
    if (equals != std::string::npos && job.part(part)) {
      if (zeros.byPart.emplace(part, piece.substr(equals + 1)).second) continue;
      return zeroFault(ErrorCode::badRequest, part + " is named twice");
    }
    if (equals != std::string::npos) {
      return zeroFault(ErrorCode::notFound, "the job has no part “" + part + "”");
    }
    if (zeros.forAll) {
      return zeroFault(ErrorCode::badRequest,
                       "“" + *zeros.forAll + "” and “" + piece +
                           "” name no part; say PART=SETUP where they differ");
    }
    zeros.forAll = piece;
  }
  return zeros;
}

// By name, each once, in the order the gap comes to them.
std::vector<std::string> partsMeasured(const Gap& gap) {
  std::vector<std::string> parts;
  for (const GapMember& member : gap.members) {
    const bool isNew = std::find(parts.begin(), parts.end(), member.part) == parts.end();
    if ((member.axis || member.isStraight) && isNew) parts.push_back(member.part);
  }
  return parts;
}

}  // namespace

Result<std::vector<MadePart>> gapZeros(const std::string& named, const OpenedJob& opened,
                                       const Gap& gap) {
  const Result<NamedZeros> zeros = zerosIn(named, opened.job);
  if (!zeros) return zeros.error();
  const std::vector<std::string> parts = partsMeasured(gap);
  for (const auto& [part, setup] : zeros->byPart) {
    if (std::find(parts.begin(), parts.end(), part) != parts.end()) continue;
    return zeroFault(ErrorCode::badRequest, "gap " + gap.name + " measures nothing in " + part);
  }
  std::vector<MadePart> made;
  for (const OpenedJob::Solved& solved : opened.solved) {
    const Part& part = opened.part(solved);
    if (std::find(parts.begin(), parts.end(), part.name) == parts.end()) continue;
    const auto name = zeros->setupFor(part.name);
    if (!name) continue;
    if (const Setup* setup = part.setup(*name)) {
      made.push_back({part.name, *setup, &solved.solution});
      continue;
    }
    std::vector<std::string> there;
    for (const Setup& one : part.setups) there.push_back(one.name);
    return zeroFault(ErrorCode::notFound,
                     "the gap runs through " + part.name + ", which has no setup “" + *name + "”" +
                         (there.empty() ? "" : "; it has " + listed(there)) +
                         ". Say PART=SETUP for the parts that are to be made from one");
  }
  return made;
}

std::string titleOf(const std::vector<MadePart>& zeros, const Gap& gap) {
  std::string title;
  for (const MadePart& one : zeros) {
    title += (title.empty() ? "from zero of " : ", ") + one.part + " " + one.setup.name;
  }
  const bool some = zeros.size() < partsMeasured(gap).size();
  if (title.empty()) return "as drawn";
  return title + (some ? ", the rest as drawn" : "");
}

}  // namespace inchwright::app
