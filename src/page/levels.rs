//! The batch picture: a measuring vessel for each step and the bottles at the end, as inline SVG.
//!
//! Every number in a drawing is rounded to one decimal, so that the same batch always gives the
//! same bytes. Colours and patterns belong to the theme: shapes carry classes, and fills name the
//! patterns `the--fill-liquid`, `the--fill-kept` and `the--fill-sweetener` that the page defines once.

/// Height of the scale from the inner base to the top tick, in units of the drawing.
const SCALE: f64 = 120.0;
/// Where the inner base stands, from the top of the drawing.
const BASE: f64 = 142.0;
/// Where the brim stands: a little above the top tick.
const BRIM: f64 = 12.0;
/// The inner walls.
const LEFT: f64 = 8.0;
const RIGHT: f64 = 64.0;
/// A US cup, mL.
const CUP: f64 = 236.588_236_5;
/// No scale is drawn closer than this many ticks.
const MOST_TICKS: f64 = 24.0;
/// How every drawing begins.
const OPEN: &str = r#"<svg class="vessel" viewBox="0 0 80 148" width="80" height="148" aria-hidden="true">"#;
/// The glass: a spout at the left, a rolled lip at the right, soft corners at the foot.
const GLASS: &str = r#"<path class="glass" d="M2 4.5q6 1.5 6 8V141q0 2 2 2H62q2 0 2-2V8.5q0-3 3-3"/>"#;
/// No more bottles than these are drawn; the words beside them say how many more there are.
const MOST_BOTTLES: usize = 12;

/// What a layer of the vessel shows.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Fill {
    /// The liquid itself.
    Liquid,
    /// What the plant kept.
    Kept,
    /// What boiled away: an outline only.
    Ghost,
    /// Honey, sugar, glycerin or another addition.
    Sweetener,
}

impl Fill {
    /// The class of this fill, the same as in the key below the picture.
    pub fn class(self) -> &'static str {
        match self {
            Fill::Liquid => "liquid",
            Fill::Kept => "kept",
            Fill::Ghost => "ghost",
            Fill::Sweetener => "sweetener",
        }
    }
}

/// One layer of a vessel.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Layer {
    /// What it shows.
    pub fill: Fill,
    /// How much of it, in millilitres.
    pub ml: f64,
}

/// Draws a vessel that holds `holds_ml` at its top tick, with a tick every `tick_ml` and its layers
/// from the bottom. A layer that would rise over the brim ends there; one without height is left out.
pub fn vessel(layers: &[Layer], holds_ml: f64, tick_ml: f64) -> String {
    let holds = sound(holds_ml);
    let mut svg = String::from(OPEN);
    let mut level = BASE;
    for layer in layers {
        let height = if holds > 0.0 { (sound(layer.ml) / holds * SCALE).min(level - BRIM) } else { 0.0 };
        if height < 0.05 {
            continue;
        }
        level -= height;
        draw_layer(&mut svg, layer.fill, level, height);
    }
    draw_ticks(&mut svg, holds, sound(tick_ml));
    svg.push_str(GLASS);
    svg.push_str("</svg>");
    svg
}

/// Draws the bottles, at most twelve, filled with the liquid.
pub fn bottles(count: usize) -> String {
    bottles_of(Fill::Liquid, count)
}

/// Draws the bottles, at most twelve, filled with `fill`. Few bottles are drawn larger.
pub fn bottles_of(fill: Fill, count: usize) -> String {
    let count = count.min(MOST_BOTTLES);
    let columns: usize = match count {
        0 | 1 => 1,
        2..=4 => 2,
        5 | 6 => 3,
        _ => 4,
    };
    let rows = count.div_ceil(columns).max(1);
    let short_by = rows * columns - count;
    // A bottle is drawn 16 wide and 40 high, in a cell 20 by 44, and scaled as large as fits.
    let size = (72.0 / (20.0 * columns as f64)).min(132.0 / (44.0 * rows as f64)).min(2.4);
    let mut svg = String::from(OPEN);
    for index in 0..count {
        // The top row is the short one: the others stand under it.
        let place = if index + short_by < columns { index } else { index + short_by };
        let (row, column) = (place / columns, place % columns);
        let x = 4.0 + 20.0 * size * column as f64;
        let y = BASE - 44.0 * size * (rows - row) as f64 + 4.0 * size;
        draw_bottle(&mut svg, fill, x, y, size);
    }
    svg.push_str("</svg>");
    svg
}

