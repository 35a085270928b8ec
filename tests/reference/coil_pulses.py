"""Average, least and greatest current of a pulsed coil, for the tests of `physics::pulsed_coil`.

Run:  python3 coil_pulses.py > coil_pulses.csv         (needs numba and ngspice)

Two columns of each figure, found without the closed form that the program uses:
- "step_*": the circuit with a constant freewheel drop, stepped forward by 0.1 us with the midpoint
  rule until two periods agree;
- "diode_*": the same in ngspice with a switch of 0.1 ohm and a real diode (IS 1e-9 A, N 1.3, 50 mohm)
  instead of the constant drop, averaged over the last 5 of 30 periods.
"""

import re
import subprocess
import tempfile

from numba import njit

CASES = [
    # volts, ohms of the whole circuit, mH, pulses a second
    (14.1, 11.45, 35.0, 300.0),
    (14.1, 14.69, 12.5, 300.0),
    (12.0, 14.69, 12.5, 200.0),
    (15.0, 7.9, 8.0, 150.0),
    (14.1, 19.95, 40.0, 100.0),
    (13.5, 23.2, 12.5, 250.0),
]
DUTIES = [0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.6, 0.8, 0.95]
DROP_V = 0.7


@njit
def stepped(volts, ohms, henries, hertz, duty):
    n = int(round(1.0 / hertz / 1e-7))
    on = int(round(duty * n))
    dt = 1.0 / hertz / n
    amps, before = 0.0, -1.0
    while True:
        total, low, high = 0.0, amps, amps
        for k in range(n):
            supply = volts if k < on else -DROP_V
            half = amps + 0.5 * dt * (supply - ohms * amps) / henries
            if supply < 0.0 and half <= 0.0:
                half = 0.0
            after = amps + dt * (supply - ohms * half) / henries
            if supply < 0.0 and after <= 0.0:
                after = 0.0
            total += 0.5 * (amps + after)
            amps = after
            low, high = min(low, amps), max(high, amps)
        if abs(total / n - before) < 1e-8:
            return total / n, low, high
        before = total / n


NETLIST = """* pulsed coil
vs s 0 {volts}
rc s c {coil}
l1 c d {henries}
vsense d p 0
sw p 0 g 0 driver
d1 p s free
vg g 0 pulse(0 1 0 100n 100n {on} {period})
.model driver sw(ron=0.1 roff=5meg vt=0.5 vh=0.1)
.model free d(is=1e-9 n=1.3 rs=50m)
.tran 1u {stop} 0 1u
.meas tran mean avg i(vsense) from={begin} to={end}
.meas tran low min i(vsense) from={begin} to={end}
.meas tran high max i(vsense) from={begin} to={end}
.end
"""


def simulated(volts, ohms, henries, hertz, duty):
    periods = 30
    text = NETLIST.format(volts=volts, coil=ohms - 0.1, henries=henries, on=duty / hertz - 1e-7,
                          period=1.0 / hertz, begin=(periods - 5) / hertz, end=periods / hertz, stop=(periods + 0.1) / hertz)
    with tempfile.NamedTemporaryFile("w", suffix=".cir") as file:
        file.write(text)
        file.flush()
        out = subprocess.run(["ngspice", "-b", file.name], capture_output=True, text=True).stdout
    if "mean" not in out:
        raise RuntimeError(out + text)
    return [float(re.search(rf"^{name}\s*=\s*(\S+)", out, re.M).group(1)) for name in ("mean", "low", "high")]


def main():
    print("volts,ohms,millihenries,pulses_per_s,duty,drop_v,step_mean,step_low,step_high,diode_mean,diode_low,diode_high")
    for volts, ohms, milli, hertz in CASES:
        for duty in DUTIES:
            row = (volts, ohms, milli * 1e-3, hertz, duty)
            values = [*stepped(*row), *simulated(*row)]
            print(f"{volts:g},{ohms:g},{milli:g},{hertz:g},{duty:g},{DROP_V:g},"
                  + ",".join(f"{value:.6f}" for value in values))


main()
