### The debrief: what came of the session, the marks with their evidence, and every step once more.

debrief-title = Debrief
debrief-handed-over = Handed back as { $ending } after { $minutes } and { $money } of material: { $total } in all.
debrief-truth = What was wrong: { $faults }.
debrief-after-well = On the customer's road afterwards: no lamp, and it runs well.
debrief-after-lamp = On the customer's road afterwards: the engine lamp is on. The customer comes back.
debrief-after-badly = On the customer's road afterwards: it runs badly. The customer comes back.
debrief-after-both = On the customer's road afterwards: the engine lamp is on and it runs badly. The customer comes back.
debrief-after-declined = On the customer's road afterwards: what is still to be seen or felt is what the customer has declined. Nobody comes back for it.
debrief-total-passed = Marks: { $total } of 100; the pass line is { $line }. Passed.
debrief-total-failed = Marks: { $total } of 100; the pass line is { $line }. Not passed.
debrief-critical-unsafe = Not passed whatever the marks: the engine was run without oil.
debrief-critical-unproved = Not passed whatever the marks: handed back as repaired without proof.
debrief-critical-not-repaired = Not passed whatever the marks: handed back as repaired, and the customer comes back.
debrief-mark = { $category }: { $points } of { $most }
debrief-steps = Step by step: what it cost and how it compares with the best; where that is weighed or something was learnt, what was known before and after.

ending-as-repaired = repaired
ending-as-no-fault = no fault found
ending-as-referred = referred to somebody else
ending-as-unsafe = not safe to drive
ending-as-declined = work declined by the customer

mark-test-choice = Choice of tests
mark-access-order = Order of access
mark-reading = Readings
mark-calibration = Confidence
mark-repair = Repair
mark-proof = Proof
mark-care = Care and safety
mark-record = Record

remark-good = +
remark-bad = –
remark-line = { "    " }{ $sign } { $text }
remark-at-step = step { $number }, { $step }: { $text }

about-regret = cost { $cost } more, in expectation, than { $best }.
about-premature-repair = too early: on the evidence this repair had a chance of { $chance } %, and it cost { $cost } more, in expectation, than { $best }.
about-premature-diagnosis = too early: on the evidence this diagnosis had a chance of { $chance } %, and it was still worth its cost to do this first: { $best }.
about-redundant = this could tell nothing: all that may still be wrong would have shown the same. It cost { $cost }.
about-repeated = this was known already: nothing had changed since it was done before. It cost { $cost }.
about-not-told = { $count ->
    [one] of one step it cannot be told whether it was worse than the best: the expert's bounds lie too far apart (at most { $most }). It does not count.
   *[other] of { $count } steps it cannot be told whether they were worse than the best: the expert's bounds lie too far apart (at most { $most } for one of them). They do not count.
}
about-no-regret = no step is shown to have cost more than it had to.
about-removed-again = { $place } came off a second time.
about-no-detour = nothing came off twice.
about-prediction-met = the reading lay where you said it would.
about-prediction-missed = the reading did not lie where you said it would.
about-other-quantity = the reading is of another quantity than you predicted: the unit is part of the reading.
about-sign-met = what the test showed is what you predicted.
about-sign-missed = what the test showed is not what you predicted.
about-few-predictions = { $count ->
    [0] no reading was predicted before it was taken; do it three times, or for every reading where there are fewer.
    [one] one reading was predicted before it was taken; do it three times, or for every reading where there are fewer.
   *[other] { $count } readings were predicted before they were taken; do it three times, or for every reading where there are fewer.
}
about-sound-readings = every reading was taken so that it means something.
about-confidence = your confidences lay { $distance } from what the evidence allowed (0 is best, 1 is worst).
about-no-confidence = no suspect was given a confidence before the diagnosis.
about-repair = on the evidence this repair had a chance of { $chance } %.
about-worn-part = the part that went in was worn itself: { $fault }. Look at a part before it goes in.
about-part-mended = { $fault } was mended.
about-part-left = { $fault } was left as it was: the job is done in part only.
about-declined = { $fault }: found, offered, and declined by the customer.
about-came-back = the customer came back.
about-stayed-away = the customer did not have to come back.
about-unrelated-told = the customer knows of a code that was not part of the job: { $code }
about-unrelated-erased = a code that was not part of the job was erased, and the customer was not told of it: { $code }
about-closed-unproved = handed back as repaired before it was shown that the repair worked.
about-no-breach = no rule of care or safety was broken.
about-left-off = { $place } was left off.

