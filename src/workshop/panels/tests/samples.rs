//! One view of every page in every state, by hand, so that walking them takes no simulation.

use super::{trays, writings};
use crate::scenario::load;
use crate::scenario::schema::Level;
use crate::sound::player::State;
use crate::sound::trace::Outline;
use crate::vehicle::spec::Id;
use crate::wording::debrief_words::{DebriefWords, MarkWords, RemarkWords};
use crate::wording::lesson_words::LessonWords;
use crate::wording::reviewed_step_words::StepWords;
use crate::wording::verbs::VerbGroup;
use crate::wording::what_if_words::ChoiceWords;
use crate::workshop::bay::model::{Model, Thing};
use crate::workshop::view::bay::{BayView, CardView, PlaceView, StepAt};
use crate::workshop::view::case::{
    CaseView, GroupView, HeardView, LineView, LogLine, LoggedStep, Offer, Pane, StartView,
    SuspectView, Tone, VehicleView,
};
use crate::workshop::view::debrief::{
    CourseView, DebriefView, Direction, LookBackView, Others, Pace, RegretView, Replay, Side,
};
use crate::workshop::view::front::{Age, FrontView, KeptFile, KeptState, ScenarioView};
use crate::workshop::view::guide::{GuideView, Task};
use crate::workshop::view::road::{ChartView, LineOfRoad, RoadPace, RoadView};
use crate::workshop::view::settings::Settings;
use crate::workshop::view::tray::TrayView;
use crate::workshop::view::writer::{WriterDoorView, WriterView};
use crate::workshop::view::{Busy, Page, WindowView};
use std::sync::Arc;

/// A text as long as the longest caution.
pub const LONG: &str = "Drive only with a licence, insurance, a roadworthy vehicle and checked levels, \
                    and let a passenger read the data. The maker's procedure comes first.";

/// A page with what stands around it.
pub struct Sample {
    pub name: &'static str,
    pub front: FrontView,
    case: Option<CaseView>,
    debrief: Option<DebriefView>,
    door: Option<WriterDoorView>,
    written: Option<WriterView>,
    settings: Settings,
    busy: Option<Busy>,
    notice: Option<String>,
    sound: State,
    tried: Option<&'static str>,
}

impl Sample {
    fn new(name: &'static str) -> Self {
        Self {
            name,
            front: FrontView::default(),
            case: None,
            debrief: None,
            door: None,
            written: None,
            settings: Settings::default(),
            busy: None,
            notice: None,
            sound: State::default(),
            tried: None,
        }
    }

    pub fn view(&self) -> WindowView<'_> {
        let page = if let Some(case) = &self.case {
            Page::Case(case)
        } else if let Some(debrief) = &self.debrief {
            Page::Debrief(debrief)
        } else if let Some(door) = &self.door {
            Page::WriterDoor(door)
        } else if let Some(written) = &self.written {
            Page::Writer(written)
        } else {
            Page::Front(&self.front)
        };
        let notice = self.notice.as_deref();
        let picture = [640, 400];
        let (settings, sound) = (self.settings, self.sound);
        let (busy, tried) = (self.busy.clone(), self.tried);
        WindowView { page, settings, busy, sound, notice, tried, picture }
    }
}

/// The front page and the settings in every state.
fn fronts() -> Vec<Sample> {
    let files = ["market-hill-7-1", "market-hill-8-1"].map(|name| KeptFile {
        path: format!("/sessions/{name}.session").into(),
        name: name.to_owned(),
        state: KeptState::Unfinished { steps: 12, is_assessed: false },
        age: Some(Age::Hours(2)),
    });
    let [unfinished, mut finished] = files;
    finished.state = KeptState::Finished { steps: 41, is_assessed: true };
    finished.age = None;
    let scenario = |title: &str, file: Option<&str>| ScenarioView {
        title: title.to_owned(),
        about: LONG.to_owned(),
        level: Some(Level::Hard),
        file: file.map(str::to_owned),
        is_always_assessed: file.is_some(),
        sealed_for: None,
    };
    let scenarios = vec![
        scenario("The van on Market Hill", None),
        scenario("My own", Some("/home/me/my-own.ron")),
    ];
    let mut broken = unfinished.clone();
    let mut sealed = unfinished.clone();
    sealed.state = KeptState::Sealed { steps: 30 };
    let hand_out = ScenarioView {
        level: None,
        sealed_for: Some("Anna".to_owned()),
        ..scenario("Misfires on the hill", Some("/home/me/03-anna.case"))
    };
    broken.state = KeptState::Broken(format!("/sessions/broken.session: {LONG}"));
    let open = Settings { are_open: true, ..Settings::default() };
    let problem = Some(LONG.to_owned());
    vec![
        Sample::new("front, looking"),
        Sample {
            front: FrontView {
                scenarios: scenarios.clone(),
                kept: Some(vec![]),
                ..FrontView::default()
            },
            busy: Some(busy(None)),
            ..Sample::new("front, nothing kept, dealing")
        },
        Sample {
            front: FrontView {
                is_first_start: false,
                handed_over: None,
                scenarios,
                chosen: 1,
                file: "/home/me/my-own.ron".to_owned(),
                is_assessed: true,
                seed: "seven".to_owned(),
                seed_problem: problem.clone(),
                kept: Some(vec![unfinished, finished, broken]),
            },
            notice: problem.clone(),
            ..Sample::new("front, files and troubles")
        },
        Sample {
            front: FrontView {
                handed_over: problem.clone(),
                scenarios: vec![hand_out],
                is_assessed: true,
                kept: Some(vec![sealed]),
                ..FrontView::default()
            },
            ..Sample::new("front, a sealed case")
        },
        Sample {
            settings: open,
            notice: problem.clone(),
            sound: State::NoServer,
            ..Sample::new("settings, no sound server")
        },
        Sample { settings: open, ..Sample::new("settings") },
        Sample {
            front: FrontView { is_first_start: true, ..FrontView::default() },
            ..Sample::new("front, first start")
        },
    ]
}

