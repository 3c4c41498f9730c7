//! How far what is left of a joist spans, and what a sister adds.

use super::cuts::is_allowed;
use super::decay::{RUNS_ON, lost_of_breadth, lost_of_depth, lost_somewhere};
use super::notches::{notched_of_breadth, notches};
use super::reason;
use crate::engine::framing::design::Stamp;
use crate::engine::framing::joist::{Along, Joist};
use crate::engine::framing::member::{Done, SpanAllowed};
use crate::engine::framing::schedule::{ENGINEER, Fate, NEW, Range, Reason, SISTER, SISTER_BEYOND};
use crate::engine::framing::section::Section;
use crate::engine::framing::shared::Shared;
use crate::engine::framing::since::Since;
use crate::engine::framing::span::{Service, serving, span};
use crate::engine::framing::spots::{Goes, Notch};
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::Length;

/// Lumber no thicker has the design values that are known here: that of 2 in by name, and
/// an old house's ([`Source::DesignValues`]).
pub const THICKEST: Length = Length::sixty_fourths(160);
/// Fewer joists share no load ([`Source::SpanMethod`]).
pub const FEWEST: u16 = 3;
/// How far a tape under a house can be off on a clear span (judgement).
pub const SPAN_ERROR: Length = Length::sixty_fourths(16);
/// How far it can be off on a joist's breadth or depth (judgement).
pub const SECTION_ERROR: Length = Length::sixty_fourths(4);

/// How far what is left may span, and what that comes to.
pub(super) fn reasons(joist: &Joist, shared: &Shared, units: Units) -> (Option<Range>, Vec<Reason>) {
    let left = left_of(joist);
    let range = left.and_then(|section| range(section, shared, joist));
    let mut reasons = judged(joist, left, range, shared, units);
    reasons.extend(left.and_then(|left| incised_untold(joist, left, shared, units)));
    (range, reasons)
}

/// Wood that was incised for treatment is weaker: nobody said whether it was, and incised it would
/// not surely do by itself. Source: [`Source::SpanMethod`].
fn incised_untold(joist: &Joist, left: Section, shared: &Shared, units: Units) -> Option<Reason> {
    if joist.is_incised(shared).is_some() {
        return None;
    }
    let incised = Shared { is_incised: Some(true), sister_is_incised: Some(true), ..shared.clone() };
    let may = range(left, &incised, joist)?;
    let surely = left.less(SECTION_ERROR).and_then(|left| range(left, &incised, joist));
    let does = |(_, asked)| surely.is_some_and(|surely| asked + SPAN_ERROR <= surely.weakest);
    (!joist.spans().into_iter().all(does)).then(|| {
        let say = match joist.new_since {
            Some(_) => "say whether sisters and new joists are",
            None => "say whether the old joists are",
        };
        let words = format!(
            "if it is incised for treatment, by rows of short cuts in its faces, it may span only {}: {say}",
            may.words(units)
        );
        reason(Fate::Open, Source::SpanMethod, rests_on(joist, shared), words).ended_by(&ENGINEER)
    })
}

/// Tile weighs more than what is taken where nobody said how heavy a floor is.
pub(super) fn not_weighed(shared: &Shared) -> Option<Reason> {
    shared.tile_not_weighed.then(|| {
        let words =
            "tile is to lie on it: say the dead load. 10 psf is no floor under tile; 20 is usual, a mortar bed more";
        reason(Fate::Open, Source::DeadLoads, shared.since, words).ended_by(&ENGINEER)
    })
}

/// What is not sawn spans no more than so many times its depth ([`Source::EngineeredSpans`]).
const MOST_SLENDER: i64 = 25;

/// No rule here says how far engineered wood spans.
pub(super) fn of_engineered(joist: &Joist, shared: &Shared, units: Units) -> Option<Reason> {
    let looked_up_for = looked_up_for(joist, shared);
    let words = match joist.span_allowed {
        Some(SpanAllowed::Yes) if joist.since.span_allowed.is_after(looked_up_for) => return too_slender(joist, units),
        Some(SpanAllowed::Yes) => {
            "its span was allowed before what it is, its size, spans, spacing or loads were said as they are now: look it \
             up again for these, and say again who allows it"
        }
        Some(SpanAllowed::NotYet) => "nobody allows its span yet: look it up in its maker's table, or ask a designer",
        None => "say who allows its span: its maker's table or a designer. No rule here does",
    };
    let since = joist.since.member.and(looked_up_for);
    Some(reason(Fate::Open, Source::EngineeredWoodCode, since, words).ended_by(&ENGINEER))
}

/// Since all that its span is looked up for is as it is.
fn looked_up_for(joist: &Joist, shared: &Shared) -> Since {
    let said = joist.since;
    Since::all([said.made_as, said.section, joist.laid_since(), said.span, shared.loaded_since])
}

