//! Bit maps of what is supported: 32 numbers in four bytes, the first number in the highest bit.
//!
//! SAE J1979 uses the same map for parameters, test results and vehicle information. Number $00
//! tells of $01 to $20, number $20 of $21 to $40, and so on; the lowest bit of a map says whether
//! the next map follows.

use std::collections::BTreeSet;

/// Numbers that one map covers.
pub const SPAN: u8 = 0x20;

/// Whether a number asks for a map.
#[must_use]
pub const fn asks_for_map(number: u8) -> bool {
    number.is_multiple_of(SPAN)
}

/// The map at `base`, a multiple of $20, of the supported numbers.
#[must_use]
pub fn map(base: u8, supported: &BTreeSet<u8>) -> [u8; 4] {
    let mut bits = 0_u32;
    for number in supported {
        let offset = number.wrapping_sub(base).wrapping_sub(1);
        if *number > base && offset < SPAN {
            bits |= 1 << (SPAN - 1 - offset);
        }
    }
    // The next map exists as soon as anything stands behind it.
    if base.checked_add(SPAN).is_some_and(|next| supported.range(next..).next().is_some()) {
        bits |= 1;
    }
    bits.to_be_bytes()
}

/// The numbers that the map at `base` names, the number of the next map among them.
#[must_use]
pub fn numbers(base: u8, map: [u8; 4]) -> BTreeSet<u8> {
    let bits = u32::from_be_bytes(map);
    (1..=SPAN)
        .filter(|offset| bits >> (SPAN - offset) & 1 == 1)
        .filter_map(|offset| base.checked_add(offset))
        .collect()
}