/// A scale on which `max_ml` fits: what the vessel holds at its top tick and the step between
/// ticks, both in millilitres, and the words that say so. Cups below 2 L, litres from there.
pub fn scale(max_ml: f64) -> (f64, f64, String) {
    let max = sound(max_ml);
    if max <= CUP * 1.02 {
        let words = "Ticks are quarter cups; the vessel holds 1 cup.";
        return (CUP, CUP / 4.0, words.to_string());
    }
    if max < 2000.0 {
        let cups = whole(max / CUP);
        let words = format!("Ticks are cups; the vessel holds {cups}.");
        return (cups * CUP, CUP, words);
    }
    let litres = whole(max / 1000.0);
    if litres <= 5.0 {
        let words = format!("Ticks are half litres; the vessel holds {litres}\u{a0}L.");
        return (litres * 1000.0, 500.0, words);
    }
    let mut tick = 1.0;
    let mut steps = [2.0, 2.5, 2.0].iter().cycle();
    while litres / tick > 12.0 {
        tick *= steps.next().copied().unwrap_or(10.0);
    }
    let holds = whole(litres / tick) * tick;
    let words = if tick > 1.0 {
        format!("Ticks are {tick} litres; the vessel holds {holds}\u{a0}L.")
    } else {
        format!("Ticks are litres; the vessel holds {holds}.")
    };
    (holds * 1000.0, tick * 1000.0, words)
}

/// The number itself where it can be drawn, else 0.
fn sound(ml: f64) -> f64 {
    if ml.is_finite() { ml.clamp(0.0, 1e9) } else { 0.0 }
}

/// Up to the next whole number; a hair over one (rounding in a sum) still counts as that one.
fn whole(value: f64) -> f64 {
    (value - 0.02).ceil().max(1.0)
}

/// A coordinate with at most one decimal.
fn short(value: f64) -> f64 {
    let rounded = (value * 10.0).round() / 10.0;
    // Never write a minus before nought.
    if rounded == 0.0 { 0.0 } else { rounded }
}

