#!/usr/bin/env python3
"""Works out every output of motion_oracle.json anew from the inputs that stand in it.

Needs Python 3.9 or later and mpmath (any release since 1.3): `python3 -m pip install mpmath`.

    python3 tests/data/motion_oracle.py            in about a minute recomputes all and says where the file differs (by more than 1e-14)
    python3 tests/data/motion_oracle.py --write    writes the recomputed outputs into the file

The model is that of the textbooks and stands in words beside each key of the file (`law`, `closed_form`, `model`): nothing here is taken
from the project's own code. Everything is worked in 40 decimal digits and rounded to a double at the very end.
"""

import json
import pathlib
import sys

from mpmath import asin, atan, atanh, cbrt, cos, cosh, degrees, exp, log, mp, mpf, pi, quad, sin, sqrt, tan, tanh

mp.dps = 40
FILE = pathlib.Path(__file__).with_suffix(".json")
RELATIVE = 1e-14


def exact(value):
    """A number of the file as it is written in decimals."""
    return mpf(repr(value))


# ---- O6: the torque curve, Fritsch and Butland's monotone cubic ------------------------------------------------------------------


class Pchip:
    """The monotone cubic through points, with the three-point rule at both ends."""

    def __init__(self, xs, ys):
        self.x, self.y = [mpf(x) for x in xs], [mpf(y) for y in ys]
        h = [b - a for a, b in zip(self.x, self.x[1:])]
        m = [(b - a) / w for a, b, w in zip(self.y, self.y[1:], h)]
        inner = []
        for i in range(1, len(self.x) - 1):
            if m[i - 1] * m[i] <= 0:
                inner.append(mpf(0))
                continue
            w1, w2 = 2 * h[i] + h[i - 1], h[i] + 2 * h[i - 1]
            inner.append((w1 + w2) / (w1 / m[i - 1] + w2 / m[i]))
        self.d = [self._end(h[0], h[1], m[0], m[1]), *inner, self._end(h[-1], h[-2], m[-1], m[-2])]

    @staticmethod
    def _end(h0, h1, m0, m1):
        slope = ((2 * h0 + h1) * m0 - h0 * m1) / (h0 + h1)
        if slope * m0 <= 0:
            return mpf(0)
        return 3 * m0 if m0 * m1 <= 0 and abs(slope) > 3 * abs(m0) else slope

    def __call__(self, x):
        i = next(i for i in range(len(self.x) - 1) if x <= self.x[i + 1])
        h, t = self.x[i + 1] - self.x[i], (x - self.x[i]) / (self.x[i + 1] - self.x[i])
        return (
            (1 + 2 * t) * (1 - t) ** 2 * self.y[i]
            + t * (1 - t) ** 2 * h * self.d[i]
            + t**2 * (3 - 2 * t) * self.y[i + 1]
            + t**2 * (t - 1) * h * self.d[i + 1]
        )


def bisect(f, low, high):
    """The root between two ends of opposite sign."""
    low, high = mpf(low), mpf(high)
    at_low = f(low)
    for _ in range(140):
        middle = (low + high) / 2
        if (f(middle) > 0) == (at_low > 0):
            low = middle
        else:
            high = middle
    return (low + high) / 2


def sign_changes(f, points, steps):
    """Brackets of the roots of f between neighbouring points."""
    for low, high in zip(points, points[1:]):
        edges = [low + (high - low) * k / steps for k in range(steps + 1)]
        for a, b in zip(edges, edges[1:]):
            if (f(a) > 0) != (f(b) > 0):
                yield a, b


# ---- the car of O4 to O12 --------------------------------------------------------------------------------------------------------


class SampleCar:
    def __init__(self, inputs, curve):
        take = lambda key: exact(inputs[key])
        self.m, self.r, self.i_f, self.eta = take("m_kg"), take("r_m"), take("i_f"), take("eta")
        self.f, self.g, self.redline = take("f_r"), take("g"), take("redline_rpm")
        self.c = exact(inputs["rho"]) * exact(inputs["CdA_m2"]) / 2
        self.curve = curve
        self.sets = {name: [exact(ratio) for ratio in inputs[name]] for name in ("wide4", "close4", "od5")}
        # rpm for each m/s at a ratio of 1
        self.k = 30 * self.i_f / (pi * self.r)

    def rpm(self, ratio, v):
        return v * self.k * ratio

    def thrust(self, ratio, v):
        return self.curve(self.rpm(ratio, v)) * ratio * self.i_f * self.eta / self.r

    def load(self, v, grade=mpf(0)):
        slope = atan(grade)
        return self.m * self.g * (self.f * cos(slope) + sin(slope)) + self.c * v**2

    def span(self, ratio):
        """Road speeds at the curve's first rpm, its points and the redline."""
        inside = [x for x in self.curve.x if x < self.redline]
        return [x / (self.k * ratio) for x in [*inside, self.redline]]


