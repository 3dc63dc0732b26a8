"""One view of a part on the sheet: outlines, holes, dimensions and notes."""

import math

from drawing.paper import BROKEN, CHAIN, OUTLINE, THIN

ARROW = 0.13
PAST = 0.06  # an extension line runs past its dimension line
SHORT = 0.05  # and begins short of the outline


class View:
    """`origin` is where the part's own zero lies on the sheet; `axes` run right and up."""

    def __init__(self, sheet, drawn, name, axes, origin, bounds, face="top", scale=1.0):
        self.sheet, self.drawn, self.name, self.axes = sheet, drawn, name, axes
        self.origin, self.face, self.scale = origin, face, scale
        self.bounds = bounds  # of the outline, part inches: left, low, right, high
        self.reach = {}  # how far each extension line has to go

    def on(self, x, y):
        return self.origin[0] + x * self.scale, self.origin[1] + y * self.scale

    def place(self, name):
        return tuple(self.drawn(name, axis) for axis in self.axes)

    def outline(self):
        left, low, right, high = self.bounds
        corners = [(left, low), (right, low), (right, high), (left, high)]
        for start, end in zip(corners, corners[1:] + corners[:1]):
            self.sheet.line(self.on(*start), self.on(*end), OUTLINE)

    def hole(self, name, diameter, mark=True, thread=None):
        centre = self.on(*self.place(name))
        radius = diameter * self.scale / 2
        self.sheet.arc(centre, radius)
        if thread:
            self.sheet.arc(centre, thread * self.scale / 2, 20, 290, THIN)
        if mark:
            self.mark(name, max(radius, (thread or 0) * self.scale / 2) + 0.09)

    def mark(self, name, reach=0.12):
        x, y = self.on(*self.place(name))
        self.sheet.line((x - reach, y), (x + reach, y), THIN)
        self.sheet.line((x, y - reach), (x, y + reach), THIN)

    def slot(self, name, axis, width, length):
        x, y = self.on(*self.place(name))
        half, run = width * self.scale / 2, (length - width) * self.scale / 2
        along = axis == self.axes[0]

        def point(on, off):
            """So far along the slot and so far across it, from its middle."""
            return (x + on, y + off) if along else (x - off, y + on)

        for side in (-half, half):
            self.sheet.line(point(-run, side), point(run, side), OUTLINE)
        turn = 0 if along else 90
        self.sheet.arc(point(run, 0), half, turn - 90, turn + 90)
        self.sheet.arc(point(-run, 0), half, turn + 90, turn + 270)
        past = half + 0.09
        self.sheet.line(point(-run - past, 0), point(run + past, 0), THIN)
        self.sheet.line(point(0, -past), point(0, past), THIN)

    def hidden_hole(self, name, diameter, across, depth=None):
        """A hole seen from the side: its axis along `across`, from the low (or near) side."""
        index = self.axes.index(across)
        low, high = self.bounds[index], self.bounds[index + 2]
        end = high if depth is None else low + depth
        middle = self.drawn(name, self.axes[1 - index])
        for offset in (-diameter / 2, diameter / 2):
            self._run(index, middle + offset, low, end, BROKEN)
        if depth is not None:
            a, b = middle - diameter / 2, middle + diameter / 2
            self._run(1 - index, end, a, b, BROKEN)
        self._run(index, middle, low - 0.08 / self.scale, end + 0.08 / self.scale, CHAIN)

    def _run(self, index, other, start, end, dash):
        points = [(v, other) if index == 0 else (other, v) for v in (start, end)]
        self.sheet.line(self.on(*points[0]), self.on(*points[1]), THIN, dash)

    def centre_line(self, axis, at, past=0.2):
        index = self.axes.index(axis)
        past /= self.scale
        low, high = self.bounds[1 - index] - past, self.bounds[3 - index] + past
        self._run(1 - index, at, low, high, CHAIN)

    # Turned work, seen from the side: its axis level at 0

    def turned(self):
        """All that lies between two shoulders, each with the line of its ends."""
        left, low, right, high = self.bounds
        for feature in self.drawn.features.values():
            if "between" in feature:
                self._stretch(feature)
        self._run(0, 0, left - 0.12 / self.scale, right + 0.12 / self.scale, CHAIN)

    def radii(self, feature):
        """Half its diameter at either end, from left to right."""
        if feature["kind"] == "screwed":
            half = self.drawn.thread(feature["id"]) / 2
            return half, half
        if feature["kind"] != "taper":
            half = self.drawn.size(feature["id"], "diameter") / 2
            return half, half
        a, b = (self.drawn(edge, "x") for edge in feature["between"])
        large = self.drawn.size(feature["id"], "large") / 2
        small = large - self.drawn.size(feature["id"], "per_foot") * (b - a) / 24
        return (large, small) if feature["large_at"] == feature["between"][0] else (small, large)

    def _stretch(self, feature):
        a, b = (self.drawn(edge, "x") for edge in feature["between"])
        first, last = self.radii(feature)
        bored = feature["kind"] == "bored"
        for side in (-1, 1):
            ends = self.on(a, side * first), self.on(b, side * last)
            self.sheet.line(*ends, *((THIN, BROKEN) if bored else (OUTLINE,)))
            if feature["kind"] == "screwed":
                root = side * first * 0.76
                self.sheet.line(self.on(a, root), self.on(b, root), THIN)
        if bored:
            return
        for at, half in ((a, first), (b, last)):
            self.sheet.line(self.on(at, -half), self.on(at, half), OUTLINE)

    def surface(self, name, share=0.5):
        """A point on the upper line of a stretch, so far along it."""
        feature = self.drawn.features[name]
        a, b = (self.drawn(edge, "x") for edge in feature["between"])
        first, last = self.radii(feature)
        return self.on(a + (b - a) * share, first + (last - first) * share)

    # Dimensions

    def _extend(self, name, index, to):
        """Notes that an extension line of `name` has to reach sheet offset `to` across the axis."""
        key = (name, index, to > self.bounds[1 - index] * self.scale)
        furthest = self.reach.get(key, to)
        self.reach[key] = max(furthest, to) if key[2] else min(furthest, to)

    def extensions(self):
        """Draws the extension lines all at once, each as one line."""
        for (name, index, upward), to in self.reach.items():
            at = self.drawn(name, self.axes[index]) * self.scale
            to += PAST if upward else -PAST
            kind = self.drawn.features.get(name, {}).get("kind", "hole")
            if kind == "edge":
                side = self.bounds[(3 if upward else 1) - index] * self.scale
                start, dash = side + (SHORT if upward else -SHORT), None
            else:
                start = self.drawn(name, self.axes[1 - index]) * self.scale
                dash = None if kind == "round" else CHAIN
            ends = [(at, v) if index == 0 else (v, at) for v in (start, to)]
            ends = [(self.origin[0] + x, self.origin[1] + y) for x, y in ends]
            self.sheet.line(ends[0], ends[1], THIN, dash)

    def dim(self, reading, at, shift=0.0, beyond=1):
        """A reading as a dimension line at offset `at` (sheet inches from zero, across its axis).

        `shift` moves the figure along the line; `beyond` says at which end (1 or -1) a figure that
        does not fit between the arrows is lettered.
        """
        entry = self.drawn.readings[reading]
        self.span(entry["from"], entry["to"], entry["axis"], entry["text"], at, shift, beyond)

    def span(self, start, end, axis, text, at, shift=0.0, beyond=1):
        index = self.axes.index(axis)
        self._extend(start, index, at)
        self._extend(end, index, at)
        a = self.origin[index] + self.drawn(start, axis) * self.scale
        b = self.origin[index] + self.drawn(end, axis) * self.scale
        across = self.origin[1 - index] + at
        lines = text.split(" ±") if index == 1 else [text]
        if len(lines) == 2:
            lines[1] = "±" + lines[1]
        sizes = [self.sheet.text_size(line) for line in lines]
        height = sum(up + down for _, up, down in sizes) + 0.05 * (len(lines) - 1)
        needs = (sizes[0][0] if index == 0 else height) + 0.05

        def point(v):
            return (v, across) if index == 0 else (across, v)

        if b - a >= needs + 2 * ARROW + 0.06:
            self.sheet.line(point(a), point(b))
            self.sheet.arrow(point(a), point(b))
            self.sheet.arrow(point(b), point(a))
            middle = (a + b) / 2 + shift
        else:
            tail = 2.0 * ARROW
            self.sheet.line(point(a), point(a - tail))
            self.sheet.line(point(b), point(b + tail))
            self.sheet.arrow(point(a), point(a - 1))
            self.sheet.arrow(point(b), point(b + 1))
            middle = (a + b) / 2 + shift
            if b - a < needs:
                middle = (b + tail + needs / 2 if beyond > 0 else a - tail - needs / 2) + shift
        x, y = point(middle)
        y += height / 2
        for line, (_, up, down) in zip(lines, sizes):
            self.sheet.text((x, y - up), line, align="centre")
            y -= up + down + 0.05

    def slant(self, reading, off=0.0, share=0.5):
        """A centre distance along the line from place to place, `off` sheet inches to its left;
        `share` says how far along the figure stands."""
        entry = self.drawn.readings[reading]
        a, b = (self.on(*self.place(entry[end])) for end in ("from", "to"))
        length = math.dist(a, b)
        ux, uy = (b[0] - a[0]) / length, (b[1] - a[1]) / length
        if off:
            past = off + math.copysign(PAST, off)
            for x, y in (a, b):
                self.sheet.line((x, y), (x - uy * past, y + ux * past))
        a, b = ((x - uy * off, y + ux * off) for x, y in (a, b))
        self.sheet.line(a, b)
        self.sheet.arrow(a, b)
        self.sheet.arrow(b, a)
        _, up, down = self.sheet.text_size(entry["text"])
        x, y = a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share
        self.sheet.text((x, y - (up - down) / 2), entry["text"], align="centre")

    def turn(self, reading, radius):
        """An angle from the level line through its first place, `radius` sheet inches out."""
        entry = self.drawn.readings[reading]
        x, y = self.on(*self.place(entry["from"]))
        degrees = float(entry["text"]) * (-1 if entry.get("sense") == "clockwise" else 1)
        self.sheet.line((x, y), (x + radius + PAST, y))
        low, high = sorted((0.0, degrees))
        self.sheet.arc((x, y), radius, low, high, THIN)

        def point(angle, out=radius):
            turned = math.radians(angle)
            return x + out * math.cos(turned), y + out * math.sin(turned)

        back = math.degrees(ARROW / radius)
        self.sheet.arrow(point(high), point(high - back))
        self.sheet.arrow(point(low), point(low + back))
        text = entry["text"] + "°"
        width, up, down = self.sheet.text_size(text)
        at = point((low + high) / 2, radius + 0.06 + width / 2)
        self.sheet.text((at[0], at[1] - (up - down) / 2), text, align="centre")

    def leader(self, tip, elbow, lines, side=1):
        """A note with a leader that ends in an arrow at `tip`; its shelf runs to `side`."""
        shelf = (elbow[0] + 0.12 * side, elbow[1])
        self.sheet.line(tip, elbow)
        self.sheet.line(elbow, shelf)
        self.sheet.arrow(tip, elbow)
        first = self.sheet.text_size(lines[0])
        y = elbow[1] - (first[1] - first[2]) / 2
        for line in lines:
            up, down = self.sheet.text_size(line)[1:]
            if line is not lines[0]:
                y -= up + 0.06
            align = "left" if side > 0 else "right"
            self.sheet.text((shelf[0] + 0.06 * side, y), line, align=align)
            y -= down

    def rim(self, name, diameter, angle):
        """The point of a hole's rim at an angle, on the sheet."""
        x, y = self.on(*self.place(name))
        radius, turn = diameter * self.scale / 2, math.radians(angle)
        return x + radius * math.cos(turn), y + radius * math.sin(turn)
