### Namen von Orten und Fehlern. Ein Ort ohne Nachricht erscheint mit seinen eigenen Worten.

place-engine-bay = Motorraum
place-sump = Ölwanne
place-dipstick = Ölmessstab
place-battery-plus = Batterie-Pluspol
place-battery-minus = Batterie-Minuspol
place-intake-valve = Steuerventil Einlass
place-exhaust-valve = Steuerventil Auslass

## Teile, Leitungen und Prüfpunkte der mitgelieferten Fahrzeuge

place-air-duct = Luftansaugrohr
place-alternator = Generator
place-battery = Batterie
place-battery-cable = Batteriekabel
place-duct-clamp = Schlauchschelle
place-engine-cover = Motorabdeckung
place-engine-ground = Motormasse
place-exhaust-connector = Stecker Auslass
place-exhaust-control-pin = Steuerkontakt Auslass
place-exhaust-control-wire = Steuerleitung Auslass
place-exhaust-feed-pin = Pluskontakt Auslass
place-exhaust-feed-wire = Plusleitung Auslass
place-exhaust-harness-control = Kabelbaumseite Steuerung Auslass
place-exhaust-harness-feed = Kabelbaumseite Plus Auslass
place-exhaust-module-control = Steuergeräteausgang Auslass
place-exhaust-valve-control = Ventilseite Steuerung Auslass
place-exhaust-valve-feed = Ventilseite Plus Auslass
place-feed-wire = Plusleitung der Steuerventile
place-fuse-box = Sicherungskasten
place-fuse-box-lid = Deckel des Sicherungskastens
place-ground-strap = Masseband
place-heat-shield = Hitzeschutzblech
place-intake-connector = Stecker Einlass
place-intake-control-pin = Steuerkontakt Einlass
place-intake-control-wire = Steuerleitung Einlass
place-intake-feed-pin = Pluskontakt Einlass
place-intake-feed-wire = Plusleitung Einlass
place-intake-harness-control = Kabelbaumseite Steuerung Einlass
place-intake-harness-feed = Kabelbaumseite Plus Einlass
place-intake-module-control = Steuergeräteausgang Einlass
place-intake-valve-control = Ventilseite Steuerung Einlass
place-intake-valve-feed = Ventilseite Plus Einlass
place-module-cover = Abdeckung des Steuergeräts
place-module-feed-wire = Plusleitung des Steuergeräts
place-module-fuse = Sicherung des Steuergeräts
place-module-ground-wire = Masseleitung des Steuergeräts
place-module-relay = Relais des Steuergeräts
place-starter = Starter
place-valve-fuse = Sicherung der Steuerventile
place-valve-fuse-out = Ausgang der Ventilsicherung
place-valve-relay = Relais der Steuerventile

## Straßen

place-car-park-loop = Runde auf dem Parkplatz
place-cold-start-short-run = Kurzstrecke nach Kaltstart
place-customers-road = Straße des Kunden
place-hill = Bergstrecke
place-motorway = Autobahn
place-proving-drive = Nachweisfahrt
place-test-hill = Prüfberg
place-town = Stadtverkehr
place-town-loop = Stadtrunde

## Fehler

fault-at = { $kind }, { $place }
fault-none = kein Fehler gefunden
fault-open-coil = Wicklung unterbrochen
fault-partly-broken-coil = Wicklung teilweise unterbrochen
fault-poor-joint = schlechte Verbindung in der Wicklung
fault-shorted-turns = Windungsschluss
fault-sticking-spool = klemmender Steuerkolben
fault-blocked-screen = verstopftes Filtersieb
fault-corroded-pin = korrodierter Kontakt
fault-spread-terminal = aufgeweiteter Kontakt
fault-loose-contact = Wackelkontakt, der beim Rütteln öffnet
fault-hot-contact = Kontakt, der bei Hitze öffnet
fault-broken-wire = Leitungsunterbrechung
fault-wire-to-ground = durchgescheuerte Leitung mit Masseschluss
fault-wire-to-supply = durchgescheuerte Steuerleitung mit Schluss nach Plus
fault-chafed-feed = durchgescheuerte Plusleitung, Sicherung durchgebrannt
fault-blown-fuse = durchgebrannte Sicherung, Ursache nicht mehr da
fault-resistive-relay = verbrannter Relaiskontakt
fault-low-oil = zu wenig Öl
fault-worn-out-oil = verbrauchtes Öl
fault-fuel-in-oil = Kraftstoff im Öl
fault-wrong-oil = falsche Ölsorte
