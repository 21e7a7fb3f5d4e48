//! Bleeding: where air hides, the steps, and how much fluid must have passed.
//!
//! Volumes are geometry; the order of the steps and “twice the contents” are common practice.

use std::f64::consts::PI;

use layshaft_wire::wire;

use super::hydraulic::piston_area;
use crate::bounds;
use crate::brakes::message::{BleedingMessage, BrakesSource};
use crate::message::Message;
use crate::quantity::{Source, Standing, formula, within};
use crate::record::Brake;
use crate::units::Unit;

/// Bore of a usual brake hose, mm: an eighth of an inch. Common practice, no source.
pub const USUAL_HOSE_BORE_MM: f64 = 3.175;
/// Depth of fluid behind the pistons, with its drillings, mm. Common practice, no source.
pub const USUAL_DEPTH_MM: f64 = 10.0;
/// Stroke of the master cylinder that one stroke of the lever uses, mm. Common practice, no source.
pub const USUAL_STROKE_MM: f64 = 10.0;
/// How many times the contents should pass. Common practice, no source.
pub const TIMES_THROUGH: f64 = 2.0;

/// Volume of a hose, mL: `V = π · d² / 4 · L / 1000`, bore `d` and length `L` in mm.
///
/// Source: geometry; computed. Range: any round bore.
///
/// ```
/// assert!((layshaft_core::brakes::hose_contents(3.175, 900.0) - 7.125574).abs() < 1e-6);
/// ```
pub fn hose_contents(bore_mm: f64, hose_mm: f64) -> f64 {
    PI * bore_mm * bore_mm / 4.0 * hose_mm / 1000.0
}

/// Fluid that must have passed, and the strokes that it takes.
#[wire]
pub struct BleedVolume {
    /// In the hose, mL.
    pub hose_ml: f64,
    /// Behind the pistons, mL.
    pub caliper_ml: f64,
    /// One stroke of the lever, mL.
    pub stroke_ml: f64,
    /// That should have passed before the lever is judged, mL.
    pub through_ml: f64,
    /// Full strokes of the lever for that.
    pub strokes: u32,
}

/// How much must have passed: twice what hose, caliper and one stroke hold.
///
/// `V = 2 · (V_hose + n · A_p · depth / 1000 + A_mc · stroke / 1000)`
///
/// - `pistons` all that the caliper has; diameters, depth and stroke in mm; volumes in mL
///
/// Source: geometry; “twice the contents” common practice. Range: a measure to be sure by, not an exact figure.
///
/// ```
/// let volume = layshaft_core::brakes::bleed_volume((3.175, 900.0), (1, 38.1, 10.0), (12.7, 10.0));
/// assert!((volume.through_ml - 39.5865).abs() < 1e-3 && volume.strokes == 32);
/// ```
pub fn bleed_volume(
    (bore_mm, hose_mm): (f64, f64),
    (pistons, piston_mm, depth_mm): (u32, f64, f64),
    (master_mm, stroke_mm): (f64, f64),
) -> BleedVolume {
    let hose_ml = hose_contents(bore_mm, hose_mm);
    let caliper_ml = f64::from(pistons) * piston_area(piston_mm) * depth_mm / 1000.0;
    let stroke_ml = piston_area(master_mm) * stroke_mm / 1000.0;
    let through_ml = TIMES_THROUGH * (hose_ml + caliper_ml + stroke_ml);
    BleedVolume { hose_ml, caliper_ml, stroke_ml, through_ml, strokes: (through_ml / stroke_ml).ceil() as u32 }
}

/// A step of bleeding.
#[wire]
pub struct BleedStep {
    /// What to do.
    pub text: Message,
    /// What can hurt.
    pub caution: Option<Message>,
}

/// Bleeding as a procedure.
#[wire]
pub struct Bleeding {
    /// The steps, in order.
    pub steps: Vec<BleedStep>,
    /// Where air hides.
    pub air_hides: Vec<Message>,
    /// How much must have passed; none where a size is not known.
    pub volume: Option<BleedVolume>,
}

