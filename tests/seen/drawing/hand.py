"""How one draughtsman letters: a typeface standing for a hand, and a manner of setting fractions."""
import re

from PIL import Image, ImageDraw, ImageFont

from .ink import FINER, THIN

T, O = "/usr/share/fonts/truetype/", "/usr/share/fonts/opentype/"
FACES = {
    "train": [T + "dejavu/DejaVuSans.ttf", T + "dejavu/DejaVuSans-Oblique.ttf", T + "dejavu/DejaVuSansCondensed.ttf",
              T + "osifont/osifont.ttf", T + "lato/Lato-Regular.ttf", T + "lato/Lato-Light.ttf",
              T + "routed-gothic/routed-gothic.ttf", T + "routed-gothic/routed-gothic-italic.ttf",
              T + "routed-gothic/routed-gothic-narrow.ttf", O + "urw-base35/NimbusSans-Regular.otf",
              O + "urw-base35/NimbusSansNarrow-Oblique.otf", O + "urw-base35/NimbusMonoPS-Regular.otf",
              O + "comic-neue/ComicNeue-Light.otf", O + "comic-neue/ComicNeue-Italic.otf",
              O + "urw-base35/URWGothic-BookOblique.otf", O + "b612/B612-Regular.otf", O + "b612/B612Mono-Italic.otf"],
    "held": [T + "dejavu/DejaVuSansCondensed-Oblique.ttf", T + "lato/Lato-LightItalic.ttf",
             T + "routed-gothic/routed-gothic-half-italic.ttf", T + "routed-gothic/routed-gothic-wide.ttf",
             O + "urw-base35/NimbusSans-Italic.otf", O + "urw-base35/URWGothic-Book.otf",
             O + "comic-neue/ComicNeue-Regular.otf"],
    "hand": [T + "humor-sans/Humor-Sans.ttf", T + "breip/Breip.ttf", T + "femkeklaver/femkeklaver.ttf"],
}
UNSTEADY = ("Comic", "Humor", "Breip", "femke")


class Lettering:
    """A mask (ink is 255) and where its characters lie on it."""

    def __init__(self, mask, glyphs, aside=False):
        self.mask, self.glyphs, self.aside = mask, glyphs, aside

    def trimmed(self):
        box = self.mask.getbbox() or (0, 0, 1, 1)
        return Lettering(self.mask.crop(box), [(c, l - box[0], t - box[1], r - box[0], b - box[1]) for c, l, t, r, b in self.glyphs])

    def turned(self):
        """Read from the right of the sheet."""
        w = self.mask.width
        return Lettering(self.mask.rotate(90, expand=True), [(c, t, w - r, b, w - l) for c, l, t, r, b in self.glyphs], True)


def _joined(placed, width, height):
    mask, glyphs = Image.new("L", (max(1, round(width)), max(1, round(height))), 0), []
    for piece, x, y in placed:
        x, y = round(x), round(y)
        mask.paste(255, (x, y), piece.mask)
        glyphs += [(c, l + x, t + y, r + x, b + y) for c, l, t, r, b in piece.glyphs]
    return Lettering(mask, glyphs)


