//! Caps of lamps: what fits into which holder.
//!
//! Cap names are those of IEC 60061 as the lamp sheets of UN R37 use them. BAY15d and PX13.5s were seen in Directive
//! 97/24/EC, chapter 2; the others are from memory.

use layshaft_wire::wire;

use crate::electrical::message::{ElectricalMessage, ElectricalSource};
use crate::message::{ListStyle, Message};
use crate::quantity::{Source, Standing};
use crate::record::LampCap;

/// Whether a lamp goes into the holder of another.
#[wire]
pub enum CapFit {
    /// The same cap.
    Fits,
    /// Another cap: it does not go in, or must not.
    DoesNotFit,
    /// One of the two caps is not known: look before you buy.
    Unknown,
}

/// Whether a lamp fits a holder, and why.
///
/// ```
/// use layshaft_core::electrical::{CapFit, cap_fits};
/// use layshaft_core::record::LampCap;
/// assert_eq!(cap_fits(Some(LampCap::Ba15s), Some(LampCap::Ba15s)).0, CapFit::Fits);
/// assert_eq!(cap_fits(Some(LampCap::Ba15s), Some(LampCap::Bau15s)).0, CapFit::DoesNotFit);
/// assert_eq!(cap_fits(None, Some(LampCap::Ba15s)).0, CapFit::Unknown);
/// ```
pub fn cap_fits(holder: Option<LampCap>, lamp: Option<LampCap>) -> (CapFit, Message) {
    let (Some(holder), Some(lamp)) = (holder, lamp) else {
        return (CapFit::Unknown, ElectricalMessage::CapUnknown.into());
    };
    if holder == lamp {
        return (CapFit::Fits, ElectricalMessage::CapSame { cap: lamp.written().to_owned() }.into());
    }
    let other = ElectricalMessage::CapOther {
        holder: holder.written().to_owned(),
        holder_looks: holder.looks(),
        lamp: lamp.written().to_owned(),
        lamp_looks: lamp.looks(),
    };
    let mut said = vec![other.into()];
    let like_15 = [LampCap::Ba15s, LampCap::Ba15d, LampCap::Bau15s, LampCap::Bay15d];
    if like_15.contains(&holder) && like_15.contains(&lamp) {
        said.push(ElectricalMessage::CapKeptApart.into());
    }
    if [holder, lamp].contains(&LampCap::P43t) && [holder, lamp].contains(&LampCap::Px43t) {
        said.push(ElectricalMessage::CapStronger.into());
    }
    (CapFit::DoesNotFit, Message::joined(ListStyle::Sentences, said))
}

/// Where the caps come from.
pub(crate) fn cap_source() -> Source {
    Source::new(ElectricalSource::Caps, Standing::Memory)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::LampCap;

    #[test]
    fn every_cap_fits_itself_and_no_other() {
        for holder in LampCap::ALL {
            for lamp in LampCap::ALL {
                let fits = cap_fits(Some(*holder), Some(*lamp)).0 == CapFit::Fits;
                assert_eq!(fits, holder == lamp);
            }
        }
    }

    #[test]
    fn caps_that_are_kept_apart_on_purpose_say_so() {
        assert!(cap_fits(Some(LampCap::Ba15s), Some(LampCap::Bay15d)).1.english().contains("do not file"));
        assert!(cap_fits(Some(LampCap::Px43t), Some(LampCap::P43t)).1.english().contains("melt the reflector"));
    }
}
