//! Texts on the disk: whole or not at all.

use std::fs::{self, File};
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

/// Writes a text in the place of a file. It is written beside it first and takes its place only when the disk has all of it, so
/// that whoever reads finds the old text or the new one, whatever happens meanwhile.
///
/// # Errors
/// What the system says when it cannot be written; the file is then as it was.
pub fn write_whole(path: &Path, text: &str) -> io::Result<()> {
    // What a link leads to is replaced, and not the link.
    let path = &fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    let old = fs::metadata(path).ok();
    // A folder would let a file be replaced that may not be written itself.
    if old.as_ref().is_some_and(|old| old.permissions().readonly()) {
        return Err(io::ErrorKind::PermissionDenied.into());
    }
    if old.as_ref().is_some_and(fs::Metadata::is_dir) {
        return Err(io::ErrorKind::IsADirectory.into());
    }
    let new = beside(path);
    let written = File::create(&new).and_then(|mut file| {
        file.write_all(text.as_bytes())?;
        file.sync_all()
    });
    let moved = written.and_then(|()| {
        // The new file is to be as readable as the one that it replaces.
        if let Some(old) = old {
            fs::set_permissions(&new, old.permissions())?;
        }
        fs::rename(&new, path)
    });
    if moved.is_err() {
        // It may be half a file, and nobody asks for it.
        let _ = fs::remove_file(&new);
    }
    moved
}

fn beside(path: &Path) -> PathBuf {
    let mut name = path.file_name().unwrap_or_default().to_owned();
    name.push(".new");
    path.with_file_name(name)
}
