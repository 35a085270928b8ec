//! What the program says and how it ends when its window cannot open.
#![cfg(all(feature = "workshop", unix, not(target_os = "macos")))]
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use std::process::{Command, Output};

fn start_on(display: Option<&str>) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_faultwright"));
    command.arg("workshop").env_remove("DISPLAY");
    command.envs(display.map(|name| ("DISPLAY", name)));
    command.output().unwrap()
}

#[test]
fn a_missing_display_is_one_sentence_and_a_code() {
    for (display, named) in
        [(None, "not set"), (Some(":4711"), "\":4711\""), (Some("no such thing"), "no such thing")]
    {
        let output = start_on(display);
        let said = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(3), "{said}");
        assert!(
            said.starts_with("faultwright: ") && said.contains("no display to open a window on"),
            "{said}"
        );
        assert!(said.contains(named) && !said.contains("panicked"), "{said}");
        assert!(output.stdout.is_empty());
    }
}