/// Whoever is said to allow it, no table goes that far: something was said wrongly.
fn too_slender(joist: &Joist, units: Units) -> Option<Reason> {
    let (clear, depth) =
        joist.longest_clear().zip(joist.depth).filter(|(clear, depth)| *clear > *depth * MOST_SLENDER)?;
    let words = format!(
        "{} over {} of depth is more than {MOST_SLENDER} times it, farther than makers' tables go: measure its depth and \
         span again, and look its span up again",
        units.length(clear),
        units.length(depth)
    );
    let since = Since::all([joist.since.member, joist.since.section, joist.since.span]);
    Some(reason(Fate::Open, Source::EngineeredSpans, since, words).ended_by(&ENGINEER))
}

fn judged(joist: &Joist, left: Option<Section>, may_span: Option<Range>, shared: &Shared, units: Units) -> Vec<Reason> {
    if joist.clear.is_none() || joist.section().is_none() {
        return Vec::new();
    }
    let since = rests_on(joist, shared);
    let Some(left) = left else {
        return vec![reason(Fate::Replace, Source::SoftCountsNothing, since, "nothing sound is left of it")];
    };
    let Some(may) = may_span else {
        let words = "no design values for it: deeper or thicker than joists are, fewer than three of them, or a grade \
                     that none is known for";
        return vec![reason(Fate::Engineer, Source::DesignValues, since, words)];
    };
    let spans = joist.spans();
    let mut reasons: Vec<_> =
        spans.into_iter().filter_map(|span| one_span(joist, span, (left, may), shared, units)).collect();
    // What both spans come to alike is said of the longer, but where a sister ends it: each is along one.
    reasons.dedup_by(|shorter, longer| shorter.fate == longer.fate && !shorter.is_ended_by_a_sister());
    reasons
}

/// How one of its spans comes out.
fn one_span(
    joist: &Joist,
    (along, asked): (Along, Length),
    (left, may): (Section, Range),
    shared: &Shared,
    units: Units,
) -> Option<Reason> {
    let whole = joist.section()?;
    let since = rests_on(joist, shared);
    let strip = joist.strip(shared);
    let by_a_wall = if strip > shared.spacing { carrying(strip, units) } else { String::new() };
    let past = if along == Along::Next { " past the girder" } else { "" };
    let says = format!(
        "spans {}{past}{by_a_wall}; by its wood it may span {}",
        units.length(asked.up_to(Length::sixty_fourths(4))),
        may.words(units)
    );
    // A new joist of the same size does only where the old one, whole, did.
    let does_whole = range(whole, shared, joist).is_some_and(|whole| asked <= whole.weakest);
    if asked > may.strongest {
        let judged = with_a_sister(joist, (left, asked), shared, &says, may.source, since);
        return Some(match judged.fate {
            Fate::Sister => judged.ended_by(a_sister(along, does_whole)),
            _ => judged,
        });
    }
    let new = if does_whole { &NEW[..] } else { &ENGINEER[..] };
    if asked > may.weakest || !joist.stamp(shared).is_whole() {
        // The weakest wood that it can be may do, yet nobody knows that it is even that.
        let find = match joist.new_since {
            Some(_) => "find its stamp, and say it as that of sisters and new joists",
            None => "find its stamp, or have somebody grade it",
        };
        let words = format!("{says}: {find}");
        return Some(reason(Fate::Open, may.source, since, words).ended_by(new));
    }
    let is_surely = |section: Section| {
        let surely = section.less(SECTION_ERROR).and_then(|section| range(section, shared, joist));
        surely.is_some_and(|surely| asked + SPAN_ERROR <= surely.weakest)
    };
    (!is_surely(left)).then(|| {
        let words =
            format!("{says}: closer than a tape can tell. Measure its breadth, depth and span again, or sister it");
        reason(Fate::Open, may.source, since, words).ended_by(a_sister(along, is_surely(whole)))
    })
}

/// What ends a span that is too far: a sister along it, or a new joist where one of its size does by
/// itself.
const fn a_sister(along: Along, does_whole: bool) -> &'static [Done] {
    match (along, does_whole) {
        (Along::First, true) => &SISTER,
        (Along::First, false) => &SISTER_ALONE,
        (Along::Next, true) => &SISTER_BEYOND,
        (Along::Next, false) => &SISTER_BEYOND_ALONE,
    }
}

fn carrying(strip: Length, units: Units) -> String {
    format!(" and carries {} of floor, half of the bay at its wall with it", units.length(strip.up_to(Length::INCH)))
}

