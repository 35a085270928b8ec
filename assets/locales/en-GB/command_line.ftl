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
    Examples:
      faultwright workshop
      faultwright workshop --size 1920x1080
      faultwright workshop --screenshots pictures
cli-screenshots = Take a picture of every page into this folder, by doing what a user would, and close the window
cli-window-size = How large the window is at the start; 1280x680 if not said
cli-frame-times = Say at the end how long the first frame and each frame's own work took
window-pictures-saved = Saved { $count ->
    [one] one picture
   *[other] { $count } pictures
} in { $folder }.
window-pictures-failed = no further pictures could be taken: { $why }
window-frame-times = Drawn by { $adapter }. First frame after { $first } s. Own work in { $frames } frames: { $middle } ms in the middle, under { $most } ms in 99 of 100. Most memory: { $memory } MB.
cli-bench-about = Work on a case in the terminal, or take steps from a file or from standard input
cli-bench-examples =
    Examples:
      faultwright bench --seed 7
      faultwright bench --seed 7 --steps job.steps
      faultwright bench --session job.session       (begins it, or goes on with it)
      faultwright bench --case 03-anna.case         (a sealed case that was handed out)
      echo 'read codes' | faultwright bench --format json
cli-draw-about = Deal cases by seed
cli-draw-examples =
    Examples:
      faultwright draw --seed 1 --count 10
      faultwright draw --seed 7 --reveal
      faultwright draw --seed 1 --count 6 --matched 90..120   (six that are equally hard)
      faultwright draw --class names.txt --matched closest --seal sealed --passphrase secret.txt
cli-open-about = Open a sealed case, or the session of one: say seed and fault
cli-open-examples =
    Examples:
      faultwright open sealed/03-anna.case --passphrase secret.txt
      faultwright open anna.session --passphrase secret.txt --into anna-open.session
cli-open-file = Sealed case, or the session of one
cli-into = Write the session anew into this file with its case in the open, so that the apprentice can have its debrief
cli-passphrase = File with the passphrase of the seal in its first line; - for standard input
cli-case = Sealed case that was handed out
cli-class = Deal a case for each name in this file, one name a line
cli-same = Deal everybody the same case
cli-seal = Write each case under a seal into this folder, and tell neither seed nor fault; for assessment
cli-check-about = Check scenario files, and say what is wrong and where
cli-check-examples =
    Examples:
      faultwright check scenarios/market-hill.ron
      faultwright check my-scenario.ron --facts --apprentices 3
      faultwright check *.ron --format json
cli-describe-about = Say what a scenario, a vehicle or a route's file holds, field by field (in English)
cli-describe-examples =
    Examples:
      faultwright describe scenario
      faultwright describe vehicle | less
cli-kind = Kind of file; all of them and an introduction where none is named
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

cli-scenario = Scenario file, or the name of one that the program carries, such as coal-wharf; without it, Market Hill
cli-seed = Seed of the case, a whole number; without it, one that nobody chose
cli-steps = Read steps from this file, one a line
cli-session = Keep the session in this file; if the file is there already, go on with it
cli-assessed = Sit the case to be assessed: there are no hints
cli-format = How results are printed
cli-count = How many cases to deal, with seeds one after the other
cli-matched = Deal only cases whose expected cost under the expert's plan, once the job is taken in, lies between these amounts; “closest” for those that lie closest together
cli-look-at = Look at so many seeds, at most, for matched cases; 200 if not said, and four for each case with “closest”
cli-reveal = Say what the fault is
cli-files = Scenario files; without one, the first of those that the program carries
cli-facts = Say what the scenario is like: which tests tell its faults apart, what the job and a guess cost; some seconds to half a minute
cli-apprentices = Have virtual apprentices work N cases each and say what they earn, with --facts; some ten seconds a case
cli-strict = Warnings fail the check too, with exit code 4
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
bench-begun-sealed = A sealed case, for: { $name }. The session is kept in { $path }.
bench-stays-sealed = Handed over. The case is sealed: give { $path } to your assessor, and note its receipt, { $receipt }.
bench-till = [{ $till }]
bench-left = Not finished. Go on with: faultwright bench --session { $path }

replay-agrees = Replayed { $steps ->
    [one] one step
   *[other] { $steps } steps
}: everything that followed is as it was recorded. State { $digest }.

mark-written = The debrief is in { $path }.