# ---- O1, O2, O13: closed forms of a run ------------------------------------------------------------------------------------------


def constant_force(key):
    i = key["inputs"]
    m, net, c = exact(i["m_eff_kg"]), exact(i["F_N"]) - exact(i["R0_N"]), exact(i["c_N_per_mps2"])
    vt, tau = sqrt(net / c), m / sqrt(net * c)
    out = key["outputs"]
    at_time = [{"t_s": row["t_s"], "v_mps": vt * tanh(row["t_s"] / tau), "s_m": m / c * log(cosh(row["t_s"] / tau))} for row in out["at_time"]]
    to_speed = []
    for row in out["to_speed"]:
        v = speed(row)
        to_speed.append({"v_mps": row["v_mps"], "t_s": tau * atanh(v / vt), "s_m": -m / (2 * c) * log(1 - (v / vt) ** 2)})
    return {"vt_mps": vt, "tau_s": tau, "at_time": at_time, "to_speed": to_speed}


def speed(row):
    """A speed asked for: 100 km/h is a fraction, the others are as written."""
    v = row["v_mps"]
    return mpf(100) * 1000 / 3600 if abs(v - 100 / 3.6) < 1e-9 else exact(v)


def constant_power(key):
    i = key["inputs"]
    m, p, c, v0 = exact(i["m_eff_kg"]), exact(i["P_wheel_W"]), exact(i["c"]), exact(i["v0_mps"])
    vt = cbrt(p / c)

    def integral(x):
        return log((x**2 + x + 1) / (1 - x) ** 2) / 6 - atan((2 * x + 1) / sqrt(3)) / sqrt(3)

    def without(row):
        v = exact(row["v_mps"])
        t = m / (c * vt) * (integral(v / vt) - integral(v0 / vt))
        return {"v_mps": row["v_mps"], "t_s": t, "s_m": m / (3 * c) * log((p - c * v0**3) / (p - c * v**3))}

    def rolling(row):
        v, steady = exact(row["v_mps"]), mpf(154)
        pace = lambda u: m / (p / u - steady - c * u**2)
        return {"v_mps": row["v_mps"], "t_s": quad(pace, [v0, v]), "s_m": quad(lambda u: u * pace(u), [v0, v])}

    def bare(row):
        v = exact(row["v_mps"])
        return {"v_mps": row["v_mps"], "t_s": m * (v**2 - v0**2) / (2 * p), "s_m": m * (v**3 - v0**3) / (3 * p)}

    out = key["outputs"]
    return {
        "vt_R0_mps": vt,
        "R0": [without(row) for row in out["R0"]],
        "R154_N": [rolling(row) for row in out["R154_N"]],
        "no_drag_no_rolling": [bare(row) for row in out["no_drag_no_rolling"]],
    }


def linear_thrust(key):
    m, a, b = (exact(key["inputs"][name]) for name in ("m", "a", "b"))
    rows = []
    for row in key["outputs"]:
        t = exact(row["t_s"])
        v = a / b * (1 - exp(-b * t / m))
        rows.append({"t_s": row["t_s"], "v_mps": v, "s_m": a / b * (t - m / b * (1 - exp(-b * t / m)))})
    return rows


# ---- O3: shift points ------------------------------------------------------------------------------------------------------------


