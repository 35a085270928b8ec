//! What the journal's tests share: a case, some steps, and a file in memory that fails on demand.

mod corpus;
mod files;
mod reading;
mod samples;
mod tampering;
mod writing;

use super::LARGEST_BYTES;
use super::line::{decode, header_line};
use super::record::{CaseRecord, Mode, Recorded};
use super::writer::{Standing, Store, Writer};
use crate::instruments::multimeter::{Display, MeterFunction, Prefix};
use crate::session::event::Event;
use crate::session::step::{Bound, Section, Step};
use crate::units::{Minutes, Money};
use std::cell::RefCell;
use std::io;
use std::rc::Rc;

/// Version that the tests' journals name, so that the program's own can change.
const PROGRAM: &str = "0.0.0-test";

fn case() -> CaseRecord {
    CaseRecord {
        scenario_name: "öl".to_owned(),
        scenario_text: "(\n\t\"x\"\n)".to_owned(),
        vehicle_text: "v".to_owned(),
        seed: u64::MAX,
        mode: Mode::Assessed,
        sealed: None,
    }
}

/// Four steps with what followed from each.
fn taken() -> Vec<(Step, Vec<Event>)> {
    let reading = Event::Reading {
        function: MeterFunction::Ohms,
        red: "a".into(),
        black: "b".into(),
        display: Display::Value { value: 7.4, decimals: 1, prefix: Prefix::One },
        tolerance: 0.267,
    };
    let spent = Event::Spent { minutes: Minutes(2), money: Money(0) };
    vec![
        (samples::predicted(0.1, Bound::Value(12.5)), vec![Event::Predicted]),
        (
            Step::Measure { function: MeterFunction::Ohms, red: "a".into(), black: "b".into() },
            vec![reading, spent],
        ),
        (Step::Dipstick, vec![]),
        (
            Step::Write { section: Section::Cause, text: "Rost\n„grün“".to_owned() },
            vec![Event::Written { section: Section::Cause }],
        ),
    ]
}

/// A file in memory, and what it refuses.
struct Disk {
    bytes: Vec<u8>,
    capacity: usize,
    has_name: bool,
    refuses_write: bool,
    refuses_sync: bool,
    refuses_cut: bool,
    /// What was asked of it: `w`rite, `s`ync, `c`ut.
    calls: String,
}

impl Default for Disk {
    fn default() -> Self {
        Self {
            bytes: Vec::new(),
            capacity: usize::MAX,
            has_name: true,
            refuses_write: false,
            refuses_sync: false,
            refuses_cut: false,
            calls: String::new(),
        }
    }
}

type Shared = Rc<RefCell<Disk>>;

impl Store for Shared {
    fn standing(&self) -> io::Result<Standing> {
        let disk = self.borrow();
        Ok(Standing { length: disk.bytes.len() as u64, has_name: disk.has_name })
    }

    fn write_at(&mut self, offset: u64, bytes: &[u8]) -> io::Result<usize> {
        let mut disk = self.borrow_mut();
        disk.calls.push('w');
        assert_eq!(offset, disk.bytes.len() as u64, "a journal only grows at its end");
        let room = disk.capacity.saturating_sub(disk.bytes.len()).min(bytes.len());
        if disk.refuses_write {
            return Err(io::ErrorKind::Other.into());
        }
        if room == 0 {
            return Err(io::ErrorKind::StorageFull.into());
        }
        disk.bytes.extend_from_slice(&bytes[..room]);
        Ok(room)
    }

    fn sync(&mut self) -> io::Result<()> {
        let mut disk = self.borrow_mut();
        disk.calls.push('s');
        if disk.refuses_sync { Err(io::ErrorKind::Other.into()) } else { Ok(()) }
    }

    fn cut(&mut self, length: u64) -> io::Result<()> {
        let mut disk = self.borrow_mut();
        disk.calls.push('c');
        if disk.refuses_cut {
            return Err(io::ErrorKind::Other.into());
        }
        disk.bytes.truncate(usize::try_from(length).unwrap());
        Ok(())
    }
}

/// A journal in memory with its header.
fn begun(limit: u64) -> (Shared, Writer<Shared>) {
    let disk = Shared::default();
    let header = header_line(PROGRAM, &case()).unwrap();
    let writer = Writer::begin(Rc::clone(&disk), &header, limit).unwrap();
    (disk, writer)
}

/// The bytes of a journal of these steps.
fn written(taken: &[(Step, Vec<Event>)]) -> Vec<u8> {
    let (disk, mut writer) = begun(LARGEST_BYTES);
    for (step, events) in taken {
        writer.append(step, events).unwrap();
    }
    disk.borrow().bytes.clone()
}

/// The journal of [`taken`], and how it reads.
fn sample() -> (Vec<u8>, Recorded) {
    let bytes = written(&taken());
    let recorded = decode(&bytes).unwrap();
    (bytes, recorded)
}

/// The lines of a journal, newlines included.
fn lines(bytes: &[u8]) -> Vec<Vec<u8>> {
    bytes.split_inclusive(|byte| *byte == b'\n').map(<[u8]>::to_vec).collect()
}
