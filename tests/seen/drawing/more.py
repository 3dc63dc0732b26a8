"""What fewer prints have: centre distances, angles, a view of the edge, slots, rings, rows, rounds."""
import math
import random as randoms
from fractions import Fraction as F

from .ink import BROKEN, OUTLINE, THIN
from .places import lettered


def centres(plate):
    """A distance straight from hole to hole, lettered level in a gap of its line."""
    for _ in range(20):
        if len(plate.holes) < 2:
            return
        a, b = plate.random.sample(plate.holes, 2)
        if a[0] == b[0] or a[1] == b[1]:
            continue
        if a[0] > b[0]:
            a, b = b, a
        pa, pb = plate.on(*a[:2]), plate.on(*b[:2])
        length = math.dist(pa, pb)
        u = ((pb[0] - pa[0]) / length, (pb[1] - pa[1]) / length)
        middle = ((pa[0] + pb[0]) / 2, (pa[1] + pb[1]) / 2)
        room = min(math.dist(plate.on(*h[:2]), middle) - float(h[2]) * plate.q / 2 for h in plate.holes)
        if length < 1.3 or min(abs(u[0]), abs(u[1])) < 0.25 or room < 0.35:
            continue
        value = F(round(math.dist(a[:2], b[:2]) * 1000), 1000) if plate.mode != "mm" else F(round(math.dist(a[:2], b[:2]) * 100), 100)
        text = lettered(value, "decimal" if plate.mode != "mm" else "mm")
        v = (-u[1], u[0])
        P = lambda t, w=0.0: (pa[0] + u[0] * t + v[0] * w, pa[1] + u[1] * t + v[1] * w)
        was, plate.style.broken = plate.style.broken, True
        got = plate.dimension(P, 0.0, length, text, inside=True)
        plate.style.broken = was
        plate.truth["readings"].append({"kind": "centres", "text": text, "ticks": plate.ticks(value), "misprint": False, **got})
        return


def angle(plate):
    """The angle at the plate's first corner between its front edge and a line to a hole."""
    h = plate.random.choice(plate.holes)
    turn = math.degrees(math.atan2(float(h[1]), float(h[0])))
    if not 20 < turn < 70:
        return
    corner, c = plate.on(0, 0), plate.on(*h[:2])
    plate.sheet.line(corner, c, THIN)
    radius = 0.55 * math.dist(corner, c)
    text = f"{round(turn)}°"
    plate.sheet.arc(corner, radius, 0, turn, THIN)
    for t, sign in ((0.0, 1), (turn, -1)):
        p = (corner[0] + radius * math.cos(math.radians(t)), corner[1] + radius * math.sin(math.radians(t)))
        w = math.radians(t + 90 * sign)
        plate.sheet.head(p, (p[0] + math.cos(w), p[1] + math.sin(w)), "filled" if plate.style.head in ("tick", "dot") else plate.style.head, plate.style.size)
    m = math.radians(turn / 2)
    figure = plate.hand.figure(text)
    centre = (corner[0] + radius * math.cos(m), corner[1] + radius * math.sin(m))
    plate.lettering.append((figure, centre, 0.03))
    plate.truth["readings"].append({"kind": "angle", "text": text, "degrees": round(turn), "misprint": False, "outside": False, "beside": False, "from": plate.face(corner),
                                    "to": plate.face(c), "figure": plate.face(centre)})


def side_view(plate):
    """The plate from its side, to the right of it, with its thickness."""
    thick = plate.random.choice([F(1, 8), F(3, 16), F(1, 4), F(3, 8)]) * (F(24) if plate.mode == "mm" else 1)
    x0 = plate.org[0] + plate.pw + plate.right + 0.3
    x1 = x0 + float(thick) * plate.q
    y0, y1 = plate.org[1], plate.org[1] + plate.ph
    corners = [(x0, y0), (x1, y0), (x1, y1), (x0, y1), (x0, y0)]
    plate.sheet.path(corners, OUTLINE)
    for k, (a, b) in enumerate(zip(corners, corners[1:])):
        plate.truth["features"].append({"kind": "edge", "axis": "yx"[k % 2], "from": plate.face(a), "to": plate.face(b), "other_view": True})
    for _, y, d in plate.holes:
        for s in (-1, 1):
            v = plate.org[1] + (float(y) + s * float(d) / 2) * plate.q
            plate.sheet.line((x0, v), (x1, v), THIN, BROKEN)
    for x in (x0, x1):
        plate.sheet.line((x, y0 - 0.06), (x, y0 - 0.5))
    text = lettered(thick, plate.mode)
    said = F(text) if plate.mode == "decimal" else thick
    got = plate.dimension(lambda t, w=0.0: (t, y0 - 0.42 + w), x0, x1, text)
    plate.truth["readings"].append({"kind": "x", "text": text, "ticks": plate.ticks(said), "misprint": False, "other_view": True, **got})


