"""Single-stroke capitals and figures as a draughtsman letters them, with stacked fractions.

A glyph is a width and a list of strokes on a grid where capitals are 6 high. A stroke is a list of
points; a tuple of six is an arc of an ellipse: centre x, centre y, radius x, radius y, from, to
(degrees, anticlockwise positive).
"""

import math
import re

CAP = 6.0
SLANT = 0.20  # of the height, to the right
GAP = 1.35  # between glyphs
SPACE = 2.9


def _bowl(x, y, rx, ry, a, b):
    return (x, y, rx, ry, a, b)


GLYPHS = {
    "A": (4.2, [[(0, 0), (2.1, 6), (4.2, 0)], [(0.7, 2), (3.5, 2)]]),
    "B": (3.7, [[(2.1, 3.2), (0, 3.2), (0, 6), (2.1, 6), _bowl(2.1, 4.6, 1.35, 1.4, 90, -90)],
                [(0, 3.2), (0, 0), (2.1, 0), _bowl(2.1, 1.6, 1.6, 1.6, -90, 90)]]),
    "C": (4.0, [[_bowl(2.2, 3, 2.2, 3, 48, 312)]]),
    "D": (4.0, [[(0, 0), (0, 6), (1.4, 6), _bowl(1.4, 3, 2.6, 3, 90, -90), (0, 0)]]),
    "E": (3.4, [[(3.4, 6), (0, 6), (0, 0), (3.4, 0)], [(0, 3.1), (2.7, 3.1)]]),
    "F": (3.3, [[(3.3, 6), (0, 6), (0, 0)], [(0, 3.1), (2.6, 3.1)]]),
    "G": (4.2, [[_bowl(2.2, 3, 2.2, 3, 50, 330), (4.15, 2.6), (2.6, 2.6)]]),
    "H": (3.8, [[(0, 0), (0, 6)], [(3.8, 0), (3.8, 6)], [(0, 3.1), (3.8, 3.1)]]),
    "I": (0.4, [[(0.2, 0), (0.2, 6)]]),
    "J": (2.9, [[(2.9, 6), (2.9, 1.6), _bowl(1.45, 1.6, 1.45, 1.6, 0, -170)]]),
    "K": (3.8, [[(0, 0), (0, 6)], [(3.6, 6), (0, 2.2)], [(1.3, 3.5), (3.8, 0)]]),
    "L": (3.2, [[(0, 6), (0, 0), (3.2, 0)]]),
    "M": (4.8, [[(0, 0), (0, 6), (2.4, 1.2), (4.8, 6), (4.8, 0)]]),
    "N": (3.9, [[(0, 0), (0, 6), (3.9, 0), (3.9, 6)]]),
    "O": (4.3, [[_bowl(2.15, 3, 2.15, 3, 90, 450)]]),
    "P": (3.5, [[(0, 0), (0, 6), (2.0, 6), _bowl(2.0, 4.4, 1.5, 1.6, 90, -90), (0, 2.8)]]),
    "Q": (4.3, [[_bowl(2.15, 3, 2.15, 3, 90, 450)], [(2.6, 1.6), (4.3, -0.4)]]),
    "R": (3.7, [[(0, 0), (0, 6), (2.0, 6), _bowl(2.0, 4.4, 1.5, 1.6, 90, -90), (0, 2.8)],
                [(1.8, 2.8), (3.7, 0)]]),
    "S": (3.6, [[_bowl(1.8, 4.5, 1.65, 1.5, 35, 270), _bowl(1.8, 1.5, 1.8, 1.5, 90, -145)]]),
    "T": (3.8, [[(0, 6), (3.8, 6)], [(1.9, 6), (1.9, 0)]]),
    "U": (3.8, [[(0, 6), (0, 1.9), _bowl(1.9, 1.9, 1.9, 1.9, 180, 360), (3.8, 6)]]),
    "V": (4.0, [[(0, 6), (2.0, 0), (4.0, 6)]]),
    "W": (5.4, [[(0, 6), (1.4, 0), (2.7, 5.4), (4.0, 0), (5.4, 6)]]),
    "X": (3.9, [[(0, 0), (3.8, 6)], [(0.1, 6), (3.9, 0)]]),
    "Y": (3.9, [[(0, 6), (1.95, 3), (3.9, 6)], [(1.95, 3), (1.95, 0)]]),
    "Z": (3.7, [[(0.1, 6), (3.6, 6), (0, 0), (3.7, 0)]]),
    "0": (3.6, [[_bowl(1.8, 3, 1.8, 3, 90, 450)]]),
    "1": (1.5, [[(0.1, 4.9), (1.2, 6), (1.2, 0)]]),
    "2": (3.6, [[_bowl(1.8, 4.3, 1.7, 1.7, 165, -38), (0, 0), (3.6, 0)]]),
    "3": (3.6, [[_bowl(1.75, 4.55, 1.55, 1.45, 150, -90)],
                [_bowl(1.75, 1.55, 1.85, 1.55, 90, -152)]]),
    "4": (3.9, [[(3.0, 0), (3.0, 6), (0, 1.7), (3.9, 1.7)]]),
    "5": (3.6, [[(3.4, 6), (0.6, 6), (0.35, 3.25), _bowl(1.75, 1.95, 1.85, 1.95, 128, -148)]]),
    "6": (3.6, [[_bowl(3.7, 1.9, 3.7, 4.1, 102, 180), _bowl(1.8, 1.9, 1.8, 1.9, 180, 540)]]),
    "7": (3.6, [[(0, 6), (3.6, 6), (1.2, 0)]]),
    "8": (3.6, [[_bowl(1.8, 4.55, 1.5, 1.45, -90, 270)], [_bowl(1.8, 1.55, 1.8, 1.55, 90, 450)]]),
    "9": (3.6, [[_bowl(-0.1, 4.1, 3.7, 4.1, -78, 0), _bowl(1.8, 4.1, 1.8, 1.9, 0, 360)]]),
    ".": (0.5, [[(0.2, 0), (0.3, 0.25)]]),
    ",": (0.6, [[(0.4, 0.3), (0.0, -1.0)]]),
    "'": (0.5, [[(0.3, 6.2), (0.1, 4.8)]]),
    '"': (1.4, [[(0.3, 6.2), (0.1, 4.8)], [(1.3, 6.2), (1.1, 4.8)]]),
    "(": (1.3, [[_bowl(2.4, 3, 2.2, 4.0, 130, 230)]]),
    ")": (1.3, [[_bowl(-1.2, 3, 2.2, 4.0, 50, -50)]]),
    "-": (2.2, [[(0, 2.9), (2.2, 2.9)]]),
    "–": (3.4, [[(0, 2.9), (3.4, 2.9)]]),
    "+": (3.2, [[(0, 2.9), (3.2, 2.9)], [(1.6, 1.3), (1.6, 4.5)]]),
    "±": (3.2, [[(0, 3.6), (3.2, 3.6)], [(1.6, 2.0), (1.6, 5.2)], [(0, 0.9), (3.2, 0.9)]]),
    "°": (1.6, [[_bowl(0.8, 5.2, 0.8, 0.8, 0, 360)]]),
    "/": (2.6, [[(0, -0.4), (2.6, 6.4)]]),
    ":": (0.5, [[(0.2, 0.6), (0.3, 0.85)], [(0.2, 3.8), (0.3, 4.05)]]),
    "×": (3.0, [[(0, 1.4), (3.0, 4.6)], [(0, 4.6), (3.0, 1.4)]]),
    "&": (4.2, [[(4.2, 0), (0.9, 4.4), _bowl(1.8, 4.8, 1.1, 1.2, 200, -20),
                 (0.6, 2.6), _bowl(1.7, 1.5, 1.7, 1.5, 130, 300), (4.0, 2.6)]]),
    "℄": (4.6, [[_bowl(2.2, 3.4, 2.0, 2.6, 40, 320)], [(2.2, -0.6), (2.2, 6.9)],
                [(3.0, -0.2), (4.6, -0.2)]]),
}

