### Events: what followed from a step.

event-spent = { $time }, { $money }
event-refused = Not possible: { $why }
event-caution = Caution: { $hazard } The maker's procedure comes first.
event-against-care = Against good practice: { $breach }
event-answered = The customer says: { $answer }
event-no-answer-from-customer = The customer has nothing to say about that.
event-seen = { $place }: { $sight }
event-oil-seen = Oil { $level }, { $look }
event-heard-on = { $place }, current on: { $sound }.
event-heard-off = { $place }, current off: { $sound }.
event-removed = { $place } is off.
event-refitted = { $place } is back in place.
event-seal-torn = { $place }: the seal is torn. It has to be renewed before the engine runs.
event-seal-leaks = { $place }: oil weeps from the seal.
event-unplugged = { $place } is unplugged.
event-plugged = { $place } is plugged in.
event-key-off = Key off, engine stopped.
event-key-on = Key on, engine not started. { $lamps }
event-key-crank = The starter turns the engine for each reading. { $lamps }
event-key-start = Key to start. { $lamps }
event-reading = { $red } to { $black }: { $display }
event-over-limit = { $red } to { $black }, { $function }: { $display }, more than the meter can show
event-watched-steady = { $place } wiggled, { $function }: from { $least } to { $most }, steady
event-watched-jumped = { $place } wiggled, { $function }: from { $least } to { $most }, the display jumped
event-lamp-glows = Test lamp, tip on { $tip }, clip on { $clip }: { $glow }
event-clamped = { $place }, current probe: { $display }
event-clamp-zeroed = Current probe zeroed with its jaws closed around nothing.
event-captured-current = { $place }, coil current from switch-on
event-captured-pin = { $place }, voltage at the module's pin
event-meter-fuse-replaced = The meter has a new fuse and reads amps again.
event-gauge-fitted = The oil pressure gauge is in its tap, hose clear of belts and exhaust.
event-gauge-removed = The oil pressure gauge is out, its tap closed and wiped dry.
event-gauge-read = Oil pressure { $speed }: { $bar } bar, { $needle }
gauge-idle = with the engine as it is
gauge-held = at { $rpm } rpm
gauge-steady = needle steady
gauge-swings = needle swinging over { $swing } bar
event-meter-fuse-blew = The meter's own fuse blew: on amps it reads zero until it is replaced.
event-leads-zeroed = Leads zeroed: their resistance is off the display now.
event-lead-fuse-blew = The fuse of the power lead blew: something drew far too much current.
event-commanded-on = { $place }: switched on by the module.
event-commanded-off = { $place }: released by the module.
event-freeze-frame = Freeze frame of { $code }
event-freeze-frame-without-code = Freeze frame
event-no-freeze-frame = No freeze frame is stored.
event-live-data = Live data
event-readiness = Monitor status. Stored codes: { $stored }
event-test-results = Test results since the last clearing
event-vehicle-information = Vehicle information
  Identification: { $identification }
  Calibration: { $calibration }
event-codes-cleared = Codes cleared. Freeze frame and finished monitors are gone with them; permanent codes stay until their monitors have passed.
event-driven = Road test, { $route }: { $quality } { $lamps }
event-suspected = On the list: { $fault }, { $percent } %
event-noted = Noted.
event-predicted = Prediction noted for the next reading.
event-prediction-met = The reading lies within your prediction.
event-prediction-missed = The reading lies outside your prediction: what would explain it?
event-prediction-other = The reading is of another quantity than you predicted: mind the function and the unit.
event-sign-met = It is as you predicted.
event-sign-missed = It is not as you predicted: what would explain it?
event-committed = Your diagnosis: { $fault }
event-approved-up-to = The customer approves the repair as long as its work and parts come to no more than { $money }. Ask again before anything beyond that.
event-more-declined = The customer declines more than was agreed. For the repair { $left } of it is left. What cannot be done within that is written up as found and declined.
event-approved = The customer approves the repair.
event-fitted = { $place }: new part { $number } fitted.
event-fitted-pattern = { $place }: pattern part { $number } fitted.
event-fitted-used = { $place }: used part { $number } fitted.
event-waited = { $time } pass until the part is here; the vehicle stands in the bay.
event-cleaned = { $place }: screen cleaned, spool flushed.
event-mended = { $place }: mended.
event-replaced = { $place }: replaced with a new one of the same rating.
event-oil-filled = { $litres } l of oil went in, up to the upper mark.
event-oil-changed = { $litres } l of old oil came out; new filter, filled up with { $grade }.
event-oil-full-already = No oil went in: the level is at the upper mark or above it already.
event-written-concern = Concern written.
event-written-cause = Cause written.
event-written-correction = Correction written.
event-code-reported = The customer is told of a code that is not part of this job: { $code }
event-handed-over-repaired = Handed over as repaired. The job is closed.
event-handed-over-no-fault = Handed over: no fault found. The job is closed.
event-handed-over-referred = Referred to somebody else. The job is closed.
event-handed-over-unsafe = Handed over as not safe to drive. The job is closed.
event-handed-over-declined = Handed over: work declined by the customer. The job is closed.

