#!/usr/bin/env python3
"""An engine left to itself, by another program: steps of the fourth order (Runge and Kutta, 0.5 ms) that end exactly
at each half turn.

Same model and figures as `src/physics/combustion.rs`, `src/physics/crank.rs` and `src/control_module/idle_control.rs`,
written anew from the formulas there, without scatter from cycle to cycle. Prints `idle.csv`:

    python3 tests/reference/idle.py > tests/reference/idle.csv
"""
import math

import numpy as np

SWEPT, RATIO, SEAT, VALVES, LIFT, OPEN, REST, SLOW = 3.5e-4, 10.5, 0.026, 2, 8.5e-3, 240.0, 6.0, 0.2
INERTIA, DRY, FILM, MU0, N0, POWER = 0.13, 0.32e5, 0.33e5, 0.0109, 12.5, 0.4
MANIFOLD, THROTTLE, FILLING, FRESH_K, BURNT_K = 3e-3, 5e-5, 0.95, 330.0, 900.0
HEAT, SHARE, OUT, BACK, R = 2.82e6, 0.31, 1.013e5, 1.03e5, 287.0


def overlap_factor(deg):
    """Seat diameters times areas under the lift curves, by numerical integration."""
    if deg <= 0:
        return 0.0
    at = np.linspace(0, deg / 2, 2001)
    area = np.trapezoid(LIFT * np.sin(np.pi * at / OPEN) ** 2, at)
    return float(2 * VALVES * SEAT * area / SWEPT)


def residual(factor, rev_s, pa):
    ratio = min(max(pa / BACK, 0.05), 1.0)
    back = 1.266 * factor / max(rev_s, 2.0) * ratio**-0.87 * math.sqrt(max(BACK - pa, 0.0) / 1e5)
    kept = 0.632 * ratio**-0.74 / RATIO
    within = min(0.9 / (back + kept), 1.0)
    return back * within, kept * within


def air(opening, pa, celsius):
    over = max(0.0, (pa / OUT - 0.528) / (1 - 0.528))
    return opening * THROTTLE * OUT * 0.6847 / math.sqrt(R * (celsius + 273.15)) * math.sqrt(max(0.0, 1 - over**2))


def trapped(pa, share):
    return FILLING * pa * SWEPT / (R * (FRESH_K * (1 - share) + BURNT_K * share))


def friction(rev_s, mu):
    return DRY + FILM * (mu * rev_s / (MU0 * N0)) ** POWER


def run(seconds, warm_rpm, celsius, coolant, mu, overlap, generator, rpm0, pa0):
    """Rows of (time, rpm, kPa, residual) every 50 ms. `overlap` and `generator` are functions of time."""
    y = (rpm0 * math.pi / 30, pa0, 0.0)
    torque, drag, share, factor = 0.0, DRY, (0.0, 0.0), {}
    waiting, burnt, cylinder, learnt, opening, spark = None, [1.0] * 4, 0, 0.0, 0.0, 1.0
    starter, out = rpm0 < 400, []

    def slope(t, y):
        speed, p, _ = y
        total = sum(share)
        load = generator(t) / speed if speed > 40 else 0.0
        helps = 80 * max(0.0, 1 - speed / (340 * math.pi / 30)) if starter else 0.0
        net = torque * spark + helps - (drag + BACK - p) * SWEPT / math.pi - load
        drawn = trapped(p, total) * (1 - total) * speed / math.pi
        return net / INERTIA, R * FRESH_K / MANIFOLD * (air(opening, p, celsius) - drawn), speed

    def step(t, y, h):
        along = lambda d, g: tuple(a + g * b for a, b in zip(y, d))
        a = slope(t, y)
        b = slope(t + h / 2, along(a, h / 2))
        c = slope(t + h / 2, along(b, h / 2))
        d = slope(t + h, along(c, h))
        w, p, angle = along(tuple((i + 2 * j + 2 * k + l) / 6 for i, j, k, l in zip(a, b, c, d)), h)
        return w, min(p, OUT), angle

    for tick in range(int(seconds * 100)):
        if tick % 5 == 0:
            out.append((tick * 0.01, y[0] * 30 / math.pi, y[1] / 1e3, sum(share)))
        missing = warm_rpm + min(max(4.0 * (60 - coolant), 0), 320) - y[0] * 30 / math.pi
        if abs(missing) < 400:
            learnt = min(max(learnt + 1.5e-4 * missing * 0.01, -0.15), 0.6)
        opening = min(max(0.17 + 2.5e-5 * max(80 - coolant, 0) ** 2 + learnt + 2e-4 * missing, 0.13), 1.0)
        spark = 1 + min(max(2e-3 * missing, -0.3), 0.15)
        for part in range(20):
            now, left = tick * 0.01 + part * 5e-4, 5e-4
            while left > 1e-12:
                took, after = left, step(now, y, left)
                while after[2] > math.pi + 1e-11 or (took < left and after[2] < math.pi - 1e-11):
                    took -= (after[2] - math.pi) / after[0]  # Newton: the moment of the half turn
                    after = step(now, y, took)
                now, left, y = now + took, left - took, after
                starter = starter and y[0] < 400 * math.pi / 30
                if y[2] < math.pi - 1e-9:
                    continue
                y = (y[0], y[1], 0.0)
                if waiting is not None:
                    mass, gas = waiting
                    flame = max(0.0, 1 - 2.06 * gas**0.77)
                    burnt[cylinder] = 1 - math.exp(-((flame / SLOW) ** 2))
                    torque = mass * (1 - gas) * HEAT * burnt[cylinder] * SHARE / math.pi
                mass = trapped(y[1], sum(share))
                cylinder = (cylinder + 1) % 4
                deg = overlap(now)
                factor.setdefault(deg, overlap_factor(deg))
                share = residual(factor[deg], y[0] / 2 / math.pi, y[1])
                waiting = (mass, share[1] * burnt[cylinder] + share[0] * sum(burnt) / 4)
                drag = friction(y[0] / 2 / math.pi, mu)
    return out


CASES = {
    # name: seconds, warm rpm, air, coolant, viscosity, overlap, generator, rpm at first, manifold at first
    "start-warm": (6, 700, 20, 90, 0.0109, lambda t: 6.0, lambda t: 700.0, 200, OUT),
    "start-cold": (8, 700, 0, 0, 0.45, lambda t: 6.0, lambda t: 700.0, 200, OUT),
    "load-step": (10, 700, 20, 90, 0.0109, lambda t: 6.0, lambda t: 700.0 if t < 5 else 900.0, 700, 0.4e5),
    "cam-out": (10, 700, 20, 90, 0.0109, lambda t: 6.0 if t < 5 else 26.0, lambda t: 700.0, 700, 0.4e5),
}

if __name__ == "__main__":
    print("case,time_s,rpm,manifold_kpa,residual")
    for name, case in CASES.items():
        for t, rpm, kpa, share in run(*case):
            print(f"{name},{t:.2f},{rpm:.2f},{kpa:.3f},{share:.4f}")
