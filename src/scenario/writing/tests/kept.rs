//! Files are written whole or left as they were.

use crate::scenario::writing::keeping::write_whole;
use std::fs;

#[test]
fn conserves_a_file_is_replaced_whole_and_leaves_nothing_beside_it() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("case.ron");
    for text in ["first\n", "second, and longer than the first\n", "é"] {
        write_whole(&path, text).unwrap();
        assert_eq!(fs::read_to_string(&path).unwrap(), text);
    }
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
}

#[test]
fn conserves_what_cannot_be_written_is_as_it_was() {
    let folder = tempfile::tempdir().unwrap();
    assert!(write_whole(&folder.path().join("none/case.ron"), "text").is_err());
    assert!(write_whole(folder.path(), "text").is_err());
    let path = folder.path().join("case.ron");
    fs::write(&path, "old").unwrap();
    let mut only_read = fs::metadata(&path).unwrap().permissions();
    only_read.set_readonly(true);
    fs::set_permissions(&path, only_read).unwrap();
    assert!(write_whole(&path, "new").is_err());
    assert_eq!(fs::read_to_string(&path).unwrap(), "old");
    // The place where the new text would be written first is taken by something that cannot be replaced.
    let path = folder.path().join("other.ron");
    fs::write(&path, "old").unwrap();
    fs::create_dir(folder.path().join("other.ron.new")).unwrap();
    assert!(write_whole(&path, "new").is_err());
    assert_eq!(fs::read_to_string(&path).unwrap(), "old");
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 3);
}

#[cfg(unix)]
#[test]
fn conserves_a_link_still_leads_to_the_file_that_was_replaced() {
    let folder = tempfile::tempdir().unwrap();
    let (path, link) = (folder.path().join("case.ron"), folder.path().join("link.ron"));
    fs::write(&path, "old").unwrap();
    std::os::unix::fs::symlink("case.ron", &link).unwrap();
    write_whole(&link, "new").unwrap();
    assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
    assert_eq!(fs::read_to_string(&path).unwrap(), "new");
}
