#include "core/measure/writing.h"
#include "core/part/check.h"

namespace inchwright {

Fault checkTurnedOnly(const Part& part) {
  if (part.turned) return std::nullopt;
  for (std::size_t i = 0; i < part.features.size(); ++i) {
    const FeatureKind kind = part.features[i].kind();
    if (!isTurned(kind)) continue;
    return faultAt(Pointer() / "features" / i / "kind",
                   "`" + std::string(nameOf(kind)) +
                       "` is turned work: give the part `\"shape\": \"turned\"`");
  }
  for (std::size_t i = 0; i < part.setups.size(); ++i) {
    if (!part.setups[i].chucked) continue;
    return faultAt(Pointer() / "setups" / i / "kind",
                   "a setup of the lathe is for a turned part: give it `\"shape\": \"turned\"`");
  }
  return std::nullopt;
}

Fault checkLathe(const Job& job) {
  if (!job.lathe) return std::nullopt;
  const Pointer pointer = Pointer() / "lathe";
  if (const Result<Step> step = readStep(job.lathe->step, job.lathe->unit); !step) {
    return faultAt(pointer / "step", step.error().text);
  }
  if (job.lathe->roughLeaves && job.lathe->roughLeaves->value < Length()) {
    return faultAt(pointer / "rough_leaves", "what roughing leaves is not below 0");
  }
  return std::nullopt;
}

Fault checkMates(const Job& job) {
  for (std::size_t i = 0; i < job.mates.size(); ++i) {
    const Pointer pointer = Pointer() / "mates" / i / "name";
    if (job.mates[i].name.empty()) return faultAt(pointer, "a mate has a name of its own");
    for (std::size_t before = 0; before < i; ++before) {
      if (job.mates[before].name != job.mates[i].name) continue;
      return faultAt(pointer, "the mate `" + job.mates[i].name + "` is there twice");
    }
  }
  return std::nullopt;
}

}  // namespace inchwright
