// The figures of a sheet as an eye sees them that resolves one minute of arc (Snellen: 6/6) at the
// reading distance, read back by a program for reading text.
#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <cmath>
#include <numbers>
#include <optional>

#include "app/base/headless.h"
#include "app/render/render.h"
#include "core/sheet/bounds.h"
#include "tests/core/sheet/made_sheet.h"

namespace inchwright::app {
namespace {

/// One minute of arc at the reading distance is one pixel.
double pixelsPerMm(double readingDistance) {
  return 1 / (readingDistance * std::tan(std::numbers::pi / 180 / 60));
}

struct SeenFigure {
  PaperBox box;
  std::string text;
};

/// The coordinates of the rows, as they follow each other.
std::vector<SeenFigure> figuresOn(const Page& page, double height) {
  std::vector<SeenFigure> figures;
  for (const DrawItem& item : page.items) {
    const auto* text = std::get_if<TextItem>(&item);
    if (!text || std::abs(text->height - height) > 1e-6 || text->text.size() < 2) continue;
    if (text->text[0] == '+' || text->text[0] == '-')
      figures.push_back({boundsOf(*text), text->text});
  }
  return figures;
}

/// The figures cut out of the page as seen, pixel for pixel, below each other.
QImage stacked(const QImage& page, const std::vector<SeenFigure>& figures, double pixels) {
  constexpr double kAroundMm = 1.2;
  constexpr int kBetween = 14;
  std::vector<QImage> cuts;
  int width = 0;
  int height = kBetween;
  for (const SeenFigure& figure : figures) {
    PaperBox box = figure.box.grownBy(kAroundMm);
    box.left -= 1;  // the minus is drawn out to the left of its hyphen
    cuts.push_back(page.copy(
        QRectF(box.left * pixels, box.top * pixels, box.width() * pixels, box.height() * pixels)
            .toRect()));
    width = std::max(width, cuts.back().width());
    height += cuts.back().height() + kBetween;
  }
  QImage all(width + 2 * kBetween, height, QImage::Format_RGB32);
  all.fill(Qt::white);
  QPainter painter(&all);
  int y = kBetween;
  for (const QImage& cut : cuts) {
    painter.drawImage(kBetween, y, cut);
    y += cut.height() + kBetween;
  }
  return all;
}

QStringList readBack(const QImage& image, const QString& program) {
  const QTemporaryDir folder;
  const QString file = folder.filePath(QStringLiteral("figures.png"));
  image.save(file);
  QProcess process;
  process.start(program, {file, QStringLiteral("-"), QStringLiteral("--psm"), QStringLiteral("6"),
                          QStringLiteral("--dpi"), QStringLiteral("200"), QStringLiteral("-c"),
                          QStringLiteral("tessedit_char_whitelist=+-.0123456789")});
  process.waitForFinished(120'000);
  return QString::fromUtf8(process.readAllStandardOutput())
      .remove(QLatin1Char(' '))
      .remove(QLatin1Char('\f'))
      .split(QLatin1Char('\n'), Qt::SkipEmptyParts);
}

class Ocr : public testing::Test {
 protected:
  void SetUp() override {
    headlessApplication();
    program_ = QStandardPaths::findExecutable(QStringLiteral("tesseract"));
    if (program_.isEmpty()) {
      GTEST_SKIP() << "the program tesseract, which reads the pages back, is not installed";
    }
  }

  void expectReadBack(const MadeSheet& made) {
    const double pixels = pixelsPerMm(made.options.readingDistance);
    std::size_t seenFigures = 0;
    for (const Page& page : made.pages()) {
      const auto figures = figuresOn(page, 8 * made.options.readingDistance / 1000);
      if (figures.empty()) continue;
      seenFigures += figures.size();
      const Result<QByteArray> png = renderPng(page, pixels);
      ASSERT_TRUE(png.ok());
      const QImage seen = QImage::fromData(*png, "PNG");
      QStringList wanted;
      for (const SeenFigure& figure : figures) wanted.append(QString::fromStdString(figure.text));
      const QImage image = stacked(seen, figures, pixels);
      if (qEnvironmentVariableIsSet("INCHWRIGHT_KEEP_OCR")) {
        image.save(qEnvironmentVariable("INCHWRIGHT_KEEP_OCR"));
      }
      EXPECT_EQ(readBack(image, program_).join(QLatin1Char(' ')).toStdString(),
                wanted.join(QLatin1Char(' ')).toStdString());
    }
    EXPECT_EQ(seenFigures, 2 * made.table.rows.size());
  }

  QString program_;
};

/// Rows with every figure in every place.
MadeSheet manyFigures(Unit unit) {
  MadeSheet made = unit == Unit::inch ? frontPlate() : inMillimetres(frontPlate());
  const Step step = made.table.step;
  TableRow row = made.table.rows.front();
  made.table.rows.clear();
  for (int i = 0; i < 40; ++i) {
    row.id = "A" + std::to_string(i + 1);
    row.x = inches((i % 2 == 0 ? 1 : -1) * (0.1235 * i + i % 10 + 0.0005 * i), step);
    row.y = inches((i % 3 == 0 ? -1 : 1) * (9.8765 - 0.2465 * i), step);
    made.table.rows.push_back(row);
  }
  return made;
}

TEST_F(Ocr, PlateAtOneMetre) {
  expectReadBack(frontPlate());
}

TEST_F(Ocr, PlateAtTwoMetres) {
  MadeSheet made = frontPlate();
  made.options.readingDistance = 2000;
  expectReadBack(made);
}

TEST_F(Ocr, FortyRowsInInches) {
  expectReadBack(manyFigures(Unit::inch));
}

TEST_F(Ocr, FortyRowsInMillimetres) {
  expectReadBack(manyFigures(Unit::millimetre));
}

}  // namespace
}  // namespace inchwright::app