def shift_points(key, car, mass):
    i = key["inputs"]
    k = 30 * exact(i["i_f"]) / (pi * exact(i["r_m"]))
    t0, fall = exact(i["linear"]["T0_Nm"]), exact(i["linear"]["k_Nm_per_rpm"])
    peak = exact(i["parabola"]["n_peak_power_rpm"])
    linear, parabola = [], []
    for name in ("wide4", "close4"):
        ratios = [exact(ratio) for ratio in i[name]]
        for low, high in zip(ratios, ratios[1:]):
            v = t0 / (fall * k * (low + high))
            linear.append({"set": name, "i_lo": low, "i_hi": high, "v_mps": v, "n_before_rpm": v * k * low, "n_after_rpm": v * k * high})
            s, q = low + high, low**2 + low * high + high**2
            u = (s + sqrt(s**2 + 4 * q)) / (2 * q)
            row = {"set": name, "i_lo": low, "i_hi": high, "v_mps": u * peak / k, "x_before": u * low, "x_after": u * high}
            parabola.append({**row, "n_before_rpm": u * low * peak, "n_after_rpm": u * high * peak})
    table = []
    for name, ratios in car.sets.items():
        for at, (low, high) in enumerate(zip(ratios, ratios[1:])):
            row = {"set": name, "shift": f"{at + 1}-{at + 2}"}
            for rule, word, gap in (
                ("thrust", "thrust", lambda v: car.thrust(low, v) - car.thrust(high, v)),
                (
                    "accel",
                    "acceleration",
                    lambda v: (car.thrust(low, v) - car.load(v)) / mass(low) - (car.thrust(high, v) - car.load(v)) / mass(high),
                ),
            ):
                v, crossed = upshift(car, low, high, gap)
                row[f"{rule}_rule_v_mps"], row[f"{rule}_rule_rpm"] = v, car.rpm(low, v)
                row[f"{rule}_rule_reason"] = f"{word} crossing" if crossed else "redline"
            table.append(row)
    return {"K": k, "linear": linear, "parabola": parabola, "pchip_curve_car_of_O5": table}


def upshift(car, low, high, gap):
    """The last speed both gears share at which the lower one stops being better, else the redline."""
    end = car.redline / (car.k * low)
    points = sorted({*car.span(low), *(v for v in car.span(high) if v < end)})
    points = [v for v in points if car.span(high)[0] <= v <= end]
    falls = [bracket for bracket in sign_changes(gap, points, 8) if gap(bracket[0]) > 0]
    return (bisect(gap, *falls[-1]), True) if falls and gap(end) <= 0 else (end, False)


# ---- O4: top speed ---------------------------------------------------------------------------------------------------------------


def top_speed(key, car):
    cubic = []
    for row in key["outputs"]["cubic"]:
        p, q = car.load(mpf(0)) / car.c, -exact(row["P_engine_W"]) * car.eta / car.c
        d = (q / 2) ** 2 + (p / 3) ** 3
        v = cbrt(-q / 2 + sqrt(d)) - cbrt(q / 2 + sqrt(d))
        cubic.append({"P_engine_W": row["P_engine_W"], "v_mps": v, "v_kmh": v * mpf(18) / 5})
    per_gear = []
    for row in key["outputs"]["per_gear"]:
        ratio, grade = car.sets[row["set"]][row["gear"] - 1], exact(row["grade"])
        net = lambda v: car.thrust(ratio, v) - car.load(v, grade)
        span = car.span(ratio)
        if net(span[-1]) >= 0:
            v, why = span[-1], "redline"
        else:
            falls = [bracket for bracket in sign_changes(net, span, 8) if net(bracket[0]) > 0]
            v = bisect(net, *falls[-1]) if falls else None
            why = "balance" if falls else "no balance: road load exceeds thrust over the whole range"
        found = {"v_mps": v, "v_kmh": v and v * mpf(18) / 5, "n_rpm": v and car.rpm(ratio, v)}
        per_gear.append({"set": row["set"], "gear": row["gear"], "grade": row["grade"], **found, "limited_by": why})
    return {"cubic": cubic, "per_gear": per_gear}


# ---- O5: runs --------------------------------------------------------------------------------------------------------------------