proof-recorded = codes and freeze frame recorded before anything was cleared
proof-cleared = codes cleared after the repair
proof-key-on = codes read again with the key on before the road test, none of them back
proof-road = a road test on which the monitors of the codes at issue came to a decision and the lamp stayed off
proof-declined = the record written after the customer had declined
proof-rescan = codes read again after the road test, none of them back

record-concern = the concern written up
record-cause = the cause written up
record-correction = the correction written up

proposal-step = { $step }
proposal-renew = renewing the { $place }
proposal-clean = cleaning the { $place }
proposal-mend = mending the { $place }
proposal-mend-and-fuse = mending the { $place } and replacing its fuse
proposal-replace = replacing the { $place }
proposal-top-up = filling up the oil
proposal-change-oil = changing the oil
proposal-close = closing the job

step-line = { $number }. { $step } – { $cost }; { $regret }
step-before = { "      " }before: { $belief }; { $value } to go
step-best = { "      " }best:   { $best }
step-best-told = { "      " }best:   { $best }; this one { $told }
step-told = was expected to tell { $bits } bit
step-after = { "      " }after:  { $belief }
step-not-weighed = not weighed
step-no-regret = not shown worse than the best
step-not-told = cannot be told, so it does not count: at most { $most } worse than the best
step-regret = { $cost } worse than the best
money-span = { $least } to { $most }
belief-one = { $fault } { $chance } %
belief-open = everything still open

what-if-moment = Before step { $number }, { $step }:
what-if-known = Known then: { $belief }
what-if-value = The rest of the job should have cost { $value }; the best was { $best }.
what-if-instead = Instead: { $steps }
what-if-then = { "; " }
what-if-truth = In truth it would have shown:
what-if-truth-line = { "    " }{ $line }
what-if-truth-nothing = { "    " }nothing
what-if-told = It would have cost { $cost } and was expected to tell { $bits } of the { $open } bit that were open.
what-if-repeat = It would have cost { $cost } and told nothing: the same was seen already on the vehicle as it was.
what-if-outcomes = What it could have shown, and what that would have meant:
what-if-outcome = { "    " }{ $chance } %: { $read } → { $belief }
what-if-other-outcomes = { "    " }{ $chance } %: one of { $count } others
what-if-nothing-shown = nothing
what-if-total = With this first, the whole rest should have cost { $total }: { $regret }.
what-if-worse = { $cost } worse than the best
what-if-choices = What could have come next, by what the whole rest would have cost in expectation, with what it could tell:
what-if-bits = { $bits } bit
what-if-no-bits = –
what-if-row-read = { "                                 " }in truth: { $read }
what-if-row-outcome = { "                                 " }{ $chance } %: { $belief }
what-if-more = … and { $count } more; --all shows them.
what-if-made = { $count ->
    [one] One test had
   *[other] { $count } tests had
} been made already and would have shown the same.
what-if-refused = { $step } was not possible then. { $why }

course-title = How likely each suspect was on the evidence, before the first step and after each (a full block is 100 %):
course-truth = { $fault } (it was this)
course-other = { $fault }
course-others = everything else
course-percent = { $chance } %
course-dearer = ! marks steps that are shown to have cost more than the best.

