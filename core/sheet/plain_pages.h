#pragma once

#include <string>
#include <vector>

#include "core/sheet/flow.h"
#include "core/sheet/job_pages.h"

namespace inchwright {

/// The margin of the pages about a job, mm.
inline constexpr double kPlainMargin = 12;

/// How wide and high a page is.
struct PageSize {
  double width = 210;
  double height = 297;
};
PageSize uprightSize(Paper paper);

/// Lays a block on upright pages, each with `title`, the job, its print and date above, the page's
/// number and the usual cautions below.
std::vector<Page> plainPages(const JobOnPaper& job, const std::string& title, const Pieces& pieces);

/// The width that pieces of such pages have.
double plainWidth(const JobOnPaper& job);

/// The step of the machine's readout, or a customary one where its text can't be read.
Step readoutStep(const JobOnPaper& job);

/// Adds head and foot to one page that is drawn by itself; returns where what is between begins.
double drawPlainFrame(const JobOnPaper& job, const std::string& title, std::size_t page,
                      std::size_t pages, Sketch& sketch);
/// Where it has to end, mm down the page.
double plainBottom(const JobOnPaper& job);

/// A heading with a rule above.
Piece plainHeading(const std::string& words, double width);
/// Lines of text.
Pieces plainText(const std::string& words, double width, bool bold = false);

/// One cell of a table of such a page.
struct PlainCell {
  std::string text;
  double left = 0;
  double width = 0;
  bool bold = false;
};
/// A row of cells with a hairline below, as high as its highest cell.
Piece plainRow(const std::vector<PlainCell>& cells, double width);

}  // namespace inchwright
