//! A recipe as its author wrote it, line by line, its keys, steps, values and remarks told apart.
//!
//! The only place that knows the highlighting crate. What counts as a key is written down in
//! `recipe.sublime-syntax` beside this file; the colours are the theme's.

use std::sync::OnceLock;
use syntect::parsing::{ParseState, Scope, ScopeStack, SyntaxDefinition, SyntaxReference, SyntaxSet};

const SYNTAX: &str = include_str!("recipe.sublime-syntax");

/// The names that become classes. `mark` (colons, dashes, brackets) stays bare: it would double the
/// size of a page for nothing a reader looks for.
const CLASSES: [&str; 4] = ["key", "value", "comment", "step"];

/// A longer line is no recipe, and telling it apart would take time that grows with its square.
const LONGEST: usize = 2_000;

/// The syntax is read the first time a page needs it, and once.
static RECIPE: OnceLock<Option<Recipe>> = OnceLock::new();

struct Recipe {
    set: SyntaxSet,
    classes: Vec<(Scope, &'static str)>,
}

impl Recipe {
    fn new() -> Option<Recipe> {
        let mut builder = syntect::parsing::SyntaxSetBuilder::new();
        builder.add(SyntaxDefinition::load_from_str(SYNTAX, true, None).ok()?);
        let classes =
            CLASSES.iter().map(|&class| Some((Scope::new(class).ok()?, class))).collect::<Option<_>>()?;
        Some(Recipe { set: builder.build(), classes })
    }

    fn syntax(&self) -> Option<&SyntaxReference> {
        self.set.syntaxes().first()
    }

    /// One line with its classes; none where the crate is at a loss.
    fn line(&self, state: &mut ParseState, scopes: &mut ScopeStack, line: &str) -> Option<String> {
        // The syntax wants to see line ends; they are not shown.
        let steps = state.parse_line(&format!("{line}\n"), &self.set).ok()?;
        let mut out = String::new();
        let mut from = 0;
        for (at, step) in steps {
            let at = at.min(line.len());
            self.piece(&mut out, scopes, line.get(from..at)?);
            from = at;
            scopes.apply(&step).ok()?;
        }
        self.piece(&mut out, scopes, line.get(from..)?);
        Some(out)
    }

    fn piece(&self, out: &mut String, scopes: &ScopeStack, text: &str) {
        if text.is_empty() {
            return;
        }
        let named = |scope: &Scope| self.classes.iter().find(|(known, _)| known == scope);
        match scopes.scopes.last().and_then(named) {
            Some((_, class)) if !text.trim().is_empty() => {
                out.push_str("<span class=\"");
                out.push_str(class);
                out.push_str("\">");
                escape(out, text);
                out.push_str("</span>");
            }
            _ => escape(out, text),
        }
    }
}

/// One HTML string for each line of a recipe block. Blanks at the start of lines are kept. Where
/// a line cannot be told apart it and all that follow are escaped text.
pub fn lines(yaml: &str) -> Vec<String> {
    let recipe = RECIPE.get_or_init(Recipe::new).as_ref();
    let mut state = recipe.and_then(|recipe| Some((recipe, ParseState::new(recipe.syntax()?))));
    let mut scopes = ScopeStack::new();
    let mut out = Vec::new();
    for line in yaml.lines() {
        let told = state
            .as_mut()
            .filter(|_| line.len() <= LONGEST)
            .and_then(|(recipe, state)| recipe.line(state, &mut scopes, line));
        if told.is_none() {
            state = None;
        }
        out.push(told.unwrap_or_else(|| {
            let mut plain = String::new();
            escape(&mut plain, line);
            plain
        }));
    }
    out
}

fn escape(out: &mut String, text: &str) {
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\0' => out.push('\u{fffd}'),
            _ => out.push(c),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Spans as `[class text]`, to be read at a glance.
    fn seen(yaml: &str) -> String {
        let text = lines(yaml).join("\n").replace("<span class=\"", "[").replace("\">", " ");
        text.replace("</span>", "]")
    }

    #[test]
    fn the_syntax_is_sound() {
        assert!(Recipe::new().is_some());
    }

    #[test]
    fn a_recipe_is_told_apart() {
        let yaml = "name: Rose hip # best\n# all\nplants:\n  rosehip: 200 g dried\nliquid: {water: 1:4 w/v}\nmethod:\n  - simmer: {time: 30 min, lid: on}\n  - strain\n  - sweeten: {honey: 1/2 of the liquid}\n\n- pour: 1\nkeep: refrigerator\nchange: {after strain: {reduce: 1/2}}\n\"a: b\": \"c # d\"\n";
        let want = "[key name]: [value Rose hip] [comment # best]\n\
            [comment # all]\n\
            [key plants]:\n  [key rosehip]: [value 200 g dried]\n\
            [key liquid]: {[key water]: [value 1:4 w/v]}\n\
            [key method]:\n  - [step simmer]: {[key time]: [value 30 min], [key lid]: [value on]}\n  - [step strain]\n  \
            - [step sweeten]: {[key honey]: [value 1/2 of the liquid]}\n\n- [step pour]: [value 1]\n\
            [key keep]: [value refrigerator]\n\
            [key change]: {[key after strain]: {[key reduce]: [value 1/2]}}\n\
            [key &quot;a: b&quot;]: [value &quot;c # d&quot;]";
        assert_eq!(seen(yaml), want);
    }

    #[test]
    fn lines_stay_lines_and_are_escaped() {
        let told = lines("a: <b> & \"c\"\r\n   x\n\n");
        assert_eq!(told.len(), 3);
        assert!(told[1].starts_with("   "));
        assert!(!told[0].contains("<b>") && told[0].contains("&lt;b&gt; &amp; &quot;c&quot;"), "{}", told[0]);
    }

    proptest! {
        #[test]
        fn nothing_is_lost(yaml in prop_oneof![any::<String>(), "(method:|  - |simmer|:| |#|\"|'|\\{|\\}|,|\n|é|\\||-|a){0,60}"]) {
            let mut plain = Vec::new();
            for line in yaml.lines() {
                let mut text = String::new();
                escape(&mut text, line);
                plain.push(text);
            }
            let bare = |html: &String| {
                CLASSES.iter().fold(html.replace("</span>", ""), |text, class| {
                    text.replace(&format!("<span class=\"{class}\">"), "")
                })
            };
            let told: Vec<String> = lines(&yaml).iter().map(bare).collect();
            prop_assert_eq!(told, plain);
        }
    }
}
