#pragma once

#include <string>
#include <vector>

#include "core/checks/put_in_otherwise.h"
#include "core/measure/writing.h"

namespace inchwright {

/// What one piece leaves at each side, in UK English: `piece 2: left to come off right 0.0620, back
/// 0.0000`, and where it does not clean up that.
std::string pieceWords(const PieceLeft& piece, const Step& shown);

/// The rows of pieces put in another way round, a heading and then a line a place: `end for end
/// (right at the stop with 0.0620 left on it, back at the fixed jaw), pieces 1 and 3; zero stays`,
/// `A: X +2.5620, Y +0.5000`.
std::vector<std::string> otherwiseWords(const PutInOtherwise& put, const Step& shown);

}  // namespace inchwright
