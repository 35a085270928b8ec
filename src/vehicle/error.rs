//! Why a vehicle cannot be simulated.

use super::route::RouteError;
use crate::control_module::module_setup::SetupFault;
use crate::physics::circuit::CircuitError;
use crate::physics::oil::OilError;
use thiserror::Error;

/// Why a vehicle cannot be simulated. None of these can be reached from a scenario that its check
/// has passed.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum VehicleError {
    /// The wiring has no solution.
    #[error("simulating a vehicle: its wiring cannot be solved")]
    Circuit(#[from] CircuitError),
    /// The control module's data contradict themselves.
    #[error("simulating a vehicle: its control module's data contradict themselves")]
    Module(#[from] SetupFault),
    /// The oil's figures describe no oil.
    #[error("simulating a vehicle: its oil is no oil")]
    Oil(#[from] OilError),
    /// A route cannot be driven.
    #[error("simulating a vehicle: the route cannot be driven")]
    Route(#[from] RouteError),
}
