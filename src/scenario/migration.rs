//! What an older version of the scenario's format says, in the words of the newest one.
//!
//! A text is changed, not data: what no longer exists becomes blanks and what was renamed is padded, so that everything
//! that stays keeps its place, and a problem is shown where it is in the file. A text that is of no older version, or has
//! nothing to change, is left alone.
//!
//! Version 1, before its end: a road's segment named the wanted angles of both camshafts, which the module's maps have said
//! since, and called the road speed `speed_kmh`.

use super::outline::Outline;

/// What a segment of version 1 may have, which says nothing any more: the module's maps know it.
const GONE: [&str; 4] = ["intake_target", "exhaust_target", "intake_deg", "exhaust_deg"];
/// A name of version 1 and the one that it has now, which is shorter.
const RENAMED: (&str, &str) = ("speed_kmh", "km_h");
/// A field that every segment has had from the first.
const OF_SEGMENT: &str = "until_s";

/// A scenario's text in the words of the newest version, if it is older and says anything otherwise.
pub(super) fn of_scenario(text: &str, outline: &Outline<'_>) -> Option<String> {
    let (_, version) = outline.written("version")?;
    if version != "1" {
        return None;
    }
    let mut renewed = text.as_bytes().to_vec();
    let mut is_changed = false;
    for (start, end) in GONE.iter().flat_map(|field| outline.fields_beside(field, OF_SEGMENT)) {
        let after = text.get(end..)?;
        let blanks = after.len() - after.trim_start().len();
        // The comma goes with its field; before it there is nothing but blanks, or else it stays.
        let comma = usize::from(after.get(blanks..)?.starts_with(','));
        blank(renewed.get_mut(start..end + comma * (blanks + 1))?);
        is_changed = true;
    }
    for (start, _) in outline.fields_beside(RENAMED.0, OF_SEGMENT) {
        let name = renewed.get_mut(start..start + RENAMED.0.len())?;
        blank(name);
        name.get_mut(..RENAMED.1.len())?.copy_from_slice(RENAMED.1.as_bytes());
        is_changed = true;
    }
    if is_changed { String::from_utf8(renewed).ok() } else { None }
}

/// Leaves nothing but the ends of lines.
fn blank(part: &mut [u8]) {
    for byte in part.iter_mut().filter(|byte| **byte != b'\n') {
        *byte = b' ';
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn renewed(text: &str) -> Option<String> {
        of_scenario(text, &Outline::of(text))
    }

    #[test]
    fn limit_what_is_gone_becomes_blanks_and_everything_else_keeps_its_place() {
        let old = "(version: 1, routes: {\"a\": (segments: [\n\
            (until_s: 8, intake_deg: 0 , exhaust_target:\n2, speed_kmh: 7),\n])})";
        let new = old
            .replace("intake_deg: 0 ,", &" ".repeat(15))
            .replace("exhaust_target:\n2,", &format!("{}\n  ", " ".repeat(15)))
            .replace("speed_kmh", "km_h     ");
        assert_eq!(renewed(old), Some(new));
    }

    #[test]
    fn limit_nothing_else_is_touched() {
        // Another version, another struct, nothing old.
        for text in [
            "(version: 2, s: (until_s: 8, intake_deg: 0))",
            "(version: 1, s: (intake_deg: 0, speed_kmh: 1))",
            "(version: 1, s: (until_s: 8, km_h: 0))",
            "(version: 1, s: {\"until_s\": 8, \"intake_deg\": 0})",
            "(s: (until_s: 8, intake_deg: 0))",
            "",
        ] {
            assert_eq!(renewed(text), None, "{text}");
        }
    }
}
