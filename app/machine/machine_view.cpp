#include "app/machine/machine_view.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMouseEvent>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <tuple>

#include "app/base/look.h"
#include "app/base/spoken_english.h"
#include "app/session/typed_figure.h"
#include "core/part/edit.h"
#include "core/say/done_words.h"
#include "core/say/making_words.h"

namespace inchwright::app {
namespace {

QString ownWords(const std::string& text) {
  return QString::fromStdString(text);
}

/// The largest font in which `text` fits into a width and a height.
QFont fitting(QFont font, const QString& text, QSizeF room) {
  font.setPixelSize(100);
  const QFontMetricsF metrics(font);
  const qreal scale = std::min(room.width() / std::max(1.0, metrics.horizontalAdvance(text)),
                               room.height() / metrics.height());
  font.setPixelSize(std::max(8, static_cast<int>(100 * scale)));
  return font;
}

/// A box to tick with a pencil, large enough for a thumb.
class TickBox : public QCheckBox {
 public:
  using QCheckBox::QCheckBox;

  QSize sizeHint() const override {
    const int side = fontMetrics().height();
    return {fontMetrics().horizontalAdvance(text()) + side * 2, side + 16};
  }

 protected:
  bool hitButton(const QPoint& at) const override { return rect().contains(at); }

  void paintEvent(QPaintEvent*) override {
    const Look& look = Look::now();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const qreal side = fontMetrics().height() * 0.9;
    const QRectF box(3, (height() - side) / 2, side, side);
    painter.setPen(QPen(hasFocus() ? look.blue : look.pencil, hasFocus() ? 4 : 2));
    painter.drawRect(box);
    if (isChecked()) {
      painter.setPen(QPen(look.blue, side / 8, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
      painter.drawPolyline(QPolygonF{{box.left() + side * 0.2, box.center().y()},
                                     {box.left() + side * 0.42, box.bottom() - side * 0.18},
                                     {box.right() + side * 0.1, box.top() - side * 0.05}});
    }
    painter.setPen(look.pencil);
    painter.drawText(rect().adjusted(static_cast<int>(side * 1.5), 0, 0, 0),
                     Qt::AlignLeft | Qt::AlignVCenter, text());
  }
};

}  // namespace

MachineView::MachineView(Desk& desk, QWidget* parent)
    : QWidget(parent, Qt::Window),
      desk_(desk),
      head_(new QLabel(this)),
      tools_(new QWidget(this)),
      toolRow_(new QHBoxLayout(tools_)),
      measuredX_(new QLineEdit(this)),
      measuredY_(new QLineEdit(this)),
      back_(new QPushButton(tr("◂ &Back"), this)),
      next_(new QPushButton(tr("&Next ▸"), this)),
      leave_(new QPushButton(tr("&Leave the machine"), this)) {
  setObjectName(QStringLiteral("atMachine"));
  setWindowTitle(tr("At the machine"));
  setAccessibleName(windowTitle());
  setFocusPolicy(Qt::StrongFocus);
  head_->setFont(deskFont(1.4));
  measuredX_->setAccessibleName(tr("Measured X"));
  measuredY_->setAccessibleName(tr("Measured Y"));
  auto* top = new QHBoxLayout;
  top->addWidget(head_, 1);
  top->addWidget(leave_);
  auto* bottom = new QHBoxLayout;
  bottom->addWidget(back_);
  bottom->addStretch(1);
  for (const auto& [field, text] :
       {std::pair{measuredX_, tr("measured &X")}, std::pair{measuredY_, tr("measured &Y")}}) {
    field->setFont(figures(1.6));
    field->setMaximumWidth(field->fontMetrics().averageCharWidth() * 12);
    auto* label = new QLabel(text, this);
    label->setFont(deskFont(1.2));
    label->setBuddy(field);
    bottom->addWidget(label);
    bottom->addWidget(field);
    bottom->addSpacing(24);
    connect(field, &QLineEdit::editingFinished, this, &MachineView::takeMeasured);
    connect(field, &QLineEdit::returnPressed, this, [this] { setFocus(); });
  }
  bottom->addStretch(1);
  bottom->addWidget(next_);
  for (QPushButton* button : {back_, next_, leave_}) {
    button->setFont(deskFont(1.5));
    button->setFocusPolicy(Qt::TabFocus);
    button->setAccessibleName(button->text().remove(QLatin1Char('&')));
  }
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(36, 22, 36, 22);
  column->addLayout(top);
  column->addStretch(1);
  column->addWidget(tools_);
  column->addLayout(bottom);
  connect(back_, &QPushButton::clicked, this, [this] { go(row_ - 1); });
  connect(next_, &QPushButton::clicked, this, [this] { go(row_ + 1); });
  connect(leave_, &QPushButton::clicked, this, &QWidget::close);
  connect(&desk, &Desk::edited, this, &MachineView::follow);
  connect(&desk, &Desk::viewChanged, this, &MachineView::follow);
  follow();
  setFocus();
}

MachineView::~MachineView() {
  // A field that loses the focus takes what was typed, and needs the view to be there still.
  hide();
}

const TableRow* MachineView::current() const {
  const SetupTable* table = desk_.table();
  if (table == nullptr || row_ < 0 || row_ >= static_cast<int>(table->rows.size())) return nullptr;
  return &table->rows[row_];
}

QString MachineView::sizeOf(const TableRow& row) const {
  const Feature* feature = desk_.part().feature(row.feature);
  return feature == nullptr
             ? QString()
             : ownWords(sizeWords(*feature, desk_.table()->step.unit, spokenEnglish()));
}

void MachineView::go(int row) {
  // What was typed at this place belongs to it, whichever way one leaves.
  takeMeasured();
  const SetupTable* table = desk_.table();
  const int count = table == nullptr ? 0 : static_cast<int>(table->rows.size());
  row_ = std::clamp(row, 0, std::max(0, count - 1));
  follow();
  setFocus();
}

void MachineView::follow() {
  filling_ = true;
  for (QCheckBox* tick : ticks_) delete tick;
  ticks_.clear();
  const TableRow* row = current();
  const int count = row == nullptr ? 0 : static_cast<int>(desk_.table()->rows.size());
  back_->setEnabled(row != nullptr && row_ > 0);
  next_->setEnabled(row != nullptr && row_ + 1 < count);
  if (row == nullptr) {
    head_->setText(tr("There is nothing to drive to."));
    filling_ = false;
    update();
    return;
  }
  const Part& part = desk_.part();
  const MadePlace made = madeAt(part, row->id, desk_.setup().name);
  head_->setText(tr("%1 · setup %2 · place %3 of %4")
                     .arg(ownWords(part.name), ownWords(desk_.setup().name))
                     .arg(row_ + 1)
                     .arg(count));
  for (std::size_t i = 0; i < row->steps.size(); ++i) {
    const MakingStep& step = row->steps[i];
    const Unit unit = desk_.table()->step.unit;
    const QString depth = ownWords(depthText(step, unit));
    auto* tick = new TickBox(ownWords(stepWords(step, unit, spokenEnglish())) +
                                 (depth.isEmpty() ? QString() : QStringLiteral(", ") + depth),
                             tools_);
    tick->setFont(deskFont(2.0));
    tick->setChecked(isDone(made, step));
    tick->setAccessibleName(tick->text());
    tick->setFocusPolicy(Qt::TabFocus);
    const int index = static_cast<int>(i);
    connect(tick, &QCheckBox::toggled, this, [this, index](bool on) { setTick(index, on); });
    toolRow_->addWidget(tick);
    tick->show();
    ticks_.push_back(tick);
  }
  measuredX_->setText(made.x ? ownWords(made.x->text) : QString());
  measuredY_->setText(made.y ? ownWords(made.y->text) : QString());
  setAccessibleDescription(tr("%1: X %2, Y %3, %4")
                               .arg(ownWords(row->id), ownWords(signedText(row->x)),
                                    ownWords(signedText(row->y)), sizeOf(*row)));
  filling_ = false;
  update();
}

void MachineView::setTick(int step, bool on) {
  const TableRow* row = current();
  if (filling_ || row == nullptr) return;
  const MakingStep& ticked = row->steps[step];
  const MadePlace made = withDone(madeAt(desk_.part(), row->id, desk_.setup().name), ticked, on);
  const QString title = tr("Tick %1 at %2").arg(ownWords(doneName(ticked)), ownWords(row->id));
  desk_.endMerge();
  // The box that was clicked is made anew by the edit, so the edit waits for its click to end.
  QMetaObject::invokeMethod(
      this, [this, made, title] { desk_.applyPart(withMade(desk_.part(), made), title); },
      Qt::QueuedConnection);
}

void MachineView::tickNext() {
  for (QCheckBox* tick : ticks_) {
    if (!tick->isChecked()) {
      tick->setChecked(true);
      return;
    }
  }
  go(row_ + 1);
}

void MachineView::takeMeasured() {
  const TableRow* row = current();
  if (filling_ || row == nullptr) return;
  MadePlace made = madeAt(desk_.part(), row->id, desk_.setup().name);
  const MadePlace before = made;
  for (const auto& [field, figure] :
       {std::pair{measuredX_, &made.x}, std::pair{measuredY_, &made.y}}) {
    const std::string text = field->text().trimmed().toStdString();
    if (text.empty()) {
      figure->reset();
      continue;
    }
    const auto read = readTyped(text, desk_.job().machine.unit, desk_.job().unit);
    if (read.ok()) {
      *figure = *read;
    } else {
      head_->setText(tr("%1: %2").arg(field->accessibleName(), coreWords(read.error().text)));
    }
  }
  if (made == before) return;
  desk_.endMerge();
  desk_.applyPart(withMade(desk_.part(), made), tr("Measure %1").arg(ownWords(row->id)));
}

QRectF MachineView::figuresBox() const {
  const qreal top = head_->geometry().bottom() + 14;
  const qreal bottom = std::min(tools_->geometry().top(), measuredX_->geometry().top()) - 14;
  return QRectF(36, top, width() - 72, std::max(60.0, bottom - top));
}

void MachineView::paintEvent(QPaintEvent*) {
  const Look& look = Look::now();
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.fillRect(rect(), look.sheet);
  const TableRow* row = current();
  if (row == nullptr) return;
  painter.setPen(look.pencil);
  const QRectF box = figuresBox();
  const QRectF left(box.left(), box.top(), box.width() * 0.26, box.height());
  const QRectF right(left.right() + 20, box.top(), box.right() - left.right() - 20, box.height());
  const QString id = ownWords(row->id);
  painter.setFont(fitting(deskFont(), id, {left.width(), left.height() * 0.62}));
  painter.drawText(QRectF(left.left(), left.top(), left.width(), left.height() * 0.66),
                   Qt::AlignCenter, id);
  const QString size = sizeOf(*row);
  const QRectF below(left.left(), left.top() + left.height() * 0.66, left.width(),
                     left.height() * 0.34);
  painter.setFont(fitting(deskFont(), size, {below.width(), below.height() * 0.4}));
  painter.drawText(below, Qt::AlignHCenter | Qt::AlignTop | Qt::TextWordWrap,
                   row->disputed ? tr("%1\nin dispute").arg(size) : size);
  const QString x = ownWords(signedText(row->x)), y = ownWords(signedText(row->y));
  const QString letter = QStringLiteral("X "), longer = x.size() > y.size() ? x : y;
  painter.setFont(fitting(deskFont(), letter + longer, {right.width(), right.height() * 0.46}));
  // The letters stand below one another, and so do the ends of the figures.
  const QFontMetricsF metrics(painter.font());
  const qreal figure = std::max(metrics.horizontalAdvance(x), metrics.horizontalAdvance(y));
  const qreal letterAt = right.right() - figure - metrics.horizontalAdvance(letter);
  const qreal half = right.height() / 2;
  for (const auto& [name, text, top] : {std::tuple{QStringLiteral("X"), x, right.top()},
                                        std::tuple{QStringLiteral("Y"), y, right.top() + half}}) {
    const QRectF line(letterAt, top, right.right() - letterAt, half);
    painter.drawText(line, Qt::AlignLeft | Qt::AlignVCenter, name);
    painter.drawText(line, Qt::AlignRight | Qt::AlignVCenter, text);
  }
}

void MachineView::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Space:
      tickNext();
      return;
    case Qt::Key_Right:
    case Qt::Key_Down:
    case Qt::Key_PageDown:
      go(row_ + 1);
      return;
    case Qt::Key_Left:
    case Qt::Key_Up:
    case Qt::Key_PageUp:
      go(row_ - 1);
      return;
    case Qt::Key_Home:
      go(0);
      return;
    case Qt::Key_Escape:
      close();
      return;
    default:
      QWidget::keyPressEvent(event);
  }
  if (event->matches(QKeySequence::Undo)) desk_.undo();
  if (event->matches(QKeySequence::Redo)) desk_.redo();
}

void MachineView::mouseReleaseEvent(QMouseEvent* event) {
  if (!figuresBox().contains(event->position())) return;
  go(row_ + (event->position().x() < width() / 2.0 ? -1 : 1));
}

void MachineView::resizeEvent(QResizeEvent*) {
  update();
}

}  // namespace inchwright::app

#include "moc_machine_view.cpp"
