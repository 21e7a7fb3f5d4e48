//! What an element of a circuit is, with its figures.

use layshaft_wire::wire;

/// What an alternator with its regulator can give in one state of the engine.
#[wire(stored)]
pub struct OutputAt {
    /// Position of the switch that stands for the engine.
    pub position: String,
    /// Current, amperes.
    pub amperes: f64,
}

/// What a lighting coil is in one state of the engine. Both figures grow with its speed.
#[wire(stored)]
pub struct CoilAt {
    /// Position of the switch that stands for the engine.
    pub position: String,
    /// Induced voltage, volts, effective value.
    pub emf_volts: f64,
    /// Reactance, ohms.
    pub reactance_ohms: f64,
}

/// What an element is.
#[wire(stored)]
pub enum Component {
    /// A battery: an electromotive force behind its own resistance.
    Battery {
        /// Voltage without load, volts.
        emf_volts: f64,
        /// Internal resistance, ohms.
        internal_ohms: f64,
    },
    /// The direct-current side of an alternator with regulator and rectifier: gives what it can below the regulated voltage.
    Regulator {
        /// Regulated voltage, volts.
        regulated_volts: f64,
        /// Id of the switch that stands for the engine.
        engine: String,
        /// What it can give in which state; nothing in a state that is not named.
        output: Vec<OutputAt>,
    },
    /// A coil under the flywheel that gives alternating current: an induced voltage behind its reactance and resistance.
    LightingCoil {
        /// Id of the switch that stands for the engine.
        engine: String,
        /// Resistance, ohms.
        ohms: f64,
        /// What it is in which state; nothing in a state that is not named.
        output: Vec<CoilAt>,
    },
    /// A shunt regulator beside a lighting coil: above its voltage it takes what the lamps do not need.
    ShuntRegulator {
        /// Regulated voltage, volts, effective value.
        regulated_volts: f64,
        /// Resistance above it, ohms.
        ohms: f64,
    },
    /// A wire, flexible copper.
    Wire {
        /// Section, mm².
        section_mm2: f64,
        /// Length, metres.
        length_metres: f64,
        /// Temperature, °C.
        celsius: f64,
    },
    /// A plug contact, eyelet or earth point.
    Joint {
        /// Contact resistance, ohms.
        ohms: f64,
        /// Plug that it belongs to; contacts of one plug can be swapped.
        plug: Option<String>,
    },
    /// A pair of switch contacts.
    Contact {
        /// Id of its switch.
        switch: String,
        /// Positions in which it is made.
        closed_in: Vec<String>,
        /// Contact resistance when made, ohms.
        ohms: f64,
    },
    /// A fuse.
    Fuse {
        /// Rating, amperes.
        rated_amperes: f64,
        /// Resistance, ohms.
        ohms: f64,
    },
    /// A filament lamp.
    Filament {
        /// Power at the test voltage, watts.
        watts: f64,
        /// Test voltage, volts.
        test_volts: f64,
    },
    /// An LED lamp with a driver that holds its current. Passes nothing when fitted the wrong way round.
    LedDriven {
        /// Power at the rated voltage, watts.
        watts: f64,
        /// Rated voltage, volts.
        rated_volts: f64,
    },
    /// An LED lamp with a series resistor. Passes nothing when fitted the wrong way round.
    LedSeries {
        /// LEDs in series.
        in_series: u32,
        /// Series resistor, ohms.
        ohms: f64,
    },
    /// A diode.
    Diode {
        /// Saturation current, amperes.
        saturation_amperes: f64,
        /// Emission coefficient.
        emission: f64,
        /// Series resistance, ohms.
        ohms: f64,
    },
    /// A resistor.
    Resistor {
        /// Resistance, ohms.
        ohms: f64,
    },
    /// The coil of a relay or solenoid.
    Coil {
        /// Resistance, ohms.
        ohms: f64,
        /// Voltage from which it pulls in, volts.
        pull_in_volts: f64,
        /// Voltage below which it lets go, volts.
        let_go_volts: f64,
    },
    /// The contacts of a relay or solenoid.
    RelayContact {
        /// Id of the coil's element.
        coil: String,
        /// Whether they are made when the coil pulls (else when it is at rest).
        made_when_pulled: bool,
        /// Contact resistance, ohms.
        ohms: f64,
    },
    /// The contacts of a flasher, made in the lit half of its beat.
    Flasher {
        /// Id of the switch that stands for its beat.
        beat: String,
        /// Position of the beat in which the contacts are made.
        lit: String,
        /// Current below which it does not flash, amperes; none for one that minds no load.
        least_amperes: Option<f64>,
        /// Contact resistance, ohms.
        ohms: f64,
    },
    /// A horn, taken as the resistance that draws its power.
    Horn {
        /// Power at the rated voltage, watts.
        watts: f64,
        /// Rated voltage, volts.
        rated_volts: f64,
    },
    /// Ignition, instrument or another consumer, taken as the resistance that draws its power.
    Load {
        /// Power at the rated voltage, watts.
        watts: f64,
        /// Rated voltage, volts.
        rated_volts: f64,
    },
    /// A starter motor.
    Starter {
        /// Voltage at which it turns the engine briskly, volts.
        rated_volts: f64,
        /// Voltage over current while it cannot turn, ohms.
        stalled_ohms: f64,
        /// Voltage over current while it turns the engine, ohms.
        turning_ohms: f64,
        /// Id of the switch that stands for the crankshaft.
        crank: String,
        /// Position in which the crankshaft turns.
        turns: String,
    },
    /// An earth strap or the frame itself.
    Strap {
        /// Resistance, ohms.
        ohms: f64,
    },
}

impl Component {
    /// Whether it gives current by itself, so that a circuit begins at it.
    pub fn is_source(&self) -> bool {
        matches!(self, Self::Battery { .. } | Self::LightingCoil { .. })
    }

    /// Id of the switch, or of what else has positions, that it goes by.
    pub fn switch(&self) -> Option<&String> {
        match self {
            Self::Contact { switch, .. } => Some(switch),
            Self::LightingCoil { engine, .. } | Self::Regulator { engine, .. } => Some(engine),
            Self::Flasher { beat, .. } => Some(beat),
            Self::Starter { crank, .. } => Some(crank),
            _ => None,
        }
    }
}