debrief-lessons = Worth most next time:
debrief-no-lessons = Nothing to take home but how well it went: no step is shown to have cost more than it had to, and no mark was lost that would be worth a lesson.
lesson-line = { $number }. { $title } – { $cost }.
lesson-next = { "   " }Next time: { $advice }
lesson-steps = { $count ->
    [one] step { $steps }
   *[other] steps { $steps }
}
lesson-money = { $money } more than the best, in expectation
lesson-points = { $points } points
lesson-critical = and it fails the session by itself

lesson-ran-dry = The engine was run without oil
next-ran-dry = pull the dipstick before the engine runs for the first time, and fill up first if it is dry.
lesson-still-there = The vehicle went back with a fault still there
next-still-there = after a repair, drive the road on which the customer met the concern, and look for a second cause when a code or the symptom is still there.
lesson-not-proved = The repair was not proved
next-not-proved = record codes and freeze frame, clear, read again with the key on, drive until the monitors have run, and read once more.
lesson-not-reported = A code from elsewhere was erased, and the customer was not told of it
next-not-reported = report every code that is not part of the job before you hand over, or leave it where the next one finds it.
lesson-part-unfounded = A part was fitted that the evidence did not speak for
next-part-unfounded = name the reading that accuses the part itself before you order it; if you cannot, make the test that would.
lesson-repaired-early = A repair was begun before it was settled what to repair
next-repaired-early = ask which other cause would have shown the same until now, and make the one test that parts the two.
lesson-dearer-repair = A dearer repair was done where a cheaper one would very likely have helped
next-dearer-repair = try the cheaper repair first when the same proof will show whether it has helped.
lesson-repeated = A reading was taken that had been taken already
next-repeated = write each reading down; on a vehicle that nobody has touched it will be the same again.
lesson-told-nothing = Tests were made that could tell nothing
next-told-nothing = say before a test what each suspect that is left would show; where all would show the same, choose another test.
lesson-tested-on = Testing went on when the evidence was enough
next-tested-on = when one more test would not change what you repair, repair and prove it.
lesson-opened-soon = Something was taken apart before its time
next-opened-soon = use up what can be asked, looked at and measured from outside before a cover or a plug comes off.
lesson-skipped-near = A dearer test was made where another would have told more for its cost
next-skipped-near = go from near and cheap to far and dear, and weigh what a test can tell against its minutes.
lesson-opened-twice = The same part came off twice
next-opened-twice = do everything behind a cover while it is off; make a list before you close up.
lesson-spoilt = Readings were taken in a way that spoils them
next-spoilt = ohms with the key off and the plug parted, amperes never across a source.
lesson-not-foretold = Readings were not predicted
next-not-foretold = say before you look what a sound part would show; a reading that surprises you is worth twice.
lesson-confidence = The list of suspects did not follow the evidence
next-confidence = put suspects on the list as soon as you have some, and move the figures with every reading before you commit.
lesson-care = A rule of care or safety was broken
next-care = key off before a plug is parted, new seals, approval before parts, nothing left off.
lesson-not-written = The record is not complete
next-not-written = write concern, cause and correction; the next one who opens this bonnet reads them.

report-title = Debrief: { $title }
report-marks = Marks
report-course = How belief moved
report-course-how = How likely each suspect was on the evidence, before the first step and after each.
report-dearer = A triangle under the field marks a step that is shown to have cost more than the best.
report-regrets = What steps gave away
report-regrets-how = A full bar is what a step is shown to have cost more than the best, in expectation; the frame is what is not excluded. Where the frame is broken nothing can be told, and nothing counts.
report-not-told = cannot be told
report-step = step { $number }
report-head-number = No.
report-head-step = Step
report-head-cost = Cost
report-head-compared = Against the best
report-head-best = The best, and what this step could tell
report-head-known = What was learnt
report-moved = { $before } → { $after }
report-program = Faultwright { $version }. Expectations hold within the expert's model of this vehicle.
