#include "app/window/details_slip.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QVBoxLayout>

#include "app/base/look.h"
#include "core/document/document.h"
#include "core/part/parts_of_job.h"

namespace inchwright::app {
namespace {

std::string textOf(const std::optional<Lettered>& figure) {
  return figure ? figure->text : std::string();
}

/// Keeps what stood there where the field was not changed or can't be read.
void take(const QLineEdit& field, std::optional<Lettered>& figure, Unit unit) {
  const std::string text = field.text().trimmed().toStdString();
  if (text == textOf(figure)) return;
  const auto read = readLength(text, {unit});
  if (read.ok()) {
    figure = *read;
  } else if (text.empty()) {
    figure.reset();
  }
}

}  // namespace

DetailsSlip::DetailsSlip(Desk& desk, QWidget* parent)
    : QDialog(parent),
      desk_(desk),
      title_(field(desk.job().title)),
      print_(field(desk.job().print)),
      unit_(new QComboBox(this)),
      part_(field(desk.part().name)),
      quantity_(new QSpinBox(this)),
      material_(field(desk.part().material)),
      fractions_(field(textOf(desk.part().general.fractions))),
      twoPlaces_(field(textOf(desk.part().general.twoPlaces))),
      threePlaces_(field(textOf(desk.part().general.threePlaces))),
      notes_(new QPlainTextEdit(QString::fromStdString(desk.job().notes), this)) {
  setWindowTitle(tr("Details of job and part"));
  setAccessibleName(windowTitle());
  unit_->addItems({tr("inches"), tr("millimetres")});
  unit_->setCurrentIndex(desk.job().unit == Unit::inch ? 0 : 1);
  quantity_->setRange(1, 100000);
  quantity_->setValue(desk.part().quantity);
  notes_->setTabChangesFocus(true);
  notes_->setMaximumHeight(fontMetrics().lineSpacing() * 4);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(26, 20, 26, 18);
  auto* form = new QFormLayout;
  column->addLayout(form, 1);
  const auto add = [form](const QString& words, QWidget* widget) {
    widget->setAccessibleName(QString(words).remove(QLatin1Char('&')));
    form->addRow(words, widget);
  };
  add(tr("&Job"), title_);
  add(tr("Their &print, sheet and edition"), print_);
  add(tr("Bare figures are &in"), unit_);
  add(tr("P&art"), part_);
  add(tr("&Quantity"), quantity_);
  add(tr("&Material"), material_);
  auto* general = new QLabel(tr("What the title block allows, plus and minus"));
  general->setFont(deskFont(1.1));
  form->addRow(general);
  add(tr("On &fractions"), fractions_);
  add(tr("On t&wo places"), twoPlaces_);
  add(tr("On t&hree places"), threePlaces_);
  add(tr("&Notes"), notes_);
  auto* done = new QPushButton(tr("&Done"), this);
  done->setProperty("firm", true);
  done->setDefault(true);
  connect(done, &QPushButton::clicked, this, &DetailsSlip::accept);
  auto* row = new QHBoxLayout;
  row->addStretch(1);
  row->addWidget(done);
  column->addLayout(row);
  resize(fontMetrics().averageCharWidth() * 80, sizeHint().height());
}

QLineEdit* DetailsSlip::field(const std::string& text) {
  return new QLineEdit(QString::fromStdString(text), this);
}

void DetailsSlip::accept() {
  Job job = desk_.job();
  const auto textIn = [](const QLineEdit* line) { return line->text().trimmed().toStdString(); };
  job.title = textIn(title_);
  job.print = textIn(print_);
  job.unit = unit_->currentIndex() == 0 ? Unit::inch : Unit::millimetre;
  job.notes = notes_->toPlainText().toStdString();
  const auto renamed = renamePart(job, desk_.part().name, textIn(part_));
  if (renamed.ok()) job = *renamed;
  Part& part = job.parts[desk_.partIndex()];
  part.quantity = quantity_->value();
  part.material = textIn(material_);
  take(*fractions_, part.general.fractions, job.unit);
  take(*twoPlaces_, part.general.twoPlaces, job.unit);
  take(*threePlaces_, part.general.threePlaces, job.unit);
  if (job.unit != desk_.job().unit) {
    // Every bare figure of the print is one of the other unit now, and is read anew.
    auto again = readDocument(writeDocument(job));
    if (!again.ok()) {
      emit desk_.refused(QString::fromStdString(again.error().place + ": " + again.error().text));
      return;
    }
    job = std::move(again).value();
  }
  desk_.endMerge();
  desk_.apply(std::move(job), tr("Change the details"));
  QDialog::accept();
}

}  // namespace inchwright::app

#include "moc_details_slip.cpp"
