//! The case writer in every state, by hand.

use super::samples::LONG;
use crate::workshop::view::bay::BayView;
use crate::workshop::view::writer::form::{Choice, Deed, Field, Row, Sort};
use crate::workshop::view::writer::{
    Asked, CursorView, HardnessView, LastView, ProblemView, Section, Side, StarterView, TrialView,
    WriterDoorView, WriterPane, WriterView,
};

/// Where writing is begun.
pub fn door() -> WriterDoorView {
    let starter = StarterView {
        title: "A small case for the Harrowfen Dray".to_owned(),
        about: LONG.to_owned(),
    };
    WriterDoorView {
        starters: vec![starter; 3],
        file: "/home/me/cases/my-own.ron".to_owned(),
        last: Some(LastView {
            title: "My first case".to_owned(),
            path: Some("/home/me/my-own.ron".to_owned()),
            is_changed: true,
        }),
    }
}

/// The page in each of its states.
pub fn all(bay: BayView) -> Vec<(&'static str, WriterView)> {
    let side = |side| WriterView { side, pane: WriterPane::Side, ..written(bay.clone()) };
    let asked = |asked| WriterView { asked: Some(asked), ..written(bay.clone()) };
    vec![
        ("writer", written(bay.clone())),
        ("writer, text", side(Side::Text)),
        ("writer, sheet", side(Side::Sheet)),
        ("writer, bay", side(Side::Bay)),
        ("writer, to try", side(Side::Trial)),
        ("writer, hardness", side(Side::Hardness)),
        ("writer, problems", WriterView { pane: WriterPane::Problems, ..written(bay.clone()) }),
        ("writer, leaving", asked(Asked::Leave)),
        ("writer, saving as", asked(Asked::Path("/home/me/my-own.ron".to_owned()))),
        ("writer, over another", asked(Asked::Over("/home/me/my-own.ron".to_owned()))),
        (
            "writer, text that cannot be read",
            WriterView {
                is_live: false,
                is_checking: true,
                problems: None,
                path: None,
                ..written(bay.clone())
            },
        ),
        (
            "writer, nothing wrong, working it out",
            WriterView {
                problems: Some(Vec::new()),
                doubts: vec![ProblemView { place: Some((3, 12)), said: LONG.to_owned() }],
                hardness: HardnessView {
                    under_way: Some((LONG.to_owned(), 40)),
                    problem: Some(LONG.to_owned()),
                    ..HardnessView::default()
                },
                trial: TrialView { can_deal: true, ..TrialView::default() },
                ..side(Side::Hardness)
            },
        ),
    ]
}

fn field(path: &str, name: &str, label: &str, sort: Sort, text: &str) -> Row {
    Row::Field(Field {
        path: path.to_owned(),
        name: name.to_owned(),
        label: label.to_owned(),
        text: text.to_owned(),
        sort,
        problem: (sort == Sort::Number).then(|| LONG.to_owned()),
    })
}

fn choice(path: &str, name: &str, label: &str) -> Row {
    let option = |value: &str| (value.to_owned(), value.to_lowercase());
    Row::Choice(Choice {
        path: path.to_owned(),
        name: name.to_owned(),
        label: label.to_owned(),
        chosen: format!("opencoil, which is called by a name as long as this: {LONG}"),
        options: vec![option("OpenCoil"), option("BrokenWire")],
    })
}

fn rows() -> Vec<Row> {
    let deed = |name: &str| (name.to_owned(), Deed::Remove { path: "faults[0]".to_owned() });
    vec![
        Row::Remark(LONG.to_owned()),
        Row::Heading("1: open circuit in the coil, intake valve, 25 % of the draws".to_owned()),
        field("title", "Title", "Title", Sort::Line, "The van from Glasshouse Lane"),
        field("job.concern", "Complaint", "Complaint", Sort::Lines, LONG),
        Row::Beside(vec![
            choice("faults[0].kind", "Fault 1: Kind", "Kind"),
            choice("faults[0].place", "Fault 1: Place", "Place"),
        ]),
        Row::Beside(vec![
            field("faults[0].weight", "Fault 1: Weight", "Weight", Sort::Number, "2.5"),
            field("a", "Fault 1: Severity from", "Severity from", Sort::Whole, "0"),
            field("b", "Fault 1: Severity to", "Severity to", Sort::Money, "1.00"),
        ]),
        Row::Deeds(vec![deed("Fault 1: remove"), deed("Fault 1: add one that comes with it")]),
    ]
}

fn written(bay: BayView) -> WriterView {
    let line = "    // A remark, and a line that is longer than the field is wide: ".repeat(3);
    let text = format!("(\n{line}\n    title: \"My first case\",\n    level: First,\n)\n");
    let problem = |place| ProblemView { place, said: format!("Line 3, column 12: {LONG}") };
    WriterView {
        name: "a-case-with-a-long-name-for-its-file.ron".to_owned(),
        path: Some("/home/me/my-own.ron".to_owned()),
        is_changed: true,
        can: (true, false),
        text,
        cursor: CursorView::default(),
        section: Section::Faults,
        rows: rows(),
        is_live: true,
        problems: Some(vec![problem(Some((3, 12))), problem(None)]),
        doubts: Vec::new(),
        is_checking: false,
        side: Side::Text,
        pane: WriterPane::Forms,
        sheet: vec![LONG.to_owned(); 4],
        bay: Some(bay),
        trial: TrialView {
            entries: vec![LONG.to_owned(), "nothing is wrong".to_owned()],
            seed: "seven".to_owned(),
            problem: Some(LONG.to_owned()),
            can_deal: false,
        },
        hardness: HardnessView {
            rows: vec![
                [LONG.to_owned(), "£52 to £54".to_owned(), "£61".to_owned()],
                [
                    "random tester".to_owned(),
                    "not worked out".to_owned(),
                    "£52 to £1234; 24.5 steps; 3 of 4 right".to_owned(),
                ],
            ],
            is_old: true,
            ..HardnessView::default()
        },
        asked: None,
    }
}
