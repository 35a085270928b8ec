use super::*;
use crate::control_module::driver_side::DriverSide;
use crate::control_module::freeze_frame::FreezeFrame;
use crate::control_module::known_code::{PastCode, PastState};
use crate::units::{Celsius, KilometresPerHour, Rpm, Volts};

const INTAKE: DriverCodes = DriverCodes {
    open: Code(0x0010),
    low: Code(0x2088),
    high: Code(0x2089),
    side: DriverSide::Low,
};

fn setup() -> ModuleSetup {
    ModuleSetup {
        known: [0x0010, 0x2088, 0x2089, 0x0011, 0x0442]
            .map(|code| KnownCode::general(Code(code)))
            .to_vec(),
        drivers: vec![INTAKE],
        limits: CircuitLimits::default(),
        supply: None,
        oil_pressure: None,
        present_elsewhere: Vec::new(),
        history: History::default(),
    }
}

fn past(code: u16, has_frame: bool) -> PastCode {
    let frame = FreezeFrame {
        engine_speed: Rpm(700.0),
        load: 0.2,
        coolant: Celsius(90.0),
        oil: Celsius(90.0),
        vehicle_speed: KilometresPerHour(0.0),
        supply: Volts(14.0),
        battery: Volts(14.1),
    };
    PastCode {
        code: Code(code),
        state: PastState::Pending,
        freeze_frame: has_frame.then_some(frame),
    }
}

#[test]
fn limit_sound_data_passes_and_survives_a_file() {
    let mut setup = setup();
    setup.history.codes = vec![past(0x0442, true), past(0x0011, false)];
    assert_eq!(setup.check(), Ok(()));
    let text = serde_json::to_string(&setup).unwrap();
    assert_eq!(serde_json::from_str::<ModuleSetup>(&text).unwrap(), setup);
    let extra = text.replacen('{', "{\"surplus\":1,", 1);
    assert!(serde_json::from_str::<ModuleSetup>(&extra).is_err());
}

#[test]
fn limit_each_contradiction_is_named() {
    type Spoil = fn(&mut ModuleSetup);
    let code = Code(0x0442);
    let cases: [(Spoil, SetupFault); 8] = [
        (
            |setup| setup.limits.open_from_ratio = 0.5,
            SetupFault::Limits(LimitFault { field: "open_from_ratio", expected: "above 1" }),
        ),
        (
            |setup| setup.known.push(KnownCode::general(Code(0x0442))),
            SetupFault::ListedTwice { code },
        ),
        (
            |setup| setup.known[4].silenced_by = Some(Driver(1)),
            SetupFault::NoSuchDriver { code, driver: Driver(1), drivers: 1 },
        ),
        (
            |setup| setup.known.retain(|known| known.code != INTAKE.low),
            SetupFault::NotListed { code: INTAKE.low, user: "drivers" },
        ),
        (
            |setup| setup.history.undecided.push(Code(0x0420)),
            SetupFault::NotListed { code: Code(0x0420), user: "history.undecided" },
        ),
        (
            |setup| setup.drivers.push(DriverCodes { open: Code(0x0011), ..INTAKE }),
            SetupFault::SharedCircuitCode { code: INTAKE.low },
        ),
        (
            |setup| setup.history.codes = vec![past(0x0442, false), past(0x0442, false)],
            SetupFault::ListedTwice { code },
        ),
        (
            |setup| setup.history.codes = vec![past(0x0442, true), past(0x0011, true)],
            SetupFault::TwoFreezeFrames { first: code, second: Code(0x0011) },
        ),
    ];
    for (spoil, fault) in cases {
        let mut setup = setup();
        spoil(&mut setup);
        assert_eq!(setup.check(), Err(fault.clone()), "{fault}");
    }
}
