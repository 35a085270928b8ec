### Names of places and faults. A place without a message is shown by its own words.

place-engine-bay = under the bonnet
place-sump = oil sump
place-dipstick = oil dipstick
place-battery-plus = battery positive post
place-battery-minus = battery negative post
place-intake-valve = intake valve
place-exhaust-valve = exhaust valve

## Parts, wires and test points of the vehicles that the program carries

place-air-duct = air duct
place-alternator = alternator
place-battery = battery
place-battery-cable = battery cable
place-duct-clamp = duct clamp
place-engine-cover = engine cover
place-engine-ground = engine ground
place-exhaust-connector = exhaust connector
place-exhaust-control-pin = exhaust control pin
place-exhaust-control-wire = exhaust control wire
place-exhaust-feed-pin = exhaust feed pin
place-exhaust-feed-wire = exhaust feed wire
place-exhaust-harness-control = exhaust harness control
place-exhaust-harness-feed = exhaust harness feed
place-exhaust-module-control = exhaust module control
place-exhaust-valve-control = exhaust valve control
place-exhaust-valve-feed = exhaust valve feed
place-feed-wire = feed wire
place-fuse-box = fuse box
place-fuse-box-lid = fuse box lid
place-ground-strap = ground strap
place-heat-shield = heat shield
place-intake-connector = intake connector
place-intake-control-pin = intake control pin
place-intake-control-wire = intake control wire
place-intake-feed-pin = intake feed pin
place-intake-feed-wire = intake feed wire
place-intake-harness-control = intake harness control
place-intake-harness-feed = intake harness feed
place-intake-module-control = intake module control
place-intake-valve-control = intake valve control
place-intake-valve-feed = intake valve feed
place-module-cover = module cover
place-module-feed-wire = module feed wire
place-module-fuse = module fuse
place-module-ground-wire = module ground wire
place-module-relay = module relay
place-starter = starter
place-valve-fuse = valve fuse
place-valve-fuse-out = valve fuse out
place-valve-relay = valve relay

## Roads

place-car-park-loop = car park loop
place-cold-start-short-run = cold start short run
place-customers-road = customers road
place-hill = hill
place-motorway = motorway
place-proving-drive = proving drive
place-test-hill = test hill
place-town = town
place-town-loop = town loop

## Faults

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
