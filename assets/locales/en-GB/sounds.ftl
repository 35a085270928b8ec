### Sounds of the workshop in words, and what the window says about its sound. What a click sounds like stands with the events.

## Captions

sound-then = { $before }, then { $after }
sound-starter = starter
sound-starter-labours = starter that turns too slowly or not at all
sound-idle-even = the engine idling evenly
sound-idle-rough = the engine idling roughly
sound-stall = the engine stalling
sound-held = the engine held at { $rpm } rpm
sound-road = the engine pulling on the road
sound-road-rough = the engine running roughly on the road
sound-run-down = the engine running down

## Window

sound-heard = Heard: { $sounds }.
sound-again = Hear step { $number } again
sound-volume = Sound
sound-quiet = Quiet
sound-medium = Medium
sound-loud = Loud
sound-mute = Mute
sound-no-server = No sound server or device answers, so nothing is heard. What would be is written and drawn beside its step.
sound-refused = The sound server or device does not take our sound, so nothing is heard. The next sound asks again.
sound-lost = The sound server or device went away. The next sound looks for it again.
sound-not-built = This program has no way out for sound on this system. What would be heard is written and drawn beside its step.
