"""The prints: which view stands where on its sheet, and where each dimension and note does."""

import math

from drawing.geometry import Drawn
from drawing.paper import CHAIN, FRAME, OUTLINE, THIN, Sheet
from drawing.view import View

PPI = 190


def _sheet(width, height, seed):
    sheet = Sheet(width, height, PPI, seed)
    corners = [(0.3, 0.3), (width - 0.3, 0.3), (width - 0.3, height - 0.3), (0.3, height - 0.3)]
    for start, end in zip(corners, corners[1:] + corners[:1]):
        sheet.line(start, end, FRAME)
    return sheet


def _title_block(sheet, drawn, scale, several=None):
    """A strip along the foot: what it is, what it is made of, and how close.

    `several` is what a sheet of several parts is called; what each is made of stands beside it."""
    job, part = drawn.document["job"], drawn.part
    right, top = sheet.width - 0.3, 1.2
    cuts = [0.3 + (right - 0.3) * share for share in (0, 0.40, 0.70, 1)]
    sheet.line((0.3, top), (right, top), OUTLINE)
    for cut in cuts[1:-1]:
        sheet.line((cut, 0.3), (cut, top), OUTLINE)
    small = 0.085

    def column(left, lines, first=0.96, step=0.24):
        for i, line in enumerate(lines):
            sheet.text((left + 0.12, first - step * i), line, small, clear=False)

    sheet.text((cuts[0] + 0.12, 0.90), (several or part["name"]).upper(), 0.17, clear=False)
    column(cuts[0], [job["title"].upper(), job["print"].upper()], 0.66, 0.2)
    count = f"{part['quantity']} OFF"
    if part.get("hand"):
        count += f", {part['hand'].upper()} HAND AS DRAWN"
    made_of = [part["material"].upper(), count]
    if several:
        made_of = ["MATERIALS AND NUMBERS", "AS NOTED"]
    column(cuts[1], made_of + [scale])
    general = part["general"]
    if drawn.unit == "mm":
        limits = ["DIMENSIONS IN MILLIMETRES", "GENERAL TOLERANCES", "MEDIUM: ISO 2768"]
    else:
        two, three = (general[key].lstrip("0") for key in ("two_places", "three_places"))
        limits = ["UNLESS OTHERWISE STATED", f"FRACTIONS ±{general['fractions']}",
                  f".00 ±{two}   .000 ±{three}"]
    column(cuts[2], limits)


def _note(sheet, at, lines):
    for i, line in enumerate(lines):
        sheet.text((at[0], at[1] - 0.2 * i), line, 0.095)


def _called(drawn, name):
    """What the print says of a hole, but for how many there are."""
    hole = drawn.features[name]
    if hole["kind"] == "slot":
        return f"SLOT {hole['width']} × {hole['length']}"
    if hole["make"] == "tap":
        words = f"TAP {hole['thread']}"
    elif hole["make"] in ("ream", "bore"):
        words = f"{hole['make'].upper()} {hole['diameter']}"
    else:
        words = f"{hole['diameter']} DRILL"
    if "seat_diameter" in hole:
        words += f", C'SINK {hole['seat_diameter']}"
    return words if hole["depth"] == "through" else f"{words}, {hole['depth']} DEEP"


def _on_circle(drawn, name):
    return f"ON {drawn.features[name]['pcd']} P.C.D."


def _holes(view, names):
    for name in names:
        view.hole(name, view.drawn.size(name, "diameter"))


def _taps(view, names, drill, thread):
    for name in names:
        view.hole(name, drill, thread=thread)


def _ring(view, name, drill, thread=None):
    ring = view.drawn.features[name]
    centre = view.on(*view.place(name))
    view.sheet.arc(centre, view.drawn.size(name, "pcd") * view.scale / 2, 0, 360, THIN, CHAIN)
    for i in range(ring["holes"]):
        view.hole(f"{name}{i + 1}", drill, thread=thread)


