"""Ink on paper: a sheet finer than its copy, in inches from the bottom left corner, y up."""
import math

from PIL import Image, ImageDraw

FINER = 2
OUTLINE, THIN = 0.020, 0.008
CENTRE, BROKEN = (0.22, 0.045, 0.05, 0.045), (0.09, 0.045)


class Sheet:
    """What is drawn, `FINER` times as fine as the copy of `ppi` pixels an inch."""

    def __init__(self, width, height, ppi):
        self.width, self.height, self.ppi = width, height, ppi
        self.s = ppi * FINER
        self.image = Image.new("L", (round(width * self.s), round(height * self.s)), 255)
        self.pen = ImageDraw.Draw(self.image)

    def dot(self, p):
        return p[0] * self.s, (self.height - p[1]) * self.s

    def pixel(self, p):
        """A place in the copy; pixel centres are whole numbers."""
        return p[0] * self.ppi - 0.5, (self.height - p[1]) * self.ppi - 0.5

    def place(self, x, y):
        """The inches of a dot of the fine image."""
        return x / self.s, self.height - y / self.s

    def _stroke(self, dots, weight):
        self.pen.line(dots, fill=0, width=max(1, round(weight * self.s)), joint="curve")

    def line(self, a, b, weight=THIN, dashes=None):
        self.path([a, b], weight, dashes)

    def path(self, points, weight=THIN, dashes=None):
        """A line through points, broken into dashes and gaps where those are given."""
        if not dashes:
            self._stroke([self.dot(p) for p in points], weight)
            return
        left, on, which = dashes[0], True, 0
        stretch = [points[0]]
        for a, b in zip(points, points[1:]):
            length = math.dist(a, b)
            at = 0.0
            while length - at > left:
                at += left
                t = at / length
                p = (a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t)
                if on:
                    self._stroke([self.dot(q) for q in [*stretch, p]], weight)
                stretch, on = [p], not on
                which = (which + 1) % len(dashes)
                left = dashes[which]
            left -= length - at
            stretch.append(b)
        if on and len(stretch) > 1:
            self._stroke([self.dot(q) for q in stretch], weight)

    def arc(self, centre, radius, begin=0.0, end=360.0, weight=OUTLINE, dashes=None):
        """Anticlockwise from `begin` to `end`, degrees."""
        count = max(16, int(radius * self.s * (end - begin) / 360))
        turn = [math.radians(begin + (end - begin) * i / count) for i in range(count + 1)]
        self.path([(centre[0] + radius * math.cos(t), centre[1] + radius * math.sin(t)) for t in turn], weight, dashes)

    def disc(self, centre, radius, fill):
        x, y = self.dot(centre)
        r = radius * self.s
        self.pen.ellipse((x - r, y - r, x + r, y + r), fill=fill)

    def head(self, tip, back, kind, size):
        """The end of a dimension line at `tip`; the line runs on towards `back`."""
        angle = math.atan2(back[1] - tip[1], back[0] - tip[0])
        if kind == "tick":
            half = size * 0.42
            lean = angle + math.pi / 4
            dx, dy = half * math.cos(lean) * math.sqrt(2), half * math.sin(lean) * math.sqrt(2)
            self.line((tip[0] - dx, tip[1] - dy), (tip[0] + dx, tip[1] + dy), THIN * 1.7)
            return
        if kind == "dot":
            self.disc(tip, size * 0.24, 0)
            return
        half = size * (0.18 if kind == "filled" else 0.26)
        barbs = [(tip[0] + size * math.cos(angle) - s * half * math.sin(angle),
                  tip[1] + size * math.sin(angle) + s * half * math.cos(angle)) for s in (-1, 1)]
        if kind == "filled":
            self.pen.polygon([self.dot(p) for p in (tip, *barbs)], fill=0)
        else:
            for barb in barbs:
                self.line(tip, barb)

    def clear(self, centre, width, height):
        """Rubs out a box, sizes in inches."""
        x, y = self.dot(centre)
        w, h = width * self.s / 2, height * self.s / 2
        self.pen.rectangle((x - w, y - h, x + w, y + h), fill=255)

    def stamp(self, lettering, centre):
        """Inks lettering centred at a place; its glyphs as [(character, left, bottom, right, top, turned)],
        inches."""
        x, y = self.dot(centre)
        x, y = round(x - lettering.mask.width / 2), round(y - lettering.mask.height / 2)
        self.image.paste(0, (x, y), lettering.mask)
        placed = []
        for character, left, top, right, bottom in lettering.glyphs:
            a, b = self.place(x + left, y + bottom), self.place(x + right, y + top)
            placed.append((character, a[0], a[1], b[0], b[1], lettering.aside))
        return placed

    def copy(self):
        return self.image.resize((round(self.width * self.ppi), round(self.height * self.ppi)), Image.BOX)
