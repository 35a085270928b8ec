//! A disk that fills up in the middle of a session: one clear error, and nothing of what was shown is lost.
//!
//! A real file system of a few kilobytes is mounted in a name space of the test's own, and the real program works in
//! it. Where the system forbids that, the test says so and is passed over.

#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]
#![cfg(target_os = "linux")]

use std::path::Path;
use std::process::{Command, Output};

/// Room for the beginning of a session and some steps [KiB]: the scenario's own text takes 26.
const DISK_KIB: u32 = 40;
/// Where the small disk is, for the script.
const SCRIPT: &str = r#"
set -e
mount -t tmpfs -o size="$DISK_KIB"k none "$DISK"
[ "$1" = try ] && exit 0
set +e
for i in $(seq 200); do echo "look engine-bay"; done | "$PROGRAM" bench --seed 3 --session "$DISK/full.session" > "$OUT/said" 2> "$OUT/complained"
echo "first: $?"
grep -c '"entry"' "$DISK/full.session"
cp "$DISK/full.session" "$OUT/left.session"
"#;

fn run(folder: &Path, what: &str) -> Option<Output> {
    let disk = folder.join("disk");
    std::fs::create_dir_all(&disk).unwrap();
    Command::new("unshare")
        .args(["--user", "--map-root-user", "--mount", "sh", "-c", SCRIPT, "sh", what])
        .env("DISK", &disk)
        .env("OUT", folder)
        .env("DISK_KIB", DISK_KIB.to_string())
        .env("PROGRAM", env!("CARGO_BIN_EXE_faultwright"))
        .env("LC_ALL", "C.UTF-8")
        .output()
        .ok()
}

#[test]
fn limit_a_disk_that_fills_up_loses_no_step_that_was_shown() {
    let folder = tempfile::tempdir().unwrap();
    if !run(folder.path(), "try").is_some_and(|tried| tried.status.success()) {
        eprintln!("passed over: no file system can be mounted here");
        return;
    }
    let output = run(folder.path(), "work").unwrap();
    let told = String::from_utf8_lossy(&output.stdout).into_owned();
    let complained = std::fs::read_to_string(folder.path().join("complained")).unwrap();
    // It ends with the code for trouble with files, and says which file, why, and what to do.
    assert!(told.contains("first: 5"), "{told}{complained}");
    assert!(
        complained.contains("full.session") && complained.contains("Make room"),
        "{complained}"
    );
    assert!(!complained.contains("panicked"), "{complained}");
    // Every step that the screen shows is on the disk, and the file can be gone on with where there is room.
    let said = std::fs::read_to_string(folder.path().join("said")).unwrap();
    let kept: usize = told.lines().find_map(|line| line.trim().parse().ok()).unwrap();
    let shown = said.matches("look engine-bay").count();
    assert!(kept > 3 && kept < 200, "{kept} steps fit on the disk");
    assert!(shown <= kept + 1, "{shown} shown, {kept} kept");
    let left = folder.path().join("left.session");
    let again = Command::new(env!("CARGO_BIN_EXE_faultwright"))
        .args(["bench", "--steps", "/dev/null", "--session"])
        .arg(&left)
        .env("LC_ALL", "C.UTF-8")
        .output()
        .unwrap();
    assert!(again.status.success(), "{}", String::from_utf8_lossy(&again.stderr));
}
