#include "core/shop/thread_work.h"

#include <array>

namespace inchwright {
namespace {

constexpr std::array<std::string_view, 3> kLeads{"taper", "second", "bottoming"};

}  // namespace

Rational fullDepthInPitches(ThreadSeries series) {
  switch (series) {
    case ThreadSeries::bsw:
    case ThreadSeries::bsf:
    case ThreadSeries::me:
    case ThreadSeries::brass:
      return *Rational::of(1'280'654, 1'000'000);
    case ThreadSeries::ba:
      return *Rational::of(6, 5);
    default:
      return *Rational::of(1'299'038, 1'000'000);
  }
}

Rational screwDepthInPitches(ThreadSeries series) {
  switch (series) {
    case ThreadSeries::unc:
    case ThreadSeries::unf:
    case ThreadSeries::metric:
      return *Rational::of(613'435, 1'000'000);
    default:  // rounded alike inside and out
      return *fullDepthInPitches(series).over(Rational(2));
  }
}

int threadPercent(const Thread& thread, Length drill) {
  const Rational less(thread.major.ticks() - drill.ticks());
  const auto full = thread.pitch.times(fullDepthInPitches(thread.series));
  const auto share = full ? less.over(*full) : std::nullopt;
  const auto hundredths = share ? share->times(Rational(10'000)) : std::nullopt;
  const auto whole = hundredths ? hundredths->rounded() : std::nullopt;
  return whole ? static_cast<int>(*whole) : 0;
}

std::string_view nameOf(TapLead lead) {
  return kLeads[static_cast<std::size_t>(lead)];
}

std::optional<TapLead> tapLeadNamed(std::string_view name) {
  for (std::size_t i = 0; i < kLeads.size(); ++i) {
    if (kLeads[i] == name) return static_cast<TapLead>(i);
  }
  return std::nullopt;
}

int threadsOfLead(TapLead lead) {
  switch (lead) {
    case TapLead::taper:
      return 10;
    case TapLead::second:
      return 5;
    case TapLead::bottoming:
      break;
  }
  return 2;
}

Length leadLength(const Thread& thread, TapLead lead) {
  const auto length = thread.pitch.times(Rational(threadsOfLead(lead)));
  return length ? nearestTick(*length).value_or(Length()) : Length();
}

}  // namespace inchwright
