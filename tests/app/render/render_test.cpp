#include "app/render/render.h"

#include <gtest/gtest.h>

#include <QBuffer>
#include <QFile>
#include <QImage>
#include <QProcess>
#include <QRawFont>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QXmlStreamReader>
#include <chrono>

#include "app/base/headless.h"
#include "app/render/faces.h"
#include "core/sheet/text_measure.h"
#include "tests/core/sheet/made_sheet.h"
#include "tests/support/xml.h"

namespace inchwright::app {
namespace {

class Render : public testing::Test {
 protected:
  void SetUp() override { headlessApplication(); }
};

QString pdfText(const QByteArray& pdf) {
  const QTemporaryDir folder;
  const QString name = folder.filePath(QStringLiteral("sheet.pdf"));
  QFile file(name);
  if (!file.open(QIODevice::WriteOnly)) return {};
  file.write(pdf);
  file.close();
  QProcess process;
  process.start(QStringLiteral("pdftotext"),
                {QStringLiteral("-layout"), name, QStringLiteral("-")});
  process.waitForFinished(60'000);
  return QString::fromUtf8(process.readAllStandardOutput());
}

Page onePage(const TextItem& text) {
  return {100, 50, {text}};
}

/// The columns that hold ink, first and last, mm.
std::pair<double, double> inkAcross(const Page& page, double pixels) {
  const QImage image = QImage::fromData(*renderPng(page, pixels), "PNG");
  int first = image.width();
  int last = -1;
  for (int y = 0; y < image.height(); ++y) {
    for (int x = 0; x < image.width(); ++x) {
      if (qGray(image.pixel(x, y)) > 128) continue;
      first = std::min(first, x);
      last = std::max(last, x);
    }
  }
  return {first / pixels, (last + 1) / pixels};
}

TEST_F(Render, FacesAreAsWideAsTheLayoutReckons) {
  ASSERT_TRUE(loadFaces().ok());
  const std::string words =
      "+1.1875 -0.375 SPOT \u00B7 DRILL 15/64 \u00D81/4 \u201Ctouch\u201D fi \u00E4 \u2212";
  for (const Typeface face :
       {Typeface::regular, Typeface::bold, Typeface::mono, Typeface::monoBold}) {
    const QRawFont font = QRawFont::fromFont(faceFont(face));
    EXPECT_EQ(font.familyName(), faceFamily(face));
    double width = 0;
    for (const QPointF& advance :
         font.advancesForGlyphIndexes(font.glyphIndexesForString(QString::fromStdString(words)))) {
      width += advance.x();
    }
    // 750 pixels is the height of a figure at 1000 pixels an em.
    EXPECT_NEAR(width, textWidth(words, 750, face), 0.01);
  }
}

TEST_F(Render, TextIsPaintedAsWideAndHighAsItIsReckoned) {
  for (const Typeface face : {Typeface::regular, Typeface::bold}) {
    const std::string text = "1" + std::string(7, '8') + "1";
    const Page page = onePage({{5, 40}, text, 10, TextAlign::left, face});
    const auto [first, last] = inkAcross(page, 20);
    // A figure 1 stands up to 0.15 of its height inside its advance on each side.
    EXPECT_NEAR(first, 5, 1.6);
    EXPECT_NEAR(last, 5 + textWidth(text, 10, face), 2.2);
    EXPECT_GT(last - first, textWidth(text, 10, face) - 3.8);
  }
}

TEST_F(Render, PdfTextCanBeFound) {
  if (QStandardPaths::findExecutable(QStringLiteral("pdftotext")).isEmpty()) {
    GTEST_SKIP() << "the program pdftotext is not installed";
  }
  const MadeSheet made = frontPlate();
  const Result<QByteArray> pdf = renderPdf(made.pages(), QStringLiteral("Front plate"));
  ASSERT_TRUE(pdf.ok());
  const QString text = pdfText(*pdf);
  for (const char* words :
       {"Front plate", "INCHES", "-1.3125", "+0.7500", "SPOT \u00B7 DRILL C", "DISPUTED",
        "D and E are taken to be in line", "FIXED JAW", "1 of 2", "-0.1000"}) {
    EXPECT_TRUE(text.contains(QString::fromUtf8(words))) << words;
  }
}

TEST_F(Render, PdfHoldsEveryCharacterOfTheFaces) {
  if (QStandardPaths::findExecutable(QStringLiteral("pdftotext")).isEmpty()) {
    GTEST_SKIP() << "the program pdftotext is not installed";
  }
  const std::string words = "\u00D8 \u00B1 \u215C \u00B0 \u2013 \u201Cq\u201D \u2026 \u00E4";
  const Result<QByteArray> pdf = renderPdf({onePage({{5, 20}, words, 3})}, {});
  ASSERT_TRUE(pdf.ok());
  EXPECT_TRUE(pdfText(*pdf).contains(QString::fromStdString(words))) << pdfText(*pdf).toStdString();
}

TEST_F(Render, TheSamePagesGiveTheSameBytes) {
  const std::vector<Page> pages = frontPlate().pages();
  const QByteArray first = *renderPdf(pages, QStringLiteral("Front plate"));
  const QByteArray svg = *renderSvg(pages[0]);
  const QByteArray png = *renderPng(pages[0], 3);
  EXPECT_EQ(*renderPdf(pages, QStringLiteral("Front plate")), first);
  EXPECT_EQ(*renderSvg(pages[0]), svg);
  test::expectSvg(svg);
  EXPECT_EQ(*renderPng(pages[0], 3), png);
  EXPECT_TRUE(first.contains("D:20000101000000"));
}

// Every moment that Qt writes, in whatever zone, is the fixed one, and the zone is left as it was.
TEST_F(Render, PdfKnowsNoTimeAndNoZone) {
  const bool had = qEnvironmentVariableIsSet("TZ");
  const QByteArray was = qgetenv("TZ");
  const Page page = onePage({{5, 20}, "1.1875", 3});
  qunsetenv("TZ");
  const QByteArray here = *renderPdf({page}, QStringLiteral("Plate"));
  EXPECT_FALSE(qEnvironmentVariableIsSet("TZ"));
  for (const char* zone : {"Asia/Kathmandu", "America/St_Johns"}) {
    qputenv("TZ", zone);
    EXPECT_EQ(*renderPdf({page}, QStringLiteral("Plate")), here) << zone;
    EXPECT_EQ(qgetenv("TZ"), zone);
  }
  had ? qputenv("TZ", was) : qunsetenv("TZ");
  EXPECT_EQ(here.count("Date (D:20000101000000Z)"), here.count("Date"));
  EXPECT_GE(here.count("Date"), 1);
}

TEST_F(Render, PagesKeepTheirSizeAndNumber) {
  const std::vector<Page> pages = settledPlate(Paper::letter).pages();
  const QByteArray pdf = *renderPdf(pages, {});
  EXPECT_EQ(pdf.count("/Type /Page\n"), static_cast<qsizetype>(pages.size()));
  // 279.4 by 215.9 mm are 792 by 612 points.
  EXPECT_TRUE(pdf.contains("/MediaBox [0 0 792"))
      << pdf.mid(pdf.indexOf("/MediaBox"), 60).constData();
}

// Found by hand: a title with an ampersand made a file that was no XML, one with a tag got it in.
TEST_F(Render, SvgIsXmlWhateverTheJobIsCalled) {
  for (const char* title : {"Nuts & bolts", "<script>alert(1)</script>", "\"]]>\"",
                            "a\x01"
                            "b\x1F",
                            "\xEF\xBF\xBE", "&amp;", "<!-- -->", "]]>", "\xC3\xA4 \xE2\x89\xA4"}) {
    MadeSheet made = frontPlate();
    made.job.title = made.part.name = made.part.material = title;
    made.part.features[4].note = title;
    for (const Page& page : made.pages()) {
      test::expectSvg(*renderSvg(page, QString::fromUtf8(title)));
      if (HasFailure()) FAIL() << title;
    }
  }
}

TEST_F(Render, SvgIsOneToOneAndCarriesItsFaces) {
  const std::vector<Page> pages = settledPlate(Paper::a4).pages();
  const QByteArray svg = *renderSvg(pages[0]);
  test::expectSvg(svg);
  QXmlStreamReader reader(svg);
  QString size;
  bool figure = false;
  while (!reader.atEnd()) {
    reader.readNext();
    if (!reader.isStartElement()) continue;
    if (reader.name() == QLatin1String("svg")) {
      size = reader.attributes().value(QLatin1String("width")).toString();
    }
    if (reader.name() == QLatin1String("text")) {
      figure = figure || reader.readElementText() == QLatin1String("-1.3125");
    }
  }
  EXPECT_FALSE(reader.hasError()) << reader.errorString().toStdString();
  EXPECT_EQ(size, QStringLiteral("297mm"));
  EXPECT_TRUE(svg.contains("viewBox=\"0 0 2970 2100\""));
  EXPECT_TRUE(svg.contains("<desc>Inchwright "));
  EXPECT_EQ(svg.count("font-weight:700;}"), 1);
  EXPECT_EQ(svg.count("font-weight:400;}"), 1);
  EXPECT_TRUE(renderSvg(pages[0], QStringLiteral("A < B"))->contains("<title>A &lt; B</title>"));
  EXPECT_TRUE(figure);
  EXPECT_EQ(svg.count("@font-face"), 2);
}

TEST_F(Render, PngHasTheSizeAskedFor) {
  const QImage image = QImage::fromData(*renderPng({100, 50, {}}, 4), "PNG");
  EXPECT_EQ(image.size(), QSize(400, 200));
  EXPECT_EQ(image.pixel(0, 0), qRgb(255, 255, 255));
}

TEST_F(Render, RefusesWhatCantBe) {
  EXPECT_EQ(renderPdf({}, {}).error().code, ErrorCode::badRequest);
  for (const double pixels : {0.0, -1.0, 1e9, std::nan("")}) {
    EXPECT_EQ(renderPng({100, 50, {}}, pixels).error().code, ErrorCode::badRequest) << pixels;
  }
}

TEST_F(Render, FortyHolesAreQuick) {
  RandomSheets random(40);
  const MadeSheet made = random.next(40);
  ASSERT_TRUE(renderPdf(made.pages(), {}).ok());  // the faces are loaded then
  const auto before = std::chrono::steady_clock::now();
  const Result<QByteArray> pdf = renderPdf(made.pages(), {});
  const std::chrono::duration<double> seconds = std::chrono::steady_clock::now() - before;
  ASSERT_TRUE(pdf.ok());
  RecordProperty("milliseconds", std::to_string(seconds.count() * 1000));
  // The aim is 0.15 s; far above it something is wrong, whatever machine this is.
  EXPECT_LT(seconds.count(), 3);
}

}  // namespace
}  // namespace inchwright::app
