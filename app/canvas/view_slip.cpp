#include "app/canvas/view_slip.h"

#include <QEvent>
#include <QKeyEvent>
#include <QLabel>
#include <QMouseEvent>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>
#include <array>
#include <functional>
#include <utility>

#include "app/base/look.h"
#include "app/session/desk.h"

namespace inchwright::app {
namespace {

constexpr qreal kPicture = 1.9;  // times the height of the words

QString seenFrom(Face face) {
  switch (face) {
    case Face::top:
      return ViewSlip::tr("seen from above");
    case Face::bottom:
      return ViewSlip::tr("seen from below");
    case Face::front:
      return ViewSlip::tr("seen from the front");
    case Face::back:
      return ViewSlip::tr("seen from the back");
    case Face::left:
      return ViewSlip::tr("seen from the left");
    case Face::right:
      break;
  }
  return ViewSlip::tr("seen from the right");
}

}  // namespace

/// A view in words, with the part turned to it.
class ViewWord : public QPushButton {
 public:
  ViewWord(Face face, bool lone, QWidget* parent) : QPushButton(parent), face_(face), lone_(lone) {
    setCheckable(!lone);
    setAutoExclusive(!lone);
    setFocusPolicy(Qt::TabFocus);
  }

  Face face() const { return face_; }

  // Painted again only for a change: what shows through makes the print below be painted as well.
  void show(Face face, int features, const TurnedPart& part) {
    if (face == face_ && features == features_ && part == part_) return;
    face_ = face;
    features_ = features;
    part_ = part;
    setAccessibleName(words() + QStringLiteral(", ") + tr("%n feature(s)", nullptr, features));
    updateGeometry();
    update();
  }

  QSize sizeHint() const override {
    const QFontMetricsF metrics(deskFont(0.9));
    const qreal wide = pictureWidth() + metrics.horizontalAdvance(shown()) + 22;
    return QSizeF(wide, metrics.height() * kPicture).toSize();
  }
  QSize minimumSizeHint() const override { return sizeHint(); }
  void setWhenTaken(std::function<void()> taken) { taken_ = std::move(taken); }

 protected:
  void mouseReleaseEvent(QMouseEvent* event) override {
    const bool on = isDown() && hitButton(event->position().toPoint());
    QPushButton::mouseReleaseEvent(event);
    if (on && taken_) taken_();
  }

  void paintEvent(QPaintEvent*) override {
    const Look& look = Look::now();
    QPainter painter(this);
    const QRectF all = QRectF(rect()).adjusted(0, 1, 0, -1);
    if (isChecked() || underMouse()) painter.fillRect(all, look.wash);
    paintTurned(painter, QRectF(4, 3, pictureWidth() - 6, height() - 6.0), part_, face_);
    painter.setFont(deskFont(0.9));
    painter.setPen(isChecked() ? look.blue : look.pencil);
    painter.drawText(all.adjusted(pictureWidth() + 6, 0, -4, 0), Qt::AlignLeft | Qt::AlignVCenter,
                     shown());
    if (!hasFocus()) return;
    painter.setPen(QPen(look.blue, kFirmLine, Qt::DashLine));
    painter.drawRect(all.adjusted(1, 1, -1, -1));
  }

 private:
  QString words() const { return seenFrom(face_); }
  QString shown() const {
    if (lone_) return words() + QStringLiteral(" ▸");
    return features_ == 0 ? words() : tr("%1: %2").arg(words()).arg(features_);
  }
  qreal pictureWidth() const { return QFontMetricsF(deskFont(0.9)).height() * kPicture * 1.3; }

