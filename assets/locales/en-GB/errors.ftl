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
kind-wiggled = a connector, a contact or a wire at one
kind-wire = a wire
kind-replaceable = a fuse or a relay
kind-route = a road for a test drive
kind-part-number = a part number
kind-fault-place = a place for that fault

### Files that cannot be read at all.

unreadable-not-found = there is no such file. Check its name and its folder.
unreadable-not-a-file = it is a folder or a device. Name a file that ends in .ron.
unreadable-not-allowed = the system does not let you read it. Ask its owner for permission, or use a copy of your own.
unreadable-too-large = it is larger than { $most } KiB, more than any scenario needs. Check that it is the right file.
unreadable-not-utf8 = it is not written in UTF-8. Save it in that encoding.
unreadable-failed = the system failed to read it. Check the disk, then try again.
unreadable-failed-number = the system failed to read it, with its error { $number }. Check the disk, then try again.

### What is wrong in a scenario or a vehicle: behind the place, the cause and the remedy.

flaw = { $file }:{ $line }:{ $column }: { $said }
flaw-in-file = { $file }: { $said }
flaws-left-off = { $count ->
    [one] One more problem was found and is not shown.
   *[other] { $count } more problems were found and are not shown.
} Correct these first, then check again.

flaw-no-comma = a comma is missing before this. Put one behind the value that comes before.
flaw-no-colon = a colon is missing before this. Write a name, a colon and a value, such as weight: 2.
flaw-open-bracket = this { $found } is never closed. Put { $closing } where its content ends, or look for another bracket that is missing further down.
flaw-other-bracket = “{ $found }” does not fit the bracket that was opened last. Close ( with ), [ with ] and { "{" } with { "}" }.
flaw-open-text = this text is never closed. Put " where it ends.
flaw-open-comment = this comment is never closed. Put */ where it ends.
flaw-too-long = the file is complete before this. Take the rest out, or look for a bracket above that closes too early.
flaw-no-name = a name or a value is due here. Write one, or take out what stands here.
flaw-bad-escape = this backslash with what follows it has no meaning. Write \\ for a backslash, \" for a quotation mark and \n for a new line.
flaw-bad-number = this number is not well written. Write digits, with a point before decimals, such as 12 or 0.25.
flaw-unknown-extension = this asks for an extension that RON does not have. Take the #![enable(…)] out.
flaw-other-syntax = the file ends here or goes on in a way that RON, the notation of scenarios, does not have. Compare it with a scenario that checks clean.
flaw-too-many-values = this is one value more than the { $most } that a file may have. Look above for a list that goes on and on.
flaw-too-deep = brackets are nested more than { $most } deep here. Look above for brackets that are opened and never closed.
flaw-wrong-format = the file says that its format is “{ $found }”, and “{ $expected }” is due here. Name a file of that format, or correct this line.
flaw-newer-format = version { $found } of the format is newer than this program, which reads version { $newest }. Update the program.
flaw-unknown-format = there is no version { $found } of the format. Write { $newest }.
flaw-newer-field = “{ $field }” came with version { $since } of the format, and this file says that it is of an older one. Write { $since } as its version.
flaw-unknown-field = there is no field “{ $found }” here.
flaw-missing-field = the field “{ $field }” is missing here. Write { $field }: and its value between these brackets.
flaw-repeated-field = the field “{ $field }” stands here for the second time. Take one of the two out.
flaw-number-does-not-fit = this whole number is below zero or too great for its field. Write one that is neither.
flaw-not-a-code = “{ $found }” is not a trouble code. Write P, C, B or U, a digit from 0 to 3, and three digits or letters from A to F, such as P0010.
flaw-not-finite = “{ $found }” is not a number to work with. Write a finite one, such as 0.25.

flaw-shape-text = a text is due here. Write it in quotation marks, such as "Rough idle".
flaw-shape-whole-number = a whole number is due here. Write digits only, such as 12.
flaw-shape-number = a number is due here. Write digits, with a point before decimals, such as 0.25.
flaw-shape-word = a plain word is due here. Write it without quotation marks, such as Practice.
flaw-shape-fields = fields in round brackets are due here. Write them like (first: 1, second: 2).
flaw-shape-pair = two values in round brackets are due here. Write them like (0.2, 0.8).
flaw-shape-list = a list in square brackets is due here. Write it like [1, 2], or [] if it is empty.
flaw-shape-map = a map in curly brackets is due here. Write it like { "{" }"first": 1, "second": 2{ "}" }.
flaw-shape-optional = a value that may be absent is due here. Write None if it is, and Some(…) around it if it is not.

