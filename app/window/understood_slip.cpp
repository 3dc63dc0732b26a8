#include "app/window/understood_slip.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QStringList>
#include <QVBoxLayout>
#include <algorithm>

#include "app/base/look.h"
#include "app/session/activity.h"
#include "app/session/desk.h"
#include "core/part/edit.h"

namespace inchwright::app {
namespace {

QString namesOf(const std::vector<Id>& ids) {
  QStringList names;
  for (const Id& id : ids) names << QString::fromStdString(id);
  return names.join(QStringLiteral(", "));
}

std::vector<Id> placesOf(const Understanding& one) {
  std::vector<Id> places = one.of;
  places.insert(places.end(), one.between.begin(), one.between.end());
  if (!one.about.empty()) places.push_back(one.about);
  return places;
}

}  // namespace

UnderstoodSlip::UnderstoodSlip(Desk& desk, QWidget* parent)
    : QDialog(parent),
      desk_(desk),
      list_(new QListWidget(this)),
      remove_(new QPushButton(tr("&Take it away"), this)),
      said_(new QLabel(this)) {
  setWindowTitle(tr("What is understood"));
  setAccessibleName(windowTitle());
  list_->setAccessibleName(windowTitle());
  remove_->setAccessibleName(tr("Take it away"));
  said_->setText(
      tr("What the print shows without a figure, or is taken so. What it does not say "
         "stands on the sheet as a query."));
  said_->setWordWrap(true);
  auto* done = new QPushButton(tr("&Done"), this);
  done->setProperty("firm", true);
  auto* row = new QHBoxLayout;
  row->addWidget(remove_);
  row->addStretch(1);
  row->addWidget(done);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(22, 16, 22, 16);
  column->addWidget(said_);
  column->addWidget(list_, 1);
  column->addLayout(row);
  connect(list_, &QListWidget::currentRowChanged, this, &UnderstoodSlip::light);
  connect(remove_, &QPushButton::clicked, this, &UnderstoodSlip::remove);
  connect(done, &QPushButton::clicked, this, &QDialog::accept);
  fill();
  resize(fontMetrics().averageCharWidth() * 60, fontMetrics().lineSpacing() * 16);
}

void UnderstoodSlip::fill() {
  const int row = std::max(0, list_->currentRow());
  list_->clear();
  for (const Understanding& one : desk_.part().understood) {
    QString words = wordFor(one.kind) + QStringLiteral(": ") + namesOf(one.of);
    if (!one.between.empty()) words += tr(" between %1").arg(namesOf(one.between));
    if (!one.about.empty()) words += tr(" about %1").arg(QString::fromStdString(one.about));
    if (one.axis) words += tr(", along %1").arg(wordFor(*one.axis));
    words += one.stated ? tr(" (the print says so)") : tr(" (taken so)");
    list_->addItem(words);
  }
  list_->setCurrentRow(std::min(row, list_->count() - 1));
  remove_->setEnabled(list_->count() > 0);
}

/// The chosen one's places light up on the print.
void UnderstoodSlip::light() {
  const auto row = static_cast<std::size_t>(list_->currentRow());
  if (row < desk_.part().understood.size()) {
    desk_.select({placesOf(desk_.part().understood[row]), {}});
  }
}

void UnderstoodSlip::remove() {
  const int row = list_->currentRow();
  if (row < 0) return;
  const QString words = list_->currentItem()->text();
  desk_.endMerge();
  if (desk_.applyPart(removeUnderstanding(desk_.part(), static_cast<std::size_t>(row)),
                      tr("Take away: %1").arg(words))) {
    fill();
  }
}

}  // namespace inchwright::app

#include "moc_understood_slip.cpp"