fn busy(share: Option<f32>) -> Busy {
    Busy { text: "Working out what each fault would show …".to_owned(), share }
}

/// Every page in every state.
pub fn all() -> Vec<Sample> {
    let problem = Some(LONG.to_owned());
    let case = |pane, line| Some(CaseView { line, pane, ..case_view() });
    let mut samples = fronts();
    samples.extend(trays::all().into_iter().map(|(name, view)| tray(name, Pane::Tray, view)));
    samples.extend(
        writings::all(bay_view())
            .into_iter()
            .map(|(name, view)| Sample { written: Some(view), ..Sample::new(name) }),
    );
    samples.extend(vec![
        Sample { door: Some(writings::door()), ..Sample::new("where writing is begun") },
        Sample { case: Some(case_view()), tried: Some(LONG), ..Sample::new("case, tried") },
        Sample {
            case: Some(CaseView {
                guide: Some(GuideView { done: [true, false, true, false, false, false] }),
                ..case_view()
            }),
            ..Sample::new("case, first round")
        },
        Sample {
            case: Some(CaseView {
                pane: Pane::Bay,
                guide: Some(GuideView { done: [true; Task::ALL.len()] }),
                ..case_view()
            }),
            ..Sample::new("case, round over")
        },
        Sample { case: Some(case_view()), ..Sample::new("case, log") },
        Sample { case: case(Pane::Bay, LineView::default()), ..Sample::new("case, bay") },
        Sample {
            case: Some(CaseView { log: Vec::new(), suspects: Vec::new(), ..case_view() }),
            busy: Some(busy(Some(0.4))),
            ..Sample::new("case, nothing done")
        },
        Sample {
            case: case(Pane::Sheet, words_line()),
            notice: problem.clone(),
            ..Sample::new("case, sheet")
        },
        Sample { case: case(Pane::Steps, LineView::default()), ..Sample::new("case, starts") },
        Sample { case: case(Pane::Steps, words_line()), ..Sample::new("case, words") },
        tray("case, meter asking in the bay", Pane::Bay, trays::meter_asking()),
        Sample {
            case: case(
                Pane::Steps,
                LineView {
                    text: "write cause ".to_owned(),
                    texts: vec![LONG.to_owned()],
                    digits: true,
                    problem,
                    ..LineView::default()
                },
            ),
            ..Sample::new("case, digits and texts")
        },
        Sample {
            case: Some(CaseView { road: Some(road_view(true)), ..case_view() }),
            ..Sample::new("case, on the road")
        },
        Sample {
            case: Some(CaseView { road: Some(road_view(false)), ..case_view() }),
            ..Sample::new("case, on the road without a reader")
        },
        Sample {
            debrief: Some(DebriefView { parts: None, ..debrief_view() }),
            busy: Some(busy(Some(0.7))),
            ..Sample::new("debrief, under way")
        },
        Sample { debrief: Some(debrief_view()), ..Sample::new("debrief") },
        Sample {
            debrief: Some(DebriefView { side: Side::Steps, ..debrief_view() }),
            ..Sample::new("debrief, steps")
        },
        Sample {
            debrief: Some(DebriefView {
                side: Side::Steps,
                look_back: Some(LookBackView { others: Others::UnderWay, ..look_back_view() }),
                ..debrief_view()
            }),
            busy: Some(busy(None)),
            ..Sample::new("debrief, working out what else")
        },
    ]);
    samples
}

