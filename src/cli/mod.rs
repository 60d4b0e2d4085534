//! The command line: what was asked for, the call for it, and what it comes to.
//!
//! Exit 0: nothing wrong; 1: findings that stop a press; 2: wrong usage, or the machine's fault.

mod work;

use std::io::{IsTerminal, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::{Instant, SystemTime};

use clap::{Parser, Subcommand};

use crate::calendar::Day;
use crate::diagnostic::{self, Level, Look};
use crate::press::{self, Outcome};
use crate::site::Trouble;

/// Works an herbal teacher's recipes out in full and presses them into a static teaching site.
#[derive(Debug, Parser)]
#[command(name = "stillroom", version, disable_help_subcommand = true)]
struct Asked {
    /// Tell findings as plain sentences, without a marked line (for screen readers)
    #[arg(long, global = true)]
    sentences: bool,
    #[command(subcommand)]
    what: What,
}

#[derive(Debug, Subcommand)]
enum What {
    /// Read and work everything, print every finding, write nothing
    Proof {
        /// Folder of the formulary [default: content, else the current folder]
        dir: Option<PathBuf>,
    },
    /// Proof, then write the site; the old site stays whole until the new one is complete
    Press {
        /// Folder of the formulary [default: content, else the current folder]
        dir: Option<PathBuf>,
        /// Folder of the site [default: site, beside the formulary]
        #[arg(long, value_name = "SITE")]
        to: Option<PathBuf>,
        /// Press as on that day: answers that come out later are held back [default: today, by UTC]
        #[arg(long = "as-on", value_name = "DAY")]
        day: Option<String>,
    },
    /// Print a recipe's working, line by line
    Work {
        /// Lesson by its name in addresses, with #NUMBER for another than its first recipe
        #[arg(value_name = "LESSON[#RECIPE]")]
        lesson: String,
        /// Folder of the formulary [default: content, else the current folder]
        #[arg(long = "of", value_name = "DIR")]
        dir: Option<PathBuf>,
        /// Work the batch that comes to so much: "500 mL", "12 of 30 mL", "80 of 1 g"
        #[arg(long, value_name = "RESULT", conflicts_with_all = ["set", "measured", "aim", "other"])]
        wanted: Option<String>,
        /// Set a number the recipe declares: "honey=0.75", "rosehip=150 g"
        #[arg(long, value_name = "NUMBER=VALUE")]
        set: Vec<String>,
        /// Put in what you measured: "strained=900 mL"
        #[arg(long, value_name = "LINE=VALUE")]
        measured: Vec<String>,
        /// Move a declared number until a line comes to a target: "solids=65 % by honey"
        #[arg(long, value_name = "LINE=VALUE by NUMBER")]
        aim: Option<String>,
        /// Another recipe to set beside it, line by line
        #[arg(value_name = "OTHER", conflicts_with_all = ["set", "measured", "aim", "json"])]
        other: Option<String>,
        /// Print it as JSON
        #[arg(long)]
        json: bool,
    },
}

/// Runs the command line.
pub fn main() -> ExitCode {
    let asked = match Asked::try_parse() {
        Ok(asked) => asked,
        Err(error) => {
            let wrong = error.use_stderr();
            // Nothing is left to say if even this cannot be printed.
            let _ = error.print();
            return ExitCode::from(if wrong { 2 } else { 0 });
        }
    };
    let look = look(asked.sentences);
    let result = match &asked.what {
        What::Proof { dir } => proof(&folder(dir.as_deref()), look),
        What::Press { dir, to, day } => press(&folder(dir.as_deref()), to.as_deref(), day.as_deref(), look),
        What::Work { lesson, dir, wanted, set, measured, aim, other, json } => {
            let asked = work::Question {
                recipe: lesson,
                other: other.as_deref(),
                wanted: wanted.as_deref(),
                set,
                measured,
                aim: aim.as_deref(),
                json: *json,
            };
            work::run(&folder(dir.as_deref()), &asked, look)
        }
    };
    result.unwrap_or_else(|trouble| {
        say(&mut std::io::stderr(), &format!("stillroom: {trouble}"));
        ExitCode::from(2)
    })
}

fn folder(dir: Option<&Path>) -> PathBuf {
    match dir {
        Some(dir) => dir.to_path_buf(),
        None if Path::new("content").is_dir() => PathBuf::from("content"),
        None => PathBuf::from("."),
    }
}

fn look(sentences: bool) -> Look {
    if sentences {
        Look::Sentences
    } else if std::io::stderr().is_terminal() && std::env::var_os("NO_COLOR").is_none() {
        Look::Colour
    } else {
        Look::Plain
    }
}

fn proof(dir: &Path, look: Look) -> Result<ExitCode, Trouble> {
    let start = Instant::now();
    let outcome = press::proof(dir)?;
    Ok(close(&outcome, look, start, None))
}

fn press(dir: &Path, to: Option<&Path>, day: Option<&str>, look: Look) -> Result<ExitCode, Trouble> {
    let start = Instant::now();
    let today = match day.map(Day::read) {
        Some(Ok(day)) => Some(day),
        Some(Err(misread)) => {
            say(&mut std::io::stderr(), &format!("stillroom: {}", misread.message));
            return Ok(ExitCode::from(2));
        }
        None => today(),
    };
    let site = to.map_or_else(|| press::site_beside(dir), Path::to_path_buf);
    let lessons = AtomicUsize::new(0);
    let terminal = std::io::stderr().is_terminal();
    let tick = || {
        let done = lessons.fetch_add(1, Ordering::Relaxed) + 1;
        if terminal {
            let mut stderr = std::io::stderr();
            // Progress is a courtesy: a closed terminal is no reason to stop.
            let _ = write!(stderr, "\r{done} lessons");
            let _ = stderr.flush();
        }
    };
    let outcome = press::press(dir, &site, today, &tick)?;
    if terminal {
        say(&mut std::io::stderr(), "\r");
    }
    Ok(close(&outcome, look, start, Some(&site)))
}

/// The day by this machine's clock, in UTC.
fn today() -> Option<Day> {
    const SECONDS: u64 = 86_400;
    let since = SystemTime::now().duration_since(SystemTime::UNIX_EPOCH).ok()?;
    let first = Day::read("1970-01-01").ok()?;
    Some(first.after(u32::try_from(since.as_secs() / SECONDS).ok()?))
}

/// Prints findings on stderr and the summary line on stdout.
fn close(outcome: &Outcome, look: Look, start: Instant, site: Option<&Path>) -> ExitCode {
    let mut stderr = std::io::stderr();
    for finding in &outcome.findings {
        say(&mut stderr, &format!("{}\n", diagnostic::print(finding, look)));
    }
    let count = |level| outcome.findings.iter().filter(|finding| finding.level == level).count();
    let (errors, warnings) = (count(Level::Error), count(Level::Warning));
    if errors + warnings > 0 {
        say(&mut stderr, &diagnostic::summary(errors, warnings));
    }
    let time = format!("{:.2} s", start.elapsed().as_secs_f64());
    let counted = format!(
        "{}, {}, {}",
        counted(outcome.lessons, "lesson"),
        counted(outcome.recipes, "recipe"),
        counted(outcome.variations, "variation")
    );
    let line = match site {
        Some(site) if outcome.written => {
            format!(
                "Pressed {counted} onto {} in {}, in {time}.",
                counted_pages(outcome.pages),
                site.display()
            )
        }
        Some(_) => format!("Nothing was written: {counted} read in {time}."),
        None => format!("Proofed {counted} in {time}."),
    };
    say(&mut std::io::stdout(), &line);
    ExitCode::from(u8::from(errors > 0))
}

fn counted(n: usize, what: &str) -> String {
    format!("{n} {what}{}", if n == 1 { "" } else { "s" })
}

fn counted_pages(n: usize) -> String {
    counted(n, "page")
}

/// Prints a line. A reader that has gone away (a closed pipe) is not an error.
fn say(to: &mut dyn Write, line: &str) {
    let _ = writeln!(to, "{line}");
}