flaw-out-of-range = { $found } is out of range. Write a number from { $least } to { $most }.
flaw-wrong-order = { $first } comes first and has to be below { $second }. Correct one of the two: a least value stands before a greatest, and each part of a drive ends later than the one before.
flaw-too-many = this list has { $found } entries, and { $most } are allowed. Take { $surplus } out.
flaw-empty = there is nothing in this. Write something between its quotation marks or brackets.
flaw-all-weights-zero = no weight is above zero here. Give at least one a weight that is.
flaw-bad-name = “{ $found }” cannot be a name. Write at most { $most } small letters a to z and digits, with single hyphens between words, such as intake-valve.
flaw-leaves-folder = “{ $found }” leads out of the folder “vehicles”. Write the name of a file in that folder without its ending, such as harrowfen-dray.
flaw-unknown-name = there is no { $thing } “{ $found }”.
flaw-no-such-place = “{ $found }” cannot have the fault “{ $fault }”.
flaw-vehicle-unreadable = the vehicle's file { $file } cannot be read: { $said }
flaw-repeated = this is the second { $thing } “{ $name }”. Give each a name of its own, or take one out.
flaw-repeated-element = “{ $name }” is one too many: its name is taken, or it is a second battery or a second supply of the module. Give it a name of its own, or take it out.
flaw-repeated-camshaft = “{ $name }” is the second valve of one camshaft, and a bank has one intake and one exhaust camshaft. Choose the other camshaft, write bank: Two if it stands on the other bank of a V engine, or take the valve out.
flaw-repeated-fault = this fault at “{ $name }” is in the list already. Take one of the two out, and add its weight to the other's.
flaw-repeated-entry = “{ $name }” stands in this map already. Take one of the two out.
flaw-no-answer = the customer has no answer about “{ $topic }”. Write { $topic }: and what the customer says, in quotation marks, among the answers.
flaw-no-price = the part number “{ $part }” has no price. Write "{ $part }": and the price in hundredths among the prices of valves.
flaw-nobodys-code = { $code } is no code of a valve, and a false code accuses one. Choose a valve's code, or leave `origin` out.
flaw-own-code = { $code } is a code of “{ $valve }”, and one that has nothing to do with a valve is due here. Choose another.
flaw-repeated-code = { $code } is taken already. Choose another code, or take this one out.
flaw-same-place = “{ $place }” is also where another fault of this entry is, so that one repair would take both away. Move one of them to another place, or make two entries of them.
flaw-same-winding = “{ $part }” is what the factory fits there, and another winding is due here. Choose another part number, or take other_winding out.
flaw-does-not-fit = the part “{ $part }” does not fit “{ $valve }”. Choose one that fits, or write "{ $valve }" into what it fits.
flaw-no-partner = “{ $valve }” moves a camshaft of one bank, and no valve moves the same camshaft of the other. Add the other valve, since both banks of a V engine are built alike, or correct `cam` or `bank` of this one.
flaw-uneven-banks = { $cylinders } cylinders cannot be shared evenly by two banks. Write an even number.
flaw-narrow-window = healthy windings of “{ $part }” differ by up to { $spread } %, and some would be out of its printed limits. Move ohms_least and ohms_most further away from ohms_at_20.
flaw-valve-no-part = “{ $valve }” is not among the parts, so it could not be taken out. Add a part with this id and kind: Valve.
flaw-valve-no-connector = the connector of “{ $valve }” is not among the parts. Add it there with kind: Connector, or correct its name.
flaw-valve-no-pins = the coil of “{ $valve }” does not end at pins of its connector. Add a Pin of that connector with “to” at each end of the coil.
flaw-valve-no-coil = “{ $valve }” has no coil in the wiring. Add a Coil with valve: "{ $valve }".
flaw-valve-no-driver = “{ $valve }” has no driver in the wiring. Add a LowSideDriver with valve: "{ $valve }".
flaw-no-battery = the wiring has no battery. Add a Battery.
flaw-no-battery-minus = the wiring has no node “battery-minus”, against which every voltage counts. Give the battery minus: "battery-minus".
flaw-no-engine-ground = the wiring has no node “engine-ground”, which a rubbed-through wire touches. Add a Wire that ends there.
flaw-no-module-supply = nothing in the wiring supplies the control module. Add a ModuleSupply.
flaw-no-driver-ground = no ModuleSupply has the ground of this driver. Write the same node in both.
flaw-hanging-node = nothing but this element ends at the node “{ $node }”, so no current can flow there.
flaw-island-node = no way leads from the node “{ $node }” to “battery-minus”. Add what is missing between them, or correct a name.
flaw-same-ends = this element ends at the node “{ $node }” twice. Give each end a node of its own.
flaw-blocked-in-a-circle = { $count ->
    [one] “{ $parts }” is behind itself
   *[other] { $parts } are behind each other
}, so none could ever come off. Take a name out of “behind”.
flaw-no-torque = “{ $part }” wants a torque and has none. Write torque_nm: and the torque in newton metres, or take Torque out of its care.

