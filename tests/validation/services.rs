//! The services of the diagnostic plug: bytes of a reply and what they say.

use super::area::Area;
use super::row::{Evidence, Ours, Row, Wanted};
use super::sources::{self, Source};
use faultwright::control_module::services::parameter::{self, Parameter};
use faultwright::control_module::services::{Service, reply};

/// The value that a reply with one parameter tells.
fn told(reply_bytes: &[u8]) -> f64 {
    let data = reply::data(Service::CurrentData, reply_bytes).expect("a positive reply");
    let values = parameter::values(Service::CurrentData, data).expect("parameters");
    *values.values().next().expect("a value")
}

pub fn area() -> Area {
    let value = |item, source: &'static Source, published, ours, unit, decimals, evidence| Row {
        item,
        source,
        wanted: Wanted::Value(published, 1e-9),
        ours: Ours::Value(ours),
        unit,
        decimals,
        reason: "exact",
        evidence,
    };
    let mut rows = vec![
        value(
            "reply 41 0C 0E 70",
            &sources::J1979_RPM,
            924.0,
            told(&[0x41, 0x0C, 0x0E, 0x70]),
            "rpm",
            2,
            Evidence::WorkedExample,
        ),
        value(
            "reply 41 05 3C",
            &sources::J1979_COOLANT,
            20.0,
            told(&[0x41, 0x05, 0x3C]),
            "°C",
            0,
            Evidence::WorkedExample,
        ),
    ];
    for (item, parameter, most, unit, decimals) in [
        ("greatest load", Parameter::Load, 100.0, "%", 1),
        ("greatest coolant temperature", Parameter::Coolant, 215.0, "°C", 0),
        ("greatest engine speed", Parameter::EngineSpeed, 16_383.75, "rpm", 2),
        ("greatest vehicle speed", Parameter::VehicleSpeed, 255.0, "km/h", 0),
    ] {
        let ours = parameter.decode(&vec![0xFF; parameter.width()]).expect("a value");
        rows.push(value(
            item,
            &sources::J1979_TABLE,
            most,
            ours,
            unit,
            decimals,
            Evidence::Published,
        ));
    }
    for (item, parameter, bytes, published, unit, decimals) in [
        ("module voltage of 31 38", Parameter::ModuleVoltage, [0x31, 0x38], 12.6, "V", 3),
        ("module voltage of 37 DC", Parameter::ModuleVoltage, [0x37, 0xDC], 14.3, "V", 3),
        ("run time of 01 00", Parameter::RunTime, [0x01, 0x00], 256.0, "s", 0),
        ("distance of 00 05", Parameter::DistanceSinceClear, [0x00, 0x05], 5.0, "km", 0),
    ] {
        let ours = parameter.decode(&bytes).expect("a value");
        rows.push(value(
            item,
            &sources::J1979_MEMORY,
            published,
            ours,
            unit,
            decimals,
            Evidence::Memory,
        ));
    }
    Area {
        title: "Diagnostic services",
        calls: "`control_module::services::parameter::values`, \
                `control_module::services::parameter::Parameter::decode`",
        note: "",
        rows,
    }
}