def _plate(drawn, height, seed):
    """What the two plates have in common: the outline, pillars, arbors, and their chains."""
    sheet = _sheet(9.4, height + 5.4, seed)
    plan = View(sheet, drawn, "plan", "xy", (2.5, 3.95), (0, 0, 3.875, height))
    plan.outline()
    _holes(plan, "ABCDEGHJ")
    for place, axis in (("A", "x"), ("B", "x"), ("E", "x"), ("A", "y"), ("C", "y")):
        plan.centre_line(axis, drawn(place, axis), 0.14)
    sheet.text(plan.on(drawn("E", "x"), -0.26), "℄", align="centre")
    for reading, at in (("r1", -0.38), ("r2", -0.38), ("r3", -0.38), ("r4", -1.12),
                        ("r5", 4.22), ("r6", 4.22), ("r7", 4.22),
                        ("r8", -0.95), ("r9", -0.95), ("r10", -0.95), ("r11", -0.95),
                        ("r12", -0.95), ("r13", -1.6), ("r14", height + 0.38),
                        ("r15", height + 0.38)):
        # These two keep clear of the centre line.
        shift = {"r2": 0.45, "r4": 0.5}.get(reading, 0.0)
        plan.dim(reading, at, shift)
    return sheet, plan


def front_plate(drawn):
    sheet, plan = _plate(drawn, 6.25, 21)
    _taps(plan, "NPQ", 0.136, 0.164)
    _ring(plan, "M", drawn.size("M", "diameter"))
    for i in range(1, 5):
        plan.hole(f"S{i}", drawn.size("S", "diameter"))
    plan.hidden_hole("V", drawn.size("V", "diameter"), "y", drawn.size("V", "depth"))
    for reading, at in (("r16", 7.0), ("r17", 7.0), ("r18", 6.63), ("r19", 4.62), ("r20", -0.75),
                        ("r21", -0.42)):
        plan.dim(reading, at)
    plan.span("S1", "S2", "x", drawn.features["S"]["pitch"], -0.75)
    edge = View(sheet, drawn, "front edge", "xz", (2.5, 1.93), (0, 0, 3.875, drawn("T", "z")),
                "front")
    edge.outline()
    edge.hole("V", drawn.size("V", "diameter"))
    for reading, at in (("r22", -0.32), ("r23", -0.32), ("r24", -0.35), ("r25", 4.25)):
        edge.dim(reading, at, beyond=-1 if reading == "r24" else 1)
    for view in (plan, edge):
        view.extensions()
    plan.leader(plan.rim("C", 0.266, 35), (7.35, 10.45), [_called(drawn, "C"), "4 HOLES"])
    plan.leader(plan.rim("Q", 0.164, 20), (7.45, 8.95), [_called(drawn, "Q"), "3 HOLES"])
    plan.leader(plan.rim("H", 0.25, -15), (7.35, 7.35), [_called(drawn, "H"), "3 HOLES"])
    plan.leader(plan.rim("M3", 0.125, 0), (7.35, 6.25),
                [_called(drawn, "M") + " 3 HOLES", "EQUALLY SPACED", _on_circle(drawn, "M")])
    plan.leader(plan.rim("S4", 0.094, 15), (7.35, 4.98), [_called(drawn, "S"), "4 HOLES"])
    plan.leader(plan.rim("J", 0.1875, 120), (3.55, 9.28), [_called(drawn, "J")], -1)
    edge.leader(edge.rim("V", 0.125, 50), (4.1, 2.52), [_called(drawn, "V")])
    _note(sheet, (7.2, 3.3), ["ALL HOLES THRO'", "UNLESS NOTED.", "", "BREAK ALL SHARP", "EDGES."])
    _title_block(sheet, drawn, "SCALE: FULL SIZE")
    return sheet, [plan, edge]


def back_plate(drawn):
    sheet, plan = _plate(drawn, 6.5, 22)
    _taps(plan, "NP", 0.136, 0.164)
    slot = drawn.features["W"]
    plan.slot("W", slot["axis"], drawn.size("W", "width"), drawn.size("W", "length"))
    for i in range(1, 6):
        plan.hole(f"S{i}", drawn.size("S", "diameter"))
    for reading, at in (("r16", 7.25), ("r17", 7.25), ("r18", -0.45), ("r19", -0.45),
                        ("r20", -0.45), ("r21", -0.75), ("r22", 4.6)):
        plan.dim(reading, at)
    plan.span("S1", "S2", "x", drawn.features["S"]["pitch"], -0.75)
    edge = View(sheet, drawn, "right edge", "zy", (8.45, 3.95), (0, 0, drawn("T", "z"), 6.5),
                "right")
    edge.outline()
    edge.dim("r23", -0.38, beyond=-1)
    for view in (plan, edge):
        view.extensions()
    plan.leader(plan.on(2.3, 6.1), (5.7, 10.85), [_called(drawn, "W")])
    plan.leader(plan.rim("C", 0.266, 35), (7.1, 10.25), [_called(drawn, "C"), "4 HOLES"])
    plan.leader(plan.rim("P", 0.164, -10), (7.1, 9.05), [_called(drawn, "P"), "2 HOLES"])
    plan.leader(plan.rim("J", 0.375, -35), (4.6, 8.45), [_called(drawn, "J")])
    plan.leader(plan.rim("H", 0.25, -15), (7.1, 7.35), [_called(drawn, "H"), "3 HOLES"])
    plan.leader(plan.rim("S5", 0.125, 15), (7.1, 5.5), [_called(drawn, "S"), "5 HOLES"])
    _note(sheet, (6.6, 2.6), ["ALL HOLES THRO'.", "DRAWN AS SEEN FROM", "THE FRONT OF THE CLOCK."])
    _title_block(sheet, drawn, "SCALE: FULL SIZE")
    return sheet, [plan, edge]


