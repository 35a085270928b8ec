//! What is open, what must be, and what getting there costs.

use super::compiled::Flaw;
use super::problem::Cover;

/// Covers that are open, one bit each in the order of the problem.
pub type Open = u64;

/// The covers of a problem.
#[derive(Debug, Clone)]
pub struct Covers {
    open_cost: Vec<f64>,
    shut_cost: Vec<f64>,
    /// What must be open for this one to be open, itself included.
    needs: Vec<Open>,
    /// What must be shut when this one is, itself included.
    holds: Vec<Open>,
    /// A cover that must be shut while any of some others is moved.
    guard: Option<(usize, Open)>,
}

/// What a step asks of the covers, and leaves behind.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Demand {
    /// Must be open.
    pub open: Open,
    /// Must be shut.
    pub shut: Open,
}

impl Covers {
    /// Most covers of a problem.
    pub const MOST: usize = 64;

    /// Prepares covers.
    ///
    /// # Errors
    /// [`Flaw`] when there are too many, a name is unknown, a cost is no cost, or covers are in
    /// each other's way.
    pub fn new(covers: &[Cover]) -> Result<Self, Flaw> {
        if covers.len() > Self::MOST {
            return Err(Flaw::TooMany { what: "covers", most: Self::MOST, found: covers.len() });
        }
        let mut needs: Vec<Open> = Vec::with_capacity(covers.len());
        for (number, cover) in covers.iter().enumerate() {
            for cost in [cover.open, cover.shut] {
                if !(cost.is_finite() && cost >= 0.0) {
                    return Err(Flaw::Cost { of: cover.name.clone(), cost });
                }
            }
            let mut mask = 1 << number;
            for name in &cover.behind {
                mask |= 1 << place(covers, name)?;
            }
            needs.push(mask);
        }
        // Whatever is needed for what is needed is needed.
        for _ in 0..covers.len() {
            for number in 0..covers.len() {
                needs[number] = (0..covers.len())
                    .filter(|other| needs[number] >> other & 1 == 1)
                    .fold(needs[number], |mask, other| mask | needs[other]);
            }
        }
        for (number, cover) in covers.iter().enumerate() {
            let circle = (0..covers.len()).any(|other| {
                other != number
                    && needs[number] >> other & 1 == 1
                    && needs[other] >> number & 1 == 1
            });
            if circle || cover.behind.contains(&cover.name) {
                return Err(Flaw::Circle { cover: cover.name.clone() });
            }
        }
        let holds = (0..covers.len())
            .map(|number| {
                (0..covers.len())
                    .filter(|other| needs[*other] >> number & 1 == 1)
                    .fold(0, |mask, other| mask | 1 << other)
            })
            .collect();
        Ok(Self {
            open_cost: covers.iter().map(|cover| cover.open).collect(),
            shut_cost: covers.iter().map(|cover| cover.shut).collect(),
            needs,
            holds,
            guard: None,
        })
    }

    /// The same covers, of which one must be shut while any of some others is opened or shut, as a
    /// key must be off while a connector is touched; it is opened again where a step wants it so.
    #[must_use]
    pub fn guarded(mut self, guard: usize, moved: Open) -> Self {
        self.guard = Some((guard, moved & !(1 << guard)));
        self
    }

    /// What opening some covers costs, one after another and nothing else.
    #[must_use]
    pub fn opening(&self, opened: Open) -> f64 {
        sum(opened, &self.open_cost)
    }

    /// What shutting what is open costs at least, one after another and nothing else.
    #[must_use]
    pub fn shutting(&self, open: Open) -> f64 {
        sum(open, &self.shut_cost)
    }

    /// What a step with these lists asks for.
    ///
    /// # Errors
    /// [`Flaw`] when a name is unknown or something would have to be open and shut at once.
    pub fn demand(
        &self,
        covers: &[Cover],
        step: &str,
        open: &[String],
        shut: &[String],
    ) -> Result<Demand, Flaw> {
        let mut demand = Demand::default();
        for name in open {
            demand.open |= self.needs[place(covers, name)?];
        }
        for name in shut {
            demand.shut |= self.holds[place(covers, name)?];
        }
        if demand.open & demand.shut != 0 {
            return Err(Flaw::OpenAndShut { step: step.to_owned() });
        }
        Ok(demand)
    }

    /// Cost of meeting a demand, and what is open then.
    #[must_use]
    pub fn meet(&self, open: Open, demand: Demand) -> (f64, Open) {
        let opening = demand.open & !open;
        let shutting = demand.shut & open;
        let mut cost = sum(opening, &self.open_cost) + sum(shutting, &self.shut_cost);
        if let Some((guard, moved)) = self.guard {
            let key: Open = 1 << guard;
            if open & key != 0 && (opening | shutting) & moved != 0 && shutting & key == 0 {
                cost += self.shut_cost[guard];
                if demand.open & key == 0 {
                    return (cost, (open | opening) & !shutting & !key);
                }
                cost += self.open_cost[guard];
            }
        }
        (cost, (open | opening) & !shutting)
    }
}

fn sum(mut mask: Open, costs: &[f64]) -> f64 {
    let mut sum = 0.0;
    while mask != 0 {
        sum += costs[mask.trailing_zeros() as usize];
        mask &= mask - 1;
    }
    sum
}

fn place(covers: &[Cover], name: &str) -> Result<usize, Flaw> {
    covers
        .iter()
        .position(|cover| cover.name == name)
        .ok_or_else(|| Flaw::Unknown { what: "cover", name: name.to_owned() })
}
