#pragma once

#include <QPixmap>
#include <QString>

#include "core/part/job.h"
#include "core/solution/solution.h"

namespace inchwright::app {

/// A part as it lies in its first setup, so large in device-independent pixels; bare paper where
/// nothing can be drawn of it yet.
QPixmap drawingOf(const Job& job, const Part& part, const Solution& solution, const QSize& size,
                  qreal density);

/// What a file holds, small: a picture or the first page of a PDF no larger than `size`, or the
/// first part of a job; null of anything else, and of files too large to look into in passing.
QPixmap smallPicture(const QString& file, const QSize& size, qreal density);

}  // namespace inchwright::app
