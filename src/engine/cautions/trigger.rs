//! When a caution matters: pure questions to the job.

use crate::engine::air::AirLocation;
use crate::engine::condition::{Condition, Finding};
use crate::engine::framing::joist::number_of;
use crate::engine::framing::supports::said_unsound;
use crate::engine::framing::{Damage, DamageKind, Depth};
use crate::engine::ground::AirWay;
use crate::engine::job::{Fact, Job, Seen, Venting};
use crate::engine::moisture::Material;
use crate::engine::orders::treated::is_treated;
use crate::engine::origin::was_seen;
use crate::engine::particular::{Part, Particular, Particulars, Value, list};
use crate::engine::place::{Element, Face, JoistNumber, Place, Position};
use crate::engine::survey::Floor;
use crate::engine::units::Length;
use crate::order;

/// More soft joists than this call for an engineer: of joists in a row the practice
/// says more than two. Taken over the whole floor, since the joists between two soft
/// ones may not have been probed.
pub const SOFT_JOISTS: usize = 2;

/// How deep and how thick a joist is taken to be that nobody measured: as the smallest in use
/// (judgement).
const SHALLOWEST: Length = Length::sixty_fourths(5 * 64 + 32);
const THINNEST: Length = Length::sixty_fourths(64 + 32);

/// What in a job makes a caution matter.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Trigger {
    /// Somebody is, was or will be under the house.
    UnderTheHouse,
    /// Something of the floor is to come out.
    Cut,
    /// Something of the floor is to come out of a house built before this year, or nobody knows when.
    CutInHouseBefore(u16),
    /// Work under a house built before this year, or nobody knows when.
    UnderHouseBefore(u16),
    /// Somebody looked at how the crawl space is vented, or chose vents, so that vents may be cut.
    Vents,
    /// The crawl space has no vents.
    Unvented,
    /// A fan takes air out from under the house: it was chosen, or there are no vents and
    /// nobody chose anything else.
    ExhaustFan,
    /// One of these was found.
    Found(&'static [Finding]),
    /// One of these questions of the checklist was answered yes, and that was not put right, by
    /// its name; beside it, what that says.
    Answered(&'static [(&'static str, &'static str)]),
    /// One of these particulars was said, and is no length of nought.
    Said(&'static [&'static str]),
    /// A spot of one of these kinds was logged on some member, and is no awl that stopped.
    Damaged(&'static [DamageKind]),
    /// Treated wood was read, or lumber said to be treated is to be cut.
    TreatedWood,
    /// Framing is weak: any that is rotten or cracked, a soft sill or girder, a joist that has
    /// lost more than a third of its depth or may have, more than [`SOFT_JOISTS`] soft joists, or
    /// a support that is not sound.
    WeakFraming,
    /// Framing, or what nobody placed, was found to be as no joist stays: it is sistered or comes
    /// out; or an awl goes into a joist.
    BadFraming,
    /// One of these, the first that does.
    Any(&'static [Self]),
}

impl Trigger {
    /// What in the job makes the caution matter, in a sentence; nothing if nothing does.
    pub fn because(self, job: &Job) -> Option<String> {
        match self {
            Self::UnderTheHouse => under_the_house(job).then(|| "Work under the house is logged.".to_owned()),
            Self::Cut => Some(format!("{}.", cut(job)?)),
            Self::CutInHouseBefore(year) => cut_in_house_before(job, year),
            Self::UnderHouseBefore(year) => under_house_before(job, year),
            Self::Vents => {
                let chosen = AirWay::each_chosen(job).contains(&AirWay::Vents).then(|| "Vents are chosen.".to_owned());
                let said = |venting: &Venting| format!("The crawl space is said to be {}.", venting.label());
                job.venting().map(said).or(chosen)
            }
            Self::Unvented => (job.venting() == Some(&Venting::Unvented))
                .then(|| "The crawl space is said to be unvented.".to_owned()),
            Self::ExhaustFan => exhaust_fan(job),
            Self::Found(findings) => found(job, findings),
            Self::Answered(questions) => answered(job, questions),
            Self::Said(words) => said(job, words),
            Self::Damaged(kinds) => damaged(job, kinds),
            Self::TreatedWood => treated_wood(job),
            Self::WeakFraming => weak_framing(job),
            Self::BadFraming => bad_framing(job).or_else(|| awl_goes_in(job).next().map(awl_words)),
            Self::Any(triggers) => triggers.iter().find_map(|trigger| trigger.because(job)),
        }
    }
}

/// Anything that can only be seen or measured from below, or a fact about the space.
fn under_the_house(job: &Job) -> bool {
    let facts = job.now.facts().values().any(|fact| matches!(fact.value, Fact::CrawlHeight(_) | Fact::Venting(_)));
    let air = job.now.air().values().any(|air| air.value.location == AirLocation::Crawl);
    // Framing is looked at and probed from below.
    let framing = |part: &Part| !matches!(part, Part::House | Part::Joists | Part::Order(_));
    let said = job.now.particulars().values().any(|it| framing(&it.value.of)) || !job.now.damages().is_empty();
    facts || air || said || job.now.places().values().any(|place| is_below(place.value.element))
}

const fn is_below(element: Element) -> bool {
    !matches!(element, Element::SubfloorAbove | Element::FinishedFloor)
}

/// What is to come out of the floor, in words.
fn cut(job: &Job) -> Option<&'static str> {
    match (job.now.openings().is_empty(), job.now.whole_floors().is_empty()) {
        (false, _) => Some("An opening is to be cut"),
        (true, false) => Some("The whole floor is to come out"),
        (true, true) => None,
    }
}

fn cut_in_house_before(job: &Job, year: u16) -> Option<String> {
    let cut = cut(job)?;
    Some(match old_house(job, year)? {
        Some(built) => format!("{cut}, in a house built in {built}."),
        None => format!("{cut}, and nobody has said when the house was built."),
    })
}

fn under_house_before(job: &Job, year: u16) -> Option<String> {
    if !under_the_house(job) {
        return None;
    }
    Some(match old_house(job, year)? {
        Some(built) => format!("Work under a house built in {built} is logged."),
        None => "Work under the house is logged, and nobody has said when it was built.".to_owned(),
    })
}

/// When a house of before this year was built, if anybody said; nothing for a newer one.
fn old_house(job: &Job, year: u16) -> Option<Option<u16>> {
    match job.year_built().map(|built| built.get()) {
        Some(built) if built >= year => None,
        built => Some(built),
    }
}

fn exhaust_fan(job: &Job) -> Option<String> {
    let because = match AirWay::each_chosen(job).as_slice() {
        [AirWay::Exhaust, _, ..] => "One phone says that an exhaust fan is to take air out from under the house.",
        [AirWay::Exhaust] => "An exhaust fan is to take air out from under the house.",
        [] if AirWay::of(job) == AirWay::Exhaust => "There are no vents, and nobody has chosen what moves the air.",
        _ => return None,
    };
    Some(because.to_owned())
}

fn found(job: &Job, findings: &[Finding]) -> Option<String> {
    let there: Vec<_> = conditions(job).map(|condition| condition.finding).collect();
    let named: Vec<&str> = findings.iter().filter(|finding| there.contains(finding)).map(|f| f.label()).collect();
    (!named.is_empty()).then(|| format!("Found: {}.", named.join(", ").to_ascii_lowercase()))
}

fn answered(job: &Job, questions: &[(&str, &str)]) -> Option<String> {
    let yes = questions.iter().find(|(name, _)| was_seen(job, name));
    yes.map(|(_, says)| format!("On the checklist: {says}."))
}

fn treated_wood(job: &Job) -> Option<String> {
    let mut readings = job.now.readings().values();
    if readings.any(|reading| reading.value.wood.material == Material::Treated) {
        return Some("Treated wood was read.".to_owned());
    }
    let said = job.now.particulars().values().map(|it| it.value.is.typed()).find(|words| is_treated(words))?;
    Some(format!("Lumber: {said}."))
}

fn weak_framing(job: &Job) -> Option<String> {
    let worst = conditions(job).find_map(|condition| {
        let (what, element) = member(job, condition)?;
        weakens(condition.finding, element)
            .then(|| format!("{what}: {}.", condition.finding.label().to_ascii_lowercase()))
    });
    let soft = bad_spots(job).map(|spot| spot.value).find(|spot| spot.kind == DamageKind::Soft && !is_joist(&spot.of));
    let worst = worst.or_else(|| soft.map(|spot| format!("{}: {}.", spot.of.name(), spot.kind.found())));
    let worst = worst.or_else(|| said_unsound(job).first().map(|support| format!("{}.", support.words)));
    worst.or_else(|| deeply_damaged(job)).or_else(|| {
        let soft = soft_joists(job).len();
        (soft > SOFT_JOISTS).then(|| format!("{soft} joists are soft."))
    })
}

/// What a joist is not left as.
fn bad_framing(job: &Job) -> Option<String> {
    conditions(job).find_map(|condition| {
        let (what, _) = member(job, condition)?;
        matches!(condition.finding, Finding::Soft | Finding::Rotten | Finding::Cracked | Finding::Strands)
            .then(|| format!("{what}: {}.", condition.finding.label().to_ascii_lowercase()))
    })
}

/// The joists that an awl was ever said to go into: wood does not heal.
pub(super) fn awl_goes_in(job: &Job) -> impl Iterator<Item = Seen<'_, Particular>> {
    let said = job.now.particulars().values();
    said.filter(|it| it.value.what.as_str() == list::AWL.what && it.value.is.typed() == "goes in")
}

