#include "app/canvas/face_box.h"

#include <QEvent>
#include <QGridLayout>
#include <QPainter>
#include <QPushButton>
#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "app/base/look.h"
#include "app/session/desk.h"
#include "app/session/side_words.h"

namespace inchwright::app {

/// Where an edge lies between the outermost ones of its axis, from 0 to 1; for drawing only.
struct EdgeShare {
  Axis axis = Axis::x;
  double share = 0;

  bool operator==(const EdgeShare&) const = default;
};

namespace {

/// The sides of the part that a view has at its left, right, upper and lower border, as the
/// unfolded box shows them.
struct Borders {
  Side left, right, upper, lower;
};

Borders bordersOf(Face face) {
  switch (face) {
    case Face::top:
      return {Side::left, Side::right, Side::back, Side::front};
    case Face::bottom:
      return {Side::right, Side::left, Side::back, Side::front};
    case Face::front:
      return {Side::left, Side::right, Side::top, Side::bottom};
    case Face::back:
      return {Side::left, Side::right, Side::bottom, Side::top};
    case Face::left:
      return {Side::bottom, Side::top, Side::back, Side::front};
    case Face::right:
      break;
  }
  return {Side::top, Side::bottom, Side::back, Side::front};
}

std::optional<EdgeShare> shareOf(const Desk& desk, const Id& place) {
  const Feature* feature = desk.part().feature(place);
  const auto* edge = feature ? feature->as<kind::Edge>() : nullptr;
  if (edge == nullptr) return {};
  const Axis axis = edge->axis;
  if (edge->side) return EdgeShare{axis, outward(*edge->side) > 0 ? 1.0 : 0.0};
  const Position* own = desk.solution().position(place, axis);
  if (own == nullptr) return {};
  double low = own->ticks.toDouble(), high = low;
  for (const Feature& other : desk.part().features) {
    if (!other.is(FeatureKind::edge) || axisOf(other) != axis) continue;
    const Position* at = desk.solution().position(other.id, axis);
    if (at == nullptr || at->group != own->group) continue;
    low = std::min(low, at->ticks.toDouble());
    high = std::max(high, at->ticks.toDouble());
  }
  if (high <= low) return {};
  return EdgeShare{axis, (own->ticks.toDouble() - low) / (high - low)};
}

}  // namespace

/// One face of the unfolded box.
class FaceButton : public QPushButton {
 public:
  FaceButton(Face face, QWidget* parent) : QPushButton(parent), face_(face) {
    setCheckable(true);
    setAutoExclusive(true);
    setFocusPolicy(Qt::TabFocus);
  }

  Face face() const { return face_; }

  // Painted again only for a change: what shows through makes the print below be painted as well.
  void show(int features, bool current) {
    setChecked(current);
    if (count_ == features) return;
    count_ = features;
    const QString name = tr("%1 face, %n feature(s)", nullptr, features).arg(wordFor(face_));
    setAccessibleName(name);
    setToolTip(name);
    update();
  }

  void light(const std::vector<EdgeShare>& edges) {
    if (edges_ == edges) return;
    edges_ = edges;
    update();
  }

  QSize sizeHint() const override {
    const QFontMetrics metrics(deskFont(0.72));
    return {metrics.horizontalAdvance(QStringLiteral("bottom 00")) + 6, metrics.height() + 8};
  }
  QSize minimumSizeHint() const override { return sizeHint(); }

 protected:
  void paintEvent(QPaintEvent*) override {
    const Look& look = Look::now();
    QPainter painter(this);
    const QRectF box = QRectF(rect()).adjusted(1.5, 1.5, -1.5, -1.5);
    painter.fillRect(box, isChecked() ? look.wash : look.print);
    painter.setPen(QPen(isChecked() ? look.blue : look.faint, isChecked() ? 2.4 : 1));
    painter.drawRect(box);
    if (hasFocus()) {
      painter.setPen(QPen(look.blue, 1, Qt::DashLine));
      painter.drawRect(box.adjusted(3, 3, -3, -3));
    }
    painter.setPen(look.pencil);
    painter.setFont(deskFont(0.72));
    const QString count = count_ == 0 ? QStringLiteral("–") : QString::number(count_);
    painter.drawText(box, Qt::AlignCenter, wordFor(face_) + QLatin1Char(' ') + count);
    painter.setPen(QPen(look.blue, 3.2));
    for (const EdgeShare& edge : edges_) drawEdge(painter, box, edge);
  }