## Refusals, each with what to do instead

refusal-no-such-place = this vehicle has no “{ $place }”. Look the name up in the wiring diagram or the procedure.
refusal-still-fitted = the { $place } is still in the engine. Take it out first.
refusal-does-not-fit = part { $number } does not fit there. Look the number up in the parts list.
refusal-engine-runs = not while the engine runs. Turn the key off first.
refusal-engine-stands = the engine stands. Start it first.
refusal-no-gauge = the oil pressure gauge is not in its tap. Fit it first.
refusal-gauge-fitted = the oil pressure gauge is still in its tap. Take it out first.
refusal-cannot-run = the engine cannot run without: { $places }. Put that back first.
refusal-cannot-run-at-all = the engine cannot run as it stands. Put everything back first.
refusal-key-off = the key is off. Turn it on first.
refusal-key-must-be-off = the key is on. Turn it off first.
refusal-power-forbidden = the data sheet forbids voltage from outside on this valve. Have the module switch it instead.
refusal-too-much-confidence = your confidences would add up to { $sum } %, and no more than 100 % can be shared out. Lower another suspect first.
refusal-code-not-read = the reader has not shown { $code }. Read the codes first, and report what they show.
refusal-finished = the vehicle has been handed over and the job is closed. Read the debrief.
refusal-no-such-tool = this case leaves out the { $tool }. The job sheet lists what there is.
refusal-time-is-up = the time for this case is over. Close the vehicle up, write the record and hand over.
refusal-out-of-range = a number in that step is outside what makes sense. Give it again.

obstacle-behind = something is in the way. Take off first: { $places }.
obstacle-still-off = something behind it is still off. Put back first: { $places }.
obstacle-already-off = it is off already. Go on with what it covered.
obstacle-in-place = it is in place already. Go on with the next step.
obstacle-plugged = the plugged-in connector hides that point. Unplug it first: { $place }.

no-answer-key-off = The module does not answer: the key is off. Turn it on and ask again.
no-answer-no-reply = The reader has power, the key is on, and nothing answers. Check the module's supply, fuse and ground, and the link wires from the socket to it.
no-answer-reader-dark = The reader stays dark: its socket gives it no power. Check the socket's fuse and ground, and the battery.
no-answer-not-offered = The module answers, and does not offer that.
no-answer-engine-runs = The module refuses while the engine runs. Stop the engine, turn the key on and ask again.

## Cautions

hazard-hot = engine, oil and coolant burn. Let them cool, protect hands and eyes, and never open a hot cooling system.
hazard-moving-parts = belts turn and fans start by themselves. Keep hands, hair, sleeves and leads clear; neutral, brake on.
hazard-battery-current = a shorted battery melts metal and its gas explodes. Rings and watch off, no sparks, fused leads only.
hazard-road = drive only with a licence, insurance, a roadworthy vehicle and checked levels, and let a passenger read the data.
hazard-fumes = exhaust gas kills. Run an engine indoors only with extraction.
hazard-used-oil = used oil harms the skin. Wear gloves, wipe up spills and collect what comes out.

## Breaches of care, each with why it matters

