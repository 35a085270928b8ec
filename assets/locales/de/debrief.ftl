### Die Nachbesprechung: was aus der Sitzung wurde, die Punkte mit ihren Belegen, und jeder Schritt noch einmal.

debrief-title = Nachbesprechung
debrief-handed-over = Zurückgegeben ({ $ending }) nach { $minutes } und { $money } Material: zusammen { $total }.
debrief-truth = Was nicht stimmte: { $faults }.
debrief-after-well = Danach auf der Straße des Kunden: keine Leuchte, und der Motor läuft gut.
debrief-after-lamp = Danach auf der Straße des Kunden: Die Motorkontrollleuchte ist an. Der Kunde kommt wieder.
debrief-after-badly = Danach auf der Straße des Kunden: Der Motor läuft schlecht. Der Kunde kommt wieder.
debrief-after-both = Danach auf der Straße des Kunden: Die Motorkontrollleuchte ist an, und der Motor läuft schlecht. Der Kunde kommt wieder.
debrief-after-declined = Danach auf der Straße des Kunden: Was noch zu sehen oder zu spüren ist, hat der Kunde abgelehnt. Dafür kommt niemand wieder.
debrief-total-passed = Punkte: { $total } von 100; bestanden ist ab { $line }. Bestanden.
debrief-total-failed = Punkte: { $total } von 100; bestanden ist ab { $line }. Nicht bestanden.
debrief-critical-unsafe = Trotz aller Punkte nicht bestanden: Der Motor lief ohne Öl.
debrief-critical-unproved = Trotz aller Punkte nicht bestanden: ohne Nachweis als repariert zurückgegeben.
debrief-critical-not-repaired = Trotz aller Punkte nicht bestanden: als repariert zurückgegeben, und der Kunde kommt wieder.
debrief-mark = { $category }: { $points } von { $most }
debrief-steps = Schritt für Schritt: was es gekostet hat und wie es im Vergleich zum Besten abschneidet; wo das gewogen ist oder etwas gelernt wurde, auch, was vorher und nachher bekannt war.

ending-as-repaired = repariert
ending-as-no-fault = kein Fehler gefunden
ending-as-referred = an jemand anderen verwiesen
ending-as-unsafe = nicht verkehrssicher
ending-as-declined = Arbeit vom Kunden abgelehnt

mark-test-choice = Wahl der Prüfungen
mark-access-order = Reihenfolge des Zugangs
mark-reading = Messwerte
mark-calibration = Zuversicht
mark-repair = Reparatur
mark-proof = Nachweis
mark-care = Sorgfalt und Sicherheit
mark-record = Dokumentation

remark-good = +
remark-bad = –
remark-line = { "    " }{ $sign } { $text }
remark-at-step = Schritt { $number }, { $step }: { $text }

