//! Where along a joist an awl was pushed in, and where it still has to be.

use crate::engine::entry::Time;
use crate::engine::framing::joist::{Along, Joist};
use crate::engine::framing::member::Awl;
use crate::engine::framing::since::Since;
use crate::engine::framing::spots::{Goes, Spots};
use crate::engine::units::Length;

/// Probed so close to a bearing, a joist was probed at that end (judgement).
pub const AT_AN_END: Length = Length::FOOT;

/// Was an awl pushed into it all along, and not again since then, nor was it seen to?
pub fn is_probed_before(joist: &Joist, then: Time) -> bool {
    let is_since = |since: Since| since.is_not_before(then);
    let spots = Spots {
        awl: joist.spots.awl.filter(|_| is_since(joist.spots.awl_since)),
        soft: joist.spots.soft.iter().filter(|soft| is_since(soft.since)).copied().collect(),
        ..joist.spots.clone()
    };
    let is_seen_to = joist.done.iter().any(|(_, since)| is_since(*since));
    unprobed(joist).is_none() && !is_seen_to && unprobed(&Joist { spots, ..joist.clone() }).is_some()
}

/// Both ends and the middle, by one word or by spots that lie there.
pub(super) fn unprobed(joist: &Joist) -> Option<String> {
    match joist.spots.awl {
        Some(Awl::Stops) => return None,
        Some(Awl::GoesIn) if !joist.spots.awl_asks_where => return None,
        Some(Awl::GoesIn) => return Some("the awl goes in: log where and how deep".to_owned()),
        Some(Awl::CannotReach) => {
            return Some("an awl can't reach it: probe it once the floor is open".to_owned());
        }
        None => {}
    }
    let Some(clear) = joist.clear else { return Some(PROBE_IT.to_owned()) };
    let zones = zones(joist, clear);
    let left_out: Vec<_> = zones.iter().filter(|zone| !zone.is_probed(joist)).map(|zone| zone.name).collect();
    match left_out.len() {
        0 => None,
        all if all == zones.len() => Some(PROBE_IT.to_owned()),
        _ => Some(format!("probe {} too", left_out.join(" and "))),
    }
}

const PROBE_IT: &str = "probe both ends and the middle, and say how deep the awl goes in, 0 if it stops";

/// A part of a joist that an awl has to be pushed into.
struct Zone {
    name: &'static str,
    from: Length,
    to: Length,
    /// A stretch that goes on past here says that what lies here is elsewhere.
    no_further: Option<Length>,
}

impl Zone {
    fn is_probed(&self, joist: &Joist) -> bool {
        let holds = |(begins, ends): (Length, Length)| {
            begins <= self.to && ends >= self.from && self.no_further.is_none_or(|last| ends <= last)
        };
        let mut spots = joist.spots.soft.iter().filter(|soft| matches!(soft.goes, Goes::Nowhere | Goes::In(_)));
        spots.any(|soft| soft.stretch.ends().is_some_and(holds))
    }
}

/// Both ends and the middle of its span, and of one that goes through over the girder the same of
/// the next one. How broad the girder is nobody said: past it, a foot more or less is as good.
fn zones(joist: &Joist, clear: Length) -> Vec<Zone> {
    let third = |span: Length| Length::from_inches(span.to_inches() / 3.0);
    let zone = |name, from, to, no_further| Zone { name, from, to, no_further };
    let end = (!joist.goes_through()).then_some(clear);
    let mut zones = vec![
        zone("the end at the wall that distances are from", Length::ZERO, AT_AN_END, None),
        zone("the middle", third(clear), third(clear) * 2, None),
        zone("the other end", clear - AT_AN_END, clear, end),
    ];
    if let Some(next) = joist.clear_along(Along::Next) {
        let (from, to) = (clear + third(next), clear + third(next) * 2 + AT_AN_END);
        zones.push(zone("the middle of its span past the girder", from, to, None));
        zones.push(zone("its end past that", clear + next - AT_AN_END, clear + next + AT_AN_END * 2, None));
    }
    zones
}