class Run:
    """One run from rest: the launch with the clutch slipping, then gear by gear."""

    def __init__(self, car, i, name, shift_time, grip):
        self.car, self.ratios, self.shift_time = car, car.sets[name], shift_time
        self.hold = lambda force: force if grip is None else min(force, grip)
        self.j_engine, self.j_wheels = exact(i["J_engine_kgm2"]), exact(i["J_wheels_total_kgm2"])
        self.open = car.m + self.j_wheels / car.r**2
        launch = exact(i["n_launch_rpm"])
        first = self.ratios[0]
        self.sync = launch / (car.k * first)
        self.at_launch = self.hold(car.curve(launch) * first * car.i_f * car.eta / car.r)
        self.grip = grip
        self.shifts = []
        for low, high in zip(self.ratios, self.ratios[1:]):
            self.shifts.append(upshift(car, low, high, lambda v: car.thrust(low, v) - car.thrust(high, v)))

    def mass(self, ratio):
        return self.car.m + (self.j_wheels + self.j_engine * (ratio * self.car.i_f) ** 2) / self.car.r**2

    def gain(self, ratio, v):
        """What engine and tyres allow, the lower of the two; at the tyres' limit the engine speeds itself up by what they do not pass."""
        by_engine = (self.car.thrust(ratio, v) - self.car.load(v)) / self.mass(ratio)
        return by_engine if self.grip is None else min(by_engine, (self.grip - self.car.load(v)) / self.open)

    def legs(self):
        """Each leg: gear, from, to (m/s), seconds for each m/s, kinks; or a shift at a speed."""
        car, v = self.car, self.sync
        yield 1, mpf(0), v, (lambda u: self.open / (self.at_launch - car.load(u))), []
        for gear, ratio in enumerate(self.ratios, 1):
            last = gear == len(self.ratios)
            end = self._top(ratio) if last else self.shifts[gear - 1][0]
            pace = lambda u, ratio=ratio: 1 / self.gain(ratio, u)
            yield gear, v, end, pace, self._kinks(ratio, v, end)
            if last:
                return
            v = yield from self._shift(gear, end)

    def _top(self, ratio):
        net = lambda v: self.car.thrust(ratio, v) - self.car.load(v)
        span = self.car.span(ratio)
        falls = [bracket for bracket in sign_changes(net, span, 8) if net(bracket[0]) > 0]
        return span[-1] if net(span[-1]) >= 0 else bisect(net, *falls[-1])

    def _kinks(self, ratio, low, high):
        kinks = self.car.span(ratio)
        if self.grip is not None:
            by_tyres = lambda v: (self.grip - self.car.load(v)) / self.open
            over = lambda v: (self.car.thrust(ratio, v) - self.car.load(v)) / self.mass(ratio) - by_tyres(v)
            kinks = [*kinks, *(bisect(over, *bracket) for bracket in sign_changes(over, kinks, 8))]
        return sorted(v for v in kinks if low < v < high)

    def _shift(self, gear, v):
        """Coasts for the shift time: dv/dt = −(R + c·v²)/m in closed form."""
        if not self.shift_time:
            return v
        steady, c, m = self.car.load(mpf(0)), self.car.c, self.open
        root = sqrt(steady / c)
        after = root * tan(atan(v / root) - self.shift_time * sqrt(steady * c) / m)
        distance = m / (2 * c) * log((steady + c * v**2) / (steady + c * after**2))
        yield gear, self.shift_time, distance, (v, after), None
        return after

    def row(self, row):
        t, s = mpf(0), mpf(0)
        speeds = {r["v_mps"]: None for r in row["to_speed"]}
        distances = {r["s_m"]: None for r in row["to_distance"]}
        for gear, a, b, c, kinks in self.legs():
            if kinks is None:
                assert not any(s < exact(d) <= s + b for d, met in distances.items() if met is None), "a distance ends inside a shift"
                t, s = t + a, s + b
                continue
            pace, edges = c, [a, *kinks, b]
            time = lambda v, low: quad(pace, [low, v])
            way = lambda v, low: quad(lambda u: u * pace(u), [low, v])
            for low, high in zip(edges, edges[1:]):
                for v, met in list(speeds.items()):
                    exact_v = speed({"v_mps": v})
                    if met is None and low <= exact_v <= high:
                        speeds[v] = {"v_mps": v, "t_s": t + time(exact_v, low), "s_m": s + way(exact_v, low), "gear": gear}
                if high == b and gear == len(self.ratios) and b == self._top(self.ratios[-1]):
                    high = b - (b - low) * mpf(10) ** -6
                covered = way(high, low)
                for d, met in list(distances.items()):
                    goal = exact(d)
                    if met is None and s <= goal <= s + covered:
                        v = self._at_distance(lambda v: way(v, low), goal - s, low, high, pace)
                        distances[d] = {"s_m": d, "t_s": t + time(v, low), "v_mps": v, "gear": gear}
                t, s = t + time(high, low), s + covered
                if all(speeds.values()) and all(distances.values()):
                    return list(speeds.values()), list(distances.values())
        return list(speeds.values()), list(distances.values())

    @staticmethod
    def _at_distance(way, goal, low, high, pace):
        """Newton inside a bracket on the distance covered."""
        v, a, b = (low + high) / 2, low, high
        for _ in range(100):
            covered = way(v)
            a, b = (v, b) if covered < goal else (a, v)
            step = (goal - covered) / (v * pace(v))
            nxt = v + step
            nxt = nxt if a < nxt < b else (a + b) / 2
            if abs(nxt - v) < mpf(10) ** -32:
                return nxt
            v = nxt
        return v


