//! What carries the joists: rim joist, sill and girders.

use super::decision::{Condition, InTheWay};
use super::near::{Near, Reach};
use super::read::Read;
use super::trust::words_of;
use crate::engine::condition::Finding;
use crate::engine::describe::in_sentence;
use crate::engine::entry::{EntryId, Time};
use crate::engine::framing::Done;
use crate::engine::framing::headers::{HeaderAsk, HeaderEnd, headers};
use crate::engine::framing::joist::is_grave;
use crate::engine::framing::member::OverGirder;
use crate::engine::framing::schedule::named;
use crate::engine::framing::supports::{Unsound, plies_untold, unsound};
use crate::engine::job::{Job, When};
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::place::{Element, JoistNumber, Place};
use crate::engine::take::Units;

const ENGINEER: &str = "have an engineer look, do what they write, and say that it is done";

fn in_the_way(unsound: Unsound) -> InTheWay {
    const UNREACHED: &str = "look again once the floor is open, and log there how deep the awl goes in, 0 where it stops, or say \
                             its state";
    match unsound.is_unreached {
        true => InTheWay::unknown(unsound.words, UNREACHED),
        false => InTheWay::known(unsound.words, ENGINEER),
    }
}

/// What carries those joists is sound: nothing speaks against it, and somebody looked at it
/// there.
pub(super) fn carriers(job: &Job, near: &Near, units: Units) -> Condition {
    let mut lines: Vec<_> = unsound(job).into_iter().map(in_the_way).collect();
    let reach = near.reach().filter(|reach| reach.is_by_a_wall());
    lines.extend(reach.into_iter().flat_map(|reach| at_walls(job, reach)));
    lines.extend(girders(job, near));
    lines.extend(which_girder(job));
    lines.extend(of_headers(job, units));
    let is_none = reach.is_none() && is_no_girder_near(job);
    let found = if is_none { "none is within a bay of it" } else { "what is there was looked at, and is" };
    Condition::of("rim joist, sill and girder there are sound", lines, found)
}

/// Rim joist and sill, where what comes out lies by a wall.
fn at_walls(job: &Job, reach: &Reach) -> Vec<InTheWay> {
    let line = |name: &str| {
        let ends = format!("push an awl into the {name} at every wall by what comes out, and say its state");
        InTheWay::unknown(format!("nobody said that the {name} there is sound"), ends)
    };
    Looks::all(job).untold_at_walls(reach).into_iter().map(line).collect()
}

/// What carries the joists there and was looked at, but not since then.
pub(super) fn looked_at_before(job: &Job, near: &Near, then: Time) -> Vec<String> {
    let untold = |looks: Looks<'_>| {
        let reach = near.reach().filter(|reach| reach.is_by_a_wall());
        let at_walls = reach.into_iter().flat_map(|reach| looks.untold_at_walls(reach)).map(str::to_owned);
        let girders = (!is_no_girder_near(job)).then(|| looks.untold_girders(near));
        at_walls.chain(girders.into_iter().flatten()).collect::<Vec<_>>()
    };
    let never = untold(Looks::all(job));
    let mut lately = untold(Looks { job, since: Some(then) });
    lately.retain(|name| !never.contains(name));
    lately
}

/// What carries the joists there and was told by an awl alone: an awl finds rot, and not water.
/// In a doubt's words. No floor waits for it, since a wall in the house has no sill to read.
pub(super) fn never_read(job: &Job, near: &Near, read: &Read) -> Option<String> {
    let reach = near.reach()?;
    let at_walls = reach.is_by_a_wall();
    let all = [
        (Element::RimJoist, "the rim joist", at_walls),
        (Element::Sill, "the sill", at_walls),
        (Element::Girder, "the girder", !is_no_girder_near(job)),
    ];
    let framing = read.framing();
    let is_read = |element| {
        let mut there = framing.iter().filter(|it| it.place.element == element && reach.may_hold(&it.place));
        there.any(|it| it.is_measured())
    };
    let unread: Vec<_> =
        all.into_iter().filter(|(element, _, is_there)| *is_there && !is_read(*element)).map(|it| it.1).collect();
    let what = unread.join(" and ");
    (!unread.is_empty()).then(|| {
        format!("In this visit nobody read {what} there with pins: an awl finds rot, not water. Read them if they are there.")
    })
}

