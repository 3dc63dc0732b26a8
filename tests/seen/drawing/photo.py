"""A drawn sheet as a scanner or a phone shows it, and where its points then lie."""
import io

import numpy as np
from PIL import Image, ImageFilter


def _clouds(rng, shape, cell, amount):
    c = rng.normal(0, 1, (max(2, shape[0] // cell + 2), max(2, shape[1] // cell + 2))).astype(np.float32)
    return np.asarray(Image.fromarray(c).resize((shape[1], shape[0]), Image.BICUBIC)) * amount


def _blurred(tone, sigma):
    """Three boxes come near enough to a bell."""
    image = Image.fromarray(np.clip(tone, 0, 255).astype(np.uint8))
    return np.asarray(image.filter(ImageFilter.GaussianBlur(sigma)), np.float32)


def _pressed(tone, quality):
    store = io.BytesIO()
    Image.fromarray(np.clip(tone, 0, 255).astype(np.uint8)).save(store, "JPEG", quality=quality)
    return np.asarray(Image.open(store).convert("L"))


def _perspective(src, dst):
    """The 3 by 3 that takes the four src to the four dst."""
    rows, right = [], []
    for (x, y), (u, v) in zip(src, dst):
        rows += [[x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]]
        right += [u, v]
    return np.append(np.linalg.solve(np.array(rows), np.array(right)), 1).reshape(3, 3)


def _sampled(image, x, y, outside):
    h, w = image.shape
    inside = (x >= 0) & (y >= 0) & (x < w - 1) & (y < h - 1)
    x, y = np.where(inside, x, 0), np.where(inside, y, 0)
    i, j = x.astype(np.int32), y.astype(np.int32)
    fx, fy = (x - i).astype(np.float32), (y - j).astype(np.float32)
    flat, k = image.ravel(), j * w + i
    top = flat[k] * (1 - fx) + flat[k + 1] * fx
    low = flat[k + w] * (1 - fx) + flat[k + w + 1] * fx
    return np.where(inside, top * (1 - fy) + low * fy, outside)


def _photo(tone, rng, poor, curled, corners):
    h, w = tone.shape
    f = rng.uniform(0.7, 0.95) if poor else rng.uniform(0.95, 1.35)
    src = np.array([[0, 0], [w, 0], [w, h], [0, h]], float)
    dst = src * f + rng.uniform(-1, 1, (4, 2)) * 0.05 * max(w, h) * f
    dst -= dst.min(0) - 20
    size = np.ceil(dst.max(0) + 20).astype(int)
    M = _perspective(src, dst)
    back = np.linalg.inv(M)
    yy, xx = np.mgrid[0:size[1], 0:size[0]].astype(np.float32)
    z = back[2, 0] * xx + back[2, 1] * yy + back[2, 2]
    x, y = (back[0, 0] * xx + back[0, 1] * yy + back[0, 2]) / z, (back[1, 0] * xx + back[1, 1] * yy + back[1, 2]) / z
    bend = lambda u: 0.0
    if curled:  # the sheet bows: what lies at x is seen raised by a wave along it
        high, phase = rng.uniform(0.004, 0.010) * h, rng.uniform(0, np.pi)
        bend = lambda u: high * np.sin(np.pi * u / w + phase)
    y = y + bend(x)
    sharp = Image.fromarray(tone.astype(np.float32))
    if f < 1:  # what a pixel gathers
        sharp = Image.fromarray(_blurred(tone, 0.35 / f))
    photo = _sampled(np.asarray(sharp, np.float32), x, y, 150)
    a = rng.uniform(0, 2 * np.pi)
    fall = np.clip((xx / size[0] - .5) * np.cos(a) + (yy / size[1] - .5) * np.sin(a) + .5, 0, 2) ** 1.5
    photo = photo * (1 - (.4 if poor else .22) * fall) + _clouds(rng, photo.shape, 400, 5)
    photo = _blurred(photo, rng.uniform(1.1, 1.6) if poor else rng.uniform(0.6, 1.1))
    photo = photo + rng.normal(0, 7 if poor else 4, photo.shape)
    seen = []
    for u, v in corners:
        v = v - bend(u)
        p = M @ (u, v, 1)
        seen.append(p[:2] / p[2] + rng.normal(0, 1.0, 2))
    return _pressed(photo, 60 if poor else 82), seen


def _creased(tone, rng):
    h, w = tone.shape
    for _ in range(3):
        across = np.arange(w)[None] - rng.uniform(.2, .8) * w - (np.arange(h)[:, None] - h / 2) * rng.uniform(-.1, .1)
        tone = tone - 30 * np.exp(-(across / 2.5) ** 2) - 18 * np.exp(-((across - 6) / 4) ** 2)
    return tone


def shown(image, truth, how, white_on_blue=False):
    """(picture, points as [inches x, y, pixel x, y]); `how`: scan, phone, poor or curled."""
    rng = np.random.default_rng(truth["seed"] * 7 + 3)
    ink = (255 - np.asarray(image, np.float32)) / 255
    ink *= np.clip(0.92 + _clouds(rng, ink.shape, 9, 0.05), 0, 1)
    paper, black = (205, 95) if how == "poor" else (226, 45)
    tone = paper * (1 - ink) + black * ink
    corners = [c[2:] for c in truth["corners"]]
    if how == "scan":
        tone = _blurred(tone, 0.6) + rng.normal(0, 3, ink.shape)
        tone[rng.random(ink.shape) > 0.99985] -= 70
        picture, seen = _pressed(tone, 85), [np.array(c) + rng.normal(0, 0.5, 2) for c in corners]
    else:
        tone = tone + _clouds(rng, ink.shape, 3, 2.0)
        if how == "poor":
            tone = _creased(tone, rng)
        picture, seen = _photo(tone, rng, how == "poor", how == "curled", corners)
    points = [[*c[:2], *map(float, p)] for c, p in zip(truth["corners"], seen)]
    return (255 - picture if white_on_blue else picture), points