def runs(key, car):
    i, rows = key["inputs"], []
    traction = i["traction"]
    mu, share = exact(traction["mu"]), exact(traction["a_over_L"])
    grip = mu * car.m * car.g * share / (1 - mu * exact(traction["h_m"]) / exact(traction["L_m"]))
    for row in key["outputs"]:
        held = None if row["traction_limit_N"] is None else grip
        run = Run(car, i, row["set"], exact(row["shift_time_s"]), held)
        to_speed, to_distance = run.row(row)
        shifts = []
        for at, ((v, crossed), low, high) in enumerate(zip(run.shifts, run.ratios, run.ratios[1:])):
            reason = "thrust crossing" if crossed else "redline"
            shifts.append({"from": at + 1, "v_mps": v, "n_before_rpm": car.rpm(low, v), "n_after_same_speed_rpm": car.rpm(high, v), "reason": reason})
        head = {"set": row["set"], "shift_time_s": row["shift_time_s"], "traction_limit_N": held, "v_sync_mps": run.sync}
        rows.append({**head, "shifts": shifts, "to_speed": to_speed, "to_distance": to_distance})
    return rows


# ---- O7 to O12 -------------------------------------------------------------------------------------------------------------------


def coast(m, a, c, v1, v2):
    if a == 0:
        return m / c * (1 / v2 - 1 / v1), m / c * log(v1 / v2)
    return m / sqrt(a * c) * (atan(v1 * sqrt(c / a)) - atan(v2 * sqrt(c / a))), m / (2 * c) * log((a + c * v1**2) / (a + c * v2**2))


def coast_down(key, car, open_mass):
    table = []
    for row in key["outputs"]["cfr_86_529_98"]:
        c = exact(row["C_N_per_kmh2"]) * mpf(18) ** 2 / 25
        t, s = coast(exact(row["m_kg"]), exact(row["A_N"]), c, mpf(70) / mpf("3.6"), mpf(60) / mpf("3.6"))
        off = abs(t - exact(row["t_published_s"]))
        flag = f"published value off: differs by {float(off):.3f} s" if off > 0.02 else None
        kept = {name: row[name] for name in ("m_kg", "A_N", "C_N_per_kmh2", "t_published_s")}
        table.append({**kept, "t_calc_s": t, "s_calc_m": s, "flag": flag})
    rows = []
    for row in key["outputs"]["car"]:
        v1, v2 = exact(row["v1_kmh"]) / mpf("3.6"), exact(row["v2_kmh"]) / mpf("3.6")
        t, s = coast(open_mass, car.load(mpf(0)), car.c, v1, v2)
        rows.append({"v1_kmh": row["v1_kmh"], "v2_kmh": row["v2_kmh"], "t_s": t, "s_m": s})
    return {"cfr_86_529_98": table, "car": rows}


def traction(key):
    i = key["inputs"]
    m, g, wheelbase, a, h = (exact(i[name]) for name in ("m_kg", "g", "L_m", "a_front_axle_to_cg_m", "h_m"))
    b, cases = wheelbase - a, []
    for row in key["outputs"]["cases"]:
        mu, slope = exact(row["mu"]), atan(exact(row["grade"]))
        weight = m * g * cos(slope)
        force = {
            "rear": mu * weight * (a / wheelbase) / (1 - mu * h / wheelbase),
            "front": mu * weight * (b / wheelbase) / (1 + mu * h / wheelbase),
            "all": mu * weight,
        }[row["drive"]]
        rear = weight * a / wheelbase + force * h / wheelbase
        kept = {name: row[name] for name in ("drive", "grade", "mu")}
        cases.append({**kept, "F_max_N": force, "Fz_front_N": weight - rear, "Fz_rear_N": rear, "a_mps2": force / m - g * sin(slope)})
    grades = []
    for row in key["outputs"]["max_grade_by_adhesion"]:
        mu = exact(row["mu"])
        grades.append({"mu": row["mu"], "rear_tan": mu * a / (wheelbase - mu * h), "front_tan": mu * b / (wheelbase + mu * h), "all_tan": mu})
    return {"cases": cases, "max_grade_by_adhesion": grades}


