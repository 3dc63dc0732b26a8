#pragma once

#include <QByteArray>
#include <QString>
#include <vector>

#include "app/render/painting.h"
#include "core/base/result.h"
#include "core/sheet/draw_list.h"

namespace inchwright::app {

/// The pages as a PDF with vector text that can be searched. The same pages and title give the
/// same bytes: the dates inside are fixed ones. Requires: a QGuiApplication (headless.h), and for
/// equal bytes from run to run the fixed hash seed it sets. Errors: `badRequest` without pages,
/// `fileTrouble` when Qt can't write.
Result<QByteArray> renderPdf(const std::vector<Page>& pages, const QString& title);

/// One page as SVG, 1:1 in millimetres, with the faces it uses inside. Otherwise as `renderPdf`.
Result<QByteArray> renderSvg(const Page& page, const QString& title = {});

/// One page as PNG on white. Errors: `badRequest` unless the picture is 1 to 20 000 pixels wide
/// and high.
Result<QByteArray> renderPng(const Page& page, double pixelsPerMm);

}  // namespace inchwright::app
