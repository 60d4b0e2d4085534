//! What only a browser and the HTML checker can tell. They run where STILLROOM_BROWSER is set, as
//! `.ci/run` sets it; STILLROOM_TOOLS then names the folder with the `node_modules` that it installed.

use crate::kit;
use std::process::Command;

#[test]
fn the_demo_holds_in_a_browser() {
    if std::env::var_os("STILLROOM_BROWSER").is_none() {
        eprintln!("STILLROOM_BROWSER is not set: no browser was asked");
        return;
    }
    let tools = std::env::var("STILLROOM_TOOLS").expect("STILLROOM_TOOLS names the folder of node_modules");
    let folder = kit::fresh_folder();
    let site = folder.path().join("site");
    let outcome = stillroom::press::press(&kit::root().join("content"), &site, Some(kit::today()), &|| {})
        .expect("the demo can be pressed");
    assert!(outcome.written, "{:?}", outcome.findings);
    let run = |command: &mut Command| {
        let output = command.output().unwrap_or_else(|error| panic!("{command:?}: {error}"));
        let out =
            String::from_utf8_lossy(&output.stdout).into_owned() + &String::from_utf8_lossy(&output.stderr);
        (output.status.success(), out)
    };
    let script = kit::root().join("tests/browser/check.cjs");
    let agreement = folder.path().join("agreement.json");
    std::fs::write(&agreement, crate::reader::settings(3000).to_string()).expect("the disk");
    let mut node = Command::new("node");
    node.arg(script).arg(&site).arg(&tools);
    node.env("STILLROOM", env!("CARGO_BIN_EXE_stillroom")).env("CONTENT", kit::root().join("content"));
    let (browser, told) = run(node.env("STILLROOM_AGREEMENT", &agreement));
    let jar = format!("{tools}/node_modules/vnu-jar/build/dist/vnu.jar");
    let checker = ["-jar", &jar, "--errors-only", "--skip-non-html", "--format", "gnu"];
    let (html, found) = run(Command::new("java").args(checker).arg(&site));
    eprintln!("{told}");
    assert!(browser && html, "\nBrowser:\n{told}\nHTML checker:\n{found}");
}
