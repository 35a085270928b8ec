### The tray of instruments in the window. What an instrument shows in a log is said by the other catalogues.

## The tray

window-pane-tray = Instruments
tray-meter = Multimeter
tray-lamp = Test lamp
tray-clamp = Current probe
tray-power = Power lead
tray-scope = Scope
tray-reader = Code reader
tray-gauge = Gauge
tray-dipstick = Dipstick
tray-drive = Road
tray-takes = Takes { $time }.
tray-takes-and-costs = Takes { $time } and { $money }.
tray-take = Take the reading
tray-predict = Predict first
tray-predicted = { $prediction }: waits for the reading.
tray-step = Step { $number }
tray-nothing-read = Nothing read here yet.

## Ends that are put on something

tray-red = red lead
tray-black = black lead
tray-hand = wiggling hand
tray-tip = lamp’s tip
tray-clip = lamp’s clip
tray-jaws = probe’s jaws
tray-power-plug = power lead
tray-scope-probe = scope’s probe
tray-red-letter = R
tray-black-letter = B
tray-hand-letter = W
tray-tip-letter = T
tray-clip-letter = C
tray-jaws-letter = J
tray-power-plug-letter = P
tray-scope-probe-letter = S
tray-end-at = { $end }: { $place }
tray-end-nowhere = { $end }: nowhere yet
tray-end-hint = Drag it onto a thing in the bay, or choose from the list.
tray-choose = Where does the { $end } go?
tray-choose-on = Where on “{ $thing }” does the { $end } go?
tray-put = { $letter }: { $place }
tray-lift = Nowhere
tray-choose-none = Leave it where it is
tray-put-here = Put the { $end } here: { $place }
tray-put-where = Point at where the { $end } goes and click. Esc lets go of it.

## Multimeter

meter-volts = Volts DC
meter-ohms = Ohms
meter-amps = Amps DC
meter-from-front = Leads pushed in from the front
meter-zero = Zero the leads
meter-fuse = New fuse for the meter
meter-shows = { $function }: { $display }
meter-blank = { $function }: nothing read
meter-digit = Last digit { $step }
meter-settling = settling
meter-over-limit = Over limit: beyond the largest range

## Test lamp, current probe, power lead

lamp-take = Touch and look
clamp-zero = Zero the probe
power-take = Power it and listen
power-for = For
power-seconds = { $seconds } s
power-reversed = Red on the control pin

## Scope

scope-take = Capture
scope-current = Coil current
scope-pin = Driver’s pin
scope-trace = Captured course
scope-ms = ms
scope-point = { $time } ms, { $value }
scope-cursor = Cursor { $number }: { $reading }
scope-between = From 1 to 2: { $time } ms, { $value }

## Code reader and road

reader-take = Read
reader-clear = Clear codes
reader-codes = Codes
reader-freeze-frame = Freeze frame
reader-readiness = Readiness
reader-live-data = Live data
reader-test-results = Test results
reader-vehicle = Vehicle
reader-code = Code
reader-status = Status
reader-meaning = Meaning
reader-stored = stored
reader-pending = pending
reader-permanent = permanent
reader-no-code = none
reader-none = none
reader-lamp = Engine lamp
reader-on = asked for
reader-off = not asked for
reader-run = Monitors that have run
reader-waiting = Monitors that wait
reader-count = Codes stored
reader-stored-by = Stored by
reader-identification = Identification
reader-calibration = Calibration
reader-camshaft = Camshaft by its valve
reader-wanted = Wanted [°]
reader-actual = Actual [°]
reader-duty = Duty [%]
reader-mean-error = Mean error [°]
reader-furthest = Furthest [°]
drive-which = Which road?
drive-take = Drive

## Gauge and dipstick

gauge-take = Read the gauge
gauge-as-it-is = As it idles or stands
gauge-warm = Warm the engine up first
gauge-fit = Screw it in
gauge-out = Take it out
stick-take = Pull the dipstick
stick-lower = lower mark
stick-upper = upper mark

## The counter

tray-counter = Repair, proof
counter-customer = Customer
counter-parts = Parts
counter-cleaning = Cleaning
counter-wiring = Wiring
counter-fuses = Fuses, relays
counter-oil = Oil
counter-proof = Proof
counter-papers = Record, hand over
counter-take = Do it
counter-nothing = There is nothing of this kind on this vehicle.
counter-customer-why = Work that the customer has not agreed to is not paid.
counter-pattern = { $what } (pattern part)
counter-used = { $what } (used)
counter-wait = { $price } The wait of { $time } is in it.
counter-write = Write the { $section } …
