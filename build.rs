//! Gives the program a fingerprint of its own sources, so that what one build has worked out and kept on
//! disk is never taken for the work of another: a version number stays the same while a model is changed.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// Offset and prime of the 64-bit FNV-1a hash (G. Fowler, L. C. Noll, K.-P. Vo; from memory). It guards
/// against mistaking builds, not against anybody who wants to.
const OFFSET: u64 = 0xcbf2_9ce4_8422_2325;
const PRIME: u64 = 0x0100_0000_01b3;

fn main() -> io::Result<()> {
    let mut files = vec![PathBuf::from("Cargo.lock")];
    collect(Path::new("src"), &mut files)?;
    files.sort();
    let mut hash = OFFSET;
    for file in files.iter().filter(|file| file.exists()) {
        for part in [file.to_string_lossy().as_bytes(), &fs::read(file)?] {
            for byte in part.iter().chain(&[0]) {
                hash = (hash ^ u64::from(*byte)).wrapping_mul(PRIME);
            }
        }
    }
    println!("cargo::rerun-if-changed=src");
    println!("cargo::rerun-if-changed=Cargo.lock");
    println!("cargo::rustc-env=FAULTWRIGHT_SOURCES={hash:016x}");
    Ok(())
}

fn collect(folder: &Path, files: &mut Vec<PathBuf>) -> io::Result<()> {
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            collect(&path, files)?;
        } else {
            files.push(path);
        }
    }
    Ok(())
}
