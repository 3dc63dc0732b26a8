"""A random plate as somebody would have drawn it, with what was meant."""
import math
import pathlib
import random as randoms
from fractions import Fraction as F

from .hand import FACES, Hand
from .ink import CENTRE, OUTLINE, THIN, Sheet
from .more import angle, centres, cut_corner, radius_note, ring_note, rounds, row, shapes, side_view
from .places import depth, intervals, lanes, lettered, spread

MORE = {"slanted": centres, "angles": angle, "views": side_view, "shapes": shapes}
INCH_TICKS, MM_TICKS = 2_540_000_000, 100_000_000


class Style:
    def __init__(self, random, hand):
        self.head = random.choice(["filled", "filled", "open", "tick", "dot" if random.random() < 0.3 else "filled"])
        self.size = random.uniform(0.11, 0.15)
        self.broken = random.random() < (0.85 if hand.form == "stacked" else 0.45)
        self.aligned = random.random() < (0.25 if self.broken else 0.8)
        self.solid = random.random() < 0.4   # lines that carry a hole out of the plate are not broken
        self.clears = random.random() < 0.9  # lettering is not run through


class Plate:
    """Draws one print; `truth` holds what is on it, places in inches of the face."""

    def __init__(self, seed, faces="train", unit="in", misprint=0.0, extras=(), ppi=None):
        self.random = r = randoms.Random(f"plate {seed}")
        self.extras, self.misprint = set(extras), misprint
        ppi = ppi or r.choice([150, 175, 200, 200, 220, 250, 300])
        self.mode = unit if unit == "mm" else ("decimal" if r.random() < 0.15 else "fraction")
        self.unit = F(1, 2) if unit == "mm" else r.choice([F(1, 16), F(1, 16), F(1, 32), F(1, 32), F(1, 64)])
        self.per_inch = F(254, 10) if unit == "mm" else F(1)
        self.W, self.H = (F(r.randrange(a * 16, b * 16), 32) for a, b in ((5, 9), (4, 7)))
        if unit == "mm":
            self.W, self.H = F(round(self.W * self.per_inch)), F(round(self.H * self.per_inch))
        self.scale = r.choice([1, 1, 1.5, 2]) if self.W / self.per_inch < 3.3 else 1
        self.q = self.scale / float(self.per_inch)  # sheet inches a print unit
        self.hand = Hand(r, FACES["train"] + FACES["held"] if faces == "all" else FACES[faces], ppi)
        self.style = Style(r, self.hand)
        self._features()
        self.row, self.rounds, self.ring = row(self, seed), rounds(self, seed), None
        self.cut = cut_corner(self, seed)
        self._ends()
        self._lanes(ppi)
        self.heads, self.glyphs, self.lettering = [], [], []
        self.truth = {"seed": seed, "ppi": ppi, "scale": self.scale, "unit": unit, "features": [], "readings": [], "notes": [],
                      "style": {"form": self.hand.form, **vars(self.style), "typeface": pathlib.Path(self.hand.path).stem, "cap": self.hand.cap}}

    # What there is.
    def _features(self):
        r, W, H, u, q = self.random, self.W, self.H, self.unit, self.q
        wide = self.hand.figure("18.5" if self.mode == "mm" else "11/32").mask.width / self.hand.s + 0.10
        least = F((0.34 if self.hand.form == "stacked" else wide) / q).limit_denominator(4)
        xs, ys = spread(r, r.randint(3, 5), W, least, u), spread(r, r.randint(2, 4), H, least, u)
        cells = [(x, y) for x in xs for y in ys]
        r.shuffle(cells)
        chosen = cells[:r.randint(min(6, len(cells)), min(14, len(cells)))]
        self.sizes = [F(r.randrange(6, 20), 2) if self.mode == "mm" else F(r.randrange(6, 25), 64) for _ in range(3)]
        self.holes = [(x, y, r.choice(self.sizes)) for x, y in chosen]
        xs, ys = sorted({h[0] for h in self.holes}), sorted({h[1] for h in self.holes})
        self.step = None
        if r.random() < 0.4:
            sx, sy = (a + (b - a) / 2 // u * u for a, b in ((xs[-1], W), (ys[-1], H)))
            if min(W - sx, H - sy) * F(q) > 0.15 and (sx - xs[-1]) * F(q) > 0.25 and (sy - ys[-1]) * F(q) > 0.25:
                self.step = (sx, sy)

    def _ends(self):
        """The places that dimensions end at; of a row the outer holes alone."""
        inner = self.row["holes"][1:-1] if self.row else []
        xs, ys = (sorted({h[k] for h in self.holes if h not in inner}) for k in (0, 1))
        stepped = lambda i: [(self.step[i], "edge")] if self.step else []
        self.ends = {"x": [(F(0), "edge"), *((x, "hole") for x in xs), *stepped(0), (self.W, "edge")],
                     "y": [(F(0), "edge"), *((y, "hole") for y in ys), *stepped(1), (self.H, "edge")]}

    def _lanes(self, ppi):
        r = self.random
        self.lanes = {a: lanes(r, intervals(r, len(self.ends[a])), self._room(a)) for a in "xy"}
        self.pitch = {"x": r.uniform(0.40, 0.5), "y": r.uniform(0.62, 0.75)}
        pw, ph = float(self.W) * self.q, float(self.H) * self.q
        deep = lambda a, s: self.pitch[a] * depth(self.lanes[a], s)
        self.right = 0.9 + deep("y", 1)
        self.org = (0.9 + deep("y", -1), 1.8 + deep("x", -1))
        self.side_view = 1.3 if "views" in self.extras else 0.0
        size = (self.org[0] + pw + self.right + 1.9 + self.side_view, self.org[1] + ph + 1.6 + deep("x", 1))
        self.sheet = Sheet(*size, ppi)
        self.pw, self.ph = pw, ph

    def _room(self, axis):
        """Arrows outside a short line need room of their own; one hand in five does not mind."""
        careful, tail = self.random.random() < 0.8, 2.2 * self.style.size

        def room(i, j):
            a, b = (float(self.ends[axis][k][0]) * self.q + 1e-6 * s for k, s in ((i, 1), (j, -1)))
            figure = self.hand.figure(lettered(self.ends[axis][j][0] - self.ends[axis][i][0], self.mode)).mask
            along = (figure.height if axis == "y" and not self.style.aligned else figure.width) / self.hand.s
            along += 0.55 if "tolerances" in self.extras else 0
            if not careful or self.style.head in ("tick", "dot") or b - a >= along + 0.18 + 2 * self.style.size:
                return a, b
            return a - tail, b + tail + (along if b - a < along + 0.06 else 0)
        return room

    def on(self, x, y):
        return self.org[0] + float(x) * self.q, self.org[1] + float(y) * self.q

    def face(self, p):
        """Inches of the face where a place of the sheet lies."""
        return [round((p[i] - self.org[i]) / self.scale, 5) for i in (0, 1)]

    def ticks(self, value):
        return int(value * (MM_TICKS if self.mode == "mm" else INCH_TICKS))

    # Drawing.
    def draw(self):
        self._frame()
        self._outline()
        self._holes()
        for axis in "xy":
            self._carried_out(axis)
        for axis in "xy":
            for lane in self.lanes[axis]:
                self._reading(axis, *lane)
        for name, more in MORE.items():
            if name in self.extras:
                more(self)
        self._notes()
        self._letter()
        t = self.truth
        t["heads"] = self.heads
        t["glyphs"] = [[c, *self.face((l, b)), *self.face((r, u)), t] for c, l, b, r, u, t in self.glyphs]
        t["corners"] = [[*map(float, (x / self.per_inch, y / self.per_inch)), *self.sheet.pixel(self.on(x, y))]
                        for x, y in ((0, 0), (self.W, 0), (self.W, self.H), (0, self.H))]
        return self.sheet.copy(), t

    def _frame(self):
        s, w, h = self.sheet, self.sheet.width, self.sheet.height
        s.path([(.2, .2), (w - .2, .2), (w - .2, h - .2), (.2, h - .2), (.2, .2)], 0.025)
        for a, b in (((.2, 1.0), (w - .2, 1.0)), ((w * .45, .2), (w * .45, 1.0)), ((w * .72, .2), (w * .72, 1.0))):
            s.line(a, b, 0.025)

    def _outline(self):
        W, H = self.W, self.H
        corners = [(0, 0), (W, 0), (W, H), (0, H)]
        if self.step:
            corners[2:3] = [(W, self.step[1]), self.step, (self.step[0], H)]
        for a, b in zip(corners, corners[1:] + corners[:1]):
            self.sheet.line(*self._between(a, b), OUTLINE)
            self.truth["features"].append({"kind": "edge", "axis": "x" if a[0] == b[0] else "y", "from": self.face(self.on(*a)), "to": self.face(self.on(*b))})
        if "hatch" in self.extras:
            t = 0.0
            while t < self.pw + self.ph:
                a, b = (max(0, t - self.ph), min(self.ph, t)), (min(self.pw, t), max(0, t - self.pw))
                self.sheet.line(*((self.org[0] + p[0], self.org[1] + p[1]) for p in (a, b)), THIN * .8)
                t += 0.13

        for corner in self.rounds["corners"] if self.rounds else []:
            self._round(corner)
        if self.cut:
            self._cut_corner()

    def _between(self, a, b):
        """A side from corner to corner, less what rounds take."""
        own = 0 if a[1] == b[1] else 1
        less = [self.rounds["radius"] if self.rounds and p in self.rounds["corners"] else
                self.cut["by"][own] if self.cut and p == self.cut["corner"] else 0 for p in (a, b)]
        length = abs(b[0] - a[0]) + abs(b[1] - a[1])
        u = [(b[k] - a[k]) / length for k in (0, 1)]
        return self.on(*(a[k] + u[k] * less[0] for k in (0, 1))), self.on(*(b[k] - u[k] * less[1] for k in (0, 1)))

    def _round(self, corner):
        r = self.rounds["radius"]
        right, up = corner[0] > 0, corner[1] > 0
        c = self.on(corner[0] + (-r if right else r), corner[1] + (-r if up else r))
        begin = {(True, True): 0, (False, True): 90, (False, False): 180, (True, False): 270}[right, up]
        self.sheet.arc(c, float(r) * self.q, begin, begin + 90)
        self.truth["features"].append({"kind": "round", "at": self.face(c), "r": float(r / self.per_inch)})

    def _cut_corner(self):
        """A corner cut off, straight, hollow or bowed."""
        (x, y), (a, b), bow = self.cut["corner"], self.cut["by"], self.cut["bow"]
        ends = self.on(x + (-a if x else a), y), self.on(x, y + (-b if y else b))
        ends = ends if (x > 0) != (y > 0) else ends[::-1]  # anticlockwise round the plate
        (px, py), (qx, qy) = ends
        kind = {"kind": "line" if not bow else "arc", "from": self.face(ends[0]), "to": self.face(ends[1])}
        if not bow:
            self.sheet.line(*ends, OUTLINE)
        else:
            half = math.dist(*ends) / 2
            rise = bow * half  # outwards
            radius = (half * half + rise * rise) / (2 * abs(rise))
            u = ((qx - px) / (2 * half), (qy - py) / (2 * half))
            back = math.copysign(radius, rise) - rise  # inwards of the middle
            c = ((px + qx) / 2 - u[1] * back, (py + qy) / 2 + u[0] * back)
            p, q = ends if bow > 0 else ends[::-1]
            begin, end = (math.degrees(math.atan2(e[1] - c[1], e[0] - c[0])) for e in (p, q))
            self.sheet.arc(c, radius, begin, end + (360 if end < begin else 0))
            kind.update({"at": self.face(c), "r": radius / self.scale})
        self.truth["features"].append(kind)

    def _holes(self):
        if self.row:
            a, b, reach = self.on(*self.row["holes"][0][:2]), self.on(*self.row["holes"][-1][:2]), self.row["reach"]
            u = [(b[k] > a[k]) * reach for k in (0, 1)]
            self.sheet.line((a[0] - u[0], a[1] - u[1]), (b[0] + u[0], b[1] + u[1]), THIN, CENTRE)
            self.truth["features"].append({"kind": "row", "from": self.face(a), "to": self.face(b), "count": len(self.row["holes"]),
                                           "noted": sum(h[2] == self.row["holes"][0][2] for h in self.holes) == len(self.row["holes"])})
        for x, y, d in self.holes:
            c, radius = self.on(x, y), float(d) * self.q / 2
            if "hatch" in self.extras:
                self.sheet.disc(c, radius, 255)
            self.sheet.arc(c, radius, weight=self.random.choice([OUTLINE, OUTLINE, 0.014]))
            m = radius + 0.06
            self.sheet.line((c[0] - m, c[1]), (c[0] + m, c[1]))
            self.sheet.line((c[0], c[1] - m), (c[0], c[1] + m))
            self.truth["features"].append({"kind": "hole", "at": self.face(c), "d": float(d / self.per_inch)})

    def offset(self, axis, side, level):
        """Of a lane from the near side of the plate, sheet inches."""
        out = 0.42 + self.pitch[axis] * level + (0.12 if axis == "y" else 0)
        return out if side > 0 else -out

    def _carried_out(self, axis):
        """The lines that carry a place out to the dimension lines."""
        span = self.ph if axis == "x" else self.pw
        for i, (v, kind) in enumerate(self.ends[axis]):
            for side in (-1, 1):
                levels = [l for a, b, s, l in self.lanes[axis] if s == side and i in (a, b)]
                if not levels:
                    continue
                far = self.offset(axis, side, max(levels)) + (0.08 if side > 0 else -0.08)
                to = far if side < 0 else span + far
                near = self._leaves(axis, v, kind, side, span)
                o, other = self.org, float(v) * self.q
                a, b = ((o[0] + other, o[1] + w) if axis == "x" else (o[0] + w, o[1] + other) for w in (near, to))
                self.sheet.line(a, b, THIN, CENTRE if kind == "hole" and not self.style.solid else None)

    def _leaves(self, axis, v, kind, side, span):
        """Where such a line begins, sheet inches across from the plate's near side."""
        if kind == "hole":
            own, other = (0, 1) if axis == "x" else (1, 0)
            h = (min if side < 0 else max)((h for h in self.holes if h[own] == v), key=lambda h: h[other])
            return float(h[other]) * self.q + side * (float(h[2]) * self.q / 2 + (0.06 if self.style.solid else 0.0))
        i = 0 if axis == "x" else 1
        if self.step and v == self.step[i] and side < 0:
            return float(self.step[1 - i]) * self.q - 0.06
        if self.step and v == (self.W, self.H)[i] and side > 0:
            return float(self.step[1 - i]) * self.q + 0.06
        return -0.06 if side < 0 else span + 0.06

    def _text(self, value):
        """(as lettered, without its brackets or tolerance; wrong)"""
        if self.random.random() < self.misprint:
            n = value + self.random.choice([-1, 1]) * self.random.choice([F(1, 16), F(1, 8), F(1, 4)]) * self.per_inch
            if self.mode == "mm":
                n = F(round(n * 2), 2)
            if n > 0 and n != value:
                text = lettered(n, self.mode)
                return text, F(text) if self.mode == "decimal" else n, True
        text = lettered(value, self.mode)
        return text, F(text) if self.mode == "decimal" else value, False

    def _tolerance(self, text, value):
        if "tolerances" not in self.extras or self.random.random() > 0.35:
            return text
        if self.mode == "fraction":
            return text + self.random.choice([" ±1/64", " ±.005", " ±.002"])
        if self.mode == "mm":
            return text + self.random.choice([" ±0.1", " ±0.05", " ±0.2"])
        if self.random.random() < 0.4:
            t = self.random.choice([F(1, 1000), F(2, 1000)])
            return f"{lettered(value + t, 'decimal')}|{lettered(value - t, 'decimal')}"
        return text + self.random.choice([" ±.001", " ±.002", " ±.005"])

    def _reading(self, axis, i, j, side, level):
        ends = self.ends[axis]
        value = ends[j][0] - ends[i][0]
        text, said, wrong = self._text(value)
        full = self._tolerance(text, said)
        if full == text and (i, j) == (0, len(ends) - 1) and self.random.random() < 0.3:
            full = f"({text})"
        span = self.ph if axis == "x" else self.pw
        across = self.org[1 if axis == "x" else 0] + self.offset(axis, side, level) + (span if side > 0 else 0)
        along = [self.org[0 if axis == "x" else 1] + float(ends[k][0]) * self.q for k in (i, j)]
        u, v = ((1, 0), (0, 1)) if axis == "x" else ((0, 1), (-1, 0))
        base = (0, across) if axis == "x" else (across, 0)
        P = lambda t, w=0.0: (base[0] + u[0] * t + v[0] * w, base[1] + u[1] * t + v[1] * w)
        got = self.dimension(P, *along, full, turned=axis == "y" and self.style.aligned, upright=axis == "y")
        self.truth["readings"].append({"kind": axis, "text": full, "ticks": self.ticks(said), "misprint": wrong, **got})

    def dimension(self, P, pa, pb, full, turned=False, upright=False, inside=False):
        """A dimension line from pa to pb along P, its heads, and its figure to be lettered later."""
        style, sheet, size = self.style, self.sheet, self.style.size
        figure = self.hand.figure(full)
        if turned:
            figure = figure.turned()
        w, h = figure.mask.width / sheet.s, figure.mask.height / sheet.s
        along, across = (h, w) if upright else (w, h)
        tip = size if style.head not in ("tick", "dot") else 0.06
        need, wide = along + 0.10, pb - pa
        outside = not inside and wide < (need if style.broken else 0) + 2 * tip + 0.08
        mid = (pa + pb) / 2 + self.random.uniform(-.1, .1) * max(0, wide - need - 2 * tip) / 2
        beside = outside and wide < along + 0.06
        pointed = style.head in ("filled", "open")
        if outside and pointed:
            tail = 2.0 * size
            for end, way in ((pa, -1), (pb, 1)):
                sheet.line(P(end), P(end + way * tail))
                sheet.head(P(end), P(end + way), style.head, size)
            if not style.broken and not beside:
                sheet.line(P(pa), P(pb))
            if beside:
                mid = pb + tail + along / 2 + 0.05
        else:
            sheet.line(P(pa), P(pb))
            if style.head == "tick":
                sheet.line(P(pa - .06), P(pb + .06))
            if beside and not pointed:
                mid = pb + along / 2 + 0.12
                if not style.broken:
                    sheet.line(P(pb), P(mid + along / 2))
            sheet.head(P(pa), P(pb), style.head, size)
            sheet.head(P(pb), P(pa), style.head, size)
        for end, other, sign in ((pa, pb, 1), (pb, pa, -1)):
            d = sign * (-1 if outside and pointed else 1)
            a, b = P(end), P(end + d)
            self.heads.append([*self.face(a), round(b[0] - a[0], 3), round(b[1] - a[1], 3)])
        centre = P(mid, 0.0 if style.broken else across / 2 + 0.05)
        self.lettering.append((figure, centre, 0.035 if style.broken else 0.012))
        return {"from": self.face(P(pa)), "to": self.face(P(pb)), "outside": outside and pointed, "beside": beside, "figure": self.face(centre)}

    def _notes(self):
        random, sheet, style = self.random, self.sheet, self.style
        y = sheet.height - 1.0
        for d in self.sizes:
            holes = [h for h in self.holes if h[2] == d]
            if not holes:
                continue
            at = max(holes, key=lambda h: h[0] + h[1])
            size = lettered(d, self.mode)
            what = random.choice(["{} DRILL", "REAM {}", "DRILL {}", "{} DIA"] if self.mode != "mm" else ["{} DRILL", "REAM {}", "Ø{}"]).format(size)
            c, elbow = self.on(*at[:2]), (self.org[0] + self.pw + self.right + self.side_view + 0.05, y)
            turn, radius = math.atan2(elbow[1] - c[1], elbow[0] - c[0]), float(d) * self.q / 2
            tip = (c[0] + radius * math.cos(turn), c[1] + radius * math.sin(turn))
            sheet.path([tip, elbow, (elbow[0] + .12, elbow[1])])
            sheet.head(tip, elbow, style.head if style.head in ("filled", "open") else "filled", style.size)
            lines = [what] + ([f"{len(holes)} HOLES"] if len(holes) > 1 else [])
            for k, text in enumerate(lines):
                figure = self.hand.figure(text)
                self.lettering.append((figure, (elbow[0] + .17 + figure.mask.width / sheet.s / 2, y - .25 * k), 0.035))
            self.truth["notes"].append({"text": " ".join(lines), "size": size, "ticks": self.ticks(F(size) if self.mode == "decimal" else d), "at": self.face(c), "count": len(holes)})
            y -= 0.75
        ring_note(self, radius_note(self, y))
        w = sheet.width
        for text, p in (("PLATE", (.9, .75)), (f"SHEET {self.truth['seed'] % 9 + 1}", (.9, .4)), ("BRASS", (w * .55, .75)), ("1 OFF", (w * .55, .4)),
                        ("FRACTIONS ±1/64", (w * .72 + .9, .65))):
            self.lettering.append((self.hand.figure(text), p, 0.035))

    def _letter(self):
        """Clears room for all lettering first, where this hand does, then letters."""
        if self.style.clears:
            for figure, p, margin in self.lettering:
                m = 2 * margin
                self.sheet.clear(p, figure.mask.width / self.sheet.s + m, figure.mask.height / self.sheet.s + m)
        for figure, p, _ in self.lettering:
            self.glyphs += self.sheet.stamp(figure, p)