def gradeability(key, car):
    rows = []
    for row in key["outputs"]["steady_grade_at_torque_peak"]:
        ratio = car.sets[row["set"]][row["gear"] - 1]
        v = exact(row["n_rpm"]) / (car.k * ratio)
        force = car.thrust(ratio, v)
        alpha = asin((force - car.c * v**2) / (car.m * car.g * sqrt(1 + car.f**2))) - atan(car.f)
        kept = {name: row[name] for name in ("set", "gear", "n_rpm")}
        rows.append({**kept, "v_mps": v, "thrust_N": force, "alpha_deg": degrees(alpha), "grade": tan(alpha)})
    sizing, peak = [], max(car.curve.y)
    for row in key["outputs"]["first_gear_sizing_drag_free"]:
        slope = atan(exact(row["grade"]))
        ratio = car.m * car.g * (car.f * cos(slope) + sin(slope)) * car.r / (peak * car.i_f * car.eta)
        sizing.append({"grade": row["grade"], "i1_min": ratio, "overall": ratio * car.i_f})
    return {"steady_grade_at_torque_peak": rows, "first_gear_sizing_drag_free": sizing}


def gear_steps(key):
    rows = []
    for row in key["outputs"]:
        i1, iz, z, phi2 = exact(row["i1"]), exact(row["iz"]), row["z"], exact(row["phi2"])
        phi1 = (i1 / iz / phi2 ** (mpf((z - 1) * (z - 2)) / 2)) ** (mpf(1) / (z - 1))
        ratios = [iz * phi1 ** (z - n) * phi2 ** (mpf((z - n) * (z - n - 1)) / 2) for n in range(1, z + 1)]
        kept = {name: row[name] for name in ("i1", "iz", "z", "phi2")}
        rows.append({**kept, "phi1": phi1, "ratios": ratios, "steps": [a / b for a, b in zip(ratios, ratios[1:])]})
    return rows


def clutch(key, car, open_mass):
    w, torque, rows = exact(key["inputs"]["n_engine_rpm"]) * pi / 30, car.curve(mpf(3000)), []
    for row in key["outputs"]:
        overall = car.sets[row["set"]][0] * car.i_f
        inertia = open_mass * car.r**2 / overall**2
        resist = car.load(mpf(0), exact(row["grade"])) * car.r / overall
        rows.append({
            "set": row["set"],
            "grade": row["grade"],
            "J_vehicle_at_clutch": inertia,
            "T_resist_Nm": resist,
            "slip_time_s": inertia * w / (torque - resist),
            "slip_energy_J": inertia * w**2 / 2 * torque / (torque - resist),
            "half_J_w2_J": inertia * w**2 / 2,
        })
    return rows


def two_discs(row):
    i1, i2 = exact(row["I1"]), exact(row["I2"])
    w1, w2 = exact(row["n1_rpm"]) * pi / 30, exact(row["n2_rpm"]) * pi / 30
    kept = {name: row[name] for name in ("I1", "I2", "n1_rpm", "n2_rpm")}
    n = (i1 * exact(row["n1_rpm"]) + i2 * exact(row["n2_rpm"])) / (i1 + i2)
    return {**kept, "n_final_rpm": n, "E_J": i1 * i2 / (i1 + i2) * (w1 - w2) ** 2 / 2}


