### Sounds of the workshop in words. What a click sounds like stands with the events.

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
