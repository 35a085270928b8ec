"""Oils of every grade, fresh and in service, and what a dipstick shows, by an independent program.

Written from the formulas of the page on physics, without looking at the program's own arithmetic:
ASTM D341 (through scipy's root finder instead of the closed inverse), the blending of the double
logarithms, the mixing rule for fuel, hours counted by heat.

Run:  python3 oil_service.py > oil_service.csv   (scipy 1.x)
"""
import math

from scipy.optimize import brentq

GRADES = {
    "0W-20": (45.0, 8.5, 845.0, 1400.0),
    "0W-30": (57.0, 10.4, 845.0, 1400.0),
    "5W-30": (61.7, 10.6, 870.0, 1400.0),
    "5W-40": (85.0, 14.0, 855.0, 1400.0),
    "10W-40": (95.0, 14.2, 870.0, 1000.0),
    "15W-40": (108.0, 14.5, 880.0, 700.0),
    "20W-50": (165.0, 18.5, 890.0, 700.0),
}


def loglog(nu):
    return math.log10(math.log10(nu + 0.7))


def from_loglog(value):
    return brentq(lambda nu: loglog(nu) - value, 0.5, 1e7, xtol=1e-12, rtol=1e-14)


def kinematic(grade, other, share, hours, mean_c, fuel, at):
    kv40, kv100, _, life = GRADES[grade]
    if share > 0:
        o40, o100, _, _ = GRADES[other]
        kv40 = from_loglog((1 - share) * loglog(kv40) + share * loglog(o40))
        kv100 = from_loglog((1 - share) * loglog(kv100) + share * loglog(o100))
    if fuel > 0:
        kv40 = kv40 ** (1 - fuel) * 0.7 ** fuel
        kv100 = kv100 ** (1 - fuel) * 0.45 ** fuel
    lives = hours * 2 ** ((mean_c - 100) / 10) / life
    thick = min(3.0, 1 + 0.05 * lives + 0.8 * max(0.0, lives - 1) ** 2)
    kv40 *= thick
    kv100 *= 1 + 0.75 * (thick - 1)
    x40, x100, x = (math.log10(t + 273.15) for t in (40.0, 100.0, at))
    slope = (loglog(kv100) - loglog(kv40)) / (x100 - x40)
    return from_loglog(loglog(kv40) + slope * (x - x40))


print("grade,other,share,hours,mean_c,fuel,at_c,mm2_s")
for grade in GRADES:
    for other, share, hours, mean_c, fuel in [
        ("20W-50", 0.0, 0.0, 95.0, 0.0),
        ("20W-50", 0.0, 220.0, 95.0, 0.0),
        ("20W-50", 0.0, 1200.0, 112.0, 0.0),
        ("20W-50", 0.0, 60.0, 95.0, 0.08),
        ("20W-50", 0.6, 60.0, 95.0, 0.0),
        ("0W-20", 0.4, 900.0, 110.0, 0.05),
    ]:
        for at in (-10.0, 20.0, 40.0, 90.0, 120.0):
            nu = kinematic(grade, other, share, hours, mean_c, fuel, at)
            print(f"{grade},{other},{share:g},{hours:g},{mean_c:g},{fuel:g},{at:g},{nu:.9g}")
