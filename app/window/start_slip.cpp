#include "app/window/start_slip.h"

#include <QDragEnterEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QMimeData>
#include <QPainter>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/base/look.h"
#include "app/base/spoken_english.h"
#include "app/canvas/print_picture.h"
#include "app/window/desk_files.h"
#include "core/lines/pasted.h"

namespace inchwright::app {
namespace {

/// A sheet of paper with a turned corner and a few words on it, to be chosen.
class PaperTab : public QPushButton {
 public:
  PaperTab(const QString& name, const QString& more, QWidget* parent)
      : QPushButton(parent), name_(name), more_(more) {
    // Alt and the underlined letter choose it.
    const QKeySequence letter =
        QKeySequence::mnemonic(name.contains(QLatin1Char('&')) ? name : more);
    setShortcut(letter);
    setAccessibleName(QString(name + QStringLiteral(": ") + more).remove(QLatin1Char('&')));
    setAutoDefault(true);
    // A button else is never smaller than it likes to be.
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Preferred);
  }

  QSize sizeHint() const override {
    return {fontMetrics().averageCharWidth() * 26, fontMetrics().lineSpacing() * 8};
  }
  /// On a small screen the words take more lines.
  QSize minimumSizeHint() const override {
    return {fontMetrics().averageCharWidth() * 17, fontMetrics().lineSpacing() * 7};
  }

 protected:
  void paintEvent(QPaintEvent*) override {
    const Look& look = Look::now();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const bool on = hasFocus() || underMouse();
    const QRectF paper = QRectF(rect()).adjusted(7, 5, -7, -9);
    paintPaperShadow(painter, paper);
    const qreal fold = fontMetrics().height();
    const QPointF corner = paper.topRight();
    const QPolygonF outline{paper.topLeft(), corner - QPointF(fold, 0), corner + QPointF(0, fold),
                            paper.bottomRight(), paper.bottomLeft()};
    painter.setPen(QPen(on ? look.blue : look.faint, on ? 2.4 : 1));
    painter.setBrush(look.sheet);
    painter.drawPolygon(outline);
    painter.setBrush(look.slip);
    painter.drawPolygon(QPolygonF{corner - QPointF(fold, 0), corner + QPointF(-fold, fold),
                                  corner + QPointF(0, fold)});
    const QRectF words = paper.adjusted(14, 14, -12, -10);
    painter.setPen(look.pencil);
    painter.setFont(deskFont(1.25));
    const QRectF head(words.topLeft(),
                      QSizeF(words.width() - fold, painter.fontMetrics().height()));
    painter.drawText(head, Qt::AlignLeft | Qt::AlignTop | Qt::TextShowMnemonic, name_);
    painter.setFont(deskFont());
    painter.drawText(words.adjusted(0, head.height() + 8, 0, 0),
                     Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap | Qt::TextShowMnemonic, more_);
  }

 private:
  QString name_, more_;
};

}  // namespace

StartSlip::StartSlip(QWidget* parent)
    : QDialog(parent), readings_(new QPlainTextEdit(this)), said_(new QLabel(this)) {
  setWindowTitle(tr("Begin"));
  setAccessibleName(windowTitle());
  setAcceptDrops(true);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(30, 24, 30, 22);
  column->setSpacing(8);
  auto* heading = new QLabel(tr("What lies on the desk?"));
  heading->setFont(deskFont(1.4));
  column->addWidget(heading);
  auto* papers = new QHBoxLayout;
  papers->setSpacing(4);
  struct Word {
    QString name, more;
    Choice choice;
  };
  const Word words[] = {
      {tr("A &picture"), tr("of their print: a photo, a scan or a PDF. Or drop it here."),
       Choice::picture},
      {tr("&Blank paper"), tr("I put the places down roughly and read the figures in."),
       Choice::blank},
      {tr("A &saved job"), tr("Go on with what I saved."), Choice::open},
      {tr("The sample"), tr("A &front plate with its print, and a tour of a minute."),
       Choice::sample}};
  for (const auto& [name, more, choice] : words) {
    auto* paper = new PaperTab(name, more, this);
    paper->setDefault(choice == Choice::blank);
    connect(paper, &QPushButton::clicked, this, [this, choice = choice] { choose(choice); });
    papers->addWidget(paper, 1);
  }
  column->addLayout(papers);
  auto* paste = new QLabel(tr("or a &table of readings, one a line, such as   L A 3/8"));
  paste->setBuddy(readings_);
  column->addWidget(paste);
  readings_->setAccessibleName(tr("Table of readings"));
  readings_->setPlaceholderText(
      tr("L A 3/8\nA B 1 3/16\nF A 1/2\n\nL R F K are the left, right, front and back side;\n"
         "any other new name becomes a point."));
  readings_->setFont(figures());
  readings_->setTabChangesFocus(true);
  readings_->setMinimumHeight(fontMetrics().lineSpacing() * 4);
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
  auto* foot = new QHBoxLayout;
  foot->addStretch(1);
  foot->addWidget(take);
  column->addLayout(foot);
  resize(fontMetrics().averageCharWidth() * 84, sizeHint().height());
}

void StartSlip::dragEnterEvent(QDragEnterEvent* event) {
  if (!PrintPicture::fileIn(event->mimeData()).isEmpty()) event->acceptProposedAction();
}

void StartSlip::dropEvent(QDropEvent* event) {
  dropped_ = PrintPicture::fileIn(event->mimeData());
  if (dropped_.isEmpty()) return;
  event->acceptProposedAction();
  choose(Choice::picture);
}

void StartSlip::choose(Choice choice) {
  choice_ = choice;
  accept();
}

Result<Part> StartSlip::pastedPart() const {
  const Job job = emptyJob();
  LineContext context;
  context.unit = job.unit;
  const std::string lines = withoutJoins(readings_->toPlainText()).toStdString();
  return applyLines(job.parts.front(), lines, context);
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