### What is doubtful about a scenario that can be used: behind the place cause and remedy.

doubt = { $file }:{ $line }:{ $column }: warning: { $said }
doubt-never-drawn = no case ever has this fault, since its weight is zero. Give it a weight above zero, or take the entry out.
doubt-only-fault = this is the only fault that can be drawn, so there is nothing to find out. Add others that fit the same complaint.
doubt-dominates = { $share } of all draws have this fault, so that whoever guesses it is right more often than not. Lower its weight, or raise others.
doubt-mostly-sound = { $share } of all draws have no fault at all. Lower this weight, or raise those of the faults.
doubt-free = this costs nothing, so that nobody has to weigh whether to use it. Write a price above zero, in hundredths.
doubt-cheap-comeback = a come-back costs no more than the part “{ $part }” ({ $price }), so that it may be cheapest to hand the vehicle back as it is. Raise it above what a repair costs.
doubt-names-fault = “{ $found }” names a fault that can be drawn ({ $fault }), and the sheet is read before anything is tested. Let the customer say what is noticed instead.
doubt-names-place = “{ $found }” names a place where some of the faults are and others are not. Say it otherwise, unless it is meant to lead there or astray.
doubt-never-there = the chance is zero, so that this is never there. Give it a chance above zero, or take it out.
doubt-always-passed = nobody can miss a pass line of 0 %. Write the share of the marks that is asked for, such as 60.
doubt-hardly-passed = a pass line of 100 % is missed with the first mark that is lost. Write the share of the marks that is asked for, such as 60.
doubt-no-about = the scenario has no sentence about itself for the list that it is chosen from. Write about: and one that gives nothing away.
doubt-no-teaching = the scenario has no note for instructors. Write teaching: with what it teaches, its traps and the path of an expert.
doubt-never-noticed = the customer notices nothing of “{ $faults }”, however severe, so that no case is ever dealt with it. Raise its range of severity, change the customer's road, or take the entry out.
doubt-not-told = too few affordable tests tell “{ $faults }” from “{ $rival }”, so that cases with it may be refused. Take one of the two out, or change the range of severity.

thing-vehicle = vehicle
thing-route = road
thing-valve = valve
thing-part-number = part number
thing-part = part
thing-connector = connector
thing-camshaft = camshaft
thing-fuse = fuse
thing-test-point = test point
thing-node = node of the wiring
thing-element = element of the wiring
thing-fault = fault
thing-entry = entry

remedy-take-out = Take it out.
remedy-name-vehicle = Put its file into the folder “vehicles” beside the scenario, or name one that is there.
remedy-name-route = Write the name of a road from “routes”.
remedy-name-valve = Write the id of a valve from “valves”.
remedy-name-part-number = Write a part number from “valve_parts”.
remedy-name-part = Write the id of a part from “parts”.
remedy-name-camshaft = Write Intake or Exhaust.
remedy-name-connector = Write the id of a part whose kind is Connector.
remedy-name-fuse = Write the id of a Fuse of the wiring.
remedy-name-test-point = Write the id of a test point from “test_points”.
remedy-name-node = Write a node at which elements of the wiring end.
remedy-name-element = Write the id of an element from “elements”.
remedy-name-fault = Write kind and place of a fault from “faults”.
remedy-name-entry = Write the name of an entry that is there.
remedy-valve-fault = Write the id of a valve.
remedy-pin-fault = Write the id of a Pin of the wiring.
remedy-wire-fault = Write the id of a Wire that ends at a Pin.
remedy-control-wire-fault = Write the id of a Wire that ends at the pin of a LowSideDriver.
remedy-feed-wire-fault = Write the id of a Wire that feeds a valve through a Fuse.
remedy-fuse-fault = Write the id of a Fuse that feeds a valve.
remedy-relay-fault = Write the id of a RelayContact that feeds a valve.
remedy-sump-fault = Write "sump".
remedy-hanging-node = Let something else end there, or correct its name.

### Why no case could be dealt.

draw-none-accepted = no case could be dealt: none of { $attempts } draws gave one that can be solved.
draw-without-complaint = In { $count } the fault shows nothing that would bring the customer in. Raise the severities, or lengthen the customer's road.
draw-not-separable = In { $count } the fault cannot be told from another. Add test points, or take out faults that look alike.

### What the system says of a file, and what to do about it.

io-not-found = there is no such file or folder
io-not-allowed = the system does not allow it
io-full = the disk is full
io-read-only = the disk is read-only
io-is-folder = it is a folder
io-not-folder = something in its path is not a folder