/// Where a joist of its size does not do by itself, a new one of that size does not either.
const SISTER_ALONE: [Done; 2] = [Done::Sistered, Done::AsTheEngineerSays];
const SISTER_BEYOND_ALONE: [Done; 2] = [Done::SisteredBeyond, Done::AsTheEngineerSays];

/// What a span is worked out from. How wet it reads counts only where that makes it weaker.
fn rests_on(joist: &Joist, shared: &Shared) -> Since {
    let said = joist.since;
    let wet = if joist.service(shared).is_wet { said.reads } else { Since::ALWAYS };
    let walls = if joist.strip(shared) > shared.spacing { said.walls } else { Since::ALWAYS };
    let of_new = if joist.new_since.is_some() { shared.sister_since } else { Since::ALWAYS };
    Since::all([
        said.member,
        said.section,
        said.span,
        walls,
        said.bearing,
        left_since(joist),
        shared.since,
        wet,
        joist.laid_since(),
        of_new,
    ])
}

/// It spans too far by itself: does the sister that is to be beside it carry the rest?
fn with_a_sister(
    joist: &Joist,
    (left, asked): (Section, Length),
    shared: &Shared,
    says: &str,
    source: Source,
    since: Since,
) -> Reason {
    let since = since.and(shared.sister_since);
    let Some(sister) = shared.sister else {
        let words = format!("{says}: too far by itself. Say how broad and deep sisters are, to tell whether one does");
        return reason(Fate::Open, source, since, words).ended_by(&ENGINEER);
    };
    let does = with_it(joist, left, (sister, sister), shared);
    let judged = |fate, does: &str| reason(fate, source, since, format!("{says}: too far by itself; {does}"));
    let does_surely = |shared: &Shared| {
        let less = left.less(SECTION_ERROR).zip(sister.less(SECTION_ERROR));
        let surely = less.and_then(|(left, less)| with_it(joist, left, (less, sister), shared));
        surely.is_some_and(|surely| asked + SPAN_ERROR <= surely.weakest)
    };
    match does {
        Some(_) if does_surely(&with_sisters_at_worst(shared)) => {
            let is_before = joist.put_in.iter().any(|put_in| !put_in.is_after(shared.sister_since));
            let does =
                "a sister as they are said now does. One was put in before that was said: read its stamp, and size it";
            judged(Fate::Sister, if is_before { does } else { "a sister does" })
        }
        Some(_) if does_surely(shared) => {
            let words = "whether a sister does hangs on whether it is incised for treatment: say whether sisters are";
            judged(Fate::Open, words).ended_by(&ENGINEER)
        }
        Some(range) if asked <= range.weakest => {
            let words = "a sister does, and that is closer than a tape can tell: measure breadth, depth and span of both again, \
                         or take a stronger sister";
            judged(Fate::Open, words).ended_by(&ENGINEER)
        }
        Some(range) if asked <= range.strongest => {
            let words = "whether a sister does hangs on its stamp and the joist's: say the species and grade of both";
            judged(Fate::Open, words).ended_by(&ENGINEER)
        }
        _ => judged(Fate::Engineer, "one sister does not do"),
    }
}

/// Sisters of which nobody said that they are not incised, as if they were.
fn with_sisters_at_worst(shared: &Shared) -> Shared {
    Shared { sister_is_incised: shared.sister_is_incised.or(Some(true)), ..shared.clone() }
}

/// What a sister beside a joist goes through.
fn service_of_sister(joist: &Joist, shared: &Shared) -> Service {
    Service { is_incised: shared.sister_is_incised == Some(true), ..joist.service(shared) }
}

/// How far what is left of a joist and a sister beside it may span. They sag together, so that
/// each takes its share of the load by its stiffness, and neither may take more than it can.
/// Source: [`Source::SpanMethod`].
fn with_it(joist: &Joist, left: Section, (sister, cut_to): (Section, Section), shared: &Shared) -> Option<Range> {
    if joist.breadth?.max(sister.breadth) > THICKEST || shared.count < FEWEST {
        return None;
    }
    let of = |stamp: Stamp, depth| stamp.plausible(depth, shared.edition);
    let (joists, sisters) = (of(joist.stamp(shared), joist.depth?), of(shared.sister_stamp, cut_to.depth));
    let pairs = joists.iter().flat_map(|its| sisters.iter().map(move |sisters| (*its, *sisters)));
    let [its_service, of_sister] = [joist.service(shared), service_of_sister(joist, shared)];
    Range::of(pairs.map(|(its, sisters)| {
        let one = serving(its, its_service).stiffness * left.inertia();
        let other = serving(sisters, of_sister).stiffness * sister.inertia();
        let takes = |section, values, share: f64, service| {
            let loads = shared.loads.times(share / (one + other));
            span(section, values, joist.strip(shared), loads, service).value.allowed()
        };
        (takes(left, its, one, its_service).min(takes(sister, sisters, other, of_sister)), its.source)
    }))
}

