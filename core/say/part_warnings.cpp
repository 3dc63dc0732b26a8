#include "core/say/part_warnings.h"

#include <algorithm>

#include "core/kit/solved_kit.h"
#include "core/say/difference_words.h"

namespace inchwright {

std::vector<std::string> partWarnings(const Job& job, std::size_t part,
                                      const std::vector<Difference>& like, const Step& step) {
  const Part& own = job.parts[part];
  std::vector<std::string> lines, turnedOver;
  for (const Part& other : job.parts) {
    const bool pair = (own.opposite && own.opposite->part == other.name) ||
                      (other.opposite && other.opposite->part == own.name);
    if (!pair || !sameTurnedOver(job, own.opposite ? own : other)) continue;
    turnedOver.push_back(other.name);
    lines.push_back("the same part as " + other.name +
                    " turned over: all that is cut goes straight through, so one sheet does for "
                    "both");
  }
  for (const Difference& found : like) {
    if (std::find(turnedOver.begin(), turnedOver.end(), found.a) != turnedOver.end()) continue;
    lines.push_back(mistakenWarning(found, step));
  }
  return lines;
}

}  // namespace inchwright
