//! A class: who gets a case, and what each of them gets.

use super::trouble::Trouble;
use std::fs::File;
use std::io::Read as _;
use std::path::Path;

/// Bytes of the longest list that is read, and names of the largest class.
const LARGEST: u64 = 1 << 16;
const MOST: usize = 1_000;

/// The names in a file, one a line; empty lines and what stands behind `#` do not count.
///
/// # Errors
/// [`Trouble`] when it cannot be read, names nobody, or too many.
pub fn names(path: &Path) -> Result<Vec<String>, Trouble> {
    let trouble = |source| Trouble::File { path: path.to_owned(), source };
    let mut text = String::new();
    File::open(path).map_err(trouble)?.take(LARGEST).read_to_string(&mut text).map_err(trouble)?;
    let names = of_text(&text);
    if (1..=MOST).contains(&names.len()) {
        Ok(names)
    } else {
        Err(Trouble::Class { path: path.to_owned(), found: names.len(), most: MOST })
    }
}

fn of_text(text: &str) -> Vec<String> {
    text.lines()
        .map(|line| line.split('#').next().unwrap_or_default())
        .map(|line| line.chars().filter(|c| !c.is_control()).collect::<String>().trim().to_owned())
        .filter(|name| !name.is_empty())
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limit_a_line_is_a_name_unless_it_is_empty_or_a_comment() {
        let text = "Anna\n\n  Ben B. # second year\r\n# nobody\nÇelik\n";
        assert_eq!(of_text(text), ["Anna", "Ben B.", "Çelik"]);
    }
}