/// One layer and the line of its surface, `top` from the top of the drawing.
fn draw_layer(svg: &mut String, fill: Fill, top: f64, height: f64) {
    let (top, height) = (short(top), short(height));
    if fill == Fill::Ghost {
        svg.push_str(&format!(r#"<path class="ghost" d="M{LEFT} {top}H{RIGHT}"/>"#));
        return;
    }
    draw_fill(svg, fill, [LEFT, top, RIGHT - LEFT, height]);
    svg.push_str(&format!(r#"<path class="surface" d="M{LEFT} {top}H{RIGHT}"/>"#));
}

/// A filled rectangle: left, top, width, height.
fn draw_fill(svg: &mut String, fill: Fill, [x, y, width, height]: [f64; 4]) {
    let class = fill.class();
    svg.push_str(&format!(
        r#"<rect class="fill" fill="url(#the--fill-{class})" x="{x}" y="{y}" width="{width}" height="{height}"/>"#
    ));
}

/// The ticks, right of the glass so that they read against any fill; every second one longer.
fn draw_ticks(svg: &mut String, holds: f64, tick: f64) {
    if holds <= 0.0 || tick <= 0.0 || holds / tick > MOST_TICKS {
        return;
    }
    let mut path = String::new();
    let count = (holds / tick + 0.01).floor() as usize;
    for step in 1..=count {
        let y = short(BASE - SCALE * step as f64 * tick / holds);
        let length = if step % 2 == 0 { 11 } else { 6 };
        path.push_str(&format!("M66 {y}h{length}"));
    }
    svg.push_str(&format!(r#"<path class="tick" d="{path}"/>"#));
}

/// A bottle with a cork, filled to its shoulder.
fn draw_bottle(svg: &mut String, fill: Fill, x: f64, y: f64, size: f64) {
    let at = |dx: f64, dy: f64| (short(x + dx * size), short(y + dy * size));
    let len = |value: f64| short(value * size);
    if fill != Fill::Ghost {
        let (x, y) = at(1.0, 15.0);
        draw_fill(svg, fill, [x, y, len(14.0), len(24.0)]);
        let width = len(14.0);
        svg.push_str(&format!(r#"<path class="surface" d="M{x} {y}h{width}"/>"#));
    }
    let (neck_x, neck_y) = at(5.0, 3.5);
    let (one, two, three, four) = (len(1.0), len(2.0), len(3.0), len(4.0));
    let (wall, foot) = (len(23.5), len(10.0));
    svg.push_str(&format!(r#"<path class="bottle" d="M{neck_x} {neck_y}v{four}q0 {two} -{two} {three}q-{two} {one} -{two} {four}v{wall}q0 {two} {two} {two}h{foot}q{two} 0 {two} -{two}v-{wall}q0 -{three} -{two} -{four}q-{two} -{one} -{two} -{three}v-{four}z"/>"#));
    let (cork_x, cork_y) = at(4.6, 0.0);
    let (width, height) = (len(6.8), len(2.6));
    svg.push_str(&format!(
        r#"<rect class="cork" x="{cork_x}" y="{cork_y}" width="{width}" height="{height}"/>"#
    ));
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every number of one attribute, in the order they stand.
    fn numbers(svg: &str, attribute: &str) -> Vec<f64> {
        svg.split(&format!(" {attribute}=\""))
            .skip(1)
            .map(|rest| rest.split('"').next().unwrap().parse().unwrap())
            .collect()
    }

    fn layer(fill: Fill, ml: f64) -> Layer {
        Layer { fill, ml }
    }

    #[test]
    fn a_layer_stands_at_its_height() {
        let half = vessel(&[layer(Fill::Liquid, 300.0)], 600.0, 100.0);
        assert!(half.contains("y=\"82\" width=\"56\" height=\"60\""), "{half}");
        assert!(half.contains("url(#the--fill-liquid)"));
        assert_eq!(half.matches("M66").count(), 6);
    }

    #[test]
    fn layers_stand_on_each_other_within_the_glass() {
        let layers = [
            layer(Fill::Liquid, 473.0),
            layer(Fill::Sweetener, 946.0),
            layer(Fill::Kept, 5000.0),
            layer(Fill::Ghost, 100.0),
        ];
        let svg = vessel(&layers, 1420.0, 236.6);
        let tops = numbers(&svg, "y");
        let heights = numbers(&svg, "height");
        assert!(tops.windows(2).all(|pair| pair[1] < pair[0]));
        assert!(tops.iter().all(|&top| (BRIM..=BASE).contains(&top)));
        // The first height is the drawing's own.
        assert!(heights[1..].iter().sum::<f64>() <= BASE - BRIM + 0.2);
        // Nothing is left for the ghost above the brim.
        assert!(!svg.contains("class=\"ghost\""));
    }

    #[test]
    fn what_boiled_away_is_an_outline_only() {
        let svg = vessel(&[layer(Fill::Liquid, 473.0), layer(Fill::Ghost, 360.0)], 1420.0, 236.6);
        assert_eq!(svg.matches("<rect").count(), 1);
        assert_eq!(svg.matches("class=\"ghost\"").count(), 1);
    }

    #[test]
    fn no_number_upsets_a_drawing() {
        let odd = [0.0, -0.0, -5.0, 1e-9, 1e12, f64::MAX, f64::NAN, f64::INFINITY, f64::NEG_INFINITY];
        for &ml in &odd {
            for &holds in &odd {
                for &tick in &odd {
                    let svg = vessel(&[layer(Fill::Liquid, ml), layer(Fill::Kept, ml)], holds, tick);
                    assert!(svg.starts_with("<svg") && svg.ends_with("</svg>"));
                    assert!(!svg.contains("NaN") && !svg.contains("inf"), "{svg}");
                    assert!(svg.len() < 4000);
                }
            }
            let (holds, tick, words) = scale(ml);
            assert!(holds >= tick && tick > 0.0 && words.ends_with('.'), "{ml}");
        }
    }

    #[test]
    fn numbers_have_at_most_one_decimal() {
        let svg = vessel(&[layer(Fill::Liquid, 333.333)], 1419.5, 236.588) + &bottles(7);
        for word in svg.split(|c: char| !c.is_ascii_digit() && c != '.') {
            let decimals = word.split_once('.').map_or(0, |(_, after)| after.len());
            assert!(decimals <= 1, "{word}");
        }
    }

    #[test]
    fn no_style_and_no_text_stand_in_a_drawing() {
        let svg = vessel(&[layer(Fill::Kept, 100.0)], 236.6, 59.1) + &bottles_of(Fill::Sweetener, 12);
        assert!(!svg.contains("style=") && !svg.contains("<text"));
        assert_eq!(svg.matches("aria-hidden=\"true\"").count(), 2);
    }

    #[test]
    fn at_most_twelve_bottles_are_drawn_and_all_stand_inside() {
        for count in [0, 1, 2, 3, 4, 5, 6, 7, 12, 13, usize::MAX] {
            let svg = bottles(count);
            assert_eq!(svg.matches("class=\"bottle\"").count(), count.min(12));
            let edge = |at: &str, size: &str| -> f64 {
                let sizes = numbers(&svg, size);
                numbers(&svg, at).iter().zip(&sizes[1..]).map(|(at, size)| at + size).fold(0.0, f64::max)
            };
            assert!(edge("x", "width") <= 80.0 && edge("y", "height") <= 148.0, "{count}");
            assert!(numbers(&svg, "y").iter().all(|&y| y >= 0.0), "{count}");
        }
    }

    #[test]
    fn the_scale_is_in_cups_then_in_litres() {
        let words = |ml| scale(ml).2;
        assert_eq!(words(120.0), "Ticks are quarter cups; the vessel holds 1 cup.");
        assert_eq!(words(1419.5), "Ticks are cups; the vessel holds 6.");
        assert_eq!(words(1421.0), "Ticks are cups; the vessel holds 6.");
        assert_eq!(words(1430.0), "Ticks are cups; the vessel holds 7.");
        assert_eq!(words(2000.0), "Ticks are half litres; the vessel holds 2\u{a0}L.");
        assert_eq!(words(7200.0), "Ticks are litres; the vessel holds 8.");
        assert_eq!(words(43000.0), "Ticks are 5 litres; the vessel holds 45\u{a0}L.");
        assert_eq!(words(90000.0), "Ticks are 10 litres; the vessel holds 90\u{a0}L.");
    }

    #[test]
    fn whatever_is_drawn_fits_its_scale() {
        for ml in [1.0, 59.0, 237.0, 473.2, 946.4, 1999.0, 2001.0, 5000.0, 12_345.0, 1e6] {
            let (holds, tick, _) = scale(ml);
            assert!(ml <= holds * 1.021, "{ml} in {holds}");
            assert!(holds / tick <= MOST_TICKS, "{ml}");
        }
    }
}