def row(plate, seed):
    """Holes evenly in line, in place of those on one line of the plate: `holes`, and how far the line
    through them reaches beyond. Only the outer ones are dimensioned along it."""
    random = randoms.Random(f"row {seed}")
    if "shapes" not in plate.extras or random.random() > 0.6:
        return None
    d, possible = min(plate.sizes), []
    for own in (0, 1):
        along, lines = (sorted({h[k] for h in plate.holes}) for k in (own, 1 - own))
        for line in lines:
            for a in along:
                for b in along:
                    for n in (3, 4, 5):
                        pitch = (b - a) / (n - 1)
                        inner = [a + k * pitch for k in range(1, n - 1)]
                        if float(pitch - d) * plate.q > 0.16 and all(abs(float(i - o)) * plate.q > float(d) * plate.q / 2 + 0.06 for i in inner for o in along):
                            possible.append((own, line, a, pitch, n))
    if not possible:
        return None
    own, line, a, pitch, n = random.choice(possible)
    at = lambda t: (t, line) if own == 0 else (line, t)
    holes = [(*at(a + k * pitch), d) for k in range(n)]
    clear = lambda h: h[1 - own] != line or not a - pitch < h[own] < a + n * pitch
    others = [h for h in plate.holes if clear(h)]
    if random.random() < 0.7 and max(plate.sizes) > d:
        others = [(x, y, max(plate.sizes) if size == d else size) for x, y, size in others]
    plate.holes = others + holes
    return {"holes": holes, "reach": float(d) * plate.q / 2 + 0.1}


def rounds(plate, seed):
    """Corners of the plate that are rounded, and by how much."""
    random = randoms.Random(f"rounds {seed}")
    if "shapes" not in plate.extras or random.random() > 0.7:
        return None
    radius = F(random.choice([3, 4, 5, 6, 8])) if plate.mode == "mm" else F(random.choice([2, 3, 4, 5]), 16)
    corners = [(F(0), F(0)), (plate.W, F(0)), (F(0), plate.H)] + ([] if plate.step else [(plate.W, plate.H)])
    if random.random() < 0.4:
        corners = random.sample(corners, random.randint(1, 2))
    return {"radius": radius, "corners": corners} if float(radius) * plate.q > 0.08 else None


def cut_corner(plate, seed):
    """A corner of the plate that is cut off: which, how far along its sides, and how far the cut bows out, of half its length."""
    random = randoms.Random(f"cut {seed}")
    if "shapes" not in plate.extras or random.random() > 0.7:
        return None
    free = [(F(0), F(0)), (plate.W, F(0)), (F(0), plate.H)] + ([] if plate.step else [(plate.W, plate.H)])
    free = [c for c in free if not plate.rounds or c not in plate.rounds["corners"]]
    if not free:
        return None
    unit = F(6) if plate.mode == "mm" else F(1, 4)
    corner, by = random.choice(free), [unit * random.choice([1, 2]) for _ in "xy"]
    # Straight, hollow, struck from the corner, or bowed by less than a round.
    bow = random.choice([0, 0, -0.3, -0.4142, 0.2] if by[0] == by[1] else [0, -0.3])
    near = min(max(abs(h[k] - corner[k]) - by[k] for k in (0, 1)) - h[2] / 2 for h in plate.holes)
    if float(near) * plate.q < 0.08 or float(min(by)) * plate.q < 0.2:
        return None
    return {"corner": corner, "by": by, "bow": bow}


def radius_note(plate, y):
    """The radius of the rounds, from the column of notes to one that a straight leader reaches from there."""
    if not plate.rounds:
        return y
    r, corners = plate.rounds["radius"], plate.rounds["corners"]
    x, first = plate.org[0] + plate.pw + plate.right + plate.side_view + 0.05, y
    for corner, y in (((plate.W, plate.H), y), ((plate.W, F(0)), plate.org[1] - 0.35)):
        up = corner[1] > 0
        c = plate.on(corner[0] - r, corner[1] + (-r if up else r))
        turn = math.degrees(math.atan2(y - c[1], x - c[0]))
        if corner not in corners or not 8 < (turn if up else -turn) < 82:
            continue
        size, s = lettered(r, plate.mode), plate.sheet
        text = plate.random.choice(["R{}", "R {}", "{} RAD"]).format(size)
        tip = tuple(c[k] + float(r) * plate.q * f(math.radians(turn)) for k, f in enumerate((math.cos, math.sin)))
        s.path([tip, (x, y), (x + .12, y)])
        s.head(tip, (x, y), plate.style.head if plate.style.head in ("filled", "open") else "filled", plate.style.size)
        for k, part in enumerate([text] + ([f"{len(corners)} PLACES"] if len(corners) > 1 else [])):
            figure = plate.hand.figure(part)
            plate.lettering.append((figure, (x + .17 + figure.mask.width / s.s / 2, y - .25 * k), 0.035))
        plate.truth["radii"] = [{"text": text, "size": size, "ticks": plate.ticks(F(size) if plate.mode == "decimal" else r), "at": plate.face(c), "count": len(corners)}]
        return y - 0.75 if up else first
    return first


