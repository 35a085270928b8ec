### The command line: help, talk and troubles.

cli-about = Practise finding a hidden fault on a simulated vehicle: measure, decide, repair, and prove the repair.
cli-exit-codes = Exit codes:
exit-done = done
exit-wrong-arguments = wrong arguments
exit-no-window = no window could be opened
exit-bad-input = a scenario, a session file or a step is not right
exit-file-trouble = a file or folder could not be read or written
exit-defect = the simulation failed; that is a defect of the program
cli-safety = On a real vehicle the maker's procedure, local codes and a licensed technician's judgement come before anything shown here.

cli-workshop-about = Open the window
cli-workshop-examples =
    Example:
      faultwright workshop
cli-bench-about = Work on a case in the terminal, or take steps from a file or from standard input
cli-bench-examples =
    Examples:
      faultwright bench --seed 7
      faultwright bench --seed 7 --steps job.steps
      faultwright bench --session job.session       (begins it, or goes on with it)
      echo 'read codes' | faultwright bench --format json
cli-draw-about = Deal cases by seed
cli-draw-examples =
    Examples:
      faultwright draw --seed 1 --count 10
      faultwright draw --seed 7 --reveal
      faultwright draw --seed 1 --count 6 --matched 90..120   (six that are equally hard)
cli-check-about = Check scenario files, and say what is wrong and where
cli-check-examples =
    Examples:
      faultwright check scenarios/market-hill.ron
      faultwright check *.ron --format json
cli-replay-about = Take the steps of a session file again and show what followed
cli-replay-examples =
    Example:
      faultwright replay job.session
cli-mark-about = Mark a finished session
cli-mark-examples =
    Examples:
      faultwright mark job.session --html debrief.html
      faultwright mark job.session --format json
cli-what-if-about = Look back at a moment of a finished session: what another step would have read, told and cost
cli-what-if-examples =
    Examples:
      faultwright whatif job.session --at 15                 (everything that could have come instead of step 15)
      faultwright whatif job.session --at 15 --step 'measure ohms intake-valve-feed intake-valve-control'
      faultwright whatif job.session --at 9 --step 'command intake-valve on' --step 'scope current intake-valve'
cli-trial-about = Have virtual apprentices work a scenario, and say what they cost, what they earn and how hard it is
cli-trial-examples =
    Examples:
      faultwright trial --seeds 1..20 --csv trial.csv        (go on with it by the same command)
      faultwright trial --scenario my-scenario.ron --seeds 1..1000 --without-marks
      faultwright trial --seeds 1..500 --csv a.csv           (on one machine)
      faultwright trial --seeds 501..1000 --csv b.csv        (on another)
      faultwright trial --join a.csv b.csv --parquet all.parquet

cli-scenario = Scenario file, or glasshouse-lane, which the program carries; without it, Market Hill
cli-seed = Seed of the case, a whole number; without it, one that nobody chose
cli-steps = Read steps from this file, one a line
cli-session = Keep the session in this file; if the file is there already, go on with it
cli-assessed = Sit the case to be assessed: there are no hints
cli-format = How results are printed
cli-count = How many cases to deal, with seeds one after the other
cli-matched = Deal only cases whose expected cost under the expert's plan, once the job is taken in, lies between these amounts
cli-look-at = Look at so many seeds, at most, for matched cases
cli-reveal = Say what the fault is
cli-files = Scenario files; without one, the first of those that the program carries
cli-seeds = Seeds of the cases, first and last
cli-policies = Who works them
cli-without-marks = Count costs and outcomes alone; marking takes far longer than working
cli-by-case = Say of each case how hard it is
cli-keep-worlds = Folder for what was worked out of a scenario once, so that the next debrief need not wait for it; none keeps nothing [usual: { $folder }]
cli-threads = Threads to work on, as many as the machine has unless told otherwise; the result does not hang on it
cli-csv = Keep a row of each session in this file as soon as it is done; if the file is there already, go on with it
cli-parquet = Write the rows to this file as Parquet
cli-join = Run nothing; put the rows of these files together and show the table of the whole
cli-html = Write the debrief to this file as well, as a page with drawings that needs no other file
cli-session-file = Session file
cli-at = Number of the step instead of which something else is done
cli-step = What is done instead, as in the bench; several are done one after the other; without one, every test and repair is listed
cli-all = List every test and repair, not the best ten alone

cli-trouble = faultwright: { $text }

bench-begun = Case { $seed }. The session is kept in { $path }.
bench-resumed = Going on with { $path } after { $steps ->
    [one] one step
   *[other] { $steps } steps
}.
bench-hint = Type a step, such as "read codes". "help" lists all steps, "help measure" one; a line that ends in ? shows what can stand there; "quit" leaves and keeps the session.
bench-look-back = The job is closed. "whatif 12" shows what could have come instead of step 12, "whatif 12 read codes" what that would have read and told; steps parted by ; are done one after the other. "quit" leaves.
bench-no-such-verb = There is no step that begins with "{ $verb }". "help" lists all steps.
bench-till = [{ $minutes }, { $money } of material, { $total } in all]
bench-left = Not finished. Go on with: faultwright bench --session { $path }

replay-agrees = Replayed { $steps ->
    [one] one step
   *[other] { $steps } steps
}: everything that followed is as it was recorded. State { $digest }.

mark-written = The debrief is in { $path }.

