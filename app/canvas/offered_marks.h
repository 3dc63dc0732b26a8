#pragma once

#include <QPainter>
#include <vector>

#include "app/canvas/picture_layer.h"
#include "app/canvas/print_painter.h"
#include "app/session/work.h"

namespace inchwright::app {

/// What is offered on this face, to be drawn in faint pencil; nothing while it is not gone through.
std::vector<PrintScene::Offered> offeredMarks(const Work& work);

/// The lit dimension of what is offered, enlarged on a pane of this size: its figure, its line and
/// both ends; of a place whose size is offered, the note.
void paintOfferedCut(QPainter& painter, const Work& work, const PictureLayer& layer,
                     const PrintMap& map, const QSize& pane);

}  // namespace inchwright::app
