//! Tightening: what the maker says of one joint, kept with where it stands.

use layshaft_wire::wire;

use crate::bounds;
use crate::check;
use crate::error::Refused;
use crate::message::FieldMessage;

/// The maker's torque for one joint of this bike. It wins over every worked-out figure.
#[wire(lenient, stored)]
pub struct Tightening {
    /// The joint: “rear axle nut”.
    pub joint: String,
    /// Torque, N m.
    pub torque_nm: f64,
    /// Where it stands: manual and page.
    pub source: String,
    /// The thread, where it is known: `M10x1.25`.
    pub thread: Option<String>,
    /// What the maker adds: oil, thread lock, in which order, in how many steps.
    pub note: Option<String>,
}

impl Tightening {
    /// The record with its texts trimmed, or the first field that cannot be accepted: a figure without its source is not
    /// the maker's.
    pub fn checked(mut self) -> Result<Self, Refused> {
        self.joint = check::check_title("joint", FieldMessage::Joint, &self.joint)?;
        bounds::TORQUE.check(self.torque_nm)?;
        self.source = check::check_title("source", FieldMessage::MakersTorqueSource, &self.source)?;
        Ok(self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::error::Refusal;

    fn axle_nut() -> Tightening {
        let text = |text: &str| text.to_owned();
        Tightening {
            joint: text(" Rear axle nut "),
            torque_nm: 65.0,
            source: text("manual, page 12"),
            thread: None,
            note: None,
        }
    }

    #[test]
    fn a_torque_is_kept_with_its_joint_and_its_source_and_refused_without() {
        assert_eq!(axle_nut().checked().unwrap().joint, "Rear axle nut");
        let field = |tightening: Tightening| match tightening.checked() {
            Err(refused) => Refusal::from(refused).field.unwrap_or_default(),
            Ok(_) => String::new(),
        };
        assert_eq!(field(Tightening { source: "  ".to_owned(), ..axle_nut() }), "source");
        assert_eq!(field(Tightening { joint: String::new(), ..axle_nut() }), "joint");
        assert_eq!(field(Tightening { torque_nm: 900.0, ..axle_nut() }), "torqueNm");
        assert_eq!(field(Tightening { torque_nm: f64::NAN, ..axle_nut() }), "torqueNm");
    }
}