def ring_note(plate, y):
    """Size, number and pitch circle of the ring, to its rightmost hole."""
    if not plate.ring:
        return
    ring, s = plate.ring, plate.sheet
    x = plate.org[0] + plate.pw + plate.right + plate.side_view + 0.05
    tip, elbow = ring["right"], (x, y - 0.2)
    turn = math.atan2(elbow[1] - tip[1], elbow[0] - tip[0])
    tip = (tip[0] + ring["small"] * math.cos(turn), tip[1] + ring["small"] * math.sin(turn))
    s.path([tip, elbow, (elbow[0] + .12, elbow[1])])
    s.head(tip, elbow, plate.style.head if plate.style.head in ("filled", "open") else "filled", plate.style.size)
    size, pcd = (lettered(F(round(v * 64 / plate.q), 64) if plate.mode != "mm" else F(round(v / plate.q * 4), 4), plate.mode)
                 for v in (2 * ring["small"], 2 * ring["radius"]))
    rows = [f"{size} DRILL {ring['count']} HOLES", "EQUALLY SPACED", f"ON {pcd} P.C.D."]
    for k, text in enumerate(rows):
        figure = plate.hand.figure(text)
        plate.lettering.append((figure, (elbow[0] + .17 + figure.mask.width / s.s / 2, elbow[1] - .25 * k), 0.035))
    plate.truth["ring_notes"] = [{"text": " ".join(rows), "size": size, "pcd": pcd, "at": plate.face(ring["at"]), "count": ring["count"]}]


def shapes(plate):
    """A slot, and a ring of holes where there is room."""
    sheet, random, q = plate.sheet, plate.random, plate.q
    taken = [(plate.on(*h[:2]), float(h[2]) * q / 2) for h in plate.holes]

    def free(c, reach):
        inside = all(plate.org[i] + reach + 0.12 < c[i] < plate.org[i] + (plate.pw, plate.ph)[i] - reach - 0.12 for i in (0, 1))
        return inside and all(math.dist(c, t) > reach + r + 0.10 for t, r in taken)

    for kind, reach in (("ring", 0.55), ("slot", 0.36)):
        for _ in range(60):
            c = (plate.org[0] + random.random() * plate.pw, plate.org[1] + random.random() * plate.ph)
            if not free(c, reach):
                continue
            taken.append((c, reach))
            (_ring if kind == "ring" else _slot)(plate, c)
            break


def _cross(sheet, c, m):
    sheet.line((c[0] - m, c[1]), (c[0] + m, c[1]))
    sheet.line((c[0], c[1] - m), (c[0], c[1] + m))


def _ring(plate, c):
    count, radius, small = plate.random.choice([3, 4, 6]), 0.40, 0.07
    plate.sheet.arc(c, radius, weight=THIN, dashes=BROKEN)
    _cross(plate.sheet, c, radius + 0.1)
    for k in range(count):
        t = 2 * math.pi * k / count + math.pi / 2
        h = (c[0] + radius * math.cos(t), c[1] + radius * math.sin(t))
        plate.sheet.arc(h, small, weight=OUTLINE)
        _cross(plate.sheet, h, small + 0.05)
        plate.truth["features"].append({"kind": "hole", "at": plate.face(h), "d": 2 * small / plate.scale})
    plate.truth["features"].append({"kind": "ring", "at": plate.face(c), "d": 2 * radius / plate.scale, "count": count})
    right = max(((c[0] + radius * math.cos(t), c[1] + radius * math.sin(t)) for t in (2 * math.pi * k / count + math.pi / 2 for k in range(count))))
    plate.ring = {"at": c, "right": right, "small": small, "radius": radius, "count": count}


def _slot(plate, c):
    half, r = 0.2, 0.09
    for s in (-1, 1):
        plate.sheet.line((c[0] - half, c[1] + s * r), (c[0] + half, c[1] + s * r), OUTLINE)
        end = (c[0] + s * half, c[1])
        plate.sheet.arc(end, r, -90 if s > 0 else 90, 90 if s > 0 else 270)
        _cross(plate.sheet, end, r + 0.06)
    plate.truth["features"].append({"kind": "slot", "from": plate.face((c[0] - half, c[1])), "to": plate.face((c[0] + half, c[1])), "width": 2 * r / plate.scale})
