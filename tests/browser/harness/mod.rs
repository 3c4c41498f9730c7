//! What a walk is made with: a host, and a browser with a screen, a thumb and two eyes.
//!
//! Everything that a walk can learn of a page, it waits for. A page draws itself in its
//! own time, so that whatever is read at once is read too early on some machine, and to
//! have waited for something else helps only by luck. That is why a look at the page as it
//! stands ends at this module's border, and what goes over it takes what must be so:
//! [`Phone::read`] hands out nothing but the very value that it judged.

mod axe;
mod driver;
mod find;
mod keys;
mod page;
mod phone;
mod processes;
mod server;
mod watch;

#[cfg(test)]
mod tests;

pub use phone::{Phone, Screen};
pub use server::{Server, own_path, root, target};