/// Was it said of what comes out, as it is placed now, that no girder is near?
fn is_no_girder_near(job: &Job) -> bool {
    words_of(job, &Part::House, &list::GIRDER_NEAR)
        .is_some_and(|(when, words)| words == "no" && when.is_after_all(&placed(job)))
}

/// What was last said of what comes out: what is said of the members there comes after it.
fn placed(job: &Job) -> Vec<When> {
    let openings = job.now.openings().values().map(|it| it.when());
    let cut_back = job.now.cut_backs().values().map(|it| it.when());
    openings.chain(cut_back).chain(job.now.whole_floors().values().map(|it| it.when())).collect()
}

/// How the members beside what comes out were looked at: ever, or since then.
#[derive(Clone, Copy)]
struct Looks<'a> {
    job: &'a Job,
    since: Option<Time>,
}

impl<'a> Looks<'a> {
    const fn all(job: &'a Job) -> Self {
        Self { job, since: None }
    }

    fn counts(self, when: When) -> bool {
        self.since.is_none_or(|since| when.at >= since)
    }

    /// Was the state of a member told after what comes out was placed, or was it replaced, or done
    /// as an engineer says? Ends mended or a sister say nothing of its state.
    fn is_told(self, part: &Part) -> bool {
        let placed = placed(self.job);
        let state = words_of(self.job, part, &list::STATE).map(|(when, _)| when);
        let done = words_of(self.job, part, &list::DONE).filter(|(_, words)| is_renewed(words)).map(|(when, _)| when);
        state.into_iter().chain(done).any(|when| when.is_after_all(&placed) && self.counts(when))
    }

    /// The places on a kind of member at which an awl was pushed in.
    fn seen(self, element: Element) -> Vec<&'a Place> {
        let is_probed =
            |finding| matches!(finding, Finding::Sound | Finding::Soft | Finding::Rotten | Finding::Cracked);
        let found = self.job.now.conditions().values();
        let probed = found.filter(|it| is_probed(it.value.finding) && self.counts(it.when()));
        let places = probed.filter_map(|it| Some(self.job.now.places().get(&it.value.place?)?.value));
        places.filter(|place| place.element == element).collect()
    }

    fn untold_at_walls(self, reach: &Reach) -> Vec<&'static str> {
        let both = [(Part::RimJoist, Element::RimJoist, "rim joist"), (Part::Sill, Element::Sill, "sill")];
        let untold = both
            .into_iter()
            .filter(|(part, element, _)| !self.is_told(part) && !reach.is_at_every_wall(&self.seen(*element)));
        untold.map(|(_, _, name)| name).collect()
    }

    /// Every girder that anything was said of. One alone of which nobody said more than where its
    /// plies end is whichever was probed there: that says nothing of how it was looked at.
    fn untold_girders(self, near: &Near) -> Vec<String> {
        let said = Particulars::of(self.job);
        let is_more = |item: &&list::Item| item.what != list::PLIES_END.what;
        let is_more_said =
            |part: &Part| list::OF_GIRDER.iter().filter(is_more).any(|item| said.get(part, item).is_some());
        let spoken_of = said.parts(|part| matches!(part, Part::Girder(_)));
        let is_whichever = match spoken_of.as_slice() {
            [] => true,
            [one] => !is_more_said(one),
            _ => false,
        };
        if is_whichever {
            let is_here = |place: &&Place| near.reach().is_some_and(|reach| reach.may_hold(place));
            let is_seen = self.seen(Element::Girder).iter().any(is_here);
            return (!is_seen).then(|| "the girder there".to_owned()).into_iter().collect();
        }
        spoken_of.into_iter().filter(|part| !self.is_told(part)).map(|part| in_sentence(&part.name())).collect()
    }
}

/// Does what was done leave nothing of what was wrong?
fn is_renewed(words: &str) -> bool {
    matches!(Done::said(words), Some(Done::Replaced | Done::AsTheEngineerSays))
}

