### Service information, built from the data of the vehicle.

service-wiring = Wiring. Voltages count from the battery's negative post. Names are those by which steps call things.
service-test-points = Test points:
service-limits = Limits
service-procedure = Procedure, in the order in which parts come off
service-parts = Parts and prices
service-codes-circuit = Circuit codes are watched whenever the key is on, and come straight back while the fault is there:
service-codes-performance = Performance codes are decided only on a drive with warm oil in which the camshafts move, and not while a circuit code stands:
service-codes-kinds = A pending code was seen once, a stored code is confirmed. A permanent code stays, whatever you clear, until its monitor has run and passed.
service-closing = The vehicle maker's procedure and local rules come before this page.

wiring-battery = {"  "}{ $id }: battery, plus at { $from }, minus at { $to }
wiring-starter = {"  "}{ $id }: starter, supply at { $from }, housing at { $to }
wiring-alternator = {"  "}{ $id }: alternator, output at { $from }, housing at { $to }
wiring-wire = {"  "}{ $id }: wire from { $from } to { $to }
wiring-cable = {"  "}{ $id }: wire from { $from } to { $to }, { $metres } m of { $section } mm²
wiring-fuse = {"  "}{ $id }: fuse { $rating } A from { $from } to { $to }
wiring-relay = {"  "}{ $id }: relay contact, closed with the key on, from { $from } to { $to }
wiring-pin = {"  "}{ $id }: contact of { $connector }, harness side { $from }, component side { $to }
wiring-coil = {"  "}{ $id }: winding of { $valve }, feed side { $from }, control side { $to }
wiring-driver = {"  "}{ $id }: driver of { $valve } in the module, switches { $from } to { $to }
wiring-driver-high = {"  "}{ $id }: high-side driver of { $valve } in the module, switches { $from } to { $to }; the valve's other wire leads to ground all the time
wiring-module = {"  "}{ $id }: control module, supply { $from }, ground { $to }, 5 V rail { $rail }
wiring-load = {"  "}{ $id }: other consumers from { $from } to { $to }

test-point = {"  "}{ $id }: at { $node }
test-point-behind = , behind { $parts }
test-point-unplugged = , with { $connector } unplugged

limit-winding = {"  "}{ $number } ({ $places }): winding { $least } to { $most } Ω at 20 °C
limit-copper = {"  "}Copper gains { $percent } % for each degree above 20 °C. Multiply both limits by { $here } at the workshop's { $workshop } °C, by { $then } at { $warm } °C in a warm engine.
limit-leads = {"  "}The meter's leads have about { $ohms } Ω themselves: zero them first. Ohms only with the key off and both ends free.
limit-battery = {"  "}Battery at rest: { $charged } V or more when well charged, { $half } V half empty. Charging, warm engine: { $least } to { $most } V.
limit-drops = {"  "}Voltage drop under load: up to { $contact } V for a contact, { $wire } V for a wire or switch, { $side } V for one whole side of a circuit.
limit-control = {"  "}Valve unplugged, key on: battery voltage on the feed, about { $volts } V from the module on the control wire.
limit-power = {"  "}Voltage from outside on a valve: { $seconds } s at most, unplugged, through a fused lead, red to the feed pin.
limit-no-power = {"  "}Voltage from outside on a valve is forbidden.
limit-oil = {"  "}Oil: { $full } l to the upper mark, { $between } l between the marks. Level ground. The marks hold for cold oil that has run down: soon after a run the stick reads low, and hot oil reads up to a quarter of the span too high.
limit-oil-grade = {"  "}Oil grade { $grade }: { $least } to below { $below } mm²/s at 100 °C, viscosity index about { $index }.
limit-oil-pressure = {"  "}Oil pressure, warm: at least { $idle } bar at idle and { $thousand } bar for each 1000 rpm; needle steady. The lamp lights below { $lamp } bar.

procedure-part = {"  "}{ $id }: off { $remove }, back { $refit }
procedure-behind = {"    "}Take off first: { $parts }.
procedure-care = {"    "}{ $care }
procedure-torque = {"    "}Tighten to { $torque } N m.
procedure-refitting = {"  "}Everything goes back in reverse order. Run the engine then and look for leaks.

care-key-off = Key off before it is touched.
care-break-seal-loose = Break the seal loose by turning the part to and fro before it is drawn out.
care-new-seal = A new seal, oiled, at every refit.
care-torque = Use a torque wrench.
care-hot = Hot after a run: let it cool or protect your hands.

part-valve = {"  "}{ $number }: valve for { $places }, { $price }
part-valve-waits = {"  "}{ $number }: valve for { $places }, { $price }, here in { $time }
part-pattern = {"  "}{ $number }: pattern part instead of { $instead }, { $price }{ $wait }
part-used = {"  "}{ $number }: used part instead of { $instead }, { $price }{ $wait }
part-wait = , here in { $time }
part-waiting = Waiting for a part blocks the bay: { $price } an hour. Used parts come as they were taken out; look at them before they go in.
part-seal = {"  "}Valve seal: { $price }
part-oil = {"  "}Oil, a litre: { $price }
part-oil-filter = {"  "}Oil filter: { $price }
part-cleaning = {"  "}Cleaning fluid for one valve: { $price }
part-mending = {"  "}Material to mend a contact or a wire: { $price }
part-labour = {"  "}Labour, an hour: { $price }
price-unknown = price on request