class Hand:
    def __init__(self, random, faces, ppi):
        self.random = random
        self.path = random.choice(faces)
        self.cap = random.uniform(0.105, 0.145)
        self.s = ppi * FINER
        box = ImageFont.truetype(self.path, 200).getbbox("8")
        self.size_of_cap = 200 / (box[3] - box[1])
        self.form = random.choice(["stacked", "stacked", "slanted", "inline"])
        self.small = random.uniform(0.66, 0.82) if self.form == "stacked" else random.uniform(0.6, 0.75)
        self.wobble = 2.5 if any(w in self.path for w in UNSTEADY) else 0.6
        self.fonts = {}

    def _font(self, cap):
        size = max(6, round(cap * self.s * self.size_of_cap))
        if size not in self.fonts:
            self.fonts[size] = ImageFont.truetype(self.path, size)
        return self.fonts[size]

    def run(self, text, cap):
        """Plain characters; the base line is `pad` above the bottom. Returns (lettering, pad)."""
        font = self._font(cap)
        gap = max(1, round(cap * self.s * 0.12))
        box = font.getbbox("8")
        top, height = box[1], box[3] - box[1]
        pad = round(height * 0.35)
        pieces, x = [], 4
        for character in text:
            if character == " ":
                x += round(height * 0.45)
                continue
            b = font.getbbox(character)
            m = Image.new("L", (b[2] - b[0] + 8, height + 2 * pad), 0)
            ImageDraw.Draw(m).text((4 - b[0], pad - top), character, font=font, fill=255)
            m = m.rotate(self.random.gauss(0, self.wobble), Image.BICUBIC)
            dy = round(self.random.gauss(0, self.wobble * 0.004 * height))
            ink = m.point(lambda v: 255 if v > 100 else 0).getbbox()
            if ink:
                pieces.append((Lettering(m, [(character, *ink)]), x, dy))
            x += b[2] - b[0] + gap
        return _joined(pieces, x + 12, height + 2 * pad), pad

    def _stacked(self, over, under):
        unit = self.cap * self.s
        gap, bar = round(unit * 0.2), max(1, round(THIN * self.s * 1.2))
        width = max(over.mask.width, under.mask.width) + round(unit * 0.25)
        out = _joined([(over, (width - over.mask.width) / 2, 0),
                       (under, (width - under.mask.width) / 2, over.mask.height + 2 * gap + bar)],
                      width, over.mask.height + under.mask.height + 2 * gap + bar)
        ImageDraw.Draw(out.mask).rectangle((0, over.mask.height + gap, width, over.mask.height + gap + bar - 1), fill=255)
        return out, over.mask.height + gap

    def _slanted(self, over, under):
        unit = self.cap * self.s
        high, lean, gap = round(unit * 1.45), round(unit * 0.55), round(unit * 0.10)
        width = over.mask.width + under.mask.width + lean + 2 * gap
        out = _joined([(over, 0, 0), (under, width - under.mask.width, high - under.mask.height)], width, high)
        x0, x1 = over.mask.width + gap - round(lean * 0.05), over.mask.width + gap + lean
        ImageDraw.Draw(out.mask).line((x0, high - 2, x1, 2), fill=255, width=max(1, round(THIN * self.s * 1.2)))
        out.glyphs.append(("/", x0, 2, x1, high - 2))
        return out, high // 2

    def figure(self, text):
        """A figure with its fractions set in this hand's form; `|` sets what follows under what went before."""
        if "|" in text:
            rows = [self.figure(t) for t in text.split("|")]
            gap = round(self.cap * self.s * 0.35)
            y, placed = 0, []
            for row in rows:
                placed.append((row, 0, y))
                y += row.mask.height + gap
            return _joined(placed, max(r.mask.width for r in rows), y - gap).trimmed()
        pieces = []
        if self.form == "inline":
            pieces = [re.sub(r"(\d) (\d+/)", r"\1-\2", text)]
        else:
            pieces = [p for p in re.split(r"(\d+/\d+)", text) if p.strip()]
        unit, set_ = self.cap * self.s, []
        for piece in pieces:
            fraction = None if self.form == "inline" else re.fullmatch(r"(\d+)/(\d+)", piece)
            if not fraction:
                run, pad = self.run(piece.strip(), self.cap)
                set_.append((run, pad + round(unit / 2)))
                continue
            over, under = (self.run(t, self.cap * self.small)[0].trimmed() for t in fraction.groups())
            set_.append(self._stacked(over, under) if self.form == "stacked" else self._slanted(over, under))
        up = max(axis for _, axis in set_)
        down = max(piece.mask.height - axis for piece, axis in set_)
        x, placed = 0, []
        for piece, axis in set_:
            placed.append((piece, x, up - axis))
            x += piece.mask.width + round(unit * 0.10)
        return _joined(placed, x, up + down).trimmed()
