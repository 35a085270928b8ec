//! Steps: the only input of a session.

use crate::control_module::code::Code;
use crate::faults::FaultName;
use crate::instruments::code_reader::LiveItem;
use crate::instruments::multimeter::MeterFunction;
use crate::instruments::scope::Signal;
use crate::instruments::test_lamp::Glow;
use crate::physics::oil::Grade;
use crate::physics::stroke::Click;
use crate::vehicle::spec::Id;
use serde::{Deserialize, Serialize};

/// One thing that the apprentice does.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case", tag = "do")]
pub enum Step {
    /// Read the job sheet again.
    ReadJobSheet,
    /// Ask the customer about something.
    AskCustomer {
        /// Subject.
        topic: CustomerTopic,
    },
    /// Consult the maker's service information.
    Consult {
        /// Subject.
        topic: ServiceTopic,
    },
    /// Look closely at a place: a connector, a valve that is out, a wire, under the bonnet.
    Look {
        /// Place.
        place: Id,
    },
    /// Pull the dipstick: level and look of the oil.
    Dipstick,
    /// Take a part off or out.
    Remove {
        /// Part.
        part: Id,
        /// With what care.
        manner: Manner,
    },
    /// Put a part back.
    Refit {
        /// Part.
        part: Id,
        /// With a new, oiled seal, where the part has one.
        new_seal: bool,
    },
    /// Unplug a connector.
    Unplug {
        /// Connector.
        connector: Id,
    },
    /// Plug a connector in.
    Plug {
        /// Connector.
        connector: Id,
    },
    /// Turn the key.
    Key {
        /// Position.
        position: KeyPosition,
    },
    /// Measure between two test points.
    Measure {
        /// Function of the meter.
        function: MeterFunction,
        /// Test point of the red lead.
        red: Id,
        /// Test point of the black lead.
        black: Id,
    },
    /// Measure with the leads pushed into an unplugged connector from its face.
    MeasureFromFront {
        /// Function of the meter.
        function: MeterFunction,
        /// Test point of the red lead.
        red: Id,
        /// Test point of the black lead.
        black: Id,
    },
    /// Wiggle a connector or a wire while the meter keeps its least and its greatest reading.
    Wiggle {
        /// Connector, contact or wire.
        place: Id,
        /// Function of the meter.
        function: MeterFunction,
        /// Test point of the red lead.
        red: Id,
        /// Test point of the black lead.
        black: Id,
    },
    /// Put a test lamp between two test points.
    TestLamp {
        /// Test point of the tip.
        tip: Id,
        /// Test point of the clip.
        clip: Id,
    },
    /// Close a current probe around a wire.
    Clamp {
        /// Wire.
        wire: Id,
    },
    /// Take the current probe's zero away.
    ZeroClamp,
    /// Capture a signal of a valve with a scope.
    Scope {
        /// What is watched.
        signal: Signal,
        /// Valve.
        valve: Id,
    },
    /// Put a new fuse into the meter.
    ReplaceMeterFuse,
    /// Hold the leads together and take their resistance off the display.
    ZeroLeads,
    /// Screw the oil pressure gauge into its tap.
    FitGauge,
    /// Read the oil pressure gauge.
    ReadGauge {
        /// Engine speed held by hand [rpm], 1000 to 4000; `None` as it idles or stands.
        rpm: Option<u16>,
        /// Let the engine reach its working temperature first.
        warm: bool,
    },
    /// Take the oil pressure gauge out and close the tap.
    RemoveGauge,
    /// Put battery voltage across a valve's own pins through a fused lead, and listen.
    Power {
        /// Valve.
        valve: Id,
        /// How long [s].
        seconds: u16,
        /// Red on the control pin instead of the feed pin.
        reversed: bool,
    },
    /// Ask the control module to switch a valve on or off.
    Command {
        /// Valve.
        valve: Id,
        /// On or off.
        on: bool,
    },
    /// Read stored, pending and permanent codes, the lamp and readiness.
    ReadCodes,
    /// Read the freeze frame.
    ReadFreezeFrame,
    /// Read live data for half a minute.
    ReadLiveData,
    /// Read chosen live data.
    ReadLiveItems {
        /// What is chosen, one or more, each once.
        items: Vec<LiveItem>,
    },
    /// Read readiness, the lamp, the number of codes and the counters since the clear.
    ReadReadiness,
    /// Read the results of the monitors' tests with their limits.
    ReadTestResults,
    /// Read the vehicle's identification and the module's calibration.
    ReadVehicleInformation,
    /// Clear codes.
    ClearCodes,
    /// Drive a route.
    Drive {
        /// Route.
        route: Id,
        /// Time on the road after which the driver pulls in and turns back [s], 1 or more. `None`, and a time that
        /// the road does not last, is all of it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        stop_after: Option<u16>,
    },
    /// Give a suspect a confidence.
    Suspect {
        /// Suspect.
        fault: FaultName,
        /// Confidence [%], 0 to 100.
        percent: u8,
    },
    /// Say between which values the next reading will lie.
    Predict {
        /// Least value, in the unit of what is read.
        least: f64,
        /// Greatest value; infinite means over limit counts as met.
        most: Bound,
        /// What will be read. `None` in sessions from before predictions had a unit: there a reading
        /// of any quantity is compared.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        of: Option<Quantity>,
    },
    /// Say what the next test of a kind that shows no number will show.
    PredictSign {
        /// What will be seen or heard.
        sign: Sign,
    },
    /// Write something down for oneself; whoever marks the session reads it too.
    Note {
        /// Text.
        text: String,
    },
    /// Commit to a diagnosis.
    Commit {
        /// The diagnosis; `None` is "no fault found".
        fault: Option<FaultName>,
    },
    /// Ask for a hint, in practice alone.
    AskHint {
        /// How much of it.
        grade: HintGrade,
    },
    /// Ask the customer's approval of the repair.
    AskApproval,
    /// Fit a new part in a valve's place.
    Fit {
        /// Place.
        valve: Id,
        /// Part number.
        part_number: Id,
    },
    /// Clean the screen and flush the spool of a valve that is out.
    Clean {
        /// Valve.
        valve: Id,
    },
    /// Repair a wire or a connector contact.
    Mend {
        /// Element of the wiring.
        element: Id,
    },
    /// Put in a new fuse of the same rating, or a new relay.
    Replace {
        /// Fuse or relay contact of the wiring.
        element: Id,
    },
    /// Fill oil up to the upper mark.
    TopUpOil,
    /// Drain the oil, fit a new filter and fill up to the upper mark.
    ChangeOil {
        /// Grade.
        grade: Grade,
    },
    /// Write a part of the record.
    Write {
        /// Part of the record.
        section: Section,
        /// Text.
        text: String,
    },
    /// Tell the customer of a code that is not part of this job, on the record that goes home with the
    /// vehicle.
    ReportCode {
        /// The code.
        code: Code,
    },
    /// Hand the vehicle back; ends the session.
    HandOver {
        /// As what.
        ending: Ending,
    },
}

