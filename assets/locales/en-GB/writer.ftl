### The case writer in the window.

## Where writing is begun

writer-heading = Write a case
writer-about-writing = A case is a text file: a story, the faults that may be drawn, prices, roads and marks. Begin with one that is there; fields and text change the same file, and what is wrong is said while you write.
writer-begin-with = Begin a new one with
writer-small-case = A small case for the { $vehicle }
writer-small-case-why = Four plain faults, the usual prices and roads: change what you like.
writer-last = Go on
writer-last-unsaved = With changes that were not saved. { $path }
writer-last-saved = File: { $path }
writer-kept-nowhere = Not saved anywhere yet.
writer-a-file = Open a file of your own
writer-open-file = Open it
writer-new-case = New case

## The page

writer-changed = Not saved
writer-unchanged = Saved
writer-save = Save
writer-save-as = Save as …
writer-undo = Undo
writer-redo = Redo
writer-pane-forms = Forms
writer-pane-side = Text and more
writer-side-text = Text
writer-side-sheet = As the apprentice reads it
writer-side-bay = The bay
writer-side-trial = Try it
writer-side-hardness = How hard it is
writer-section-story = The case
writer-section-job = Job sheet
writer-section-faults = Faults
writer-section-decoys = Decoys
writer-section-prices = Prices and times
writer-section-roads = Roads
writer-section-marks = Marks
writer-section-teaching = Teaching note
writer-forms-rest = The text cannot be read as it stands, so the fields show it as it was and rest. Mend what the list of problems says first, or take the change back with Undo.
writer-cursor = Line { $line }, column { $column }
writer-problems-unknown = Problems
writer-problems = { $count ->
    [0] No problem
    [one] One problem
   *[other] { $count } problems
}
writer-no-problems = Nothing is wrong with it: it can be saved, tried and handed out.
writer-checking = Looking it through …
writer-doubts = { $count ->
    [one] One doubt that stops nothing:
   *[other] { $count } doubts that stop nothing:
}
writer-problem = Line { $line }, column { $column }: { $said }
writer-draft-not-kept = What you write cannot be kept by itself ({ $why }). Save it from time to time.

## Questions

writer-path-field = Save as
writer-save-there = Save there
writer-stay = Go on writing
writer-leave-asks = There are changes that are not saved.
writer-save-and-leave = Save and leave
writer-discard = Leave without them
writer-over-asks = { $path } holds something else than what was opened or saved here. Saving writes over it.
writer-save-over = Write over it
writer-not-saved = { $path } cannot be written: { $why }. What you have written is still here; mend that, or save it somewhere else.

## Fields

writer-in-group = { $group }: { $label }
writer-not-offered = { $value } – choose another
writer-no-number = That is no number, so the text keeps the one before. Write one such as 2 or 0.5.
writer-no-whole-number = That is no whole number from 0 on, so the text keeps the one before.
writer-no-money = That is no amount, so the text keeps the one before. Write one such as 12.50.
writer-nowhere = The text has no place for that. Write it in the text itself.
writer-add = Add: { $what }
writer-remove = Remove: { $what }
writer-remove-it = remove
writer-title = Title
writer-about = One sentence for whoever chooses it
writer-level = Level
writer-vehicle = Vehicle
writer-mode = Purpose
writer-vehicle-why = Another vehicle has other places and part numbers: the list of problems says which faults and prices no longer fit.
writer-job-title = Title of the job
writer-job-concern = Complaint
writer-job-kilometres = Distance run [km]
writer-history = History
writer-history-line = History, line { $number }
writer-answers = The customer's answers
writer-answers-why = What the customer says when the apprentice asks.
writer-answer-symptom = Asked what is wrong
writer-answer-when = Asked since when and when
writer-answer-service = Asked about oil and service
writer-answer-repairs = Asked about earlier repairs
writer-asked-symptom = Asked what is wrong, the customer says:
writer-asked-when = Asked since when and when:
writer-asked-service = Asked about oil and service:
writer-asked-repairs = Asked about earlier repairs:
writer-faults-why = One of these is drawn for each case. The weight says how often against the others; the severity lies between 0 (mildest of its kind) and 1 (worst).
writer-fault = { $number }: { $fault }, { $percent } % of the draws
writer-fault-group = Fault { $number }
writer-also-group = Fault { $number }, with it { $other }
writer-also = Comes together with
writer-add-also = add one that comes with it
writer-more-faults = More
writer-add-fault = Add a fault
writer-no-fault = Weight of a vehicle without a fault
writer-no-fault-why = Above 0, some customers come in with a vehicle that is sound.
writer-kind = Kind
writer-place = Place
writer-weight = Weight
writer-severity-from = Severity from
writer-severity-to = Severity to
writer-decoys-why = What looks odd and is harmless, each with its chance between 0 and 1.
writer-other-winding = Another winding
writer-add-winding = Add a sound valve with another winding
writer-one-winding = Only one winding fits this vehicle.
writer-no-vehicle = The vehicle cannot be read; the list of problems says why.
writer-part-number = Part number
writer-chance = Chance
writer-old-codes = Codes that the fault has not set
writer-old-code = Code { $number }
writer-code = Code
writer-origin = Where it comes from
writer-code-historical = mended long ago
writer-code-present = another fault that is there
writer-code-false = false: somebody unplugged a valve
writer-add-code = Add a code
writer-currency = Sign of the currency
writer-money-why = Prices in units of the currency, with two digits for the hundredths.
writer-labour = Labour for an hour
writer-seal = Seal of a valve
writer-mending = Material to mend a wire or contact
writer-oil-litre = Litre of oil
writer-oil-filter = Oil filter
writer-cleaning = Cleaning fluid
writer-fuel = Fuel for a drive
writer-comeback = When it comes back
writer-valve-prices = Valves
writer-valve-price = Valve { $number }
writer-add-price = Add a price for valve { $number }
writer-factory-part = { $place } has { $number } from the factory.
writer-minutes = Minutes for a step
writer-min-ask = Ask the customer
writer-min-consult = Look something up
writer-min-look = Look at a place
writer-min-dipstick = Dipstick
writer-min-key = Turn the key
writer-min-start = Start the engine
writer-min-measure = A reading
writer-min-fetch-meter = Fetch the meter
writer-min-read-gauge = Read the oil gauge
writer-min-power = Power a valve
writer-min-connect-reader = Connect the code reader
writer-min-request = Ask the control module
writer-min-clean = Clean a valve
writer-min-mend-pin = Mend a contact
writer-min-mend-wire = Mend a wire
writer-min-top-up = Top up oil
writer-min-change-oil = Change the oil
writer-min-approval = Ask for approval
writer-min-write = Write a part of the record
writer-min-hand-over = Hand over
writer-min-fetch-part = Fetch a part
writer-customers-road = The road on which the customer met it
writer-customers-road-why = The complaint is met there before the case begins: choose a road that the fault shows on.
writer-shared-roads = Roads that the program carries
writer-own-roads = Roads of this case alone
writer-own-roads-why = Their stretches are written in the text, under "routes".
writer-workshop = Workshop
writer-temperature = Temperature in the workshop [°C]
writer-marks-why = Whole numbers: only their ratios count, and the marks add up to a hundred.
writer-weight-tests = Choice of tests
writer-weight-order = Order of work
writer-weight-reading = Reading the instruments
writer-weight-confidence = Confidences
writer-weight-repair = Repair
writer-weight-proof = Proof of the repair
writer-weight-care = Care and safety
writer-weight-record = Write-up
writer-pass-line = Pass line [of a hundred]
writer-hint-prices = Hints
writer-hint-prices-why = What a hint takes off the marks; none may be cheaper than the one before.
writer-hint-question = What kind of question is open
writer-hint-area = Where to go
writer-hint-kind = What class of test
writer-hint-step = The very step
writer-teaching-why = For instructors alone: no apprentice is shown it.
writer-teaching-begin = To be written.
writer-add-teaching = Add a teaching note
writer-remove-teaching = Remove the teaching note
writer-teaches = What it teaches
writer-traps = What leads astray
writer-trap = Trap { $number }
writer-path = How an expert goes
writer-path-line = Step { $number } of the way

