//! Events: what followed from a step, and all that the apprentice may know.

use crate::control_module::code::Code;
use crate::control_module::code_report::Readiness;
use crate::faults::FaultName;
use crate::instruments::multimeter::{Display, MeterFunction};
use crate::instruments::scope::Capture;
use crate::instruments::test_lamp::Glow;
use crate::physics::oil::Grade;
use crate::physics::stroke::Click;
use crate::session::step::{CustomerTopic, Ending, HintGrade, KeyPosition, Section, ServiceTopic};
use crate::units::{Minutes, Money};
use crate::vehicle::run_record::Idling;
use crate::vehicle::spec::Id;
use serde::{Deserialize, Serialize};

mod breach;
mod hazard;
mod reader_figures;
mod refusal;
mod senses;

pub use breach::Breach;
pub use hazard::Hazard;
pub use reader_figures::{
    CamData, CamDrive, CounterReading, Frame, LiveValue, TestFigures, TestReading,
};
pub use refusal::{NoAnswer, Refusal};
pub use senses::{OilFeel, OilLook, Sight};

/// One thing that followed from a step.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", tag = "event")]
pub enum Event {
    /// Time and money went into the till.
    Spent {
        /// Working time.
        minutes: Minutes,
        /// Things bought.
        money: Money,
    },
    /// The vehicle waited for a part; nobody worked.
    Waited {
        /// How long.
        minutes: Minutes,
    },
    /// The step was not possible and changed nothing.
    Refused {
        /// Why.
        reason: Refusal,
    },
    /// A caution that belongs to the step.
    Caution {
        /// Of what.
        hazard: Hazard,
    },
    /// The step was done against a rule of care or safety.
    AgainstCare {
        /// Which.
        breach: Breach,
    },
    /// The job sheet was shown.
    JobSheetShown,
    /// The customer answered.
    Answered {
        /// Subject.
        topic: CustomerTopic,
    },
    /// Service information was shown.
    Consulted {
        /// Subject.
        topic: ServiceTopic,
    },
    /// Something was seen.
    Seen {
        /// Where.
        place: Id,
        /// What.
        sight: Sight,
    },
    /// The dipstick was read.
    OilSeen {
        /// Level: 0 at the lower mark, 1 at the upper; below zero is under the lower mark.
        level: f64,
        /// No oil on the stick at all.
        dry: bool,
        /// Look of the oil.
        look: OilLook,
        /// How it feels between two fingers.
        #[serde(default, skip_serializing_if = "OilFeel::is_usual")]
        feel: OilFeel,
        /// It smells of fuel.
        #[serde(default, skip_serializing_if = "core::ops::Not::not")]
        smells_of_fuel: bool,
    },
    /// A part came off.
    Removed {
        /// Part.
        part: Id,
    },
    /// A part went back.
    Refitted {
        /// Part.
        part: Id,
    },
    /// A seal was torn.
    SealTorn {
        /// Valve.
        valve: Id,
    },
    /// Oil was seen to weep from a seal.
    SealLeaks {
        /// Valve.
        valve: Id,
    },
    /// A connector was unplugged.
    Unplugged {
        /// Connector.
        connector: Id,
    },
    /// A connector was plugged in.
    Plugged {
        /// Connector.
        connector: Id,
    },
    /// The key was turned.
    KeyTurned {
        /// To.
        position: KeyPosition,
        /// The engine lamp is on, with the key on.
        engine_lamp: bool,
        /// The oil pressure lamp is on, with the key on.
        oil_lamp: bool,
    },
    /// The engine runs, and how.
    Idles {
        /// How.
        quality: Idling,
    },
    /// A meter reading.
    Reading {
        /// Function.
        function: MeterFunction,
        /// Red lead.
        red: Id,
        /// Black lead.
        black: Id,
        /// Display.
        display: Display,
        /// Tolerance by the meter's data sheet [V, ohm or A].
        tolerance: f64,
    },
    /// A reading that was watched while something was wiggled.
    Watched {
        /// What was wiggled.
        place: Id,
        /// Function.
        function: MeterFunction,
        /// Red lead.
        red: Id,
        /// Black lead.
        black: Id,
        /// Least display; over limit counts as the greatest.
        least: Display,
        /// Greatest display.
        most: Display,
        /// The display jumped.
        jumped: bool,
        /// Tolerance of the least display by the meter's data sheet [V, ohm or A].
        tolerance: f64,
    },
    /// A test lamp was lit or not.
    LampGlows {
        /// Tip.
        tip: Id,
        /// Clip.
        clip: Id,
        /// How it looks.
        glow: Glow,
    },
    /// A current probe's reading.
    Clamped {
        /// Wire.
        wire: Id,
        /// Display [A].
        display: Display,
        /// Tolerance by the probe's data sheet, its zero left out of account [A].
        tolerance: f64,
    },
    /// The current probe was zeroed.
    ClampZeroed,
    /// A scope's capture.
    Captured {
        /// Valve.
        valve: Id,
        /// The capture.
        capture: Capture,
    },
    /// The meter has a new fuse.
    MeterFuseReplaced,
    /// The oil pressure gauge is in its tap.
    GaugeFitted,
    /// The oil pressure gauge is out, its tap is closed.
    GaugeRemoved,
    /// The oil pressure gauge was read.
    GaugeRead {
        /// Engine speed held by hand [rpm]; `None` as it idled or stood.
        rpm: Option<u16>,
        /// Middle of the needle's swing [bar].
        bar: f64,
        /// Width of its swing [bar].
        swing: f64,
        /// Tolerance by the gauge's class [bar].
        tolerance: f64,
    },
    /// The meter's own fuse blew.
    MeterFuseBlew,
    /// The leads were zeroed.
    LeadsZeroed,
    /// The fuse of the power lead blew.
    LeadFuseBlew,
    /// A sound, or none.
    Heard {
        /// Valve.
        valve: Id,
        /// When the current came on; otherwise when it went off.
        current_on: bool,
        /// The sound.
        click: Click,
    },
    /// The module refused a request or could not be reached.
    NoAnswer {
        /// Why.
        reason: NoAnswer,
    },
    /// A valve was switched by the module, or released.
    Commanded {
        /// Valve.
        valve: Id,
        /// On or off.
        on: bool,
    },
    /// What the code reader shows.
    Codes {
        /// Confirmed codes.
        stored: Vec<Code>,
        /// Pending codes.
        pending: Vec<Code>,
        /// Permanent codes.
        permanent: Vec<Code>,
        /// The module asks for the lamp.
        lamp: bool,
        /// Codes whose monitors have run to a decision since the last clearing.
        complete: Vec<Code>,
    },
    /// The freeze frame, or none.
    FreezeFrame {
        /// The frame.
        frame: Option<Frame>,
    },
    /// Live data.
    LiveData {
        /// A snapshot.
        frame: Frame,
        /// Camshafts.
        cams: Vec<CamData>,
    },
    /// Chosen live data.
    LiveItems {
        /// The values, in the order in which they were chosen.
        values: Vec<LiveValue>,
    },
    /// Readiness.
    Readiness {
        /// The module asks for the lamp.
        lamp: bool,
        /// Number of stored codes.
        stored: u8,
        /// Groups of monitors that the module has.
        groups: Vec<Readiness>,
        /// Counters.
        counters: CounterReading,
    },
    /// Results of the monitors' tests.
    TestResults {
        /// Every test that the module lists.
        results: Vec<TestReading>,
    },
    /// The vehicle's identification and the module's calibration.
    VehicleInformation {
        /// Identification.
        identification: String,
        /// Calibration.
        calibration: String,
    },
    /// Codes were cleared.
    CodesCleared,
    /// A road was driven.
    Driven {
        /// Road.
        route: Id,
        /// The engine lamp came on or was on at the end.
        engine_lamp: bool,
        /// The oil pressure lamp lit.
        oil_lamp: bool,
        /// How it drove.
        quality: Idling,
        /// Camshafts as the live data showed them on the way.
        cams: Vec<CamDrive>,
        /// Codes whose monitors ran to a decision on this drive.
        decided: Vec<Code>,
        /// When the driver pulled in and turned back [s]; `None` for the whole road.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        stopped_after: Option<u16>,
    },
    /// A suspect has a new confidence.
    Suspected {
        /// Suspect.
        fault: FaultName,
        /// Confidence [%].
        percent: u8,
    },
    /// Something was written down that concerns nobody else.
    Noted,
    /// A prediction was noted.
    Predicted,
    /// A reading met a prediction or did not.
    PredictionChecked {
        /// Whether the display lay within, in the quantity that was predicted.
        met: bool,
        /// The reading is of another quantity than was predicted: ohms where volts were said.
        #[serde(default, skip_serializing_if = "core::ops::Not::not")]
        other_quantity: bool,
    },
    /// What a test without a display showed is what was predicted, or is not.
    SignChecked {
        /// Whether it is.
        met: bool,
    },
    /// The apprentice committed to a diagnosis.
    Committed {
        /// The diagnosis.
        fault: Option<FaultName>,
    },
    /// A hint was asked for. What it tells is worked out above the session, which knows no expert.
    HintAsked {
        /// How much of it.
        grade: HintGrade,
    },
    /// The customer approved, whatever it takes.
    Approved,
    /// The customer approved a repair whose work and things cost no more than this.
    ApprovedUpTo {
        /// The limit.
        money: Money,
    },
    /// Asked for more than was approved, the customer said no.
    MoreDeclined {
        /// What is left of what was approved; below zero where more was done.
        left: Money,
    },
    /// A valve from the counter was fitted.
    Fitted {
        /// Place.
        valve: Id,
        /// Part number, or the number under which the counter had it.
        part_number: Id,
    },
    /// A valve was cleaned.
    Cleaned {
        /// Valve.
        valve: Id,
    },
    /// A wire or contact was mended.
    Mended {
        /// Element.
        element: Id,
    },
    /// A fuse or a relay was replaced.
    Replaced {
        /// Element.
        element: Id,
    },
    /// Oil was filled up.
    OilFilled {
        /// Volume that went in, in tenths of a litre.
        tenths: u32,
    },
    /// Oil and filter were changed.
    OilChanged {
        /// Grade that was filled in.
        grade: Grade,
        /// Volume that came out, in tenths of a litre.
        drained_tenths: u32,
    },
    /// A part of the record was written.
    Written {
        /// Section.
        section: Section,
    },
    /// The customer was told of a code that is not part of the job.
    CodeReported {
        /// The code.
        code: Code,
    },
    /// The vehicle was handed back.
    HandedOver {
        /// As what.
        ending: Ending,
    },
}