fn awl_words(awl: Seen<'_, Particular>) -> String {
    format!("{}: an awl goes in.", awl.value.of.name())
}

fn said(job: &Job, words: &[&str]) -> Option<String> {
    let particulars = job.now.particulars().values().map(|it| it.value);
    let mut like = particulars.filter(|it| words.contains(&it.what.as_str()));
    like.find(|it| !matches!(&it.is, Value::Length(typed) if !typed.value.is_positive()))
        .map(|it| format!("{}, {}: {}.", it.of.name(), it.what, it.is.typed()))
}

fn damaged(job: &Job, kinds: &[DamageKind]) -> Option<String> {
    let spot = bad_spots(job).map(|spot| spot.value).find(|spot| kinds.contains(&spot.kind))?;
    Some(format!("{}: {}.", spot.of.name(), spot.kind.found()))
}

/// A joist that has lost more than a third of what it has there: of its depth, or from a side
/// of its breadth. One that nobody can measure may have.
fn deeply_damaged(job: &Job) -> Option<String> {
    let particulars = Particulars::of(job);
    let lost_much = |part: &Part, is_side: bool, deep: Length| {
        let (item, least) = if is_side { (&list::BREADTH, THINNEST) } else { (&list::DEPTH, SHALLOWEST) };
        let said = Some(particulars.lengths(part, item)).filter(|said| !said.is_empty());
        let said = said.unwrap_or_else(|| particulars.lengths(&Part::Joists, item));
        deep * 3 > said.into_iter().min().unwrap_or(least)
    };
    let spots = bad_spots(job).map(|spot| spot.value).filter(|spot| is_joist(&spot.of)).filter(|spot| {
        let is_side = matches!(spot.face, Some(Face::NearSide | Face::FarSide)) && spot.kind != DamageKind::Hole;
        spot.depth == Some(Depth::CannotReach) || spot.depth().is_some_and(|deep| lost_much(&spot.of, is_side, deep))
    });
    let logged = spots.map(|spot| (&spot.of, spot.kind.found()));
    // As logs of before format 1.5 say it.
    let before = particulars.parts(is_joist).into_iter().flat_map(|part| {
        let faces = particulars.all_words(part, &list::SOFT_FACE);
        let is_side = faces.into_iter().any(|face| face.ends_with("side"));
        let all =
            [(&list::SOFT_DEPTH, is_side, "soft"), (&list::NOTCH, false, "notched"), (&list::HOLE, false, "a hole")];
        let deep = all.into_iter().filter(move |(item, is_side, _)| {
            particulars.lengths(part, item).into_iter().any(|deep| lost_much(part, *is_side, deep))
        });
        deep.map(move |(_, _, found)| (part, found))
    });
    // An awl that went in nobody knows how far.
    let is_measured = |part: &Part| {
        let is_soft = |spot: &Damage| spot.kind == DamageKind::Soft && spot.of == *part && spot.depth().is_some();
        bad_spots(job).map(|spot| spot.value).any(is_soft) || particulars.length(part, &list::SOFT_DEPTH).is_some()
    };
    let goes_in = awl_goes_in(job).map(|awl| &awl.value.of);
    let unmeasured = goes_in.filter(|part| !is_measured(part)).map(|part| (part, "soft"));
    let (part, found) = logged.chain(before).chain(unmeasured).next()?;
    Some(format!("{}: {found}, perhaps through more than a third of it.", part.name()))
}

