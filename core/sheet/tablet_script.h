#pragma once

#include <string_view>

namespace inchwright {

/// How the page for a tablet looks: black on white, figures that grow with the screen, places to
/// touch of at least 56 pixels.
std::string_view tabletStyle();

/// What the page does: one step at a time, ticks kept where the browser keeps anything, what is
/// found put together as one line. Nothing is fetched.
std::string_view tabletScript();

}  // namespace inchwright
