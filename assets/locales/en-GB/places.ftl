### Names of places and faults. A place without a message is shown by its own words.

place-engine-bay = under the bonnet
place-sump = oil sump
place-battery-plus = battery positive post
place-battery-minus = battery negative post
place-intake-valve = intake valve
place-exhaust-valve = exhaust valve

fault-at = { $kind }, { $place }
fault-none = no fault found
fault-open-coil = open coil
fault-partly-broken-coil = partly broken coil
fault-shorted-turns = shorted turns
fault-sticking-spool = sticking spool
fault-blocked-screen = blocked screen
fault-corroded-pin = corroded pin
fault-broken-wire = broken wire
fault-wire-to-ground = wire rubbed through to ground
fault-low-oil = low oil
