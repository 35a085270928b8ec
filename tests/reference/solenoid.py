"""Independent solution of the solenoid and spool equations, for the tests of `physics::stroke`.

Run:  python3 solenoid.py > solenoid.csv         (needs numpy and scipy)
      python3 solenoid.py --currents > solenoid_current.csv      current every 2 ms of the first cases
      python3 solenoid.py --smooth               the same with friction smoothed by tanh(v / 2 mm/s)

What makes it independent of the program: the state is the flux linkage (the program integrates the
magnetising current), the current is found from the flux by a bracketing root finder, the solver is
scipy's adaptive implicit Radau at a relative tolerance of 1e-10 (the program takes fixed steps),
and events are scipy's. The equations and the parameters are shared; the parameters are
engineering estimates, so agreement checks the arithmetic and not the likeness to a real valve.

The smoothed friction is what an earlier table of this project was made with. It moves no figure of
the outward stroke by more than its last digit, but a smoothed friction holds nothing: a spool that
should stand where spring and friction balance creeps home instead (sludge 2N).
"""

import sys
import warnings
from math import cosh, log, log10, pi, tanh

from scipy.integrate import solve_ivp
from scipy.optimize import brentq

# Solenoid (engineering estimates).
L_REST_H = 12e-3
L_PER_M = 20.0
I_SAT_A = 0.8
BEYOND = 0.04
# Spool (engineering estimates).
MASS_KG = 25e-3
PRELOAD_N = 0.8
SPRING_N_PER_M = 600.0
STROKE_M = 2.5e-3
DRY_DRAG = 0.15
OIL_DRAG = 5.0
SLIDING_SHARE = 0.6
HOLD_SPEED_M_PER_S = 1e-4
SMOOTHING_M_PER_S = 2e-3
# Copper, IEC 60028.
ALPHA_PER_K = 0.00393
# 5W-30, Walther's form with the constants of the oil model; density for the dynamic viscosity.
WALTHER_A, WALTHER_B = 7.8481, 3.0428


def viscosity_pa_s(t_c):
    nu_mm2_s = 10.0 ** (10.0 ** (WALTHER_A - WALTHER_B * log10(t_c + 273.15))) - 0.7
    return nu_mm2_s * 1e-6 * (870.0 - 0.65 * (t_c - 15.0))


MU_20 = viscosity_pa_s(20.0)


def linkage(m):
    return I_SAT_A * tanh(m / I_SAT_A) + BEYOND * m


def force(m):
    return L_PER_M * (I_SAT_A**2 * log(cosh(m / I_SAT_A)) + BEYOND * m * m / 2.0)


def magnetising(phi, x):
    target = phi / (L_REST_H + L_PER_M * x)
    if target == 0.0:
        return 0.0
    bound = abs(target) / BEYOND
    return brentq(lambda m: linkage(m) - target, -bound, bound, xtol=1e-15, rtol=1e-14)


class Case:
    def __init__(self, name, ohms20=11.0, turns=1.0, joint=0.0, shorted=0.0, volts=12.6, source=0.52,
                 t_c=20.0, stiction=0.0, thick=1.0, on_s=0.12):
        self.inputs = {
            "case": name, "ohms_at_20": ohms20, "turns": turns, "joint_ohm": joint,
            "shorted_share": shorted, "supply_v": volts, "source_ohm": source, "coil_c": t_c,
            "viscosity_pa_s": viscosity_pa_s(t_c), "stiction_n": stiction, "thickening": thick,
            "on_s": on_s,
        }
        self.volts, self.on_s = volts, on_s
        copper = ohms20 * (1.0 + ALPHA_PER_K * (t_c - 20.0))
        self.n1 = turns * (1.0 - shorted)
        self.r1 = (1.0 - shorted) * copper + joint + source
        self.lag = self.n1**2 / self.r1 + turns**2 * shorted / copper
        self.drag = OIL_DRAG * viscosity_pa_s(t_c) / MU_20 * thick + DRY_DRAG
        self.stiction = stiction
        self.sliding = SLIDING_SHARE * stiction

    def flux_rate(self, m, volts):
        return (self.n1 * volts / self.r1 - m) / self.lag

    def current(self, m, volts):
        return (volts - self.n1 * self.flux_rate(m, volts)) / self.r1


