### Tipps beim Üben: was ein erfahrener Kollege sagt, wenn man ihn fragt.

hint-family = Frag dich zuerst, was es ist: { $families }?
hint-which = Es sieht aus nach: { $family }. Frag dich, welche Ursachen dieser Art gezeigt hätten, was du gesehen hast, und welche nicht.
hint-confirm = Ein Verdacht sticht heraus, und zwar: { $family }. Frag dich, was ihn klären würde.
hint-mend = Du weißt genug. Frag dich, was die Ursache beseitigt und was das beweisen würde.
hint-before-repair = Du weißt wohl schon, was es ist. Frag dich, was im Handwerk zu tun ist, bevor etwas verändert wird.
hint-proof = Frag dich, wie du einem Kunden zeigen würdest, dass die Reparatur geholfen hat.
hint-finish = Die Arbeit ist getan und nachgewiesen. Frag dich, was für den Nächsten noch zu tun bleibt.
hint-area = Wo: { $area }.
hint-area-valve = { $valve } mit Stecker und Leitungen
hint-area-supply = Sicherungen, Relais und die Versorgung vor den Ventilen
hint-area-oil = das Öl
hint-area-memory = was das Steuergerät sich gemerkt hat
hint-area-road = die Straße
hint-area-paper = Kunde, Diagnose und Dokumentation
hint-area-off = was ausgebaut oder abgesteckt ist
hint-kind = Womit: { $kind }.
hint-kind-eyes = mit den Augen
hint-kind-voltage = mit einer Spannung, ohne Last
hint-kind-loaded-voltage = mit einer Spannung, während Strom fließt
hint-kind-resistance = mit einem Widerstand, Zündung aus und Stecker getrennt
hint-kind-current = mit einem Strom
hint-kind-lamp = mit der Prüflampe, die belastet, was sie berührt
hint-kind-capture = mit dem Oszilloskop
hint-kind-wiggle = mit einer Hand, die bewegt, was lose sein könnte, während das Messgerät zuschaut
hint-kind-listening = mit den Ohren, während das Ventil bewegt wird
hint-kind-dipstick = mit Messstab, zwei Fingern und der Nase
hint-kind-oil-pressure = mit dem Öldruckmanometer
hint-kind-reading = mit dem Diagnosetester
hint-kind-road = mit einer Probefahrt
hint-kind-repair = mit einer Reparatur
hint-kind-putting-back = mit dem Einbau dessen, was ausgebaut ist
hint-kind-paper = mit einem Wort, geschrieben oder gesprochen
hint-step = Der Schritt: { $steps }
hint-why-test = Warum: Für { $cost } verrät er voraussichtlich { $bits } von { $open } Bit, die noch offen sind. Was er übrig lassen kann:
hint-why-outcome = { "    " }{ $chance } %: { $belief }
hint-why-repair = Warum: Nach allem, was bisher bekannt ist, beseitigt dies die Ursache mit einer Wahrscheinlichkeit von { $chance } %: { $repair }.

family-oil = das Öl
family-winding = die Wicklung eines Ventils
family-movement = eine klemmende oder verstopfte Stelle in einem Ventil
family-wiring = eine Leitung oder ein Kontakt
family-supply = die Versorgung, eine Sicherung oder ein Relais
family-nothing = gar nichts

duty-record-codes = Warum: Fehlercodes gehören aufs Papier, bevor etwas verändert wird.
duty-record-frame = Warum: Die Umgebungsdaten sagen, wann es passiert ist, und sind nach dem Löschen weg.
duty-commit = Warum: Eine Reparatur ohne Diagnose ist geraten; sag zuerst, was es ist.
duty-approval = Warum: Der Kunde bezahlt, und er entscheidet.
duty-put-back = Warum: Nichts ist bewiesen, solange etwas ausgebaut ist.
duty-clear = Warum: Nur was nach dem Löschen wiederkommt, zählt.
duty-key-on-check = Warum: Ein Stromkreis, der noch gestört ist, meldet sich bei Zündung ein, vor jeder Fahrt.
duty-road-test = Warum: Die meisten Überwachungen kommen nur auf der Straße zu einem Ergebnis.
duty-rescan = Warum: Die Probefahrt ist so viel wert wie das, was das Steuergerät danach von ihr sagt.
duty-write-concern = Schreib die Beanstandung auf: womit der Kunde gekommen ist.
duty-write-cause = Schreib die Ursache auf: was du gefunden hast.
duty-write-correction = Schreib die Abhilfe auf: was du getan hast.
duty-hand-over-declined = Warum: Was noch nicht stimmt, hat der Kunde abgelehnt, und was du aufgeschrieben hast, nimmt er mit.
duty-hand-over = Warum: Es fehlt nichts mehr.

debrief-hints = { $count ->
    [one] Ein Tipp wurde genommen; er kostete { $points } Punkte von der Summe:
   *[other] { $count } Tipps wurden genommen; zusammen kosteten sie { $points } Punkte von der Summe:
}
debrief-hint = { "    " }Schritt { $number }, { $step }: { $points }

step-hint-question = Um einen Tipp bitten: was offen ist
step-hint-area = Um einen Tipp bitten: wo es weitergeht
step-hint-kind = Um einen Tipp bitten: welche Art von Prüfung
step-hint-step = Um einen Tipp bitten: der Schritt selbst
help-hint = Um einen Tipp bitten; je später das Wort, desto mehr verrät und kostet er
event-hint-asked = Du bittest um einen Tipp.
refusal-no-hints = Bei einer Prüfung gibt es keine Tipps. Halte dich an das, was du gesehen hast.
