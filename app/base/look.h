#pragma once

#include <QColor>
#include <QFont>
#include <QPalette>
#include <QPen>

class QPainter;
class QRectF;

namespace inchwright::app {

/// The colours of the desk: paper and pencil, by day and by lamplight. By lamplight paper is paper
/// still, lit warm, on a table in the dark.
///
/// No meaning hangs on a colour alone: what is in doubt also has a word or a torn edge, what is
/// mine a solid line. Text on its ground keeps a contrast of at least 4.5 to 1 (WCAG 2.1, 1.4.3).
struct Look {
  QColor desk;     ///< the table the two sheets lie on
  QColor onDesk;   ///< words and marks on the table itself
  QColor shadow;   ///< under a sheet
  QColor print;    ///< their paper: cream
  QColor sheet;    ///< my paper: white
  QColor slip;     ///< small slips of paper: the strip, the doubts
  QColor pencil;   ///< graphite: lines and text
  QColor faint;    ///< graphite, lightly: guides, what is not yet placed
  QColor blue;     ///< the blue pencil: what is mine
  QColor red;      ///< the red pencil: doubt
  QColor wash;     ///< a wash of blue behind what is chosen
  QColor redWash;  ///< a wash of red behind what is in doubt
  bool dark = false;

  static const Look& day();
  static const Look& lamplight();
  /// The one in force: lamplight when the system's palette is dark, unless chosen otherwise.
  static const Look& now();

  enum class Choice { system, day, lamplight };
  static void choose(Choice choice);

  /// The widgets' palette that goes with it.
  QPalette palette() const;
};

/// Pencil widths in device-independent pixels.
inline constexpr qreal kFineLine = 1.0;
inline constexpr qreal kFirmLine = 1.8;

/// The desk's own size of text, device-independent pixels: what people read at arm's length with
/// their glasses on. Small, usual, large and very large.
inline constexpr int kTextSizes[] = {13, 15, 17, 20};
inline constexpr int kUsualTextSize = 15;
int textSize();
void chooseTextSize(int pixels);

/// The brought font at the desk's text size times `scale`; figures are of one width in `figures`.
QFont deskFont(qreal scale = 1.0);
QFont figures(qreal scale = 1.0);

/// What a paper looks like under a wash that lets it through.
QColor blended(const QColor& paper, const QColor& wash);

/// A soft shadow round a piece of paper, which is then to be painted over the box.
void paintPaperShadow(QPainter& painter, const QRectF& box);
/// Fills a box with a colour that lets something through. The same as QPainter::fillRect, but never
/// by several threads, which wait for one another longer than a small box takes.
void fillBlended(QPainter& painter, const QRectF& box, const QColor& colour);
/// A small slip of paper with its shadow.
void paintSlip(QPainter& painter, const QRectF& box);

}  // namespace inchwright::app
