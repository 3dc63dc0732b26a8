#include "app/base/spoken_english.h"

#include <gtest/gtest.h>

#include <QTextLayout>

#include "app/base/look.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

QStringList linesOf(const QString& text, qreal width) {
  QTextLayout layout(text, deskFont());
  QStringList lines;
  layout.beginLayout();
  for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
    line.setLineWidth(width);
    lines << text.mid(line.textStart(), line.textLength());
  }
  layout.endLayout();
  return lines;
}

// However narrow the slip, as long as a word fits.
TEST(WholeFigures, NoLineEndsWithThePointOfAFigure) {
  deskApplication();
  const QString text = QStringLiteral("shaft P of Arbor; least .683; greatest .692 (\u00b1.002)");
  bool wasSplit = false;
  for (int width = 90; width < 500; ++width) {
    for (const QString& line : linesOf(text, width)) {
      wasSplit = wasSplit || line.trimmed().endsWith(u'.');
    }
    for (const QString& line : linesOf(withWholeFigures(text), width)) {
      EXPECT_FALSE(line.trimmed().remove(QChar(0x2060)).endsWith(u'.')) << line.toStdString();
    }
  }
  EXPECT_TRUE(wasSplit) << "there was nothing to keep together";
}

TEST(WholeFigures, NothingElseIsTouched) {
  for (const char* text : {"0.683", "r1. 5 from L", "ends.", "1 1/2", "", "."}) {
    EXPECT_EQ(withWholeFigures(QString::fromLatin1(text)), QString::fromLatin1(text));
  }
}

}  // namespace
}  // namespace inchwright::app