def bracket(drawn):
    sheet = _sheet(11, 6.9, 23)
    plan = View(sheet, drawn, "plan", "xy", (2.3, 4.55), (0, 0, 4.25, 0.75), scale=1.5)
    left, right, radius = drawn("A", "x"), drawn("D", "x"), drawn.size("E", "radius")
    for y in (0, 0.75):
        sheet.line(plan.on(left, y), plan.on(right, y), OUTLINE)
    for name, start in (("A", 90), ("D", -90)):
        sheet.arc(plan.on(*plan.place(name)), radius * plan.scale, start, start + 180)
    _holes(plan, "ACD")
    sheet.arc(plan.on(*plan.place("C")), drawn.size("C", "seat_diameter") * plan.scale / 2)
    _taps(plan, "B", 0.201, 0.25)
    plan.centre_line("y", drawn("A", "y"), 0.2)
    for reading, at in (("r1", -0.42), ("r2", -0.42), ("r3", -0.42), ("r4", -0.84), ("r6", -0.55)):
        plan.dim(reading, at)
    plan.span("E", "G", "x", drawn.readings["r5"]["text"], -1.26, 0.0)
    edge = View(sheet, drawn, "front edge", "xz", (2.3, 2.0), (0, 0, 4.25, 0.25), "front", 1.5)
    edge.outline()
    for name in "ABCD":
        edge.hidden_hole(name, drawn.size(name, "diameter") if name != "B" else 0.25, "z")
    edge.dim("r7", 6.375 + 0.4)
    for view in (plan, edge):
        view.extensions()
    plan.leader(plan.rim("A", 0.3125, 70), (3.2, 6.15), [_called(drawn, "A")])
    plan.leader(plan.rim("B", 0.25, 60), (5.0, 6.15), [_called(drawn, "B")])
    plan.leader(plan.rim("C", 0.375, 60), (7.0, 6.15), [_called(drawn, "C")])
    plan.leader(plan.rim("D", 0.25, 20), (9.1, 5.55), [_called(drawn, "D")])
    plan.leader(plan.on(right + radius * 0.866, 0.375 - radius * 0.5), (9.1, 4.6),
                [f"{drawn.features['E']['radius']} R", "BOTH ENDS"])
    _title_block(sheet, drawn, "SCALE: 1 1/2 FULL SIZE")
    return sheet, [plan, edge]


def barrel_bridge(drawn):
    sheet = _sheet(11, 8.3, 24)
    plan = View(sheet, drawn, "plan", "xy", (2.4, 3.25), (0, 0, 3, 1.625), scale=2)
    plan.outline()
    _holes(plan, "ABCD")
    _taps(plan, "E", 0.136, 0.164)
    plan.centre_line("y", drawn("A", "y"), 0.14)
    for reading, at in (("r1", -0.45), ("r6", -0.45), ("r7", -0.45), ("r4", -0.45), ("r5", -1.4),
                        ("r2", -0.9), ("r3", -0.9), ("r8", 3.7), ("r9", -0.5), ("r10", -0.5),
                        ("r11", -0.5), ("r12", -1.2), ("r13", 6.45)):
        plan.dim(reading, at)
    edge = View(sheet, drawn, "right edge", "zy", (9.75, 3.25), (0, 0, drawn("T", "z"), 1.625),
                "right", 2)
    edge.outline()
    for name in "BE":
        edge.hidden_hole(name, drawn.size("B", "diameter") if name == "B" else 0.164, "z")
    edge.dim("r14", -0.45)
    for view in (plan, edge):
        view.extensions()
    plan.leader(plan.rim("A", 0.14, 65), (3.45, 4.75), [_called(drawn, "A"), "2 HOLES"])
    plan.leader(plan.rim("B", 0.3125, 130), (4.1, 6.15), [_called(drawn, "B")], -1)
    plan.leader(plan.rim("E", 0.164, 60), (7.2, 7.3), [_called(drawn, "E")])
    plan.leader(plan.rim("D", 0.125, 60), (6.0, 4.85), [_called(drawn, "D")])
    _title_block(sheet, drawn, "SCALE: TWICE FULL SIZE")
    return sheet, [plan, edge]


