//! Caps of lamps, with their names and looks. The names are those of IEC 60061 as the lamp sheets of UN R37 use them.

use layshaft_wire::wire;

use crate::message::Message;

/// Declares the caps once: name, as it is written, what it looks like.
macro_rules! caps {
    ($(#[doc = $looks:literal] $name:ident $written:literal;)*) => {
        /// Cap of a lamp.
        #[wire(stored)]
        pub enum LampCap { $(#[doc = $looks] $name,)* }

        impl LampCap {
            /// Every cap.
            pub const ALL: &[LampCap] = &[$(LampCap::$name,)*];

            /// As it is written on box and holder.
            pub fn written(self) -> &'static str {
                match self { $(LampCap::$name => $written,)* }
            }

            /// What it looks like.
            pub fn looks(self) -> Message {
                Message::new(format!("lamp-cap-looks-{}", self.wire_name()), Vec::new())
            }
        }
    };
}

caps! {
    /// 9 mm bayonet, two pins opposite at the same height, one contact.
    Ba9s "BA9s";
    /// 15 mm bayonet, two pins opposite at the same height, one contact.
    Ba15s "BA15s";
    /// 15 mm bayonet, two pins opposite at the same height, two contacts.
    Ba15d "BA15d";
    /// 15 mm bayonet, pins 150 degrees apart, one contact.
    Bau15s "BAU15s";
    /// 15 mm bayonet, pins opposite at different heights, two contacts.
    Bay15d "BAY15d";
    /// 20 mm bayonet, two contacts.
    Ba20d "BA20d";
    /// glass wedge, 9.5 mm wide.
    W2d "W2.1x9.5d";
    /// glass wedge, 16 mm wide, one filament.
    W3d "W3x16d";
    /// glass wedge, 16 mm wide, two filaments.
    W3q "W3x16q";
    /// tubular lamp with a cone at each end.
    Sv8 "SV8.5";
    /// flange with three lugs, three blades.
    P43t "P43t";
    /// flange with three lugs set otherwise than P43t, three blades.
    Px43t "PX43t";
    /// large round flange, three blades.
    P45t "P45t";
    /// 13.5 mm flange, one contact.
    Px13s "PX13.5s";
    /// 10 mm screw thread.
    E10 "E10";
}
