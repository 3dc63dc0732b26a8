#pragma once

#include <QDialog>
#include <utility>
#include <vector>

#include "app/words/sheet_pages.h"

class QCheckBox;

namespace inchwright::app {

/// Which paper for the whole job is wanted: its cover, the stock to cut, the tools, each face at
/// full size, the form for the first piece, the parts that may be mistaken for one another.
class PaperSlip : public QDialog {
  Q_OBJECT

 public:
  explicit PaperSlip(QWidget* parent = nullptr);

  /// In the order in which they are printed.
  std::vector<PageKind> chosen() const;

 private:
  std::vector<std::pair<PageKind, QCheckBox*>> kinds_;
};

}  // namespace inchwright::app
