#include "app/window/print_preview.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QPrintPreviewWidget>
#include <QPrinter>
#include <QPushButton>

#include "app/session/desk.h"
#include "tests/support/big_plate.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

QPushButton* buttonSaying(const QWidget& in, const char* words) {
  for (QPushButton* one : in.findChildren<QPushButton*>()) {
    if (QString(one->text()).remove(QLatin1Char('&')) == QLatin1String(words)) return one;
  }
  return nullptr;
}

TEST(PrintPreview, ShowsEveryPageOfTheSheetOnItsOwnPaper) {
  deskApplication();
  Job job;
  job.parts.push_back(bigPlate(200));
  Desk desk;
  desk.take(job, {});
  const std::vector<Page> pages = desk.sheet()->pages();
  ASSERT_GT(pages.size(), 2u);
  QPrinter printer;
  takePaperOf(pages.front(), printer);
  const QSizeF paper = printer.pageLayout().fullRect(QPageLayout::Millimeter).size();
  EXPECT_NEAR(paper.width(), pages.front().width, 0.5);
  EXPECT_NEAR(paper.height(), pages.front().height, 0.5);

  PrintPreview preview(printer, pages);
  preview.show();
  EXPECT_EQ(preview.shown()->pageCount(), static_cast<int>(pages.size()));
  auto* before = buttonSaying(preview, "Page before");
  auto* next = buttonSaying(preview, "Next page");
  ASSERT_TRUE(before != nullptr && next != nullptr);
  EXPECT_FALSE(before->isEnabled());
  next->click();
  EXPECT_EQ(preview.shown()->currentPage(), 2);
  EXPECT_TRUE(before->isEnabled());
  const auto* count = preview.findChild<QLabel*>();
  EXPECT_EQ(count->text(), QStringLiteral("2 of %1").arg(pages.size()));
  before->click();
  EXPECT_EQ(preview.shown()->currentPage(), 1);
  // All of what can be pressed is in sight.
  for (const QPushButton* one : preview.findChildren<QPushButton*>()) {
    EXPECT_TRUE(preview.rect().contains(one->geometry())) << one->text().toStdString();
  }
}

// A named size tells the printer its tray; the sheet lies on it as it is.
TEST(PrintPreview, StandardPaperIsAskedForByName) {
  deskApplication();
  QPrinter printer;
  Page page;
  page.width = 279.4;
  page.height = 215.9;
  takePaperOf(page, printer);
  EXPECT_EQ(printer.pageLayout().pageSize().id(), QPageSize::Letter);
  EXPECT_EQ(printer.pageLayout().orientation(), QPageLayout::Landscape);
  page.width = 210;
  page.height = 297;
  takePaperOf(page, printer);
  EXPECT_EQ(printer.pageLayout().pageSize().id(), QPageSize::A4);
  EXPECT_EQ(printer.pageLayout().orientation(), QPageLayout::Portrait);
}

}  // namespace
}  // namespace inchwright::app
