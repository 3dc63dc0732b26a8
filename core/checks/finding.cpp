#include "core/checks/finding.h"

#include <array>

namespace inchwright {

std::string_view nameOf(FindingCode code) {
  constexpr std::array<std::string_view, 19> kNames{"parallel",
                                                    "jaw",
                                                    "stop",
                                                    "clamp",
                                                    "clear_of",
                                                    "vice_bed",
                                                    "breaks_into",
                                                    "breaks_out",
                                                    "thin_wall",
                                                    "breaks_through",
                                                    "cutter_too_big",
                                                    "corner_too_tight",
                                                    "too_deep",
                                                    "no_tool",
                                                    "drill_at_ream_size",
                                                    "grip",
                                                    "travel",
                                                    "headroom",
                                                    "stock_too_small"};
  return kNames[static_cast<std::size_t>(code)];
}

}  // namespace inchwright
