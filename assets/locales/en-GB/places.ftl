### Names of places and faults. A place without a message is shown by its own words.

place-engine-bay = under the bonnet
place-sump = oil sump
place-dipstick = oil dipstick
place-battery-plus = battery positive post
place-battery-minus = battery negative post
place-intake-valve = intake valve
place-exhaust-valve = exhaust valve

fault-at = { $kind }, { $place }
fault-none = no fault found
fault-open-coil = open coil
fault-partly-broken-coil = partly broken coil
fault-poor-joint = poor joint in the coil
fault-shorted-turns = shorted turns
fault-sticking-spool = sticking spool
fault-blocked-screen = blocked screen
fault-corroded-pin = corroded pin
fault-spread-terminal = spread terminal
fault-loose-contact = contact that opens when shaken
fault-hot-contact = contact that opens when hot
fault-broken-wire = broken wire
fault-wire-to-ground = wire rubbed through to ground
fault-wire-to-supply = control wire rubbed through to its feed
fault-chafed-feed = feed wire rubbed through, fuse blown
fault-blown-fuse = blown fuse, cause gone
fault-resistive-relay = burnt relay contact
fault-low-oil = low oil
fault-worn-out-oil = worn-out oil
fault-fuel-in-oil = fuel in the oil
fault-wrong-oil = oil of the wrong grade