/// Every girder that anything was said of is told of, and one at least; unless none is near.
fn girders(job: &Job, near: &Near) -> Vec<InTheWay> {
    const OR_NONE: &str = "or, if no girder at all is within a bay of what comes out, say that";
    let unknown = |what: String| InTheWay::unknown(what, format!("probe it and say its state; {OR_NONE}"));
    match words_of(job, &Part::House, &list::GIRDER_NEAR) {
        Some(_) if is_no_girder_near(job) => return bearing_on_one(job, near),
        Some((_, "no")) => {
            return vec![unknown("no girder was near, before what comes out was placed as it is now".to_owned())];
        }
        _ => {}
    }
    let untold = Looks::all(job).untold_girders(near).into_iter();
    let untold = untold.map(|name| unknown(format!("nobody said that {name} is sound")));
    let plies = plies_untold(job).into_iter().map(|girder| {
        let what = format!("nobody said where the plies of {} end", in_sentence(&girder.name()));
        InTheWay::unknown(what, format!("say it, or that it is one piece; {OR_NONE}"))
    });
    untold.chain(plies).collect()
}

/// Joists that go on over a girder within a bay of what comes out, though none is said to be near.
fn bearing_on_one(job: &Job, near: &Near) -> Vec<InTheWay> {
    let said = Particulars::of(job);
    let goes_on = |number: &JoistNumber| {
        let part = Part::Joist(*number);
        let over = said.words_of_joist(&part, &list::OVER_GIRDER).and_then(OverGirder::said);
        let clear = said.length_of_joist(&part, &list::CLEAR_SPAN);
        let is_there = |reach: &Reach| clear.is_none_or(|clear| reach.reaches_along(*number, clear));
        over.is_some_and(|over| over != OverGirder::Before) && near.reach().is_some_and(is_there)
    };
    let there: Vec<_> = near.joists().iter().copied().filter_map(JoistNumber::new).filter(goes_on).collect();
    let names: Vec<_> = there.iter().map(|joist| joist.get().to_string()).collect();
    let line = || {
        let what = format!("no girder is said to be near, and by their spans one is: {}", named(&names));
        InTheWay::unknown(what, "probe that girder and say its state, or measure their clear spans again")
    };
    (!names.is_empty()).then(line).into_iter().collect()
}

/// What the page asks of headers and of the joists at their ends holds closing too.
fn of_headers(job: &Job, units: Units) -> Vec<InTheWay> {
    let is_single = Particulars::of(job).words(&Part::House, &list::TRIMMERS) == Some("single");
    let line = |ask: HeaderAsk| match ask.ended_by {
        HeaderEnd::Doubling if is_single => InTheWay::known(
            format!("{}. They are single", ask.words),
            "double them, and say so under Framing as a whole",
        ),
        HeaderEnd::Doubling => InTheWay::unknown(
            format!("{}. Nobody said that they are doubled", ask.words),
            "see whether they are, double them if not, and say so under Framing as a whole",
        ),
        HeaderEnd::Measuring => {
            InTheWay::unknown(ask.words, "say it under Framing as a whole, or that they are doubled")
        }
        HeaderEnd::Check => InTheWay::unknown(ask.words, "see that it is so, and answer the check"),
    };
    headers(job, units).into_iter().map(line).collect()
}

/// What was found at places on girders: places do not tell which girder they are on, so what
/// is done to one answers for no place until an awl stops there.
fn which_girder(job: &Job) -> Vec<InTheWay> {
    let on_girder = |place: EntryId| {
        job.now.places().get(&place).map(|it| it.value).filter(|place| place.element == Element::Girder)
    };
    let found = job.now.conditions().values().filter(|it| is_grave(it.value.finding));
    let at_places = found.filter_map(|it| Some((it.when(), it.value.place?)));
    let is_sound_since = |(when, at): &(When, EntryId)| {
        let sound = job.now.conditions().values().filter(|it| it.value.finding == Finding::Sound);
        sound.filter(|it| it.value.place == Some(*at)).any(|it| it.when().is_after(*when))
    };
    let open = at_places.filter(|found| !is_sound_since(found)).filter_map(|(_, at)| on_girder(at));
    let line = |place: &Place| {
        InTheWay::known(
            format!("{}: decay or damage, and nobody said on which girder", place.name()),
            "have it mended, push an awl in at that place again, and log it sound there",
        )
    };
    let mut lines: Vec<_> = open.map(line).collect();
    lines.dedup();
    lines
}
