//! Figures of the module's monitors.

use crate::control_module::circuit_limits::CircuitLimits;
use crate::control_module::oil_pressure_monitor::OilPressureLimits;
use crate::control_module::performance_limits::PerformanceLimits;
use crate::control_module::supply_monitor::SupplyLimits;
use crate::scenario::findings::Findings;
use crate::scenario::problem::ProblemKind;
use crate::vehicle::spec::VehicleSpec;

const RPM: (f64, f64) = (0.0, 9_000.0);
const VOLTS: (f64, f64) = (0.0, 32.0);
const CELSIUS: (f64, f64) = (-40.0, 200.0);
const DEGREES: (f64, f64) = (0.1, 60.0);
const SECONDS: (f64, f64) = (0.01, 3_600.0);
const FROM_ZERO_S: (f64, f64) = (0.0, 3_600.0);
const MILLISECONDS: (f64, f64) = (1.0, 3_600_000.0);
const FROM_ZERO_MS: (f64, f64) = (0.0, 3_600_000.0);
/// A share that is neither nothing nor all.
const SHARE: (f64, f64) = (0.01, 0.99);
const BARS: (f64, f64) = (0.0, 20.0);

/// A figure: its name, value and range.
type Figure = (&'static str, f64, (f64, f64));
/// Two figures of which the first must be below the second: the name of the second, both values.
type Order = (&'static str, f64, f64);

/// Checks every figure of the monitors.
pub(super) fn check(findings: &mut Findings<'_>, spec: &VehicleSpec) {
    let monitors = &spec.module.monitors;
    circuit(findings, &monitors.circuit);
    camshaft(findings, &monitors.camshaft);
    if let Some(limits) = &monitors.supply {
        supply(findings, limits);
    }
    if let Some(limits) = &monitors.oil_pressure {
        oil_pressure(findings, limits);
    }
}

/// Notes what is outside its range, and, where nothing is, what is in the wrong order.
fn note(findings: &mut Findings<'_>, section: &str, figures: &[Figure], orders: &[Order]) {
    let path = |field: &str| format!("vehicle.module.monitors.{section}.{field}");
    let mut is_sound = true;
    for (field, value, range) in figures {
        findings.number(&path(field), *value, *range);
        is_sound &= (range.0..=range.1).contains(value);
    }
    for (field, first, second) in orders.iter().filter(|_| is_sound) {
        if first >= second {
            let kind = ProblemKind::WrongOrder { first: *first, second: *second };
            findings.add(&path(field), kind);
        }
    }
}

fn circuit(findings: &mut Findings<'_>, limits: &CircuitLimits) {
    let pulse = &limits.key_on_pulse;
    let figures = [
        ("low_below", limits.low_below.0, (0.1, 5.0)),
        ("open_below", limits.open_below.0, (0.1, 5.0)),
        ("off_read_up_to_duty", limits.off_read_up_to_duty, SHARE),
        ("current_read_from_duty", limits.current_read_from_duty, SHARE),
        ("rest_of_loop", limits.rest_of_loop.0, (0.0, 100.0)),
        ("open_from_ratio", limits.open_from_ratio, (1.1, 1_000.0)),
        ("high_below_ratio", limits.high_below_ratio, SHARE),
        ("pulled_down_ratio", limits.pulled_down_ratio, SHARE),
        ("supply_from", limits.supply_from.0, (5.0, 32.0)),
        ("supply_to", limits.supply_to.0, (5.0, 32.0)),
        ("debounce_ms", limits.debounce_ms as f64, FROM_ZERO_MS),
        ("mature_ms", limits.mature_ms as f64, MILLISECONDS),
        ("key_on_pulse.delay_ms", pulse.delay_ms as f64, FROM_ZERO_MS),
        ("key_on_pulse.duration_ms", pulse.duration_ms as f64, MILLISECONDS),
        ("key_on_pulse.rest_ms", pulse.rest_ms as f64, FROM_ZERO_MS),
        ("key_on_pulse.duty", pulse.duty, SHARE),
    ];
    let orders = [
        ("open_below", limits.low_below.0, limits.open_below.0),
        ("off_read_up_to_duty", limits.current_read_from_duty, limits.off_read_up_to_duty),
        ("supply_to", limits.supply_from.0, limits.supply_to.0),
        ("key_on_pulse.duty", limits.current_read_from_duty, pulse.duty),
        ("off_read_up_to_duty", pulse.duty, limits.off_read_up_to_duty),
    ];
    note(findings, "circuit", &figures, &orders);
}

fn camshaft(findings: &mut Findings<'_>, limits: &PerformanceLimits) {
    let figures = [
        ("least_rpm", limits.least_rpm, RPM),
        ("least_oil_c", limits.least_oil_c, CELSIUS),
        ("most_oil_c", limits.most_oil_c, CELSIUS),
        ("least_supply_v", limits.least_supply_v, VOLTS),
        ("most_supply_v", limits.most_supply_v, VOLTS),
        ("off_target_deg", limits.off_target_deg, DEGREES),
        ("error_filter_s", limits.error_filter_s, FROM_ZERO_S),
        ("off_target_s", limits.off_target_s, SECONDS),
        ("hunting_deg", limits.hunting_deg, DEGREES),
        ("hunting_share", limits.hunting_share, SHARE),
        ("hunting_memory_s", limits.hunting_memory_s, SECONDS),
        ("settle_s", limits.settle_s, FROM_ZERO_S),
        ("held_target_deg", limits.held_target_deg, DEGREES),
        ("held_s", limits.held_s, SECONDS),
        ("step_deg", limits.step_deg, DEGREES),
        ("step_share", limits.step_share, SHARE),
        ("slow_s", limits.slow_s, SECONDS),
        ("step_limit_s", limits.step_limit_s, SECONDS),
        ("least_move_deg", limits.least_move_deg, (0.0, 60.0)),
        ("slow_least_oil_c", limits.slow_least_oil_c, CELSIUS),
        ("slow_steps", f64::from(limits.slow_steps), (1.0, 6.0)),
        ("rest_error_deg", limits.rest_error_deg, DEGREES),
        ("rest_s", limits.rest_s, SECONDS),
    ];
    let orders = [
        ("most_oil_c", limits.least_oil_c, limits.most_oil_c),
        ("most_supply_v", limits.least_supply_v, limits.most_supply_v),
        ("step_limit_s", limits.slow_s, limits.step_limit_s),
        ("most_oil_c", limits.slow_least_oil_c, limits.most_oil_c),
    ];
    note(findings, "camshaft", &figures, &orders);
}

fn supply(findings: &mut Findings<'_>, limits: &SupplyLimits) {
    let figures = [
        ("least_rpm", limits.least_rpm.0, RPM),
        ("low_below", limits.low_below.0, (0.1, 32.0)),
        ("high_above", limits.high_above.0, (0.1, 32.0)),
        ("jump_above", limits.jump_above.0, (0.1, 32.0)),
        ("apart_above", limits.apart_above.0, (0.1, 32.0)),
        ("fail_ms", limits.fail_ms as f64, MILLISECONDS),
        ("pass_ms", limits.pass_ms as f64, MILLISECONDS),
    ];
    note(findings, "supply", &figures, &[("high_above", limits.low_below.0, limits.high_above.0)]);
}

fn oil_pressure(findings: &mut Findings<'_>, limits: &OilPressureLimits) {
    let sensor = &limits.sensor;
    let figures = [
        ("rest_ms", limits.rest_ms as f64, FROM_ZERO_MS),
        ("running_from", limits.running_from.0, (1.0, 9_000.0)),
        ("fail_ms", limits.fail_ms as f64, MILLISECONDS),
        ("pass_ms", limits.pass_ms as f64, MILLISECONDS),
        ("sensor.low_below", sensor.low_below.0, (0.0, 5.0)),
        ("sensor.at_zero", sensor.at_zero.0, (0.0, 5.0)),
        ("sensor.at_full", sensor.at_full.0, (0.0, 5.0)),
        ("sensor.high_above", sensor.high_above.0, (0.0, 5.0)),
        ("sensor.full", sensor.full.0, (0.1, 20.0)),
        ("sensor.most_at_rest", sensor.most_at_rest.0, BARS),
        ("sensor.least_running", sensor.least_running.0, BARS),
    ];
    let orders = [
        ("sensor.at_zero", sensor.low_below.0, sensor.at_zero.0),
        ("sensor.at_full", sensor.at_zero.0, sensor.at_full.0),
        ("sensor.high_above", sensor.at_full.0, sensor.high_above.0),
    ];
    note(findings, "oil_pressure", &figures, &orders);
}
