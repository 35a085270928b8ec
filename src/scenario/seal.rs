//! Cases under a seal, to be handed out for assessment.
//!
//! *What it is.* A sealed case holds everything that a program needs to play it, and tells nobody who looks into it which case
//! that is. It has two boxes. The first is for the program on the apprentice's machine, which has to know the fault in order
//! to simulate it: its key comes out of the file itself, so this box keeps off eyes and not programmers. The second is
//! the lock: its key comes out of a passphrase that is not in the file, it covers all the rest, and without it nobody can make another
//! file that an assessor's passphrase opens. So whoever opens a case knows that it is the one that was sealed.
//!
//! *With what.* Boxes are `XChaCha20-Poly1305` (RFC 8439 with a nonce of 24 bytes, draft-irtf-cfrg-xchacha), the lock's key is Argon2id (RFC 9106)
//! with 19 MiB in two passes, the first box's is the program's own digest. All chance is handed in.

use super::draw::Case;
use super::load::ScenarioText;
use crate::numerics::digest::{Digest, DigestBuilder};
use crate::session::journal::{CaseRecord, Mode, Sealed};
use argon2::Argon2;
use chacha20poly1305::aead::{Aead as _, KeyInit as _, Payload};
use chacha20poly1305::{Key, XChaCha20Poly1305, XNonce};
use serde::{Deserialize, Serialize};
use std::fs::File as DiskFile;
use std::io::{self, Read as _};
use std::path::Path;

/// What a hand-out calls itself.
pub const SEALED_FORMAT: &str = "faultwright sealed case";
/// Its version.
pub const SEALED_VERSION: u32 = 1;
/// Letters of the shortest passphrase: a judgement without source; fewer can be tried out one after the other.
pub const SHORTEST_PASSPHRASE: usize = 8;
/// Bytes of the largest hand-out that is read: engineering estimate; scenario and vehicle come to some hundred thousand.
const LARGEST: usize = 8 * 1024 * 1024;

const SALT: usize = 16;
const NONCE: usize = 24;
/// Bytes of chance that a seal takes.
pub const CHANCE: usize = SALT + 2 * NONCE;

/// Why a case could not be sealed or opened.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum SealError {
    /// The file is no sealed case.
    #[error("reading a sealed case: another kind of file")]
    NotSealed,
    /// A version that this program does not know.
    #[error("reading a sealed case: version {found}")]
    OtherVersion {
        /// The version.
        found: u64,
    },
    /// The file is not as it was written.
    #[error("reading a sealed case: damaged")]
    Damaged,
    /// Another passphrase, or the file was altered, which nobody can tell apart.
    #[error("opening a sealed case: wrong passphrase, or altered")]
    NotOpened,
    /// The passphrase has too few letters.
    #[error("sealing a case: the passphrase is too short")]
    ShortPassphrase,
}

/// A hand-out as a file.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    format: String,
    version: u64,
    sealed: Sealed,
}

/// What the lock holds.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Locked {
    seed: u64,
    case: Digest,
}

/// Seals a case for somebody.
///
/// # Errors
/// [`SealError::ShortPassphrase`].
pub fn seal(
    case: &Case,
    name: &str,
    passphrase: &str,
    chance: &[u8; CHANCE],
) -> Result<Sealed, SealError> {
    if passphrase.chars().count() < SHORTEST_PASSPHRASE {
        return Err(SealError::ShortPassphrase);
    }
    let text = &case.scenario.text;
    let record = CaseRecord {
        scenario_name: text.scenario_name.clone(),
        scenario_text: text.scenario_text.clone(),
        vehicle_text: text.vehicle_text.clone(),
        seed: case.seed,
        mode: Mode::Assessed,
        sealed: None,
    };
    let (salt, nonces) = chance.split_at(SALT);
    let (first, second) = nonces.split_at(NONCE);
    let mut sealed = Sealed {
        name: name.to_owned(),
        title: case.briefing.job.title.clone(),
        scenario: fingerprint(text),
        salt: hexadecimal(salt),
        case: String::new(),
        lock: String::new(),
    };
    let inside = serde_json::to_vec(&record).map_err(|_| SealError::Damaged)?;
    sealed.case = shut(&own_key(&sealed), first, (&inside, &[]))?;
    let locked = Locked { seed: case.seed, case: Digest::of(&inside) };
    let locked = serde_json::to_vec(&locked).map_err(|_| SealError::Damaged)?;
    let around = around(&sealed);
    sealed.lock = shut(&key_of(passphrase, salt)?, second, (&locked, &around.0))?;
    Ok(sealed)
}