fn tray(name: &'static str, pane: Pane, tray: TrayView) -> Sample {
    Sample { case: Some(CaseView { tray, pane, ..case_view() }), ..Sample::new(name) }
}

fn road_view(with_reader: bool) -> RoadView {
    let times: Vec<f32> = (0_u16..240).map(f32::from).collect();
    let wave =
        |most: f32, lag: f32| times.iter().map(|t| most * ((t - lag) / 9.0).sin().abs()).collect();
    let chart = |name: &str, unit: &str, most: f32, lines| ChartView {
        name: name.to_owned(),
        unit: unit.to_owned(),
        decimals: 1,
        scale: [0.0, most],
        lines,
    };
    let line = |name: &str, values| LineOfRoad { name: name.to_owned(), values };
    let mut charts = vec![chart("Road speed", "km/h", 100.0, vec![line("", wave(90.0, 0.0))])];
    if with_reader {
        let lines = vec![line("wanted (dashed)", wave(35.0, 0.0)), line("actual", wave(30.0, 2.0))];
        charts.push(chart("Camshaft of the intake valve", "°", 40.0, lines));
    }
    RoadView {
        road: "Test hill".to_owned(),
        at: 80.0,
        of: 240.0,
        charts: charts.into(),
        times: times.into(),
        seen: 81,
        lacks_reader: !with_reader,
        pace: RoadPace::Usual,
    }
}

fn words_line() -> LineView {
    let names = ["battery-minus", "battery-plus", "engine-ground", "exhaust-harness-control"];
    let offers = names.iter().cycle().take(16).enumerate();
    LineView {
        text: "measure volts ".to_owned(),
        words: offers
            .map(|(number, name)| Offer {
                word: format!("{name}-{number}"),
                meaning: (number == 1).then(|| "battery positive post".to_owned()),
            })
            .collect(),
        marked: Some(1),
        is_step: true,
        hint: LONG.to_owned(),
        ..LineView::default()
    }
}

fn case_view() -> CaseView {
    let line = |text: &str, tone| LogLine { text: text.to_owned(), tone };
    let step = |number, step: &str, lines| LoggedStep {
        number,
        step: step.to_owned(),
        cost: "22 min, £4.20".to_owned(),
        lines,
        heard: None,
    };
    let heard = |caption: &str, columns| {
        let caption = caption.to_owned();
        Some(HeardView { caption, outline: Outline { columns } })
    };
    CaseView {
        title: "Delivery van, lacks pull uphill".to_owned(),
        is_assessed: true,
        guide: None,
        sheet: vec!["Job sheet".to_owned(), LONG.to_owned(), LONG.to_owned()],
        bay: bay_view(),
        road: None,
        tray: TrayView { is_out: false, ..trays::meter() },
        vehicle: VehicleView {
            key: "Key off.".to_owned(),
            off: "Off: engine cover, duct clamp and intake connector.".to_owned(),
        },
        till: "45 min, £4.20 of material, £55.20 in all".to_owned(),
        notes: vec![LONG.to_owned(), "Dry.".to_owned()],
        suspects: vec![SuspectView {
            name: "partly broken coil, intake valve".to_owned(),
            percent: 60,
            start: "suspect partly-broken-coil intake-valve".to_owned(),
        }],
        log: vec![
            step(1, "drive test-hill", vec![line(LONG, Tone::Caution), line(LONG, Tone::Breach)]),
            step(
                2,
                "measure ohms intake-valve-feed intake-valve-control",
                vec![
                    line(LONG, Tone::Refused),
                    line("Stored codes:\n  P0011\n  P0012", Tone::Plain),
                ],
            ),
            LoggedStep {
                heard: heard("no click, then no click", Vec::new()),
                ..step(3, "listen exhaust-valve", vec![line("Nothing clicks.", Tone::Plain)])
            },
            LoggedStep {
                heard: heard(
                    "a sharp click, then a dull, soft click",
                    vec![(-0.5, 0.4), (0.0, 0.0), (-0.1, 0.1)],
                ),
                ..step(4, "listen intake-valve", vec![line("It clicks.", Tone::Plain)])
            },
        ],
        line: LineView { hint: LONG.to_owned(), ..LineView::default() },
        groups: vec![group(VerbGroup::Look, "Ask and look"), group(VerbGroup::Measure, "Measure")],
        open_group: VerbGroup::Look,
        pane: Pane::Log,
        kept_at: "/sessions/market-hill-7-1.session".to_owned(),
    }
}