def integrate(case, volts, state, t0, t1, smooth):
    """One phase of constant supply; returns pieces [(t, state solution, moving)], events, state."""
    pieces, events = [], []
    phi, x, v = state
    t = t0
    moving = 0
    while t < t1 - 1e-15:
        if moving == 0:
            low, high = x <= 0.0, x >= STROKE_M

            def net(m, x=x):
                return force(m) - PRELOAD_N - SPRING_N_PER_M * x

            def rate(_t, y, x=x):
                return [case.flux_rate(magnetising(y[0], x), volts)]

            def opens(_t, y, x=x):
                return net(magnetising(y[0], x)) - case.stiction

            def closes(_t, y, x=x):
                return -net(magnetising(y[0], x)) - case.stiction

            opens.terminal = closes.terminal = True
            opens.direction = closes.direction = 1.0
            ready = net(magnetising(phi, x))
            if ready > case.stiction and not high:
                moving = 1
                events.append(("start", t, 0.0, x))
                continue
            if -ready > case.stiction and not low:
                moving = -1
                events.append(("start", t, 0.0, x))
                continue
            watch = ([opens] if not high else []) + ([closes] if not low else [])
            s = solve_ivp(rate, (t, t1), [phi], method="Radau", rtol=1e-10, atol=1e-14,
                          events=watch, dense_output=True)
            pieces.append((t, s.t[-1], s.sol, None, x))
            t, phi = s.t[-1], s.y[0, -1]
            if s.status == 1:
                moving = 1 if net(magnetising(phi, x)) > 0.0 else -1
                events.append(("start", t, 0.0, x))
        else:
            side = moving

            def acceleration(m, x, v):
                rub = case.sliding * (tanh(v / SMOOTHING_M_PER_S) if smooth else side)
                return (force(m) - PRELOAD_N - SPRING_N_PER_M * x - case.drag * v - rub) / MASS_KG

            def rate(_t, y):
                m = magnetising(y[0], y[1])
                return [case.flux_rate(m, volts), y[2], acceleration(m, y[1], y[2])]

            def top(_t, y):
                return y[1] - STROKE_M

            def bottom(_t, y):
                return y[1]

            def slow(_t, y):
                return side * y[2] - HOLD_SPEED_M_PER_S

            top.terminal = bottom.terminal = slow.terminal = True
            top.direction, bottom.direction, slow.direction = 1.0, -1.0, -1.0
            watch = [top, bottom] + ([slow] if case.stiction > 0.0 and not smooth else [])
            s = solve_ivp(rate, (t, t1), [phi, x, v], method="Radau", rtol=1e-10,
                          atol=[1e-14, 1e-13, 1e-11], events=watch, dense_output=True,
                          max_step=1e-3)
            pieces.append((t, s.t[-1], s.sol, True, None))
            t, (phi, x, v) = s.t[-1], s.y[:, -1]
            if s.status == 1:
                moving = 0
                if len(s.t_events[0]) or len(s.t_events[1]):
                    x = STROKE_M if len(s.t_events[0]) else 0.0
                    events.append(("impact", t, abs(v), x))
                v = 0.0
    return pieces, events, (phi, x, v)


def currents(case, volts, pieces, until, n=60001):
    """Current at evenly spaced times up to `until`."""
    out = []
    for t0, t1, sol, moving, x_held in pieces:
        t1 = min(t1, until)
        if t1 <= t0:
            continue
        steps = max(2, int(n * (t1 - t0) / max(until, 1e-9)))
        for k in range(steps + 1):
            t = t0 + (t1 - t0) * k / steps
            y = sol(t)
            x = y[1] if moving else x_held
            out.append((t, case.current(magnetising(y[0], x), volts)))
    return out


def label(energy_mj):
    return "clear" if energy_mj >= 0.25 else "dull" if energy_mj >= 0.03 else "none"


def level_db(energy_j):
    watts = energy_j * 1e-5 / 0.01
    return 10.0 * log10(watts / (2.0 * pi * 0.5**2) / 1e-12)