def units():
    inch, pound, g0 = mpf("0.0254"), mpf("0.45359237"), mpf("9.80665")
    lbf, foot = pound * g0, 12 * inch
    hp, ps, mile = 550 * foot * lbf, 75 * g0, 5280 * foot
    return {
        "hp_W": hp,
        "PS_W": ps,
        "lbf_N": lbf,
        "lbfft_Nm": lbf * foot,
        "hp_lbfft_rpm": 33000 / (2 * pi),
        "kW_Nm_rpm": 30000 / pi,
        "PS_Nm_rpm": ps * 30 / pi,
        "PS_kgfm_rpm": 75 * 30 / pi,
        "hp_Nm_rpm": hp * 30 / pi,
        "mph_mps": mile / 3600,
        "mph_diam_in": mile / (60 * pi * inch),
        "mph_radius_in": mile / (120 * pi * inch),
        "kmh_radius_m": mpf("0.12") * pi,
        "slug_kg": lbf / foot,
    }


# ---- all of it -------------------------------------------------------------------------------------------------------------------


def torque_curve(key, curve):
    values = []
    for row in key["outputs"]["values"]:
        n = exact(row["rpm"])
        values.append({"rpm": row["rpm"], "T_Nm": curve(n), "P_kW": curve(n) * n * pi / 30000})
    slope = lambda n: curve(n) + n * mp.diff(curve, n)
    peak = bisect(slope, 5010, 5490)
    return {"slopes": curve.d, "values": values, "peak_power": {"rpm": peak, "P_kW": curve(peak) * peak * pi / 30000}}


def recompute(old):
    table = old["O6_pchip_torque_curve"]["inputs"]
    curve = Pchip(table["rpm"], table["T_Nm"])
    inputs = old["O5_acceleration_run"]["inputs"]
    car = SampleCar(inputs, curve)
    engine, wheels = exact(inputs["J_engine_kgm2"]), exact(inputs["J_wheels_total_kgm2"])
    mass = lambda ratio: car.m + (wheels + engine * (ratio * car.i_f) ** 2) / car.r**2
    open_mass = car.m + wheels / car.r**2
    outputs = {
        "O1_constant_force_quadratic_drag": constant_force,
        "O2_constant_power": constant_power,
        "O3_shift_points_closed_form": lambda key: shift_points(key, car, mass),
        "O6_pchip_torque_curve": lambda key: torque_curve(key, curve),
        "O4_top_speed": lambda key: top_speed(key, car),
        "O5_acceleration_run": lambda key: runs(key, car),
        "O7_coastdown": lambda key: coast_down(key, car, open_mass),
        "O8_traction_limit": traction,
        "O9_gradeability": lambda key: gradeability(key, car),
        "O10_gear_steps": gear_steps,
        "O12_clutch_slip": lambda key: clutch(key, car, open_mass),
        "O13_linear_thrust": linear_thrust,
    }
    new = {name: dict(key) for name, key in old.items()}
    for name, work in outputs.items():
        new[name]["outputs"] = doubles(work(old[name]))
    new["O12_clutch_slip"]["two_disc_check"] = doubles(two_discs(old["O12_clutch_slip"]["two_disc_check"]))
    new["O14_units"] = {**doubles(units()), "how": old["O14_units"]["how"]}
    return new


def doubles(value):
    """The same with every number of 40 digits as a double."""
    if isinstance(value, dict):
        return {key: doubles(part) for key, part in value.items()}
    if isinstance(value, (list, tuple)):
        return [doubles(part) for part in value]
    return float(value) if isinstance(value, mpf) else value


def differences(old, new, path=""):
    if isinstance(old, dict) and isinstance(new, dict):
        for key in {**old, **new}:
            yield from differences(old.get(key), new.get(key), f"{path}/{key}")
    elif isinstance(old, list) and isinstance(new, list) and len(old) == len(new):
        for at, pair in enumerate(zip(old, new)):
            yield from differences(*pair, f"{path}/{at}")
    elif isinstance(old, (int, float)) and isinstance(new, (int, float)):
        if abs(old - new) > RELATIVE * max(abs(old), abs(new)):
            yield f"{path}: {old!r} in the file, {new!r} worked out"
    elif old != new:
        yield f"{path}: {old!r} in the file, {new!r} worked out"


def main():
    old = json.loads(FILE.read_text(encoding="utf-8"))
    new = recompute(old)
    if "--write" in sys.argv[1:]:
        FILE.write_text(json.dumps(new, indent=1) + "\n", encoding="utf-8")
        return 0
    found = list(differences(old, new))
    print("\n".join(found) if found else f"{FILE.name}: every output is reproduced to {RELATIVE}")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
