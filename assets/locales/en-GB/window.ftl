### The window: its own few words. What happens on the job is said by the other catalogues.

## Every page

window-settings = Settings
settings-title = Settings
settings-close = Close the settings
settings-text-why = Everything grows with the text. At 200 % a small screen shows one part of a page at a time.
settings-shade = Colours
settings-shade-why = What a colour says is always said by a word or a sign as well.
settings-contrast = Contrast
settings-contrast-ordinary = Ordinary contrast
settings-contrast-high = High contrast
settings-contrast-why = High contrast is black on white, or white on black, with every edge drawn.
settings-motion = Motion
settings-motion-why = Without motion things are where they belong at once.
settings-language = Language
settings-language-why = It changes at once. What is typed stays as it is in every language.
settings-sound-why = What is heard is also written and drawn beside its step.
settings-broken = The settings in { $path } cannot be read from line { $line }, column { $column } on.
settings-newer = The settings in { $path } are of version { $version }, which a newer program wrote; this one knows version { $known }.
settings-unreadable = The settings in { $path } cannot be read: { $why }.
settings-usual-hold = The usual settings hold instead. Nothing is lost: as soon as you change a setting, the file is moved to { $aside } and a new one is written.
settings-not-kept = The settings cannot be kept in { $path }: { $why }. They hold until the window closes. Mend that and change a setting once more to keep them.
window-text-size = Text size
window-percent = { $percent } %
window-light = Light
window-dark = Dark
window-motion = Parts and camera move
window-no-motion = No motion
window-close-notice = Close the message
window-to-front = Front page
window-picture = The vehicle in the workshop

## Front page

window-title = Faultwright
window-about = A vehicle has come in with a fault that nobody can see. Ask, look, measure and drive until you know what it is, repair it, and prove that the repair worked. Then see what each test was worth, what it cost, and what an expert would have done.
window-begin-heading = Begin a case
front-level-first = first lesson
front-level-middle = usual
front-level-hard = hard
front-of-file = { $about } From { $file }.
front-file = Scenario file
front-any-file = Scenario or sealed case
front-file-empty = path of a file of your own
front-read-file = Read the file
front-reading = Reading { $file } …
front-practise = Practise
front-practise-why = Hints can be asked for; each takes something off the marks.
front-assessed = Assessed
front-assessed-why = Hints are refused.
front-sealed = sealed
front-sealed-for = For { $name }. From { $file }.
front-sealed-why = A sealed case is always assessed: hints are refused, and the debrief stays with whoever opens the seal.
front-sealed-seed = A sealed case brings its own seed.
front-always-assessed-why = This scenario is always assessed: hints are refused.
window-seed = Seed
window-seed-any = any
window-seed-hint = The same seed deals the same case. Leave it empty for a case that nobody chose.
window-no-seed = A seed is a whole number from 0 to 18446744073709551615. Correct it, or leave the field empty.
window-begin = Begin
window-kept-heading = Go on with
window-looking = Looking for kept sessions …
window-none-kept = No session has been kept yet. Every case that you begin is kept from its first step.
window-go-on = { $name }: go on after { $steps ->
    [0] no step
    [one] one step
   *[other] { $steps } steps
}
window-see-receipt = { $name }: handed back under its seal after { $steps ->
    [one] one step
   *[other] { $steps } steps
}, see its receipt
window-see-debrief = { $name }: handed back after { $steps ->
    [one] one step
   *[other] { $steps } steps
}, see the debrief
window-older = Older ones are in the same folder; the command "faultwright bench --session FILE" opens any of them.
front-none-open = No session is waiting to be gone on with.
front-past-heading = Handed back
front-was-practice = Practice
front-was-assessed = Assessed
front-mode-and-age = { $mode }, { $age }
front-age-now = just now
front-age-minutes = { $count ->
    [one] one minute ago
   *[other] { $count } minutes ago
}
front-age-hours = { $count ->
    [one] one hour ago
   *[other] { $count } hours ago
}
front-age-days = { $count ->
    [one] one day ago
   *[other] { $count } days ago
}
window-look-again = Look again
window-leave = Leave the program

## Page of a case

window-pane-sheet = Job sheet
window-pane-bay = The bay
window-pane-log = Done so far
window-pane-log-and-sheet = Done so far, job sheet
window-pane-steps = Next step
window-vehicle-heading = The vehicle
window-key-off = Key off.
window-key-on = Key on, engine not running.
window-engine-runs = The engine runs.
window-nothing-off = Everything is in its place.
window-off = Off: { $parts }.
window-suspects-heading = Suspects
window-no-suspects = None yet.
window-suspect = { $fault }: { $percent } %
window-suspect-hint = Give it another confidence
window-notes-heading = Notes
window-note-write = Write a note
window-till-assessed = Assessed; { $till }
window-assessed-why = This session is assessed: hints are refused.
window-log-empty = Nothing yet. Read the job sheet, then choose the words of a first step under “Next step”, or type it below.
window-line-empty = Choose a first word.
window-line-whole = The step is whole.
window-line-wrong = No step goes on like this. Remove the last word.
window-next-word = Next word
window-number = A number
window-text = A text from the job; or type your own below
window-take = Take the step
window-remove-word = Remove last word
window-step = Step
window-take-typed = Take it
window-offers = Can stand next:
window-no-offers = Type a step here, or choose its words under “Next step”.
window-more-offers = and { $count } more
window-hint-empty = Tab puts in the only or the marked word, the arrows up and down mark one, Enter takes the step. Esc leaves the field, F2 comes back, F3 goes to the words, F4 to the instruments, Page Up and Down turn the log.
window-hint-form = { $meaning }. Form: { $form }
window-taking = Under way: { $step } …

