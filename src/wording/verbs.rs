//! The verbs of typed steps, in the groups in which work is done.

/// A verb with which a step begins.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verb {
    /// Job sheet, codes, freeze frame, live data.
    Read,
    /// The customer: questions and approval.
    Ask,
    /// Service information.
    Consult,
    /// Look closely.
    Look,
    /// Pull the dipstick.
    Dipstick,
    /// Take off by the procedure.
    Remove,
    /// Pull straight out.
    Pull,
    /// Put back.
    Refit,
    /// Part a connector.
    Unplug,
    /// Join a connector.
    Plug,
    /// Turn the key.
    Key,
    /// Use the meter.
    Measure,
    /// Wiggle something while the meter is watched.
    Wiggle,
    /// Put the test lamp between two points.
    Lamp,
    /// Close the current probe around a wire.
    Clamp,
    /// Capture a signal.
    Scope,
    /// Zero the meter's leads or the current probe.
    Zero,
    /// Oil pressure gauge.
    Gauge,
    /// Battery voltage on a valve.
    Power,
    /// Have the module switch a valve.
    Command,
    /// Clear codes.
    Clear,
    /// Drive a route.
    Drive,
    /// Confidence in a suspect.
    Suspect,
    /// What the next reading will be.
    Predict,
    /// Commit to a diagnosis.
    Commit,
    /// Ask for a hint.
    Hint,
    /// Write a note.
    Note,
    /// Fit a new part.
    Fit,
    /// Clean a valve.
    Clean,
    /// Mend a wire or contact.
    Mend,
    /// Replace a fuse or a relay.
    Replace,
    /// Top up oil.
    Top,
    /// Change the oil.
    Change,
    /// Write the record.
    Write,
    /// Tell the customer of a code from elsewhere.
    Report,
    /// Hand the vehicle over.
    Hand,
}

/// A group of verbs that belong together in the work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum VerbGroup {
    /// Ask and look.
    Look,
    /// Open up and put back.
    Open,
    /// Measure.
    Measure,
    /// Talk to the control module.
    Module,
    /// Run the engine and the vehicle.
    Run,
    /// Reason.
    Reason,
    /// Repair.
    Repair,
    /// Finish.
    Finish,
}

impl VerbGroup {
    /// Every group, in the order of the work.
    pub const ALL: [Self; 8] = [
        Self::Look,
        Self::Open,
        Self::Measure,
        Self::Module,
        Self::Run,
        Self::Reason,
        Self::Repair,
        Self::Finish,
    ];
}

/// One way to use a verb.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Usage {
    /// The verb.
    pub verb: Verb,
    /// Where it belongs in the work.
    pub group: VerbGroup,
    /// The form: small words are typed as they stand, words in capitals stand for a name or a
    /// number, what is in square brackets may be left out.
    pub form: &'static str,
    /// An example.
    pub example: &'static str,
    /// The message that says what it does.
    pub meaning: &'static str,
}

impl Usage {
    /// The words of the form that are the same whenever it is used: a whole step, or its
    /// beginning.
    #[must_use]
    pub fn start(&self) -> String {
        let is_fixed = |word: &&str| word.chars().all(|c| c.is_ascii_lowercase() || c == '-');
        let fixed: Vec<&str> = self.form.split(' ').take_while(is_fixed).collect();
        fixed.join(" ")
    }
}

impl Verb {
    /// Every verb, in the order of the work.
    pub const ALL: [Self; 36] = [
        Self::Read,
        Self::Ask,
        Self::Consult,
        Self::Look,
        Self::Dipstick,
        Self::Remove,
        Self::Pull,
        Self::Refit,
        Self::Unplug,
        Self::Plug,
        Self::Measure,
        Self::Wiggle,
        Self::Lamp,
        Self::Clamp,
        Self::Scope,
        Self::Zero,
        Self::Gauge,
        Self::Power,
        Self::Command,
        Self::Clear,
        Self::Key,
        Self::Drive,
        Self::Suspect,
        Self::Predict,
        Self::Commit,
        Self::Hint,
        Self::Note,
        Self::Fit,
        Self::Clean,
        Self::Mend,
        Self::Replace,
        Self::Top,
        Self::Change,
        Self::Write,
        Self::Report,
        Self::Hand,
    ];

