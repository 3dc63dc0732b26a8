"""Where everything on a part lies, worked from its document: what its draughtsman drew."""

import math
import re
from fractions import Fraction

import numpy

AXES = {"top": "xy", "bottom": "xy", "front": "xz", "back": "xz", "left": "yz", "right": "yz"}


def inches(text, unit):
    """The nominal of a lettered figure, tolerance and brackets left out, in inches; the middle of
    limits such as `.3131/.3135`."""
    bare = re.sub(r"(±| \+).*$", "", text).strip("() ")
    if re.fullmatch(r"\d*\.\d+/\d*\.\d+", bare):
        return sum(Fraction(end) for end in bare.split("/")) / 2
    total = sum(Fraction(word) for word in bare.split())
    return total / Fraction("25.4") if unit == "mm" else total


class Drawn:
    """Positions of one part by (place, axis), in inches as floats."""

    def __init__(self, document, as_drawn=None, part=0):
        """`as_drawn` gives the true figure of readings that the print letters wrongly."""
        self.document = document
        self.unit = document["job"]["unit"]
        self.part = document["parts"][part]
        self.features = {f["id"]: f for f in self.part["features"]}
        self.readings = {r["id"]: r for r in self.part["readings"]}
        self.true = as_drawn or {}
        self.at = {}
        self._settle()

    def size(self, feature, key):
        return float(inches(self.features[feature][key], self.unit))

    def thread(self, feature):
        """The outside diameter of a numbered thread, `3-48 UNC`."""
        number = int(self.features[feature]["thread"].split("-")[0])
        return 0.060 + 0.013 * number

    def __call__(self, place, axis):
        return float(self.at[(place, axis)])

    def _links(self):
        """(from, to, axis, distance) of readings and of what features carry in themselves."""
        for reading in self.part["readings"]:
            if "kind" in reading:
                continue
            text = self.true.get(reading["id"], reading["text"])
            yield reading["from"], reading["to"], reading["axis"], inches(text, self.unit)
        for feature in self.part["features"]:
            yield from self._own_links(feature)
        for understood in self.part["understood"]:
            of = understood["of"]
            if understood["kind"] == "in_line" and "axis" in understood:
                yield from ((of[0], other, understood["axis"], 0) for other in of[1:])
            if understood["kind"] == "concentric":
                yield from ((of[0], other, axis, 0) for other in of[1:] for axis in "xy")

    def _own_links(self, feature):
        name = feature["id"]
        if feature["kind"] == "ring":
            radius = float(inches(feature["pcd"], self.unit)) / 2
            for i in range(feature["holes"]):
                turn = math.radians(float(feature["first_angle"]) + 360 * i / feature["holes"])
                yield name, f"{name}{i + 1}", "x", Fraction(radius * math.cos(turn))
                yield name, f"{name}{i + 1}", "y", Fraction(radius * math.sin(turn))
        if feature["kind"] == "row":
            count = feature.get("holes") or feature["spaces"] + 1
            pitch = inches(feature["pitch"], self.unit)
            across = "y" if feature["axis"] == "x" else "x"
            for i in range(1, count):
                yield f"{name}1", f"{name}{i + 1}", feature["axis"], pitch * i
                yield f"{name}1", f"{name}{i + 1}", across, 0
        if feature["kind"] == "round":
            out = inches(feature["radius"], self.unit)
            yield feature["about"], name, "x", -out if feature["side"] == "left" else out
            yield feature["about"], name, "y", 0

    def _settle(self):
        links = list(self._links())
        for axis, origin in (("x", "L"), ("y", "F"), ("z", "U")):
            # A part without sides is drawn from its first hole.
            known = origin in self.features
            self.at[(origin if known else self.part["features"][0]["id"], axis)] = Fraction(0)
        self._follow(links)
        self._settle_slanted()
        self._follow(links)

    def _follow(self, links):
        grew = True
        while grew:
            before = len(self.at)
            for start, end, axis, distance in links:
                if (start, axis) in self.at:
                    self.at.setdefault((end, axis), self.at[(start, axis)] + distance)
                elif (end, axis) in self.at:
                    self.at[(start, axis)] = self.at[(end, axis)] - distance
            for understood in self.part["understood"]:
                ends = [(end, understood.get("axis")) for end in understood.get("between", [])]
                if ends and all(end in self.at for end in ends):
                    middle = (self.at[ends[0]] + self.at[ends[1]]) / 2
                    self.at.setdefault((understood["of"], understood["axis"]), middle)
            grew = len(self.at) > before

    def _settle_slanted(self):
        """What centre distances, angles and tangents place: least squares from where it is traced."""
        traced = {f["id"]: [float(v) for v in f["traced"][:2]] for f in self.part["features"]
                  if f["kind"] in ("hole", "arc")}
        free = [name for name in traced if any((name, axis) not in self.at for axis in "xy")]
        if not free:
            return
        first = self.part["features"][0]
        shift = (traced[first["id"]] if first["id"] in traced and "L" not in self.features
                 else (0, 0))
        at = numpy.array([[traced[name][k] - shift[k] for k in (0, 1)] for name in free])

        def place(name):
            return at[free.index(name)] if name in free else numpy.array(
                [float(self.at[(name, axis)]) for axis in "xy"])

        def misses():
            out = [place(name)[k] - float(self.at[(name, axis)]) for name in free
                   for k, axis in enumerate("xy") if (name, axis) in self.at]
            for kind, start, end, value in self._slanted():
                way = place(end) - place(start)
                if kind == "centres":
                    out.append(math.hypot(*way) - value)
                elif kind == "angle":
                    turn = math.radians(value)
                    out.append(way[1] * math.cos(turn) - way[0] * math.sin(turn))
                else:
                    out.append(way["xy".index(value)])
            return numpy.array(out)

        for _ in range(20):
            now, slopes = misses(), []
            for i in range(at.size):
                at.flat[i] += 1e-6
                slopes.append((misses() - now) / 1e-6)
                at.flat[i] -= 1e-6
            at -= numpy.linalg.lstsq(numpy.array(slopes).T, now, rcond=None)[0].reshape(at.shape)
        for name in free:
            for k, axis in enumerate("xy"):
                self.at.setdefault((name, axis), place(name)[k])

    def _slanted(self):
        """(kind, from, to, value) of what holds between two places across both axes."""
        for reading in self.part["readings"]:
            ends = reading["from"], reading.get("to")
            if reading.get("kind") == "centres":
                yield "centres", *ends, float(inches(reading["text"], self.unit))
            if reading.get("kind") == "angle":
                swing = -1 if reading.get("sense") == "clockwise" else 1
                yield "angle", *ends, swing * float(reading["text"])
        for understood in self.part["understood"]:
            of = understood["of"]
            if understood["kind"] == "in_line":
                yield from (("in_line", of[0], other, understood["axis"]) for other in of[1:]
                            if {of[0], other} <= set(self.features)
                            and all(self.features[name]["kind"] == "hole" for name in (of[0], other)))
            if understood["kind"] == "tangent" and "touch" in understood:
                # An arc that touches a round from outside: their radii between their centres.
                curves = [self.features[name] for name in of]
                if {curve["kind"] for curve in curves} == {"arc", "round"}:
                    arc, other = sorted(curves, key=lambda curve: curve["kind"])
                    apart = self.size(arc["id"], "radius") + self.size(other["id"], "radius")
                    yield "centres", other["about"], arc["id"], apart
