//! One thing for each bank of cylinders, and the name of a camshaft by its sort and its bank.

use super::per_cam::{Cam, PerCam};
use crate::control_module::code_family::Bank;
use serde::{Deserialize, Serialize};

/// Which camshaft of which bank.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CamPlace {
    /// The bank.
    pub bank: Bank,
    /// Which of its camshafts.
    pub cam: Cam,
}

impl CamPlace {
    /// The intake camshaft of bank one: of an engine in line, the only one.
    pub const INTAKE: Self = Self { bank: Bank::One, cam: Cam::Intake };
    /// The exhaust camshaft of bank one.
    pub const EXHAUST: Self = Self { bank: Bank::One, cam: Cam::Exhaust };
}

impl Cam {
    /// This camshaft of a bank.
    #[must_use]
    pub const fn on(self, bank: Bank) -> CamPlace {
        CamPlace { bank, cam: self }
    }
}

/// One thing for each bank. An engine in line has one bank, a V engine two; there is no engine without.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PerBank<T> {
    /// That of the bank with cylinder 1.
    pub one: T,
    /// That of the other bank, where there is one.
    pub two: Option<T>,
}

impl<T> PerBank<T> {
    /// That of an engine in line.
    pub const fn single(one: T) -> Self {
        Self { one, two: None }
    }

    /// All of them, bank one first: the order in which everything is done.
    pub fn banks(&self) -> impl Iterator<Item = &T> {
        core::iter::once(&self.one).chain(&self.two)
    }

    /// All of them, to change them.
    pub fn banks_mut(&mut self) -> impl Iterator<Item = &mut T> {
        core::iter::once(&mut self.one).chain(&mut self.two)
    }

    /// The same made from each.
    #[inline]
    pub fn map<'a, U>(&'a self, mut make: impl FnMut(&'a T) -> U) -> PerBank<U> {
        PerBank { one: make(&self.one), two: self.two.as_ref().map(make) }
    }
}

impl<T> PerBank<PerCam<T>> {
    /// One made for each camshaft, bank one first.
    pub fn of_each(has_two: bool, mut make: impl FnMut(CamPlace) -> T) -> Self {
        let mut bank = |bank| PerCam {
            intake: make(Cam::Intake.on(bank)),
            exhaust: make(Cam::Exhaust.on(bank)),
        };
        Self { one: bank(Bank::One), two: has_two.then(|| bank(Bank::Two)) }
    }

    /// The one of a camshaft. Where there is one bank, it stands for whatever bank is asked.
    pub const fn of(&self, place: CamPlace) -> &T {
        match (place.bank, &self.two) {
            (Bank::Two, Some(two)) => two.of(place.cam),
            _ => self.one.of(place.cam),
        }
    }

    /// The one of a camshaft, to change it; as [`Self::of`].
    pub const fn of_mut(&mut self, place: CamPlace) -> &mut T {
        match (place.bank, &mut self.two) {
            (Bank::Two, Some(two)) => two.of_mut(place.cam),
            _ => self.one.of_mut(place.cam),
        }
    }

    /// The names of all camshafts in the order in which everything is done.
    pub fn places(&self) -> impl Iterator<Item = CamPlace> + use<T> {
        let banks: &[Bank] = if self.two.is_some() { &Bank::BOTH } else { &[Bank::One] };
        banks.iter().flat_map(|bank| Cam::BOTH.map(|cam| cam.on(*bank)))
    }

    /// All camshafts in that order, to change them.
    pub fn each_mut(&mut self) -> impl Iterator<Item = &mut T> {
        self.banks_mut().flat_map(|bank| [&mut bank.intake, &mut bank.exhaust])
    }

    /// All camshafts in that order.
    pub fn each(&self) -> impl Iterator<Item = &T> {
        self.banks().flat_map(|bank| [&bank.intake, &bank.exhaust])
    }
}
