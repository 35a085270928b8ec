//! Any bytes as a scenario and its vehicle, parted by the first zero byte; without one they are a scenario on the vehicle of
//! the scenario that is taken where none is named.
#![no_main]

use faultwright::scenario::load::{ScenarioText, read_bytes};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let mut parts = bytes.splitn(2, |byte| *byte == 0);
    let scenario = parts.next().unwrap_or_default().to_vec();
    let vehicle =
        parts.next().map_or_else(|| ScenarioText::demo().vehicle_text.into_bytes(), <[u8]>::to_vec);
    let _ = read_bytes(scenario, vehicle);
});
