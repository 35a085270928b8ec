### Geräusche der Werkstatt in Worten. Wie ein Klicken klingt, steht bei den Ereignissen.

## Bildunterschriften

sound-then = { $before }, dann { $after }
sound-starter = Starter
sound-starter-labours = Starter, der zu langsam oder gar nicht dreht
sound-idle-even = gleichmäßiger Leerlauf des Motors
sound-idle-rough = unrunder Leerlauf des Motors
sound-stall = Motor geht aus
sound-held = Motor bei gehaltenen { $rpm } 1/min
sound-road = Motor zieht auf der Straße durch
sound-road-rough = unrunder Motorlauf auf der Straße
sound-run-down = Motor läuft aus
