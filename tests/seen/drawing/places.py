"""Where things lie on a random plate, which readings say so, and on which lane each is drawn."""
from fractions import Fraction as F


def lettered(value, mode):
    if mode == "mm":
        return f"{float(value):g}"
    if mode == "decimal":
        text = f"{float(value):.3f}"
        return text[1:] if text.startswith("0") else text
    whole, part = divmod(value, 1)
    if not part:
        return str(whole)
    return (f"{whole} " if whole else "") + f"{part.numerator}/{part.denominator}"


def spread(random, count, length, least, unit):
    """`count` places on a grid of `unit`, none nearer than `least` to another or to an end."""
    for _ in range(400):
        got = sorted({F(random.randrange(1, int(length / unit))) * unit for _ in range(count)})
        if len(got) == count and got[0] >= least and length - got[-1] >= least and all(b - a >= least for a, b in zip(got, got[1:])):
            return got
    return [length * (i + 1) / (count + 1) // unit * unit for i in range(count)]


def intervals(random, count):
    """Readings between `count` places in a row: enough to place each, and often some to spare."""
    got = set()
    how = random.choice(["chain", "chain", "base", "mixed", "mixed"])
    for i in range(1, count):
        if how == "mixed":
            got.add((random.choice([max(0, i - 1), max(0, i - 2), 0]), i))
        else:
            got.add((0 if how == "base" else i - 1, i))
    if random.random() < 0.75:
        got.add((0, count - 1))
    for _ in range(random.choice([0, 1, 1, 2])):
        got.add(tuple(sorted(random.sample(range(count), 2))))
    if how == "chain" and random.random() < 0.4 and count > 3:
        got.discard(random.choice([g for g in got if g[1] - g[0] == 1]))
    return sorted(got, key=lambda g: (g[1] - g[0], g[0]))


def lanes(random, spans, room):
    """[(a, b, side, level)]: the side (-1 or 1) and level on which each meets no other. `room(a, b)` is the
    stretch along the axis that the reading takes up, its arrows and figure with it."""
    placed, taken = [], []
    for a, b in spans:
        sides = [-1, 1] if random.random() < 0.75 else [1, -1]
        low, high = room(a, b)
        side, level = next((side, level) for level in range(20) for side in sides
                           if all(high <= c or d <= low for c, d, s, l in taken if (s, l) == (side, level)))
        placed.append((a, b, side, level))
        taken.append((low, high, side, level))
    return placed


def depth(placed, side):
    return 1 + max((level for _, _, s, level in placed if s == side), default=-1)