/// A bay with one chosen thing that is off and blocked, its texts as long as they come.
fn bay_view() -> BayView {
    let model = Arc::new(Model::of(&load::demo().unwrap().vehicle));
    let place = |thing: &Thing| PlaceView {
        id: thing.id.clone(),
        name: thing.id.to_string().replace('-', " "),
        sort: thing.sort,
        is_off: thing.id.as_str() == "engine-cover",
    };
    let places = model.things.iter().map(place).collect();
    let step =
        |line: &str, is_whole| StepAt { line: line.to_owned(), meaning: LONG.to_owned(), is_whole };
    let mut bay = BayView::new(model, places);
    bay.known.off.insert(Id::from("engine-cover"));
    bay.card = Some(CardView {
        id: Id::from("air-duct"),
        name: "air duct".to_owned(),
        state: vec!["In its place.".to_owned(), LONG.to_owned()],
        blocked: Some(LONG.to_owned()),
        fits_line: true,
        steps: vec![step("look air-duct", true), step("measure volts air-duct", false)],
    });
    bay
}

fn group(group: VerbGroup, name: &str) -> GroupView {
    let start = |words: &str| StartView { words: words.to_owned(), meaning: LONG.to_owned() };
    GroupView { group, name: name.to_owned(), starts: vec![start("look"), start("dipstick")] }
}

fn debrief_view() -> DebriefView {
    let remark =
        |good, sign: &str| RemarkWords { good, sign: sign.to_owned(), text: LONG.to_owned() };
    DebriefView {
        title: "Delivery van, lacks pull uphill".to_owned(),
        parts: Some(DebriefWords {
            outcome: vec![LONG.to_owned(), "What was wrong: low oil, oil sump.".to_owned()],
            total: "Marks: 37.6 of 100; the pass line is 60. Not passed.".to_owned(),
            passed: false,
            critical: vec![LONG.to_owned()],
            hints: vec!["Hints took 2 points.".to_owned()],
            lessons: vec![LessonWords {
                title: "A dearer test was made".to_owned(),
                cost: "step 7, 4.2 points".to_owned(),
                next_time: LONG.to_owned(),
            }],
            marks: vec![MarkWords {
                category: "Choice of tests".to_owned(),
                points: "20.8".to_owned(),
                most: "28.0".to_owned(),
                share: 0.74,
                remarks: vec![remark(true, "+"), remark(false, "–")],
            }],
            steps: vec![StepWords {
                number: 7,
                step: "measure volts battery-plus battery-minus".to_owned(),
                cost: "£8".to_owned(),
                value: "£56".to_owned(),
                regret: "£8 worse than the best".to_owned(),
                best: "filling up the oil".to_owned(),
                told: "was expected to tell 0.42 bit".to_owned(),
                before: "low oil, oil sump 60 %".to_owned(),
                moved: true,
                belief: "low oil, oil sump 100 %".to_owned(),
            }],
        }),
        kept_at: "/sessions/market-hill-7-1.session".to_owned(),
        side: Side::Marks,
        look_back: Some(look_back_view()),
    }
}

/// A session once more at its second step, with texts as long as they come.
fn look_back_view() -> LookBackView {
    let CaseView { log, bay, vehicle, till, .. } = case_view();
    let row = |name: &str, chances: [f32; 3]| (name.to_owned(), chances.to_vec());
    LookBackView {
        at: 1,
        log,
        regrets: vec![
            RegretView { least: 0.0, most: 40.0, is_open: true },
            RegretView { least: 8.0, most: 9.5, is_open: false },
        ],
        course: CourseView {
            rows: vec![
                row(LONG, [0.1, 0.4, 1.0]),
                row("sticking spool, intake valve", [0.2, 0.3, 0.0]),
                row("everything else", [0.7, 0.3, 0.0]),
            ],
        },
        bay,
        vehicle,
        till,
        replay: Replay { runs: Some(Direction::Forwards), pace: Pace::Quick },
        others: Others::Known {
            rows: vec![ChoiceWords {
                what: "remove engine-cover; measure ohms intake-valve-feed intake-valve-control"
                    .to_owned(),
                total: "£112 to £114".to_owned(),
                bits: "1.20 bit".to_owned(),
                against: "not shown worse than the best".to_owned(),
                read: Some(LONG.to_owned()),
                means: vec![LONG.to_owned()],
            }],
            left_out: vec![LONG.to_owned()],
        },
        asked: "measure ohms".to_owned(),
        asked_problem: Some(LONG.to_owned()),
        answer: vec![LONG.to_owned(), format!("    {LONG}")],
    }
}
