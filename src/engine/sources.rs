//! Every citation, once. Rules refer to a source by its name here; its mark says how
//! much of it was really seen, and no rule may show a better one.

// Long because it is one list, and a citation may stand in it only once.

use std::fmt;

/// How far a value can be traced, from best to weakest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mark {
    /// A published source whose text was read.
    Published,
    /// Quoted or reproduced by a secondary page that was read.
    Secondary,
    /// Derived here from the stated rule.
    Computed,
    /// From memory: not seen in print.
    Memory,
    /// Common practice, no source.
    Practice,
}

impl Mark {
    /// The mark in words, as a figure shows it.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::Secondary => "published, seen as quoted",
            Self::Computed => "computed here",
            Self::Memory => "from memory",
            Self::Practice => "common practice, no source",
        }
    }
}

/// A citation with its mark.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Citation {
    /// Title, part and year.
    pub title: &'static str,
    /// How far it was seen.
    pub mark: Mark,
}

/// "Title (mark)".
impl fmt::Display for Citation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} ({})", self.title, self.mark.label())
    }
}

/// A source that a rule may name. Each is a constant of this type, so that a module carries
/// the citations that its own rules name and no others.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Source(&'static Listed);

/// A citation at its place in the list, which is the order in which sources are shown.
#[derive(Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Listed {
    at: usize,
    citation: Citation,
}

