//! Problems of every kind.

use crate::control_module::code::Code;
use crate::faults::FaultKind;
use crate::scenario::problem::{
    FileTrouble, HarnessNeed, ProblemKind, Shape, SyntaxFault, Thing, ValveNeed,
};
use crate::session::step::CustomerTopic;
use crate::vehicle::spec::Id;

/// Samples of every variant of an enum. It does not build when a variant is not listed, and fails
/// when a variant has no sample.
macro_rules! every {
    ($name:ident: $kind:ident { $($variant:ident: [$($sample:expr),+ $(,)?],)+ }) => {
        pub fn $name() -> Vec<$kind> {
            let samples = vec![$($($sample),+),+];
            for sample in &samples {
                match sample {
                    $($kind::$variant { .. } => {})+
                }
            }
            $(
                let is_there = |sample: &$kind| matches!(sample, $kind::$variant { .. });
                assert!(samples.iter().any(is_there), "no {}", stringify!($variant));
            )+
            samples
        }
    };
}

every!(syntax_faults: SyntaxFault {
    NoComma: [SyntaxFault::NoComma],
    NoColon: [SyntaxFault::NoColon],
    OpenBracket: [
        SyntaxFault::OpenBracket('('),
        SyntaxFault::OpenBracket('['),
        SyntaxFault::OpenBracket('{'),
    ],
    OtherBracket: [SyntaxFault::OtherBracket(']')],
    OpenText: [SyntaxFault::OpenText],
    OpenComment: [SyntaxFault::OpenComment],
    TooLong: [SyntaxFault::TooLong],
    NoName: [SyntaxFault::NoName],
    BadEscape: [SyntaxFault::BadEscape],
    BadNumber: [SyntaxFault::BadNumber],
    UnknownExtension: [SyntaxFault::UnknownExtension],
    Other: [SyntaxFault::Other],
});

every!(shapes: Shape {
    Text: [Shape::Text],
    WholeNumber: [Shape::WholeNumber],
    Number: [Shape::Number],
    Word: [Shape::Word],
    Fields: [Shape::Fields],
    Pair: [Shape::Pair],
    List: [Shape::List],
    Map: [Shape::Map],
    Optional: [Shape::Optional],
});

every!(things: Thing {
    Vehicle: [Thing::Vehicle],
    Route: [Thing::Route],
    Valve: [Thing::Valve],
    PartNumber: [Thing::PartNumber],
    Part: [Thing::Part],
    Connector: [Thing::Connector],
    Camshaft: [Thing::Camshaft],
    Fuse: [Thing::Fuse],
    TestPoint: [Thing::TestPoint],
    Node: [Thing::Node],
    Element: [Thing::Element],
    Fault: [Thing::Fault],
    Entry: [Thing::Entry],
});

every!(valve_needs: ValveNeed {
    Part: [ValveNeed::Part],
    Connector: [ValveNeed::Connector],
    Pins: [ValveNeed::Pins],
    Coil: [ValveNeed::Coil],
    Driver: [ValveNeed::Driver],
});

every!(harness_needs: HarnessNeed {
    Battery: [HarnessNeed::Battery],
    BatteryMinus: [HarnessNeed::BatteryMinus],
    EngineGround: [HarnessNeed::EngineGround],
    ModuleSupply: [HarnessNeed::ModuleSupply],
    DriverGround: [HarnessNeed::DriverGround],
});

every!(file_troubles: FileTrouble {
    NotFound: [FileTrouble::NotFound],
    NotAFile: [FileTrouble::NotAFile],
    NotAllowed: [FileTrouble::NotAllowed],
    TooLarge: [FileTrouble::TooLarge { most: 1 << 20 }],
    NotUtf8: [FileTrouble::NotUtf8 { line: 31, column: 17 }],
    Failed: [FileTrouble::Failed { number: None }, FileTrouble::Failed { number: Some(5) }],
});

every!(topics: CustomerTopic {
    Symptom: [CustomerTopic::Symptom],
    When: [CustomerTopic::When],
    Service: [CustomerTopic::Service],
    Repairs: [CustomerTopic::Repairs],
});

fn word(text: &str) -> String {
    text.to_owned()
}

fn valve() -> Id {
    Id::from("inlet-valve")
}

fn number() -> Id {
    Id::from("ab-1200-7")
}

fn with_all<T>(list: Vec<T>, kind: impl Fn(T) -> ProblemKind) -> Vec<ProblemKind> {
    list.into_iter().map(kind).collect()
}

