// Linked into every test program: takes the user's locale as a windowed program does at its start,
// so that the run under a comma-decimal locale shows any reading or writing of figures that
// follows the locale.

#include <clocale>

namespace {

[[maybe_unused]] const char* const kTaken = std::setlocale(LC_ALL, "");

}  // namespace
