#include "app/doubts/doubt_mark.h"

namespace inchwright::app {

QString markOf(const Doubt& doubt) {
  if (doubt.accepted) return QStringLiteral("✓ ");
  switch (doubt.key.topic) {
    case DoubtTopic::clash:
      return QStringLiteral("≠ ");
    case DoubtTopic::alone:
    case DoubtTopic::misfit:
      return QStringLiteral("· ");
    default:
      return QStringLiteral("? ");
  }
}

bool contradicts(const Doubt& doubt) {
  switch (doubt.key.topic) {
    case DoubtTopic::clash:
    case DoubtTopic::crossedSides:
    case DoubtTopic::sameSide:
    case DoubtTopic::outside:
    case DoubtTopic::breaksEdge:
    case DoubtTopic::holesMeet:
    case DoubtTopic::swappedEnds:
    case DoubtTopic::wrongWay:
    case DoubtTopic::offTrace:
    case DoubtTopic::oddSizes:
    case DoubtTopic::size:
    case DoubtTopic::readTwice:
      return doubt.holdsUp();
    default:
      return false;
  }
}

}  // namespace inchwright::app
