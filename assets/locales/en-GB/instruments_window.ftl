### The tray of instruments in the window. What an instrument shows in a log is said by the other catalogues.

## The tray

window-pane-tray = Instruments
tray-meter = Multimeter
tray-takes = Takes { $time }.
tray-takes-and-costs = Takes { $time } and { $money }.
tray-take = Take the reading
tray-predict = Predict first
tray-predicted = { $prediction }: waits for the reading.
tray-step = Step { $number }
tray-nothing-read = Nothing read here yet.

## Ends that are put on something

tray-red = red lead
tray-black = black lead
tray-red-letter = R
tray-black-letter = B
tray-end-at = { $end }: { $place }
tray-end-nowhere = { $end }: nowhere yet
tray-end-hint = Drag it onto a thing in the bay, or choose from the list.
tray-choose = Where does the { $end } go?
tray-choose-on = Where on “{ $thing }” does the { $end } go?
tray-put = { $letter }: { $place }
tray-choose-none = Leave it where it is
tray-dropped-nothing = The { $end } touches nothing there.
tray-put-here = Put the { $end } here: { $place }
tray-put-where = Point at where the { $end } goes and click. Esc lets go of it.

## Multimeter

meter-volts = Volts DC
meter-ohms = Ohms
meter-amps = Amps DC
meter-from-front = Leads pushed in from the front
meter-zero = Zero the leads
meter-fuse = New fuse for the meter
meter-shows = { $function }: { $display }
meter-blank = { $function }: nothing read
meter-blew = { $function }: the meter’s fuse blew
meter-digit = Last digit { $step }
meter-settling = settling
meter-over-limit = Over limit: beyond the largest range
