#include "app/sheet/field_slip.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/base/spoken_english.h"
#include "core/part/edit.h"

namespace inchwright::app {

FieldSlip::FieldSlip(Desk& desk, QWidget* parent)
    : QDialog(parent), desk_(desk), said_(new QLabel(this)) {
  said_->setObjectName(QStringLiteral("said"));
  said_->setWordWrap(true);
}

void FieldSlip::layOut(QLayout* columns) {
  auto* close = new QPushButton(tr("&Done"));
  close->setProperty("firm", true);
  close->setAutoDefault(false);
  connect(close, &QPushButton::clicked, this, &QDialog::accept);
  auto* below = new QHBoxLayout;
  below->addWidget(said_, 1);
  below->addWidget(close);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(26, 20, 26, 18);
  column->addLayout(columns, 1);
  column->addLayout(below);
  connect(&desk_, &Desk::edited, this, &FieldSlip::fill);
  connect(&desk_, &Desk::viewChanged, this, &FieldSlip::fill);
}

void FieldSlip::fill() {
  showNow();
  // Of a text that is longer than its field the beginning is to be seen.
  for (QLineEdit* field : findChildren<QLineEdit*>()) {
    if (!field->hasFocus()) field->setCursorPosition(0);
  }
}

QLineEdit* FieldSlip::line(const QString& name, const std::function<void()>& taken) {
  auto* field = new QLineEdit;
  field->setAccessibleName(name);
  connect(field, &QLineEdit::editingFinished, this, [this, taken] {
    if (!filling_) taken();
  });
  return field;
}

QComboBox* FieldSlip::choice(const QString& name, const QStringList& words,
                             const std::function<void()>& taken) {
  auto* box = new QComboBox;
  box->setAccessibleName(name);
  box->addItems(words);
  connect(box, &QComboBox::activated, this, [this, taken] {
    if (!filling_) taken();
  });
  return box;
}

std::optional<Lettered> FieldSlip::figureOf(QLineEdit* field, const std::optional<Lettered>& before,
                                            Unit unit) {
  const std::string text = field->text().trimmed().toStdString();
  if (text.empty()) return std::nullopt;
  if (before && before->text == text) return before;
  const auto figure = readLength(text, {unit});
  if (figure.ok()) return *figure;
  refuse(field, coreWords(figure.error().text));
  return before;
}

void FieldSlip::refuse(QLineEdit* field, const QString& why) {
  said_->setText(tr("%1: %2").arg(field->accessibleName(), why));
}

void FieldSlip::apply(const Setup& setup) {
  if (setup == desk_.setup()) return;
  const Part& part = desk_.part();
  desk_.endMerge();
  const auto next =
      part.setups.empty() ? addSetup(part, setup) : replaceSetup(part, desk_.setup().name, setup);
  if (!desk_.applyPart(next, tr("Change the setup"))) {
    fill();
    said_->setText(coreWords(next.error().text));
  }
}

}  // namespace inchwright::app

#include "moc_field_slip.cpp"