remedy-io-no-folder = Make the folder first, or choose another one.
remedy-io-not-found = Check the name and the folder.
remedy-io-not-allowed = Choose a folder of your own, or ask its owner for permission.
remedy-io-full = Make room on the disk.
remedy-io-read-only = Choose a disk that can be written to.
remedy-io-is-folder = Name a file.
remedy-io-not-folder = Check each folder in the path.
remedy-io-other = Try again, or choose a place on another disk.

### What is wrong with a session file: behind the place, the cause and the remedy.

session-file = { $path }: { $said }
session-file-line = { $path }:{ $line }: { $said }
session-torn = { $path }: entry { $entry } was cut off while it was written, and what followed from it was never shown. What was there of it, { $bytes ->
    [one] 1 byte
   *[other] { $bytes } bytes
}, is now in { $aside }.

session-refused = { $action }: { $why }. { $remedy }
session-exists = there is such a file already, and it was left alone. Choose another name, or go on with it: faultwright bench --session { $typed }
session-not-a-file = it is a folder, a device or a pipe. Name a session file.
session-in-use = another program works on this session. Finish or leave it there first.
session-too-large = it is larger than { $limit } MiB, which no session is. Check that it is the right file.
session-old-version = it was begun in version { $version } of the format, by an older program, and cannot be gone on with. Begin a new session, or mark this one as it is: faultwright mark { $typed }
session-cut-off = the file ends in the middle of entry { $entry }, and what followed from that was never shown. Go on with the whole entries: faultwright bench --session { $typed }
session-not-begun = the session was not begun because { $said }
session-left-behind = The beginning of the file is still there; delete it first.
session-not-written = entry { $entry } was not kept because { $said }
session-kept = The entries before it are kept.
session-rest-behind = A part of it may stand at the end of the file, and comes off when the session goes on.
session-go-on = Then go on: faultwright bench --session { $typed }

action-create = the file cannot be created
action-open = the file cannot be opened
action-lock = the file cannot be locked against other programs
action-measure = the size of the file cannot be found out
action-read = the file cannot be read
action-write = the file cannot be written
action-sync = the file cannot be brought onto the disk
action-sync-folder = the name of the file cannot be brought onto the disk
action-cut-back = the torn end of the file cannot be cut off
action-save-torn = the torn end of the session cannot be kept in it

failure-short = only { $written } of { $expected } bytes went in, as on a disk that is nearly full. Make room on the disk.
failure-too-large = the file would be larger than { $limit } MiB, more than is read again. Begin a new session in another file.
failure-changed-outside = something else changed the file, which has { $got } bytes and should have { $expected }. Put it back as it was, and keep other programs away from it.
failure-deleted = the file was deleted or replaced. Begin a new session in another file.
failure-unwritable = { $part } would not read back the same, which is a defect of the program. Report it with the steps that led here.
unwritable-case = the case
unwritable-step = the step
unwritable-events = what followed from the step

-unchanged-copy = Use an unchanged copy of the file.
-other-version = Open it with the version that wrote it.
session-not-a-session = it is not a session file. Name one that the bench has written; its name usually ends in .session.
session-header-cut = the file ends in its first line, after { $bytes ->
    [one] 1 byte
   *[other] { $bytes } bytes
}, so it holds no step. Delete it and begin again.
session-newer = a newer version of the program wrote it, in format { $got }; this one reads up to format { $newest }. Open it with a newer version.
session-older = it is in format { $got }, and this program reads from format { $oldest }. { -other-version }
session-header-unreadable = the first line is damaged at byte { $column }: { $fault }. { -unchanged-copy }
session-case-unreadable = the case is as it was written, and this version cannot read it at its byte { $column }: { $fault }. { -other-version }
session-header-rewritten = the first line is not written as the program writes it: it was changed after it was written. { -unchanged-copy }
session-header-chain = the chain breaks in the first line: it was changed after it was written. { -unchanged-copy }
session-not-utf8 = this line is damaged after { $valid } bytes: what follows is not UTF-8. { -unchanged-copy }
session-entry-unreadable = entry { $entry } is damaged at byte { $column }: { $fault }. { -unchanged-copy }
session-runs-on = entry { $entry } is whole, but something stands behind it at byte { $column }. { -unchanged-copy }
session-out-of-order = entry { $got } stands where entry { $entry } belongs: one was taken out, doubled or moved. { -unchanged-copy }
session-entry-rewritten = entry { $entry } is not written as the program writes it: it was changed after it was written. { -unchanged-copy }
session-chain-broken = the chain breaks at entry { $entry }: this entry or one before it was changed after it was written. { -unchanged-copy }
session-step-unknown = entry { $entry } is as it was written, and this version does not know its step, at its byte { $column }: { $fault }. { -other-version }
json-syntax = it is not well-formed JSON
json-shape = it does not hold what belongs there
json-cut = it ends too early
