### The debrief: what came of the session, the marks with their evidence, and every step once more.

debrief-title = Debrief
debrief-handed-over = Handed back as { $ending } after { $minutes } and { $money } of material: { $total } in all.
debrief-truth = What was wrong: { $faults }.
debrief-after-well = On the customer's road afterwards: no lamp, and it runs well.
debrief-after-lamp = On the customer's road afterwards: the engine lamp is on. The customer comes back.
debrief-after-badly = On the customer's road afterwards: it runs badly. The customer comes back.
debrief-after-both = On the customer's road afterwards: the engine lamp is on and it runs badly. The customer comes back.
debrief-total-passed = Marks: { $total } of 100; the pass line is { $line }. Passed.
debrief-total-failed = Marks: { $total } of 100; the pass line is { $line }. Not passed.
debrief-critical-unsafe = Not passed whatever the marks: the engine was run without oil.
debrief-critical-unproved = Not passed whatever the marks: handed back as repaired without proof.
debrief-critical-not-repaired = Not passed whatever the marks: handed back as repaired, and the customer comes back.
debrief-mark = { $category }: { $points } of { $most }
debrief-steps = Step by step: the step, what it cost, what the rest of the job should have cost before it, and what was likely after it.

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
about-part-mended = { $fault } was mended.
about-part-left = { $fault } was left as it was: the job is done in part only.
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

step-line = { $number }. { $step } — { $cost }; rest { $value }; { $regret }; { $belief }
step-not-weighed = not weighed
step-no-regret = not shown worse than the best
step-not-told = cannot be told, does not count: at most { $most } worse than the best
step-regret = { $cost } worse than { $best }
money-span = { $least } to { $most }
belief-one = { $fault } { $chance } %
belief-open = everything still open
