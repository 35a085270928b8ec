//! The second fence, which needs no parsing: without the window, nothing of its engine is among the dependencies.

use std::process::Command;

/// First letters of the crates that belong to the window.
const OF_THE_WINDOW: &[&str] = &["bevy", "egui", "wgpu", "winit"];

/// The crates of the window in the output of `cargo tree --prefix none`.
fn window_crates(tree: &str) -> Vec<&str> {
    tree.lines()
        .filter_map(|line| line.split_whitespace().next())
        .filter(|name| OF_THE_WINDOW.iter().any(|start| name.starts_with(start)))
        .collect()
}

fn cargo_tree(more: &[&str]) -> String {
    let output = Command::new(env!("CARGO"))
        .args(["tree", "--locked", "--no-default-features", "-e", "normal"])
        .args(more)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout).unwrap()
}

#[test]
fn without_the_window_nothing_of_its_engine_is_there() {
    let tree = cargo_tree(&["--prefix", "none"]);
    assert!(tree.contains("faultwright v") && tree.contains("thiserror v"), "no tree: {tree}");
    if let Some(found) = window_crates(&tree).first() {
        panic!("`{found}` comes with the core, by this path:\n{}", cargo_tree(&["-i", found]));
    }
}

#[test]
fn a_tree_with_the_window_is_refused() {
    for line in [
        "bevy v0.19.1",
        "bevy_ecs v0.19.1",
        "egui v0.36.2 (*)",
        "wgpu-hal v29.0.4",
        "winit v0.30.13",
    ] {
        let tree = format!("faultwright v0.1.0\n{line}\nthiserror v2.0.21\n");
        assert_eq!(window_crates(&tree).len(), 1, "{line}");
    }
    assert!(window_crates("faultwright v0.1.0\nserde v1.0.0\n").is_empty());
}
