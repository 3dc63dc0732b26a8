#include "app/canvas/tone_slip.h"

#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QSlider>

#include "app/base/look.h"
#include "app/session/desk.h"
#include "app/session/picture_edits.h"

namespace inchwright::app {
namespace {

const Picture* toned(const Desk& desk) {
  return desk.hasPart() ? pictureUnder(desk.job(), desk.part(), desk.face()) : nullptr;
}

}  // namespace

ToneSlip::ToneSlip(Desk& desk, QWidget* print) : QWidget(print), desk_(desk) {
  setObjectName(QStringLiteral("tone"));
  setAccessibleName(tr("Tone of the picture"));
  connect(&desk, &Desk::edited, this, &ToneSlip::follow);
  connect(&desk, &Desk::viewChanged, this, &ToneSlip::follow);
  hide();
}

void ToneSlip::build() {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(24, 18, 24, 20);
  grid->setHorizontalSpacing(12);
  const QString words[] = {tr("Brightness"), tr("Contrast"), tr("Fade")};
  for (int i = 0; i < 3; ++i) {
    auto* slider = new QSlider(Qt::Horizontal, this);
    slider->setRange(i == 2 ? 0 : -100, 100);
    slider->setPageStep(20);
    slider->setSingleStep(2);
    slider->setAccessibleName(words[i]);
    slider->setMinimumWidth(fontMetrics().averageCharWidth() * 24);
    auto* label = new QLabel(words[i], this);
    label->setBuddy(slider);
    auto* figure = new QLabel(this);
    figure->setFont(figures());
    figure->setMinimumWidth(figure->fontMetrics().horizontalAdvance(QStringLiteral("-100")));
    figure->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    figure->setNum(0);
    connect(slider, &QSlider::valueChanged, figure, qOverload<int>(&QLabel::setNum));
    connect(slider, &QSlider::valueChanged, this, [this] {
      if (filling_) return;
      take({sliders_[0]->value(), sliders_[1]->value(), sliders_[2]->value()});
    });
    grid->addWidget(label, i, 0);
    grid->addWidget(slider, i, 1);
    grid->addWidget(figure, i, 2);
    sliders_[static_cast<std::size_t>(i)] = slider;
  }
  auto* plain = new QPushButton(tr("As it was taken"), this);
  auto* done = new QPushButton(tr("Done"), this);
  done->setProperty("firm", true);
  for (QPushButton* button : {plain, done}) {
    button->setAccessibleName(button->text());
  }
  connect(plain, &QPushButton::clicked, this, [this] { take({}); });
  connect(done, &QPushButton::clicked, this, &ToneSlip::leave);
  auto* row = new QHBoxLayout;
  row->addWidget(plain);
  row->addStretch(1);
  row->addWidget(done);
  grid->addLayout(row, 3, 0, 1, 3);
}

bool ToneSlip::open() {
  if (toned(desk_) == nullptr) {
    emit desk_.refused(tr("There is no picture under this face"));
    return false;
  }
  if (layout() == nullptr) build();
  follow();
  desk_.endMerge();
  adjustSize();
  move(12, 12);
  show();
  raise();
  sliders_[0]->setFocus();
  return true;
}

void ToneSlip::follow() {
  const Picture* picture = toned(desk_);
  if (picture == nullptr) {
    hide();
    return;
  }
  if (layout() == nullptr) return;
  filling_ = true;
  sliders_[0]->setValue(picture->tone.brightness);
  sliders_[1]->setValue(picture->tone.contrast);
  sliders_[2]->setValue(picture->tone.fade);
  filling_ = false;
}

void ToneSlip::take(const PictureTone& tone) {
  const Picture* picture = toned(desk_);
  if (picture == nullptr || picture->tone == tone) return;
  Job job = desk_.job();
  for (Picture& one : job.pictures) {
    if (one.name == picture->name) one.tone = tone;
  }
  desk_.apply(std::move(job), tr("Change the tone of the picture"), QStringLiteral("tone"));
}

void ToneSlip::leave() {
  hide();
  if (parentWidget() != nullptr) parentWidget()->setFocus();
}

void ToneSlip::hideEvent(QHideEvent*) {
  desk_.endMerge();
}

void ToneSlip::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) {
    leave();
  } else {
    // Nothing that is typed here is meant for the print below.
    event->accept();
  }
}

void ToneSlip::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  paintSlip(painter, QRectF(rect()).adjusted(8, 5, -8, -9));
}

}  // namespace inchwright::app

#include "moc_tone_slip.cpp"
