//! What a lesson says of itself to machines: schema.org's words as JSON-LD.

use serde::Serialize;
use serde_json::{Value, json};

use super::show::{data_element, told_minutes, unescaped};
use super::view::{Frame, LessonPage, Recipe};

/// What of a recipe only its working knows.
#[derive(Clone, Debug)]
pub struct Told {
    /// Whether it is eaten or drunk.
    pub swallowed: bool,
    /// The word for its preparation.
    pub kind: &'static str,
    /// All steps from start to bottle, min.
    pub minutes: Option<f64>,
}

/// JSON-LD for a lesson, as one element; `told` stands beside its recipes in order.
pub fn of_lesson(
    page: &LessonPage,
    told: &[Told],
    address: Option<&str>,
    here: &str,
    date: Option<&str>,
) -> String {
    let recipes = page.pieces.iter().filter_map(|piece| piece.recipe.as_ref());
    let parts: Vec<Value> =
        recipes.zip(told).map(|(recipe, told)| of_recipe(recipe, told, &page.frame)).collect();
    let whole = |path: &str| address.map(|site| format!("{site}{path}"));
    let lesson = Lesson {
        context: "https://schema.org",
        kind: "LearningResource",
        name: &page.frame.title,
        description: Some(page.frame.description.as_str()).filter(|text| !text.is_empty()),
        language: &page.frame.lang,
        resource: "lesson",
        url: whole(here),
        date,
        of: json!({"@type": "Course", "name": page.frame.book}),
        parts,
    };
    data_element("application/ld+json", "", &lesson)
}

#[derive(Serialize)]
struct Lesson<'a> {
    #[serde(rename = "@context")]
    context: &'a str,
    #[serde(rename = "@type")]
    kind: &'a str,
    name: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    description: Option<&'a str>,
    #[serde(rename = "inLanguage")]
    language: &'a str,
    #[serde(rename = "learningResourceType")]
    resource: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    url: Option<String>,
    #[serde(rename = "datePublished", skip_serializing_if = "Option::is_none")]
    date: Option<&'a str>,
    #[serde(rename = "isPartOf")]
    of: Value,
    #[serde(rename = "hasPart", skip_serializing_if = "Vec::is_empty")]
    parts: Vec<Value>,
}

/// What is swallowed is a `Recipe`, what is not is a `HowTo`: schema.org's `Recipe` is for food.
fn of_recipe(recipe: &Recipe, told: &Told, frame: &Frame) -> Value {
    let amounts = |n: usize| {
        let row = &recipe.gathering.rows[n];
        let name = if row.form.is_empty() { row.what.clone() } else { format!("{}, {}", row.what, row.form) };
        let both = [row.metric.as_str(), row.us.as_str()].into_iter().filter(|text| !text.is_empty());
        (name, plain(&both.collect::<Vec<_>>().join(" / ")))
    };
    let all: Vec<(String, String)> = (0..recipe.gathering.rows.len()).map(amounts).collect();
    let steps: Vec<Value> = recipe
        .order
        .steps
        .iter()
        .map(|step| json!({"@type": "HowToStep", "position": step.number, "text": plain(&untagged(&step.html))}))
        .collect();
    let makes = recipe
        .label
        .iter()
        .find(|row| ["Makes", "Covers"].contains(&row.term.as_str()))
        .map(|row| plain(&row.value));
    let mut value = json!({
        "@type": if told.swallowed { "Recipe" } else { "HowTo" },
        "name": recipe.name,
        "inLanguage": frame.lang,
    });
    let mut put = |key: &str, of: Value| {
        if let Some(map) = value.as_object_mut() {
            map.insert(key.to_string(), of);
        }
    };
    if let Some(minutes) = told.minutes {
        put("totalTime", json!(duration(told_minutes(minutes))));
    }
    match told.swallowed {
        true => {
            put("recipeCategory", json!(told.kind));
            let lines = all.iter().map(|(name, amount)| json!(format!("{amount} {name}")));
            put("recipeIngredient", lines.collect());
            put("recipeInstructions", json!(steps));
            if let Some(makes) = makes {
                put("recipeYield", json!(makes));
            }
        }
        false => {
            let supply = all.iter().map(
                |(name, amount)| json!({"@type": "HowToSupply", "name": name, "requiredQuantity": amount}),
            );
            put("supply", supply.collect());
            put("step", json!(steps));
            if let Some(makes) = makes {
                put("yield", json!(makes));
            }
        }
    }
    value
}

/// ISO 8601: `P3W`, or `PT2H50M` and `P1DT1H`.
pub fn duration(minutes: f64) -> String {
    let all = minutes.round().max(0.0) as u64;
    let (days, hours, minutes) = (all / 1440, all / 60 % 24, all % 60);
    if days > 0 && days % 7 == 0 && hours == 0 && minutes == 0 {
        return format!("P{}W", days / 7);
    }
    let part = |count: u64, letter: char| if count > 0 { format!("{count}{letter}") } else { String::new() };
    let time = part(hours, 'H') + &part(minutes, 'M');
    let time = if time.is_empty() && days > 0 {
        String::new()
    } else if time.is_empty() {
        "T0M".into()
    } else {
        format!("T{time}")
    };
    format!("P{}{time}", part(days, 'D'))
}

/// Markup without its tags, and the signs they stand for.
fn untagged(html: &str) -> String {
    let mut text = String::new();
    for piece in html.split('<') {
        text.push_str(piece.split_once('>').map_or(piece, |(_, words)| words));
    }
    unescaped(&text)
}

/// With plain blanks.
fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ").replace('\u{2060}', "")
}

#[cfg(test)]
mod tests {
    use super::duration;

    // ISO 8601-1:2019, 5.5.2: weeks stand alone; days before T, hours and minutes after it.
    #[test]
    fn durations_of_the_standard() {
        assert_eq!(duration(170.0), "PT2H50M");
        assert_eq!(duration(40_320.0), "P4W");
        assert_eq!(duration(1500.0), "P1DT1H");
        assert_eq!(duration(1440.0), "P1D");
        assert_eq!(duration(0.0), "PT0M");
    }
}