## What comes of it

writer-sheet-why = The job sheet, and what the customer says when asked. Nothing here tells the fault, unless the text does.
writer-bay-why = The vehicle with everything in its place.
writer-trial-why = Begins a practice case of the text as it stands and says what is hidden. Afterwards you are back here; nothing is lost.
writer-trial-not-yet = It has to be free of problems first.
writer-try-fault = With a fault of your choice
writer-try = Try: { $fault }
writer-try-seed = With a seed
writer-try-it = Try this seed
writer-try-never = No seed up to { $seeds } draws that fault: its weight is too small against the others.
writer-try-refused = A case with that fault is never dealt. { $why }
writer-tried = Tried from the case writer, seed { $seed }. Hidden: { $faults }.
writer-back = Back to the case writer
writer-hardness-why = A few cases are dealt and worked by the expert's plan and by virtual apprentices. That takes a minute or two; you can go on writing.
writer-measure = Work out how hard it is
writer-stop = Stop
writer-hardness-old = The text has changed since this was worked out.
writer-column-what = What
writer-column-saved = As saved last
writer-column-now = As it stands
writer-measuring = Working out how hard it is …
writer-measuring-sessions = Working the cases: { $done } of { $of } sessions
writer-hard-unknown = not worked out
writer-hard-cost = Cost of the job, by the expert's plan
writer-hard-entropy = Open before the first question
writer-hard-range = { $least } to { $most }
writer-hard-bits = { $bits } bit
writer-hard-worked = { $cost }; { $steps } steps; { $right } of { $of } right

## Terms of the job

writer-tools = Tools of the case
writer-tools-why = Eyes, hands, the dipstick and the code reader are always there. Whether every fault can still be told, `faultwright check FILE --facts` says.
writer-tool-leave-out = Leave out the { $tool }
writer-tool-put-in = Put the { $tool } back in
writer-time-limit = Time
writer-time-limit-set = Set a time limit
writer-time-limit-minutes = Working time (min)
writer-time-limit-remove = Remove the time limit
writer-time-limit-why = When the time is up, the vehicle can only be closed up, written up and handed back. Waiting for a part does not count.
writer-approval = What the customer approves
writer-approval-limit = Let the customer set a limit
writer-approval-money = Limit
writer-approval-everything = Let the customer approve everything
writer-approval-why = The limit is for the work and parts of the repair. The apprentice hears it when asking, and not before.
writer-shelf = Other parts, and waiting
writer-shelf-why = A part that has to come blocks the bay. Worn parts behave as they are: a clean spool has a friction of 0.1 N, from 3 N it sticks; a screen starves the camshaft from a share of 0.97.
writer-waiting-per-hour = An hour of waiting
writer-wait = Wait for { $number } (min)
writer-other = Part { $number }
writer-add-pattern = Add a pattern part
writer-add-used = Add a used part
writer-pattern = pattern part
writer-used = used
writer-grade = Grade
writer-stands-for = Instead of
writer-other-price = Price
writer-other-wait = Wait (min)
writer-resistance = Winding against the nominal (1 is the same)
writer-screen-blocked = Blocked share of the screen
writer-stiction = Friction of the spool (N)
