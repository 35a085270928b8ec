"""The vane of a phaser under a fixed pressure and a fixed opening, for the tests of `physics::phaser`.

Run:  python3 phaser_step.py > phaser_step.csv         (needs numpy and scipy)

What makes it independent of the program: scipy's adaptive RK45 with a relative tolerance of 1e-8
(the program takes Euler steps of a millisecond), the flow found by a bracketing root finder on the
pressure balance of the whole way instead of by a formula, and the torque of the lobes as the sum over
all eight lobes instead of three harmonics. Equations and parameters are shared, and estimates.

Columns t10 to t90: time after which the vane has gone 10, 40, 63, 90 % of 30 degrees from 5 (away) or
from 35 (home), averaged over the four quarters of a pulse in which the step may begin.
"""
from math import log10, pi, radians, degrees, sin, sqrt

from scipy.integrate import solve_ivp
from scipy.optimize import brentq

DV, PORT, SCREEN, CD = 4.2e-5, 4e-6, 12e-6, 0.62
PASSAGE, SCREEN_VISCOUS, LEAK, ACROSS = 1.5e11, 2e9, 3.6e-13, 1e-14
LOBE_NM, EVENT = 4.2323, radians(120)


def oil(t_c):
    a, b = 7.8481, 3.0428
    rho = 870 - 0.65 * (t_c - 15)
    return (10 ** (10 ** (a - b * log10(t_c + 273.15))) - 0.7) * 1e-6 * rho, rho


def lobes(cam):
    total = 0.0
    for n in range(4):
        x = cam - n * pi / 2
        x -= 2 * pi * round(x / (2 * pi))
        if abs(x) < EVENT / 2:
            total += 2 * LOBE_NM * sin(2 * pi * x / EVENT)
    return total


def run(t_c, bar, blocked, rpm, opening, steady):
    mu, rho = oil(t_c)
    free = 1 - blocked
    screen = lambda q: mu * SCREEN_VISCOUS / free**2 * q + rho / 2 * (q / (CD * SCREEN * free)) ** 2
    # the spool's leak through the screen, by itself as in the program
    behind = brentq(lambda p: p + screen(LEAK / mu * p) - bar * 1e5, 0.0, bar * 1e5, xtol=1e-7)
    way = 1.0 if opening > 0 else -1.0

    def flow(drive):
        if drive <= 0:
            return 0.0
        cost = lambda q: screen(q) + mu * PASSAGE * q + 2 * rho / 2 * (q / (CD * PORT * opening)) ** 2
        return brentq(lambda q: cost(q) - drive, 0.0, 1e-2, xtol=1e-18, rtol=1e-13)

    cam_speed = rpm / 60 * 2 * pi / 2
    times = []
    for quarter in range(4):
        begin = quarter * (pi / 2) / 4

        def rate(t, _):
            torque = steady + lobes(begin + cam_speed * t)
            return [degrees(2 * (way * flow(behind + way * torque / DV) + torque / DV * ACROSS / mu) / DV)]

        goes = [lambda t, y, s=s: abs(y[0]) - 30 * s for s in (.1, .4, .63, .9)]
        goes[-1].terminal = True
        s = solve_ivp(rate, (0, 30), [0.0], method="RK45", rtol=1e-8, atol=1e-8, max_step=2e-3, events=goes)
        times.append([e[0] for e in s.t_events])
    return [sum(column) / 4 for column in zip(*times)]


print("oil_c,bar,blocked,rpm,opening,steady_nm,t10,t40,t63,t90")
for case in [
    (90, 4.2, 0, 2000, 1.0, 0.0), (90, 4.2, 0, 2000, -1.0, 0.0), (90, 4.2, 0, 2000, 0.3, 0.0),
    (100, 1.1, 0, 700, 1.0, -0.2), (100, 1.1, 0, 700, -1.0, -0.2), (120, 0.7, 0, 700, 1.0, 0.0),
    (60, 3.0, 0, 1500, 1.0, -0.5), (20, 4.2, 0, 1200, 1.0, -0.8), (0, 4.2, 0, 1200, 1.0, -1.5),
    (90, 4.2, 0.5, 2000, 1.0, 0.0), (90, 4.2, 0.8, 2000, 1.0, 0.0),
    (90, 4.2, 0.9, 2000, 1.0, 0.0), (90, 4.2, 0.95, 2000, 1.0, 0.0), (90, 4.2, 0.95, 2000, -1.0, -1.0),
    (20, 4.2, 0.95, 1200, 1.0, 0.0), (90, 2.0, 0.9, 3000, 0.6, 0.5), (100, 0.0, 0, 200, -1.0, -1.4),
    (90, 0.5, 0.8, 700, 1.0, 0.0), (40, 2.0, 0, 900, -0.5, 0.3),
]:
    print(",".join([f"{x:g}" for x in case] + [f"{t:.5f}" for t in run(*case)]))
