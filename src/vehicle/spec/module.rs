//! The control module's data.

use crate::control_module::monitor_data::MonitorData;
use crate::control_module::target_map::TargetMap;
use crate::vehicle::per_cam::PerCam;
use serde::{Deserialize, Serialize};

/// What is calibrated in a vehicle's control module. What a file does not say is typical.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct ModuleSpec {
    /// Wanted cam angles over engine speed and load.
    pub target_maps: PerCam<TargetMap>,
    /// What the monitors compare with, and what follows.
    pub monitors: MonitorData,
}

impl Default for ModuleSpec {
    fn default() -> Self {
        Self {
            target_maps: PerCam {
                intake: TargetMap::TYPICAL_INTAKE,
                exhaust: TargetMap::TYPICAL_EXHAUST,
            },
            monitors: MonitorData::default(),
        }
    }
}
