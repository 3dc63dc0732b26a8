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
#include "app/base/spoken_english.h"
#include "core/document/document.h"
#include "core/part/parts_of_job.h"

namespace inchwright::app {
namespace {

std::string textOf(const std::optional<Lettered>& figure) {
  return figure ? figure->text : std::string();
}

std::string textOf(const std::optional<LetteredAngle>& angle) {
  return angle ? angle->text : std::string();
}

/// Takes what a field says, where it says something else than before; why it can't be read, else.
template <class Figure, class Read>
std::optional<Error> take(const std::string& text, std::optional<Figure>& figure, Read read) {
  if (text == textOf(figure)) return std::nullopt;
  figure.reset();
  if (text.empty()) return std::nullopt;
  auto typed = read(text);
  if (!typed.ok()) return typed.error();
  figure = std::move(typed).value();
  return std::nullopt;
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
      angles_(field(textOf(desk.part().general.angles))),
      hand_(new QComboBox(this)),
      said_(new QLabel(this)),
      notes_(new QPlainTextEdit(QString::fromStdString(desk.job().notes), this)) {
  setWindowTitle(tr("Details of job and part"));
  setAccessibleName(windowTitle());
  unit_->addItems({tr("inches"), tr("millimetres")});
  unit_->setCurrentIndex(desk.job().unit == Unit::inch ? 0 : 1);
  hand_->addItems({tr("not said"), tr("left"), tr("right")});
  const std::string& hand = desk.part().hand;
  if (hand == "left" || hand == "right") {
    hand_->setCurrentIndex(hand == "left" ? 1 : 2);
  } else if (!hand.empty()) {
    hand_->addItem(QString::fromStdString(hand));
    hand_->setCurrentIndex(3);
  }
  said_->setObjectName(QStringLiteral("said"));
  said_->setWordWrap(true);
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
  add(tr("Ha&nd"), hand_);
  auto* general = new QLabel(tr("What the title block allows, plus and minus"));
  general->setFont(deskFont(1.1));
  form->addRow(general);
  add(tr("On &fractions"), fractions_);
  add(tr("On t&wo places"), twoPlaces_);
  add(tr("On t&hree places"), threePlaces_);
  add(tr("On an&gles, degrees"), angles_);
  add(tr("N&otes"), notes_);
  auto* done = new QPushButton(tr("&Done"), this);
  done->setProperty("firm", true);
  done->setDefault(true);
  connect(done, &QPushButton::clicked, this, &DetailsSlip::accept);
  auto* row = new QHBoxLayout;
  row->addWidget(said_, 1);
  row->addWidget(done);
  column->addLayout(row);
  resize(fontMetrics().averageCharWidth() * 80, sizeHint().height());
}

/// Nothing is taken, and all that was typed stays to be mended.
void DetailsSlip::refuse(QWidget* field, const Error& why) {
  said_->setText(tr("%1 can't be taken: %2").arg(field->accessibleName(), coreWords(why.text)));
  field->setFocus();
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
  if (!renamed.ok()) return refuse(part_, renamed.error());
  job = *renamed;
  Part& part = job.parts[static_cast<std::size_t>(desk_.partIndex())];
  part.quantity = quantity_->value();
  part.material = textIn(material_);
  part.hand = hand_->currentIndex() == 0 ? std::string() : hand_->currentText().toStdString();
  if (hand_->currentIndex() == 1) part.hand = "left";
  if (hand_->currentIndex() == 2) part.hand = "right";
  General& general = part.general;
  const auto length = [&job](const std::string& text) { return readLength(text, {job.unit}); };
  for (const auto& [field, figure] :
       {std::pair{fractions_, &general.fractions}, std::pair{twoPlaces_, &general.twoPlaces},
        std::pair{threePlaces_, &general.threePlaces}}) {
    if (const auto fault = take(textIn(field), *figure, length)) return refuse(field, *fault);
  }
  if (const auto fault = take(textIn(angles_), general.angles, readAngle)) {
    return refuse(angles_, *fault);
  }
  if (job.unit != desk_.job().unit) {
    // Every bare figure of the print is one of the other unit now, and is read anew.
    auto again = readDocument(writeDocument(job));
    if (!again.ok()) {
      return refuse(unit_, {again.error().code, again.error().place + ": " + again.error().text});
    }
    job = std::move(again).value();
  }
  desk_.endMerge();
  desk_.apply(std::move(job), tr("Change the details"));
  QDialog::accept();
}

}  // namespace inchwright::app

#include "moc_details_slip.cpp"