## The bay

bay-picture = Engine bay. Arrow keys turn the view, plus and minus come nearer and go back, 1 to 6 go to a viewpoint. The places are listed beside it.
bay-view-whole = Whole
bay-view-intake = Intake
bay-view-exhaust = Exhaust
bay-view-battery = Battery, fuses
bay-view-module = Module
bay-view-bench = Bench
bay-hint = Point at a thing for its name, click to choose it. Drag turns, right drag or Shift shifts, the wheel comes nearer.
bay-under-pointer = Under the pointer: { $place }
bay-parts = Parts and connectors
bay-fixed = Fixed
bay-wires = Wires and contacts
bay-test-points = Test points
bay-place-off = { $place } (off)
bay-in-place = In its place.
bay-on-the-bench = Off; it lies on the bench.
bay-plugged = Plugged in.
bay-unplugged = Unplugged.
bay-seen = Seen: { $sight }.
bay-into-line = Put “{ $place }” into the line
bay-let-go = Choose nothing

## Debrief

window-judging = Setting out what might have been …
window-points = { $points } of { $most }
window-side-marks = Marks
window-side-steps = Step by step
window-timeline = The steps
window-timeline-hint = A full bar under a step is what it is shown to have cost more than the best, the frame what is not excluded; a broken frame does not count.
window-replay-forwards = Play
window-replay-back = Play back
window-step-before = One back
window-step-after = One on
window-pace-slow = Slow
window-pace-usual = Usual pace
window-pace-quick = Quick
window-pace-fast = Fast
window-step-of = Step { $number } of { $count }
window-course-before = Before the first step
window-course-after = After step { $number }, { $step }
window-moment = This step
window-known-before = Before
window-cost-of-step = Cost
window-rest-of-job = Still to go
window-against-best = Compared
window-best-step = The best
window-could-tell = Worth
window-known-after = After
window-others = What else could have been done here
window-ask-others = Work it out
window-others-hint = By what the whole rest would have cost in expectation. Point at one, or go to it by Tab, for what it could have meant.
window-choice = { $total }, { $bits }; { $against }
window-choice-read = In truth: { $read }
window-choice-means = What it could have meant:
window-another-step = Any other step instead
window-another-hint = measure ohms …
window-ask-another = Ask
window-kept-at = The session is kept in { $path }.

## Troubles

window-opening = Taking the kept steps again …
window-no-folder = Sessions cannot be kept: { $why } Make that folder one that you can write to, then begin or look again.
window-broke-off = The work broke off, which is a defect of the program. The steps taken are on disk: go on with the session below.

## The first round

guide-offer = New here? One minute on a small case shows you round: look, measure, suspect, decide, prove.
guide-begin = Show me round
guide-not-now = Not now
guide-skip = Skip the round
guide-close = Close the round
guide-done = { $task }: done
guide-not-done = { $task }: not done yet
guide-sheet = Job sheet
guide-sheet-says = Read the job sheet: type “read job-sheet” into the field below and press Enter, or choose its words under “Next step”.
guide-look = Look
guide-look-says = Look at something: “dipstick” shows the oil, and a click on a thing in the bay says how to look at it.
guide-measure = Measure
guide-measure-says = Measure something: “measure volts battery-plus battery-minus” puts the meter on the battery.
guide-suspect = Suspect
guide-suspect-says = Name a suspect and how sure you are: begin with “suspect”, then choose a fault, its place and a number.
guide-decide = Decide
guide-decide-says = Decide: “commit” is your diagnosis, and under “Repair” stands what puts something right.
guide-prove = Prove
guide-prove-says = Prove it on the road with “drive”, or leave by “Front page”: the session is kept from its first step.
guide-over = That was all of it. “hand over” ends the case and shows what each test was worth; you can also just go on.

## On the road

road-heading = On the road: { $road }
road-clock = { $at } of { $of }
road-pull-in = Turn back (Esc)
road-to-the-end = Drive to the end
road-pace-slow = 5 ×
road-pace-usual = 20 ×
road-pace-fast = 60 ×
road-no-reader = No code reader is connected, so the dashboard alone is seen. With one the camshafts are drawn too.
road-speed = Road speed
road-engine = Engine speed
road-cam = camshaft of the { $place }
road-wanted = wanted (dashed)
road-actual = actual
road-km-h = { " km/h" }
road-rpm = { " rpm" }
road-degrees = °
road-no-figure = –
road-setting-off = Setting off …
