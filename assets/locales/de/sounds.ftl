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

## Fenster

sound-heard = Zu hören: { $sounds }.
sound-again = Schritt { $number } noch einmal hören
sound-volume = Ton
sound-quiet = Leise
sound-medium = Mittel
sound-loud = Laut
sound-mute = Stumm
sound-no-server = Kein Tonserver oder Tongerät antwortet, deshalb ist nichts zu hören. Was zu hören wäre, steht geschrieben und gezeichnet bei seinem Schritt.
sound-refused = Der Tonserver oder das Tongerät nimmt unseren Ton nicht an, deshalb ist nichts zu hören. Beim nächsten Ton wird wieder gefragt.
sound-lost = Der Tonserver oder das Tongerät ist verschwunden. Beim nächsten Ton wird wieder gesucht.
sound-not-built = Dieses Programm hat auf diesem System keinen Weg, Ton auszugeben. Was zu hören wäre, steht geschrieben und gezeichnet bei seinem Schritt.
