//! The hybrid logical clock: wall time where it runs forward, a counter where it does not.
//!
//! Method: Kulkarni, Demirbas, Madappa, Avva and Leone, *Logical physical clocks* (OPODIS 2014), standing: memory. The
//! crates that implement it read the clock themselves; here `now` comes in as a value, so the core stays a function.

use std::fmt;
use std::str::FromStr;

use layshaft_wire::message;

use crate::error::Refused;
use crate::message::FieldMessage;

/// A device's id: 64 random bits, drawn once by the host.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Device(pub u64);

/// When and where a change was made. Stamps of all devices stand in one total order, and as text they sort the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Stamp {
    /// Milliseconds since 1970 (UTC) as the device's clock said, or later when the clock ran backwards.
    pub millis: u64,
    /// Tells changes of the same millisecond apart.
    pub count: u32,
    /// The device.
    pub device: Device,
}

impl Stamp {
    /// The next stamp on `device` after `latest` (the greatest stamp known there), at wall time `now_ms`.
    ///
    /// It is greater than `latest` whatever the clock says.
    ///
    /// ```
    /// use layshaft_core::changes::{Device, Stamp};
    /// let first = Stamp::next(None, 1_000, Device(7));
    /// let clock_ran_back = Stamp::next(Some(first), 400, Device(7));
    /// assert!(clock_ran_back > first);
    /// ```
    pub fn next(latest: Option<Stamp>, now_ms: i64, device: Device) -> Stamp {
        let now = u64::try_from(now_ms).unwrap_or(0);
        match latest {
            Some(stamp) if stamp.millis >= now => match stamp.count.checked_add(1) {
                Some(count) => Stamp { millis: stamp.millis, count, device },
                None => Stamp { millis: stamp.millis.saturating_add(1), count: 0, device },
            },
            _ => Stamp { millis: now, count: 0, device },
        }
    }
}

impl fmt::Display for Stamp {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:016x}-{:08x}-{:016x}", self.millis, self.count, self.device.0)
    }
}

/// What is no stamp.
#[message("changes")]
pub(crate) enum ChangesMessage {
    /// A text that is none.
    NoStamp { text: String },
}

impl FromStr for Stamp {
    type Err = Refused;

    fn from_str(text: &str) -> Result<Self, Refused> {
        let bad = || Refused::Unreadable {
            field: "stamp".to_owned(),
            label: FieldMessage::Stamp.into(),
            reason: ChangesMessage::NoStamp { text: text.to_owned() }.into(),
        };
        let parts: Vec<&str> = text.split('-').collect();
        let [millis, count, device] = parts.as_slice() else { return Err(bad()) };
        if millis.len() != 16 || count.len() != 8 || device.len() != 16 {
            return Err(bad());
        }
        Ok(Stamp {
            millis: u64::from_str_radix(millis, 16).map_err(|_| bad())?,
            count: u32::from_str_radix(count, 16).map_err(|_| bad())?,
            device: Device(u64::from_str_radix(device, 16).map_err(|_| bad())?),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_and_stamp_stand_in_the_same_order_and_read_back() {
        let stamps = [
            Stamp { millis: 9, count: 300, device: Device(1) },
            Stamp { millis: 10, count: 0, device: Device(u64::MAX) },
            Stamp { millis: 10, count: 2, device: Device(0) },
        ];
        for pair in stamps.windows(2) {
            assert!(pair[0] < pair[1] && pair[0].to_string() < pair[1].to_string());
        }
        for stamp in stamps {
            assert_eq!(stamp.to_string().parse::<Stamp>(), Ok(stamp));
        }
        assert!("x".parse::<Stamp>().is_err());
        assert!("1-2-3".parse::<Stamp>().is_err());
    }

    #[test]
    fn a_full_counter_moves_on_to_the_next_millisecond() {
        let full = Stamp { millis: 5, count: u32::MAX, device: Device(1) };
        assert_eq!(Stamp::next(Some(full), 5, Device(1)), Stamp { millis: 6, count: 0, device: Device(1) });
    }
}
