#!/usr/bin/env python3
"""Plans the cases of this folder a second time, by another route, and writes NAME.expected.json beside each NAME.case.toml.

Written from the description of the formats alone and with nothing but Python's standard library (3.11): exact decimals for
lengths, Gaussian elimination of the normal equations for the fits, the fit made anew without a reading to judge it, the reduction
formula of powers of the cosine for Student's t, a series for chi-squared, Simpson's rule for the entry chance. It shares no code with the program. Run from anywhere:  python3 tests/cases/expected.py
"exit" is what `graftside plan` ends with. Texts and notes are left out.
"""

import csv
import json
import math
import pathlib
import tomllib
from decimal import ROUND_HALF_UP, Decimal

HERE = pathlib.Path(__file__).resolve().parent
PROFILES = HERE.parent.parent / "assets" / "instruments"
TV, TV_SD = 0.0088, 0.0020
READING_SD = {"ultrasound": 8, "oct": 6, "scheimpflug": 5, "slit-scanning": 5}


def load(path):
    with open(path, "rb") as file:
        return tomllib.load(file, parse_float=Decimal)


def rounded(value, step="0.1"):
    return float(Decimal(repr(float(value))).quantize(Decimal(step), ROUND_HALF_UP))


def turn(deg):
    """In [0, 360): a decimal's own remainder keeps the sign."""
    return (deg % 360 + 360) % 360


def clock_deg(text):
    hour, minute = text.split(":")
    return turn(Decimal(90) - 30 * Decimal(hour) - Decimal(minute) / 2)


def reading_deg(reading):
    return clock_deg(reading["clock"]) if "clock" in reading else turn(Decimal(reading["meridian_deg"]))


# ---- thickness on the cut


def solve(matrix, right):
    """Gaussian elimination with the largest pivot; None when singular."""
    n = len(matrix)
    rows = [list(map(float, matrix[i])) + [float(right[i])] for i in range(n)]
    for col in range(n):
        best = max(range(col, n), key=lambda i: abs(rows[i][col]))
        if abs(rows[best][col]) < 1e-9:
            return None
        rows[col], rows[best] = rows[best], rows[col]
        for i in range(n):
            if i != col:
                factor = rows[i][col] / rows[col][col]
                rows[i] = [a - factor * b for a, b in zip(rows[i], rows[col])]
    return [rows[i][n] / rows[i][i] for i in range(n)]


def harmonics(deg, order):
    a = math.radians(float(deg))
    return [1.0] + [f(k * a) for k in range(1, order + 1) for f in (math.cos, math.sin)]


