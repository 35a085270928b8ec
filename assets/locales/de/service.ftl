### Werkstattinformation, aus den Daten des Fahrzeugs aufgebaut.

service-wiring = Stromlaufplan. Spannungen zählen vom Minuspol der Batterie aus. Die Namen sind die, mit denen die Schritte die Dinge nennen.
service-test-points = Prüfpunkte:
service-limits = Sollwerte
service-procedure = Arbeitsanleitung, in der Reihenfolge des Ausbaus
service-parts = Teile und Preise
service-codes-circuit = Fehlercodes des Stromkreises werden überwacht, sobald die Zündung ein ist, und kommen sofort wieder, solange der Fehler da ist:
service-codes-performance = Fehlercodes der Funktion fallen nur bei einer Fahrt mit warmem Öl, bei der sich die Nockenwellen verstellen, und nicht, solange ein Fehlercode des Stromkreises ansteht:
service-codes-kinds = Ein vorläufiger Fehlercode wurde einmal erkannt, ein gespeicherter ist bestätigt. Ein permanenter Fehlercode bleibt, was immer du löschst, bis seine Überwachung gelaufen und bestanden ist.
service-closing = Die Anleitung des Fahrzeugherstellers und die örtlichen Vorschriften gehen dieser Seite vor.

wiring-battery = {"  "}{ $id }: Batterie, Plus an { $from }, Minus an { $to }
wiring-starter = {"  "}{ $id }: Starter, Versorgung an { $from }, Gehäuse an { $to }
wiring-alternator = {"  "}{ $id }: Generator, Ausgang an { $from }, Gehäuse an { $to }
wiring-wire = {"  "}{ $id }: Leitung von { $from } nach { $to }
wiring-cable = {"  "}{ $id }: Leitung von { $from } nach { $to }, { $metres } m mit { $section } mm²
wiring-fuse = {"  "}{ $id }: Sicherung { $rating } A von { $from } nach { $to }
wiring-relay = {"  "}{ $id }: Relaiskontakt, bei Zündung ein geschlossen, von { $from } nach { $to }
wiring-pin = {"  "}{ $id }: Kontakt von { $connector }, Kabelbaumseite { $from }, Bauteilseite { $to }
wiring-coil = {"  "}{ $id }: Wicklung von { $valve }, Plusseite { $from }, Steuerseite { $to }
wiring-driver = {"  "}{ $id }: Endstufe von { $valve } im Steuergerät, schaltet { $from } nach { $to }
wiring-driver-high = {"  "}{ $id }: High-Side-Endstufe von { $valve } im Steuergerät, schaltet { $from } nach { $to }; die andere Leitung des Ventils liegt immer an Masse
wiring-module = {"  "}{ $id }: Steuergerät, Versorgung { $from }, Masse { $to }, 5-V-Spannung { $rail }
wiring-load = {"  "}{ $id }: übrige Verbraucher von { $from } nach { $to }

test-point = {"  "}{ $id }: an { $node }
test-point-behind = , hinter { $parts }
test-point-unplugged = , wenn { $connector } abgesteckt ist

limit-winding = {"  "}{ $number } ({ $places }): Wicklung { $least } bis { $most } Ω bei 20 °C
limit-copper = {"  "}Kupfer gewinnt { $percent } % je Grad über 20 °C. Nimm beide Grenzen mal { $here } bei { $workshop } °C in der Werkstatt, mal { $then } bei { $warm } °C am warmen Motor.
limit-leads = {"  "}Die Messleitungen haben selbst etwa { $ohms } Ω: Nulle sie zuerst. Widerstand nur bei Zündung aus und mit beiden Enden frei.
limit-battery = {"  "}Batterie in Ruhe: { $charged } V oder mehr, wenn gut geladen, { $half } V, wenn halb leer. Ladespannung, Motor warm: { $least } bis { $most } V.
limit-drops = {"  "}Spannungsfall unter Last: bis { $contact } V an einem Kontakt, { $wire } V an einer Leitung oder einem Schalter, { $side } V an einer ganzen Seite eines Stromkreises.
limit-control = {"  "}Ventil abgesteckt, Zündung ein: Batteriespannung an der Plusleitung, etwa { $volts } V vom Steuergerät an der Steuerleitung.
limit-power = {"  "}Fremdspannung an einem Ventil: höchstens { $seconds } s, abgesteckt, über eine abgesicherte Leitung, Rot an den Pluspin.
limit-no-power = {"  "}Fremdspannung an einem Ventil ist verboten.
limit-oil = {"  "}Öl: { $full } l bis zur oberen Marke, { $between } l zwischen den Marken. Auf ebenem Boden. Die Marken gelten für kaltes Öl, das abgelaufen ist: Kurz nach einem Lauf zeigt der Messstab zu wenig, und heißes Öl bis zu einem Viertel des Abstands zu viel.
limit-oil-grade = {"  "}Ölsorte { $grade }: { $least } bis unter { $below } mm²/s bei 100 °C, Viskositätsindex etwa { $index }.
limit-oil-pressure = {"  "}Öldruck, warm: mindestens { $idle } bar im Leerlauf und { $thousand } bar je 1000 1/min; Zeiger ruhig. Die Leuchte geht unter { $lamp } bar an.

procedure-part = {"  "}{ $id }: Ausbau { $remove }, Einbau { $refit }
procedure-behind = {"    "}Zuerst ausbauen: { $parts }.
procedure-care = {"    "}{ $care }
procedure-torque = {"    "}Mit { $torque } N m anziehen.
procedure-refitting = {"  "}Alles kommt in umgekehrter Reihenfolge wieder hinein. Lass dann den Motor laufen und such nach Undichtigkeiten.

care-key-off = Zündung aus vor dem Anfassen.
care-break-seal-loose = Den Dichtring durch Hin- und Herdrehen lösen, bevor das Teil herausgezogen wird.
care-new-seal = Bei jedem Einbau ein neuer, geölter Dichtring.
care-torque = Drehmomentschlüssel benutzen.
care-hot = Heiß nach einem Lauf: abkühlen lassen oder die Hände schützen.

part-valve = {"  "}{ $number }: Ventil für { $places }, { $price }
part-valve-waits = {"  "}{ $number }: Ventil für { $places }, { $price }, da in { $time }
part-pattern = {"  "}{ $number }: Nachbauteil statt { $instead }, { $price }{ $wait }
part-used = {"  "}{ $number }: Gebrauchtteil statt { $instead }, { $price }{ $wait }
part-wait = , da in { $time }
part-waiting = Das Warten auf ein Teil blockiert den Arbeitsplatz: { $price } je Stunde. Gebrauchtteile kommen, wie sie ausgebaut wurden; sieh sie dir vor dem Einbau an.
part-seal = {"  "}Dichtring eines Ventils: { $price }
part-oil = {"  "}Öl, ein Liter: { $price }
part-oil-filter = {"  "}Ölfilter: { $price }
part-cleaning = {"  "}Reinigungsmittel für ein Ventil: { $price }
part-mending = {"  "}Material, um einen Kontakt oder eine Leitung instand zu setzen: { $price }
part-labour = {"  "}Arbeitszeit, eine Stunde: { $price }
price-unknown = Preis auf Anfrage
