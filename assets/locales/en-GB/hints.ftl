### Hints for practice: what an expert would say to an apprentice who asks.

hint-family = Ask yourself first what it is: { $families }?
hint-which = It looks like { $family }. Ask yourself which of the causes of that kind would have shown what you have seen, and which would not.
hint-confirm = One suspect stands out, and it is { $family }. Ask yourself what would settle it.
hint-mend = Enough is known. Ask yourself what takes the cause away, and what would prove it.
hint-before-repair = You may well know what it is. Ask yourself what the trade wants done before anything is changed.
hint-proof = Ask yourself how you would show a customer that the repair has worked.
hint-finish = The work is done and proved. Ask yourself what is left for whoever comes after you.
hint-area = Where: { $area }.
hint-area-valve = the { $valve }, with its plug and its wires
hint-area-supply = fuses, relays and the feed before the valves
hint-area-oil = the oil
hint-area-memory = what the control module remembers
hint-area-road = the road
hint-area-paper = customer, diagnosis and record
hint-area-off = whatever is off or unplugged
hint-kind = What with: { $kind }.
hint-kind-eyes = your eyes
hint-kind-voltage = a voltage, without load
hint-kind-loaded-voltage = a voltage while current flows
hint-kind-resistance = a resistance, with the key off and the plug parted
hint-kind-current = a current
hint-kind-lamp = a test lamp, which loads what it touches
hint-kind-capture = the scope
hint-kind-wiggle = a hand that moves what may be loose while the meter watches
hint-kind-listening = your ears, while the valve is made to move
hint-kind-dipstick = the stick, two fingers and your nose
hint-kind-oil-pressure = the oil pressure gauge
hint-kind-reading = the code reader
hint-kind-road = a road test
hint-kind-repair = a repair
hint-kind-putting-back = putting back what is off
hint-kind-paper = a word, written or spoken
hint-step = The step: { $steps }
hint-why-test = Why: for { $cost } it is expected to tell { $bits } of the { $open } bit that are open. What it may leave:
hint-why-outcome = { "    " }{ $chance } %: { $belief }
hint-why-repair = Why: on the evidence so far, { $repair } takes the cause away with a chance of { $chance } %.

family-oil = the oil
family-winding = a valve's winding
family-movement = something that sticks or is blocked in a valve
family-wiring = a wire or a contact
family-supply = the supply, a fuse or a relay
family-nothing = nothing at all

duty-record-codes = Why: codes belong on paper before anything is changed.
duty-record-frame = Why: the freeze frame says when it happened, and is gone after a clear.
duty-commit = Why: a repair without a diagnosis is a guess; say what it is first.
duty-approval = Why: the customer pays, and decides.
duty-put-back = Why: nothing is proved while something is off.
duty-clear = Why: only what comes back after a clear counts.
duty-key-on-check = Why: a circuit that is still bad says so with the key on, before any road.
duty-road-test = Why: most monitors come to a decision on the road alone.
duty-rescan = Why: the road test is worth what the module says of it afterwards.
duty-write-concern = Write the concern: what the customer came with.
duty-write-cause = Write the cause: what you have found.
duty-write-correction = Write the correction: what you have done.
duty-hand-over-declined = Why: the customer has declined what is still wrong, and hands on what you have written.
duty-hand-over = Why: nothing is missing any more.

debrief-hints = { $count ->
    [one] One hint was taken; it took { $points } points from the sum:
   *[other] { $count } hints were taken; together they took { $points } points from the sum:
}
debrief-hint = { "    " }step { $number }, { $step }: { $points }

step-hint-question = Ask for a hint: what is open
step-hint-area = Ask for a hint: where to go
step-hint-kind = Ask for a hint: what kind of test
step-hint-step = Ask for a hint: the step itself
help-hint = Ask for a hint; the later the word, the more it tells and costs
event-hint-asked = You ask for a hint.
refusal-no-hints = there are no hints where a session is assessed. Go by what you have seen.