/// The procedure for a hydraulic brake, with the volume where master cylinder, pistons and hose are known.
pub fn bleeding(brake: &Brake) -> Bleeding {
    let sizes = (brake.hose_mm, brake.master_mm, brake.pistons, brake.piston_mm);
    let volume = if let (Some(hose), Some(master), Some(pistons), Some(piston)) = sizes {
        let in_all = if brake.opposed == Some(true) { 2 * pistons } else { pistons };
        Some(bleed_volume((USUAL_HOSE_BORE_MM, hose), (in_all, piston, USUAL_DEPTH_MM), (master, USUAL_STROKE_MM)))
    } else {
        None
    };
    let through = match &volume {
        Some(volume) => {
            BleedingMessage::GoOnFor { through: Unit::Millilitre.of(volume.through_ml), strokes: volume.strokes }
        }
        None => BleedingMessage::GoOn,
    };
    let opposed = (brake.opposed == Some(true)).then_some(BleedingMessage::AirInOuterHalf);
    let hides = [
        BleedingMessage::AirAtBanjo,
        BleedingMessage::AirInLoop,
        BleedingMessage::AirBehindPistons,
        BleedingMessage::AirInMaster,
    ];
    Bleeding { steps: steps(through), air_hides: hides.into_iter().chain(opposed).map(Message::from).collect(), volume }
}

fn steps(through: BleedingMessage) -> Vec<BleedStep> {
    use BleedingMessage as Says;
    let steps = [
        (Says::LevelReservoir, Some(Says::StripsPaint)),
        (Says::FillFresh, Some(Says::NeverAnotherKind)),
        (Says::HoseInJar, None),
        (Says::PullAndClose, None),
        (Says::TopUp, Some(Says::SucksAir)),
        (through, None),
        (Says::TapHose, None),
        (Says::CloseNipple, None),
        (Says::HoldPressure, Some(Says::CreepsForbidsRiding)),
        (Says::FirstTry, Some(Says::NewPads)),
    ];
    steps.map(|(text, caution)| BleedStep { text: text.into(), caution: caution.map(Message::from) }).to_vec()
}

formula! {
    /// Fluid that must pass when a brake is bled.
    BleedThrough in Brakes, "V = 2 · (π · b² / 4 · L + n · π · d² / 4 · 10 + π · D² / 4 · 10) / 1000"
    takes {
        /// Bore of the hose, millimetres.
        "b" hose_bore_mm: f64 = within(&bounds::HOSE_BORE);
        /// Length of the hose, millimetres.
        "L" hose_mm: f64 = within(&bounds::HOSE_LENGTH);
        /// Pistons of the caliper in all.
        "n" pistons: u32 = within(&bounds::PISTONS);
        /// Diameter of one piston, millimetres.
        "d" piston_mm: f64 = within(&bounds::BORE);
        /// Bore of the master cylinder, millimetres.
        "D" master_mm: f64 = within(&bounds::BORE);
    }
    gives {
        /// Fluid that must pass.
        through "V" Millilitre;
        /// Strokes of the lever.
        strokes "1000 · V / (π · D² / 4 · 10)" None;
        /// Contents of the hose.
        hose "π · b² / 4 · L / 1000" Millilitre;
        /// Contents of the caliper.
        caliper "n · π · d² / 4 · 10 / 1000" Millilitre;
    }
    from Source::new(BrakesSource::Bleeding, Standing::CommonPractice);
    it => {
        let caliper = (it.pistons, it.piston_mm, USUAL_DEPTH_MM);
        let volume = bleed_volume((it.hose_bore_mm, it.hose_mm), caliper, (it.master_mm, USUAL_STROKE_MM));
        Ok([volume.through_ml, f64::from(volume.strokes), volume.hose_ml, volume.caliper_ml])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_volume_appears_when_every_size_is_known() {
        let mut brake = Brake { master_mm: Some(12.7), pistons: Some(1), piston_mm: Some(38.1), ..Brake::default() };
        assert_eq!(bleeding(&brake).volume, None);
        brake.hose_mm = Some(900.0);
        let sliding = bleeding(&brake);
        let volume = sliding.volume.unwrap();
        assert!((volume.hose_ml - 7.1256).abs() < 1e-4 && (volume.caliper_ml - 11.4009).abs() < 1e-4);
        assert!(sliding.steps.iter().any(|step| step.text.english().contains("at least 40 mL")));
        brake.opposed = Some(true);
        let fixed = bleeding(&brake);
        assert!((fixed.volume.unwrap().caliper_ml - 22.8018).abs() < 1e-4);
        assert_eq!(fixed.air_hides.len(), sliding.air_hides.len() + 1);
    }
}