about-regret = kostete voraussichtlich { $cost } mehr als: { $best }.
about-premature-repair = Zu früh: Nach Lage der Beweise hatte diese Reparatur eine Chance von { $chance } % und kostete voraussichtlich { $cost } mehr als: { $best }.
about-premature-diagnosis = Zu früh: Nach Lage der Beweise hatte diese Diagnose eine Chance von { $chance } %, und es hätte sich noch gelohnt, dies zuerst zu tun: { $best }.
about-redundant = Das konnte nichts verraten: Alles, was noch nicht stimmen kann, hätte dasselbe gezeigt. Es kostete { $cost }.
about-repeated = Das war schon bekannt: Seit dem letzten Mal hatte sich nichts verändert. Es kostete { $cost }.
about-not-told = { $count ->
    [one] Von einem Schritt lässt sich nicht sagen, ob er schlechter als das Beste war: Die Schranken des Experten liegen zu weit auseinander (höchstens { $most }). Er zählt nicht.
   *[other] Von { $count } Schritten lässt sich nicht sagen, ob sie schlechter als das Beste waren: Die Schranken des Experten liegen zu weit auseinander (höchstens { $most } bei einem davon). Sie zählen nicht.
}
about-no-regret = Von keinem Schritt ist gezeigt, dass er mehr kostete als nötig.
about-removed-again = { $place } wurde ein zweites Mal ausgebaut.
about-no-detour = Nichts wurde zweimal ausgebaut.
about-prediction-met = Der Messwert lag dort, wo du gesagt hattest.
about-prediction-missed = Der Messwert lag nicht dort, wo du gesagt hattest.
about-other-quantity = Gemessen ist eine andere Größe als vorhergesagt: Die Einheit gehört zum Messwert.
about-sign-met = Was die Prüfung zeigte, hattest du vorhergesagt.
about-sign-missed = Was die Prüfung zeigte, hattest du nicht vorhergesagt.
about-few-predictions = { $count ->
    [0] Kein Messwert wurde vor dem Messen vorhergesagt; tu es dreimal, oder bei jedem Messwert, wo es weniger sind.
    [one] Ein Messwert wurde vor dem Messen vorhergesagt; tu es dreimal, oder bei jedem Messwert, wo es weniger sind.
   *[other] { $count } Messwerte wurden vor dem Messen vorhergesagt; tu es dreimal, oder bei jedem Messwert, wo es weniger sind.
}
about-sound-readings = Jeder Messwert wurde so aufgenommen, dass er etwas bedeutet.
about-confidence = Deine Zuversicht lag { $distance } von dem entfernt, was die Beweise zuließen (0 ist am besten, 1 am schlechtesten).
about-no-confidence = Vor der Diagnose bekam kein Verdacht eine Zuversicht.
about-repair = Nach Lage der Beweise hatte diese Reparatur eine Chance von { $chance } %.
about-worn-part = Das eingebaute Teil war selbst verschlissen: { $fault }. Sieh dir ein Teil an, bevor es hineinkommt.
about-part-mended = { $fault }: behoben.
about-part-left = { $fault }: geblieben, wie es war; der Auftrag ist nur zum Teil erledigt.
about-declined = { $fault }: gefunden, angeboten und vom Kunden abgelehnt.
about-came-back = Der Kunde kam wieder.
about-stayed-away = Der Kunde musste nicht wiederkommen.
about-unrelated-told = Der Kunde weiß von einem Fehlercode, der nicht zum Auftrag gehörte: { $code }
about-unrelated-erased = Ein Fehlercode, der nicht zum Auftrag gehörte, wurde gelöscht, und der Kunde erfuhr nichts davon: { $code }
about-closed-unproved = Als repariert zurückgegeben, bevor gezeigt war, dass die Reparatur geholfen hat.
about-no-breach = Keine Regel der Sorgfalt oder Sicherheit wurde gebrochen.
about-left-off = { $place } blieb ausgebaut.

proof-recorded = Fehlercodes und Umgebungsdaten notiert, bevor etwas gelöscht wurde
proof-cleared = Fehlercodes nach der Reparatur gelöscht
proof-key-on = Fehlercodes bei Zündung ein noch einmal ausgelesen, vor der Probefahrt, keiner davon wieder da
proof-road = eine Probefahrt, auf der die Überwachungen der fraglichen Fehlercodes zu einem Ergebnis kamen und die Leuchte aus blieb
proof-declined = aufgeschrieben, nachdem der Kunde abgelehnt hatte
proof-rescan = Fehlercodes nach der Probefahrt noch einmal ausgelesen, keiner davon wieder da

record-concern = Beanstandung aufgeschrieben
record-cause = Ursache aufgeschrieben
record-correction = Abhilfe aufgeschrieben

proposal-step = { $step }
proposal-renew = { $place } erneuern
proposal-clean = { $place } reinigen
proposal-mend = { $place } instand setzen
proposal-mend-and-fuse = { $place } instand setzen und die zugehörige Sicherung ersetzen
proposal-replace = { $place } ersetzen
proposal-top-up = Öl auffüllen
proposal-change-oil = Öl wechseln
proposal-close = den Auftrag abschließen

step-line = { $number }. { $step } – { $cost }; { $regret }
step-before = { "      " }vorher:    { $belief }; noch { $value }
step-best = { "      " }am besten: { $best }
step-best-told = { "      " }am besten: { $best }; dieser { $told }
step-told = sollte voraussichtlich { $bits } Bit verraten
step-after = { "      " }nachher:   { $belief }
step-not-weighed = nicht gewogen
step-no-regret = nicht als schlechter als das Beste gezeigt
step-not-told = lässt sich nicht sagen und zählt daher nicht: höchstens { $most } schlechter als das Beste
step-regret = { $cost } schlechter als das Beste
money-span = { $least } bis { $most }
belief-one = { $fault } { $chance } %
belief-open = noch alles offen