pub(super) fn bad_spots(job: &Job) -> impl Iterator<Item = Seen<'_, Damage>> {
    job.now.damages().values().filter(|spot| spot.value.is_bad())
}

const fn is_joist(part: &Part) -> bool {
    matches!(part, Part::Joist(_) | Part::Joists)
}

/// Is one such finding enough? Of a member that nobody named, take the careful view.
const fn weakens(finding: Finding, element: Option<Element>) -> bool {
    match finding {
        Finding::Rotten | Finding::Cracked => true,
        Finding::Soft => matches!(element, Some(Element::Sill | Element::Girder)),
        _ => false,
    }
}

/// The framing that a condition is of, in words; nothing if it is of the floor itself.
fn member(job: &Job, condition: &Condition) -> Option<(String, Option<Element>)> {
    match place(job, condition) {
        Some(place) if place.element.is_framing() => Some((place.name(), Some(place.element))),
        Some(_) => None,
        None => Some(("Framing".to_owned(), None)),
    }
}

/// Joists that were found soft, by a finding or by an awl.
fn soft_joists(job: &Job) -> Vec<JoistNumber> {
    let soft = conditions(job).filter(|condition| condition.finding == Finding::Soft);
    let places = soft.filter_map(|condition| place(job, condition));
    let joists = places.filter(|place| place.element == Element::Joist);
    let framing = Floor::of(job).and_then(|floor| floor.joists);
    let found = joists.filter_map(|place| match (&place.position, framing.as_ref()) {
        (Position::OnJoist { joist, .. }, _) => Some(*joist),
        (_, Some(framing)) => number_of(place, framing),
        (_, None) => None,
    });
    let by_awl = bad_spots(job).map(|spot| spot.value).filter(|spot| spot.kind == DamageKind::Soft).filter_map(
        |spot| match &spot.of {
            Part::Joist(joist) => Some(*joist),
            _ => None,
        },
    );
    order::once(found.chain(by_awl))
}

fn conditions(job: &Job) -> impl Iterator<Item = &Condition> {
    job.now.conditions().values().map(|condition| condition.value)
}

fn place<'a>(job: &'a Job, condition: &Condition) -> Option<&'a Place> {
    condition.place.and_then(|place| job.now.places().get(&place)).map(|place| place.value)
}
