#include "app/window/paper_slip.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace inchwright::app {

PaperSlip::PaperSlip(QWidget* parent) : QDialog(parent) {
  setObjectName(QStringLiteral("paper"));
  setWindowTitle(tr("Paper for the whole job"));
  setAccessibleName(windowTitle());
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(22, 16, 22, 16);
  auto* words = new QLabel(tr("One PDF of all the parts. The sheets for the machine are printed "
                              "and written part by part, so that each edition is noted."),
                           this);
  words->setWordWrap(true);
  column->addWidget(words);
  const std::pair<PageKind, QString> kinds[] = {
      {PageKind::cover, tr("&Cover: every part, its setups and what is in doubt")},
      {PageKind::stock, tr("&Stock to cut, with what is left to hold it by")},
      {PageKind::tools, tr("&Tools for the job, and which are missing")},
      {PageKind::layout, tr("&Layout: each face at full size, to lay the part on")},
      {PageKind::firstOff, tr("&First piece: every reading with a line to write on")},
      {PageKind::difference, tr("&Difference: parts that may be mistaken, drawn over each other")}};
  auto* write = new QPushButton(tr("&Write it …"), this);
  for (const auto& [kind, text] : kinds) {
    auto* box = new QCheckBox(text, this);
    box->setChecked(kind == PageKind::cover);
    connect(box, &QCheckBox::toggled, this,
            [this, write] { write->setEnabled(!chosen().empty()); });
    column->addWidget(box);
    kinds_.emplace_back(kind, box);
  }
  write->setProperty("firm", true);
  write->setDefault(true);
  connect(write, &QPushButton::clicked, this, &QDialog::accept);
  auto* row = new QHBoxLayout;
  row->addStretch(1);
  row->addWidget(write);
  column->addLayout(row);
  resize(fontMetrics().averageCharWidth() * 70, sizeHint().height());
}

std::vector<PageKind> PaperSlip::chosen() const {
  std::vector<PageKind> all;
  for (const auto& [kind, box] : kinds_) {
    if (box->isChecked()) all.push_back(kind);
  }
  return all;
}

}  // namespace inchwright::app

#include "moc_paper_slip.cpp"
