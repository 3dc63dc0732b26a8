#include "app/strip/strip.h"

#include <QEvent>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPainter>
#include <QVBoxLayout>
#include <iterator>

#include "app/base/look.h"
#include "app/base/spoken_english.h"

namespace inchwright::app {
namespace {

/// The byte of a fault, as the position of the character it falls in.
int characterAt(const QString& text, int byte) {
  return static_cast<int>(QString::fromUtf8(text.toUtf8().left(byte)).size());
}

}  // namespace

Strip::Strip(Work& work, QWidget* parent)
    : QWidget(parent),
      work_(work),
      prompt_(new QLabel(this)),
      line_(new QLineEdit(this)),
      echo_(new QLabel(this)) {
  line_->setObjectName(QStringLiteral("line"));
  line_->setAccessibleName(tr("Line to type into"));
  line_->setFrame(false);
  line_->installEventFilter(this);
  prompt_->setBuddy(line_);
  prompt_->setWordWrap(true);
  echo_->setObjectName(QStringLiteral("echo"));
  echo_->setWordWrap(true);
  echo_->setTextFormat(Qt::PlainText);
  echo_->setAlignment(Qt::AlignLeft | Qt::AlignTop);

  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(10, 2, 10, 4);
  column->setSpacing(1);
  column->addWidget(prompt_);
  column->addWidget(line_);
  column->addWidget(echo_);
  column->addStretch(1);

  connect(line_, &QLineEdit::textEdited, this, [this](const QString& text) {
    if (const QString plain = withoutJoins(text); plain != text) {
      const auto at = withoutJoins(text.left(line_->cursorPosition())).size();
      line_->setText(plain);
      line_->setCursorPosition(static_cast<int>(at));
    }
    refusal_.clear();
    showEcho();
  });
  connect(line_, &QLineEdit::returnPressed, this, &Strip::takeLine);
  connect(line_, &QLineEdit::textChanged, &work_, &Work::noteTyped);
  connect(&work_, &Work::typedTaken, line_, &QLineEdit::clear);
  connect(&work_, &Work::changed, this, &Strip::follow);
  connect(&work_.desk(), &Desk::refused, this, &Strip::refuse);
  restyle();
  follow();
}

void Strip::restyle() {
  line_->setFont(figures(1.45));
  echo_->setFont(figures(1.0));
  echo_->setMinimumHeight(echo_->fontMetrics().height());
  fitEcho();
}

// An answer of many lines is lettered smaller, so that no doubt lies below the edge; what is too
// long even so is whole in the hint.
void Strip::fitEcho() {
  constexpr qreal kScales[] = {1.0, 0.88, 0.76, 0.66};
  const int room = height() - echo_->y() - layout()->contentsMargins().bottom();
  bool fits = false;
  for (const qreal scale : kScales) {
    const QFont font = figures(scale);
    const QRect wide(0, 0, echo_->width(), QWIDGETSIZE_MAX);
    fits = QFontMetrics(font).boundingRect(wide, Qt::TextWordWrap, echo_->text()).height() <= room;
    if (!fits && scale != kScales[std::size(kScales) - 1]) continue;
    if (echo_->font() != font) echo_->setFont(font);
    break;
  }
  echo_->setToolTip(fits ? QString() : echo_->text());
}

void Strip::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  layout()->activate();
  fitEcho();
}

void Strip::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::ApplicationFontChange) restyle();
}

void Strip::follow() {
  // A line on its way into the job has been answered; what it led to is shown once, after it.
  if (taking_) return;
  // A refusal stands until the question changes or the line does.
  const QString prompt = work_.prompt();
  const QString shown = withWholeFigures(prompt);
  if (prompt_->text() != shown) refusal_.clear();
  prompt_->setText(shown);
  // Screen readers speak the question together with the line it is answered in.
  line_->setAccessibleDescription(prompt);
  const QString offer = work_.offer();
  line_->setPlaceholderText(offer.isEmpty() ? QString() : tr("%1   (Enter takes it)").arg(offer));
  showEcho();
}

