//! What the check has against a file.

use std::fmt;

/// One thing that is not allowed, and where it stands.
#[derive(Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Finding {
    pub file: String,
    pub line: usize,
    pub said: String,
}

impl fmt::Display for Finding {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}:{}: {}", self.file, self.line, self.said)
    }
}

/// Fails the test with every finding at once, so that one run shows all there is to do.
pub fn fail_on_any(mut findings: Vec<Finding>, rule: &str) {
    findings.sort();
    findings.dedup();
    let list: Vec<String> = findings.iter().map(ToString::to_string).collect();
    assert!(list.is_empty(), "{rule}\n{}\n", list.join("\n"));
}
