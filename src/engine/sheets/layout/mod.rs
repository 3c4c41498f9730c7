//! Sheets laid on the real joists: the fewest that do, and the proof that fewer cannot.
//!
//! The floor is covered by courses along the sheets' strong axis, square to the joists.
//! Joints lie on joists, every piece spans enough of them, and joints of neighbouring
//! courses keep apart. Pieces come out of sheets by cuts from edge to edge. Wanted are
//! the fewest sheets, then the fewest pieces, then the least sawing.
//!
//! Lengths are whole sixteenths of an inch here, and every answer is exact. Nothing in
//! this folder knows a job, a clock or a browser. Begin with [`search`]; the rules are
//! enforced once more, and by other means, in [`check()`].

mod bound;
mod case;
mod check;
mod courses;
mod cutting;
mod fit;
mod form;
mod joints;
mod knapsack;
mod limits;
mod master;
mod options;
mod packing;
mod plan;
mod ratio;
mod region;
mod rows;
mod scheme;
mod search;
#[cfg(test)]
mod tests;

pub use case::{Case, FARTHEST, Fault, MOST_JOISTS, MOST_ON_HAND, Request, Sheet};
pub use check::{Broken, check};
pub use cutting::Cutting;
pub use form::{Form, Trim, form};
pub use limits::Limits;
pub use plan::{Layout, Piece};
pub use region::{Corner, twice_the_area};
pub use scheme::Kind;
pub use search::{Search, Step};