/// The hand-out as it stands in a file.
#[must_use]
pub fn text(sealed: &Sealed) -> String {
    let file = File {
        format: SEALED_FORMAT.to_owned(),
        version: u64::from(SEALED_VERSION),
        sealed: sealed.clone(),
    };
    // Plain texts alone, which JSON can always write.
    serde_json::to_string_pretty(&file).map_or_else(|_| String::new(), |text| text + "\n")
}

/// Whether a file is no scenario but may be a hand-out: the one begins with a brace, the other with a bracket. What cannot be
/// read is left to whoever reads it.
#[must_use]
pub fn may_be_one(path: &Path) -> bool {
    let mut start = String::new();
    let read = DiskFile::open(path).and_then(|file| file.take(1 << 10).read_to_string(&mut start));
    read.is_ok() && start.trim_start().starts_with('{')
}

/// Reads a hand-out from a file, and no more of it than one may hold.
///
/// # Errors
/// When the file cannot be read; inside, [`SealError`] when it is none, or of another version.
pub fn load(path: &Path) -> io::Result<Result<Sealed, SealError>> {
    let mut text = String::new();
    let read = DiskFile::open(path)?.take(LARGEST as u64 + 1).read_to_string(&mut text);
    match read {
        Err(error) if error.kind() == io::ErrorKind::InvalidData => Ok(Err(SealError::NotSealed)),
        read => read.map(|_| self::read(&text)),
    }
}

/// Reads a hand-out.
///
/// # Errors
/// [`SealError`] when it is none, or of another version.
pub fn read(text: &str) -> Result<Sealed, SealError> {
    #[derive(Deserialize)]
    struct Preface {
        format: String,
        version: u64,
    }
    if text.len() > LARGEST {
        return Err(SealError::NotSealed);
    }
    let preface: Preface = serde_json::from_str(text).map_err(|_| SealError::NotSealed)?;
    if preface.format != SEALED_FORMAT {
        return Err(SealError::NotSealed);
    }
    if preface.version != u64::from(SEALED_VERSION) {
        return Err(SealError::OtherVersion { found: preface.version });
    }
    let file: File = serde_json::from_str(text).map_err(|_| SealError::Damaged)?;
    Ok(file.sealed)
}

/// What a session of a sealed case is kept with.
#[must_use]
pub fn record_of_sealed(sealed: &Sealed) -> CaseRecord {
    CaseRecord {
        scenario_name: String::new(),
        scenario_text: String::new(),
        vehicle_text: String::new(),
        seed: 0,
        mode: Mode::Assessed,
        sealed: Some(Box::new(sealed.clone())),
    }
}

/// The case to be played. It is for the program that plays it and is not to be shown.
///
/// # Errors
/// [`SealError::Damaged`] when it is not as it was written.
pub fn to_play(sealed: &Sealed) -> Result<CaseRecord, SealError> {
    let inside = opened(&own_key(sealed), &sealed.case, &[]).ok_or(SealError::Damaged)?;
    let record: CaseRecord = serde_json::from_slice(&inside).map_err(|_| SealError::Damaged)?;
    let text = ScenarioText {
        scenario_name: record.scenario_name.clone(),
        scenario_text: record.scenario_text.clone(),
        vehicle_text: record.vehicle_text.clone(),
    };
    let is_sound = record.sealed.is_none() && fingerprint(&text) == sealed.scenario;
    if is_sound { Ok(record) } else { Err(SealError::Damaged) }
}

