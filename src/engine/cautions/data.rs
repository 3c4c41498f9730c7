//! The cautions, the worst first: data, and nothing else.
//!
//! Each says what to do in as few words as the trade would, and who does what is not a
//! carpenter's. A new caution is one more line here.

use super::{Caution, Severity, Trigger};
use crate::engine::condition::Finding;
use crate::engine::framing::DamageKind;
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
        trigger: Trigger::Any(&[
            Trigger::Found(&[Finding::StandingWater]),
            Trigger::Answered(&[("water_on_soil", "water stands or runs on the soil")]),
        ]),
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
        name: "bare_wire",
        severity: Severity::Deadly,
        title: "A bare or hanging wire",
        words: "Touch nothing and go out the way you came. The power goes off at the panel, locked out and tested dead by \
                somebody who can, before anybody goes back in; a licensed electrician makes it safe before the floor is \
                closed over it.",
        sources: &[Source::LicensedTrades, Source::ConfinedSpace],
        trigger: Trigger::Found(&[Finding::BareWire]),
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
        name: "engines",
        severity: Severity::Deadly,
        title: "Engines and generators",
        words: "No generator, pump, saw, washer or compressor with an engine under the house, in it, or at its vents, \
                doors and windows, however open they stand and with fans running. Carbon monoxide gives no sign and \
                kills within minutes. Below, tools run on cords, batteries or air. Headache, dizzy, sick: everybody \
                out, call 911.",
        sources: &[Source::Engines],
        trigger: Trigger::Any(&[Trigger::UnderTheHouse, Trigger::Cut]),
    },
    Caution {
        name: "exhaust_fan",
        severity: Severity::Deadly,
        title: "A fan that pulls air out from under the house",
        words: "It can pull flue gas, with carbon monoxide, back down a water heater, furnace or stove, and soil gas up. \
                Where fuel is burned in the house or below it, somebody trained tests the draft at the worst pull before \
                the fan is left running, and CO alarms hang in the house. It needs its air path down from the rooms and \
                a covered ground.",
        sources: &[Source::Backdraft, Source::UnventedAir, Source::OutdoorFans],
        trigger: Trigger::ExhaustFan,
    },
    Caution {
        name: "heat_and_rescue",
        severity: Severity::Deadly,
        title: "Heat, and getting somebody out",
        words: "Little air moves below: water, rest in the cool, short turns. Confused or passed out: call 911, cool with \
                water, stay with them. Nobody crawls in after somebody who does not answer until the power is off and the \
                air known to be good: most who die in confined spaces went in to help. Say beforehand how you get out.",
        sources: &[Source::Heat, Source::Rescuers, Source::CrawlEntryHabits],
        trigger: Trigger::UnderTheHouse,
    },
    Caution {
        name: "dryer_duct",
        severity: Severity::Deadly,
        title: "A dryer that blows under the house",
        words: "Lint burns, and each load is water in the air. A gas dryer blows carbon monoxide with it: leave it off, and \
                go in only once the air is known to be good. Its duct is metal and ends outdoors, never below or in an \
                attic; clear the lint out before anything that sparks is used. Gas is for a gas fitter.",
        sources: &[Source::DryerDucts, Source::LicensedTrades],
        trigger: Trigger::Answered(&[
            ("dryer_duct", "a dryer's duct is open or ends below"),
            ("lint", "there is lint below"),
        ]),
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
        trigger: Trigger::Any(&[
            Trigger::Damaged(&[DamageKind::Soft, DamageKind::Notch, DamageKind::Hole]),
            Trigger::Said(&["soft depth", "notch depth", "hole", "header span"]),
            Trigger::BadFraming,
            // A joist whose span is asked about may be one to sister or to take out.
            Trigger::Said(&["clear span", "next span"]),
        ]),
    },
    Caution {
        name: "roof_edge",
        severity: Severity::Harmful,
        title: "At the roof's edge",
        words: "Gutters are hung from a ladder that is footed and tied, or from a scaffold, clear of wires. Ladders go by \
                rules of their own, not by those of floor holes; whoever steps onto the roof goes by the fall rules.",
        sources: &[Source::LadderRules, Source::LicensedTrades],
        trigger: Trigger::Said(&["eave", "roof area"]),
    },
    Caution {
        name: "hole_cover",
        severity: Severity::Harmful,
        title: "Cover the hole",
        words: "A hole 2 in or more across gets a cover at any height, so over a low crawl space too, or a rail around \
                it. A cover bears twice what may come on it, is fastened, and is marked HOLE or COVER. Over more than 6 ft \
                it is a cover, a guardrail or a harness: one of them always.",
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
        trigger: Trigger::Any(&[
            Trigger::Found(&[Finding::Sewage]),
            Trigger::Answered(&[("drain_smell", "it smells of sewage or soap")]),
        ]),
    },
    Caution {
        name: "rodents",
        severity: Severity::Harmful,
        title: "Droppings and nests",
        words: "Before you work among them air the space out for 30 minutes, and stay out meanwhile. Do not sweep or \
                vacuum droppings, urine or nests: gloves, soak them with disinfectant or 1 part bleach to 9 of water, wait \
                5 minutes, wipe up, bag, wash. Where there are many, it is for people trained for it.",
        sources: &[Source::Rodents],
        trigger: Trigger::UnderTheHouse,
    },
    Caution {
        name: "nail_plates",
        severity: Severity::Harmful,
        title: "Wires and pipes that a screw could reach",
        words: "A wire through a joist less than 1 1/4 in from its edge, or laid in a notch, gets a steel plate 1/16 in thick \
                before the sheets go down; a pipe likewise, in some places from 1 1/2 in on. Screws no longer than the \
                sheet asks for. Moving the wire or pipe is for a licensed electrician or plumber.",
        sources: &[Source::NailPlates, Source::PipePlates, Source::LicensedTrades],
        trigger: Trigger::Any(&[
            Trigger::Found(&[Finding::Wire, Finding::Pipe]),
            Trigger::Said(&["hole", "notch depth"]),
            Trigger::Damaged(&[DamageKind::Notch, DamageKind::Hole]),
        ]),
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
        name: "asbestos_pipes",
        severity: Severity::Lasting,
        title: "Asbestos on pipes and furnaces",
        words: "In older houses the wrap on steam and hot-water pipes, and insulation and gaskets of furnaces, may hold \
                asbestos. Leave what is whole alone: do not rub, cut or bump it. What crumbles, or is in the way, is for a \
                professional trained for asbestos, before anybody works beside it.",
        sources: &[Source::AsbestosPipes, Source::AsbestosYear],
        trigger: Trigger::UnderHouseBefore(1986),
    },
    Caution {
        name: "lead",
        severity: Severity::Lasting,
        title: "Lead in old paint",
        words: "Paint of before 1978 may hold lead. Taking out a painted floor so that it is destroyed is demolition, and \
                does not pass as minor repair however small it is. Have the paint tested, or work by the federal \
                renovation rule and your state's.",
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
        name: "strands",
        severity: Severity::Lasting,
        title: "Strands or fans of a fungus",
        words: "Some fungi carry water along and rot wood that would read dry, so that no dry reading clears them. Follow \
                the strands to where they drink, soil, masonry or a leak, and cut them off from it. Somebody who knows \
                wood decay looks before the floor is closed.",
        sources: &[Source::WaterConductingFungi, Source::DecayFans, Source::StrandsTraced],
        trigger: Trigger::Found(&[Finding::Strands]),
    },
    Caution {
        name: "radon",
        severity: Severity::Lasting,
        title: "Radon",
        words: "Soil gas comes in by the crawl space, and a new cover, closed vents or a fan change how much. Test the house \
                before and after; from 4 pCi/L on it is for a certified mitigator. Suction under a sealed cover does more \
                than pulling air out of the space.",
        sources: &[Source::Radon, Source::RadonCrawl, Source::RadonLap],
        trigger: Trigger::Any(&[
            Trigger::Said(&["air", "ground cover"]),
            Trigger::Answered(&[("ground_covered_now", "the soil is covered now")]),
            Trigger::Unvented,
        ]),
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
