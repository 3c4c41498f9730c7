//! The cautions, the worst first: data, and nothing else.
//!
//! Each says what to do in as few words as the trade would, and who does what is not a
//! carpenter's. A new caution is one more line here.

use super::{Caution, Severity, Trigger};
use crate::engine::condition::Finding;
use crate::engine::sources::Source;

/// Every caution, the worst first.
pub const CAUTIONS: &[Caution] = &[
    Caution {
        name: "standing_water",
        severity: Severity::Deadly,
        title: "Standing water and power",
        words: "Stay out until the power to the space is off and tested dead. If the switch or the panel can \
                only be reached through water, a licensed electrician or the utility cuts it. Battery lights only.",
        sources: &[Source::WaterAndPower],
        trigger: Trigger::Found(&[Finding::StandingWater]),
    },
    Caution {
        name: "crawl_entry",
        severity: Severity::Deadly,
        title: "Going under the house",
        words: "A crawl space is a confined space. Before anybody goes in, a competent person looks for bad air, \
                water, bare or live wires and anything that traps; with one of these it may take a permit. \
                Somebody stays outside and knows when you are due. Two lights, a mask, a way out.",
        sources: &[Source::ConfinedSpace, Source::ConfinedSpaceHomes, Source::CrawlEntryHabits],
        trigger: Trigger::UnderTheHouse,
    },
    Caution {
        name: "wire_or_pipe",
        severity: Severity::Deadly,
        title: "A wire or pipe is in the way",
        words: "Mark it on the floor above. Switch off and lock out, or shut and drain, before the saw is near it. \
                A panel, a feeder, a service wire, a wire that stays live, or gas: a licensed electrician, plumber or \
                gas fitter moves it.",
        sources: &[Source::BlindCuts, Source::LicensedTrades],
        trigger: Trigger::Found(&[Finding::Wire, Finding::Pipe]),
    },
    Caution {
        name: "blind_cut",
        severity: Severity::Deadly,
        title: "Cutting what you cannot see through",
        words: "Look into every bay from below for wires, pipes, gas and ducts before the first cut, and lock out what \
                crosses the line. Set the blade as deep as the sheet and no deeper. What cannot be seen is taken to be \
                there.",
        sources: &[Source::BlindCuts, Source::LicensedTrades],
        trigger: Trigger::Cut,
    },
    Caution {
        name: "weak_framing",
        severity: Severity::Harmful,
        title: "Framing that may not hold",
        words: "Keep people and loads off the floor above, and prop nothing by guess. Damage to a girder, a sill or the \
                foundation, a joist that has lost more than a third of its depth, more than two in a row, or a new span \
                or load: a licensed engineer looks before anything is cut out.",
        sources: &[Source::EngineerLooks],
        trigger: Trigger::WeakFraming,
    },
    Caution {
        name: "shoring",
        severity: Severity::Harmful,
        title: "Shore before you cut a joist",
        words: "Temporary walls or posts on both sides, on firm ground, before a joist is cut, notched or taken out. \
                They stay until the new one bears. Sister no wet rot.",
        sources: &[Source::Shoring, Source::JoistRepair],
        trigger: Trigger::SpotOrSaid(&["soft depth", "notch depth", "header span"]),
    },
    Caution {
        name: "roof_edge",
        severity: Severity::Harmful,
        title: "At the roof's edge",
        words: "Gutters are hung from a footed ladder or a scaffold, clear of wires. Above 6 ft the fall rule holds.",
        sources: &[Source::HoleCovers, Source::LicensedTrades],
        trigger: Trigger::Said(&["eave", "roof area"]),
    },
    Caution {
        name: "hole_cover",
        severity: Severity::Harmful,
        title: "Cover the hole",
        words: "A hole 2 in or more across gets a cover at any height, so over a low crawl space too: it bears twice \
                what may come on it, is fastened, and is marked HOLE or COVER. More than 6 ft down asks for fall \
                protection besides.",
        sources: &[Source::HoleCovers, Source::HoleMarking],
        trigger: Trigger::Cut,
    },
    Caution {
        name: "sewage",
        severity: Severity::Harmful,
        title: "Sewage",
        words: "Keep out of it, and keep it off your tools and out of the house. A plumber stops it and a cleanup \
                specialist clears it before the floor work goes on.",
        sources: &[Source::MouldSpecialist, Source::LicensedTrades],
        trigger: Trigger::Found(&[Finding::Sewage]),
    },
    Caution {
        name: "asbestos",
        severity: Severity::Lasting,
        title: "Asbestos in old floor coverings",
        words: "Sheet vinyl, tile, backing and mastic of before 1980, some say 1986, may hold asbestos. Do not sand, \
                grind or break them. Have a sample tested before you cut; if it is asbestos, a licensed contractor \
                takes it out.",
        sources: &[Source::AsbestosFloors, Source::AsbestosYear, Source::AsbestosLaterYear],
        trigger: Trigger::CutInHouseBefore(1986),
    },
    Caution {
        name: "lead",
        severity: Severity::Lasting,
        title: "Lead in old paint",
        words: "Paint of before 1978 may hold lead. Cutting out a painted floor is demolition, so it does not pass as \
                minor repair however small it is. Have the paint tested, or work by the federal renovation rule and \
                your state's.",
        sources: &[Source::LeadRule, Source::LeadMinorRepair],
        trigger: Trigger::CutInHouseBefore(1978),
    },
    Caution {
        name: "mold",
        severity: Severity::Lasting,
        title: "Mold",
        words: "N95 or better, gloves and eye protection, and do not stir it up dry. More than 10 sq ft of it, sewage \
                with it, or somebody sick in the house: a mold specialist first.",
        sources: &[Source::MouldSizes, Source::MouldGear, Source::MouldSpecialist],
        trigger: Trigger::Found(&[Finding::Mould]),
    },
    Caution {
        name: "treated_dust",
        severity: Severity::Lasting,
        title: "Dust of treated wood",
        words: "Cut it outdoors with a respirator and eye protection, and wash before you eat. Offcuts and dust go where \
                local rules say, never on a fire.",
        sources: &[Source::TreatedDust],
        trigger: Trigger::TreatedWood,
    },
    Caution {
        name: "silica",
        severity: Severity::Lasting,
        title: "Cutting a vent through masonry",
        words: "Masonry dust holds silica, which wood dust does not. Cut the way that table 1 of the silica rule gives \
                for the tool in your hand, with the respirator it asks for.",
        sources: &[Source::SilicaRule],
        trigger: Trigger::Vents,
    },
    Caution {
        name: "insects",
        severity: Severity::Lasting,
        title: "Insects in the wood",
        words: "Find out what they are and whether they are still at work before the floor is closed over them. \
                Treating them is for a licensed applicator.",
        sources: &[Source::InsectsNamed],
        trigger: Trigger::Found(&[Finding::Insects]),
    },
];
