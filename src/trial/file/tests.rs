//! Rows written, read, joined and refused.

use super::*;
use proptest::prelude::*;

fn origin() -> Origin {
    Origin {
        scenario: "a, \"quoted\"\nname".to_owned(),
        fingerprint: "0123".to_owned(),
        currency: "£".to_owned(),
        program: "1.2.3".to_owned(),
    }
}

fn row(seed: u64, policy: Policy) -> Row {
    Row {
        seed,
        policy,
        fault: "open-coil@intake-valve".to_owned(),
        outcome: Outcome::CameBack,
        steps: 51,
        repairs: 2,
        minutes: 183,
        things: Money(71_40),
        spent: Money(27_880),
        comeback: Money(24_005),
        judged: Some(Judged {
            total: 100.0 / 3.0,
            shares: [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 1.0],
            proved: true,
            unproved: false,
            passed: false,
            regret: Some(Bounds { lower: 0.1 + 0.2, upper: 1.5 }),
            value: Some(Bounds { lower: 131.2, upper: 133.7 }),
        }),
    }
}

fn gathered(texts: &[&str]) -> Result<Rows, RowsProblem> {
    let mut gathered = Gathered::default();
    for text in texts {
        gathered.add(text)?;
    }
    gathered.finish()
}

#[test]
fn closed_form_money_is_units_and_hundredths() {
    for (money, written) in [(Money(5), "0.05"), (Money(-1_30), "-1.30"), (Money(24_000), "240.00")]
    {
        assert_eq!(amount(money), written);
        assert_eq!(read_amount(written), Some(money));
    }
    for wrong in ["", "1", "1.2", "1.234", "--1.00", "1.-2", ".50", "1e3.00"] {
        assert_eq!(read_amount(wrong), None, "{wrong}");
    }
}

/// RFC 4180, section 2, rules 5 to 7: its own examples.
#[test]
fn published_quoted_fields_are_taken_apart_as_the_standard_says() {
    let fields = |text: &str| records(text).0.into_iter().map(|(_, f)| f).collect::<Vec<_>>();
    assert_eq!(
        fields("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx\r\n"),
        [["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]
    );
    assert_eq!(fields("\"aaa\",\"b\r\nbb\",\"ccc\"\r\n"), [["aaa", "b\r\nbb", "ccc"]]);
    assert_eq!(fields("\"aaa\",\"b\"\"bb\",\"ccc\"\n"), [["aaa", "b\"bb", "ccc"]]);
}

#[test]
fn limit_parts_in_any_order_or_one_behind_the_other_give_the_whole() {
    let rows: Vec<Row> = [3, 1, 2]
        .into_iter()
        .flat_map(|seed| [Policy::Planner, Policy::RandomTester].map(|policy| row(seed, policy)))
        .collect();
    let part = |from: usize, to: usize| text(&Rows { of: origin(), rows: rows[from..to].to_vec() });
    let whole = gathered(&[&part(0, 6)]).unwrap();
    assert_eq!(whole.rows.first().unwrap().place(), (1, Policy::RandomTester));
    assert_eq!(gathered(&[&part(4, 6), &part(0, 4)]).unwrap(), whole);
    assert_eq!(gathered(&[&(part(2, 6) + &part(0, 3))]).unwrap(), whole);
    assert_eq!(text(&gathered(&[&text(&whole)]).unwrap()), text(&whole));
}

#[test]
fn limit_a_line_without_its_end_is_no_row_and_is_told() {
    let whole =
        text(&Rows { of: origin(), rows: vec![row(1, Policy::Planner), row(2, Policy::Planner)] });
    let mut gathered = Gathered::default();
    assert_eq!(gathered.add(&whole[..whole.len() - 9]), Ok(true));
    assert_eq!(gathered.finish().unwrap().rows.len(), 1);
    let mut in_a_quote = Gathered::default();
    assert_eq!(in_a_quote.add(&format!("{}\"a, \"\"quoted\"\"\n", head_line())), Ok(true));
    assert_eq!(Gathered::default().add(&whole), Ok(false));
}

#[test]
fn limit_what_does_not_belong_is_refused_with_its_line() {
    let one = Rows { of: origin(), rows: vec![row(1, Policy::Planner)] };
    let other = Origin { program: "1.2.4".to_owned(), ..origin() };
    let stranger = Rows { of: other, rows: vec![row(2, Policy::Planner)] };
    assert_eq!(gathered(&[&text(&one), &text(&stranger)]), Err(RowsProblem::Stranger { line: 2 }));
    let mut changed = one.clone();
    changed.rows[0].steps += 1;
    let contradiction = Err(RowsProblem::Contradiction { line: 2, seed: 1 });
    assert_eq!(gathered(&[&text(&one), &text(&changed)]), contradiction);
    assert_eq!(gathered(&["seed,policy\n1,planner\n"]), Err(RowsProblem::Head { line: 1 }));
    assert_eq!(gathered(&[&head_line()]), Err(RowsProblem::Empty));
    let short = head_line() + "a,b\n";
    assert_eq!(gathered(&[&short]), Err(RowsProblem::Fields { line: 2, found: 2, expected: 31 }));
    let wrong = text(&one).replace(",planner,", ",guesser,");
    let problem = gathered(&[&wrong]).unwrap_err();
    assert!(matches!(problem, RowsProblem::Field { column: "policy", .. }), "{problem:?}");
    // Bounds that are out of order, or of which one is missing, are none.
    for most in ["131.1", ""] {
        let wrong = text(&one).replace("133.7", most);
        let problem = gathered(&[&wrong]).unwrap_err();
        assert!(matches!(problem, RowsProblem::Field { column: "value_most", .. }), "{problem:?}");
    }
    // The sum is there for those who read the file with other programs, and may not lie.
    let wrong = text(&one).replace("518.85", "518.86");
    let problem = gathered(&[&wrong]).unwrap_err();
    assert!(matches!(problem, RowsProblem::Field { column: "cost", .. }), "{problem:?}");
}

/// Files of the version before have one figure where there are two now: they are told apart from what is
/// no table, alone and behind one of today.
#[test]
fn limit_a_table_of_another_version_is_named_with_its_line() {
    let old = "trial 1 scenario,fingerprint\nmarket-hill,0123\n";
    let other = |line| Err(RowsProblem::OtherVersion { line, version: 1 });
    assert_eq!(gathered(&[old]), other(1));
    let today = text(&Rows { of: origin(), rows: vec![row(1, Policy::Planner)] });
    // The name of the scenario has an end of line in it.
    assert_eq!(gathered(&[&(today.clone() + old)]), other(4));
    assert_eq!(gathered(&[&today, old]), other(1));
}

proptest! {
    #[test]
    fn prop_round_trip_of_a_row(
        seed in any::<u64>(),
        things in -1_000_000..1_000_000_i64,
        total in 0.0..100.0_f64,
        regret in proptest::option::of((0.0..1e6_f64, 0.0..1e6_f64)),
        fault in "[ -~\n]{0,20}",
        judged in any::<bool>(),
    ) {
        let mut row = row(seed, Policy::NearFirst);
        row.things = Money(things);
        row.fault = fault;
        let regret = regret.map(|(lower, more)| Bounds { lower, upper: lower + more });
        row.judged = row.judged.filter(|_| judged).map(|it| Judged { total, regret, ..it });
        let rows = Rows { of: origin(), rows: vec![row] };
        prop_assert_eq!(gathered(&[&text(&rows)]).unwrap(), rows);
    }
}
