#include "core/kit/found_place.h"

namespace inchwright {
namespace {

struct Measured {
  Length at;  ///< along the part's axis, from the setup's zero
  Length error;
};

std::optional<Measured> measuredAt(const Part& part, const Setup& setup, const TableAxis& axis,
                                   std::string_view place) {
  std::optional<Measured> last;
  if (axis.zero && axis.zero->asked.at == place && !axis.zero->asked.offset) {
    last = Measured{};
  }
  for (const MadePlace& made : part.made) {
    if (made.place != place || made.setup != setup.name) continue;
    const std::optional<Lettered>& read = axis.machine == MachineAxis::x ? made.x : made.y;
    if (!read) continue;
    const bool turnedRound = axis.part.sign * axis.counts < 0;
    Length error;
    if (made.with && made.with->error) error = made.with->error->value.magnitude();
    last = Measured{turnedRound ? read->value.negated() : read->value, error};
  }
  return last;
}

}  // namespace

std::optional<SizeLimits> foundDistance(const Job& job, const Part& part, const Solution& solution,
                                        Axis axis, std::string_view from, std::string_view to) {
  std::optional<SizeLimits> last;
  for (const Setup& setup : part.setups) {
    if (setup.chucked) continue;
    const Result<WorkAt> work = workAt(job, part, solution, setup);
    if (!work) continue;
    const TableAxis* along = work->along(axis);
    if (!along) continue;
    const auto a = measuredAt(part, setup, *along, from);
    const auto b = measuredAt(part, setup, *along, to);
    if (!a || !b) continue;
    const auto apart = b->at.minus(a->at);
    const auto error = a->error.plus(b->error);
    const auto least = apart && error ? apart->minus(*error) : std::nullopt;
    const auto greatest = apart && error ? apart->plus(*error) : std::nullopt;
    if (least && greatest) last = SizeLimits{*least, *greatest};
  }
  return last;
}

}  // namespace inchwright