/// Defines the constants of [`Source`] from one list, so that none can be left out of `ALL`.
macro_rules! sources {
    ($($(#[$docs:meta])* $name:ident: $mark:ident, $title:literal;)*) => {
        /// Gives each source its place.
        enum At {
            $($name,)*
        }

        #[allow(non_upper_case_globals, reason = "they are the cases of a type in all but memory")]
        impl Source {
            /// Every source by the name of its constant.
            pub const ALL: &'static [(&'static str, Self)] = &[$((stringify!($name), Self::$name)),*];

            $(
                $(#[$docs])*
                pub const $name: Self = Self(&Listed {
                    at: At::$name as usize,
                    citation: Citation { title: $title, mark: Mark::$mark },
                });
            )*
        }
    };
}

sources! {
    /// Plain geometry.
    Geometry: Computed, "Plane geometry";
    /// The outline that fits best.
    LeastSquares: Computed, "Least squares: each measurement weighs as its accuracy allows";
    /// What disagrees.
    DataSnooping: Memory, "Data snooping after Baarda, with the squareness of corners estimated from the room: the reading that is likelier wrong than the house is old is named";
    /// How well people measure, and how square houses are.
    Accuracies: Memory, "Tape 1/16 in and 1 in 4,800, laser 1/16 in, corners as built 0.2° at best, checked 0.05°";
    /// Sheets by area.
    SheetsByArea: Practice, "Sheets by area: opening over sheet, rounded up, as carpenters estimate";
    /// How sheets are laid: gaps, spans, staggered joints.
    PanelLaying: Published, "APA Engineered Wood Construction Guide, form E30V (2011), pages 32, 36, 37, 39";
    /// Up to what width the code's table of panels holds.
    NarrowPanels: Secondary, "IRC table of wood structural panels, footnote: panels less than 24 in wide are outside";
    /// What a sheet covers whose edge has a tongue.
    TongueAndGroove: Secondary, "Labels of tongue-and-groove sheets: 47 1/2 in net of 48 in";
    /// What a saw takes.
    SawKerf: Practice, "A circular saw takes about 1/8 in";
    /// Where an opening is cut.
    CutBack: Practice, "Openings are cut back to joist centers";
    /// How thick joists are that nobody measured.
    JoistThickness: Practice, "Joists of 2 in by name are 1 1/2 in thick";
    /// What blocks are.
    Blocks: Practice, "Treated 2× blocks between joists under open edges and around an opening";
    /// How lumber is sold.
    LumberLengths: Memory, "Lumber is sold in lengths of 8, 10, 12, 14 and 16 ft";
    /// How many fasteners, and which.
    FastenerSchedule: Published,
        "IRC table R602.3(1), an older edition, scan in the City of Orono's records: 6 in at edges, 12 in between";
    /// How far from an edge fasteners go.
    EdgeDistance: Published, "APA form E30V (2011), on underlayment: fasteners 3/8 in from edges";
    /// How much more is bought than counted.
    FastenerWaste: Practice, "A tenth more fasteners than were counted";
    /// How thick a bead of glue is.
    GlueBead: Published, "APA form Q300: a bead of about 1/4 in on every joist, and in the groove";
    /// That the ends of two sheets on one joist get two beads.
    GlueUnderEnds: Practice, "Two beads on a joist where two sheets end";

    /// The equation of equilibrium moisture content. Its coefficients were read in
    /// a public package that cites the research note, not in the note.
    EquilibriumMoisture: Secondary,
        "Wood Handbook ch. 4, eq. 4-5 (FPL-GTR-190, 2010; FPL-GTR-282, 2021); Simpson 1998, FPL-RN-0268";
    /// How far the table behind that equation runs.
    EquilibriumRange: Memory, "Wood Handbook table 4-2: its range";
    /// Wetting and drying wood do not meet.
    Hysteresis: Memory, "Sorption hysteresis of wood: about 1 to 2 %";
    /// Saturation pressure over water, and with it the dew point.
    SaturationPressure: Secondary, "Alduchov and Eskridge 1996, J. Appl. Meteor. 35:601-609";
    /// Over what range that pressure was compared here with another program's.
    SaturationCheck: Computed, "Compared with PsychroLib 2.5.0, 34 to 100 °F";
    /// Vapor per pound of dry air.
    HumidityRatio: Secondary, "ASHRAE Handbook Fundamentals 2017, ch. 1";
    /// Air pressure by altitude.
    StandardAtmosphere: Computed, "Standard atmosphere, 14.696 psi at sea level";
    /// When a surface sweats.
    Condensation: Published, "Moses 1954, FPL Report 2010";
    /// How close to the dew point a probe can tell.
    ProbeMargin: Practice, "3 to 5 °F for the error of a surface probe";
    /// The humidity at a surface from which mold is to be watched for.
    MouldLine: Secondary, "A university wood scientist's public note on mold: surface humidity below 80 %";
    /// Whether outside air dries.
    Venting: Computed, "Vapor outside against vapor in the crawl space";

    /// Up to where electric readings follow moisture.
    ElectricLimit: Published, "James 1988, FPL-GTR-6, abstract";
    /// Usable range of pin meters, and the size of uncorrected errors.
    KilnManual: Secondary, "Hardwood Dry Kiln Operation, p. 31";
    /// Between which numbers a reading is believed without asking.
    LikelyReadings: Practice, "Wood under a roof reads 4 to 60 %; a number beyond is asked about";
    /// How near to oven-dry meters come.
    MeterAccuracy: Published, "FPInnovations report 16773, 2015";
    /// The temperature chart of pin meters.
    TemperatureChart: Secondary, "James 1988, FPL-GTR-6, fig. 5 (digitized by a third party)";
    /// That chart for a meter that reads true at another temperature than 70 °F.
    ChartReference: Computed, "FPL-GTR-6 fig. 5, taken to the meter's own reference temperature";
    /// The Douglas-fir row of the resistance table. Its cells are recalled; the row
    /// as a whole refits to a line that a third party fitted to the printed one.
    ResistanceDouglasFir: Memory,
        "James 1988, FPL-GTR-6, table 1: Douglas-fir, recalled; as a whole it agrees with a quoted fit";
    /// A line through the Douglas-fir row.
    ResistanceFit: Secondary, "A third party's fit of James 1988, FPL-GTR-6, table 1, Douglas-fir";
    /// The other rows of the resistance table, recalled and not seen.
    ResistanceSpecies: Memory, "James 1988, FPL-GTR-6, table 1: other woods, recalled";
    /// Which woods stand behind a grade stamp.
    SpeciesGroups: Secondary,
        "Woods of a stamp, the wettest taken: NELMA grader academy (SPF); Canadian Wood Council (D Fir-L); \
        Think Wood (hem-fir); SPIB (southern pine)";
    /// How far a wood of a stamp may lie above those that have a row.
    UnfoundWoods: Memory, "Black spruce and jack pine, recalled: some 3 above the Douglas-fir scale at 17.5 %";
    /// Treated wood reads high.
    TreatedWood: Practice, "Meter manuals on waterborne salts";
    /// Glue and wax shift readings.
    GluedWood: Practice, "Glue and wax shift readings of panels";
    /// Pinless meters sense density too.
    Pinless: Memory, "Pinless readings go with density; no general correction is published";
    /// High-temperature kiln drying makes corrected readings too wet.
    HighTemperatureDrying: Published,
        "Garrahan, Forintek: Moisture meter correction factors for high temperature dimension lumber";

    /// How mold comes and goes on damp surfaces.
    MouldIndex: Secondary,
        "Hukka and Viitanen 1999; classes of Ojanen, Viitanen et al. 2010, as two public research codes have them";
    /// How large a dehumidifier is.
    DehumidifierSize: Memory, "IRC R408.3, 2018 on: 70 pints a day for 1,000 sq ft";
    /// How dry crawl air gets.
    DrierAir: Practice, "Crawl air near 65 % over covered soil, near 50 % with a dehumidifier";
    /// How wood approaches the moisture of its air.
    FirstOrderDrying: Computed, "First-order drying: a part of what is left goes each day";
    /// How fast wood under a floor may dry.
    DryingPace: Computed, "Diffusion through panels and joists: a third is left after 3 to 70 days; no pace in place found";
    /// From where on free water leaves otherwise.
    FreeWater: Practice, "Drying is fitted from readings below 28 %";
    /// Subfloors under nailed wood floors.
    FlooringGuide: Secondary,
        "Flooring instructions restating a trade guideline: 12 %; 4 % apart under strips, 2 % under planks";

    /// How readings are drawn out between their places.
    Kriging: Memory, "Ordinary kriging and conditional simulation with exponential variograms";
    /// How wood may be wet before anything is read.
    WaysToBeWet: Practice, "Judgement: how far wood wanders, and that a patch or a strip along a wall may hide";
    /// The same without knowing how they go together.
    ByDistance: Practice, "Readings weighed by the inverse square of their distance";
    /// What speaks for a cause.
    Evidence: Practice, "The evidence file: every weight is judgement, each direction with its own source";
    /// What counts as dry lumber.
    DryLumber: Published, "WWPA, interpreting grade stamps (rules under PS 20): S-DRY and KD are 19 % or less";
    /// Above what decay spreads.
    DecaySpreads: Secondary, "A university wood scientist's note of 1996, as reproduced: most fungi need 20 % or more to carry on";
    /// That this is not so where the wood beside it is wetter.
    DecayFromWetter: Secondary,
        "A review, quoted without its author: out of wetter wood, rot may colonize wood down to about 20 %";
    /// That some fungi bring their own water.
    WaterConductingFungi: Published,
        "Verrall 1954, Southern Forest Experiment Station Occasional Paper 133: they wet, and advance in, wood too dry to decay";
    /// What decay looks like on the surface.
    DecayFans: Published, "Wood Handbook ch. 14 (FPL-GTR-190, 2010): fresh growth shows as fans, strands or root-like cords";
    /// From where on decay can begin.
    DecayBegins: Published,
        "Wood Handbook ch. 14 (FPL-GTR-190, 2010): serious decay only above fiber saturation, about 30 %";
    /// That wet wood is not closed in.
    DoNotEnclose: Published, "Wood Handbook ch. 14: wet or infected wood is not enclosed until thoroughly dried";

    /// How a span is worked out.
    SpanMethod: Secondary, "NDS allowable stress design, as the code's span tables of 2015 and later come out";
    /// What lumber is designed with.
    DesignValues: Secondary, "NDS 2018 supplement, tables 4A and 4B, as a public structural library has them";
    /// The one of them that was not seen.
    DesignValuesRecalled: Memory, "NDS table 4A, spruce-pine-fir select structural: recalled; printed spans agree with it";
    /// Those of before 2013.
    DesignValuesBefore2013: Memory,
        "NDS values of before 2013: #2 Douglas fir-larch and southern pine recalled, quoted spans of 2012 agree; others taken as today's";
    /// What floors of dwellings carry.
    LiveLoads: Memory, "IRC R301.5, recalled: 40 psf of live load, 30 in rooms that are slept in; its span tables are for those";
    /// What floors weigh.
    DeadLoads: Memory, "IRC R502.3.1, its tables as recalled: 10 psf of dead load, or 20, as under tile and stone";
    /// How far engineered members go.
    EngineeredSpans: Memory, "Makers' span tables, recalled: some 24 times their depth at most; 25 is taken (judgement)";
    /// That a stamp is of the whole board.
    RippedLumber: Memory, "Grading rules, recalled: a ripped board is graded anew, and its old stamp no longer counts";
    /// What ends rest on.
    Bearing: Secondary, "IRC R502.6 (2015, 2018), as quoted: 1 1/2 in on wood or metal, 3 in on concrete or masonry, or a hanger";
    /// That masonry carries a joist through a sill plate of a size.
    SillBearing: Secondary,
        "IRC R502.6 (2018), as described: on masonry direct, or on a sill 2 in by name with 48 sq in of bearing";
    /// Joists on a strip let into studs.
    Ribbon: Memory, "IRC R502.6, recalled: or a ribbon strip of 1×4, each joist nailed to the stud beside it";
    /// How joists from both sides meet over a support.
    JoistLaps: Secondary, "IRC R502.6.1, as quoted: laps of 3 in, nailed with three 10d, or a splice as strong";
    /// How joists are carried that frame into the side of a girder.
    JoistsIntoGirders: Secondary,
        "A framing book on the code's floors: joists into a girder's side on framing anchors or a 2×2 ledger";
    /// What keeps joists from turning over their supports.
    LateralRestraint: Secondary,
        "IRC R502.7 (2009), as restated: ends held by blocks 2 in thick by name and full depth, a rim, a header or a stud";
    /// What headers and tail joists ask for.
    FramedOpenings: Memory, "IRC R502.10, recalled: headers over 4 ft double, over 6 ft on hangers; tails over 12 ft held";
    /// The same as the wood industry's own details have it.
    Headers: Published,
        "AF&PA, Details for Conventional Wood Frame Construction (WCD 1, 2001), p. 8: over 4 ft double, 6 ft hung; tails 12 ft";
    /// Where one trimmer will do.
    SingleTrimmer: Secondary,
        "IRC R802.9 (2024), the like rule for roofs, as quoted: one trimmer for one header within 3 ft of its bearing";
    /// How girders built up of plies are nailed, and where plies may end.
    BuiltUpGirders: Published,
        "Wisconsin SPS 321.22, notes to its table of built-up beams: two rows of nails 18 in apart; joints over supports";
    /// How joists are repaired.
    JoistRepair: Practice,
        "Sisters as deep, as strong, from bearing to bearing or 3 ft past sound wood; never over wet rot";
    /// What holds a floor while it is cut.
    Shoring: Practice, "Temporary shoring on both sides before a joist is cut or taken out";
    /// How far panels span, by thickness.
    PanelSpans: Memory,
        "IRC R503.2.1.1(1), recalled rows: 19/32 to 16 in, 7/8 to 32 in, 1 1/8 to 48 in; 23/32 to 24 in as quoted (2012)";
    /// That plywood without a rating goes by its species too, not by thickness alone.
    PlywoodBySpecies: Published,
        "Wisconsin table SPS 327.31-B, sanded plywood by species group: 1/2 to 3/4 in at 16 in, 3/4 to 1 in at 24 in";
    /// What wet wood loses.
    WetService: Secondary, "NDS wet-service factors over 19 %; 0.85 on bending only above 1,150 psi";
    /// What may be cut out of a joist.
    JoistCuts: Secondary,
        "IRC R502.8.1, its like R802.7.1 quoted: notches a sixth deep, a third long, a fourth at ends; holes a third, 2 in off";
    /// How far from its bearing a notch counts as one at an end.
    EndNotches: Practice,
        "Judgement: an end notch goes no farther past its bearing than other notches are long; the print says no length";
    /// That notches close to each other are one.
    NotchesTogether: Practice,
        "Judgement: notches nearer to each other than one may be long count as one; above and below, their depths add";
    /// What a state asks between holes and notches, and of holes near an edge.
    HolesApart: Published,
        "Wisconsin SPS 321.22(5): no hole within 2 in of a notch or hole; near an edge it counts as a notch; end notches 1/4";
    /// That only its maker, or a designer, says where wood that is not sawn may be cut.
    EngineeredWood: Published,
        "Wisconsin SPS 321.22(5)(c): engineered wood is cut as its maker's instructions, from analysis or tests, say";
    /// The same in the residential code.
    EngineeredWoodCode: Secondary,
        "IRC R502.8.2, its like R802.7.2 quoted: trusses, I-joists, composite and glued lumber: maker or registered designer";
    /// That softened wood is not credited.
    SoftCountsNothing: Practice, "Probed-soft wood counts as nothing, and a quarter inch beyond it";
    /// Vents by area.
    VentArea: Secondary, "IRC R408.1 and R408.2: floor over 150, or 1500 on a cover; one opening within 3 ft of each corner";
    /// Air of an unvented crawl space.
    UnventedAir: Secondary,
        "IRC R408.3, as quoted: 1 cfm for 50 sq ft all day, an air path to the rooms, the outer walls insulated";
    /// How a cover is laid.
    GroundCover: Secondary, "IRC R408.3: joints lap 6 in and are sealed, edges 6 in up the wall";
    /// The same where the ground has to be covered whatever the vents are.
    CoverState: Published, "Washington WAC 51-51-0408, its R408.1: 6 mil, joints lap 6 in, to the foundation wall";
    /// How far it laps elsewhere.
    CoverLaps: Published,
        "24 CFR 3285.204 (manufactured homes) and NREL work specification 2.0403.1 (2017): joints lap 12 in";
    /// Vents by area, elsewhere.
    VentAreaStates: Published, "Washington WAC 51-51-0408, its R408.2: 1/300, over the cover that its R408.1 asks for";
    /// How vents are screened.
    VentScreens: Published, "Washington WAC 51-51-0408: screens with openings of 1/8 to 1/4 in";
    /// How far soil-gas retarders lap.
    RadonLap: Published, "IRC 2018 appendix F, AF103.5.2: soil-gas retarders lap 12 in";
    /// How far wood stays from soil.
    WoodToSoil: Published, "R317.1 (2018): joists 18 in, girders 12 in, columns 8 in above exposed ground, sills 8 in";
    /// When a post may be of wood that is not treated.
    Posts: Published,
        "R317.1.4, a page of Oregon's residential code in Marion County's records: above 8 in, over covered earth";
    /// What air girder ends need where they stand in masonry.
    GirderEnds: Published, "R317.1 item 4 (2018): treated where tops, sides and ends have less than 1/2 in of air";
    /// How large an access is. It prints 18 by 23 in beside 457 by 610 mm, which is 18 by 24.
    AccessSize: Published,
        "Indiana interpretation CEB-2023-13, on R408.4 (2020): 18 × 24 in through a floor, 16 × 24 in through a wall";
    /// Where a dryer's duct ends.
    DryerDucts: Secondary,
        "NFPA 54 and IRC M1502, as a gas utility and inspectors quote them: dryer ducts end outdoors, never below a house";
    /// How ground falls from a house.
    Grading: Secondary, "IRC R401.3 (2006), as quoted: 6 in in the first 10 ft";
    /// How far roof water is led.
    Discharge: Published, "EPA and DOE on gutters: 5 ft from the foundation, 10 ft to an underground catchment";
    /// How pitch counts.
    PitchFactor: Secondary, "A home-improvement page's pitch factors for gutters: 1.0 to 1.3";
    /// What gutters take, by nominal size.
    GutterCapacity: Secondary,
        "Two public tables of half-round gutters, sq ft at 1 in an hour, falling 1/16 in a foot: 5 in 2,500, 6 in 3,840";
    /// What a gutter of another shape takes. The 5,520 and 7,960 sq ft that a page gives for
    /// 5 and 6 in are those of half-round gutters of 7 and 8 in, as recalled.
    GutterShape: Practice, "A K-style gutter counts as a half-round one of its size until its own table is stated";
    /// How gutters fall.
    GutterFall: Practice, "Gutters fall 1/16 to 1/8 in a foot";
    /// What carries a replaced joist.
    Hangers: Practice, "A hanger at each end of a joist that is replaced, one at an end that bears too little";
    /// How sisters are held.
    SisterScrews: Practice, "Structural screws in pairs, staggered, 12 in apart along a sister";
    /// How large downspouts are.
    Downspouts: Secondary, "A public page quoting: 1 sq in of downspout for 1,200 sq ft at 1 in an hour";
    /// What metal may touch treated wood, and what its cuts want.
    Corrosion: Published,
        "County of Sonoma bulletin B-27 (2020), on California R317: hot-dip zinc, stainless, silicon bronze, copper; cuts treated";
    /// The same in the residential code, with its exceptions.
    CorrosionCode: Secondary,
        "IRC R319.3, now R317.3, as quoted: ASTM A153 zinc; bolts from 1/2 in, and zinc by ASTM B695 class 55, excepted";
    /// Boards for a subfloor, by how far joists are apart.
    BoardSubfloor: Published,
        "Michigan Residential Code 2015 and IRC 2018, table R503.1: 5/8 in at 16 in; at 24 in 11/16 across, 3/4 aslant";
    /// How joists come level.
    Shims: Practice, "Shims to the highest joist: each reading less the smallest";
    /// How flat a wood subfloor is to be.
    Flatness: Secondary, "NWFA wood subfloor, as a trade magazine quotes it: 1/4 in in 10 ft or 3/16 in in 6 ft";
    /// The same under glued floors.
    FlatnessGlued: Secondary,
        "NWFA glue-down or short fasteners, as a trade magazine quotes it: 3/16 in in 10 ft or 1/8 in in 6 ft";
    /// The same under tile.
    FlatnessTile: Secondary, "Tile to 15 in: 1/4 in in 10 ft; larger: 1/8 in in 10 ft; pages differ, confirm";
    /// How a walk is balanced.
    CompassRule: Published, "The compass rule (Bowditch), as a university course page works it";

    /// What a confined space is, and who looks before anybody goes in.
    ConfinedSpace: Published, "OSHA 29 CFR 1926 subpart AA: memo of 24 May 2016, and the confined-spaces FAQ";
    /// That a crawl space under a home seldom needs a permit.
    ConfinedSpaceHomes: Secondary, "OSHA fact sheet on confined spaces in residential construction, July 2017";
    /// What crews do besides.
    CrawlEntryHabits: Practice, "Going under a house: two lights, a mask, somebody outside";
    /// From what size a gap is a hole; a cover over it, or a rail, at any height; one of
    /// cover, rail and harness above 6 ft.
    HoleCovers: Published, "OSHA letter of 17 November 1998, on 29 CFR 1926.500(b) and 1926.501(b)(4)";
    /// What a cover bears, and how it is held and marked.
    HoleMarking: Secondary,
        "29 CFR 1926.502(i), as a NIOSH alert reproduces it: twice the load, fastened, marked HOLE or COVER";
    /// What ladders go by.
    LadderRules: Secondary, "An OSHA reply, as quoted: ladders go by 29 CFR 1926.1053, not by the rules of floor holes";
    /// The federal rule for renovating painted homes of before 1978.
    LeadRule: Published, "40 CFR 745, renovation, repair and painting; 73 FR 21692";
    /// What that rule lets pass as minor, and that demolition is not.
    LeadMinorRepair: Published,
        "EPA answer on 40 CFR 745.83, minor repair (as of January 2021): demolition destroys or ruins what is painted";
    /// Which floor coverings may hold asbestos, and whom to call.
    AsbestosFloors: Published, "Minnesota Department of Health on asbestos in floor coverings";
    /// Until when they may.
    AsbestosYear: Practice, "Floor coverings of before 1980 are tested before they are cut";
    /// A later year that some give.
    AsbestosLaterYear: Secondary, "Public pages that give 1986 as the year for asbestos in floor coverings";
    /// How thick panels are, whatever they are called.
    PanelThickness: Secondary,
        "PS 1-19, as an industry association gives it: a 23/32 and a 3/4 panel can be equally thick; measure";
    /// What fans may do.
    OutdoorFans: Published, "A building-science article (2017): large outdoor-air fans can wet framing";
    /// What is done before a blade goes through a floor.
    BlindCuts: Practice, "Cutting floors: find, switch off, lock out; blade as deep as the sheet";
    /// Whose work pipes and wires are.
    LicensedTrades: Practice, "Panels, feeders, service wires, live wires and gas are for licensed trades";
    /// Water and power are kept apart.
    WaterAndPower: Practice, "Power off before anybody goes into water";
    /// How much mold is how big a job.
    MouldSizes: Secondary, "EPA size classes for mold cleanup: 10 and 100 sq ft";
    /// What to wear near it.
    MouldGear: Secondary, "State health notes on mold: N95 or better, gloves, eye protection";
    /// When it is for others.
    MouldSpecialist: Practice, "More than 10 sq ft of mold, sewage or a sick occupant is for a specialist";
    /// Dust of treated wood.
    TreatedDust: Practice, "Treated wood: cut outdoors, with a respirator, never burned";
    /// Dust of masonry.
    SilicaRule: Secondary, "OSHA 29 CFR 1926.1153, table 1: cutting masonry";
    /// When framing is for an engineer.
    EngineerLooks: Practice,
        "Girder, sill or foundation damage, a joist short of a third of its depth, or more than two in a row: an engineer looks";
    /// Insects are named before they are treated.
    InsectsNamed: Practice, "Insects in framing: named, and treated by a licensed applicator";
    /// What is done about strands of fungus.
    StrandsTraced: Practice, "Strands of fungus: traced to their water, cut off from it, and looked at by who knows decay";
    /// That what pulls air out of a house can pull flue gas back into it.
    Backdraft: Published,
        "EPA, Energy Savings Plus Health (2016), 11.1: draft under worst-case depressurization, fans and all; CO alarms";
    /// From what level radon is dealt with.
    Radon: Published, "EPA, A Citizen's Guide to Radon, 402/K-12/002 (2016): test the home; fix it from 4 pCi/L on";
    /// What works best against it in a crawl space.
    RadonCrawl: Published,
        "EPA/600/J-93/078 (1993), abstract: suction below a membrane works best, emptying the air of the space less";
    /// What engines give off.
    Engines: Published,
        "NIOSH 96-118a: no gasoline engine in a building or half-closed space; open doors and fans do not make it safe";
    /// How droppings of rodents are cleaned up.
    Rodents: Published, "CDC, Hantavirus: Clean Up! (as of 2008): air out 30 minutes, wet it, do not sweep or vacuum";
    /// What heat does to those who work in it.
    Heat: Published, "OSHA fact sheet and OSHA-NIOSH sheet on heat illness: stroke is an emergency; cool, call 911, stay";
    /// Who dies in confined spaces.
    Rescuers: Secondary, "A safety handbook's abstract: of those killed in confined spaces over 60 % were would-be rescuers";
    /// How near to an edge a wire is shielded.
    NailPlates: Secondary, "NEC 300.4(A), as quoted: less than 1 1/4 in from an edge, or notched in, a steel plate of 1/16 in";
    /// The same for pipes.
    PipePlates: Published, "Chicago plumbing code 18-29-305.8: pipes less than 1 1/2 in from an edge, steel of 1/16 in";
    /// Where else asbestos lies.
    AsbestosPipes: Published,
        "CPSC, EPA and Lung Association, Asbestos in the Home (CPSC 453): hot pipes, furnaces; what is whole is left alone";
}

impl Source {
    /// The citation.
    pub const fn citation(self) -> Citation {
        self.0.citation
    }

    /// `text` followed by its source and mark: for what a figure must bear in mind
    /// but was not computed from.
    pub fn noted(self, text: &str) -> String {
        let Citation { title, mark } = self.citation();
        format!("{text} ({title}; {})", mark.label())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_citation_is_there_once() {
        let mut titles: Vec<_> = Source::ALL.iter().map(|(_, source)| source.citation().title).collect();
        titles.sort_unstable();
        titles.dedup();
        assert_eq!(titles.len(), Source::ALL.len());
    }

    #[test]
    fn a_note_shows_its_mark() {
        assert!(Source::KilnManual.noted("Cold wood reads low").ends_with("; published, seen as quoted)"));
    }
}
