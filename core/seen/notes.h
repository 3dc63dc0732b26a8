#pragma once

#include <string>
#include <vector>

#include "core/seen/circles.h"
#include "core/seen/figure.h"
#include "core/seen/lettering.h"
#include "core/seen/rounds.h"

namespace inchwright::seen {

/// One row of a note: a word that is known, and the figures beside it.
struct NoteRow {
  Box box;
  /// `DRILL`, `REAM`, `DIA`, `HOLES`, `RAD`, `PCD` …, and `R` before a figure
  std::string word;
  std::vector<FigureRead> figures;
  int count = 0;  ///< of `1/8 DRILL 3 HOLES` in one row; 0 where it says none
};

/// A note and what its leader points at.
struct Note {
  std::string word;
  std::vector<FigureRead> size;
  Box box;
  int count = 1;                ///< `4 HOLES`
  std::vector<FigureRead> pcd;  ///< `ON 2 1/4 P.C.D.` below it; empty where it says none
  int of = -1;  ///< index of the circle, or of the round; -1 where no leader was found
};

/// Rows of words with figures. A word is taken where its letters are plain.
std::vector<NoteRow> noteRows(const Lettering& lettering, double inch, Unit unit, const Net& net,
                              const Stop& stop = Stop());

/// Notes that speak of a hole's size, each with the circle at the end of its leader: a straight
/// line from beside the note to the rim, inked all the way, and to no other circle's.
std::vector<Note> notesOf(const std::vector<NoteRow>& rows, const std::vector<Circle>& circles,
                          const Grey& cover, double inch, const Stop& stop = Stop());

/// Leaves out all the notes at one thing that do not say the same: which of them counts, nobody can
/// tell from the drawing. `5/32 DRILL` and `REAM 5/32` at one hole → neither, so it is typed.
std::vector<Note> undisputed(const std::vector<Note>& notes);

/// Notes that speak of a radius, `R 1/4` or `1/4 RAD`, each with the round at whose arc such a
/// leader ends. One that runs on over the arc speaks of something else.
std::vector<Note> radiiOf(const std::vector<NoteRow>& rows, const std::vector<Rounding>& rounds,
                          const Grey& cover, double inch, const Stop& stop = Stop());

}  // namespace inchwright::seen
