### Steps: captions, help for typed steps, and the small joints of sentences.

## The language itself, as those who speak it call it

language-name = English

## Joints

decimal-point = .
list-comma = ,{" "}
list-and = { $most } and { $last }
list-or = { $most } or { $last }
list-more = { $list } and { $more } more
amount-minutes = { $count } min
amount-money = { $sign }{ $currency }{ $number }

## Captions of steps

step-read-job-sheet = Read the job sheet
step-ask-symptom = Ask the customer what is wrong
step-ask-when = Ask the customer when it shows
step-ask-service = Ask the customer about oil and service
step-ask-repairs = Ask the customer about earlier repairs
step-consult-wiring = Consult the wiring diagram
step-consult-limits = Consult the limits
step-consult-procedure = Consult the procedure
step-consult-parts = Consult the parts list
step-consult-codes = Consult the list of codes
step-look = Look: { $place }
step-dipstick = Pull the dipstick
step-remove = Remove: { $place }
step-pull = Pull straight out: { $place }
step-refit = Refit: { $place }
step-refit-new-seal = Refit with a new, oiled seal: { $place }
step-unplug = Unplug: { $place }
step-plug = Plug in: { $place }
step-key-off = Key off
step-key-on = Key on
step-key-start = Start the engine
step-key-crank = Let the starter turn the engine for each reading
step-measure-volts = Measure volts: red on { $red }, black on { $black }
step-measure-ohms = Measure ohms: red on { $red }, black on { $black }
step-measure-amps = Measure amps: red on { $red }, black on { $black }
step-from-front = { $measure }, pushed in from the front
step-wiggle = Wiggle { $place } and watch { $function }: red on { $red }, black on { $black }
step-test-lamp = Test lamp: tip on { $tip }, clip on { $clip }
step-clamp = Current probe around: { $place }
step-zero-clamp = Zero the current probe
step-scope-current = Scope, coil current: { $place }
step-scope-pin = Scope, driver pin: { $place }
step-replace-meter-fuse = Put a new fuse into the meter
step-zero-leads = Zero the meter's leads
step-fit-gauge = Screw in the oil pressure gauge
step-remove-gauge = Take out the oil pressure gauge
step-read-gauge-idle = Read oil pressure at idle
step-read-gauge-idle-warm = Warm the engine up and read oil pressure at idle
step-read-gauge-held = Read oil pressure at { $rpm } rpm
step-read-gauge-held-warm = Warm the engine up and read oil pressure at { $rpm } rpm
step-power = Battery voltage for { $seconds } s: { $place }
step-power-reversed = Battery voltage for { $seconds } s, reversed: { $place }
step-command-on = Have the module switch on: { $place }
step-command-off = Have the module switch off: { $place }
step-read-codes = Read the codes
step-read-freeze-frame = Read the freeze frame
step-read-live-data = Read live data
step-read-live-items = Read live data: { $items }
step-read-readiness = Read readiness and counters
step-read-test-results = Read the monitors' test results
step-read-vehicle-information = Read the vehicle's identification
step-clear-codes = Clear the codes
step-drive = Road test: { $place }
step-drive-part = Road test: { $place }, for { $seconds } s
step-suspect = Suspect { $fault }: { $percent } %
step-predict-range = Predict from { $least } to { $most } { $unit }
step-predict-above = Predict { $least } { $unit } or more
step-predict-over-limit = Predict over limit { $unit }
step-predict-click-clear = Predict a clear click
step-predict-click-dull = Predict a dull knock
step-predict-click-none = Predict no click
step-predict-glow-bright = Predict a bright lamp
step-predict-glow-dim = Predict a dim lamp
step-predict-glow-dark = Predict a dark lamp
step-predict-code = Predict that the reader lists { $code }
step-predict-no-codes = Predict that the reader lists no code
step-commit = Diagnosis: { $fault }
step-ask-approval = Ask the customer to approve the repair
step-fit = Fit part { $number }: { $place }
step-clean = Clean screen and spool: { $place }
step-mend = Mend: { $place }
step-replace = Replace: { $place }
step-top-up = Top up the oil
step-change-oil = Change oil and filter: { $grade }
step-write-concern = Write the concern
step-write-cause = Write the cause
step-write-correction = Write the correction
step-report-code = Tell the customer of a code that is not part of this job: { $code }
step-hand-over-repaired = Hand the vehicle over as repaired
step-hand-over-no-fault = Hand the vehicle over: no fault found
step-hand-over-referred = Refer the vehicle to somebody else
step-hand-over-unsafe = Hand the vehicle over as not safe to drive
step-hand-over-declined = Hand the vehicle over: work declined

## Help for typed steps

help-intro = A step is a verb, mostly a name, and details. Any word may be cut short as long as it stays clear; # begins a comment.
help-form = Form: { $form }
help-example = Example: { $example }

group-look = Ask and look
group-open = Open up and put back
group-measure = Measure
group-module = Talk to the control module
group-run = Run
group-reason = Reason
group-repair = Repair
group-finish = Finish

help-read-job-sheet = Read the job sheet again
help-ask = Ask the customer: symptom, when, service or repairs
help-consult = Read about wiring, limits, procedure, parts or codes
help-look = Look closely at a part, a connector, a wire or the engine-bay
help-dipstick = Pull the dipstick: level and look of the oil
help-remove = Take a part off by the procedure
help-pull = Pull a part straight out: quicker, and may harm it
help-refit = Put a part back, a valve best with new-seal
help-unplug = Unplug a connector
help-plug = Plug a connector in
help-measure = Read volts, ohms or amps between red and black lead
help-wiggle = Wiggle a connector, contact or wire; least and greatest reading
help-lamp = Put a test lamp, a small load, between two points
help-clamp = Read the mean current in a wire, running or not
help-scope = Capture a valve's coil current at switch-on or its driver's pin
help-zero = Take the leads' resistance or the probe's zero off the display
help-gauge = Oil pressure: gauge in, read idle or held, gauge out
help-power = Put fused battery voltage on a valve's own pins and listen
help-read-module = Read codes and what else the control module keeps
help-read-live-data = Read live data, all of it or the named items
help-command = Have the module switch a valve on or off
help-clear = Clear the codes; read and note them first
help-key = Turn the key: off, on, or start and idle for a minute
help-drive = Take the vehicle on a road test
help-suspect = Put a fault on your list with your confidence in it
help-predict = Say what the next reading will be, with its unit
help-predict-click = Say how the next valve will click that is switched on
help-predict-glow = Say how the test lamp will glow
help-predict-codes = Say that the reader will list no code, or this one
help-commit = Commit to a diagnosis, or to no-fault
help-approval = Ask the customer to approve the repair
help-fit = Fit a new valve; take the old one out first
help-clean = Clean screen and spool of a valve that is out
help-mend = Repair a wire or a connector contact
help-replace = Put in a fuse of the same rating, a relay or the meter's fuse
help-top = Fill oil up to the upper mark
help-change-oil = Drain the oil, fit a new filter and fill up with a grade
help-write = Write the concern, cause or correction; runs to the line's end
help-report = Tell the customer of a code that is not part of this job
help-hand = Hand the vehicle over; add no-fault, referred, unsafe or declined
