### Steps: captions, help for typed steps, and the small joints of sentences.

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
step-power = Battery voltage for { $seconds } s: { $place }
step-power-reversed = Battery voltage for { $seconds } s, reversed: { $place }
step-command-on = Have the module switch on: { $place }
step-command-off = Have the module switch off: { $place }
step-read-codes = Read the codes
step-read-freeze-frame = Read the freeze frame
step-read-live-data = Read live data
step-clear-codes = Clear the codes
step-drive = Road test: { $place }
step-suspect = Suspect { $fault }: { $percent } %
step-predict-range = Predict from { $least } to { $most }
step-predict-above = Predict { $least } or more
step-predict-over-limit = Predict over limit
step-commit = Diagnosis: { $fault }
step-ask-approval = Ask the customer to approve the repair
step-fit = Fit part { $number }: { $place }
step-clean = Clean screen and spool: { $place }
step-mend = Mend: { $place }
step-replace = Replace: { $place }
step-top-up = Top up the oil
step-write-concern = Write the concern
step-write-cause = Write the cause
step-write-correction = Write the correction
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
help-consult = Open service information: wiring, limits, procedure, parts or codes
help-look = Look closely at a part, a connector, a wire or the engine-bay
help-dipstick = Pull the dipstick: level and look of the oil
help-remove = Take a part off by the procedure
help-pull = Pull a part straight out: quicker, and may harm it
help-refit = Put a part back, a valve best with new-seal
help-unplug = Unplug a connector
help-plug = Plug a connector in
help-measure = Read volts, ohms or amps: red lead, black lead; from-front spreads a terminal
help-wiggle = Wiggle a connector, contact or wire; least and greatest reading
help-lamp = Put a test lamp, a load of a third of an ampere, between two points
help-clamp = Read the mean current in a wire, running or not
help-scope = Capture a valve: its coil current at switch-on, or its driver's pin
help-zero = Take the leads' resistance, or the current probe's zero, off the display
help-power = Put fused battery voltage on a valve's own pins and listen
help-read-module = Read codes with lamp and readiness, freeze-frame or live-data
help-command = Have the module switch a valve on or off
help-clear = Clear the codes; read and note them first
help-key = Turn the key: off, on, or start and idle for a minute
help-drive = Take the vehicle on a road test
help-suspect = Put a fault on your list with your confidence in it
help-predict = Say what the next reading will be; or above 5 kohms, or over-limit
help-commit = Commit to a diagnosis, or to no-fault
help-approval = Ask the customer to approve the repair
help-fit = Fit a new valve; take the old one out first
help-clean = Clean screen and spool of a valve that is out
help-mend = Repair a wire or a connector contact
help-replace = Put in a fuse of the same rating, a relay or the meter's fuse
help-top = Fill oil up to the upper mark
help-write = Write the concern, cause or correction; runs to the end of the line
help-hand = Hand the vehicle over; add no-fault, referred, unsafe or declined
