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
    Example:
      faultwright mark job.session --format json

cli-scenario = Scenario file, or glasshouse-lane, which the program carries; without it, Market Hill
cli-seed = Seed of the case, a whole number; without it, one that nobody chose
cli-steps = Read steps from this file, one a line
cli-session = Keep the session in this file; if the file is there already, go on with it
cli-format = How results are printed
cli-count = How many cases to deal, with seeds one after the other
cli-reveal = Say what the fault is
cli-files = Scenario files; without one, the first of those that the program carries
cli-session-file = Session file

cli-trouble = faultwright: { $text }

bench-begun = Case { $seed }. The session is kept in { $path }.
bench-resumed = Going on with { $path } after { $steps ->
    [one] one step
   *[other] { $steps } steps
}.
bench-hint = Type a step, such as "read codes". "help" lists all steps, "help measure" one; a line that ends in ? shows what can stand there; "quit" leaves and keeps the session.
bench-no-such-verb = There is no step that begins with "{ $verb }". "help" lists all steps.
bench-till = [{ $minutes }, { $money } of material, { $total } in all]
bench-left = Not finished. Go on with: faultwright bench --session { $path }

replay-agrees = Replayed { $steps ->
    [one] one step
   *[other] { $steps } steps
}: everything that followed is as it was recorded. State { $digest }.

check-fine = { $file }: nothing wrong found.
draw-dealt = Case { $seed }: { $title }
draw-revealed = Case { $seed }: { $title }. The fault: { $faults }.

progress-dealing = Dealing a case …
progress-worlds = Working out what each fault would show: { $done } of { $of } …
progress-review = Looking back at every step: { $done } of { $of } …

window-not-built = this build has no window; build it with the feature "workshop"
window-bench-instead = No window: { $why }. Opening the bench in the terminal.

trouble-diverged = { $path }: other events follow from entry { $entry } than were recorded. The file was changed, or another version of the program wrote it; mark it with that version.
trouble-step = line { $line } of the steps. { $problem } The steps before it are kept.
trouble-file = { $path }: { $why }
trouble-unfinished = { $path }: the vehicle has not been handed back after { $steps ->
    [one] one step
   *[other] { $steps } steps
}. Finish the session first: faultwright bench --session { $path }
trouble-window = no window: { $why }
trouble-simulation = the simulation failed, which is a defect of the program: { $why }