    /// The word that is typed.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Read => "read",
            Self::Ask => "ask",
            Self::Consult => "consult",
            Self::Look => "look",
            Self::Dipstick => "dipstick",
            Self::Remove => "remove",
            Self::Pull => "pull",
            Self::Refit => "refit",
            Self::Unplug => "unplug",
            Self::Plug => "plug",
            Self::Key => "key",
            Self::Measure => "measure",
            Self::Wiggle => "wiggle",
            Self::Lamp => "lamp",
            Self::Clamp => "clamp",
            Self::Scope => "scope",
            Self::Zero => "zero",
            Self::Gauge => "gauge",
            Self::Power => "power",
            Self::Command => "command",
            Self::Clear => "clear",
            Self::Drive => "drive",
            Self::Suspect => "suspect",
            Self::Predict => "predict",
            Self::Commit => "commit",
            Self::Hint => "hint",
            Self::Note => "note",
            Self::Fit => "fit",
            Self::Clean => "clean",
            Self::Mend => "mend",
            Self::Replace => "replace",
            Self::Top => "top",
            Self::Change => "change",
            Self::Write => "write",
            Self::Report => "report",
            Self::Hand => "hand",
        }
    }
}

const fn usage(
    verb: Verb,
    group: VerbGroup,
    form: &'static str,
    example: &'static str,
    meaning: &'static str,
) -> Usage {
    Usage { verb, group, form, example, meaning }
}