breach-key-on = { $place } parted with the key on. The module may store a code that you made yourself, and contacts can spark. Key off first.
breach-ohms-live = ohms on a live circuit. Voltage from the circuit drowns the meter's own small current, so the figure means nothing. Key off and unplug first.
breach-ohms-plugged = ohms with { $place } still plugged in. The rest of the circuit lies beside the part, and the meter reads both. Unplug first.
breach-amps-across-source = amps straight across a source. On amps the meter is almost a short circuit, and only its fuse saves it and you. Put it in series with a load.
breach-front-probed = { $place }: a lead pushed into a terminal from the front. It bends the spring open, and the contact is poor from then on. Back-probe past the seal instead.
breach-test-lamp-on-module = { $place }: a test lamp where the control module is connected. It draws a third of an ampere, switches the valve by itself and can destroy a driver. Use it on feeds, and a meter here.
breach-powered-too-long = { $place } powered for longer than the data sheet allows. The winding heats up outside its oil. Keep to short pulses.
breach-reversed-polarity = { $place } powered with the polarity reversed. Where the data sheet gives a polarity, the wrong one can destroy a diode or a module. Red goes to the feed pin.
breach-run-without-oil = engine run with the oil lamp on or no oil on the stick. Bearings fail within moments. Check and fill the oil first.
breach-driven-unchecked = driven without a look at the oil. A vehicle is checked before it goes on the road. Pull the dipstick first.
breach-driven-incomplete = driven with parts left off. What is loose can fall, foul a belt or let oil out. Put everything back first.
breach-wrong-oil-grade = oil of another grade than the maker asks for. It is too thick in the cold or too thin when hot, and phasers feel both. Look the grade up first.
breach-cleared-unread = codes cleared before they were read. Codes and freeze frame were evidence, and now they are gone. Read and note them first.
breach-repair-before-diagnosis = repair begun before a diagnosis. A part fitted on a guess costs the customer money and proves nothing. Commit to a diagnosis first.
breach-repair-beyond-approval = work beyond what the customer has approved. Nobody will pay for it. Ask again first; what is declined is written up and left alone.
breach-repair-without-approval = repair begun without the customer's approval. It is the customer's vehicle and money. Ask for approval first.
breach-care-key-off = { $place } handled with the key on. The module may store codes of your own making, and contacts can spark. Key off first.
breach-care-break-seal-loose = { $place } drawn out without breaking the seal loose. A seal that sticks tears, and its pieces end up in the oil. Turn the part to and fro first.
breach-care-new-seal = { $place } put back on its old seal. A seal that was squeezed once may weep hot oil. Fit a new, oiled one every time.
breach-care-torque = { $place } not tightened to the maker's torque. Too loose leaks, too tight strips the thread. Use a torque wrench.
breach-care-hot = { $place } handled hot. Metal and oil burn. Let it cool or protect your hands.

## Sights, sounds and oil

sight-sound = nothing out of the ordinary to be seen
sight-corrosion = green corrosion on a contact
sight-spread-terminal = a terminal stands open: it was spread
sight-blown-fuse = the strip of the fuse is burnt through
sight-rubbed-through = insulation rubbed through, bare copper shows
sight-sludge = sludge on the oil screen
sight-torn-seal = the seal is torn
sight-used-seal = the seal is flattened: it was squeezed before
sight-spool-sticks = the spool moves, but sticks when pushed by hand
sight-spool-seized = heavy varnish on the spool, which hardly moves
sight-hidden = nothing can be seen of it yet; take off what covers it

glow-dark = dark
glow-dim = dim
glow-bright = bright

cursors-dip = Peak { $peak } A, dip { $depth } A, lowest after { $at } ms; { $end } A at the end
cursors-no-dip = No dip; { $end } A at the end
cursors-plateau = Closed { $closed } V, opens to { $plateau } V for { $lasts } ms, then { $open } V
cursors-no-plateau = Closed { $closed } V, open { $open } V, no plateau
plot-time = { $ms } ms across

click-clear = a sharp click
click-dull = a dull, soft click
click-none = no click

oil-dry = No oil on the dipstick at all. Do not start the engine.
oil-above-upper = above the upper mark
oil-at-upper = at the upper mark
oil-nearer-upper = between the marks, nearer the upper one
oil-half-way = about half way between the marks
oil-nearer-lower = between the marks, nearer the lower one
oil-at-lower = at the lower mark
oil-below-lower = below the lower mark
oil-fresh = amber and clear
oil-dark = dark, as used oil is
oil-sludge = black, with lumps and a sticky film of sludge on the stick
oil-thin = thin between the fingers
oil-thick = thick between the fingers
oil-smells-of-fuel = smelling of fuel

