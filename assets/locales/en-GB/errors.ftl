### What is wrong with what was typed: place, fault and remedy in one line.

problem = At character { $column }: { $wrong } { $remedy }

problem-unknown-word = “{ $found }” is not a word that can stand here.
problem-ambiguous = “{ $found }” is short for more than one word.
problem-missing-word = the step is not complete.
problem-missing = the step is not complete: { $what } is missing.
problem-extra = the step was complete before “{ $found }”.
problem-bad-number = “{ $found }” is not { $wanted }.
problem-no-such-place = “{ $found }” is not the name of { $what } on this vehicle.
problem-other-kind = “{ $found }” is { $is }, but { $what } belongs here.

remedy-nearest = Did you mean { $list }?
remedy-options = Write { $list }.
remedy-allowed = You can write { $list } here.
remedy-end = Leave out the rest, or put # before a comment.
remedy-none = This vehicle has none.
remedy-text = Write it up to the end of the line.
remedy-percent = Write a whole number from 0 to 100, such as 60%.
remedy-seconds = Write whole seconds from 1 to 65535, such as 2 s.
remedy-reading = Write digits with a decimal point, and V, mV, ohms, kohms, Mohms, A or mA of one quantity if you like, such as 7.5 ohms.
remedy-not-below-least = Write the smaller value first.

expected-text = the text
number-percent = a confidence in per cent
number-seconds = a time in seconds
number-reading = a reading
number-not-below-least = as great as the value before it

kind-part = a part that comes off
kind-connector = a connector
kind-valve = a valve
kind-test-point = a test point
kind-in-view = something that can be looked at
kind-mendable = a wire or a contact
kind-route = a road for a test drive
kind-part-number = a part number
kind-fault-place = a place for that fault
