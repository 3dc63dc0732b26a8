#include "app/window/start_slip.h"

#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/base/look.h"
#include "app/base/spoken_english.h"
#include "app/window/desk_files.h"
#include "core/lines/pasted.h"

namespace inchwright::app {

StartSlip::StartSlip(QWidget* parent)
    : QDialog(parent), readings_(new QPlainTextEdit(this)), said_(new QLabel(this)) {
  setWindowTitle(tr("Begin"));
  setAccessibleName(windowTitle());
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(30, 24, 30, 22);
  column->setSpacing(8);
  auto* heading = new QLabel(tr("What lies on the desk?"));
  heading->setFont(deskFont(1.4));
  column->addWidget(heading);
  const std::pair<QString, Choice> words[] = {
      {tr("A &picture of their print: a photo, a scan or a PDF"), Choice::picture},
      {tr("&Blank paper: I put the places down roughly and read them in"), Choice::blank},
      {tr("A job I &saved"), Choice::open},
      {tr("The sample: a &front plate, with its print"), Choice::sample}};
  for (const auto& [text, choice] : words) {
    auto* button = new QPushButton(text, this);
    button->setAccessibleName(QString(text).remove(QLatin1Char('&')));
    button->setStyleSheet(QStringLiteral("text-align: left"));
    button->setAutoDefault(choice == Choice::blank);
    button->setDefault(choice == Choice::blank);
    connect(button, &QPushButton::clicked, this, [this, choice = choice] { choose(choice); });
    column->addWidget(button);
  }
  auto* paste = new QLabel(tr("or a &table of readings, one a line, such as   L A 3/8"));
  paste->setBuddy(readings_);
  column->addWidget(paste);
  readings_->setAccessibleName(tr("Table of readings"));
  readings_->setPlaceholderText(
      tr("L A 3/8\nA B 1 3/16\nF A 1/2\n\nL R F K are the left, right, front and back side;\n"
         "any other new name becomes a point."));
  readings_->setFont(figures());
  readings_->setTabChangesFocus(true);
  readings_->setMinimumHeight(fontMetrics().lineSpacing() * 8);
  column->addWidget(readings_);
  said_->setWordWrap(true);
  column->addWidget(said_);
  auto* take = new QPushButton(tr("Begin with these &readings"), this);
  take->setProperty("firm", true);
  take->setAutoDefault(false);
  take->setEnabled(false);
  connect(take, &QPushButton::clicked, this, &StartSlip::takeReadings);
  connect(readings_, &QPlainTextEdit::textChanged, this, [this, take] {
    take->setEnabled(!readings_->toPlainText().trimmed().isEmpty());
    said_->clear();
  });
  column->addWidget(take, 0, Qt::AlignRight);
  resize(fontMetrics().averageCharWidth() * 84, sizeHint().height());
}

void StartSlip::choose(Choice choice) {
  choice_ = choice;
  accept();
}

Result<Part> StartSlip::pastedPart() const {
  const Job job = emptyJob();
  LineContext context;
  context.unit = job.unit;
  return applyLines(job.parts.front(), readings_->toPlainText().toStdString(), context);
}

void StartSlip::takeReadings() {
  const auto part = pastedPart();
  if (!part.ok()) {
    said_->setText(coreWords(part.error().place + ": " + part.error().text));
    return;
  }
  choose(Choice::readings);
}

}  // namespace inchwright::app

#include "moc_start_slip.cpp"