## Lamps, idle, live data, road test

lamps-none = Engine lamp off, oil pressure lamp off.
lamps-engine = Engine lamp on, oil pressure lamp off.
lamps-oil = Engine lamp off, oil pressure lamp on.
lamps-both = Engine lamp on, oil pressure lamp on.

idle-smooth = The engine idles smoothly.
idle-rough = The engine idles roughly.
idle-does-not-start = The engine does not start.
idle-stalls = The engine stalls.

frame = { $rpm } rpm, load { $load } %, { $speed } km/h, coolant { $coolant } °C, oil { $oil } °C, supply { $supply } V
cam-live = { $place }: camshaft wanted { $wanted }°, actual { $actual }° of crank from rest, duty { $duty } %
cam-drive = { $place }: camshaft on average { $error }° of crank off what was wanted, furthest { $furthest }° from rest

drive-smooth = it ran smoothly.
drive-rough = it ran roughly.
drive-does-not-start = it did not start.
drive-stalls = it stalled.
drive-monitors = Monitors that ran to a decision: { $codes }
drive-no-monitor = No monitor ran to a decision.
drive-stopped = Stopped after { $seconds } s on the road and turned back.
drive-no-reader = No code reader was connected, so that nobody saw what the control module watched.

## Codes as the reader shows them

code-with-meaning = { $code }: { $meaning }
codes-stored = Stored codes:
codes-none-stored = No stored codes.
codes-pending = Pending codes:
codes-none-pending = No pending codes.
codes-permanent = Permanent codes:
codes-none-permanent = No permanent codes.
lamp-asked = The module asks for the engine lamp.
lamp-not-asked = The module does not ask for the engine lamp.
monitors-complete = Monitors that have run since the last clearing: { $codes }
monitors-waiting = Monitors that have not run yet: { $codes }
monitors-none-waiting = Every valve monitor has run since the last clearing.

## Job sheet

job-title = Job sheet: { $title }
job-vehicle = { $name }, { $year }, { $engine }
job-distance = { $kilometres } km
job-concern = Concern: { $concern }
job-history = History:
till = { $minutes }, { $money } of material, { $total } in all
till-with-limit = { $till }, { $left } left
job-tools = Tools of this case: eyes and hands, dipstick, code reader{ $tools }
job-time = Time for it: { $time } of work; after that only closing up, record and hand-over.
tool-multimeter = multimeter
tool-test-lamp = test lamp
tool-current-probe = current probe
tool-scope = scope
tool-pressure-gauge = oil pressure gauge
tool-power-lead = power lead
job-no-history = No history.

## Chosen live data, readiness, test results

reader-line = { $name }: { $value }
reader-not-offered = not offered by the module
live-engine-speed = Engine speed
live-load = Load
live-road-speed = Road speed
live-coolant = Coolant
live-oil = Oil
live-supply = Supply of the module
live-run-time = Time since the start
ready-misfire = Misfire
ready-fuel-system = Fuel system
ready-components = Components
ready-catalyst = Catalyst
ready-fuel-vapour = Fuel vapour system
ready-oxygen-sensors = Oxygen sensors
ready-valve-timing = Exhaust gas recirculation or valve timing
ready-complete = complete
ready-waiting = not complete
counter-warm-ups = Warm-ups since the clear
counter-distance = Distance since the clear
counter-time = Running time since the clear
counter-lamp-distance = Distance with the lamp on
counter-lamp-time = Running time with the lamp on
amount-rpm = { $value } rpm
amount-percent = { $value } %
amount-km-h = { $value } km/h
amount-celsius = { $value } °C
amount-volts = { $value } V
amount-seconds = { $value } s
amount-km = { $value } km
amount-running-minutes = { $value } min
test-name = { $code }, { $measure }
test-waiting = has not run
test-passed = { $value }, limits { $least } to { $most }, passed
test-failed = { $value }, limits { $least } to { $most }, failed
measure-time-off-target = time off target
measure-hunting-share = share of time hunting
measure-response-time = time to follow a change
measure-time-wrong-at-rest = time wrong at rest
measure-time-of-circuit-fault = time with a circuit fault
measure-time-of-supply-fault = time with the supply out of limits
measure-time-of-oil-pressure-fault = time with wrong oil pressure