/// Opens a seal: the case, which is then known to be the one that was sealed.
///
/// # Errors
/// [`SealError::NotOpened`] with another passphrase, and where anything of the file was altered.
pub fn open(sealed: &Sealed, passphrase: &str) -> Result<CaseRecord, SealError> {
    let salt = bytes_of(&sealed.salt).ok_or(SealError::Damaged)?;
    let key = key_of(passphrase, &salt)?;
    let locked = opened(&key, &sealed.lock, &around(sealed).0).ok_or(SealError::NotOpened)?;
    let locked: Locked = serde_json::from_slice(&locked).map_err(|_| SealError::NotOpened)?;
    let inside = opened(&own_key(sealed), &sealed.case, &[]).ok_or(SealError::Damaged)?;
    let record = to_play(sealed)?;
    let is_the_same = Digest::of(&inside) == locked.case && record.seed == locked.seed;
    if is_the_same { Ok(record) } else { Err(SealError::NotOpened) }
}

fn fingerprint(text: &ScenarioText) -> Digest {
    let mut builder = DigestBuilder::new("faultwright sealed scenario");
    builder.text(&text.scenario_text);
    builder.text(&text.vehicle_text);
    builder.finish()
}

/// Everything that the lock covers besides what is in it.
fn around(sealed: &Sealed) -> Digest {
    let mut builder = DigestBuilder::new("faultwright sealed case");
    builder.whole(u64::from(SEALED_VERSION));
    builder.text(&sealed.name);
    builder.text(&sealed.title);
    builder.digest(&sealed.scenario);
    builder.text(&sealed.salt);
    builder.text(&sealed.case);
    builder.finish()
}

/// The key of the box that the program itself opens.
fn own_key(sealed: &Sealed) -> [u8; 32] {
    let mut builder = DigestBuilder::new("faultwright sealed case, to be played");
    builder.text(&sealed.salt);
    builder.digest(&sealed.scenario);
    builder.finish().0
}

fn key_of(passphrase: &str, salt: &[u8]) -> Result<[u8; 32], SealError> {
    let mut key = [0; 32];
    // The crate's own choice: Argon2id, 19 MiB, two passes, one lane.
    Argon2::default()
        .hash_password_into(passphrase.as_bytes(), salt, &mut key)
        .map_err(|_| SealError::Damaged)?;
    Ok(key)
}

/// A box with its nonce in front, hexadecimal.
fn shut(
    key: &[u8; 32],
    nonce: &[u8],
    (inside, around): (&[u8], &[u8]),
) -> Result<String, SealError> {
    let cipher = XChaCha20Poly1305::new(&Key::from(*key));
    let nonce: [u8; NONCE] = nonce.try_into().map_err(|_| SealError::Damaged)?;
    let payload = Payload { msg: inside, aad: around };
    let boxed = cipher.encrypt(&XNonce::from(nonce), payload).map_err(|_| SealError::Damaged)?;
    Ok(hexadecimal(&nonce) + &hexadecimal(&boxed))
}

/// What is in a box; `None` with another key, and where anything was altered.
fn opened(key: &[u8; 32], text: &str, around: &[u8]) -> Option<Vec<u8>> {
    let bytes = bytes_of(text)?;
    let (nonce, boxed) = bytes.split_at_checked(NONCE)?;
    let nonce: [u8; NONCE] = nonce.try_into().ok()?;
    let cipher = XChaCha20Poly1305::new(&Key::from(*key));
    cipher.decrypt(&XNonce::from(nonce), Payload { msg: boxed, aad: around }).ok()
}

fn hexadecimal(bytes: &[u8]) -> String {
    let digit = |half: u8| char::from(if half < 10 { b'0' + half } else { b'a' + half - 10 });
    bytes.iter().flat_map(|byte| [digit(byte >> 4), digit(byte & 15)]).collect()
}

/// Small hexadecimal digits, two a byte.
fn bytes_of(text: &str) -> Option<Vec<u8>> {
    let digit = |byte: u8| match byte {
        b'0'..=b'9' => Some(byte - b'0'),
        b'a'..=b'f' => Some(byte - b'a' + 10),
        _ => None,
    };
    let (pairs, rest) = text.as_bytes().as_chunks::<2>();
    if !rest.is_empty() {
        return None;
    }
    pairs.iter().map(|[high, low]| Some(digit(*high)? * 16 + digit(*low)?)).collect()
}
