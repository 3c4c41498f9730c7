//! Where the search gives up, all in one place, and why each errs on the safe side.
//!
//! Giving up is never an answer. What is not looked at is unknown: it is no layout that is
//! not there, no sheet that is needed and no piece that does not fit. So a bound may be too
//! low and a layout not the best there is; neither is ever claimed to be more than it is.
//! `tests/layout` holds that to trying everything, with each of these as small as can be.

/// How far the search goes in everything that it does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// Questions of what fits that are remembered for one class. What is not is worked out
    /// again, or is unknown when the work for it is used up.
    pub kept: usize,
    /// Ways to part pieces that may be looked at, on average, for one filling of a sheet.
    /// Beyond that it is unknown whether they fit.
    pub work_a_filling: u64,
    /// Ways to part the pieces of a sheet that may be looked at to find its cutting again:
    /// some twenty times what it took to find that they fit. Beyond that the layout is not
    /// made, and what it would have settled stays open.
    pub work_a_sheet: u64,
    /// Of more choices among a sheet's pieces the cutting that is known will do. Sawing may
    /// then be longer than it need be; the pieces are the same.
    pub choices: usize,
    /// With more lengths that matter along one way of a sheet, sizes are rounded down to a
    /// coarser step: fillings can then only be worth more, and bounds be lower.
    pub lengths: usize,
    /// Kinds of pieces in one class. Of a class with more nothing is said.
    pub kinds: usize,
    /// Ways to put the joints of a course that are listed. Of a course with more, bounds let
    /// neighbours disagree, which can only prove less, and nothing that is not listed is
    /// called impossible.
    pub ways: usize,
    /// So many are listed then, of the fewest pieces.
    pub few_ways: usize,
    /// Ways that the first layout chooses from. That it finds none says nothing where not
    /// all are listed.
    pub ways_at_once: usize,
    /// Sets of pieces for a course that are listed. With more none is, and the class is not
    /// decided by them.
    pub sets: usize,
    /// Pairs of ways that are compared for the cheapest joints. Beyond that neighbours may
    /// disagree, which can only be cheaper.
    pub compared: u64,
    /// Cells that are tried to find joints for given pieces. Beyond that it is unknown
    /// whether there are any.
    pub joints_tried: usize,
    /// Kinds of pieces that prices are looked for by the linear programme, which takes memory
    /// by the square of them. With more, prices by area have to do: any prices prove
    /// something true.
    pub programmed: usize,
    /// Columns of the programme. With more no better prices are looked for; the best stay.
    pub columns: usize,
    /// Rounds in a row that the programme may be left unsolved. So too.
    pub unsolved: u32,
    /// Steps of the programme in one round. It goes on in the next.
    pub steps_a_round: usize,
    /// Prices that are kept of those that were tried. Fewer prices refute less.
    pub pooled: usize,
    /// Rounds that are spent on prices for the pieces of one layout. They refute it or do
    /// not: that they do not says nothing.
    pub rounds_for_one: usize,
    /// Fillings that one try to pack looks at. Beyond that it is unknown whether the pieces
    /// come out of so many sheets.
    pub effort: usize,
    /// The same for one layout of those that are gone through one by one.
    pub effort_for_each: usize,
    /// The same before prices are looked for that refute it.
    pub quick_effort: usize,
    /// Tries to pack that are remembered. The others are made again.
    pub tried: usize,
    /// Leavings that are remembered not to fit. The others are tried again.
    pub dead: usize,
    /// How often chance is tried on a class, at most.
    pub throws: usize,
    /// On all that are still open. Chance finds layouts and proves nothing.
    pub throws_in_all: usize,
    /// Beginnings of layouts that are looked at in one class. Beyond that the class is left
    /// open.
    pub beginnings: usize,
    /// So many in one step.
    pub beginnings_a_step: usize,
    /// Beginnings that are remembered. The same is then looked at more than once.
    pub remembered: usize,
    /// Stacks of heights by which first widths are told apart. With more a width is a class
    /// of its own: classes are more, and what holds of each is the same.
    pub stacks: usize,
    /// Of no more kinds than this it is looked at which are out of the question. The others
    /// stay in it.
    pub sifted: usize,
    /// Classes that are bounded together.
    pub in_a_group: usize,
    /// Rounds after which a group is halved. What was proven of it stays true of both.
    pub group_rounds: u32,
    /// Bytes that classes may take together while they are taken apart, by the engine's own
    /// count, the same on every machine. Beyond that the ones that had no turn for the
    /// longest are put back: what was proven of them stays, and they are begun again when
    /// their turn comes.
    pub bytes: usize,
}

impl Limits {
    /// What phone and office go by.
    pub const USUAL: Self = Self {
        kept: 60_000,
        work_a_filling: 60,
        work_a_sheet: 2_000_000,
        choices: 1 << 10,
        lengths: 700,
        kinds: 4_000,
        ways: 6_000,
        few_ways: 700,
        ways_at_once: 200,
        sets: 20_000,
        compared: 20_000_000,
        joints_tried: 60_000,
        programmed: 800,
        columns: 6_000,
        unsolved: 20,
        steps_a_round: 400,
        pooled: 40,
        rounds_for_one: 60,
        effort: 400,
        effort_for_each: 12_000,
        quick_effort: 400,
        tried: 20_000,
        dead: 30_000,
        throws: 80,
        throws_in_all: 2_000,
        beginnings: 60_000,
        beginnings_a_step: 200,
        remembered: 40_000,
        stacks: 2_000,
        sifted: 150,
        in_a_group: 32,
        group_rounds: 60,
        bytes: 64_000_000,
    };
}
