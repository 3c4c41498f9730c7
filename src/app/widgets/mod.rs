//! Widgets: they take props or the session's state, and know no calculation.

mod choice;
mod figure_card;
mod header;
mod keypad;
mod live;
mod stop;
mod text_field;

pub use choice::{choice, labelled};
pub use figure_card::{AnswerCard, WhyDetails};
pub use header::{Alarm, Invented, JobHeader, NotSaved, TabBar, Told};
pub use keypad::{KeyAction, Keypad, press};
pub use live::{live, memo, perhaps, says};
pub use stop::Stop;
pub use text_field::TextField;