def fit_circle(readings, diameter, sd):
    degs = [reading_deg(r) for r in readings]
    rise = lambda d: 1 + TV * (float(d) / 2) ** 2
    carried = [float(r["um"]) * rise(diameter) / rise(r["ring_mm"]) for r in readings]
    n = len(readings)
    for order in range(min(2, (n - 1) // 2), 0, -1):
        rows = [harmonics(d, order) for d in degs]
        p = 2 * order + 1
        normal = [[sum(r[i] * r[j] for r in rows) for j in range(p)] for i in range(p)]

        def root_leverage(deg):
            h = harmonics(deg, order)
            x = solve(normal, h)
            return math.inf if x is None else math.sqrt(max(0.0, sum(a * b for a, b in zip(h, x))))

        if max(root_leverage(deg) for deg in range(360)) > 2:
            continue
        c = solve(normal, [sum(r[i] * y for r, y in zip(rows, carried)) for i in range(p)])
        value = lambda deg: sum(a * b for a, b in zip(c, harmonics(deg, order)))
        profile = [value(deg) for deg in range(360)]
        places = [(profile[deg], deg) for deg in range(360)]
        places += [(y, float(d)) for y, d in zip(carried, degs)]
        least = min(v for v, _ in places)
        at = min(d for v, d in places if v <= least + 1e-8)
        rms = math.sqrt(sum((value(d) - y) ** 2 for d, y in zip(degs, carried)) / n) if n > p else None
        return {"basis": "circle", "thinnest": rounded(least), "deg": at, "mean": sum(profile) / 360,
                "u": sd * root_leverage(at), "rms": rms, "profile": profile}
    return None


def from_centre(central, diameter, centre, sd):
    x, y = (float(v) for v in centre)
    r = [math.hypot(x + float(diameter) / 2 * math.cos(math.radians(d)), y + float(diameter) / 2 * math.sin(math.radians(d)))
         for d in range(360)]
    profile = [float(central) * (1 + TV * v * v) for v in r]
    at = profile.index(min(profile))
    u = math.sqrt((sd * (1 + TV * r[at] ** 2)) ** 2 + (TV_SD * float(central) * r[at] ** 2) ** 2)
    return {"basis": "centre", "thinnest": rounded(profile[at] - 23), "deg": None, "mean": sum(profile) / 360, "u": u,
            "rms": None, "profile": profile}


# ---- a surface through readings on several rings


def powers(x, y, order):
    """The terms of a polynomial of that degree; degree 1 has the rise, the same all round, as well. Parts of 4 mm."""
    x, y = x / 4, y / 4
    terms = [x ** (d - k) * y ** k for d in range(order + 1) for k in range(d + 1)]
    return terms + [x * x + y * y] if order == 1 else terms


class Surface:
    def __init__(self, spots, order):
        self.spots, self.order = spots, order
        self.rows = [powers(x, y, order) for x, y, _ in spots]
        self.p = len(self.rows[0])
        self.normal = [[sum(r[i] * r[j] for r in self.rows) for j in range(self.p)] for i in range(self.p)]
        right = [sum(r[i] * um for r, (_, _, um) in zip(self.rows, spots)) for i in range(self.p)]
        self.c = solve(self.normal, right) if len(spots) >= self.p else None

    def at(self, x, y):
        return sum(a * b for a, b in zip(self.c, powers(x, y, self.order)))

    def root_leverage(self, x, y):
        h = powers(x, y, self.order)
        return math.sqrt(max(0.0, sum(a * b for a, b in zip(h, solve(self.normal, h)))))

    def squares(self):
        return sum((self.at(x, y) - um) ** 2 for x, y, um in self.spots)

    def scatter(self):
        return math.sqrt(self.squares() / (len(self.spots) - self.p))


def chi_squared_below(x, df):
    """P(chi-squared <= x): the series of the lower incomplete gamma function."""
    a, half = df / 2, x / 2
    term = total = 1 / a
    n = 0
    while term > total * 1e-16:
        n += 1
        term *= half / (a + n)
        total += term
    return total * math.exp(a * math.log(half) - half - math.lgamma(a))


def explained(sd, spare):
    low, high = 0.0, 100.0 + 10 * spare
    for _ in range(100):
        middle = (low + high) / 2
        low, high = (middle, high) if chi_squared_below(middle, spare) < 0.975 else (low, middle)
    return sd * math.sqrt(low / spare)


def sound(spots, order, sd):
    """The readings without those that the others do not bear out, each judged by the fit made without it."""
    kept, aside, odd = list(spots), [], 0
    for _ in range(min(5, max(1, len(spots) // 10))):
        whole = Surface(kept, order)
        spare = len(kept) - whole.p
        if whole.c is None or spare < 2:
            break
        judged = []
        for i, (x, y, um) in enumerate(kept):
            rest = Surface(kept[:i] + kept[i + 1:], order)
            if rest.c is None or 1 - whole.root_leverage(x, y) ** 2 < 1e-9:
                continue
            s = max(sd, math.sqrt(rest.squares() / (spare - 1)))
            judged.append((abs(um - rest.at(x, y)) / (s * math.sqrt(1 + rest.root_leverage(x, y) ** 2)), i))
        t, i = max(judged)
        aside.append(kept[i])
        if t > t_quantile(1 - 0.05 / (2 * len(kept)), spare - 1):
            odd = len(aside)
        del kept[i]
    return [spot for spot in spots if spot not in aside[:odd]]


def fit_map(spots, cut, sd):
    """The surface of the order that the readings call for and can bear all round the cut; None where none is."""
    widest = lambda f: max(f.root_leverage(x, y) for x, y, _ in spots)
    bears = lambda f: max(f.root_leverage(x, y) for x, y in cut) <= 1.5 * widest(f)
    best = None
    for order in (2, 3, 4):
        if order > 2 and len(spots) < (order + 1) * (order + 2):
            break
        surface = Surface(spots, order)
        if surface.c is None:
            if order == 2:
                surface = Surface(spots, 1)
                best = surface if surface.c is not None and bears(surface) else None
            break
        if not bears(surface):
            break
        best = surface
        if surface.scatter() <= explained(sd, len(spots) - surface.p):
            break
        rest = Surface(sound(spots, order, sd), order)
        if rest.scatter() <= explained(sd, len(rest.spots) - rest.p):
            break
    return best


def from_map(spots, diameter, centre, sd):
    r, (cx, cy) = float(diameter) / 2, (float(v) for v in centre)
    on_cut = lambda deg: (cx + r * math.cos(math.radians(deg)), cy + r * math.sin(math.radians(deg)))
    cut = [on_cut(d) for d in range(360)]
    surface = fit_map(spots, cut, sd)
    if surface is None:
        return None
    profile = [surface.at(x, y) for x, y in cut]
    places = [(v, d) for d, v in enumerate(profile)]
    rise = lambda x, y: 1 + TV * (x * x + y * y)
    for x, y, um in spots:
        if abs(2 * math.hypot(x - cx, y - cy) - 2 * r) <= 0.25 + 1e-5:
            deg = math.floor(math.degrees(math.atan2(y - cy, x - cx)) * 100 + 0.5) / 100 % 360
            places.append((um * rise(*on_cut(deg)) / rise(x, y), deg))
    least = min(v for v, _ in places)
    at = min(d for v, d in places if v <= least + 1e-8)
    scatter = surface.scatter()
    wide = scatter if scatter > explained(sd, len(spots) - surface.p) else sd
    return {"basis": "map", "thinnest": rounded(least), "deg": at, "mean": sum(profile) / 360, "u": wide * surface.root_leverage(*on_cut(at)),
            "rms": math.sqrt(surface.squares() / len(spots)), "profile": profile}


def spots_of(thickness):
    spots = []
    for r in thickness.get("readings", []):
        a, ring = math.radians(float(reading_deg(r))), float(r["ring_mm"]) / 2
        spots.append((ring * math.cos(a), ring * math.sin(a), float(r["um"])))
    return spots + [(0.0, 0.0, float(thickness["central_um"]))] if "central_um" in thickness else spots


def wall(case):
    """The wall, and whether a depth may be planned from it."""
    thickness, diameter = case["thickness"], case["host"]["diameter_mm"]
    sd = READING_SD[thickness["method"]]
    readings = thickness.get("readings", [])
    near = [r for r in readings if abs(r["ring_mm"] - diameter) <= Decimal("0.25")]
    if len({reading_deg(r) for r in near}) >= 3:
        found = fit_circle(near, diameter, sd)
        return found, found is not None
    spots = spots_of(thickness)
    rings = {r["ring_mm"] for r in readings} | ({0} if "central_um" in thickness else set())
    if len(spots) >= 9 and len(rings) >= 2:
        found = from_map(spots, diameter, case["host"].get("centre_mm", [0, 0]), sd)
        return found, found is not None
    found = from_centre(thickness["central_um"], diameter, case["host"].get("centre_mm", [0, 0]), sd)
    may = thickness.get("edge") == "looks-normal" and case["case"]["reason"] not in ("keratoconus", "oedema")
    return found, may


# ---- blade ladder


def cosine_power(m, theta):
    """The integral of cos^m from -pi/2 to theta."""
    if m == 0:
        return theta + math.pi / 2
    if m == 1:
        return math.sin(theta) + 1
    return math.cos(theta) ** (m - 1) * math.sin(theta) / m + (m - 1) / m * cosine_power(m - 2, theta)


def t_above(x, df):
    """P(t >= x): with t = sqrt(df) tan(theta) the density is a power of the cosine."""
    theta = math.atan(x / math.sqrt(df))
    return cosine_power(df - 1, -theta) / cosine_power(df - 1, math.pi / 2)


def t_quantile(p, df):
    low, high = 0.0, 1e3
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if t_above(middle, df) > 1 - p else (low, middle)
    return low


def entry_chance(thinnest, u, s, reach, steps=1600):
    if s == 0:
        return 0.0
    df = reach["n"] - 1
    k = float(reach["sd"]) * math.sqrt(1 + 1 / reach["n"])
    f = lambda z: math.exp(-z * z / 2) * t_above((thinnest + u * z - float(reach["mean"]) * s) / (k * s), df)
    h = 16.0 / steps
    total = f(-8) + f(8) + sum((4 if i % 2 else 2) * f(-8 + i * h) for i in range(1, steps))
    return total * h / 3 / math.sqrt(2 * math.pi)


def ladder(found, trephine):
    reach = trephine["reach"]
    k = float(reach["sd"]) * math.sqrt(1 + 1 / reach["n"])
    t975 = t_quantile(0.975, reach["n"] - 1)
    rows = []
    while len(rows) < 60 and (not rows or rows[-1]["entry_chance"] <= 0.999):
        n = len(rows)
        travel = n * trephine["advance_um"]
        s = float(travel)
        rows.append({"spoke": n, "travel_um": s, "share": s / found["thinnest"], "reserve_um": found["thinnest"] - float(reach["mean"]) * s,
                     "reserve_u95_um": math.sqrt((t975 * k * s) ** 2 + (1.96 * found["u"]) ** 2),
                     "entry_chance": entry_chance(found["thinnest"], found["u"], s, reach)})
    return rows


def planned(case, found, rows, trephine):
    aim, advance = case["aim"], trephine["advance_um"]
    first = lambda p: next((r["spoke"] for r in rows or [] if r["entry_chance"] >= p), None)
    answer = {"spokes": None, "raise": trephine["raise"], "travel_um": None, "bound_by": "to-entry", "aim_share": None,
              "entry_from": first(0.10), "entry_to": first(0.90)}
    if aim.get("spokes") == 0:
        return None
    if "spokes" in aim:
        answer.update(spokes=aim["spokes"], bound_by="surgeon", travel_um=float(aim["spokes"] * advance))
    elif "share" in aim:
        if rows is None:
            return None
        share = min(aim["share"], Decimal("0.7")) if found["basis"] == "centre" else aim["share"]
        room = share * Decimal(str(found["thinnest"]))
        limit = float(aim.get("entry_limit", 0.05))
        n = max(r["spoke"] for r in rows if r["spoke"] * advance <= room and r["entry_chance"] <= limit)
        if n == 0:
            return None
        answer.update(spokes=n, travel_um=float(n * advance), aim_share=float(share),
                      bound_by="aim" if (n + 1) * advance > room else "entry-limit")
    return answer


# ---- sizes and sutures


def sizes(case):
    host, donor = case["host"]["diameter_mm"], case["donor"]["diameter_mm"]
    x, y = (float(v) for v in case["host"].get("centre_mm", [0, 0]))
    a, b = (float(v) / 2 for v in case["eye"]["white_to_white_mm"])
    inside = lambda px, py: (px / a) ** 2 + (py / b) ** 2 < 1
    free = []
    for deg in range(360):
        low, high = 0.0, 30.0
        c, s = math.cos(math.radians(deg)), math.sin(math.radians(deg))
        for _ in range(80):
            middle = (low + high) / 2
            low, high = (middle, high) if inside(x + middle * c, y + middle * s) else (low, middle)
        free.append(low - float(host) / 2)
    at = next(d for d in range(360) if free[d] <= min(free) + 1e-9)
    least = int(rounded(free[at] * 1000, "1"))
    um = lambda mm: float(mm * 1000)
    return {"oversize_um": um(donor - host), "clearance_um": least, "clearance_deg": at, "clearance_usual_offset_um": least - 580,
            "button_front_range_um": [um(host + Decimal("0.06")), um(host + Decimal("0.35"))],
            "button_back_range_um": [um(host + Decimal("0.13")), um(host + Decimal("0.79"))]}


def pair_order(count):
    pairs = count // 2
    gap = lambda p, q: min((p - q) % pairs, (q - p) % pairs)
    placed, left = [0], list(range(1, pairs))
    while left:
        left.sort(key=lambda k: (-min(gap(k, q) for q in placed), -gap(k, placed[-1]), k))
        placed.append(left.pop(0))
    return [place for k in placed for place in (k, k + pairs)]


def sutures(case, trephine):
    given = case.get("sutures", {})
    pattern = given.get("pattern", "16 interrupted")
    first = clock_deg(given.get("first", "12:00"))
    parts = [part.split() for part in pattern.split(" + ")]
    interrupted = next((int(p[0]) for p in parts if p[-1] == "interrupted"), 0)
    loops = next((int(p[0]) for p in parts if p[-1] == "running"), 0)
    count = interrupted or loops
    chord = lambda n: rounded(float(case["host"]["diameter_mm"]) * math.sin(math.pi / n) * 1000)
    order = []
    for i, place in enumerate(pair_order(count) if interrupted else range(count)):
        deg = turn(first - Decimal(360) * place / count)
        minutes = int((turn(90 - deg) * 2 + Decimal("0.5")) // 1) % 720
        row = {"n": i + 1, "clock": f"{minutes // 60 or 12}:{minutes % 60:02}", "deg": rounded(deg, "0.01")}
        marks = trephine["marks"]
        steps = turn(90 + Decimal(trephine.get("mark_offset_deg", 0)) - deg) * marks / 360
        nearest = int((steps + Decimal("0.5")) // 1)
        if abs(steps - nearest) * 360 / marks <= Decimal("0.5"):
            row["mark"] = nearest % marks + 1
        else:
            row["mark"] = None
            row["between"] = [int(steps) + 1, (int(steps) + 1) % marks + 1]
        row["opposite"] = (i + 2 if i % 2 == 0 else i) if interrupted else None
        order.append(row)
    running = {"loops": loops, "spacing_um": chord(loops), "start": given.get("first", "12:00"), "direction": "clockwise"} if loops else None
    return {"pattern": pattern, "spacing_um": chord(count), "order": order, "running": running}


# ---- the whole


def words(chance):
    if chance < 0.01:
        return "under 1 in 100"
    if chance >= 0.9:
        return "almost sure"
    if chance > 0.5:
        return "over 1 in 2"
    n = math.floor(1 / chance + 0.5)
    return f"about 1 in {n if n <= 20 else 5 * math.floor(1 / chance / 5 + 0.5)}"


def plan(case):
    trephine = load(PROFILES / (case["host"]["trephine"] + ".toml"))
    punch = load(PROFILES / (case["donor"]["punch"] + ".toml"))
    held = case["host"]["diameter_mm"] in trephine["sizes_mm"] and case["donor"]["diameter_mm"] in punch["sizes_mm"]
    found, may = wall(case)
    rows = ladder(found, trephine) if may else None
    answer = planned(case, found, rows, trephine)
    reached = sizes(case)["clearance_um"] <= 0
    expired = "expires" in case["donor"] and case["donor"]["expires"] < case["case"]["date"]
    if not held or reached or expired or answer is None:
        rows = answer = None
    shown = found and {"basis": found["basis"], "thinnest_um": found["thinnest"], "thinnest_deg": found["deg"],
                       "mean_um": rounded(found["mean"]), "u_um": rounded(found["u"]),
                       "rms_um": None if found["rms"] is None else rounded(found["rms"]),
                       "profile_um": [rounded(v) for v in found["profile"]]}
    rungs = rows and [{"spoke": r["spoke"], "travel_um": r["travel_um"], "share": rounded(r["share"], "0.0001"),
                       "reserve_um": rounded(r["reserve_um"]), "reserve_u95_um": rounded(r["reserve_u95_um"]),
                       "entry_chance": float(f"{r['entry_chance']:.6g}"), "words": words(r["entry_chance"])} for r in rows]
    return {"exit": 1 if answer is None else 0, "case": case["case"]["reference"], "eye": case["case"]["eye"], "formula": 1, "wall": shown,
            "ladder": rungs, "planned": answer, "sizes": sizes(case), "sutures": sutures(case, trephine)}


def with_readings(case, folder):
    """The case with the readings of the file that it names."""
    name = case["thickness"].get("readings_csv")
    if name:
        lines = [line for line in (folder / name).read_text(encoding="utf-8-sig").splitlines() if line.strip() and line[0] != "#"]
        case["thickness"]["readings"] = [{k: v if k == "clock" else Decimal(v) for k, v in row.items()} for row in csv.DictReader(lines)]
    return case


for path in sorted(HERE.glob("*.case.toml")):
    target = path.with_name(path.name.replace(".case.toml", ".expected.json"))
    target.write_text(json.dumps(plan(with_readings(load(path), HERE))) + "\n", encoding="utf-8")
    print(target.name)
