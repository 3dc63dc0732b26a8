"""Where everything on a part lies, worked from its document: what its draughtsman drew."""

import math
import re
from fractions import Fraction

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
            text = self.true.get(reading["id"], reading["text"])
            yield reading["from"], reading["to"], reading["axis"], inches(text, self.unit)
        for feature in self.part["features"]:
            yield from self._own_links(feature)
        for understood in self.part["understood"]:
            of = understood["of"]
            if understood["kind"] == "in_line":
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
            self.at[(origin, axis)] = Fraction(0)
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