def pendulum_hanger(drawn):
    sheet = _sheet(11, 9.3, 25)
    wide, deep = drawn("R", "x"), drawn("K", "y")
    plan = View(sheet, drawn, "plan", "xy", (2.5, 4.35), (0, 0, wide, deep), scale=2)
    plan.outline()
    _holes(plan, "ABCE")
    tap, thread = 2.5 / 25.4, 3 / 25.4
    _ring(plan, "D", tap, thread)
    plan.slot("G", "y", drawn.size("G", "width"), drawn.size("G", "length"))
    plan.hidden_hole("H", 4 / 25.4, "y", drawn.size("H", "depth"))
    plan.centre_line("y", drawn("A", "y"), 0.14)
    for reading, at in (("r1", -0.42), ("r2", -0.42), ("r3", -0.42), ("r4", -0.42), ("r5", -0.84),
                        ("r6", -1.0), ("r7", -1.0), ("r8", -1.0), ("r9", -1.6),
                        ("r10", deep * 2 + 0.4), ("r12", deep * 2 + 0.4), ("r13", -0.42),
                        ("r11", wide * 2 + 0.4)):
        plan.dim(reading, at)
    edge = View(sheet, drawn, "front edge", "xz", (2.5, 1.95), (0, 0, wide, drawn("T", "z")),
                "front", 2)
    edge.outline()
    _taps(edge, "H", 3.3 / 25.4, 4 / 25.4)
    for reading, at in (("r14", -0.35), ("r15", -0.35), ("r16", -0.4), ("r17", wide * 2 + 0.4)):
        edge.dim(reading, at)
    for view in (plan, edge):
        view.extensions()
    plan.leader(plan.rim("E", 4 / 25.4, 50), (8.5, 8.3), [_called(drawn, "E")])
    plan.leader(plan.rim("D1", 3 / 25.4, -20), (8.6, 5.95),
                [_called(drawn, "D") + " 6 HOLES", _on_circle(drawn, "D")])
    plan.leader(plan.rim("C", 10 / 25.4, 20), (6.1, 6.92), [_called(drawn, "C")])
    plan.leader(plan.rim("B", 5.5 / 25.4, 20), (8.6, 5.2), [_called(drawn, "B"), "2 HOLES"])
    plan.leader(plan.on(13 / 25.4, 27 / 25.4), (3.62, 5.36), [_called(drawn, "G")])
    edge.leader(edge.rim("H", 4 / 25.4, 35), (5.6, 3.0), [_called(drawn, "H")])
    _title_block(sheet, drawn, "SCALE: TWICE FULL SIZE")
    return sheet, [plan, edge]


def _caption(view, at):
    part = view.drawn.part
    count = f"{part['quantity']} OFF" + (f", {part['hand'].upper()} HAND" if "hand" in part else "")
    view.sheet.text(at, part["name"].upper(), 0.13)
    view.sheet.text((at[0], at[1] - 0.2), f"{part['material'].upper()}, {count}", 0.09)