  std::function<void()> taken_;
  Face face_;
  bool lone_;
  int features_ = -1;  ///< not told yet
  TurnedPart part_;
};

ViewSlip::ViewSlip(Desk& desk, QWidget* print)
    : QWidget(print),
      desk_(desk),
      now_(new ViewWord(Face::top, true, this)),
      choice_(new QWidget(this)) {
  setObjectName(QStringLiteral("views"));
  setAccessibleName(tr("Which view is this?"));
  now_->setToolTip(tr("Which view of the part this is; a click chooses another"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(9, 6, 9, 10);
  column->setSpacing(0);
  column->addWidget(choice_);
  column->addWidget(now_);
  choice_->hide();
  connect(now_, &QPushButton::clicked, this, [this] { setOpen(!open_); });
  connect(&desk, &Desk::edited, this, &ViewSlip::follow);
  connect(&desk, &Desk::viewChanged, this, &ViewSlip::follow);
  connect(&desk, &Desk::selectionChanged, this, &ViewSlip::light);
  print->installEventFilter(this);
  follow();
}

/// What is chosen from is made when it is first opened: few prints have more than one view.
void ViewSlip::makeChoice() {
  auto* words = new QVBoxLayout(choice_);
  words->setContentsMargins(2, 4, 2, 4);
  words->setSpacing(0);
  words->addWidget(new QLabel(tr("Which view is this?"), choice_));
  for (int i = 0; i < 6; ++i) {
    auto* view = new ViewWord(static_cast<Face>(i), false, choice_);
    connect(view, &QPushButton::clicked, this, [this, view] { desk_.chooseFace(view->face()); });
    // By keys one walks along the words; the mouse has chosen.
    view->setWhenTaken([this] { setOpen(false); });
    words->addWidget(view);
    views_.push_back(view);
  }
  angle_ = new QPushButton(choice_);
  angle_->setFocusPolicy(Qt::TabFocus);
  angle_->setToolTip(tr("How the print lays out its views; a click changes it"));
  angle_->setObjectName(QStringLiteral("angle"));
  words->addWidget(angle_);
  connect(angle_, &QPushButton::clicked, this, &ViewSlip::turnAngle);
}

void ViewSlip::follow() {
  light();
  if (angle_ != nullptr) followChoice();
  stay();
}

void ViewSlip::followChoice() {
  // Where the print does not say, it is taken to be as most old prints are.
  const bool third = desk_.job().projection == Projection::third;
  const QString side = third ? tr("right") : tr("left");
  const QString words = third ? tr("third angle") : tr("first angle");
  angle_->setText(tr("the view from the right stands on the %1 (%2%3)")
                      .arg(side, words, desk_.job().projection ? QString() : QStringLiteral("?")));
  angle_->setAccessibleName(tr("Layout of the views: %1").arg(angle_->text()));
  for (ViewWord* view : views_) view->setChecked(view->face() == desk_.face());
}

void ViewSlip::light() {
  std::array<int, 6> counts{};
  if (desk_.hasPart()) {
    for (const Feature& feature : desk_.part().features) {
      // An edge is a plane seen in several views and belongs to none of them.
      if (!feature.is<kind::Edge>()) ++counts[static_cast<std::size_t>(feature.face)];
    }
  }
  const TurnedPart part = turnedPart(desk_);
  const auto countOn = [&](Face face) { return counts[static_cast<std::size_t>(face)]; };
  now_->show(desk_.face(), countOn(desk_.face()), part);
  for (ViewWord* view : views_) view->show(view->face(), countOn(view->face()), part);
}

void ViewSlip::turnAngle() {
  Job job = desk_.job();
  if (!job.projection) {
    job.projection = Projection::first;
  } else if (job.projection == Projection::first) {
    job.projection = Projection::third;
  } else {
    job.projection.reset();
  }
  desk_.endMerge();
  desk_.apply(std::move(job), tr("Change the layout of the views"));
}

void ViewSlip::toggle() {
  setVisible(isHidden());
  emit toggled(!isHidden());
}

void ViewSlip::setOpen(bool open) {
  if (open == open_) return;
  open_ = open;
  if (angle_ == nullptr) {
    makeChoice();
    follow();
  }
  choice_->setVisible(open);
  stay();
  raise();
  if (open) {
    views_[static_cast<std::size_t>(desk_.face())]->setFocus(Qt::PopupFocusReason);
  } else {
    now_->setFocus(Qt::PopupFocusReason);
  }
}

void ViewSlip::stay() {
  layout()->activate();
  adjustSize();
  // Lower left: dimensions stand beside the part at the left and below it, seldom in the corner
  // between.
  move(2, parentWidget()->height() - height() - 2);
}

void ViewSlip::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape && open_) {
    setOpen(false);
    return;
  }
  QWidget::keyPressEvent(event);
}

bool ViewSlip::eventFilter(QObject* watched, QEvent* event) {
  if (watched == parentWidget() && event->type() == QEvent::Resize) stay();
  return QWidget::eventFilter(watched, event);
}

void ViewSlip::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  paintSlip(painter, QRectF(rect()).adjusted(6, 4, -6, -7));
}

}  // namespace inchwright::app

#include "moc_view_slip.cpp"