check-fine = { $file }: nothing wrong found.
draw-dealt = Case { $seed }: { $title }
draw-matched = Case { $seed }: { $title }. Expected cost once it is taken in: { $least } to { $most }.
draw-matched-revealed = Case { $seed }: { $title }. Expected cost once it is taken in: { $least } to { $most }. The fault: { $faults }.
draw-revealed = Case { $seed }: { $title }. The fault: { $faults }.

trial-title = { $scenario } ({ $fingerprint }): { $sessions } sessions, { $cases ->
    [one] one case
   *[other] { $cases } cases
}
trial-head-policy = apprentice
trial-head-sessions = sessions
trial-head-cost = cost [{ $currency }]
trial-head-marks = marks
trial-head-regret = regret [{ $currency }]
trial-head-right = right
trial-head-unproved = unproved
trial-head-unfinished = unfinished
trial-head-steps = steps
trial-head-seed = case
trial-head-planner-steps = planner's steps
trial-head-planner-cost = planner's cost [{ $currency }]
trial-head-marks-apart = marks apart
trial-head-cost-apart = cost apart [{ $currency }]
trial-percent = { $share } %
trial-nothing = –
trial-unfinished-note = An apprentice who is not done after 200 steps counts as a failure without marks.
trial-not-marked = Not marked: costs and outcomes alone.
trial-plot = Marks (upwards) against cost [{ $currency }]:
trial-difficulty = How hard it is:
trial-difficulty-value = expected cost under the expert's plan, before anything is known, duties of the trade apart: { $least } to { $money }
trial-difficulty-planner = the planner takes { $steps } steps and { $money } with its duties
trial-difficulty-apart = between the best and the worst apprentice lie { $marks } marks and { $money }
trial-torn = { $path }: the last line was cut off and is left out.
trial-resumed = { $path }: { $rows ->
    [one] one row is
   *[other] { $rows } rows are
} there already.

apprentice-random = random tester
apprentice-parts-swapper = parts-swapper
apprentice-by-the-book = by the book
apprentice-near-first = near first
apprentice-information-seeker = information-seeker
apprentice-planner = planner

rows-head = line { $line } is not the first line of a trial's table.
rows-other-version = line { $line } begins a table in version { $version } of the format, which this version of the program does not read. Run that trial again, into another file.
rows-fields = line { $line } has { $found } fields where { $expected } belong.
rows-field = line { $line }: "{ $found }" cannot stand under "{ $column }".
rows-stranger = line { $line } is of another scenario, or of another version of the program, than the lines before it.
rows-contradiction = line { $line } gives other figures for a session of case { $seed } than a line before it.
rows-empty = there is no row in it.

progress-trial = Worked: { $done } of { $of } sessions …
progress-matching = Matched: { $done } of { $of } cases …
progress-dealing = Dealing a case …
worlds-not-kept = What was worked out cannot be kept at { $path } ({ $why }); it will be worked out again next time.
progress-worlds = Working out what each fault would show: { $done } of { $of } …
progress-hint = Thinking …
progress-what-if = Going back to that moment …
progress-review = Looking back at every step: { $done } of { $of } …

window-not-built = this build has no window; build it with the feature "workshop"
window-bench-instead = No window: { $why }. Opening the bench in the terminal.
opening-no-display = no display to open a window on (DISPLAY is { $display }); start from a desktop session, or give a command to work without a window
opening-display-not-set = no display to open a window on (DISPLAY is not set); start from a desktop session, or give a command to work without a window
opening-no-library = the display library { $library } is not installed, so no window can open
opening-no-graphics = no graphics driver answers: install a Vulkan driver for this graphics card, or the software one (package mesa-vulkan-drivers on Debian)
opening-ended-badly = the window ended with code { $code }; its messages are above

trouble-diverged = { $path }: other events follow from entry { $entry } than were recorded. The file was changed, or another version of the program wrote it; mark it with that version.
trouble-step = line { $line } of the steps. { $problem } The steps before it are kept.
trouble-wanted-step = the step after --step is none. { $problem }
trouble-no-step = the step after --step is empty. Write one as in the bench, such as --step 'read codes'.
trouble-no-moment = { $path } has { $steps ->
    [one] one step, so --at can only be 1.
   *[other] { $steps } steps, so --at can be 1 to { $steps }.
} There is no step { $asked }.
trouble-file = { $path }: { $why }
trouble-seeds = "{ $given }" is not a range of seeds. Write the first and the last, such as 1..20, at most a million of them.
trouble-band = "{ $given }" is not a band of costs. Write the least and the most in units of the currency, such as 90..120.
trouble-too-few = { $found } of { $wanted } cases were found among { $seeds } seeds, whose expected costs lie between { $least } and { $most }. Widen the band, or look at more seeds with --look-at.
trouble-rows = { $path }: { $problem }
trouble-other-trial = { $path } holds rows of another scenario, or of another version of the program. Name another file, or take that one away.
trouble-other-seed = { $path } is a session of seed { $kept }, and seed { $given } was asked for. Leave the seed out to go on with it, or name another file.
trouble-over-session = { $path } is the session itself, and a page written there would destroy it. Name another file after --html.
trouble-practised = { $path } was begun as practice and cannot be assessed. Name a file that is not there yet.
trouble-unfinished = { $path }: the vehicle has not been handed back after { $steps ->
    [one] one step
   *[other] { $steps } steps
}. Finish the session first: faultwright bench --session { $path }
trouble-window = no window: { $why }
trouble-simulation = the simulation failed, which is a defect of the program: { $why }