/// The place that stands for a look under the bonnet as a whole.
pub const ENGINE_BAY: &str = "engine-bay";

/// What a reading is a reading of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Quantity {
    /// Voltage [V].
    Volts,
    /// Resistance [ohm].
    Ohms,
    /// Current, with the meter or the current probe [A].
    Amps,
    /// Oil pressure [bar].
    Bar,
}

impl From<MeterFunction> for Quantity {
    fn from(function: MeterFunction) -> Self {
        match function {
            MeterFunction::Volts => Self::Volts,
            MeterFunction::Ohms => Self::Ohms,
            MeterFunction::Amps => Self::Amps,
        }
    }
}

/// What a test shows that has no display.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Sign {
    /// The sound of the next valve whose current comes on.
    Click(Click),
    /// The light of the test lamp.
    Glow(Glow),
    /// The reader lists this code, stored or pending.
    Code(Code),
    /// The reader lists no code, neither stored nor pending.
    NoCodes,
}

/// Greatest value of a prediction.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Bound {
    /// A value, in the unit of what is read.
    Value(f64),
    /// Over limit.
    OverLimit,
}

/// How much a hint tells; each grade tells what those before it tell too.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum HintGrade {
    /// What kind of question is open.
    Question,
    /// Which part of the vehicle to go to.
    Area,
    /// What class of test is called for.
    Kind,
    /// The very step, and why.
    Step,
}

impl HintGrade {
    /// Every grade, the least first.
    pub const ALL: [Self; 4] = [Self::Question, Self::Area, Self::Kind, Self::Step];

    /// The word by which files and people name it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Question => "question",
            Self::Area => "area",
            Self::Kind => "kind",
            Self::Step => "step",
        }
    }
}

/// What the customer can be asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum CustomerTopic {
    /// What is wrong, in the customer's words.
    Symptom,
    /// When it began and when it shows.
    When,
    /// Oil and service.
    Service,
    /// Earlier repairs.
    Repairs,
}

/// What service information can be consulted about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ServiceTopic {
    /// Wiring diagram and test points.
    Wiring,
    /// Limits of resistances, voltages and oil.
    Limits,
    /// Order of removal, seals and torques.
    Procedure,
    /// Part numbers and prices.
    Parts,
    /// What the codes mean and when their monitors run.
    Codes,
}

/// With what care a part is taken out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Manner {
    /// As the procedure says.
    Careful,
    /// Pulled straight out; quicker by a third.
    Pulled,
}

/// A position of the key.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum KeyPosition {
    /// Off; a running engine stops.
    Off,
    /// On, engine not started.
    On,
    /// Start, then let it idle for a minute.
    Start,
    /// A helper lets the starter turn the engine, fuel cut off by a foot flat on the pedal, whenever a
    /// reading is taken; so until the key is turned to another position.
    Crank,
}

/// Parts of the record that the customer gets.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Section {
    /// What the customer came with.
    Concern,
    /// What was found.
    Cause,
    /// What was done.
    Correction,
}

/// As what a vehicle is handed back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Ending {
    /// Repaired.
    Repaired,
    /// No fault found.
    NoFaultFound,
    /// Referred to somebody else.
    Referred,
    /// Not safe to drive.
    Unsafe,
    /// The customer declined the work.
    Declined,
}