every!(one_of_each: ProblemKind {
    Syntax: [ProblemKind::Syntax { fault: SyntaxFault::NoComma }],
    TooDeep: [ProblemKind::TooDeep { most: 33 }],
    WrongFormat: [
        ProblemKind::WrongFormat { found: word("some poem"), expected: "faultwright scenario" },
    ],
    WrongVersion: [
        ProblemKind::WrongVersion { found: word("3"), newest: 2 },
        ProblemKind::WrongVersion { found: word("0"), newest: 2 },
    ],
    TooManyValues: [ProblemKind::TooManyValues { most: 20_000 }],
    NewerField: [ProblemKind::NewerField { field: "approval", since: 2 }],
    UnknownField: [
        ProblemKind::UnknownField {
            found: word("titel"),
            expected: vec!["title", "vehicle"],
            nearest: Some(word("title")),
        },
        ProblemKind::UnknownField {
            found: word("qqq"),
            expected: vec!["title", "vehicle"],
            nearest: None,
        },
        ProblemKind::UnknownField { found: word("rrr"), expected: Vec::new(), nearest: None },
    ],
    MissingField: [ProblemKind::MissingField { field: "rubric" }],
    RepeatedField: [ProblemKind::RepeatedField { field: "rubric" }],
    UnknownVariant: [
        ProblemKind::UnknownVariant {
            found: word("Clmap"),
            expected: vec!["Cover", "Clamp", "Duct"],
            nearest: Some(word("Clamp")),
        },
        ProblemKind::UnknownVariant {
            found: word("Ppp"),
            expected: vec!["Cover", "Clamp", "Duct"],
            nearest: None,
        },
    ],
    WrongShape: [ProblemKind::WrongShape { expected: Shape::Text }],
    NumberDoesNotFit: [ProblemKind::NumberDoesNotFit],
    NotACode: [ProblemKind::NotACode { found: word("P4456") }],
    NotFinite: [ProblemKind::NotFinite { found: word("inf") }],
    OutOfRange: [ProblemKind::OutOfRange { found: -0.5, least: 0.25, most: 4e3 }],
    WrongOrder: [ProblemKind::WrongOrder { first: 4.3, second: 4.1 }],
    TooMany: [ProblemKind::TooMany { found: 307, most: 300 }],
    Empty: [ProblemKind::Empty],
    AllWeightsZero: [ProblemKind::AllWeightsZero],
    BadName: [ProblemKind::BadName { found: word("Town Loop") }],
    LeavesFolder: [ProblemKind::LeavesFolder { found: word("../outside") }],
    UnknownName: [ProblemKind::UnknownName {
        thing: Thing::Route,
        found: word("town-lop"),
        nearest: Some(word("town-loop")),
    }],
    UnknownPlace: [ProblemKind::UnknownPlace {
        kind: FaultKind::LowOil,
        found: word("sumpf"),
        nearest: Some(word("sump")),
    }],
    Repeated: [ProblemKind::Repeated { thing: Thing::Valve, name: word("inlet-valve") }],
    VehicleUnreadable: [ProblemKind::VehicleUnreadable {
        file: word("vehicles/van.ron"),
        trouble: FileTrouble::NotAFile,
    }],
    NoAnswer: [ProblemKind::NoAnswer { topic: CustomerTopic::When }],
    NoPrice: [ProblemKind::NoPrice { part_number: number() }],
    NobodysCode: [ProblemKind::NobodysCode { code: Code(0x0456) }],
    OwnCode: [ProblemKind::OwnCode { code: Code(0x0010), valve: valve() }],
    RepeatedCode: [ProblemKind::RepeatedCode { code: Code(0x0010) }],
    SamePlace: [ProblemKind::SamePlace { place: word("intake-valve") }],
    SameWinding: [ProblemKind::SameWinding { part_number: number() }],
    DoesNotFit: [ProblemKind::DoesNotFit { part_number: number(), valve: valve() }],
    NarrowWindow: [ProblemKind::NarrowWindow { part_number: number() }],
    NoPartner: [ProblemKind::NoPartner { valve: valve() }],
    UnevenBanks: [ProblemKind::UnevenBanks { cylinders: 5 }],
    ValveLacks: [ProblemKind::ValveLacks { valve: valve(), what: ValveNeed::Pins }],
    HarnessLacks: [ProblemKind::HarnessLacks { what: HarnessNeed::Battery }],
    HangingNode: [
        ProblemKind::HangingNode { node: Id::from("fuse-out"), nearest: Some(word("fuses-out")) },
        ProblemKind::HangingNode { node: Id::from("fuse-out"), nearest: None },
    ],
    IslandNode: [ProblemKind::IslandNode { node: Id::from("fuse-out") }],
    SameEnds: [ProblemKind::SameEnds { node: Id::from("fuse-out") }],
    BlockersInACircle: [
        ProblemKind::BlockersInACircle { parts: vec![valve()] },
        ProblemKind::BlockersInACircle { parts: vec![valve(), Id::from("clamp")] },
    ],
    NoTorque: [ProblemKind::NoTorque { part: valve() }],
});

/// One of each kind, and of each kind with a list of its own every entry of that list.
pub fn every_kind() -> Vec<ProblemKind> {
    let mut kinds = one_of_each();
    kinds.extend(with_all(syntax_faults(), |fault| ProblemKind::Syntax { fault }));
    kinds.extend(with_all(shapes(), |expected| ProblemKind::WrongShape { expected }));
    for nearest in [None, Some(word("right-name"))] {
        kinds.extend(with_all(things(), |thing| ProblemKind::UnknownName {
            thing,
            found: word("wrong-name"),
            nearest: nearest.clone(),
        }));
        kinds.extend(with_all(FaultKind::ALL.to_vec(), |kind| ProblemKind::UnknownPlace {
            kind,
            found: word("wrong-place"),
            nearest: nearest.clone(),
        }));
    }
    kinds.extend(with_all(things(), |thing| ProblemKind::Repeated { thing, name: word("twin") }));
    kinds.extend(with_all(file_troubles(), |trouble| ProblemKind::VehicleUnreadable {
        file: word("vehicles/van.ron"),
        trouble,
    }));
    kinds.extend(with_all(topics(), |topic| ProblemKind::NoAnswer { topic }));
    kinds.extend(with_all(valve_needs(), |what| ProblemKind::ValveLacks { valve: valve(), what }));
    kinds.extend(with_all(harness_needs(), |what| ProblemKind::HarnessLacks { what }));
    // Those with a list of their own stand in it twice.
    let mut different: Vec<ProblemKind> = Vec::new();
    for kind in kinds {
        if !different.contains(&kind) {
            different.push(kind);
        }
    }
    different
}
