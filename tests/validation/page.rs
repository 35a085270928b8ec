//! The text of docs/validation.md.

use super::area::Area;
use super::chosen::Chosen;
use super::programs::Comparison;
use super::row::{Evidence, Row};
use super::sources;
use std::fmt::Write as _;

const HEAD: &str = "\
# Validation

This page is written by a test; do not edit it. `cargo test --no-default-features --test validation`
compares every row again and fails when this page is not what it would write;
`FAULTWRIGHT_WRITE_VALIDATION=1` before the same command writes it. The rows are in `tests/validation`.

Each row calls the very function that a session calls and compares it with something from outside.
\"Allowed\" is how far the two may lie apart and why. Agreement shows that the arithmetic is right;
it does not show that a real engine behaves so, because most parameters are estimates
([docs/physics.md](physics.md) says which).
";

/// The whole page.
pub fn text(areas: &[Area], comparisons: &[Comparison], chosen: &[Chosen]) -> String {
    let mut page = HEAD.to_owned();
    summary(&mut page, areas, comparisons);
    for area in areas {
        table(&mut page, area);
    }
    programs(&mut page, comparisons);
    fitted(&mut page, chosen);
    list_of_sources(&mut page);
    page
}

fn put(page: &mut String, line: &str) {
    writeln!(page, "{line}").expect("text grows");
}

fn summary(page: &mut String, areas: &[Area], comparisons: &[Comparison]) {
    put(page, "\n| evidence | rows | what it is |\n| --- | --- | --- |");
    for evidence in Evidence::ALL {
        let rows = areas.iter().flat_map(|area| &area.rows);
        let count = rows.filter(|row| row.evidence == evidence).count();
        put(page, &format!("| {} | {count} | {} |", evidence.name(), evidence.meaning()));
    }
    let values: usize = comparisons.iter().map(|comparison| comparison.compared).sum();
    put(
        page,
        &format!(
            "| reference program, stored | {} tables, {values} values | tables of another program's answers |",
            comparisons.len()
        ),
    );
}

fn table(page: &mut String, area: &Area) {
    put(page, &format!("\n## {}\n\nCalls {}.", area.title, area.calls));
    if !area.note.is_empty() {
        put(page, area.note);
    }
    put(
        page,
        "\n| item | source | published | ours | difference | allowed | evidence |\n\
         | --- | --- | --- | --- | --- | --- | --- |",
    );
    for row in &area.rows {
        put(page, &line(row));
    }
}

fn line(row: &Row) -> String {
    format!(
        "| {} | {} | {} | {} | {} | {} | {} |",
        row.item,
        row.source.key,
        row.published_text(),
        row.ours_text(),
        row.difference_text(),
        row.allowed_text(),
        row.evidence.name()
    )
}

fn programs(page: &mut String, comparisons: &[Comparison]) {
    put(
        page,
        "\n## Other programs\n\n\
         The other side was written from the description of the model, in another language, with \
         another method; its answers are stored in `tests/reference`. Where ngspice is installed \
         `cargo test --test reference` also asks it anew.\n\n\
         | what | stored in | other program | values | greatest difference | allowed |\n\
         | --- | --- | --- | --- | --- | --- |",
    );
    for comparison in comparisons {
        put(
            page,
            &format!(
                "| {} | `{}` | {} | {} | {} | {} |",
                comparison.what,
                comparison.stored_in,
                comparison.program,
                comparison.compared,
                comparison.greatest,
                comparison.allowed
            ),
        );
    }
}

fn fitted(page: &mut String, chosen: &[Chosen]) {
    put(
        page,
        "\n## Figures that were chosen\n\n\
         These parameters were chosen with the published figure in view. They are shown so that a \
         reader can judge the choice; they validate nothing and are counted nowhere above.\n\n\
         | item | source | published | chosen |\n| --- | --- | --- | --- |",
    );
    for entry in chosen {
        put(
            page,
            &format!(
                "| {} | {} | {} | {} |",
                entry.item, entry.source, entry.published, entry.ours
            ),
        );
    }
}

fn list_of_sources(page: &mut String) {
    put(page, "\n## Sources\n");
    for source in sources::ALL {
        put(page, &format!("- **{}**: {}", source.key, source.text));
    }
}
