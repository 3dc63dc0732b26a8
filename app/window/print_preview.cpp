#include "app/window/print_preview.h"

#include <QGraphicsView>
#include <QHBoxLayout>
#include <QLabel>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPrintDialog>
#include <QPrintPreviewWidget>
#include <QPrinter>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/base/look.h"
#include "app/render/render.h"

namespace inchwright::app {
namespace {

void paintOnPrinter(const std::vector<Page>& pages, QPrinter* printer) {
  QPainter painter;
  if (!painter.begin(printer)) return;
  const double scale = printer->resolution() / 25.4;
  for (std::size_t i = 0; i < pages.size(); ++i) {
    if (i > 0 && !printer->newPage()) return;
    painter.resetTransform();
    painter.scale(scale, scale);
    paintPage(painter, pages[i]);
  }
}

}  // namespace

void takePaperOf(const Page& page, QPrinter& printer) {
  const QSizeF paper(page.width, page.height);
  const bool lies = paper.width() > paper.height();
  printer.setFullPage(true);
  printer.setPageLayout({QPageSize(lies ? paper.transposed() : paper, QPageSize::Millimeter),
                         lies ? QPageLayout::Landscape : QPageLayout::Portrait,
                         {}});
}

PrintPreview::PrintPreview(QPrinter& printer, const std::vector<Page>& pages, QWidget* parent)
    : QDialog(parent),
      printer_(printer),
      shown_(new QPrintPreviewWidget(&printer, this)),
      count_(new QLabel(this)),
      before_(new QPushButton(tr("Page &before"), this)),
      next_(new QPushButton(tr("&Next page"), this)) {
  setWindowTitle(tr("The pages as they will print"));
  auto* print = new QPushButton(tr("&Print …"), this);
  print->setDefault(true);
  auto* leave = new QPushButton(tr("Put &away"), this);

  shown_->setAccessibleName(tr("The pages as they will print"));
  // Paper on the desk, as everywhere here.
  for (auto* view : shown_->findChildren<QGraphicsView*>()) {
    view->setBackgroundBrush(Look::now().desk);
    view->setFrameShape(QFrame::NoFrame);
  }
  connect(shown_, &QPrintPreviewWidget::paintRequested, this,
          [&pages](QPrinter* on) { paintOnPrinter(pages, on); });
  connect(shown_, &QPrintPreviewWidget::previewChanged, this,
          [this] { turnTo(shown_->currentPage()); });
  connect(before_, &QPushButton::clicked, this, [this] { turnTo(shown_->currentPage() - 1); });
  connect(next_, &QPushButton::clicked, this, [this] { turnTo(shown_->currentPage() + 1); });
  connect(print, &QPushButton::clicked, this, &PrintPreview::print);
  connect(leave, &QPushButton::clicked, this, &QDialog::reject);

  auto* row = new QHBoxLayout;
  for (QWidget* one : {static_cast<QWidget*>(before_), static_cast<QWidget*>(count_),
                       static_cast<QWidget*>(next_)}) {
    row->addWidget(one);
  }
  row->addStretch();
  row->addWidget(leave);
  row->addWidget(print);
  auto* column = new QVBoxLayout(this);
  column->addWidget(shown_);
  column->addLayout(row);
  resize(parent == nullptr ? QSize(900, 640) : parent->size() * 4 / 5);
  shown_->updatePreview();
  shown_->fitInView();
}

void PrintPreview::turnTo(int page) {
  if (page >= 1 && page <= shown_->pageCount() && page != shown_->currentPage()) {
    shown_->setCurrentPage(page);
  }
  const int now = shown_->currentPage();
  count_->setText(tr("%1 of %2").arg(now).arg(shown_->pageCount()));
  // Not greyed out under the hand: focus would jump away.
  before_->setEnabled(now > 1 || before_->hasFocus());
  next_->setEnabled(now < shown_->pageCount() || next_->hasFocus());
}

void PrintPreview::print() {
  QPrintDialog dialog(&printer_, this);
  dialog.setWindowTitle(tr("Print my sheet"));
  if (dialog.exec() != QDialog::Accepted) return;
  shown_->print();
  accept();
}

}  // namespace inchwright::app