/// Does a sister surely carry by itself, with the weakest wood that it can be, each span along which
/// the joist is soft? One lies along each.
pub(in crate::engine::framing) fn does_alone(joist: &Joist, sister: Section, shared: &Shared) -> bool {
    let shared = &with_sisters_at_worst(shared);
    let service = service_of_sister(joist, shared);
    let surely = sister.less(SECTION_ERROR);
    let Some(may) = surely.and_then(|surely| span_of(surely, (sister, shared.sister_stamp), shared, joist, service))
    else {
        return false;
    };
    let mut spans = joist.spans().into_iter().filter(|(along, _)| may_be_soft_along(joist, *along)).peekable();
    spans.peek().is_some() && spans.all(|(_, asked)| asked + SPAN_ERROR <= may.weakest)
}

/// Is it soft along that span, or somewhere that nobody said?
fn may_be_soft_along(joist: &Joist, along: Along) -> bool {
    let soft = joist.spots.soft.iter().filter(|soft| soft.goes != Goes::Nowhere);
    let mut ends = soft.map(|soft| soft.stretch.ends().zip(joist.clear));
    ends.any(|ends| {
        ends.is_none_or(|((from, to), clear)| match along {
            Along::First => from <= clear + RUNS_ON,
            Along::Next => to >= clear - RUNS_ON,
        })
    })
}

/// What is left of a joist: less what is soft, less what is notched out of its sides, and less its
/// deepest notch that is not allowed as it is. Soft wood of which nobody said at which side it is
/// counts as lost of the depth.
fn left_of(joist: &Joist) -> Option<Section> {
    let whole = joist.section()?;
    let notch = counted(joist, whole).filter_map(|notch| notch.depth).max().unwrap_or(Length::ZERO);
    let of_depth = lost_of_depth(joist).max(lost_somewhere(joist)) + notch;
    whole.without_edge(of_depth)?.without_face(lost_of_breadth(joist) + notched_of_breadth(joist))
}

/// The notches at its edges that take of its depth: those that are not allowed as they are.
fn counted(joist: &Joist, whole: Section) -> impl Iterator<Item = Notch> {
    let limits = whole.cut_limits().value;
    notches(joist).into_iter().filter(move |notch| !notch.is_in_side() && !is_allowed(notch, joist, &limits))
}

/// Since what is left of it is what it is: holes, and notches within the rules, take nothing.
fn left_since(joist: &Joist) -> Since {
    let at_edges = joist.section().into_iter().flat_map(|whole| counted(joist, whole)).map(|notch| notch.since);
    let in_sides = joist.spots.notches.iter().filter(|notch| notch.is_in_side()).map(|notch| notch.since);
    Since::all(at_edges.chain(in_sides).chain([joist.spots.soft_since()]))
}

/// How far a section of a joist may span.
fn range(section: Section, shared: &Shared, joist: &Joist) -> Option<Range> {
    span_of(section, (joist.section()?, joist.stamp(shared)), shared, joist, joist.service(shared))
}

/// How far a section may span with the weakest and the strongest plausible wood. Its
/// values go by the size that it was cut to, not by what is left. None for what the
/// method does not hold for: thick timber, or joists too few to share a load.
fn span_of(
    section: Section,
    (cut_to, stamp): (Section, Stamp),
    shared: &Shared,
    joist: &Joist,
    service: Service,
) -> Option<Range> {
    if cut_to.breadth > THICKEST || shared.count < FEWEST {
        return None;
    }
    Range::of(stamp.plausible(cut_to.depth, shared.edition).into_iter().map(|values| {
        let span = span(section, values, joist.strip(shared), shared.loads, service);
        (span.value.allowed(), values.source)
    }))
}

impl Range {
    /// Of spans, each with where its values are from.
    fn of(spans: impl Iterator<Item = (Length, Source)>) -> Option<Self> {
        let spans: Vec<_> = spans.collect();
        let source = spans.iter().map(|(_, source)| *source).max_by_key(|source| source.citation().mark)?;
        let lengths = || spans.iter().map(|(length, _)| *length);
        Some(Self { weakest: lengths().min()?, strongest: lengths().max()?, source })
    }

    /// "12' 9\"", or "9' 2\" to 12' 9\"": rounded down, since it may span no more.
    pub fn words(self, units: Units) -> String {
        let down = |length: Length| units.length(length.down_to(Length::INCH));
        match self.weakest == self.strongest {
            true => down(self.weakest),
            false => format!("{} to {}", down(self.weakest), down(self.strongest)),
        }
    }
}
