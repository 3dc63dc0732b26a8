#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "app/words/streams.h"
#include "core/base/result.h"

namespace inchwright::app {

enum class Tone { heading, doubt, quiet };

/// The text with the terminal's marks for a tone about it, where the streams want colour. No
/// meaning is in the colour alone.
std::string toned(const Streams& streams, Tone tone, std::string_view text);

/// One line fit for a terminal: control characters, which a document could carry in its names,
/// become `?`.
std::string oneLine(std::string_view text);

/// Says in one line on `err` why the word `word` can't go on, and where; the outcome is kUnusable.
int refuse(const Streams& streams, std::string_view word, const Error& error,
           std::string_view file = {});

/// How many columns a UTF-8 text takes, counting a character as one column.
std::size_t columnsOf(std::string_view text);

enum class Justify { left, right };

/// Lines of aligned columns with two blanks between them, without blanks at the end. Every row has
/// as many cells as there are entries in `columns`; a column that is empty in all rows below the
/// first (the headings) is left out.
std::vector<std::string> alignedRows(const std::vector<std::vector<std::string>>& rows,
                                     const std::vector<Justify>& columns);

}  // namespace inchwright::app
