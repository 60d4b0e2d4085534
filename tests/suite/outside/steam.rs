//! Air, boiling and steam: printed tables, and IAPWS-IF97 by the crate `seuif97` as a second path.

use super::*;
use seuif97::{OH, OT, px, tx};
use stillroom::formula::catalogue::heat::{AirPressure, Boiling, SyrupPressure, ThinAir};
use stillroom::materia::LATENT_HEAT;
use stillroom::measure::unit::{M, ONE};
use stillroom::span::Span;
use stillroom::working::Working;

/// Pressure of the air, Pa, and the boiling temperature of water there, °C; of a syrup by its water activity.
fn at_altitude(metres: f64, activity: f64) -> (f64, f64) {
    let mut work = Working::new();
    let altitude = work.given("altitude", &M, metres, false, Span::default());
    let activity = work.given("water activity", &ONE, activity, false, Span::default());
    let thin = work.work("thin", ThinAir { altitude });
    let air = work.work("air", AirPressure { thin });
    let pressure = work.work("over the syrup", SyrupPressure { pressure: air, activity });
    let boils = work.work("boils", Boiling { pressure });
    let values = work.evaluate(&[]);
    (values[air.index()], values[boils.index()])
}

#[test]
fn air_thins_as_the_standard_atmosphere_says() {
    // ISA 1976: 89.875, 79.495 and 70.109 kPa at 1,000, 2,000 and 3,000 m.
    for (metres, kpa) in [(1000.0, 89.875), (2000.0, 79.495), (3000.0, 70.109)] {
        near("pressure", at_altitude(metres, 1.0).0 / 1000.0, kpa, 0.002);
    }
}

#[test]
fn water_boils_as_the_altitude_tables_say() {
    // A table credited to NOAA and NASA: °F at 500, 2,000, 5,000, 8,000 and 10,000 ft.
    for (feet, fahrenheit) in
        [(500.0, 211.1), (2000.0, 208.4), (5000.0, 203.0), (8000.0, 197.4), (10_000.0, 193.6)]
    {
        let (_, celsius) = at_altitude(feet * 0.3048, 1.0);
        near("boiling water", celsius * 1.8 + 32.0, fahrenheit, 0.25);
    }
}

#[test]
fn a_second_path_boils_at_the_same_temperature() {
    // Antoine's equation against IAPWS-IF97: it reads up to 0.06 °C high to 3,000 m, inside its own 0.1.
    for metres in [0.0, 300.0, 1000.0, 1524.0, 2000.0, 3000.0] {
        let (pa, celsius) = at_altitude(metres, 1.0);
        near("saturation", celsius, px(pa / 1e6, 0.0, OT), 0.07);
    }
    // The same for syrups of 60 and 70 % at the sea, by their water activities.
    for activity in [0.8953, 0.8243] {
        let (pa, celsius) = at_altitude(0.0, activity);
        near("syrup", celsius, px(pa / activity / 1e6, 0.0, OT), 0.07);
    }
}

#[test]
fn a_second_path_needs_the_same_heat() {
    for celsius in [80.0, 85.0, 90.0, 95.0, 100.0] {
        let kj = tx(celsius, 1.0, OH) - tx(celsius, 0.0, OH);
        near("latent heat, kJ/kg", LATENT_HEAT.at(celsius) * 4184.0, kj, 0.5);
    }
}