/// Every way to use every verb. A verb that serves two kinds of work stands in both.
pub const USAGES: [Usage; 42] = [
    usage(Verb::Read, VerbGroup::Look, "read job-sheet", "read job-sheet", "help-read-job-sheet"),
    usage(
        Verb::Ask,
        VerbGroup::Look,
        "ask symptom|when|service|repairs",
        "ask symptom",
        "help-ask",
    ),
    usage(
        Verb::Consult,
        VerbGroup::Look,
        "consult wiring|limits|procedure|parts|codes",
        "consult wiring",
        "help-consult",
    ),
    usage(Verb::Look, VerbGroup::Look, "look PLACE", "look engine-bay", "help-look"),
    usage(Verb::Dipstick, VerbGroup::Look, "dipstick", "dipstick", "help-dipstick"),
    usage(Verb::Remove, VerbGroup::Open, "remove PART", "remove engine-cover", "help-remove"),
    usage(Verb::Pull, VerbGroup::Open, "pull PART", "pull intake-valve", "help-pull"),
    usage(
        Verb::Refit,
        VerbGroup::Open,
        "refit PART [with new-seal]",
        "refit intake-valve with new-seal",
        "help-refit",
    ),
    usage(
        Verb::Unplug,
        VerbGroup::Open,
        "unplug CONNECTOR",
        "unplug intake-connector",
        "help-unplug",
    ),
    usage(Verb::Plug, VerbGroup::Open, "plug CONNECTOR", "plug intake-connector", "help-plug"),
    usage(
        Verb::Measure,
        VerbGroup::Measure,
        "measure volts|ohms|amps RED BLACK [from-front]",
        "measure volts intake-harness-feed battery-minus",
        "help-measure",
    ),
    usage(
        Verb::Wiggle,
        VerbGroup::Measure,
        "wiggle PLACE volts|ohms|amps RED BLACK",
        "wiggle intake-feed-wire volts intake-harness-feed battery-minus",
        "help-wiggle",
    ),
    usage(
        Verb::Lamp,
        VerbGroup::Measure,
        "lamp TIP CLIP",
        "lamp intake-harness-feed battery-minus",
        "help-lamp",
    ),
    usage(Verb::Clamp, VerbGroup::Measure, "clamp WIRE", "clamp intake-feed-wire", "help-clamp"),
    usage(
        Verb::Scope,
        VerbGroup::Measure,
        "scope current|pin VALVE",
        "scope current intake-valve",
        "help-scope",
    ),
    usage(Verb::Zero, VerbGroup::Measure, "zero leads|clamp", "zero leads", "help-zero"),
    usage(
        Verb::Gauge,
        VerbGroup::Measure,
        "gauge fit|remove | idle|RPM [warm]",
        "gauge idle warm",
        "help-gauge",
    ),
    usage(
        Verb::Power,
        VerbGroup::Measure,
        "power VALVE for SECONDS [reversed]",
        "power intake-valve for 2 s",
        "help-power",
    ),
    usage(
        Verb::Read,
        VerbGroup::Module,
        "read codes|freeze-frame|readiness|test-results|vehicle-information",
        "read codes",
        "help-read-module",
    ),
    usage(
        Verb::Read,
        VerbGroup::Module,
        "read live-data [ITEM ...]",
        "read live-data oil rpm",
        "help-read-live-data",
    ),
    usage(
        Verb::Command,
        VerbGroup::Module,
        "command VALVE on|off",
        "command intake-valve on",
        "help-command",
    ),
    usage(Verb::Clear, VerbGroup::Module, "clear codes", "clear codes", "help-clear"),
    usage(Verb::Key, VerbGroup::Run, "key off|on|start", "key on", "help-key"),
    usage(Verb::Drive, VerbGroup::Run, "drive ROUTE [for SECONDS s]", "drive town", "help-drive"),
    usage(
        Verb::Suspect,
        VerbGroup::Reason,
        "suspect FAULT PLACE PERCENT",
        "suspect open-coil intake-valve 60%",
        "help-suspect",
    ),
    usage(
        Verb::Predict,
        VerbGroup::Reason,
        "predict LEAST to MOST UNIT | above LEAST UNIT | over-limit",
        "predict 7.0 to 9.0 ohms",
        "help-predict",
    ),
    usage(
        Verb::Predict,
        VerbGroup::Reason,
        "predict click clear|dull|none",
        "predict click clear",
        "help-predict-click",
    ),
    usage(
        Verb::Predict,
        VerbGroup::Reason,
        "predict glow bright|dim|dark",
        "predict glow bright",
        "help-predict-glow",
    ),
    usage(
        Verb::Predict,
        VerbGroup::Reason,
        "predict codes none|CODE",
        "predict codes none",
        "help-predict-codes",
    ),
    usage(
        Verb::Commit,
        VerbGroup::Reason,
        "commit FAULT PLACE | no-fault",
        "commit open-coil intake-valve",
        "help-commit",
    ),
    usage(
        Verb::Note,
        VerbGroup::Reason,
        "note TEXT",
        "note Clamp of the duct was loose",
        "help-note",
    ),
    usage(
        Verb::Hint,
        VerbGroup::Reason,
        "hint question|area|kind|step",
        "hint question",
        "help-hint",
    ),
    usage(Verb::Ask, VerbGroup::Repair, "ask approval", "ask approval", "help-approval"),
    usage(
        Verb::Fit,
        VerbGroup::Repair,
        "fit VALVE PART-NUMBER",
        "fit intake-valve hd-4470-1",
        "help-fit",
    ),
    usage(Verb::Clean, VerbGroup::Repair, "clean VALVE", "clean intake-valve", "help-clean"),
    usage(
        Verb::Mend,
        VerbGroup::Repair,
        "mend WIRE | CONTACT",
        "mend intake-control-wire",
        "help-mend",
    ),
    usage(
        Verb::Replace,
        VerbGroup::Repair,
        "replace FUSE | RELAY | meter-fuse",
        "replace meter-fuse",
        "help-replace",
    ),
    usage(Verb::Top, VerbGroup::Repair, "top up", "top up", "help-top"),
    usage(
        Verb::Change,
        VerbGroup::Repair,
        "change oil GRADE",
        "change oil 5W-30",
        "help-change-oil",
    ),
    usage(
        Verb::Write,
        VerbGroup::Finish,
        "write concern|cause|correction TEXT",
        "write cause Winding open, reads OL",
        "help-write",
    ),
    usage(Verb::Report, VerbGroup::Finish, "report CODE", "report P0456", "help-report"),
    usage(
        Verb::Hand,
        VerbGroup::Finish,
        "hand over [no-fault|referred|unsafe|declined]",
        "hand over",
        "help-hand",
    ),
];