 private:
  void drawEdge(QPainter& painter, const QRectF& box, const EdgeShare& edge) const {
    const Borders borders = bordersOf(face_);
    const QRectF within = box.adjusted(1.6, 1.6, -1.6, -1.6);
    const auto axisOf = [](Side side) { return axisAcross(side); };
    if (axisOf(borders.right) == edge.axis) {
      const double share = outward(borders.right) > 0 ? edge.share : 1 - edge.share;
      const double x = within.left() + share * within.width();
      painter.drawLine(QPointF(x, within.top()), QPointF(x, within.bottom()));
    } else if (axisOf(borders.upper) == edge.axis) {
      const double share = outward(borders.upper) > 0 ? edge.share : 1 - edge.share;
      const double y = within.bottom() - share * within.height();
      painter.drawLine(QPointF(within.left(), y), QPointF(within.right(), y));
    }
  }

  Face face_;
  int count_ = -1;  ///< not told yet
  std::vector<EdgeShare> edges_;
};

FaceBox::FaceBox(Desk& desk, QWidget* print)
    : QWidget(print), desk_(desk), grid_(new QGridLayout(this)), angle_(new QPushButton(this)) {
  setObjectName(QStringLiteral("faces"));
  setAccessibleName(tr("The part unfolded: which face is looked at"));
  grid_->setContentsMargins(14, 10, 14, 14);
  grid_->setSpacing(0);
  for (int i = 0; i < 6; ++i) {
    auto* button = new FaceButton(static_cast<Face>(i), this);
    connect(button, &QPushButton::clicked, this,
            [this, button] { desk_.chooseFace(button->face()); });
    faces_.push_back(button);
  }
  angle_->setFocusPolicy(Qt::TabFocus);
  angle_->setFont(deskFont(0.72));
  angle_->setToolTip(tr("How the print lays out its views; a click changes it"));
  connect(angle_, &QPushButton::clicked, this, &FaceBox::turnAngle);
  connect(&desk, &Desk::edited, this, &FaceBox::follow);
  connect(&desk, &Desk::viewChanged, this, &FaceBox::follow);
  connect(&desk, &Desk::selectionChanged, this, &FaceBox::light);
  print->installEventFilter(this);
  follow();
}

Projection FaceBox::projection() const {
  // Where the print does not say, it is taken to be as most old prints are.
  return desk_.job().projection.value_or(Projection::first);
}

void FaceBox::follow() {
  std::array<int, 6> counts{};
  if (desk_.hasPart()) {
    for (const Feature& feature : desk_.part().features) {
      // An edge is a plane seen in several views and belongs to none of them.
      if (!feature.is(FeatureKind::edge)) ++counts[static_cast<std::size_t>(feature.face)];
    }
  }
  for (FaceButton* button : faces_) {
    const ViewPlace place = viewPlace(button->face(), projection());
    grid_->addWidget(button, place.row + 1, place.column + 1);
    button->show(counts[static_cast<std::size_t>(button->face())], button->face() == desk_.face());
  }
  const bool third = projection() == Projection::third;
  const QString words = third ? tr("third angle") : tr("first angle");
  angle_->setText(desk_.job().projection ? words : tr("%1?").arg(words));
  angle_->setAccessibleName(tr("Layout of the views: %1").arg(angle_->text()));
  grid_->addWidget(angle_, 2, 2, 1, 2, Qt::AlignRight | Qt::AlignBottom);
  light();
  stay();
}

void FaceBox::light() {
  std::vector<EdgeShare> edges;
  if (desk_.hasPart()) {
    for (const Id& place : desk_.selection().places) {
      if (const auto edge = shareOf(desk_, place)) edges.push_back(*edge);
    }
  }
  for (FaceButton* button : faces_) button->light(edges);
}

void FaceBox::turnAngle() {
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

void FaceBox::toggle() {
  setVisible(isHidden());
}

void FaceBox::stay() {
  adjustSize();
  // Lower left: dimensions stand beside the part at the left and below it, never in the corner
  // between.
  move(2, parentWidget()->height() - height() - 2);
}

bool FaceBox::eventFilter(QObject* watched, QEvent* event) {
  if (watched == parentWidget() && event->type() == QEvent::Resize) stay();
  return QWidget::eventFilter(watched, event);
}

void FaceBox::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  paintSlip(painter, QRectF(rect()).adjusted(6, 4, -6, -7));
}

}  // namespace inchwright::app

#include "moc_face_box.cpp"
