#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/kit/difference.h"
#include "core/part/job.h"
#include "core/solution/solution.h"

namespace inchwright {

/// The solution of a part; where a sum is beyond what can be held, an empty one with that as its
/// doubt, so that whoever is typing is told and can go on.
Solution solvedOrDoubted(const Part& part);

/// What follows from each part of a job by itself, worked out when it is first asked for and again
/// only for a part that changed. Parts are known by their value, whatever became of their place in
/// the job. Of a job of 60 parts a keystroke in one solves one.
class SolvedKit {
 public:
  SolvedKit() = default;
  explicit SolvedKit(const Job& job) { follow(job); }

  /// This is the job from now on. What was handed out before is no longer valid.
  void follow(const Job& job);

  /// The solution of a part that is at hand already.
  void give(std::size_t part, Solution solution);

  /// Requires, of these and `give`: `part` < the number of parts of the job.
  const Solution& solution(std::size_t part);
  /// Of all parts, in their order.
  std::span<const Solution> solutions();
  /// Every other part that one may be mistaken for, and in what it differs from that: `a` is the
  /// other, `b` is `part`. One that can't be compared is left out; turned parts are held against
  /// turned ones.
  std::vector<Difference> likeOthers(std::size_t part);

  /// How many times a part was solved.
  std::size_t timesSolved() const { return timesSolved_; }

 private:
  struct Compared {
    bool tried = false;
    std::optional<ComparedPart> part;
  };

  const std::optional<ComparedPart>& compared(std::size_t part);

  Machine machine_;
  std::vector<Part> parts_;
  std::vector<bool> solved_;
  std::vector<Solution> solutions_;
  std::vector<Compared> compared_;
  std::size_t timesSolved_ = 0;
};

/// Whether a part that is the other hand of another one is that same part turned over: all that is
/// cut goes straight through from face to face, and nothing of it is its own. A plate with plain
/// holes → true; with one blind or countersunk hole, or one drilled into its edge → false.
bool sameTurnedOver(const Job& job, const Part& part);

}  // namespace inchwright