def click_work(plate):
    sheet = _sheet(11, 10.6, 26)
    plan = View(sheet, plate, "Click plate", "xy", (2.2, 6.2), (0, 0, 2.25, 1.5), scale=2)
    plan.outline()
    _holes(plan, "ABCDE")
    plan.centre_line("y", plate("B", "y"), 0.14)
    plan.centre_line("y", plate("D", "y"), 0.14)
    for reading, at in (("r1", -1.25), ("r3", -0.85), ("r8", -0.45), ("r9", -0.45), ("r5", 3.4),
                        ("r6", 3.4), ("r2", -1.25), ("r4", -0.85), ("r10", -0.45), ("r7", 5.0)):
        plan.dim(reading, at)
    edge = View(sheet, plate, "Click plate, right edge", "zy", (8.5, 6.2),
                (0, 0, plate("T", "z"), 1.5), "right", 2)
    edge.outline()
    edge.dim("r11", -0.4)
    views = [plan, edge]
    for part, left in ((1, 1.5), (2, 6.4)):
        click = Drawn(plate.document, part=part)
        right, back = click("R", "x"), click("K", "y")
        view = View(sheet, click, click.part["name"], "xy", (left, 2.75), (0, 0, right, back),
                    scale=2)
        view.outline()
        _holes(view, "AH")
        for reading, at in (("r1", -0.95), ("r3", -0.5), ("r4", -0.5), ("r2", -0.75),
                            ("r5", -0.4), ("r6", 2 * right + 0.35)):
            view.dim(reading, at)
        thin = View(sheet, click, click.part["name"] + ", right edge", "zy", (left + 3.0, 2.75),
                    (0, 0, click("T", "z"), back), "right", 2)
        thin.outline()
        thin.dim("r7", -0.4)
        views += [view, thin]
        _caption(view, (left, 4.4))
        view.leader(view.rim("A", 0.125, 60), (left + 0.45, 3.85), [_called(click, "A")])
        view.leader(view.rim("H", click.size("H", "diameter"), 40), (left + 2.1, 3.6),
                    [_called(click, "H")])
    for view in views:
        view.extensions()
    _caption(plan, (2.2, 10.0))
    plan.leader(plan.rim("A", 0.3125, -50), (5.3, 6.85), [_called(plate, "A")])
    plan.leader(plan.rim("B", 0.125, 120), (5.35, 8.75), [_called(plate, "B")], -1)
    plan.leader(plan.rim("C", 0.125, -60), (3.3, 7.75), [_called(plate, "C")])
    plan.leader(plan.rim("E", 9 / 64, 60), (7.05, 7.05), [_called(plate, "E"), "2 HOLES"])
    _title_block(sheet, plate, "SCALE: TWICE FULL SIZE", "Click work, flat parts")
    return sheet, views


def _diameter(drawn, name):
    feature = drawn.features[name]
    if feature["kind"] == "screwed":
        return [feature["thread"]]
    if feature["kind"] == "taper":
        return [f"{feature['large']} DIA AT THIS END", f"TAPER {feature['per_foot']} PER FOOT"]
    return [feature["diameter"] + " DIA"]


def click_work_turned(plate):
    sheet = _sheet(11, 9.4, 27)
    views = []
    for part, origin, notes, dims in (
            (3, (1.7, 7.2), (("H", 0.3, (1.85, 8.1)), ("P", 0.6, (2.3, 7.8)),
                             ("N", 0.6, (2.75, 7.5))), (("r1", -0.85), ("r2", -1.25),
                                                       ("r3", -1.6))),
            (4, (7.2, 7.1), (("G", 0.5, (7.6, 8.25)), ("P", 0.7, (8.0, 7.9)),
                             ("B", 0.8, (8.2, 7.4))), (("r1", -1.3), ("r2", -1.65))),
            (5, (2.4, 3.3), (("A", 0.98, (4.9, 4.75)), ("B", 0.5, (5.9, 4.5)),
                             ("P", 0.7, (7.2, 4.1))), (("r1", -1.1), ("r2", -1.5), ("r3", -1.1),
                                                      ("r4", -1.9)))):
        drawn = Drawn(plate.document, part=part)
        half = max(max(View(sheet, drawn, "", "xy", origin, (0, 0, 0, 0)).radii(feature))
                   for feature in drawn.features.values() if "between" in feature)
        right = drawn("R", "x")
        view = View(sheet, drawn, drawn.part["name"], "xy", origin, (0, -half, right, half),
                    scale=4)
        view.turned()
        for reading, at in dims:
            view.dim(reading, at)
        for name, share, elbow in notes:
            taper = drawn.features[name]["kind"] == "taper"
            view.leader(view.surface(name, share), elbow, _diameter(drawn, name),
                        -1 if taper else 1)
        for feature in drawn.features.values():
            if feature["kind"] == "chamfer":
                at = view.on(right, view.radii(drawn.features["N"])[1])
                view.leader(at, (3.0, 7.15), [f"{feature['length']} × {feature['angle']}°"])
            if feature["kind"] == "centre_drill":
                number = feature["size"].strip("#")
                view.leader(view.on(right, 0), (7.6, 3.6), [f"CENTRE DRILL No {number}".upper()])
        view.extensions()
        views.append(view)
    _caption(views[0], (1.2, 8.75))
    _caption(views[1], (6.7, 8.75))
    _caption(views[2], (2.0, 5.2))
    _title_block(sheet, plate, "SCALE: FOUR TIMES FULL SIZE", "Click work, turned parts")
    return sheet, views