void Strip::showEcho() {
  const QString text = line_->text();
  Echo echo = work_.echo(text);
  echo.text = coreWords(echo.text.toStdString());
  QString shown = echo.text;
  if (!refusal_.isEmpty()) {
    shown = tr("not taken: %1").arg(refusal_);
    echo = {{}, true, -1, false};
  }
  if (echo.refused && echo.at >= 0) {
    const int character = characterAt(text, echo.at);
    shown = character >= text.size() ? tr("so far: %1").arg(echo.text)
                                     : tr("at “%1”: %2").arg(text.mid(character, 6), echo.text);
  }
  // Doubt is a word first, and red only beside it.
  if (echo.doubtful) shown.prepend(tr("look again: "));
  QPalette ink = palette();
  ink.setColor(QPalette::WindowText,
               echo.refused || echo.doubtful ? Look::now().red : Look::now().pencil);
  echo_->setPalette(ink);
  echo_->setText(withWholeFigures(shown));
  fitEcho();
}

void Strip::refuse(const QString& why) {
  refusal_ = coreWords(why.toStdString());
  showEcho();
}

void Strip::takeLine() {
  // What was refused stays in the line to be mended, and its reason below it.
  refusal_.clear();
  taking_ = true;
  if (work_.enter(line_->text())) {
    line_->clear();
    refusal_.clear();
  }
  taking_ = false;
  follow();
}

// Alt and a letter that no hand or menu answers to. With Ctrl, as some keyboards send AltGr, or on
// a Mac, it writes.
bool Strip::isStrayShortcut(const QKeyEvent& key) {
#ifdef Q_OS_MACOS
  return false;
#else
  return key.modifiers().testFlag(Qt::AltModifier) &&
         !key.modifiers().testFlag(Qt::ControlModifier) && !key.text().isEmpty();
#endif
}

bool Strip::leavesToDesk(const QKeyEvent& key) const {
  if (!key.modifiers().testFlag(Qt::ControlModifier)) return false;
  for (const auto own : {QKeySequence::Copy, QKeySequence::Cut, QKeySequence::Paste}) {
    if (key.matches(own)) return false;
  }
  // An empty line has nothing of its own to take back or to walk in; a line that is being typed
  // keeps only what people know, not the seldom known keys that erase to its end.
  if (line_->text().isEmpty()) return true;
  for (const auto erasing : {QKeySequence::DeleteCompleteLine, QKeySequence::DeleteEndOfLine,
                             QKeySequence::MoveToEndOfLine}) {
    if (key.matches(erasing)) return true;
  }
  return false;
}

bool Strip::eventFilter(QObject* watched, QEvent* event) {
  if (watched == line_ && event->type() == QEvent::ShortcutOverride) {
    if (leavesToDesk(*static_cast<QKeyEvent*>(event))) {
      event->ignore();
      return true;
    }
  }
  if (watched == line_ && event->type() == QEvent::KeyPress) {
    const auto& key = *static_cast<QKeyEvent*>(event);
    // A key held down too long elsewhere takes nothing here.
    if (key.isAutoRepeat() && (key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter)) {
      return true;
    }
    if (isStrayShortcut(key)) {
      event->ignore();
      return true;
    }
    if (key.key() == Qt::Key_Tab && line_->text().isEmpty() && work_.pass()) return true;
    if (key.key() == Qt::Key_Escape) {
      if (line_->text().isEmpty()) {
        work_.back();
      } else {
        line_->clear();
        showEcho();
      }
      return true;
    }
  }
  return QWidget::eventFilter(watched, event);
}

void Strip::paintEvent(QPaintEvent*) {
  const Look& look = Look::now();
  QPainter painter(this);
  painter.fillRect(rect(), look.slip);
  // A ruled line under what is typed, as on a slip of paper; a cap would stand out of what is
  // painted anew when the line moves.
  painter.setPen(QPen(look.blue, kFirmLine, Qt::SolidLine, Qt::FlatCap));
  const int y = line_->geometry().bottom() + 2;
  painter.drawLine(line_->geometry().left(), y, line_->geometry().right(), y);
}

}  // namespace inchwright::app

#include "moc_strip.cpp"
