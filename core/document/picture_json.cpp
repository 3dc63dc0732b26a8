#include "core/document/picture_json.h"

#include <array>
#include <charconv>
#include <cmath>

#include "core/document/base64.h"
#include "core/document/json_string.h"
#include "core/document/object_writer.h"

namespace inchwright {
namespace {

/// `[x, y]`: two JSON numbers that a double can hold.
void readPixel(ObjectReader& object, SquaringPoint& point) {
  std::array<double*, 2> into{&point.pixelX, &point.pixelY};
  std::size_t count = 0;
  object.each("pixel", [&](const JsonValue& item, const Where&) {
    const std::string_view raw = item.raw();
    double value = 0;
    const bool read =
        item.kind() == JsonKind::number &&
        std::from_chars(raw.data(), raw.data() + raw.size(), value).ec == std::errc{} &&
        std::isfinite(value);
    if (!read) return object.report("pixel", "a pixel is given by two numbers");
    if (count < into.size()) *into[count] = value;
    ++count;
  });
  if (count != into.size()) object.report("pixel", "a pixel is given by two numbers");
}

void readKnown(ObjectReader& object, SquaringPoint& point) {
  std::vector<std::string> texts;
  object.read("inches", texts);
  if (texts.size() != 2) return object.report("inches", "give two lengths, across and up");
  for (std::size_t i = 0; i < 2; ++i) {
    Result<Lettered> figure = readLength(texts[i], {Unit::inch});
    if (!figure) return object.report("inches", figure.error().text, figure.error().at);
    (i == 0 ? point.x : point.y) = *std::move(figure);
  }
}

SquaringPoint readPoint(const JsonValue& value, const Where& where, Trouble& trouble) {
  SquaringPoint point;
  ObjectReader object(value, where, trouble);
  readPixel(object, point);
  readKnown(object, point);
  return point;
}

void appendNumber(std::string& out, double number) {
  std::array<char, 32> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), number).ptr;
  out.append(text.data(), end);
}

void writePoint(std::string& out, const SquaringPoint& point) {
  ObjectWriter object(out);
  std::string& pixel = object.value("pixel");
  pixel += '[';
  appendNumber(pixel, point.pixelX);
  pixel += ", ";
  appendNumber(pixel, point.pixelY);
  pixel += ']';
  object.textsIfAny("inches", {point.x.text, point.y.text});
  object.close();
}

}  // namespace

Picture readPicture(const JsonValue& value, const Where& where, Trouble& trouble) {
  Picture picture;
  ObjectReader object(value, where, trouble);
  if (!object.require("name", "every picture has one")) return picture;
  object.read("name", picture.name);
  object.read("file", picture.file);
  object.read("page", picture.page);
  object.read("turn", picture.turn);
  object.each("points", [&](const JsonValue& item, const Where& here) {
    picture.points.push_back(readPoint(item, here, trouble));
  });
  if (const std::optional<std::string> text = object.textOf("data")) {
    std::optional<std::string> bytes = fromBase64(*text);
    if (!bytes) object.report("data", "this is no base64 (RFC 4648)");
    if (bytes) picture.data = PictureBytes(*std::move(bytes));
  }
  object.read("brightness", picture.tone.brightness);
  object.read("contrast", picture.tone.contrast);
  object.read("fade", picture.tone.fade);
  picture.extra = object.rest();
  return picture;
}

void writePicture(std::string& out, const Picture& picture) {
  ObjectWriter object(out);
  object.text("name", picture.name);
  object.textIfAny("file", picture.file);
  if (picture.page != 1) object.whole("page", picture.page);
  if (picture.turn != 0) object.whole("turn", picture.turn);
  const auto tone = [&object](std::string_view name, int value) {
    if (value != 0) object.whole(name, value);
  };
  tone("brightness", picture.tone.brightness);
  tone("contrast", picture.tone.contrast);
  tone("fade", picture.tone.fade);
  if (!picture.points.empty()) {
    std::string& list = object.value("points");
    const char* before = "[";
    for (const SquaringPoint& point : picture.points) {
      list += before;
      before = ", ";
      writePoint(list, point);
    }
    list += ']';
  }
  if (!picture.data.empty()) {
    std::string& text = object.value("data");
    text += '"';
    appendBase64(text, picture.data.get());
    text += '"';
  }
  object.rest(picture.extra);
  object.close();
}

PictureView readPictureView(const JsonValue& value, const Where& where, Trouble& trouble) {
  PictureView view;
  ObjectReader object(value, where, trouble);
  if (!object.require("picture", "name the picture")) return view;
  object.readWord("face", view.face, faceNamed, 6);
  object.read("picture", view.picture);
  object.read("at", view.at);
  object.read("turn", view.turn);
  view.extra = object.rest();
  return view;
}

void writePictureView(std::string& out, const PictureView& view) {
  ObjectWriter object(out);
  object.text("face", nameOf(view.face));
  object.text("picture", view.picture);
  object.textsIfAny("at", view.at);
  if (view.turn != 0) object.whole("turn", view.turn);
  object.rest(view.extra);
  object.close();
}

}  // namespace inchwright