what-if-moment = Vor Schritt { $number }, { $step }:
what-if-known = Damals bekannt: { $belief }
what-if-value = Der Rest des Auftrags sollte { $value } kosten; am besten war: { $best }.
what-if-instead = Stattdessen: { $steps }
what-if-then = { "; " }
what-if-truth = In Wahrheit hätte es gezeigt:
what-if-truth-line = { "    " }{ $line }
what-if-truth-nothing = { "    " }nichts
what-if-told = Es hätte { $cost } gekostet und sollte voraussichtlich { $bits } von { $open } Bit verraten, die offen waren.
what-if-repeat = Es hätte { $cost } gekostet und nichts verraten: Dasselbe war am Fahrzeug, wie es war, schon gesehen worden.
what-if-outcomes = Was es hätte zeigen können, und was das bedeutet hätte:
what-if-outcome = { "    " }{ $chance } %: { $read } → { $belief }
what-if-other-outcomes = { "    " }{ $chance } %: eines von { $count } anderen Ergebnissen
what-if-nothing-shown = nichts
what-if-total = Hiermit zuerst hätte der ganze Rest { $total } kosten sollen: { $regret }.
what-if-worse = { $cost } schlechter als das Beste
what-if-choices = Was als Nächstes möglich gewesen wäre, geordnet nach dem, was der ganze Rest voraussichtlich gekostet hätte, mit dem, was es verraten konnte:
what-if-bits = { $bits } Bit
what-if-no-bits = –
what-if-row-read = { "                                 " }in Wahrheit: { $read }
what-if-row-outcome = { "                                 " }{ $chance } %: { $belief }
what-if-more = … und { $count } weitere; --all zeigt sie.
what-if-made = { $count ->
    [one] Eine Prüfung war schon gemacht und hätte
   *[other] { $count } Prüfungen waren schon gemacht und hätten
} dasselbe gezeigt.
what-if-refused = { $step } war damals nicht möglich. { $why }

course-title = Wie wahrscheinlich jeder Verdacht nach Lage der Beweise war, vor dem ersten Schritt und nach jedem (ein voller Block ist 100 %):
course-truth = { $fault } (das war es)
course-other = { $fault }
course-others = alles andere
course-percent = { $chance } %
course-dearer = ! bezeichnet Schritte, von denen gezeigt ist, dass sie mehr kosteten als das Beste.

debrief-lessons = Nächstes Mal am meisten wert:
debrief-no-lessons = Nichts mitzunehmen, als dass es gut lief: Von keinem Schritt ist gezeigt, dass er mehr kostete als nötig, und kein Punkt ging verloren, der eine Lehre wert wäre.
lesson-line = { $number }. { $title } – { $cost }.
lesson-next = { "   " }Nächstes Mal: { $advice }
lesson-steps = { $count ->
    [one] Schritt { $steps }
   *[other] Schritte { $steps }
}
lesson-money = voraussichtlich { $money } mehr als das Beste
lesson-points = { $points } Punkte
lesson-critical = und schon das allein lässt die Sitzung durchfallen

