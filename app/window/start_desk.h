#pragma once

#include <string>
#include <vector>

namespace inchwright::app {

/// Opens the desk and stays until it is left; the outcome is an exit status.
///
///     [FILE]                                    on a document, or as it begins without one
///     --picture OUT.png [FILE]                  draws the window into a picture instead, without
///                                               a display; of the sample where no FILE is named
///       --size 1280x720  --lamplight  --fill theirs|mine
///       --force                             over a file that this program did not make
///       --show machine|setup|start|keys|tour
int startDesk(int& argc, char** argv, const std::vector<std::string>& args);

/// Whether the arguments are for the desk, though they begin with an option.
bool asksForPicture(const std::vector<std::string>& args);

}  // namespace inchwright::app
