"""A sheet of drawing paper: ink lines, lettering, and the copy that was made of it years later.

Sheet coordinates are inches from the bottom left corner, y up.
"""

import math
import random

import numpy
from PIL import Image, ImageDraw, ImageFilter

from drawing import lettering

FINER = 3  # drawn so many times finer than the copy, then scaled down

OUTLINE = 0.021
THIN = 0.008
FRAME = 0.030
CHAIN = (0.22, 0.045, 0.05, 0.045)  # centre line: on, off, on, off
BROKEN = (0.09, 0.045)  # hidden detail
LETTER = 0.108  # height of capitals


class Sheet:
    def __init__(self, width, height, pixels_per_inch, seed):
        self.width, self.height, self.ppi = width, height, pixels_per_inch
        self.hand = random.Random(seed)
        self.scale = pixels_per_inch * FINER
        self.image = Image.new("L", (round(width * self.scale), round(height * self.scale)), 255)
        self.ink = ImageDraw.Draw(self.image)
        self.words = []  # (text, box, lines), inked last so that no line runs through a figure
        self.turned = 0.0

    def _at(self, point):
        return point[0] * self.scale, (self.height - point[1]) * self.scale

    def _stroke(self, points, weight):
        pen = max(1, round(weight * self.scale))
        pixels = [self._at(p) for p in points]
        self.ink.line(pixels, fill=0, width=pen, joint="curve")
        if pen > 3:
            for x, y in (pixels[0], pixels[-1]):
                half = pen / 2 - 0.5
                self.ink.ellipse((x - half, y - half, x + half, y + half), fill=0)

    def line(self, start, end, weight=THIN, dash=None):
        if not dash:
            return self._stroke([start, end], weight)
        return self._dashed(*sorted((start, end)), weight, dash)

    def _dashed(self, start, end, weight, dash):
        """Upright and level lines only. Dashes keep to the sheet: lines over one another agree."""
        index = 0 if start[1] == end[1] else 1
        at, i = math.floor(start[index] / sum(dash)) * sum(dash), 0
        while at < end[index]:
            stop = at + dash[i % len(dash)]
            on, off = max(at, start[index]), min(stop, end[index])
            if i % 2 == 0 and off > on:
                ends = [(v, start[1]) if index == 0 else (start[0], v) for v in (on, off)]
                self._stroke(ends, weight)
            at, i = stop, i + 1

    def arc(self, centre, radius, start=0, end=360, weight=OUTLINE, dash=None):
        if not dash:
            steps = max(16, int(abs(end - start) * radius * self.ppi / 120))
            angles = [math.radians(start + (end - start) * i / steps) for i in range(steps + 1)]
            self._stroke([(centre[0] + radius * math.cos(a), centre[1] + radius * math.sin(a))
                          for a in angles], weight)
            return
        at, i = start, 0
        while at < end:
            stop = min(end, at + math.degrees(dash[i % len(dash)] / radius))
            if i % 2 == 0:
                self.arc(centre, radius, at, stop, weight)
            at, i = stop, i + 1

    def arrow(self, tip, back, length=0.13):
        """An arrowhead at `tip` that comes from the direction of `back`."""
        angle = math.atan2(back[1] - tip[1], back[0] - tip[0])
        length *= 1 + self.hand.gauss(0, 0.05)
        half = length * 0.17
        corner = []
        for side in (-1, 1):
            corner.append((tip[0] + length * math.cos(angle) - side * half * math.sin(angle),
                           tip[1] + length * math.sin(angle) + side * half * math.cos(angle)))
        self.ink.polygon([self._at(p) for p in (tip, *corner)], fill=0)

    def text_size(self, text, height=LETTER):
        width, up, down = lettering.measure(text)
        unit = height / lettering.CAP
        return width * unit, up * unit, down * unit

    def text(self, at, text, height=LETTER, align="left", clear=True):
        """Letters a text with its baseline at `at`; lines beneath it are broken where `clear`."""
        width, up, down = self.text_size(text, height)
        left = at[0] - {"left": 0, "centre": 0.5, "right": 1}[align] * width
        pad = 0.035
        box = (left - pad, at[1] - down - pad, left + width + pad, at[1] + up + pad)
        unit = height / lettering.CAP
        lines = [[(left + x * unit, at[1] + y * unit) for x, y in line]
                 for line in lettering.strokes(text, self.hand)]
        self.words.append((text, box, lines, height * 0.115, clear))
        return box

    def overlaps(self):
        """Pairs of texts that run into one another, for whoever changes a layout."""
        found = []
        for i, (one, a, *_) in enumerate(self.words):
            if a[0] < 0.2 or a[1] < 0.2 or a[2] > self.width - 0.2 or a[3] > self.height - 0.2:
                found.append((one, "the edge of the sheet"))
            for other, b, *_ in self.words[i + 1:]:
                apart = max(a[0] - b[2], b[0] - a[2], a[1] - b[3], b[1] - a[3])
                if apart < -0.06:  # the clear space around each may overlap
                    found.append((one, other))
        return found

    def _letter(self):
        for _, box, _, _, clear in self.words:
            if clear:
                left, top = self._at((box[0], box[3]))
                right, bottom = self._at((box[2], box[1]))
                self.ink.rectangle((left, top, right, bottom), fill=255)
        for _, _, lines, weight, _ in self.words:
            for line in lines:
                self._stroke(line, weight)

    def copy(self, turned=0.0):
        """The sheet as a copy of it looks: uneven ink, grey paper, specks, a little askew."""
        self._letter()
        self.turned = turned
        size = (round(self.width * self.ppi), round(self.height * self.ppi))
        small = self.image.resize(size, Image.BOX)
        small = small.filter(ImageFilter.GaussianBlur(0.55))
        if turned:
            small = small.rotate(turned, Image.BICUBIC, fillcolor=255)
        grain = numpy.random.default_rng(self.hand.randrange(1 << 30))
        cover = 1 - numpy.asarray(small, dtype=float) / 255
        cover *= 0.86 + 0.10 * _clouds(grain, size, 9)
        tone = 230 * (1 - cover) + 38 * cover
        fibres = grain.random(tone.shape) > 0.988
        tone[fibres] -= 5
        specks = grain.random(tone.shape) > 0.99988
        tone[specks] -= grain.integers(30, 120, int(specks.sum()))
        tone = numpy.clip(numpy.round(tone / 5) * 5, 0, 255).astype(numpy.uint8)
        return Image.fromarray(tone, "L")

    def pixel(self, point):
        """Where a point of the sheet lies in the copy, in pixels from its top left corner."""
        x, y = point[0] * self.ppi, (self.height - point[1]) * self.ppi
        cx, cy = round(self.width * self.ppi) / 2, round(self.height * self.ppi) / 2
        a = math.radians(self.turned)
        dx, dy = x - cx, y - cy
        return (round(cx + dx * math.cos(a) + dy * math.sin(a), 2),
                round(cy - dx * math.sin(a) + dy * math.cos(a), 2))


def _clouds(grain, size, blur):
    """Slow variation over the sheet, about 0 ± 1."""
    coarse = (max(2, size[0] // blur), max(2, size[1] // blur))
    values = grain.normal(0, 0.5, (coarse[1], coarse[0])).clip(-1, 1)
    image = Image.fromarray((values * 127 + 128).astype(numpy.uint8), "L")
    return (numpy.asarray(image.resize(size, Image.BICUBIC), dtype=float) - 128) / 127