lesson-ran-dry = Der Motor lief ohne Öl
next-ran-dry = Zieh den Ölmessstab, bevor der Motor zum ersten Mal läuft, und füll zuerst auf, wenn er trocken ist.
lesson-still-there = Das Fahrzeug ging mit einem Fehler zurück, der noch da war
next-still-there = Fahr nach einer Reparatur die Straße, auf der dem Kunden der Mangel auffiel, und such nach einer zweiten Ursache, wenn ein Fehlercode oder das Symptom noch da ist.
lesson-not-proved = Die Reparatur wurde nicht nachgewiesen
next-not-proved = Notiere Fehlercodes und Umgebungsdaten, lösche, lies bei Zündung ein noch einmal aus, fahr, bis die Überwachungen gelaufen sind, und lies ein letztes Mal aus.
lesson-not-reported = Ein Fehlercode von anderswo wurde gelöscht, und der Kunde erfuhr nichts davon
next-not-reported = Melde vor der Übergabe jeden Fehlercode, der nicht zum Auftrag gehört, oder lass ihn stehen, wo der Nächste ihn findet.
lesson-part-unfounded = Ein Teil wurde eingebaut, für das die Beweise nicht sprachen
next-part-unfounded = Nenne den Messwert, der das Teil selbst belastet, bevor du es bestellst; kannst du das nicht, mach die Prüfung, die es täte.
lesson-repaired-early = Eine Reparatur wurde begonnen, bevor klar war, was zu reparieren ist
next-repaired-early = Frag dich, welche andere Ursache bis jetzt dasselbe gezeigt hätte, und mach die eine Prüfung, die beide trennt.
lesson-dearer-repair = Eine teurere Reparatur wurde gemacht, wo eine billigere sehr wahrscheinlich geholfen hätte
next-dearer-repair = Versuch zuerst die billigere Reparatur, wenn derselbe Nachweis zeigt, ob sie geholfen hat.
lesson-repeated = Ein Messwert wurde aufgenommen, der schon aufgenommen war
next-repeated = Schreib jeden Messwert auf; an einem Fahrzeug, das niemand angefasst hat, wird er wieder derselbe sein.
lesson-told-nothing = Prüfungen wurden gemacht, die nichts verraten konnten
next-told-nothing = Sag vor einer Prüfung, was jeder verbliebene Verdacht zeigen würde; wo alle dasselbe zeigten, wähle eine andere Prüfung.
lesson-tested-on = Es wurde weitergeprüft, als die Beweise reichten
next-tested-on = Wenn eine Prüfung mehr nicht ändern würde, was du reparierst, dann reparier und weise es nach.
lesson-opened-soon = Etwas wurde vor der Zeit zerlegt
next-opened-soon = Nutze aus, was sich fragen, ansehen und von außen messen lässt, bevor eine Abdeckung oder ein Stecker abkommt.
lesson-skipped-near = Eine teurere Prüfung wurde gemacht, wo eine andere für ihre Kosten mehr verraten hätte
next-skipped-near = Geh vom Nahen und Billigen zum Fernen und Teuren, und wäge ab, was eine Prüfung verraten kann, gegen ihre Minuten.
lesson-opened-twice = Dasselbe Teil wurde zweimal ausgebaut
next-opened-twice = Erledige alles hinter einer Abdeckung, solange sie weg ist; mach eine Liste, bevor du schließt.
lesson-spoilt = Messwerte wurden so aufgenommen, dass sie verdorben sind
next-spoilt = Widerstand bei Zündung aus und getrenntem Stecker, Strombereich nie direkt an eine Spannungsquelle.
lesson-not-foretold = Messwerte wurden nicht vorhergesagt
next-not-foretold = Sag vor dem Hinsehen, was ein heiles Teil zeigen würde; ein Messwert, der dich überrascht, ist doppelt so viel wert.
lesson-confidence = Die Liste der Verdachte folgte den Beweisen nicht
next-confidence = Setz Verdachte auf die Liste, sobald du welche hast, und ändere die Zahlen mit jedem Messwert, bevor du dich festlegst.
lesson-care = Eine Regel der Sorgfalt oder Sicherheit wurde gebrochen
next-care = Zündung aus, bevor ein Stecker getrennt wird, neue Dichtringe, Freigabe vor Teilen, nichts bleibt ausgebaut.
lesson-not-written = Die Dokumentation ist nicht vollständig
next-not-written = Schreib Beanstandung, Ursache und Abhilfe auf; wer als Nächster diese Motorhaube öffnet, liest sie.

report-title = Nachbesprechung: { $title }
report-marks = Punkte
report-course = Wie sich die Vermutung bewegte
report-course-how = Wie wahrscheinlich jeder Verdacht nach Lage der Beweise war, vor dem ersten Schritt und nach jedem.
report-dearer = Ein Dreieck unter dem Feld bezeichnet einen Schritt, von dem gezeigt ist, dass er mehr kostete als das Beste.
report-regrets = Was die Schritte verschenkten
report-regrets-how = Ein voller Balken ist, was ein Schritt erwiesenermaßen und im Erwartungswert mehr kostete als das Beste; der Rahmen ist, was nicht ausgeschlossen ist. Wo der Rahmen gestrichelt ist, lässt sich nichts sagen, und nichts zählt.
report-not-told = lässt sich nicht sagen
report-step = Schritt { $number }
report-head-number = Nr.
report-head-step = Schritt
report-head-cost = Kosten
report-head-compared = Gegen das Beste
report-head-best = Das Beste, und was dieser Schritt verraten konnte
report-head-known = Was gelernt wurde
report-moved = { $before } → { $after }
report-program = Faultwright { $version }. Erwartungen gelten im Modell, das der Experte von diesem Fahrzeug hat.
