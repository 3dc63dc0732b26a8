#include "app/window/hands_row.h"

#include <QHBoxLayout>
#include <QMenu>
#include <QPushButton>
#include <QShortcut>
#include <algorithm>
#include <functional>

#include "app/session/activity.h"

namespace inchwright::app {

HandsRow::HandsRow(Work& work, QWidget* parent)
    : QWidget(parent), work_(work), row_(new QHBoxLayout(this)) {
  setObjectName(QStringLiteral("hands"));
  row_->setContentsMargins(2, 2, 2, 0);
  // It folds where it would be too wide.
  row_->setSizeConstraint(QLayout::SetNoConstraint);
  row_->setSpacing(0);
  struct Word {
    QString text, hint;
    Doing doing;
    std::function<void()> begin;
    UnderstandingKind relation = UnderstandingKind::inLine;
  };
  const auto relating = [this](UnderstandingKind kind) {
    return [this, kind] {
      relation_ = kind;
      work_.relate(kind);
    };
  };
  const Word words[] = {
      {tr("&Look"), tr("Choose, move, rename, delete"), Doing::looking, [this] { work_.look(); }},
      {tr("&Read"), tr("Walk a chain: point at the next place, type the figure"), Doing::reading,
       [this] { work_.read(); }},
      {tr("&In line"), tr("Places that share a line without a figure"), Doing::relating,
       relating(UnderstandingKind::inLine)},
      {tr("&Midway"), tr("A place half way between two others"), Doing::relating,
       relating(UnderstandingKind::midway), UnderstandingKind::midway},
      {tr("&Equal"), tr("Equal spaces from place to place"), Doing::relating,
       relating(UnderstandingKind::equal), UnderstandingKind::equal},
      {tr("&Zero"), tr("Point at what zero is"), Doing::zeroing, [this] { work_.zero(); }},
      {tr("Stac&k"), tr("Choose two places and see what adds up between them"), Doing::stacking,
       [this] { work_.stack(); }},
      {tr("Read a&gain"), tr("The second reading, blind: each figure is asked once more"),
       Doing::rereading, [this] { work_.reread(); }}};
  for (const Word& one : words) {
    QPushButton* button = word(one.text, one.hint);
    button->setCheckable(true);
    named_.push_back({button, one.doing, one.relation});
    connect(button, &QPushButton::clicked, this, [this, begin = one.begin] {
      begin();
      follow();
      emit chosen();
    });
    if (one.doing == Doing::looking) addTrace();
    if (one.relation == UnderstandingKind::equal) addShown();
    if (one.doing != Doing::relating) continue;
    auto* key = new QShortcut(QKeySequence::mnemonic(one.text), this);
    key->setEnabled(false);
    connect(key, &QShortcut::activated, button, &QPushButton::click);
    foldedKeys_.push_back(key);
  }
  row_->addStretch(1);
  axis_ = word({}, tr("The axis the chain runs along"));
  connect(axis_, &QPushButton::clicked, this, [this] {
    work_.setAxis(static_cast<Axis>((static_cast<int>(work_.axis()) + 1) % 3));
    emit chosen();
  });
  fromFirst_ = word(tr("&From the first"), tr("Every reading starts from the first place chosen"));
  fromFirst_->setCheckable(true);
  connect(fromFirst_, &QPushButton::clicked, this, [this](bool on) {
    work_.setFromFirst(on);
    emit chosen();
  });
  connect(&work, &Work::changed, this, &HandsRow::follow);
  follow();
}

QPushButton* HandsRow::word(const QString& text, const QString& hint) {
  auto* button = new QPushButton(text, this);
  button->setFocusPolicy(Qt::TabFocus);
  button->setToolTip(hint);
  button->setAccessibleName(QString(text).remove(QLatin1Char('&')));
  button->setAccessibleDescription(hint);
  row_->addWidget(button);
  return button;
}

void HandsRow::addTrace() {
  trace_ = word(tr("&Trace ▸"), tr("Put a place on the print, then name and size it"));
  trace_->setAccessibleName(tr("Trace"));
  trace_->setCheckable(true);
  auto* menu = new QMenu(trace_);
  const QString words[] = {tr("&edge"),          tr("&hole"),         tr("&slot"),
                           tr("r&ing of holes"), tr("&row of holes"), tr("ro&und"),
                           tr("&point"),         tr("&line"),         tr("&arc")};
  for (int i = 0; i < 9; ++i) {
    menu->addAction(words[i], this, [this, i] {
      work_.trace(static_cast<FeatureKind>(i));
      emit chosen();
    });
  }
  QMenu* turned = menu->addMenu(tr("in the la&the"));
  turned->addAction(tr("centre &line"), this, [this] {
    work_.traceCentreLine();
    emit chosen();
  });
  for (int i = static_cast<int>(FeatureKind::outside); i < kFeatureKinds; ++i) {
    const auto kind = static_cast<FeatureKind>(i);
    turned->addAction(wordFor(kind), this, [this, kind] {
      work_.trace(kind);
      emit chosen();
    });
  }
  trace_->setMenu(menu);
}

void HandsRow::addShown() {
  shown_ = word(tr("Shown ▸"), tr("What the print shows without a figure: in line, midway …"));
  shown_->setAccessibleName(tr("What the print shows without a figure"));
  shown_->setCheckable(true);
  auto* menu = new QMenu(shown_);
  for (int i = 0; i < 8; ++i) {
    const auto kind = static_cast<UnderstandingKind>(i);
    menu->addAction(wordFor(kind), this, [this, kind] {
      relation_ = kind;
      work_.relate(kind);
      emit chosen();
    });
  }
  shown_->setMenu(menu);
  shown_->hide();
}

int HandsRow::widthOf(bool folded) const {
  const QMargins margins = row_->contentsMargins();
  int width = margins.left() + margins.right();
  for (const QPushButton* button : findChildren<QPushButton*>(Qt::FindDirectChildrenOnly)) {
    const auto named = std::find_if(named_.begin(), named_.end(),
                                    [&](const Named& one) { return one.button == button; });
    const bool relates = named != named_.end() && named->doing == Doing::relating;
    if (button == shown_ ? folded : !(relates && folded)) width += button->sizeHint().width();
  }
  return width;
}

QSize HandsRow::minimumSizeHint() const {
  return {widthOf(true), QWidget::minimumSizeHint().height()};
}

void HandsRow::fold(bool folded) {
  for (const Named& one : named_) {
    if (one.doing == Doing::relating) one.button->setVisible(!folded);
  }
  shown_->setVisible(folded);
  for (QShortcut* key : foldedKeys_) key->setEnabled(folded);
}

void HandsRow::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  fold(widthOf(false) > width());
}

void HandsRow::follow() {
  const Doing doing = work_.doing();
  for (const Named& one : named_) {
    const bool on = one.doing == doing && (doing != Doing::relating || one.relation == relation_);
    one.button->setChecked(on);
  }
  const bool tracing = doing == Doing::tracing;
  trace_->setChecked(tracing);
  shown_->setChecked(doing == Doing::relating);
  trace_->setText(tracing ? tr("&Trace: %1 ▸").arg(wordFor(work_.traceKind())) : tr("&Trace ▸"));
  const QString axis = wordFor(work_.axis());
  axis_->setText(tr("al&ong %1").arg(axis));
  axis_->setAccessibleName(tr("Axis: %1").arg(axis));
  fromFirst_->setChecked(work_.fromFirst());
}

}  // namespace inchwright::app

#include "moc_hands_row.cpp"