def run(case, smooth=False):
    pieces, out, state = integrate(case, case.volts, (0.0, 0.0, 0.0), 0.0, case.on_s, smooth)
    _, back, rest = integrate(case, 0.0, state, 0.0, 1.0, smooth)
    starts = [e for e in out if e[0] == "start"]
    far = [e[1:3] for e in out if e[0] == "impact"]
    far += [(case.on_s + e[1], e[2]) for e in back if e[0] == "impact" and e[3] > 0.0]
    home = [e[1:3] for e in back if e[0] == "impact" and e[3] == 0.0]
    row = dict(case.inputs)
    row["starts_ms"] = starts[0][1] * 1e3 if starts else None
    for name, hits in (("", far), ("back_", home)):
        energy = 0.5 * MASS_KG * hits[0][1] ** 2 if hits else None
        row[name + "impact_ms"] = hits[0][0] * 1e3 if hits else None
        row[name + "speed_m_per_s"] = hits[0][1] if hits else None
        row[name + "energy_mj"] = energy * 1e3 if hits else None
        row[name + "level_db"] = level_db(energy) if hits else None
        row[name + "class"] = label(energy * 1e3) if hits else "none"
    row["peak_a"] = row["trough_a"] = row["dip_pct"] = None
    if starts:
        trace = currents(case, case.volts, pieces, min(far[0][0] if far else 1e9, case.on_s))
        peak_at = max(range(len(trace)), key=lambda k: trace[k][1])
        row["peak_a"] = trace[peak_at][1]
        row["trough_a"] = min(i for _, i in trace[peak_at:])
        row["dip_pct"] = 100.0 * (1.0 - row["trough_a"] / row["peak_a"])
    row["end_a"] = case.current(magnetising(state[0], state[1]), case.volts)
    row["end_mm"] = state[1] * 1e3
    row["rest_mm"] = rest[1] * 1e3
    return row


# A drained valve keeps a film of oil: 0.3 of the drag.
CASES = [
    Case("healthy 11R 12.6V 20C dry bench", thick=0.3),
    Case("healthy 11R 20C oil"),
    Case("healthy 11R 14.3V hot 95C", volts=14.3, t_c=95.0),
    Case("healthy -20C", t_c=-20.0),
    Case("aged 19.5R 12.6V 20C", joint=8.5),
    Case("aged 19.5R 12.0V hot 95C", joint=8.5, volts=12.0, t_c=95.0),
    Case("20R dry bench", joint=9.0, thick=0.3),
    Case("conn 5R", source=5.52),
    Case("part-break 4.7k", joint=4689.0),
    Case("coil open", joint=1e12),
    Case("shorted 60% stiff source", shorted=0.6),
    Case("shorted 60% 20C dry", shorted=0.6, thick=0.3),
    Case("shorted 95%", shorted=0.95),
    Case("light varnish 1N visc x2", stiction=1.0, thick=2.0),
    Case("sludge 2N visc x4", stiction=2.0, thick=4.0),
    Case("sludge 4N x8", stiction=4.0, thick=8.0),
    Case("sludge 6N x10", stiction=6.0, thick=10.0),
    Case("stuck 12N", stiction=12.0),
    Case("aged 19.5R + varnish 1N", joint=8.5, stiction=1.0, thick=2.0),
    Case("sludge 3N x6", stiction=3.0, thick=6.0),
    Case("sludge 8N x12", stiction=8.0, thick=12.0),
    Case("stick 1.5N", stiction=1.5, thick=3.0),
    Case("stick 2.5N", stiction=2.5, thick=5.0),
    Case("stick 1.5N hot", stiction=1.5, thick=3.0, t_c=95.0),
    Case("winding of 7.4R and 0.8 turns", ohms20=7.4, turns=0.8),
    Case("winding of 19.5R and 1.3 turns", ohms20=19.5, turns=1.3),
    Case("pulse of 4 ms", on_s=4e-3),
    Case("pulse of 6 ms", on_s=6e-3),
    Case("a third of the supply", volts=4.2),
    Case("deep cold sludge", t_c=-35.0, stiction=0.5, thick=4.0, volts=11.0),
]


def show(value):
    return "" if value is None else value if isinstance(value, str) else f"{value:.9g}"


def traces():
    print("case," + ",".join(f"{2 * k}" for k in range(1, 30)))
    for case in [c for c in CASES if c.inputs["case"] in TRACED]:
        pieces, _, _ = integrate(case, case.volts, (0.0, 0.0, 0.0), 0.0, case.on_s, False)
        out = []
        for k in range(1, 30):
            t = 2e-3 * k
            _, _, sol, moving, x_held = next(p for p in pieces if p[0] <= t <= p[1])
            y = sol(t)
            out.append(case.current(magnetising(y[0], y[1] if moving else x_held), case.volts))
        print(case.inputs["case"] + "," + ",".join(f"{amps:.7f}" for amps in out))


TRACED = ["healthy 11R 20C oil", "healthy 11R 14.3V hot 95C", "healthy -20C", "aged 19.5R 12.6V 20C",
          "shorted 60% 20C dry", "sludge 2N visc x4", "stuck 12N", "winding of 7.4R and 0.8 turns"]


def main():
    warnings.filterwarnings("ignore", category=RuntimeWarning)
    if "--currents" in sys.argv:
        return traces()
    smooth = "--smooth" in sys.argv
    for number, case in enumerate(CASES):
        row = run(case, smooth)
        if number == 0:
            print(",".join(row))
        print(",".join(show(value) for value in row.values()))


main()