def wheel_train(drawn):
    sheet = _sheet(11, 10.2, 26)
    wide, high = drawn("R", "x"), drawn("K", "y")
    plan = View(sheet, drawn, "plan", "xy", (2.3, 2.75), (0, 0, wide, high), scale=1.4)
    plan.outline()
    _holes(plan, "ABCDENPQS")
    for reading, at in (("r1", -1.2), ("r4", -0.42), ("r5", -0.42), ("r8", -0.8), ("r2", -1.2),
                        ("r6", -0.42), ("r7", -0.42), ("r9", -0.8)):
        plan.dim(reading, at)
    plan.slant("r10", share=0.5)
    plan.slant("r12", share=0.58)
    plan.slant("r13", share=0.5)
    plan.slant("r14", share=0.45)
    plan.slant("r16", share=0.5)
    plan.slant("r17", share=0.74)
    plan.turn("r11", 0.62)
    plan.turn("r15", 0.55)
    edge = View(sheet, drawn, "right edge", "zy", (9.3, 2.75), (0, 0, drawn("T", "z"), high),
                "right", 1.4)
    edge.outline()
    edge.dim("r3", -0.42)
    for view in (plan, edge):
        view.extensions()
    plan.leader(plan.rim("A", 0.25, 200), (1.95, 4.6), [_called(drawn, "A")], -1)
    plan.leader(plan.rim("C", 0.1875, 20), (7.9, 5.9), [_called(drawn, "C"), "2 HOLES"])
    plan.leader(plan.rim("E", 0.125, 30), (7.9, 8.15), [_called(drawn, "E"), "2 HOLES"])
    plan.leader(plan.rim("S", 0.171875, 60), (7.9, 9.0), [_called(drawn, "S"), "4 HOLES"])
    _title_block(sheet, drawn, "SCALE: 1.4 FULL SIZE")
    return sheet, [plan, edge]


def cock(drawn):
    sheet = _sheet(11, 6.4, 27)
    right, hollow = drawn("B", "x"), (drawn("N", "x"), drawn("N", "y"))
    plan = View(sheet, drawn, "plan", "xy", (2.6, 3.0), (-0.375, -0.375, right + 0.375, 0.375),
                scale=2)
    radius = drawn.size("D", "radius")
    lean = math.degrees(math.atan2(hollow[1], hollow[0]))
    sheet.arc(plan.on(0, 0), radius * 2, lean, 270)
    sheet.arc(plan.on(right, 0), radius * 2, -90, 180 - lean)
    sheet.line(plan.on(0, -radius), plan.on(right, -radius), OUTLINE)
    sheet.arc(plan.on(*hollow), drawn.size("N", "radius") * 2, 180 + lean, 360 - lean)
    _holes(plan, "ABC")
    plan.centre_line("y", 0, 0.2)
    plan.dim("r1", -1.3)
    plan.slant("r2", share=0.62)
    plan.turn("r3", 1.35)
    plan.extensions()
    plan.leader(plan.rim("A", 0.25, 120), (2.0, 4.9), [_called(drawn, "A"), "2 HOLES"], -1)
    plan.leader(plan.rim("C", 0.125, -60), (5.2, 1.9), [_called(drawn, "C")])
    plan.leader(plan.on(right + radius * 0.94, -radius * 0.34), (9.1, 2.2),
                [f"{drawn.features['D']['radius']} R", "BOTH ENDS"])
    plan.leader(plan.on(1.25, hollow[1] - drawn.size("N", "radius")), (5.8, 4.6),
                [f"{drawn.features['N']['radius']} R TO TOUCH", "BOTH ENDS"])
    _title_block(sheet, drawn, "SCALE: TWICE FULL SIZE")
    return sheet, [plan]


# What each print is drawn from: its layout, readings lettered otherwise than drawn, and how far
# askew the copy lies, in degrees.
PRINTS = {
    "front_plate": (front_plate, {}, 0.0),
    "back_plate": (back_plate, {}, 0.8),
    "bracket": (bracket, {}, 0.0),
    "barrel_bridge": (barrel_bridge, {"r3": "1 7/16"}, 0.0),
    "pendulum_hanger": (pendulum_hanger, {}, 0.0),
    "click_work": (click_work, {}, 0.0),
    "click_work_turned": (click_work_turned, {}, 0.0),
    "wheel_train": (wheel_train, {}, 0.0),
    "cock": (cock, {}, 0.0),
}

# Which document a print belongs to, where it is not that of its own name.
DOCUMENTS = {"click_work_turned": "click_work"}
