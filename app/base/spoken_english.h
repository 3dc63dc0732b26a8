#pragma once

#include <QString>
#include <string_view>

#include "core/base/english.h"
#include "core/part/job.h"

namespace inchwright::app {

/// Which English the desk speaks: that of the system's country, or one that was chosen.
enum class EnglishChoice { system, uk, us };

/// US for a system set to the United States, else UK.
English englishOf(EnglishChoice choice);

/// From now on words are in this English. What is already on the desk keeps its words until it is
/// made anew. Requires: the application is there.
void speakEnglish(EnglishChoice choice);
English spokenEnglish();

/// What core says, in the English spoken now; names of features of `part` stay as they are.
QString coreWords(std::string_view text, const Part* part = nullptr);

/// A text to be shown in lines that wrap: a point stays with the figure behind it. Left to itself a
/// line may end between the two, and of `.683` the next would begin with 683.
QString withWholeFigures(const QString& text);
/// A text as it was before that, for what is copied out of such lines and put in again.
QString withoutJoins(QString text);

}  // namespace inchwright::app