_FRACTION = re.compile(r"(\d+)/(\d+)")


def _points(stroke):
    points = []
    for item in stroke:
        if len(item) == 2:
            points.append(item)
            continue
        x, y, rx, ry, start, end = item
        count = max(4, int(abs(end - start) / 12))
        for i in range(count + 1):
            angle = math.radians(start + (end - start) * i / count)
            points.append((x + rx * math.cos(angle), y + ry * math.sin(angle)))
    return points


def _word_width(word):
    width = sum(SPACE - GAP if c == " " else GLYPHS[c][0] for c in word)
    return width + GAP * max(0, len(word) - 1)


def _pieces(text):
    """Plain runs and fractions: ('plain', run) and ('fraction', over, under)."""
    pieces, last = [], 0
    for found in _FRACTION.finditer(text):
        run = text[last:found.start()]
        if run.strip():
            pieces.append(("plain", run.rstrip() if run.rstrip()[-1:].isdigit() else run))
        pieces.append(("fraction", found.group(1), found.group(2)))
        last = found.end()
    if text[last:]:
        pieces.append(("plain", text[last:]))
    return pieces


SMALL = 0.72  # a fraction's figures against a whole number's
RISE = 1.15  # of its figures from the bar, in grid units
LEAD = 1.5  # before and behind a fraction


def measure(text):
    """Width, height above and depth below the baseline of capitals, in grid units."""
    width, up, down = 0.0, CAP, 0.0
    for piece in _pieces(text):
        if piece[0] == "plain":
            width += _word_width(piece[1])
        else:
            width += max(_word_width(piece[1]), _word_width(piece[2])) * SMALL + 0.8 + 2 * LEAD
            reach = CAP * SMALL + RISE
            up, down = max(up, CAP / 2 + reach), max(down, reach - CAP / 2)
    return width, up, down


def strokes(text, wobble=None):
    """Polylines in grid units for a text that begins at 0, 0 on the baseline.

    `wobble` is a random source; each glyph then strays a little, as a hand does.
    """
    lines, x = [], 0.0

    def glyph(c, at_x, at_y, scale):
        dx = dy = 0.0
        grow = scale
        if wobble:
            dx, dy = wobble.gauss(0, 0.06), wobble.gauss(0, 0.08)
            grow = scale * (1 + wobble.gauss(0, 0.012))
        for stroke in GLYPHS[c][1]:
            run = [(at_x + px * grow + dx, at_y + py * grow + dy) for px, py in _points(stroke)]
            lines.append([(px + SLANT * (py - CAP / 2), py) for px, py in run])

    def word(run, at_x, at_y, scale):
        for c in run:
            if c == " ":
                at_x += SPACE * scale
                continue
            glyph(c, at_x, at_y, scale)
            at_x += (GLYPHS[c][0] + GAP) * scale

    for piece in _pieces(text):
        if piece[0] == "plain":
            word(piece[1], x, 0.0, 1.0)
            x += _word_width(piece[1])
            continue
        over, under = (_word_width(p) * SMALL for p in piece[1:])
        wide = max(over, under) + 0.8
        x += LEAD
        middle = CAP / 2
        lines.append([(x, middle), (x + wide, middle)])
        word(piece[1], x + (wide - over) / 2, middle + RISE, SMALL)
        word(piece[2], x + (wide - under) / 2, middle - RISE - CAP * SMALL, SMALL)
        x += wide + LEAD
    return lines
