//! A whole session worked by a virtual apprentice.

use super::seen::{Seen, VirtualApprentice};
use crate::session::attempt::Session;
use crate::vehicle::error::VehicleError;

/// Steps after which a session that has not ended is given up: three to four times what careful work
/// takes, which is 45 to 60 steps in the written solutions.
pub const MOST_STEPS: usize = 200;

/// Works a session until the vehicle is handed back, and says whether it was: an apprentice who is
/// not done after [`MOST_STEPS`] steps never will be, which counts as a failure.
///
/// # Errors
/// [`VehicleError`] when a vehicle cannot be simulated.
pub fn work(
    session: &mut Session,
    apprentice: &mut dyn VirtualApprentice,
) -> Result<bool, VehicleError> {
    while session.ending().is_none() {
        if session.log().len() >= MOST_STEPS {
            return Ok(false);
        }
        let step = apprentice.next(Seen::of(session))?;
        session.take(&step)?;
    }
    Ok(true)
}
