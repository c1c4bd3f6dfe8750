//! The rules themselves: one row each, with its source and how sure it is.

use super::{Band, Mark, Numbers, OdometerRule, Tests};

const fn above(share: f64, more: f64) -> Numbers {
    Numbers { low: 1.0, low_less: 0.0, high: 1.0 + share, high_more: more, from: 0.0, to: f64::INFINITY }
}

const fn within(low_share: f64, high_share: f64, from: f64) -> Numbers {
    Numbers { low: 1.0 - low_share, low_less: 0.0, high: 1.0 + high_share, high_more: 0.0, from, to: f64::INFINITY }
}

const fn at(speed: f64, apart: f64) -> Numbers {
    Numbers { low: 1.0, low_less: apart, high: 1.0, high_more: apart, from: speed, to: speed }
}

/// The strictest of those in force for cars: it never lets a dial read low. As an owner forum quotes it.
pub(super) const UN_R39: Band = Band {
    id: "un-r39",
    name: "UN R39",
    scope: "type approval of cars and trucks; never under the true speed",
    km_h: above(0.1, 4.0),
    mph: None,
    tests: Tests::LikeR39,
    in_force_for_cars: true,
    source: "UN R39 paragraph 5.3",
    mark: Mark::Quoted,
};

/// Voluntary, but the one that covers cars in the US at every speed.
pub(super) const SAE_J2976: Band = Band {
    id: "sae-j2976",
    name: "SAE J2976",
    scope: "voluntary, May 2022: at 25, 45 and 65 mph, radial tyres",
    km_h: within(0.01, 0.04, 0.0),
    mph: None,
    tests: Tests::TrueMph(&[25.0, 45.0, 65.0]),
    in_force_for_cars: false,
    source: "summary page of the standard",
    mark: Mark::Quoted,
};

/// Every rule.
pub static BANDS: [Band; 13] = [
    UN_R39,
    Band {
        id: "eec-75-443",
        name: "75/443/EEC",
        scope: "European type approval before UN R39 took its place; also at the speeds between",
        km_h: above(0.1, 4.0),
        mph: None,
        tests: Tests::LikeR39,
        in_force_for_cars: false,
        source: "Directive 75/443/EEC Annex II 4.4, from its German text",
        mark: Mark::Quoted,
    },
    Band {
        id: "un-r39-production",
        name: "UN R39, production",
        scope: "conformity of production, cars and trucks (M, N)",
        km_h: above(0.1, 6.0),
        mph: None,
        tests: Tests::Unnamed,
        in_force_for_cars: false,
        source: "UN R39 Annex 3",
        mark: Mark::Memory,
    },
    Band {
        id: "un-r39-production-l345",
        name: "UN R39, production, L3 to L5",
        scope: "conformity of production, motorcycles and three-wheelers",
        km_h: above(0.1, 8.0),
        mph: None,
        tests: Tests::Unnamed,
        in_force_for_cars: false,
        source: "UN R39 Annex 3",
        mark: Mark::Memory,
    },
    Band {
        id: "un-r39-production-l12",
        name: "UN R39, production, L1 and L2",
        scope: "conformity of production, mopeds",
        km_h: above(0.1, 4.0),
        mph: None,
        tests: Tests::Unnamed,
        in_force_for_cars: false,
        source: "UN R39 Annex 3",
        mark: Mark::Memory,
    },
    Band {
        id: "adr-18-03",
        name: "ADR 18/03",
        scope: "Australia, new models from July 2006, all from July 2007; takes UN R39",
        km_h: above(0.1, 4.0),
        mph: None,
        tests: Tests::LikeR39,
        in_force_for_cars: true,
        source: "ADR 18/03 (Determination 2 of 2004), which requires UN R39; the formula as quoted for UN R39",
        mark: Mark::Quoted,
    },
    Band {
        id: "adr-18-00",
        name: "ADR 18/00 to 18/02",
        scope: "Australia before ADR 18/03, above 40 km/h",
        km_h: within(0.1, 0.1, 40.0),
        mph: None,
        tests: Tests::Unnamed,
        in_force_for_cars: false,
        source: "Australian motoring-club page; encyclopedia section",
        mark: Mark::Quoted,
    },
    Band {
        id: "us-49-cfr-393-82",
        name: "49 CFR 393.82",
        scope: "US buses, trucks and truck-tractors, at 50 mph (80 km/h)",
        km_h: at(80.0, 8.0),
        mph: Some(at(50.0, 5.0)),
        tests: Tests::ItsOwn,
        in_force_for_cars: false,
        source: "49 CFR 393.82; 70 FR 48054, 15 August 2005",
        mark: Mark::Read,
    },
    Band {
        id: "uk-1966",
        name: "UK 1966 regulation 13",
        scope: "UK Construction and Use Regulations 1966, above 10 mph",
        km_h: within(0.1, 0.1, 16.093_44),
        mph: Some(within(0.1, 0.1, 10.0)),
        tests: Tests::Unnamed,
        in_force_for_cars: false,
        source: "trade weekly, 24 May 1968, p. 92",
        mark: Mark::Quoted,
    },
    Band {
        id: "de-before-1991",
        name: "Germany before 1991",
        scope: "up to 7 % fast",
        km_h: within(0.0, 0.07, 0.0),
        mph: None,
        tests: Tests::Unnamed,
        in_force_for_cars: false,
        source: "owner-forum quotation, low authority",
        mark: Mark::Quoted,
    },
    Band {
        id: "jp-old",
        name: "Japan, old safety standard",
        scope: "at 35 km/h and above",
        km_h: within(0.1, 0.15, 35.0),
        mph: None,
        tests: Tests::Unnamed,
        in_force_for_cars: false,
        source: "two Japanese glossaries",
        mark: Mark::Quoted,
    },
    Band {
        id: "jp-inspection-2007",
        name: "Japan, inspection from 2007",
        scope: "tested at 40 km/h indicated: true 30.9 to 42.55 km/h",
        km_h: Numbers { low: 0.94, low_less: 0.0, high: 1.1, high_more: 6.0, from: 0.0, to: f64::INFINITY },
        mph: None,
        tests: Tests::ShownKmh(&[40.0]),
        in_force_for_cars: true,
        source: "inspection notice: 10(V1 − 6)/11 ≤ V2 ≤ (100/94) V1",
        mark: Mark::Memory,
    },
    SAE_J2976,
];

/// Every rule on odometers that gives a figure for a car in use and goes with a rule on speedometers.
pub const ODOMETERS: [OdometerRule; 4] = [
    OdometerRule {
        id: "de-stvzo-57",
        name: "Germany StVZO § 57(3)",
        goes_with: &["de-before-1991"],
        share: 0.04,
        source: "statute wording on a legal portal; two forum quotations",
        mark: Mark::Quoted,
    },
    OdometerRule {
        id: "adr-18-00",
        name: "ADR 18/00 to 18/02",
        goes_with: &["adr-18-00"],
        share: 0.04,
        source: "Australian motoring-club pages",
        mark: Mark::Quoted,
    },
    OdometerRule {
        id: "sae-j2976",
        name: "SAE J2976",
        goes_with: &["sae-j2976"],
        share: 0.025,
        source: "summary page of the standard",
        mark: Mark::Quoted,
    },
    OdometerRule {
        id: "nist-hb-44",
        name: "NIST Handbook 44 section 5.53",
        goes_with: &["us-49-cfr-393-82"],
        share: 0.04,
        source: "handbook, figure from memory",
        mark: Mark::Memory,
    },
];