check-fine = { $file }: nothing wrong found.
check-doubtful = { $file }: can be used, with { $warnings ->
    [one] one warning
   *[other] { $warnings } warnings
}.
open-told = For { $name }: “{ $title }”, case { $seed } of { $scenario }. The fault: { $faults }.
open-receipt = Receipt of the session: { $receipt }
open-written = The session with its case in the open is in { $path }.
draw-for = { $name }:
draw-sealed = Sealed in { $path }.
draw-sealed-cost = Expected cost once it is taken in: { $least } to { $most }.
draw-dealt = Case { $seed }: { $title }
draw-matched = Case { $seed }: { $title }. Expected cost once it is taken in: { $least } to { $most }.
draw-matched-revealed = Case { $seed }: { $title }. Expected cost once it is taken in: { $least } to { $most }. The fault: { $faults }.
draw-revealed = Case { $seed }: { $title }. The fault: { $faults }.

facts-draws = What is drawn:
facts-drawn = can be drawn
facts-entries = { $count ->
    [one] one entry
   *[other] { $count } entries
}
facts-with-sound = { $count ->
    [one] one entry
   *[other] { $count } entries
} and the sound vehicle
facts-uncertain = uncertainty
facts-bits = { $bits } bit
facts-bits-as-many = { $bits } bit, as of { $equal } equally likely ones
facts-likeliest = likeliest
facts-telling = What tells most as the first test, with what it costs:
facts-all-apart = All { $pairs } pairs of what can be wrong are told apart at every severity by some affordable test.
facts-some-apart = { $whole } of { $pairs } pairs of what can be wrong are told apart at every severity by some affordable test. These are not:
facts-hardest = Told apart by the fewest tests at every severity:
facts-tests = { $count ->
    [one] one test
   *[other] { $count } tests
}
facts-best = best: { $step } ({ $cost })
facts-best-partly = best: { $step } ({ $cost }), which tells { $told } of severities
facts-best-warm = best: { $step } on a warm engine ({ $cost } and the drive)
facts-best-warm-partly = best: { $step } on a warm engine ({ $cost } and the drive), which tells { $told } of severities
facts-told = told at { $told }
facts-one-remedy = one repair mends each of them
facts-own-remedies = no single repair mends all of them
facts-costs = What the job costs in expectation:
facts-plan = the expert's plan, duties apart
facts-guess = the likeliest repair at once
facts-guessed = { $cost }, right in { $chance } of cases: { $repair }
facts-comeback = a come-back
facts-apprentices = Virtual apprentices, { $cases ->
    [one] one case
   *[other] { $cases } cases
} each (seeds from 1 on):
facts-guesser = that guess

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

progress-telling = Asking what the tools of the case can tell …
progress-guess = Trying the likeliest repair: { $done } of { $of } …
progress-trial = Worked: { $done } of { $of } sessions …
progress-closest = Looked at: { $done } of { $of } seeds …
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
opening-graphics-lost = the graphics driver was lost while the window was open ({ $why }); nothing of the session is lost: start again and go on with it from the front page. If it happens again, update the driver, or draw on the processor (package mesa-vulkan-drivers on Debian)
opening-no-graphics-memory = the graphics card has no memory left ({ $why }); nothing of the session is lost: close other programs or make the window smaller with --size, start again, and go on from the front page
opening-drawing-failed = drawing failed, which is a defect of this program or of the graphics driver ({ $why }); nothing of the session is lost: start again and go on with it from the front page
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
trouble-sealed = { $path } is about a sealed case, and this would tell it. Name the passphrase with --passphrase if you are its assessor.
trouble-no-session-inside = { $path } is a hand-out and holds no session to write. Leave --into out, or name the session that was worked.
trouble-class = { $path } has { $found } names. Write 1 to { $most }, each on a line of its own.
seal-none = { $path } is no sealed case. Name a file that draw --seal has written, or the session of one.
seal-other-version = { $path } is a sealed case in version { $found } of the format, which this program does not read. Update the program.
seal-damaged = { $path } is not as it was written. Ask for the file again.
seal-not-opened = { $path } does not open: the passphrase is another, or the file was altered after it was sealed. Check the passphrase first.
seal-short-passphrase = the passphrase is too short. Write one of { $least } letters or more into the first line of its file.
trouble-practised = { $path } was begun as practice and cannot be assessed. Name a file that is not there yet.
trouble-unfinished = { $path }: the vehicle has not been handed back after { $steps ->
    [one] one step
   *[other] { $steps } steps
}. Finish the session first: faultwright bench --session { $path }
trouble-window = no window: { $why }
trouble-simulation = the simulation failed, which is a defect of the program: { $why }
