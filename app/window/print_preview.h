#pragma once

#include <QDialog>
#include <vector>

#include "core/sheet/draw_list.h"

class QLabel;
class QPrinter;
class QPrintPreviewWidget;
class QPushButton;

namespace inchwright::app {

/// Gives the printer the paper of a page, by its name where it is of a standard size, so that it
/// knows the tray.
void takePaperOf(const Page& page, QPrinter& printer);

/// The pages as the printer will get them, with nothing to set but which printer: paper, its
/// orientation and the size of the figures are the sheet's own.
class PrintPreview : public QDialog {
  Q_OBJECT

 public:
  /// The printer and the pages outlive it.
  PrintPreview(QPrinter& printer, const std::vector<Page>& pages, QWidget* parent = nullptr);

  QPrintPreviewWidget* shown() const { return shown_; }

 private:
  void turnTo(int page);
  void print();

  QPrinter& printer_;
  QPrintPreviewWidget* shown_;
  QLabel* count_;
  QPushButton* before_;
  QPushButton* next_;
};

}  // namespace inchwright::app
