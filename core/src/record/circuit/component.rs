//! What an element of a circuit is, with its figures.

use layshaft_wire::wire;

/// What an alternator with its regulator can give in one state of the engine.
#[wire(stored)]
pub struct OutputAt {
    /// Position of the switch that stands for the engine.
    #[words("Switch position")]
    pub position: String,
    /// Current, amperes.
    #[words("Current, A")]
    pub amperes: f64,
}

/// What an element is.
#[wire(stored)]
pub enum Component {
    /// A battery: an electromotive force behind its own resistance.
    Battery {
        /// Voltage without load, volts.
        #[words("Voltage without load, V")]
        emf_volts: f64,
        /// Internal resistance, ohms.
        #[words("Internal resistance, ohm")]
        internal_ohms: f64,
    },
    /// The direct-current side of an alternator with regulator and rectifier: gives what it can below the regulated voltage.
    Regulator {
        /// Regulated voltage, volts.
        #[words("Regulated to, V")]
        regulated_volts: f64,
        /// Id of the switch that stands for the engine.
        #[words("Switch for the engine")]
        engine: String,
        /// What it can give in which state; nothing in a state that is not named.
        #[words("What it gives")]
        output: Vec<OutputAt>,
    },
    /// A wire, flexible copper.
    Wire {
        /// Section, mm².
        #[words("Section, mm²")]
        section_mm2: f64,
        /// Length, metres.
        #[words("Length, m")]
        length_metres: f64,
        /// Temperature, °C.
        #[words("Temperature, °C")]
        celsius: f64,
    },
    /// A plug contact, eyelet or earth point.
    Joint {
        /// Contact resistance, ohms.
        #[words("Resistance, ohm")]
        ohms: f64,
        /// Plug that it belongs to; contacts of one plug can be swapped.
        #[words("Plug")]
        plug: Option<String>,
    },
    /// A pair of switch contacts.
    Contact {
        /// Id of its switch.
        #[words("Switch")]
        switch: String,
        /// Positions in which it is made.
        #[words("Made in")]
        closed_in: Vec<String>,
        /// Contact resistance when made, ohms.
        #[words("Resistance, ohm")]
        ohms: f64,
    },
    /// A fuse.
    Fuse {
        /// Rating, amperes.
        #[words("Rating, A")]
        rated_amperes: f64,
        /// Resistance, ohms.
        #[words("Resistance, ohm")]
        ohms: f64,
    },
    /// A filament lamp.
    Filament {
        /// Power at the test voltage, watts.
        #[words("Power, W")]
        watts: f64,
        /// Test voltage, volts.
        #[words("Rated at, V")]
        test_volts: f64,
    },
    /// An LED lamp with a driver that holds its current. Passes nothing when fitted the wrong way round.
    LedDriven {
        /// Power at the rated voltage, watts.
        #[words("Power, W")]
        watts: f64,
        /// Rated voltage, volts.
        #[words("Rated at, V")]
        rated_volts: f64,
    },
    /// An LED lamp with a series resistor. Passes nothing when fitted the wrong way round.
    LedSeries {
        /// LEDs in series.
        #[words("LEDs in series")]
        in_series: u32,
        /// Series resistor, ohms.
        #[words("Resistance, ohm")]
        ohms: f64,
    },
    /// A diode.
    Diode {
        /// Saturation current, amperes.
        #[words("Saturation current, A")]
        saturation_amperes: f64,
        /// Emission coefficient.
        #[words("Emission coefficient")]
        emission: f64,
        /// Series resistance, ohms.
        #[words("Resistance, ohm")]
        ohms: f64,
    },
    /// A resistor.
    Resistor {
        /// Resistance, ohms.
        #[words("Resistance, ohm")]
        ohms: f64,
    },
    /// The coil of a relay or solenoid.
    Coil {
        /// Resistance, ohms.
        #[words("Resistance, ohm")]
        ohms: f64,
        /// Voltage from which it pulls in, volts.
        #[words("Pulls in from, V")]
        pull_in_volts: f64,
        /// Voltage below which it lets go, volts.
        #[words("Lets go below, V")]
        let_go_volts: f64,
    },
    /// The contacts of a relay or solenoid.
    RelayContact {
        /// Id of the coil's element.
        #[words("Coil")]
        coil: String,
        /// Whether they are made when the coil pulls (else when it is at rest).
        #[words("Made when the coil pulls")]
        made_when_pulled: bool,
        /// Contact resistance, ohms.
        #[words("Resistance, ohm")]
        ohms: f64,
    },
    /// The contacts of a flasher, made in the lit half of its beat.
    Flasher {
        /// Id of the switch that stands for its beat.
        #[words("Switch for the beat")]
        beat: String,
        /// Position of the beat in which the contacts are made.
        #[words("Lit in")]
        lit: String,
        /// Current below which it does not flash, amperes; none for one that minds no load.
        #[words("Flashes from, A")]
        least_amperes: Option<f64>,
        /// Contact resistance, ohms.
        #[words("Resistance, ohm")]
        ohms: f64,
    },
    /// A horn, taken as the resistance that draws its power.
    Horn {
        /// Power at the rated voltage, watts.
        #[words("Power, W")]
        watts: f64,
        /// Rated voltage, volts.
        #[words("Rated at, V")]
        rated_volts: f64,
    },
    /// Ignition, instrument or another consumer, taken as the resistance that draws its power.
    Load {
        /// Power at the rated voltage, watts.
        #[words("Power, W")]
        watts: f64,
        /// Rated voltage, volts.
        #[words("Rated at, V")]
        rated_volts: f64,
    },
    /// A starter motor.
    Starter {
        /// Voltage at which it turns the engine briskly, volts.
        #[words("Rated at, V")]
        rated_volts: f64,
        /// Voltage over current while it cannot turn, ohms.
        #[words("Resistance while it cannot turn, ohm")]
        stalled_ohms: f64,
        /// Voltage over current while it turns the engine, ohms.
        #[words("Resistance while it turns, ohm")]
        turning_ohms: f64,
        /// Id of the switch that stands for the crankshaft.
        #[words("Switch for the crankshaft")]
        crank: String,
        /// Position in which the crankshaft turns.
        #[words("Turns in")]
        turns: String,
    },
    /// An earth strap or the frame itself.
    Strap {
        /// Resistance, ohms.
        #[words("Resistance, ohm")]
        ohms: f64,
    },
}
