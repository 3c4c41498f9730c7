//! Taking: the conversation between a hand and the log.
//!
//! An instrument is picked, a question is asked, a value is typed and saved, and the
//! place moves on by itself. What is half done is a [`Draft`]; [`save`] turns it into
//! entries and the next draft, and touches nothing. It knows no screen: the app draws
//! the [`Question`] and calls [`save`].

pub mod aim;
pub mod draft;
pub mod question;
pub mod retype;
pub mod save;
pub mod settings;
pub mod travel;
pub mod whereabouts;
pub mod wood;

pub use aim::{located, tapped};
pub use draft::{AirTask, Draft, Footprint, Instrument, LookTask, TapeTask};
pub use question::{Keys, Question};
pub use retype::{retypable, retyped};
pub use save::{Anyway, InHand, ReadBack, Refused, Saved, look, save, save_anyway, save_cannot_reach, save_off_scale};
pub use settings::Units;
pub use travel::{faced, place_at, standing};
pub use whereabouts::Whereabouts;
pub use wood::AtSpot;
