### Die Ablage der Messgeräte im Fenster. Was ein Gerät in einem Protokoll zeigt, sagen die anderen Kataloge.

## Die Ablage

window-pane-tray = Messgeräte
tray-meter = Multimeter
tray-takes = Dauert { $time }.
tray-takes-and-costs = Dauert { $time } und kostet { $money }.
tray-take = Messwert aufnehmen
tray-predict = Zuerst vorhersagen
tray-predicted = { $prediction }: wartet auf den Messwert.
tray-step = Schritt { $number }
tray-nothing-read = Hier wurde noch nichts gemessen.

## Enden, die irgendwo angelegt werden

tray-red = rote Messleitung
tray-black = schwarze Messleitung
tray-red-letter = R
tray-black-letter = S
tray-end-at = { $end }: { $place }
tray-end-nowhere = { $end }: noch nirgends
tray-end-hint = Zieh es auf ein Ding im Motorraum, oder wähle aus der Liste.
tray-choose = Wohin damit: { $end }?
tray-choose-on = Wohin an „{ $thing }“: { $end }?
tray-put = { $letter }: { $place }
tray-choose-none = Lassen, wo es ist
tray-dropped-nothing = Dort berührt es nichts: { $end }.
tray-put-here = Hier anlegen, { $end }: { $place }
tray-put-where = Zeig auf die Stelle und klick: { $end }. Esc lässt los.

## Multimeter

meter-volts = Gleichspannung
meter-ohms = Widerstand
meter-amps = Gleichstrom
meter-from-front = Messspitzen von vorn eingesteckt
meter-zero = Messleitungen nullen
meter-fuse = Neue Sicherung für das Multimeter
meter-shows = { $function }: { $display }
meter-blank = { $function }: nichts gemessen
meter-blew = { $function }: Sicherung des Multimeters durchgebrannt
meter-digit = Letzte Stelle { $step }
meter-settling = schwingt noch ein
meter-over-limit = Überlauf: jenseits des größten Messbereichs
