#pragma once

#include <string>
#include <string_view>

namespace inchwright {

/// Whether a name holds a mark that nobody sees on paper: blanks but the plain one, joiners, marks
/// of direction, fillers.
bool holdsUnseen(std::string_view name);

/// A name as it looks on paper, so that two that can't be told apart there come to the same:
/// without unseen marks and outer blanks, letters of other scripts and other cuts that look like
/// plain ones as those (Cyrillic А, Greek Α, full-width Ａ and bold 𝐀 all as A). `Plate ` comes to
/// `Plate`. What is no UTF-8 stays as it is.
std::string asItLooks(std::string_view name);

}  // namespace inchwright
